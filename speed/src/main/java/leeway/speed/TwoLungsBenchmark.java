package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.lung.Lungs;
import leeway.core.lung.Rohrer;
import leeway.core.run.Column;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A pressure-controlled breath into a fast and a slow part of one lung, in one chest wall and through one tube: the engine of
 * the journey, all numbers of a row included, beside the general-purpose integrator that finds the two volumes alone, at equal
 * error. Which tolerance that is, each run finds out against the integrator at 1e-13.
 * {@code java -jar speed/target/speed.jar TwoLungs -prof gc}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class TwoLungsBenchmark {
    private static final double C = 34, WALL = 0.35, SLOW = 0.4, TIMES = 4, R = 0.011, K1 = 0.0012, K2 = 6.3e-6, VALVE = 0.003;
    private static final double PEEP = 8, ABOVE = 14, RISE = 0.15, TI = 1, PERIOD = 3;
    private static final double FAST_R = R * (1 - SLOW + SLOW / TIMES) / (1 - SLOW), SLOW_R = FAST_R * (1 - SLOW) * TIMES / SLOW;
    static final int BREATHS = 16;
    private Loop loop;
    private Now now;
    private Script script;
    private double[] volumes;
    /** The peer's tolerance of equal error, and what both err, mL. */
    double tolerance, ourErrorMl, peerErrorMl;

    @Setup
    public void prepare() {
        Mechanics m = Mechanics.linear(1000 * R, C).withChestWall(WALL).withTube(new Rohrer(1000 * K1, 1e6 * K2)).withFilterAndCircuit(0, 1000 * VALVE, 0)
                .withLungs(Lungs.LINEAR.withSlow(SLOW, TIMES));
        loop = new Loop(new Breath(m, new DeviceLimits(1000, 150, 0, true, 0.08, 3, 3)));
        script = Breath.base(new Script(), m, BreathSettings.pressure(ABOVE, 60 / PERIOD, TI, RISE, PEEP));
        now = loop.begin(script);
        Now from = now.copy();
        double[] last = new double[2];
        loop.to(PERIOD * 40, now, script, new Sink() {
            @Override public void row(Now n) {
                last[0] = n.get(Column.FIRST_END_ML);
                last[1] = n.get(Column.SECOND_END_ML);
            }
        });
        Now k = now.copy();
        loop.to(now.tS + TI, k, script, Sink.NONE);
        double full = k.get(Level.LUNG_ML);
        loop.to(now.tS + PERIOD, k, script, Sink.NONE);
        double end = k.get(Level.LUNG_ML);
        double[] exact = breath(last, 1e-13);
        ourErrorMl = Math.max(Math.abs(full - exact[0]), Math.abs(end - exact[1] - exact[2]));
        if (!(ourErrorMl < 2e-2)) throw new IllegalStateException("engine %s and %s mL, integrator %s and %s mL".formatted(full, end, exact[0], exact[1] + exact[2]));
        for (tolerance = 1e-2; tolerance > 1e-12; tolerance /= 2) {
            double[] peer = breath(last, tolerance);
            peerErrorMl = Math.max(Math.abs(peer[0] - exact[0]), Math.abs(peer[1] + peer[2] - exact[1] - exact[2]));
            if (peerErrorMl <= ourErrorMl) break;
        }
        volumes = last;
    }

    /** Some breaths in one run, as a journey runs them. */
    @Benchmark
    @OperationsPerInvocation(BREATHS)
    public double engine() {
        loop.to(now.tS + BREATHS * PERIOD, now, script, Sink.NONE);
        return now.tS;
    }

    @Benchmark
    public double integrated() {
        double[] b = breath(volumes, tolerance);
        volumes = new double[] {b[1], b[2]};
        return b[0];
    }

    private interface Paw {
        double at(double t);
    }

    /** Pressure behind the tube without flow, of both parts together. */
    private static double back(double[] v) {
        double wall = WALL / C * (v[0] + v[1]), own = (1 - WALL) / C;
        return (own * v[0] / (1 - SLOW) / FAST_R + own * v[1] / SLOW / SLOW_R) / (1 / FAST_R + 1 / SLOW_R) + wall;
    }

    private static double[] flows(double paw, double[] v, double valve) {
        double back = back(v), wall = WALL / C * (v[0] + v[1]), own = (1 - WALL) / C, behind = 1 / (1 / FAST_R + 1 / SLOW_R), d = paw - back, k = behind + K1 + valve;
        double all = 2 * d / (k + Math.sqrt(k * k + 4 * K2 * Math.abs(d))), node = back + behind * all;
        return new double[] {(node - own * v[0] / (1 - SLOW) - wall) / FAST_R, (node - own * v[1] / SLOW - wall) / SLOW_R};
    }

    /** Volume at the end of inspiration, both volumes at the end of expiration. */
    private static double[] breath(double[] start, double tolerance) {
        Paw rise = t -> PEEP + ABOVE * t / RISE;
        ODEStateAndDerivative turned = phase(0, RISE, start, rise, 0, tolerance, true);
        double[] v = phase(turned.getTime(), RISE, turned.getPrimaryState(), rise, 0, tolerance, false).getPrimaryState();
        double[] full = phase(RISE, TI, v, t -> PEEP + ABOVE, 0, tolerance, false).getPrimaryState();
        double[] end = phase(TI, PERIOD, full, t -> PEEP, VALVE, tolerance, false).getPrimaryState();
        return new double[] {full[0] + full[1], end[0], end[1]};
    }

    private static ODEStateAndDerivative phase(double from, double to, double[] v, Paw paw, double valve, double tolerance, boolean untilTurned) {
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 2;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                return flows(paw.at(t), y, valve);
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.5, tolerance, tolerance);
        if (untilTurned) integrator.addEventDetector(new Turn(paw));
        return integrator.integrate(motion, new ODEState(from, v), to);
    }

    private record Turn(Paw paw) implements ODEEventDetector {
        @Override public AdaptableInterval getMaxCheckInterval() {
            return AdaptableInterval.of(0.05);
        }
        @Override public int getMaxIterationCount() {
            return 100;
        }
        @Override public BracketingNthOrderBrentSolver getSolver() {
            return new BracketingNthOrderBrentSolver(0, 1e-10, 0, 5);
        }
        @Override public ODEEventHandler getHandler() {
            return (state, detector, increasing) -> Action.STOP;
        }
        @Override public double g(ODEStateAndDerivative state) {
            return paw.at(state.getTime()) - back(state.getPrimaryState());
        }
    }
}
