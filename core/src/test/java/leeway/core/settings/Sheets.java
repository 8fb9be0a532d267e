package leeway.core.settings;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.expression.Formula;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.PatientEntry.Sex;

/** A strategy, a device and a patient to try the room on; invented. */
final class Sheets {
    static final PatientFacts WOMAN = new PatientFacts(Sex.FEMALE, 58, 170, 74, 61.516, Effort.NONE, 34, 17, 140, 195, 0.18, 760);
    static final PatientFacts INFANT = new PatientFacts(Sex.MALE, 0.25, 60, 5.5, 5.5, Effort.NONE, 5.5, 60, 14, 36, 0.05, 760);
    static final Illness PNEUMONIA = illness("moderate pneumonia", Optional.empty());

    private Sheets() { }

    static Illness illness(String name, Optional<String> strategy) {
        Band one = Band.of(1);
        return new Illness(name, one, one, one, Band.of(0.1), Band.of(0), Band.of(0.1), one, Band.of(0.35), one, Band.of(0.8), one, one, Band.of(0), 37, strategy, "adult", false, "", "invented");
    }

    static Strategy.Rule rule(String is, String why) { return new Strategy.Rule(Formula.of(is), Optional.empty(), Optional.empty(), why, "test"); }

    static Strategy.Rule rule(String is, String from, String to, String why) {
        return new Strategy.Rule(Formula.of(is), Optional.of(Formula.of(from)), Optional.of(Formula.of(to)), why, "test");
    }

    static Strategy strategy() {
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(Setting.class);
        rules.put(Setting.TIDAL_VOLUME, rule("target volume", "4 mL/kg * predicted body weight", "8 mL/kg * predicted body weight", "6 mL/kg of {predicted body weight}"));
        rules.put(Setting.RATE, rule("863 mmHg * CO2 output / 40 mmHg / (tidal volume - dead space)", "6 /min", "35 /min", "for a PaCO2 of 40 mmHg"));
        rules.put(Setting.INSPIRATORY_TIME, rule("0.33 * (1 / rate)", "a third of the breath"));
        rules.put(Setting.PEEP, rule("if fio2 > 50 % then 10 cmH2O else 5 cmH2O", "by oxygen"));
        rules.put(Setting.FIO2, rule("60 %", "a start"));
        rules.put(Setting.INSPIRATORY_PRESSURE, rule("tidal volume / compliance", "for {target volume}"));
        rules.put(Setting.PRESSURE_LIMIT, rule("40 cmH2O", "limit"));
        Map<String, Strategy.Named> names = new LinkedHashMap<>();
        names.put("target volume", new Strategy.Named(Formula.of("6 mL/kg * predicted body weight"), "test"));
        return new Strategy("test strategy", "for tests", names, Map.of(), rule("\"A/C-VC\"", "volume is what matters"), rules, List.of(), "test");
    }

    static Ventilator ventilator(Map<Setting, Range> ranges, Mode... modes) {
        return new Ventilator("test device", Ventilator.Drive.TURBINE, List.of(modes), ranges, Settings.NONE.with(Setting.BIAS_FLOW, 2), Map.of("tidal volume", "Vt"), 120, 60, 0.05, 4, true, true, false,
                new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), true, 0, 0, 0, 0, 0, 2.8, 6, false, Ventilator.VolumeBasis.BTPS, Ventilator.Altitude.COMPENSATED, 0.03),
                Optional.empty(), Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 5, "invented");
    }

    static Map<Setting, Range> ranges() {
        Map<Setting, Range> r = new EnumMap<>(Setting.class);
        r.put(Setting.TIDAL_VOLUME, new Range(50, 2000, 10));
        r.put(Setting.RATE, new Range(5, 40, 1));
        r.put(Setting.INSPIRATORY_TIME, new Range(0.3, 3, 0.05));
        r.put(Setting.PEEP, new Range(0, 20, 1));
        r.put(Setting.FIO2, new Range(0.21, 1, 0.01));
        r.put(Setting.INSPIRATORY_PRESSURE, new Range(5, 40, 1));
        r.put(Setting.PRESSURE_LIMIT, new Range(10, 60, 5));
        return r;
    }
}
