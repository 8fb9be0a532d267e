package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.breath.OneCompartment;
import leeway.core.breath.TwoCompartments;
import leeway.core.lung.Tube;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One mandatory breath: closed forms and the engine beside a general-purpose integrator, Dormand-Prince 8(5,3) at 1e-8.
 * <p>{@code java -jar speed/target/speed.jar MandatoryBreath -prof gc}; the C twin: {@code speed/src/main/c/breath.c}.
 * Settings change from breath to breath (64 sets in turn), so that nothing can be worked out once.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class MandatoryBreathBenchmark {
    private static final int SETS = 64;
    private static final double VT = 420, FLOW_S = 1, PAUSE_S = 0.3, OUT_S = 2.45, PEEP = 8;
    private final double[] scale = new double[SETS], in = new double[SETS], out = new double[SETS], soft = new double[SETS];
    private final OneCompartment one = new OneCompartment();
    private final OneCompartment onePressure = new OneCompartment();
    private final DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-9, 1, 1e-8, 1e-8);
    private TwoCompartments two;
    private double[] network;
    private double integrated;
    private int turn;
    private Loop linear, tube;
    private Now linearNow, tubeNow;
    private Script linearScript, tubeScript;

    @Setup
    public void prepare() {
        for (int i = 0; i < SETS; i++) {
            scale[i] = 1 + 0.002 * i;
            in[i] = 0.011 * scale[i];
            out[i] = 0.014 * scale[i];
            soft[i] = 34 / scale[i];
        }
        one.volumeMl = onePressure.volumeMl = integrated = 34 * PEEP;
        Mechanics m = Mechanics.linear(11, 34).withFilterAndCircuit(0, 3, 0);
        BreathSettings s = BreathSettings.volume(VT, 60 / (FLOW_S + PAUSE_S + OUT_S), FLOW_S + PAUSE_S, PAUSE_S, PEEP);
        two = new TwoCompartments(Mechanics.linear(4.5, 34).withFilterAndCircuit(6, 3, 1.5).withSlow(14 / 34.0, 2.1), s);
        network = new double[] {PEEP, PEEP, PEEP};
        DeviceLimits device = DeviceLimits.strong();
        linear = new Loop(new Breath(m, device));
        linearScript = Breath.base(new Script(), m, s);
        linearNow = linear.begin(linearScript);
        Mechanics tubed = m.withTube(new Tube(7.5, 31).rohrer());
        tube = new Loop(new Breath(tubed, device));
        tubeScript = Breath.base(new Script(), tubed, s);
        tubeNow = tube.begin(tubeScript);
        for (int i = 0; i < 200; i++) {
            oneCompartmentExact();
            oneCompartmentIntegrated();
            turn = (turn + SETS - 1) % SETS;
            if (Math.abs(one.volumeMl - integrated) > 1e-5) throw new IllegalStateException("exact " + one.volumeMl + " mL, integrated " + integrated + " mL");
            turn = (turn + 1) % SETS;
        }
    }

    private int next() {
        turn = turn + 1 & SETS - 1;
        return turn;
    }

    @Benchmark
    public double oneCompartmentExact() {
        int i = next();
        one.volumeControl(in[i], out[i], soft[i], VT, FLOW_S, PAUSE_S, OUT_S, PEEP);
        return one.volumeMl + one.meanCmH2O;
    }

    @Benchmark
    public double oneCompartmentPressureExact() {
        int i = next();
        onePressure.pressureControl(in[i], out[i], soft[i], 14, FLOW_S + PAUSE_S, OUT_S, PEEP);
        return onePressure.volumeMl + onePressure.meanCmH2O;
    }

    /** The same breath by the integrator: flow, pause, expiration. */
    @Benchmark
    public double oneCompartmentIntegrated() {
        double f = scale[turn], flow = VT / FLOW_S, tau = 0.014 * f * 34 / f, rest = 34 / f * PEEP;
        double[] v = integrator.integrate(equation(x -> flow), new ODEState(0, new double[] {integrated}), FLOW_S).getPrimaryState();
        v = integrator.integrate(equation(x -> 0), new ODEState(0, v), PAUSE_S).getPrimaryState();
        integrated = integrator.integrate(equation(x -> (rest - x) / tau), new ODEState(0, v), OUT_S).getPrimaryState()[0];
        return integrated;
    }

    private static OrdinaryDifferentialEquation equation(java.util.function.DoubleUnaryOperator slope) {
        return new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 1;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                return new double[] {slope.applyAsDouble(y[0])};
            }
        };
    }

    @Benchmark
    public void twoCompartmentsExact() {
        two.breathe();
    }

    @Benchmark
    public double twoCompartmentsIntegrated() {
        double c2 = 14, c1 = 20, fast = 0.0045 * (c1 + c2 / 2.1), r0 = 0.006, r1 = fast / c1, r2 = fast * 2.1 / c2;
        network = integrator.integrate(star(VT / FLOW_S, r0, r1, r2, 0), new ODEState(0, network), FLOW_S).getPrimaryState();
        network = integrator.integrate(star(0, r0, r1, r2, 0), new ODEState(0, network), PAUSE_S).getPrimaryState();
        network = integrator.integrate(star(0, r0, r1, r2, 1 / 0.003), new ODEState(0, network), OUT_S).getPrimaryState();
        return network[1];
    }

    private static OrdinaryDifferentialEquation star(double flow, double r0, double r1, double r2, double valve) {
        double g = 1 / r0 + 1 / r1 + 1 / r2;
        return new OrdinaryDifferentialEquation() {
            @Override public int getDimension() {
                return 3;
            }
            @Override public double[] computeDerivatives(double t, double[] y) {
                double node = (y[0] / r0 + y[1] / r1 + y[2] / r2) / g;
                return new double[] {(flow - (y[0] - node) / r0 - (y[0] - PEEP) * valve) / 1.5, (node - y[1]) / r1 / 20, (node - y[2]) / r2 / 14};
            }
        };
    }

    /** The engine of the journey, all its row's numbers: one breath through the loop. */
    @Benchmark
    public double engineLinear() {
        linear.to(linearNow.tS + FLOW_S + PAUSE_S + OUT_S, linearNow, linearScript, Sink.NONE);
        return linearNow.tS;
    }

    /** The same with a tube whose resistance grows with flow. */
    @Benchmark
    public double engineWithTube() {
        tube.to(tubeNow.tS + FLOW_S + PAUSE_S + OUT_S, tubeNow, tubeScript, Sink.NONE);
        return tubeNow.tS;
    }
}
