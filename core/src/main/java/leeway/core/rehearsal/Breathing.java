package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.Noise;
import leeway.core.alarm.Speaking;
import leeway.core.breath.Asynchrony;
import leeway.core.breath.Breath;
import leeway.core.journey.JourneyRun;
import leeway.core.kit.Settings;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Transport;
import leeway.core.transport.WhatIf;

/**
 * The virtual patient along the journey at medians, with the events and what-ifs of the file: a row a breath, or samples.
 * <p>What-ifs last as long as the file says and end by themselves; nobody in this run answers an alarm.
 */
public final class Breathing {
    /** Far more than the rounding of a breath's end, far less than a breath, s. */
    private static final double ROUNDING_S = 1e-6;
    private final JourneyRun run;
    private final Stage stage;
    private final Script script;

    private Breathing(JourneyRun run, Stage stage, Script script) {
        this.run = run;
        this.stage = stage;
        this.script = script;
    }

    /** @param known every fault that the sheets describe */
    public static Breathing of(Transport t, Settings settings, Map<String, Noise> noises, List<Fault> known) {
        JourneyRun run = JourneyRun.of(t, settings, new Draw(0, 0));
        Stage stage = Journeys.of(t, settings, noises, draw -> run).stage(new Draw(0, 0));
        Script script = stage.script().copy();
        for (WhatIf what : t.whatIf()) {
            if (what.apnoea().isPresent()) JourneyRun.apnoea(what, script);
            what.fault().flatMap(name -> known.stream().filter(f -> f.name().equals(name)).findFirst()).ifPresent(f -> strike(f, what, known, run, stage, script));
        }
        return new Breathing(run, stage, script);
    }

    private static void strike(Fault fault, WhatIf what, List<Fault> known, JourneyRun run, Stage stage, Script script) {
        double atS = what.atMin() * 60, endS = what.forS().isPresent() ? atS + what.forS().getAsDouble() : Double.POSITIVE_INFINITY;
        KitFacts kit = stage.facts(run.legAt(atS));
        add(fault.effects(), atS, endS, kit, stage, script);
        fault.with().flatMap(name -> known.stream().filter(f -> f.name().equals(name)).findFirst()).ifPresent(f -> add(f.effects(), atS, endS, kit, stage, script));
    }

    private static void add(List<Effect> effects, double atS, double endS, KitFacts kit, Stage stage, Script script) {
        for (Change c : Strike.changes(effects, atS, kit, stage.script())) script.add(Double.isInfinite(endS) ? c : c.endedAt(endS));
    }

    /** The same, whose runs stop with {@link leeway.core.run.Stopped} soon after they are told to be unwanted. */
    public Breathing until(BooleanSupplier unwanted) { return new Breathing(run, stage.until(unwanted), script); }

    /** End of the journey at its medians, s. */
    public double journeyS() { return run.endS(); }

    public JourneyRun run() { return run; }

    /** Every limit that may speak, in the order of {@link Said#limit}. */
    public List<AlarmLimit> limits() { return stage.speaking().limits(); }

    /** Who listens to a run. */
    public interface Listener {
        void row(Row row);

        default void said(Said said) { }
    }

    /** An alarm that is heard. */
    public record Said(double atS, AlarmLimit limit) { }

    /** Runs to a time from the start of the journey, rows as they come; the breath that ends then is among them. */
    public void rows(double untilS, Listener listener) {
        Now n = stage.loop().begin(script);
        stage.loop().to(untilS + ROUNDING_S, n, script.copy(), new Sink() {
            @Override public void row(Now now) { listener.row(Row.of(now, run.leg(now.get(Column.AT_S)).name(), lungs())); }

            @Override public void event(double tS, int what, double value) {
                if (what >= Speaking.FIRST_EVENT && Speaking.whatOf(what) == Speaking.HEARD) listener.said(new Said(tS, limits().get(Speaking.limitOf(what))));
            }
        });
    }

    /** A sample of the breath: airway pressure cmH2O, flow L/min, lung volume above its relaxation volume mL, muscle pressure cmH2O. */
    @FunctionalInterface
    public interface Samples {
        void at(double tS, double pressureCmH2O, double flowLPerMin, double volumeMl, double muscleCmH2O);

        /** Of two lungs or parts ({@link Breathing#lungs}), just before: volume of each above relaxation mL, alveolar pressure of each cmH2O. */
        default void lungs(double firstMl, double secondMl, double firstCmH2O, double secondCmH2O) { }
    }

    /** What the two lungs or parts of this patient are called; absent where there is one. */
    public Optional<LungRow.Names> lungs() { return LungRow.names(run.ventilated().mechanics().lungs()); }

    /** Runs to a time, sampled evenly from 0. */
    public void waves(double untilS, double perSecond, Samples samples) {
        Breath breath = run.parts().stream().filter(Breath.class::isInstance).map(Breath.class::cast).findFirst().orElseThrow(() -> new AssertionError("no breath"));
        Now n = stage.loop().begin(script);
        double[] eight = new double[8];
        boolean two = lungs().isPresent();
        stage.loop().to(untilS, n, script.copy(), new Sink() {
            private long next;

            @Override public void stretch(Now now, double toS) {
                for (double tS = next / perSecond; tS < toS; tS = ++next / perSecond) {
                    breath.sample(Math.max(0, tS - now.tS), eight);
                    if (two) samples.lungs(eight[4], eight[5], eight[6], eight[7]);
                    samples.at(tS, eight[0], eight[1] * 0.06, eight[2], eight[3]);
                }
            }
        });
    }

    /**
     * What the patient's own muscles had to do with a breath; absent where they did nothing.
     *
     * @param triggerDelayS         from the start of the effort to the first gas
     * @param workJ                 work of breathing: muscle pressure over volume, from the start of the effort
     * @param pressureTimeCmH2OS    muscle pressure over time, from the start of the effort
     * @param p01CmH2O              what the effort would have drawn from a closed airway in 0.1 s
     * @param patientShare          the patient's share of the work above PEEP in this inspiration
     * @param inspiredBy            ventilator, patient or both, by that share
     */
    public record Own(OptionalDouble triggerDelayS, OptionalDouble workJ, OptionalDouble workJPerL, OptionalDouble pressureTimeCmH2OS, OptionalDouble p01CmH2O,
                      OptionalDouble patientShare, Optional<String> inspiredBy, List<Asynchrony> asynchrony, boolean sigh, int coughs, boolean volumeNotReached,
                      boolean pressureLimited, OptionalDouble inspiratoryTimeS) {
        /** Below the one and above the other share a breath counts as one side's alone; common practice, no source. */
        private static final double ALONE = 0.05;

        static Own of(Now n, boolean breath) {
            double work = n.get(Column.MUSCLE_J), litres = n.get(Column.INSPIRED_ML) / 1000, time = n.get(Column.PRESSURE_TIME_CMH2O_S);
            double given = Math.max(0, n.get(Column.ENERGY_J) - n.get(Column.ENERGY_PEEP_J)), share = work / (work + given);
            boolean acts = work > 0, shared = breath && work + given > 0;
            return new Own(some(n.get(Column.TRIGGER_DELAY_S), breath), some(work, acts), some(work / litres, acts && litres > 0), some(time, time > 0), some(n.get(Column.P01_CMH2O), true),
                    some(share, acts && shared), shared ? Optional.of(share < ALONE ? "ventilator" : share > 1 - ALONE ? "patient" : "both") : Optional.empty(),
                    Asynchrony.of(n.get(Column.ASYNCHRONY)), n.get(Column.SIGH) > 0, Double.isNaN(n.get(Column.COUGHS)) ? 0 : (int) n.get(Column.COUGHS),
                    breath && n.get(Column.VOLUME_NOT_REACHED) > 0, breath && n.get(Column.PRESSURE_LIMITED) > 0,
                    some(n.get(Column.INSPIRATORY_TIME_S), breath));
        }

        private static OptionalDouble some(double value, boolean known) { return known && !Double.isNaN(value) ? OptionalDouble.of(value) : OptionalDouble.empty(); }
    }

    /** Something to mark along the waves: who started a breath, and where patient and ventilator missed each other. */
    public record Mark(double atS, String words) { }

    /** The marks of a run to a time; {@code clock} with those of breaths that only the clock started. */
    public List<Mark> marks(double untilS, boolean clock) {
        List<Mark> marks = new ArrayList<>();
        rows(untilS, r -> {
            List<String> words = new ArrayList<>();
            r.startedBy().filter(by -> clock || !by.equals("clock")).ifPresent(words::add);
            r.own().asynchrony().forEach(a -> words.add(a.words()));
            if (r.own().sigh()) words.add("sigh");
            if (r.own().coughs() > 0) words.add("cough");
            if (!words.isEmpty()) marks.add(new Mark(r.atS(), String.join(", ", words)));
        });
        return List.copyOf(marks);
    }

    /**
     * One breath, or 2 s without one; what does not exist is absent.
     *
     * @param mandatory true for an inflation of the set kind, whoever starts it, and for backup; absent where there was no breath
     * @param startedBy the clock, the patient, nobody (a false trigger) or backup; absent where there was no breath
     */
    public record Row(double atS, String leg, Optional<Boolean> mandatory, Optional<String> startedBy, double inspiredMl, double expiredMl, double inspiredAtVentilatorMl,
                      OptionalDouble peakCmH2O, OptionalDouble plateauCmH2O, OptionalDouble peepCmH2O, OptionalDouble autoPeepCmH2O, OptionalDouble drivingCmH2O,
                      OptionalDouble meanCmH2O, OptionalDouble transpulmonaryCmH2O, OptionalDouble mechanicalEnergyJ, OptionalDouble fio2, OptionalDouble etco2MmHg,
                      OptionalDouble inspiredCo2MmHg, OptionalDouble paco2MmHg, OptionalDouble pao2MmHg, OptionalDouble sao2, OptionalDouble spo2, OptionalDouble ph,
                      OptionalDouble oxygenDrawLPerMin, OptionalDouble loadW, int missedEfforts, Own own, Optional<EnergyShares> energy, Optional<LungRow> lungs) {
        /** Arterial saturation below which the model's circulation, which goes on, is no longer a patient's. Common practice, no source. */
        private static final double LEAST_SAO2 = 0.5;
        private static final List<String> STARTED = List.of("clock", "patient", "nobody", "backup");

        static Row of(Now n, String leg, Optional<LungRow.Names> lungs) {
            int kind = (int) n.get(Column.KIND);
            boolean breath = kind > 0;
            int by = (int) n.get(Column.STARTED_BY);
            return new Row(n.get(Column.AT_S), leg, breath ? Optional.of(kind == 1) : Optional.empty(), breath && by >= 0 && by < STARTED.size() ? Optional.of(STARTED.get(by)) : Optional.empty(),
                    n.get(Column.INSPIRED_ML), n.get(Column.EXPIRED_ML), n.get(Column.INSPIRED_AT_VENTILATOR_ML), known(n, Column.PEAK_CMH2O), known(n, Column.PLATEAU_CMH2O),
                    known(n, Column.PEEP_CMH2O), known(n, Column.AUTO_PEEP_CMH2O), known(n, Column.DRIVING_CMH2O), known(n, Column.MEAN_CMH2O), known(n, Column.TRANSPULMONARY_CMH2O),
                    known(n, Column.ENERGY_J), known(n, Column.FIO2), known(n, Column.ETCO2_MMHG), known(n, Column.INSPIRED_CO2_MMHG), known(n, Column.PACO2_MMHG),
                    known(n, Column.PAO2_MMHG), known(n, Column.SAO2), known(n, Column.SPO2), known(n, Column.PH), known(n, Column.OXYGEN_DRAW_L_MIN), known(n, Column.LOAD_W),
                    Double.isNaN(n.get(Column.MISSED_EFFORTS)) ? 0 : (int) n.get(Column.MISSED_EFFORTS), Own.of(n, breath), EnergyShares.of(n, breath), LungRow.of(n, lungs));
        }

        /** Whether the saturation is lower than a heart bears for long: such a row says only that harm came earlier. */
        public boolean beyondModel() { return sao2.isPresent() && sao2.getAsDouble() < LEAST_SAO2; }

        private static OptionalDouble known(Now n, Column c) {
            double v = n.get(c);
            return Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v);
        }
    }
}
