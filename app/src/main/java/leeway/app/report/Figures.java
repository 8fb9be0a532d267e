package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.AlarmLimits;
import leeway.core.journey.OwnBreathing;
import leeway.core.kit.Setting;
import leeway.core.plan.Expected;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.settings.Suggested.Because;
import leeway.core.settings.Suggested.Origin;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.Power;
import leeway.core.supply.SupplyResult.Take;

/** The figures of a plan as people read them: rounded to what the model knows, each with its unit; the same words for terminal and page. */
public final class Figures {
    private Figures() { }

    /** Rounded, without a minus before zero, with a true minus sign before the rest. */
    public static String n(double v, int decimals) {
        return Decimals.fixed(v, decimals).replace('-', '−');
    }

    /** As few digits as say the same, without an exponent. */
    public static String plain(double v) {
        return v == 0 ? "0" : new java.math.BigDecimal(Double.toString(v)).stripTrailingZeros().toPlainString().replace('-', '−');
    }

    public static String or(OptionalDouble v, int decimals, String unit) { return v.isPresent() ? n(v.getAsDouble(), decimals) + (unit.isEmpty() ? "" : " " + unit) : ""; }

    public static String percent(double share) { return n(share * 100, 0) + " %"; }

    /** A chance out of ten thousand draws. */
    public static String chance(double p) {
        if (p == 0) return "none in 10,000";
        if (p < 0.001) return "under 0.1 %";
        return n(p * 100, p < 0.1 ? 1 : 0) + " %";
    }

    /** "41 min", "2 h 05 min". */
    public static String minutes(double min) {
        long whole = Math.round(min);
        if (Math.abs(whole) < 100) return n(whole, 0) + " min";
        return "%s%d h %02d min".formatted(whole < 0 ? "−" : "", Math.abs(whole) / 60, Math.abs(whole) % 60);
    }

    /** Down, never up: a supply shown longer than it lasts would mislead. */
    public static String minutesAtLeast(double min) { return minutes(Math.floor(min)); }

    public static String seconds(double s) {
        double size = Math.abs(s);
        if (size < 179.5) return n(s, size < 10 && s != Math.rint(s) ? 1 : 0) + " s";
        return size < 600 && Math.abs(size / 60 - Math.rint(size / 60)) >= 0.05 ? n(s / 60, 1) + " min" : minutes(s / 60);
    }

    /** What stands beside the heading of the alarm limits. */
    public static String whoseLimits(Plan plan) {
        boolean own = plan.alarmLimits().stream().anyMatch(l -> l.from() == From.VENTILATOR);
        return own ? "delay from crossing to sound" : "the monitor's: nothing else here has alarms";
    }

    /** Setting, value, because; the mode first. */
    public static List<List<String>> settings(Plan plan) {
        List<List<String>> rows = new ArrayList<>();
        for (Because b : plan.suggested().because()) {
            String value = b.setting().equals("mode") ? plan.suggested().settings().mode().map(m -> m.code()).orElse("")
                    : Setting.ofWords(b.setting()).map(s -> value(s, plan.suggested().settings().get(s))).orElse("");
            if (value.equals("0.00 s") || value.equals("0 L/min") && b.setting().equals("bias flow") && b.origin() == Origin.SUGGESTED) continue;
            String why = b.why().equals(b.origin().word()) ? "in the file" : b.why();
            rows.add(List.of(b.setting().equals("peep") ? "PEEP" : b.setting().equals("fio2") ? "FiO2" : b.setting(), value, b.origin().word(), why));
        }
        return rows;
    }

    public static String value(Setting setting, OptionalDouble v) {
        if (v.isEmpty()) return "";
        double x = v.getAsDouble();
        return switch (setting) {
            case FIO2, CYCLE_OFF -> percent(x);
            case TIDAL_VOLUME -> n(x, x < 100 && x != Math.rint(x) ? 1 : 0) + " mL";
            case INSPIRATORY_TIME, PAUSE, RISE_TIME -> n(x, 2) + " s";
            default -> n(x, x == Math.rint(x) ? 0 : 1) + " " + setting.unit().symbol();
        };
    }

    /** What is expected: name, value, within what 9 of 10 such patients lie, remark. */
    static List<List<String>> expected(Plan plan) {
        List<List<String>> rows = new ArrayList<>();
        Expected e = plan.expected().orElseThrow();
        row(rows, plan, "expired tidal volume", Expected::tidalVolumeMl, e.tidalVolumeMl().orElse(0) < 100 ? 1 : 0, "mL", "");
        row(rows, plan, "minute volume", Expected::minuteVolumeLPerMin, e.minuteVolumeLPerMin().orElse(0) < 2 ? 2 : 1, "L/min", "expired");
        row(rows, plan, "peak pressure", Expected::peakCmH2O, 0, "cmH2O", "at the Y-piece");
        row(rows, plan, "plateau", Expected::plateauCmH2O, 0, "cmH2O", "in an end-inspiratory hold");
        row(rows, plan, "driving pressure", Expected::drivingCmH2O, 0, "cmH2O", "plateau less total PEEP");
        row(rows, plan, "auto-PEEP", Expected::autoPeepCmH2O, 1, "cmH2O", "above the set PEEP");
        row(rows, plan, "mean pressure", Expected::meanCmH2O, 0, "cmH2O", "");
        row(rows, plan, "mechanical power", Expected::mechanicalPowerJPerMin, 1, "J/min", "share of PEEP included");
        row(rows, plan, "PaCO2", Expected::paco2MmHg, 0, "mmHg", kPa(e.paco2MmHg()));
        row(rows, plan, "end-tidal CO2", Expected::etco2MmHg, 0, "mmHg", kPa(e.etco2MmHg()));
        row(rows, plan, "pH", Expected::ph, 2, "", "");
        row(rows, plan, "PaO2", Expected::pao2MmHg, 0, "mmHg", kPa(e.pao2MmHg()));
        row(rows, plan, "SpO2", Expected::spo2, 0, "%", "as the oximeter shows it");
        plan.ownBreathing().ifPresent(o -> ownBreathing(rows, o));
        return rows;
    }

    private static void ownBreathing(List<List<String>> rows, OwnBreathing o) {
        rows.add(List.of("started by the patient", n(o.byPatientPerMin(), 1) + " /min", "", "breaths"));
        if (o.byNobodyPerMin() > 0) rows.add(List.of("started by nobody", n(o.byNobodyPerMin(), 1) + " /min", "", "leak, heart beat, water, vibration"));
        if (o.missedPerMin() > 0) rows.add(List.of("efforts in vain", n(o.missedPerMin(), 1) + " /min", "", "that start no breath"));
        if (o.outOfStepPerMin() > 0) rows.add(List.of("out of step", n(o.outOfStepPerMin(), 1) + " /min", "", "doubled, ended too early or too late"));
        o.p01CmH2O().ifPresent(p -> rows.add(List.of("P0.1", n(p, 1) + " cmH2O", "", "over 3.5: an excessive effort")));
        o.workJPerL().ifPresent(w -> rows.add(List.of("work of breathing", n(w, 2) + " J/L", "", "the patient's; acceptable 0.2 to 0.9")));
        o.patientShare().ifPresent(p -> rows.add(List.of("patient's share", percent(p), "", "of the work above PEEP")));
    }

    /** Name, value, and the band or else the remark: three columns. */
    public static List<List<String>> expectedInShort(Plan plan) {
        return expected(plan).stream().map(r -> List.of(r.get(0), r.get(1), r.get(2).isEmpty() ? r.get(3) : r.get(2))).toList();
    }

    private static void row(List<List<String>> rows, Plan plan, String name, Function<Expected, OptionalDouble> of, int decimals, String unit, String remark) {
        double times = unit.equals("%") ? 100 : 1;
        OptionalDouble v = of.apply(plan.expected().orElseThrow());
        if (v.isEmpty()) return;
        String band = plan.bands().filter(b -> of.apply(b.p05()).isPresent() && of.apply(b.p95()).isPresent())
                .map(b -> n(of.apply(b.p05()).getAsDouble() * times, decimals) + " to " + n(of.apply(b.p95()).getAsDouble() * times, decimals)).orElse("");
        rows.add(List.of(name, n(v.getAsDouble() * times, decimals) + (unit.isEmpty() ? "" : " " + unit), band, remark));
    }

    /** 1 mmHg is 133.322 Pa. */
    private static String kPa(OptionalDouble mmHg) { return mmHg.isPresent() ? n(mmHg.getAsDouble() * 0.133322, 1) + " kPa" : ""; }

    /** Alarm limits: condition, low, high, after, priority, who; the rule apart. */
    public static List<List<String>> alarms(List<AlarmLimit> limits) {
        List<List<String>> rows = new ArrayList<>();
        for (AlarmLimit a : limits) {
            String after = n(a.conditionDelayS() + a.generationDelayS(), 0) + " s" + (a.conditionBreaths() > 0 ? ", " + a.conditionBreaths() + (a.conditionBreaths() == 1 ? " breath" : " breaths") : "");
            String words = a.unit().equals("s") ? AlarmLimits.words(a).replaceFirst("high ", "after ") : AlarmLimits.words(a);
            rows.add(List.of(a.condition().words(), words, after, a.priority().name().toLowerCase(Locale.ROOT), a.from().words()));
        }
        return rows;
    }

    /** "2 × portable and 1 × vehicle". */
    public static String items(Take take) {
        return String.join(", ", take.items().stream().filter(i -> i.count() > 0).map(i -> i.count() + " × " + i.name()).toList());
    }

    /** The least margin that an alarm can change, as one figure and its words; empty where no alarm precedes harm. */
    public static Optional<String[]> leastMargin(Plan plan) {
        return least(plan.rehearsals()).map(r -> new String[] {seconds(r.marginS().getAsDouble()), "least margin that an alarm can change: " + r.fault().name()});
    }

    /** The row with the least margin among those in which an alarm can change anything: where even the remedy at once is too late, none can. */
    public static Optional<Rehearsal> least(List<Rehearsal> rows) {
        return rows.stream().filter(r -> r.marginS().isPresent() && r.rescueByS().orElse(0) > 0).min(java.util.Comparator.comparingDouble(r -> r.marginS().getAsDouble()));
    }

    /** "6 of 31 faults that can harm are uncovered". */
    public static String uncovered(List<Rehearsal> rows) {
        long bad = rows.stream().filter(r -> r.coverage().uncovered()).count();
        long harms = rows.stream().filter(r -> r.harm().isPresent()).count();
        return bad + " of " + harms + " faults that can harm " + (bad == 1 ? "is" : "are") + " uncovered";
    }

    /** What is left in the least comfortable leg, as one figure and its words; empty where the stores have no end. */
    public static Optional<String[]> left(Oxygen o) {
        return o.marginMin().map(m -> m.p05() >= 0 ? new String[] {minutesAtLeast(m.p05()), "of oxygen to spare in the leg with the least, in 19 of 20 journeys; " + minutesAtLeast(m.p50()) + " at the median"}
                : new String[] {minutes(-m.p05()) + " short", "of oxygen in the leg with the least, in 1 of 20 journeys; at the median " + (m.p50() >= 0 ? minutesAtLeast(m.p50()) + " to spare" : minutes(-m.p50()) + " short")});
    }

    /** What is left when something is lost: name, minutes from departure. */
    public static List<List<String>> losses(Oxygen o, Optional<Power> power, double journeyMin) {
        List<List<String>> rows = new ArrayList<>();
        lost(rows, "without the largest cylinder", o.withoutLargestMin(), journeyMin);
        lost(rows, "at FiO2 100 %", o.at100Min(), journeyMin);
        lost(rows, "by hand bag at 15 L/min", o.handBagMin(), journeyMin);
        if (!o.series().isEmpty()) {
            rows.add(o.turnBackByMin().isPresent() ? List.of("turn back by", minutesAtLeast(o.turnBackByMin().getAsDouble()), "the latest moment from which the same way back is supplied")
                    : List.of("turn back by", "any time", "the same way back is supplied from everywhere"));
        }
        power.ifPresent(p -> lost(rows, "without external power", p.withoutExternalMin(), journeyMin));
        return rows;
    }

    /** Where a leg ends, which gauge shows what: leg, cylinder, bar, and what 19 of 20 journeys show at least; rounded down. */
    public static List<List<String>> handovers(Oxygen o) {
        return o.handovers().stream().map(h -> List.of(h.leg(), h.store() + " no. " + h.cylinder(), n(Math.floor(h.gaugeBar()), 0), n(Math.floor(h.gaugeLowBar()), 0))).toList();
    }

    /** What one change would save: change, litres at the median, chance of running dry after it. */
    public static List<List<String>> savings(Oxygen o) {
        return o.savings().stream().map(s -> List.of(s.what(), n(s.savesL(), 0), chance(s.emptyChance()))).toList();
    }

    /** Kits that are enough, the smallest first: items, mass, chance. */
    public static List<List<String>> kits(Oxygen o) {
        List<Take> all = new ArrayList<>(o.take().stream().toList());
        all.addAll(o.nextBest());
        return all.stream().map(t -> List.of(items(t), n(t.massKg(), 1), chance(t.emptyChance()))).toList();
    }

    /** How sure the chance is, what the moments say without draws, and what the FiO2 error may cost: a sentence each. */
    public static List<String> sure(Oxygen o) {
        List<String> texts = new ArrayList<>();
        texts.add("The chance is known to ± " + plain(Math.ceil(o.emptyChanceError() * 1e4) / 100) + " points (one standard error of 10,000 draws).");
        o.analytic().ifPresent(a -> texts.add("By the moments of the legs, without draws: " + n(a.p50(), 0) + " L at the median, " + n(a.p95(), 0) + " L in 19 of 20 journeys."));
        o.high().ifPresent(h -> texts.add("Where the ventilator gives " + n(h.fio2Error() * 100, 0) + " points more oxygen than is set, within its error: " + n(h.neededL().p50(), 0) + " L at the median, "
                + n(h.neededL().p95(), 0) + " L in 19 of 20 journeys; chance that it ends before a leg does: " + chance(h.emptyChance()) + "."));
        return texts;
    }

    /** The kit at home again, a sentence a store. */
    public static List<String> home(leeway.core.supply.SupplyResult.Home h) {
        List<String> texts = new ArrayList<>();
        h.stores().forEach(s -> texts.add(s.name() + ": " + n(Math.floor(s.leftL()), 0) + " L left" + (s.gaugeBar().isPresent() ? ", " + n(Math.floor(s.gaugeBar().getAsDouble()), 0) + " bar on the gauge at 20 °C." : ".")));
        h.packs().forEach(p -> texts.add(p.name() + ": shows " + n(Math.floor(p.charge() * 100), 0) + " %."));
        return texts;
    }

    private static void lost(List<List<String>> rows, String what, OptionalDouble min, double journeyMin) {
        if (min.isEmpty()) return;
        double m = min.getAsDouble();
        rows.add(List.of(what, minutesAtLeast(m), m >= journeyMin ? "longer than the journey" : "the journey is longer"));
    }
}
