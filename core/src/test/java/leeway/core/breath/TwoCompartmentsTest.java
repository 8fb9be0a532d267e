package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import leeway.core.lung.Tube;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** Uneven lungs: against a general-purpose integrator, and where they must be an even lung. */
class TwoCompartmentsTest {
    /** The network once more, written as flows: circuit, common tube, two branches, valve. */
    private static double[] integrate(double[] x, double seconds, double source, double r0, double r1, double r2, double cc, double c1, double c2, double valve, double peep) {
        OrdinaryDifferentialEquation network = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 3;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                double node = (y[0] / r0 + y[1] / r1 + y[2] / r2) / (1 / r0 + 1 / r1 + 1 / r2), into = (y[0] - node) / r0;
                return new double[] {(source - into - (valve > 0 ? (y[0] - peep) / valve : 0)) / cc, (node - y[1]) / r1 / c1, (node - y[2]) / r2 / c2};
            }
        };
        return new DormandPrince853Integrator(1e-9, 0.05, 1e-12, 1e-13).integrate(network, new ODEState(0, x), seconds).getPrimaryState();
    }

    @Test
    void volumeControlAgreesWithTheIntegratorTo1e9() {
        SplittableRandom random = new SplittableRandom(21);
        for (int i = 0; i < 120; i++) {
            double c = random.nextDouble(20, 80), r = random.nextDouble(4, 25), share = random.nextDouble(0.1, 0.9), factor = i % 5 == 0 ? 1 : random.nextDouble(1, 8);
            double filter = random.nextDouble(1, 6), valve = random.nextDouble(1, 5), give = random.nextDouble(0.4, 3);
            Mechanics m = Mechanics.linear(r, c).withFilterAndCircuit(filter, valve, give).withSlow(share, factor);
            BreathSettings s = BreathSettings.volume(random.nextDouble(4, 12) * c, random.nextDouble(10, 26), 1.1, 0.3, random.nextDouble(0, 12));
            TwoCompartments ours = new TwoCompartments(m, s);
            double c2 = share * c, c1 = c - c2, fast = r / 1000 * (c1 + c2 / factor), r1 = fast / c1, r2 = fast * factor / c2;
            for (int breath = 0; breath < 3; breath++) {
                double[] x = ours.x.clone();
                ours.breathe();
                x = integrate(x, 0.8, s.tidalVolumeMl() / 0.8, filter / 1000, r1, r2, give, c1, c2, 0, 0);
                assertThat(ours.peak).isCloseTo(x[0], within(1e-9 * x[0]));
                x = integrate(x, 0.3, 0, filter / 1000, r1, r2, give, c1, c2, 0, 0);
                x = integrate(x, 60 / s.ratePerMin() - 1.1, 0, filter / 1000, r1, r2, give, c1, c2, valve / 1000, s.peepCmH2O());
                for (int k = 0; k < 3; k++) assertThat(ours.x[k]).as("case %s, pressure %s", i, k).isCloseTo(x[k], within(1e-9 * Math.max(1, x[k])));
            }
        }
    }

    @Test
    void equalCompartmentsAreOneCompartment() {
        Mechanics even = Mechanics.linear(12, 40).withFilterAndCircuit(2, 3, 0);
        for (BreathSettings s : new BreathSettings[] {Bench.VOLUME, BreathSettings.pressure(14, 20, 1, 0, 8), BreathSettings.pressure(14, 20, 1, 0.2, 8)}) {
            BreathNumbers one = SteadyBreath.of(even, s, new DeviceLimits(1000, 200, 0, true, 0.08, 3, 2)), two = new TwoCompartments(even.withSlow(0.4, 1), s).steady();
            // the smallest circuit of the network, 0.02 mL/cmH2O, is all that differs
            assertThat(two.expiredMl()).isCloseTo(one.expiredMl(), within(1e-3 * one.expiredMl()));
            assertThat(two.plateauCmH2O()).isCloseTo(one.plateauCmH2O(), within(0.02));
            assertThat(two.meanCmH2O()).isCloseTo(one.meanCmH2O(), within(0.02));
            assertThat(two.autoPeepCmH2O()).isCloseTo(one.autoPeepCmH2O(), within(0.02));
        }
    }

    @Test
    void aSlowCompartmentTrapsMoreAndSharesLess() {
        BreathSettings s = BreathSettings.volume(450, 18, 1, 0, 0);
        Mechanics even = Mechanics.linear(15, 50).withFilterAndCircuit(2, 3, 1.5);
        assertThat(new TwoCompartments(even.withSlow(0.5, 6), s).steady().autoPeepCmH2O()).isGreaterThan(1.5 * new TwoCompartments(even.withSlow(0.5, 1), s).steady().autoPeepCmH2O());
    }

    @Test
    void theSecantOfATubeSaysHowFarItIsOff() {
        Mechanics m = Mechanics.linear(11, 34).withTube(new Tube(7, 30).rohrer()).withFilterAndCircuit(1.5, 3, 1.5);
        TwoCompartments two = new TwoCompartments(m.withSlow(0.5, 1), Bench.PRESSURE);
        BreathNumbers n = two.steady(), exact = SteadyBreath.of(m, Bench.PRESSURE, new DeviceLimits(1000, 200, 0, true, 0.08, 3, 2));
        assertThat(two.tubeErrorCmH2O()).isGreaterThan(0.1).isLessThan(8);
        assertThat(n.expiredMl()).isCloseTo(exact.expiredMl(), within(0.03 * exact.expiredMl()));
    }
}
