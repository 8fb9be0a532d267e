package leeway.core.map;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import leeway.core.body.PatientModel;
import leeway.core.body.PatientModel.Change;
import leeway.core.body.Posterior;
import leeway.core.body.Unknown;
import leeway.core.journey.LegState;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.kit.Setting;
import leeway.core.lung.LungDoubt;
import leeway.core.lung.Lungs;
import leeway.core.settings.Measure;
import leeway.core.start.Start;
import leeway.core.start.SteadyModel;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * What moves the main results most: each uncertain input is set to the low and the high end of what 19 of 20 of its kind
 * lie in, all others stay at their medians. After a fit to a blood gas the inputs of gas exchange take with them what the gas
 * ties to them: more dead space, then less metabolism.
 * <p>Leaves out that inputs of the sheet go together (a stiff lung usually has more shunt), and that a crew would answer a change.
 */
public record Sensitivity(List<Result> results) {
    /** A value that the file gives is known within this share; the same as in the draws of {@code leeway.core.body.Doubt}. Common practice, no source. */
    private static final double MEASURED = 0.12;

    public Sensitivity { results = List.copyOf(results); }

    /** A main result with the inputs that move it, the largest swing first; those that do not are left out. */
    public record Result(String name, String unit, double central, List<Swing> swings) {
        public Result { swings = List.copyOf(swings); }
    }

    /**
     * One input's two ends.
     *
     * @param low    the low end in words, "24 mL/cmH2O"
     * @param atLow  the result there
     */
    public record Swing(String input, String low, String high, double atLow, double atHigh) {
        public double span() { return Math.abs(atHigh - atLow); }
    }

    /** An input at one end: the patient and the oxygen that is really breathed. */
    private record Case(Ventilated ventilated, double fio2) { }

    private record Input(String name, String low, String high, Case atLow, Case atHigh) { }

    /** The tornado of a transport at its starting settings. */
    public static Sensitivity of(Start start, Transport t) {
        List<Input> inputs = inputs(start, t);
        List<Result> results = new ArrayList<>();
        for (Measure m : List.of(Measure.PLATEAU, Measure.AUTO_PEEP, Measure.PACO2, Measure.PH, Measure.SATURATION, Measure.VOLUME_PER_WEIGHT)) measure(start, m, inputs, results);
        oxygen(start, t, results);
        return new Sensitivity(results);
    }

    private static void measure(Start start, Measure m, List<Input> inputs, List<Result> results) {
        double central = value(start, new Case(start.ventilated(), start.settings().get(Setting.FIO2, 0.21)), m);
        if (Double.isNaN(central)) return;
        List<Swing> swings = new ArrayList<>();
        for (Input i : inputs) swings.add(new Swing(i.name(), i.low(), i.high(), value(start, i.atLow(), m), value(start, i.atHigh(), m)));
        add(results, m.words(), m.unit().symbol().isEmpty() ? "1" : m.unit().symbol(), central, swings, 0.02 * m.matters());
    }

    private static void add(List<Result> results, String name, String unit, double central, List<Swing> swings, double least) {
        List<Swing> moving = swings.stream().filter(s -> s.span() > least).sorted(Comparator.comparingDouble(Swing::span).reversed().thenComparing(Swing::input)).toList();
        if (!moving.isEmpty()) results.add(new Result(name, unit, central, moving));
    }

    private static double value(Start start, Case c, Measure m) {
        return SteadyModel.value(Steady.of(c.ventilated(), start.settings(), start.barometerHPa(), c.fio2()), c.ventilated().patient().predictedKg(), m);
    }

    private static List<Input> inputs(Start start, Transport t) {
        Ventilated v = start.ventilated();
        PatientModel p = v.patient();
        Illness ill = t.illness();
        double fio2 = start.settings().get(Setting.FIO2, 0.21);
        List<Input> in = new ArrayList<>();
        boolean ownC = t.patient().lungs().complianceMlPerCmH2O().isPresent();
        boolean ownR = t.patient().lungs().resistanceCmH2OSPerL().isPresent() || t.patient().lungs().resistanceWithTubeCmH2OSPerL().isPresent();
        factor(in, start, "compliance", "mL/cmH2O", p.complianceMlPerCmH2O(), times(ill.complianceTimes(), ownC), f -> c -> c.mechanics(f, 1));
        factor(in, start, "resistance", "cmH2O.s/L", p.resistanceCmH2OSPerL(), times(ill.resistanceTimes(), ownR), f -> c -> c.mechanics(1, f));
        for (LungDoubt d : v.mechanics().lungs().doubts()) lung(in, start, d);
        if (p.living()) {
            if (v.known().isPresent()) fitted(in, start, v.known().get()); else sheet(in, start, t);
            double error = t.ventilator().gas().fio2Error();
            if (error > 0 && fio2 < 1) {
                double low = Math.max(0.21, fio2 - error);
                double high = Math.min(1, fio2 + error);
                in.add(new Input("oxygen delivered", n(100 * low) + " %", n(100 * high) + " %", new Case(v, low), new Case(v, high)));
            }
        }
        return in;
    }

    private static void lung(List<Input> in, Start start, LungDoubt d) {
        Ventilated v = start.ventilated();
        double fio2 = start.settings().get(Setting.FIO2, 0.21);
        Lungs low = d.value().with(v.mechanics().lungs(), d.low()), high = d.value().with(v.mechanics().lungs(), d.high());
        double times = d.value().shownTimes();
        in.add(new Input(d.value().words(), n(times * d.value().of(low)) + " " + d.value().unit(), n(times * d.value().of(high)) + " " + d.value().unit(),
                new Case(v.withLungs(low), fio2), new Case(v.withLungs(high), fio2)));
    }

    /** Gas exchange as sheet and file have it. */
    private static void sheet(List<Input> in, Start start, Transport t) {
        PatientModel p = start.ventilated().patient();
        Illness ill = t.illness();
        share(in, start, "shunt", p.shunt(), t.patient().lungs().shunt().isPresent() ? measured(p.shunt()) : ill.shunt(), x -> c -> c.shunt(x));
        if (p.measuredDeadSpaceMl().isPresent()) {
            factor(in, start, "dead space", "mL", p.measuredDeadSpaceMl().getAsDouble(), times(Band.of(1), true), f -> c -> c.deadSpace(f * p.measuredDeadSpaceMl().getAsDouble()));
        } else {
            share(in, start, "alveolar dead space", p.alveolarDeadSpace(), ill.alveolarDeadSpace(), x -> c -> c.alveolarDeadSpace(x));
        }
        if (p.lowVentilationShare() > 0) share(in, start, "poorly ventilated lung", p.lowVentilationShare(), ill.lowVentilationShare(), x -> c -> c.low(x));
        Band spread = ill.spread();
        if (p.spread() > 0 && spread.high() > spread.low()) {
            double low = Math.max(0, p.spread() + spread.low() - spread.central());
            double high = Math.min(2.5, p.spread() + spread.high() - spread.central());
            in.add(new Input("spread of ventilation over perfusion", n(low), n(high), changed(start, Change.NONE.spread(low)), changed(start, Change.NONE.spread(high))));
        }
        factor(in, start, "CO2 output", "mL/min", p.vco2MlPerMin(), times(ill.oxygenUptakeTimes(), false), f -> c -> c.metabolism(f, f));
        factor(in, start, "cardiac output", "L/min", p.cardiacOutputLPerMin(), times(ill.cardiacOutputTimes(), t.patient().cardiacOutputLPerMin().isPresent()), f -> c -> c.cardiacOutput(f));
        Band be = ill.baseExcessMmolL();
        if (be.high() > be.low()) {
            double low = p.baseExcessMmolL() + be.low() - be.central();
            double high = p.baseExcessMmolL() + be.high() - be.central();
            in.add(new Input("base excess", n(low) + " mmol/L", n(high) + " mmol/L", changed(start, Change.NONE.baseExcess(low)), changed(start, Change.NONE.baseExcess(high))));
        }
    }

    /** Gas exchange as a blood gas left it: each unknown to an end of its band, the others to where the gas then has them most probably. */
    private static void fitted(List<Input> in, Start start, Posterior known) {
        end(in, start, known, Unknown.SHUNT, "shunt", q -> n(100 * q.shunt()) + " %");
        end(in, start, known, Unknown.DEAD_SPACE, "alveolar dead space", q -> n(100 * q.alveolarDeadSpace()) + " %");
        if (start.ventilated().patient().lowVentilationShare() > 0) end(in, start, known, Unknown.LOW_VENTILATION, "poorly ventilated lung", q -> n(100 * q.lowVentilationShare()) + " %");
        end(in, start, known, Unknown.OXYGEN_UPTAKE, "CO2 output", q -> n(q.vco2MlPerMin()) + " mL/min");
        end(in, start, known, Unknown.CARDIAC_OUTPUT, "cardiac output", q -> n(q.cardiacOutputLPerMin()) + " L/min");
        end(in, start, known, Unknown.BASE_EXCESS, "base excess", q -> n(q.baseExcessMmolL()) + " mmol/L");
    }

    private static void end(List<Input> in, Start start, Posterior known, Unknown unknown, String name, Function<PatientModel, String> words) {
        Case low = changed(start, known.end(unknown, false));
        Case high = changed(start, known.end(unknown, true));
        in.add(new Input(name, words.apply(low.ventilated().patient()), words.apply(high.ventilated().patient()), low, high));
    }

    private interface Changing { UnaryOperator<Change> by(double value); }

    private static Case changed(Start start, Change c) {
        return new Case(start.ventilated().with(start.ventilated().patient().with(c)), start.settings().get(Setting.FIO2, 0.21));
    }

    private static Band times(Band band, boolean measured) { return measured ? new Band(1, 1 / (1 + MEASURED), 1 + MEASURED) : new Band(1, band.low() / band.central(), band.high() / band.central()); }

    private static Band measured(double value) { return new Band(value, value / (1 + MEASURED), Math.min(0.95, value * (1 + MEASURED))); }

    private static void factor(List<Input> in, Start start, String name, String unit, double value, Band times, Changing change) {
        if (!(times.high() > times.low()) || !(times.low() > 0)) return;
        in.add(new Input(name, n(value * times.low()) + " " + unit, n(value * times.high()) + " " + unit, changed(start, change.by(times.low()).apply(Change.NONE)), changed(start, change.by(times.high()).apply(Change.NONE))));
    }

    private static void share(List<Input> in, Start start, String name, double value, Band band, Changing change) {
        if (!(band.high() > band.low())) return;
        double low = Math.max(0, Math.min(0.9, Math.min(value, band.low())));
        double high = Math.max(0, Math.min(0.9, Math.max(value, band.high())));
        in.add(new Input(name, n(100 * low) + " %", n(100 * high) + " %", changed(start, change.by(low).apply(Change.NONE)), changed(start, change.by(high).apply(Change.NONE))));
    }

    /** What is left of all stores that the legs name, at the medians; moved by each leg's duration and by the gauges. */
    private static void oxygen(Start start, Transport t, List<Result> results) {
        double usableL = MapMaker.usableL(t, start.ventilated(), start.settings());
        if (!(usableL > 0)) return;
        List<LegState> states = LegState.of(t, start.ventilated(), start.settings());
        double needed = 0;
        for (LegState s : states) needed += drawn(t, s) * s.leg().takesMin();
        double left = usableL - needed;
        List<Swing> swings = new ArrayList<>();
        for (LegState s : states) {
            Leg leg = s.leg();
            double quick = leg.takesMin() * leg.takesMin() / leg.atWorstMin();
            swings.add(new Swing("duration of " + leg.name(), n(quick) + " min", n(leg.atWorstMin()) + " min", left + drawn(t, s) * (leg.takesMin() - quick), left - drawn(t, s) * (leg.atWorstMin() - leg.takesMin())));
        }
        double draw = 0;
        double total = 0;
        for (LegState s : states) {
            draw += drawn(t, s) * s.leg().takesMin();
            total += s.leg().takesMin();
        }
        for (Store store : t.oxygen()) {
            boolean used = t.legs().stream().anyMatch(l -> l.oxygen().contains(store.name()));
            if (!used || store.type() != Store.Type.CYLINDER || store.pressureBar().isEmpty()) continue;
            double error = store.gauge().accuracyClass() / 100 * store.gauge().spanBar() + store.gauge().readToBar();
            double bar = store.pressureBar().getAsDouble();
            double perBar = store.count() * store.waterL().orElse(0) / 1.01325;
            swings.add(new Swing("gauge of " + store.name(), n(Math.max(0, bar - error)) + " bar", n(bar + error) + " bar", left - Math.min(bar, error) * perBar, left + error * perBar));
        }
        if (draw > 0 && total > 0) add(results, "oxygen left", "L", left, swings, 1);
    }

    private static double drawn(Transport t, LegState s) {
        boolean counted = s.leg().oxygen().stream().anyMatch(n -> t.store(n).type() != Store.Type.WALL);
        return counted ? s.draw().oxygenLPerMin() : 0;
    }

    private static String n(double v) {
        double size = Math.abs(v);
        String text = String.format(Locale.ROOT, size >= 100 ? "%.0f" : size >= 10 ? "%.1f" : "%.2f", v);
        return text.indexOf('.') < 0 ? text : text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
