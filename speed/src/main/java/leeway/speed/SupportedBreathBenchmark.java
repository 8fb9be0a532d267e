package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.lung.Effort;
import leeway.core.run.Knob;
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
 * A breath that the patient starts and the flow ends: the engine beside the integrator with event detection (trigger,
 * cycling-off), at 1e-8. {@code java -jar speed/target/speed.jar SupportedBreath -prof gc}
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class SupportedBreathBenchmark {
    private static final double R = 0.014, C = 40, PEEP = 5, ABOVE = 10, RISE = 0.1, EFFORT = 6, EFFORT_S = 0.9, TRIGGER = 2 / 0.06, DELAY = 0.08, OFF = 0.25, PERIOD = 60.0 / 16;
    static final int BREATHS = 16;
    private Loop loop;
    private Now now;
    private Script script;
    private double volume = C * PEEP;

    @Setup
    public void prepare() {
        Mechanics m = Mechanics.linear(14, C);
        loop = new Loop(new Breath(m, new DeviceLimits(1000, 100, 0, true, DELAY, 3, 3)));
        script = Breath.base(new Script(), m, BreathSettings.support(ABOVE, RISE, PEEP, OFF)).base(Knob.EFFORT, EFFORT).base(Knob.EFFORT_RATE, 16).base(Knob.EFFORT_TIME, EFFORT_S);
        now = loop.begin(script);
        double[] ours = {0};
        loop.to(60, now, script, new Sink() {
            @Override public void row(Now n) {
                ours[0] = n.get(leeway.core.run.Column.PLATEAU_CMH2O) * C;
            }
        });
        double peer = 0;
        for (int i = 0; i < 12; i++) peer = integratedFull();
        if (Math.abs(ours[0] - peer) > 1e-4) throw new IllegalStateException("engine " + ours[0] + " mL at the end of support, integrator " + peer + " mL");
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
        return integratedFull();
    }

    private static double muscle(double t) {
        for (int i = 0; i < Effort.STRETCHES; i++) {
            double a = Effort.atS(i, EFFORT_S), b = Effort.atS(i + 1, EFFORT_S);
            if (t < b) return t < a ? 0 : EFFORT * (Effort.height(i) + (Effort.height(i + 1) - Effort.height(i)) * (t - a) / (b - a));
        }
        return 0;
    }

    private static double flow(double t, double v, double paw) {
        return (paw + muscle(t) - v / C) / R;
    }

    private interface Paw {
        double at(double t);
    }

    /** Integrates until an event or the time; answers time and volume. */
    private static double[] phase(double from, double to, double v, Paw paw, double target, boolean rising) {
        OrdinaryDifferentialEquation motion = new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 1;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                return new double[] {flow(t, y[0], paw.at(t))};
            }
        };
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 0.1, 1e-8, 1e-8);
        if (!Double.isNaN(target)) integrator.addEventDetector(new Crossing(paw, target, rising));
        ODEStateAndDerivative end = integrator.integrate(motion, new ODEState(from, new double[] {v}), to);
        return new double[] {end.getTime(), end.getPrimaryState()[0]};
    }

    private record Crossing(Paw paw, double target, boolean rising) implements ODEEventDetector {
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
            return (state, detector, increasing) -> increasing == rising ? Action.STOP : Action.CONTINUE;
        }
        @Override public double g(ODEStateAndDerivative state) {
            return flow(state.getTime(), state.getPrimaryState()[0], paw.at(state.getTime())) - target;
        }
    }

    /** One breath from the start of the effort; answers the volume at the end of support. */
    private double integratedFull() {
        double[] s = phase(0, PERIOD, volume, t -> PEEP, TRIGGER, true);
        double begin = s[0] + DELAY;
        s = phase(s[0], begin, s[1], t -> PEEP, Double.NaN, true);
        s = phase(begin, begin + RISE, s[1], t -> PEEP + ABOVE * (t - begin) / RISE, Double.NaN, true);
        double peak = flow(begin + RISE, s[1], PEEP + ABOVE);
        // the flow still grows with the effort for a while: its largest is followed in small pieces
        double t = begin + RISE, v = s[1];
        for (int i = 0; i < Effort.STRETCHES; i++) {
            double knot = Effort.atS(i, EFFORT_S);
            if (knot <= t) continue;
            double[] next = phase(t, knot, v, x -> PEEP + ABOVE, Double.NaN, true);
            double f = flow(knot, next[1], PEEP + ABOVE);
            if (f < peak) break;
            peak = f;
            t = knot;
            v = next[1];
        }
        s = phase(t, begin + 3, v, x -> PEEP + ABOVE, OFF * peak, false);
        double full = s[1];
        volume = phase(s[0], PERIOD, full, x -> PEEP, Double.NaN, true)[1];
        return full;
    }
}
