package leeway.core.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow;
import leeway.core.kit.AlarmRow.LimitRule;
import leeway.core.kit.Monitor;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.AlarmChange;

/**
 * The limits on both devices: each from its row's rule, then what the transport file changes.
 * <p>A limit is rounded to the nearest step of its knob: pressures and CO2 to 1, volumes to 10 mL above 100 and to 1
 * below, minute volume and bar to 0.1, fractions to 0.01 (common practice, no source). A high pressure limit stays 1 cmH2O
 * under the set pressure limit: a device that holds its pressure there would otherwise never speak. Leaves out: limits that a crew
 * changes under way (an event of the file changes settings, not limits).
 */
public final class AlarmLimits {
    private AlarmLimits() { }

    /** All conditions that speak on this journey, the ventilator's first, each device's in the order of its sheet. */
    public static List<AlarmLimit> of(Ventilator ventilator, Monitor monitor, Settings settings, Expected expected,
                                      Map<AlarmCondition, AlarmChange> changes) {
        List<AlarmLimit> limits = new ArrayList<>();
        for (AlarmRow row : ventilator.alarms()) limit(row, From.VENTILATOR, settings, expected, changes).ifPresent(limits::add);
        for (AlarmRow row : monitor.alarms()) limit(row, From.MONITOR, settings, expected, changes).ifPresent(limits::add);
        return List.copyOf(limits);
    }

    private static Optional<AlarmLimit> limit(AlarmRow row, From from, Settings settings, Expected expected, Map<AlarmCondition, AlarmChange> changes) {
        AlarmChange change = changes.get(row.condition());
        if (change != null && change.off()) return Optional.empty();
        OptionalDouble low = value(row.condition(), row.low(), settings, expected);
        OptionalDouble high = value(row.condition(), row.high(), settings, expected);
        // a rule whose basis is not known (no rate in a mode without one, no CO2 from a test lung) leaves nothing to cross
        if ((row.low().isPresent() || row.high().isPresent()) && low.isEmpty() && high.isEmpty() && change == null) return Optional.empty();
        OptionalDouble held = settings.get(Setting.PRESSURE_LIMIT);
        boolean capped = row.condition() == AlarmCondition.AIRWAY_PRESSURE_HIGH && held.isPresent() && high.isPresent() && high.getAsDouble() > held.getAsDouble() - 1;
        if (capped) high = OptionalDouble.of(rounded(held.getAsDouble() - 1, row.condition().unit()));
        double delayS = row.conditionDelayS();
        int breaths = row.conditionBreaths();
        StringBuilder rule = new StringBuilder();
        row.low().ifPresent(r -> rule.append(r.words()));
        row.high().ifPresent(r -> rule.append(rule.isEmpty() ? "" : "; ").append(r.words()));
        if (capped) rule.append(", 1 cmH2O under the pressure limit, where the device holds the pressure");
        if (rule.isEmpty()) rule.append("as the device defines it");
        if (change != null) {
            if (change.low().isPresent()) low = change.low();
            if (change.high().isPresent()) high = change.high();
            if (change.delayS().isPresent()) {
                delayS = change.delayS().getAsDouble();
                breaths = 0;
            }
            rule.insert(0, "prescribed in the file; otherwise ");
        }
        return Optional.of(new AlarmLimit(row.condition(), from, low, high, delayS, breaths, row.generationDelayS(), row.priority(), row.latching(),
                rule.toString()));
    }

    private static OptionalDouble value(AlarmCondition condition, Optional<LimitRule> rule, Settings settings, Expected expected) {
        if (rule.isEmpty()) return OptionalDouble.empty();
        LimitRule r = rule.get();
        double basis = switch (r.basis()) {
            case FIXED -> 0;
            case SET_TIDAL_VOLUME -> settings.get(Setting.TIDAL_VOLUME, Double.NaN);
            case SET_RATE -> settings.get(Setting.RATE, Double.NaN);
            case SET_PEEP -> settings.get(Setting.PEEP, Double.NaN);
            case SET_FIO2 -> settings.get(Setting.FIO2, Double.NaN);
            case SET_PRESSURE_LIMIT -> settings.get(Setting.PRESSURE_LIMIT, Double.NaN);
            case EXPECTED_PEAK -> expected.peakCmH2O();
            case EXPECTED_PLATEAU -> expected.plateauCmH2O();
            case EXPECTED_TIDAL_VOLUME -> expected.tidalVolumeMl();
            case EXPECTED_MINUTE_VOLUME -> expected.minuteVolumeLPerMin();
            case EXPECTED_END_TIDAL_CO2 -> expected.etco2MmHg();
            case EXPECTED_SATURATION -> expected.spo2();
            case EXPECTED_RATE -> expected.ratePerMin();
        };
        if (Double.isNaN(basis)) return OptionalDouble.empty();
        double value = r.times() * basis + r.plus();
        if (r.atMost().isPresent()) value = Math.min(value, r.atMost().getAsDouble());
        if (r.atLeast().isPresent()) value = Math.max(value, r.atLeast().getAsDouble());
        return OptionalDouble.of(rounded(value, condition.unit()));
    }

    /** As a limit knob turns: in the steps of its unit. */
    private static double rounded(double value, String unit) {
        double step = switch (unit) {
            case "mL" -> value >= 100 ? 10 : 1;
            case "L/min", "bar" -> 0.1;
            case "1" -> 0.01;
            default -> 1;
        };
        double steps = Math.rint(value / step);
        // a step below 1 is divided by its whole inverse, so that 0.1 prints as 0.1
        double tidy = step >= 1 ? steps * step : steps / Math.rint(1 / step);
        return tidy == 0 ? 0 : tidy;
    }

    /** One line for people: "low 210 mL, high 550 mL". */
    public static String words(AlarmLimit limit) {
        StringBuilder words = new StringBuilder();
        limit.low().ifPresent(v -> words.append("low ").append(number(v, limit.unit())));
        limit.high().ifPresent(v -> words.append(words.isEmpty() ? "" : ", ").append("high ").append(number(v, limit.unit())));
        return words.toString();
    }

    private static String number(double value, String unit) {
        if (unit.equals("1")) return String.format(Locale.ROOT, "%.0f %%", value * 100);
        String digits = value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : String.format(Locale.ROOT, "%.1f", value);
        return unit.isEmpty() ? digits : digits + " " + unit;
    }
}
