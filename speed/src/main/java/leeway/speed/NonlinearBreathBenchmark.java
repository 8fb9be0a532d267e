package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.lung.Lungs;
import leeway.core.lung.Rohrer;
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
 * A pressure-controlled breath into a lung whose curve is a sigmoid, beside a linear chest wall and through a tube: the engine
 * of the journey, all numbers of a row included, beside the general-purpose integrator that finds the volumes alone, at equal
 * error. Which tolerance that is, each run finds out against the integrator at 1e-13.
 * {@code java -jar speed/target/speed.jar NonlinearBreath -prof gc}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class NonlinearBreathBenchmark {
    private static final double C = 34, WALL = 0.35, INFLECTION = 8, WIDTH = 6, LOW = 10, HIGH = 25, R = 0.011, K1 = 0.0012, K2 = 6.3e-6, VALVE = 0.003;
    private static final double PEEP = 8, ABOVE = 14, RISE = 0.15, TI = 1, PERIOD = 3;
    private static final double SPAN = C * (HIGH - LOW) / (share(((1 - WALL) * HIGH - INFLECTION) / WIDTH) - share(((1 - WALL) * LOW - INFLECTION) / WIDTH)), REST = share(-INFLECTION / WIDTH);
    static final int BREATHS = 16;
    private Loop loop;
    private Now now;
    private Script script;
    private double volume;
    /** The peer's tolerance of equal error, and what both err, mL. */
    double tolerance, ourErrorMl, peerErrorMl;

    private static double share(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    @Setup
    public void prepare() {
        Mechanics m = Mechanics.linear(1000 * R, C).withChestWall(WALL).withTube(new Rohrer(1000 * K1, 1e6 * K2)).withFilterAndCircuit(0, 1000 * VALVE, 0)
                .withLungs(Lungs.LINEAR.withCurve(INFLECTION, WIDTH));
        loop = new Loop(new Breath(m, new DeviceLimits(1000, 150, 0, true, 0.08, 3, 3)));
        script = Breath.base(new Script(), m, BreathSettings.pressure(ABOVE, 60 / PERIOD, TI, RISE, PEEP));
        now = loop.begin(script);
        Now from = now.copy();
        double start = now.get(Level.LUNG_ML), full, end;
        Now k = now.copy();
        loop.to(TI, k, script, Sink.NONE);
        full = k.get(Level.LUNG_ML);
        loop.to(PERIOD, k, script, Sink.NONE);
        end = k.get(Level.LUNG_ML);
        now = from;
        double[] exact = breath(start, 1e-13);
        ourErrorMl = Math.max(Math.abs(full - exact[0]), Math.abs(end - exact[1]));
        if (!(ourErrorMl < 1e-2)) throw new IllegalStateException("engine %s and %s mL, integrator %s and %s mL".formatted(full, end, exact[0], exact[1]));
        for (tolerance = 1e-3; tolerance > 1e-12; tolerance /= 2) {
            double[] peer = breath(start, tolerance);
            peerErrorMl = Math.max(Math.abs(peer[0] - exact[0]), Math.abs(peer[1] - exact[1]));
            if (peerErrorMl <= ourErrorMl) break;
        }
        volume = start;
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
        double[] b = breath(volume, tolerance);
        volume = b[1];
        return b[0];
    }

    private static double recoil(double v) {
        double u = v / SPAN + REST;
        return INFLECTION + WIDTH * Math.log(u / (1 - u)) + WALL / C * v;
    }

    private interface Paw {
        double at(double t);
    }

    private static double flow(double d, double valve) {
        double k = R + K1 + valve, root = 2 * Math.abs(d) / (k + Math.sqrt(k * k + 4 * K2 * Math.abs(d)));
        return d > 0 ? root : -root;
    }

    /** Volume at the end of inspiration and of expiration. */
    private static double[] breath(double start, double tolerance) {
        Paw rise = t -> PEEP + ABOVE * t / RISE;
        ODEStateAndDerivative turned = phase(0, RISE, start, rise, 0, tolerance, true);
        double v = phase(turned.getTime(), RISE, turned.getPrimaryState()[0], rise, 0, tolerance, false).getPrimaryState()[0];
        double full = phase(RISE, TI, v, t -> PEEP + ABOVE, 0, tolerance, false).getPrimaryState()[0];
        return new double[] {full, phase(TI, PERIOD, full, t -> PEEP, VALVE, tolerance, false).getPrimaryState()[0]};
    }

    private static ODEStateAndDerivative phase(double from, double to, double v, Paw paw, double valve, double tolerance, boolean untilTurned) {
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 1;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                return new double[] {flow(paw.at(t) - recoil(y[0]), valve)};
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.5, tolerance, tolerance);
        if (untilTurned) integrator.addEventDetector(new Turn(paw));
        return integrator.integrate(motion, new ODEState(from, new double[] {v}), to);
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
            return paw.at(state.getTime()) - recoil(state.getPrimaryState()[0]);
        }
    }
}
