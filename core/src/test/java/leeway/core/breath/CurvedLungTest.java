package leeway.core.breath;

import static leeway.core.breath.Bench.of;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.lung.Rohrer;
import leeway.core.lung.Sigmoid;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** One curved or flow-limited lung, followed by power series, against a general-purpose integrator and the equation written down once more. */
class CurvedLungTest {
    private static final DeviceLimits FREE = new DeviceLimits(1000, 200, 0, true, 0.06, 3, 3);
    private static final double LOW = 10, HIGH = 25;

    /** What the integrator knows of a patient. */
    private record Patient(double r, double extra, double k1, double k2, double valve, double c, double wall, double inflection, double width, double upstream, double recoil) {
        double lung(double v) {
            if (Double.isNaN(inflection)) return (1 - wall) / c * v;
            double span = c * (HIGH - LOW) / (Sigmoid.share(((1 - wall) * HIGH - inflection) / width) - Sigmoid.share(((1 - wall) * LOW - inflection) / width));
            return inflection + width * Sigmoid.depth(v / span + Sigmoid.share(-inflection / width));
        }

        double flow(double drive, double v, double outValve) {
            double d = drive - lung(v) - wall / c * v, k = d > 0 ? r + k1 : r + extra + k1 + outValve;
            double f = 2 * Math.abs(d) / (k + Math.sqrt(k * k + 4 * k2 * Math.abs(d)));
            if (d > 0) return f;
            return upstream > 0 ? -Math.min(f, Math.max(0, lung(v) + recoil) / (upstream * r)) : -f;
        }

        Mechanics mechanics() {
            Lungs lungs = Double.isNaN(inflection) ? Lungs.LINEAR : Lungs.LINEAR.withCurve(inflection, width);
            return Mechanics.linear(1000 * r, c).withLungs(1000 * r, 1000 * extra, c).withChestWall(wall).withTube(new Rohrer(1000 * k1, 1e6 * k2)).withFilterAndCircuit(0, 1000 * valve, 0)
                    .withLungs(lungs.withLimit(upstream > 0 ? new FlowLimit(upstream, recoil) : FlowLimit.NONE));
        }
    }

    private static Patient random(SplittableRandom random, boolean curved, boolean limited) {
        double c = random.nextDouble(5, 70), scale = 50 / c;
        return new Patient(random.nextDouble(0.004, 0.02) * scale, limited ? 0 : random.nextDouble(0, 0.006) * scale, random.nextDouble(0, 0.002) * scale,
                random.nextInt(3) == 0 ? 0 : random.nextDouble(1e-6, 1e-5) * scale * scale, random.nextDouble(0, 0.004) * scale, c, random.nextDouble(0, 0.5),
                curved ? random.nextDouble(2, 14) : Double.NaN, random.nextDouble(3, 9), limited ? random.nextDouble(1.5, 6) : 0, random.nextDouble(0, 4));
    }

    /** Volume after a time; restarted where the flow turns, as the resistance does. */
    private static double volume(Patient p, double v0, double seconds, DoubleUnaryOperator drive, double valve) {
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 1;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                return new double[] {p.flow(drive.applyAsDouble(t), y[0], valve)};
            }
        };
        return new DormandPrince853Integrator(1e-12, 0.01, 1e-11, 1e-12).integrate(motion, new ODEState(0, new double[] {v0}), seconds).getPrimaryState()[0];
    }

    private static void agrees(long seed, boolean curved, boolean limited, double above, double mL) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 40; i++) {
            Patient p = random(random, curved, limited);
            double peep = random.nextDouble(0, 12), ti = random.nextDouble(0.5, 1.4), period = ti * random.nextDouble(2.5, 4), push = random.nextDouble(0.5 * above, above);
            Mechanics m = p.mechanics();
            Loop loop = new Loop(new Breath(m, FREE));
            Script script = Breath.base(new Script(), m, BreathSettings.pressure(push, 60 / period, ti, 0, peep).withLimit(150));
            Now now = loop.begin(script);
            double v0 = now.get(Level.LUNG_ML), middle = ti * random.nextDouble(0.05, 0.9), late = (period - ti) * random.nextDouble(0.02, 0.9);
            double[] ours = new double[4];
            double[] at = {middle, ti, ti + late, period};
            for (int k = 0; k < 4; k++) {
                loop.to(at[k], now, script, Sink.NONE);
                ours[k] = now.get(Level.LUNG_ML);
            }
            double full = volume(p, v0, ti, t -> peep + push, 0), scale = p.c / 50;
            assertThat(ours[0]).as("%s, in inspiration", p).isCloseTo(volume(p, v0, middle, t -> peep + push, 0), within(mL * scale));
            assertThat(ours[1]).as("%s, full", p).isCloseTo(full, within(mL * scale));
            assertThat(ours[2]).as("%s, in expiration", p).isCloseTo(volume(p, full, late, t -> peep, p.valve), within(mL * scale));
            assertThat(ours[3]).as("%s, at the end", p).isCloseTo(volume(p, full, period - ti, t -> peep, p.valve), within(mL * scale));
        }
    }

    @Test
    void aCurvedLungFillsAndEmptiesAsTheIntegratorSays() {
        agrees(31, true, false, 18, 1e-5);
    }

    @Test
    void soItDoesWhereTheCurveHasGoneStraight() {
        agrees(32, true, false, 60, 1e-5);
    }

    @Test
    void flowThatIsLimitedSetsInAndEndsWhereItShould() {
        agrees(33, false, true, 18, 1e-5);
        agrees(34, true, true, 18, 1e-5);
    }

    /** What the sums of the series say must be what a quadrature says; a leak of next to nothing makes the engine take the other way. */
    @Test
    void theSumsOfTheSeriesAreTheIntegrals() {
        SplittableRandom random = new SplittableRandom(35);
        for (int i = 0; i < 20; i++) {
            Mechanics m = random(random, true, false).mechanics();
            BreathSettings s = i % 2 == 0 ? BreathSettings.pressure(14, 20, 1, 0.15, 6) : BreathSettings.support(10, 0.1, 5, 0.25);
            java.util.function.Consumer<Script> effort = c -> c.base(Knob.EFFORT, 6).base(Knob.EFFORT_RATE, 17).base(Knob.EFFORT_TIME, 0.9);
            List<double[]> closed = Bench.rows(m, s, FREE, 30, effort), quadrature = Bench.rows(m.withLeaks(0, 1e-9), s, FREE, 30, effort);
            assertThat(quadrature).hasSameSizeAs(closed);
            for (int k = 1; k < closed.size(); k++) {
                for (Column c : new Column[] {Column.MEAN_CMH2O, Column.ENERGY_J, Column.ENERGY_RESISTIVE_J, Column.ENERGY_ELASTIC_J, Column.MUSCLE_J, Column.INSPIRED_ML, Column.PEAK_CMH2O, Column.PEAK_FLOW_L_MIN}) {
                    assertThat(of(quadrature.get(k), c)).as("%s of row %d, %s", c, k, m).isCloseTo(of(closed.get(k), c), within(2e-5 * (0.1 + Math.abs(of(closed.get(k), c)))));
                }
            }
        }
    }

    /** The flow's largest lies within a step until the series is cut there. */
    @Test
    void theLargestFlowIsFoundAndNotSteppedOver() {
        SplittableRandom random = new SplittableRandom(36);
        for (int i = 0; i < 20; i++) {
            Patient p = random(random, true, false);
            Mechanics m = p.mechanics();
            double rise = 0.3, push = 12, peep = 6;
            Loop loop = new Loop(new Breath(m, FREE, false));
            Script script = Breath.base(new Script(), m, BreathSettings.pressure(push, 12, 1.2, rise, peep));
            double[] row = {0};
            Now now = loop.begin(script);
            double v0 = now.get(Level.LUNG_ML), seen = 0;
            loop.to(8, now, script, new Sink() {
                @Override public void row(Now n) {
                    if (row[0] == 0) row[0] = n.get(Column.PEAK_FLOW_L_MIN);
                }
            });
            v0 = v0 == 0 ? restingAt(p, peep) : v0;
            double v = v0;
            int steps = 300;
            for (int k = 0; k < steps; k++) {
                double from = rise * k / steps;
                v = volume(p, v, rise / steps, t -> peep + push * (from + t) / rise, 0);
                seen = Math.max(seen, p.flow(peep + push * (k + 1.0) / steps, v, 0));
            }
            assertThat(row[0]).as("%s", p).isCloseTo(seen * 0.06, within(1e-4 * seen * 0.06));
        }
    }

    private static double restingAt(Patient p, double pressure) {
        double low = -2000, high = 5000;
        for (int i = 0; i < 80; i++) {
            double mid = 0.5 * (low + high);
            if (p.lung(mid) + p.wall / p.c * mid > pressure) high = mid;
            else low = mid;
        }
        return 0.5 * (low + high);
    }
}
