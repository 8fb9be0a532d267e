package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** The integrator against closed forms and against a general-purpose one. */
class DormandPrinceTest {
    private static double[] at(DormandPrince.Fields field, double[] start, double allowed, double time) {
        DormandPrince ours = new DormandPrince(field, start.length);
        double[] each = new double[start.length], y = new double[start.length];
        java.util.Arrays.fill(each, allowed);
        ours.begin(start, start.length, 1e-3, 10, each);
        while (ours.reachedS() < time) ours.step();
        ours.at(ours.stepAt(time), time, y);
        return y;
    }

    @Test
    void oneNumberAndTheSameBesideAnotherAreSteppedAlike() {
        double one = at((x, y, dy) -> dy[0] = -2 * y[0] + x, new double[] {3}, 1e-7, 2.3)[0];
        double beside = at((x, y, dy) -> {
            dy[0] = -2 * y[0] + x;
            dy[1] = 0;
        }, new double[] {3, 1}, 1e-7, 2.3)[0];
        assertThat(one).isEqualTo(beside);
    }

    @Test
    void aDecayIsAnExponential() {
        for (double t : new double[] {0.1, 1, 3.7, 9}) {
            assertThat(at((x, y, dy) -> dy[0] = -2 * y[0], new double[] {500}, 1e-7, t)[0]).isCloseTo(500 * Math.exp(-2 * t), within(2e-5));
        }
    }

    @Test
    void anOscillationKeepsItsPhaseBetweenTheStepsToo() {
        for (double t = 0.05; t < 10; t += 0.173) {
            double[] y = at((x, v, dy) -> {
                dy[0] = v[1];
                dy[1] = -9 * v[0];
            }, new double[] {1, 0}, 1e-9, t);
            assertThat(y[0]).isCloseTo(Math.cos(3 * t), within(1e-6));
        }
    }

    @Test
    void aFifthOfTheErrorAllowedIsAboutAFifthOfTheErrorMade() {
        double coarse = Math.abs(at((x, y, dy) -> dy[0] = y[0] * Math.cos(x), new double[] {1}, 1e-5, 8)[0] - Math.exp(Math.sin(8)));
        double fine = Math.abs(at((x, y, dy) -> dy[0] = y[0] * Math.cos(x), new double[] {1}, 1e-9, 8)[0] - Math.exp(Math.sin(8)));
        assertThat(fine).isLessThan(1e-7).isLessThan(coarse / 100);
    }

    @Test
    void agreesWithAGeneralPurposeIntegratorOnAStiffenedLung() {
        DormandPrince.Fields lung = (t, y, dy) -> dy[0] = (20 - (8 + 6 * Math.log(y[0] / (900 - y[0])))) / 0.015 - 0.2 * y[0] * t;
        OrdinaryDifferentialEquation same = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 1;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                double[] dy = new double[1];
                lung.slopes(t, y, dy);
                return dy;
            }
        };
        for (double t : new double[] {0.2, 0.7, 2}) {
            double peer = new DormandPrince853Integrator(1e-9, 0.5, 1e-11, 1e-12).integrate(same, new ODEState(0, new double[] {150}), t).getPrimaryState()[0];
            assertThat(at(lung, new double[] {150}, 1e-6, t)[0]).isCloseTo(peer, within(5e-5));
        }
    }

    @Test
    void aRightHandSideThatIsNoNumberIsSteppedRoundNotOver() {
        // the root has no value below 0; the step that would look there is taken again, shorter
        double[] y = at((t, v, dy) -> dy[0] = -Math.sqrt(v[0]), new double[] {1}, 1e-8, 1.9);
        assertThat(y[0]).isCloseTo(0.0025, within(1e-5));
    }
}
