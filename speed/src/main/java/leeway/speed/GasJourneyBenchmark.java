package leeway.speed;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import leeway.core.body.GasExchange;
import leeway.core.body.PatientModel;
import leeway.core.body.SteadyGases;
import leeway.core.body.Ventilation;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
import leeway.core.run.Change;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Flux;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.PatientEntry.Sex;
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
 * The gases of a journey, breath by breath in the loop, against the same equations with continuous ventilation in a
 * general-purpose integrator (Dormand-Prince 8(5,3), 1e-6). The rate goes from 15 to 20 a minute after five minutes.
 * <p>Run: {@code java -jar speed/target/speed.jar GasJourney}. Before anything is timed the two must agree on PaCO2 within
 * 0.5 mmHg after 30 minutes: one has breaths, the other has none.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class GasJourneyBenchmark {
    private static final double TIDAL = 450, DEAD = 120, RATE = 15, LATER = 20, CHANGE_S = 300, FIO2 = 0.5, DRY = 713, SCALE = 760 * 310.15 / 273.15;
    private static final PatientModel PATIENT = new PatientModel(Sex.MALE, 40, true, 175, 70, 70, 55, 6, 0, 0.3, 2000, 0.1, 0, 0, DEAD, 0, OptionalDouble.empty(), 220, 176, 5, 4900, 14, 26.86, 0, 37, true, List.of());

    /** A breath that only moves gas: a third of the time in, the rest out. */
    private static final class PlainBreath implements Part {
        private int at;
        private double periodS;

        @Override public void claim(Claims claims) { at = claims.state(2); }

        @Override public void retune(Now n) { periodS = 60 / n.get(Knob.RATE_SET); }

        @Override public void begin(Now n) { n.y[at] = periodS / 3; }

        @Override public double nextS(Now n, double latestS) { return n.y[at]; }

        @Override public void pass(Now n, double dtS) {
            boolean in = n.y[at + 1] == 0;
            if (in) n.flux[Flux.IN_ML.ordinal()] = TIDAL * dtS / (periodS / 3);
            else n.flux[Flux.OUT_ML.ordinal()] = TIDAL * dtS / (periodS * 2 / 3);
            n.level[Level.LUNG_ML.ordinal()] = in ? TIDAL : 0;
        }

        @Override public void hit(Now n, Script script, Sink out) {
            boolean in = n.y[at + 1] == 0;
            n.y[at + 1] = in ? 1 : 0;
            n.y[at] = n.tS + (in ? periodS * 2 / 3 : periodS / 3);
            n.rowEnds = !in;
        }
    }

    @Setup
    public void agree() {
        double ours = loop(1800), theirs = integrator(1800);
        if (Math.abs(ours - theirs) > 0.5) throw new IllegalStateException("PaCO2 " + ours + " against " + theirs);
    }

    @Benchmark
    public double loop10Min() { return loop(600); }

    @Benchmark
    public double loop8Hours() { return loop(8 * 3600); }

    @Benchmark
    public double integrator10Min() { return integrator(600); }

    private static double loop(double endS) {
        Script script = GasExchange.base(new Script(), PATIENT).base(Knob.FIO2_SET, FIO2).base(Knob.RATE_SET, RATE);
        script.add(Change.at(CHANGE_S, Knob.RATE_SET, How.SET, LATER));
        Loop loop = new Loop(new PlainBreath(), new GasExchange(PATIENT, new Ventilation(TIDAL, RATE, FIO2, 760, 0), false));
        Now now = loop.begin(script);
        loop.to(endS, now, script, Sink.NONE);
        return now.get(Column.PACO2_MMHG);
    }

    /** Alveolar oxygen and carbon dioxide, three tissues, their veins, the large veins and two arteries, mL and mL/dL. */
    private static final class Equations implements OrdinaryDifferentialEquation {
        private static final double[] STORE = {0.12 * 70, 0.26 * 70, 0.64 * 70}, FLOW = {0.50, 0.36, 0.14}, MADE = {0.50, 0.30, 0.20}, VEIN = {0.04 * 49, 0.17 * 49, 0.30 * 49};
        private final Blood blood = PATIENT.blood();
        private final BloodPoint lung = new BloodPoint(), tissue = new BloodPoint();
        private final double lungMl = PATIENT.frcMl() + TIDAL / 3, q = PATIENT.cardiacOutputLPerMin() / 6;

        @Override public int getDimension() { return 17; }

        @Override public double[] computeDerivatives(double t, double[] y) {
            double[] d = new double[17];
            double air = (t < CHANGE_S ? RATE : LATER) / 60 * (TIDAL - DEAD) * DRY / SCALE, all = lungMl * DRY / SCALE;
            lung.ofTensions(blood, y[0] / all * DRY, y[1] / all * DRY);
            double perfused = q * (1 - PATIENT.shunt()), o2 = perfused * (lung.oxygenMlPerDl - y[15]), co2 = perfused * (lung.carbonDioxideMlPerDl - y[16]);
            double out = air - o2 - co2;
            d[0] = air * FIO2 - out * y[0] / all - o2;
            d[1] = -out * y[1] / all - co2;
            double freshO2 = (q * y[15] + o2) / q, freshCo2 = (q * y[16] + co2) / q, way = 4.9, artery = 7.35, large = 11.76;
            d[11] = q / way * (freshO2 - y[11]);
            d[12] = q / way * (freshCo2 - y[12]);
            d[13] = q / artery * (y[11] - y[13]);
            d[14] = q / artery * (y[12] - y[14]);
            double leftO2 = y[13] - PATIENT.vo2MlPerMin() / 60 / q, meetO2 = 0, meetCo2 = 0;
            for (int i = 0; i < 3; i++) {
                // a store in equilibrium with blood of this oxygen content: content at the store's tension
                tissue.ofTissue(blood, leftO2, 1, 0, y[2 + i] / STORE[i]);
                d[2 + i] = MADE[i] * PATIENT.vco2MlPerMin() / 60 + FLOW[i] * q * (y[14] - tissue.carbonDioxideMlPerDl);
                d[5 + 2 * i] = FLOW[i] * q / VEIN[i] * (leftO2 - y[5 + 2 * i]);
                d[6 + 2 * i] = FLOW[i] * q / VEIN[i] * (tissue.carbonDioxideMlPerDl - y[6 + 2 * i]);
                meetO2 += FLOW[i] * y[5 + 2 * i];
                meetCo2 += FLOW[i] * y[6 + 2 * i];
            }
            d[15] = q / large * (meetO2 - y[15]);
            d[16] = q / large * (meetCo2 - y[16]);
            return d;
        }
    }

    private static double integrator(double endS) {
        Equations equations = new Equations();
        Blood blood = PATIENT.blood();
        SteadyGases steady = SteadyGases.of(PATIENT, new Ventilation(TIDAL, RATE, FIO2, 760, 0));
        BloodPoint point = new BloodPoint();
        point.ofTensions(blood, steady.pao2MmHg(), steady.paco2MmHg());
        double arterialO2 = point.oxygenMlPerDl, arterialCo2 = point.carbonDioxideMlPerDl, q = equations.q;
        double venousO2 = arterialO2 - PATIENT.vo2MlPerMin() / 60 / q, difference = PATIENT.vco2MlPerMin() / 60 / q;
        double[] y = new double[17];
        double all = equations.lungMl * DRY / SCALE;
        y[0] = steady.palvO2MmHg() / DRY * all;
        y[1] = steady.etco2MmHg() / DRY * all;
        for (int i = 0; i < 3; i++) {
            point.ofContents(blood, venousO2, arterialCo2 + difference * Equations.MADE[i] / Equations.FLOW[i]);
            y[2 + i] = Equations.STORE[i] * point.pco2MmHg;
        }
        for (int i = 0; i < 3; i++) {
            y[5 + 2 * i] = venousO2;
            y[6 + 2 * i] = arterialCo2 + difference * Equations.MADE[i] / Equations.FLOW[i];
        }
        y[15] = venousO2;
        y[16] = arterialCo2 + difference;
        y[11] = y[13] = arterialO2;
        y[12] = y[14] = arterialCo2;
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-6, 60, 1e-6, 1e-6);
        double[] end = integrator.integrate(equations, new ODEState(0, y), Math.min(endS, CHANGE_S)).getPrimaryState();
        if (endS > CHANGE_S) end = integrator.integrate(equations, new ODEState(CHANGE_S, end), endS).getPrimaryState();
        point.ofContents(blood, end[11], end[12]);
        return point.pco2MmHg;
    }
}
