package leeway.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import leeway.app.report.Figures;
import leeway.core.plan.Expected;
import leeway.core.plan.Plan;
import leeway.core.supply.SupplyResult;
import leeway.core.supply.SupplyResult.Oxygen;

/**
 * One figure of two plans.
 *
 * @param key    what it is, in the bundle
 * @param pinned of the plan that was pinned
 * @param now    of the plan as it stands
 * @param shift  the difference, with its sign; empty where there is none or where it cannot be told
 */
public record Difference(String key, String pinned, String now, String shift) {
    public boolean moved() { return !pinned.equals(now); }

    /** How a figure is taken from a plan and shown. */
    private record Line(String key, Function<Plan, OptionalDouble> of, int decimals, String unit, double times) { }

    private static final List<Line> LINES = List.of(
            new Line("diff.margin", p -> p.rehearsals().stream().flatMapToDouble(r -> r.marginS().stream()).min(), 0, "s", 1),
            new Line("diff.uncovered", p -> OptionalDouble.of(p.rehearsals().stream().filter(r -> r.coverage().uncovered()).count()), 0, "", 1),
            oxygen("diff.left", o -> o.marginMin().map(m -> OptionalDouble.of(m.p05())).orElse(OptionalDouble.empty()), 0, "min", 1),
            oxygen("diff.chance", o -> OptionalDouble.of(o.emptyChance()), 1, "%", 100),
            oxygen("diff.needed", o -> OptionalDouble.of(o.neededL().p50()), 0, "L", 1),
            oxygen("diff.needed95", o -> OptionalDouble.of(o.neededL().p95()), 0, "L", 1),
            oxygen("diff.usable", o -> OptionalDouble.of(o.usableL()), 0, "L", 1),
            oxygen("diff.largest", Oxygen::withoutLargestMin, 0, "min", 1),
            new Line("diff.charge", p -> p.supply().power().map(SupplyResult.Power::marginMin).orElse(OptionalDouble.empty()), 0, "min", 1),
            expected("diff.volume", Expected::tidalVolumeMl, 0, "mL"),
            expected("diff.minute", Expected::minuteVolumeLPerMin, 1, "L/min"),
            expected("diff.plateau", Expected::plateauCmH2O, 0, "cmH2O"),
            expected("diff.driving", Expected::drivingCmH2O, 0, "cmH2O"),
            expected("diff.auto", Expected::autoPeepCmH2O, 1, "cmH2O"),
            expected("diff.power", Expected::mechanicalPowerJPerMin, 1, "J/min"),
            expected("diff.paco2", Expected::paco2MmHg, 0, "mmHg"),
            expected("diff.ph", Expected::ph, 2, ""),
            expected("diff.pao2", Expected::pao2MmHg, 0, "mmHg"),
            new Line("diff.spo2", p -> p.expected().map(Expected::spo2).orElse(OptionalDouble.empty()), 0, "%", 100));

    private static Line oxygen(String key, Function<Oxygen, OptionalDouble> of, int decimals, String unit, double times) {
        return new Line(key, p -> of.apply(p.supply().oxygen()), decimals, unit, times);
    }

    private static Line expected(String key, Function<Expected, OptionalDouble> of, int decimals, String unit) {
        return new Line(key, p -> p.expected().map(of).orElse(OptionalDouble.empty()), decimals, unit, 1);
    }

    /** Every figure that at least one of the plans has. */
    static List<Difference> between(Plan pinned, Plan now) {
        List<Difference> out = new ArrayList<>();
        for (Line line : LINES) {
            OptionalDouble a = line.of.apply(pinned);
            OptionalDouble b = line.of.apply(now);
            if (a.isEmpty() && b.isEmpty()) continue;
            String one = shown(a, line);
            String two = shown(b, line);
            String shift = "";
            if (a.isPresent() && b.isPresent() && !one.equals(two)) {
                double by = rounded(b.getAsDouble(), line) - rounded(a.getAsDouble(), line);
                shift = (by > 0 ? "+" : "") + Figures.n(by, line.decimals) + (line.unit.isEmpty() ? "" : " " + line.unit);
            }
            out.add(new Difference(line.key, one, two, shift));
        }
        return out;
    }

    private static String shown(OptionalDouble v, Line line) { return v.isEmpty() ? "" : Figures.n(rounded(v.getAsDouble(), line), line.decimals) + (line.unit.isEmpty() ? "" : " " + line.unit); }

    /** What is left is rounded down, as everywhere. */
    private static double rounded(double v, Line line) {
        double scaled = v * line.times;
        if (line.unit.equals("min")) return Math.floor(scaled);
        double tens = Math.pow(10, line.decimals);
        return Math.rint(scaled * tens) / tens;
    }
}
