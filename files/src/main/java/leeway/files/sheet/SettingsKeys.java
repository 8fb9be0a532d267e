package leeway.files.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Forms;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** The keys of {@code settings}, with bounds that no device goes beyond. Trade practice, no source; wide on purpose. */
public final class SettingsKeys {
    public static final String RATIO = "i:e";
    public static final String ABSOLUTE = "inspiratory pressure absolute";
    public static final Form MODE = Form.choice("mode", Arrays.stream(Mode.values()).map(Mode::code).toList(), Map.of(
            "volume control", List.of("A/C-VC"), "pressure control", List.of("A/C-PC"), "pressure support", List.of("CSV-PS"), "controlled", List.of("CMV-VC", "CMV-PC"),
            "SIMV", List.of("SIMV-VC\\PS", "SIMV-PC\\PS"), "pressure regulated volume control", List.of("A/C-vtPC"), "spontaneous", List.of("CSV-PS", "CPAP"), "bi-level", List.of("IMV-PC"), "two pressure levels", List.of("IMV-PC"), "assist control", List.of("A/C-VC", "A/C-PC")));

    private SettingsKeys() { }

    /** Inspiratory over expiratory time. */
    public record Ratio(double value) { }

    /** Whatever one may set in a transport file. */
    public static Table table() {
        List<Key> keys = new ArrayList<>();
        keys.add(Key.may("mode", MODE, "Ventilation pattern by its ISO 19223 code (that of two pressure levels, IMV-PC, is from memory), or CPAP.").otherwise("by the strategy"));
        for (Setting s : Setting.values()) {
            keys.add(Key.may(s.words(), form(s), meaning(s)).otherwise("by the strategy").also(also(s)));
            if (s == Setting.INSPIRATORY_TIME) keys.add(Key.may(RATIO, ratio(), "Inspiratory to expiratory time, quoted.").also("ie", "I:E ratio", "ratio"));
            if (s == Setting.INSPIRATORY_PRESSURE) {
                keys.add(Key.may(ABSOLUTE, form(s), "Inspiratory pressure above ambient; PEEP is taken off.").also("pinsp absolute"));
            }
        }
        List<String> both = List.of(Setting.INSPIRATORY_PRESSURE.words(), ABSOLUTE);
        List<String> support = List.of(Setting.SUPPORT_PRESSURE.words());
        return new Table("settings", false, keys, List.of(
                new Table.Wrong("inspiratory pressure", "\"inspiratory pressure\" may be meant above PEEP or above ambient", "", both),
                new Table.Wrong("pressure", "\"pressure\" may be meant above PEEP or above ambient", "", both),
                new Table.Wrong("pip", "\"pip\" may be meant above PEEP or above ambient", "", both),
                new Table.Wrong("support pressure", "\"support pressure\" may be meant above PEEP or above ambient", "", support),
                new Table.Wrong("pressure support", "\"pressure support\" may be meant above PEEP or above ambient", "", support),
                new Table.Wrong("trigger", "\"trigger\" may be meant as a flow or as a pressure", "", List.of(Setting.FLOW_TRIGGER.words(), Setting.PRESSURE_TRIGGER.words())),
                new Table.Wrong("minute volume", "\"minute volume\" is not set but follows", "Write \"tidal volume\" and \"rate\".", List.of())));
    }

    /** The form of one setting: from the least to the most that any device could have. */
    public static Form form(Setting s) {
        Kind k = s.kind();
        return switch (s) {
            case TIDAL_VOLUME -> Form.of(k, 2, 3000);
            case RATE -> Form.of(k, 1, 150);
            case INSPIRATORY_TIME -> Form.of(k, 0.1, 15, "1 s");
            case PAUSE -> Form.of(k, 0, 10, "0.2 s");
            case INSPIRATORY_PRESSURE -> Form.of(k, 1, 100, "15 cmH2O");
            case SUPPORT_PRESSURE -> Form.of(k, 0, 80, "10 cmH2O");
            case PEEP -> Form.of(k, 0, 50);
            case FIO2 -> Form.of(k, 0.21, 1);
            case RISE_TIME -> Form.of(k, 0, 5, "0.2 s");
            case FLOW_TRIGGER -> Form.of(k, 0.1, 30, "2 L/min");
            case PRESSURE_TRIGGER -> Form.of(k, 0.1, 20, "2 cmH2O");
            case CYCLE_OFF -> Form.of(k, 0.01, 0.9, "25 %");
            case PRESSURE_LIMIT -> Form.of(k, 5, 120, "40 cmH2O");
            case BIAS_FLOW -> Form.of(k, 0, 40, "3 L/min");
            case CYCLE_AFTER -> Form.of(k, 0.3, 10, "1.5 s");
            case SIGH_EVERY -> Form.of(k, 10, 3600, "60 s");
            case SIGH_PRESSURE -> Form.of(k, 10, 60, "30 cmH2O");
        };
    }

    private static String meaning(Setting s) {
        return switch (s) {
            case TIDAL_VOLUME -> "Volume of a set breath.";
            case RATE -> "Set breaths a minute.";
            case INSPIRATORY_TIME -> "Time of inspiration, with the pause in it.";
            case PAUSE -> "Pause at the end of inspiration.";
            case INSPIRATORY_PRESSURE -> "Inspiratory pressure above PEEP.";
            case SUPPORT_PRESSURE -> "Pressure support above PEEP.";
            case PEEP -> "Positive end-expiratory pressure.";
            case FIO2 -> "Share of oxygen in what is breathed in.";
            case RISE_TIME -> "Time in which a pressure is reached.";
            case FLOW_TRIGGER -> "Inspiratory flow of the patient that starts a breath.";
            case PRESSURE_TRIGGER -> "How far below PEEP a breath starts, as a positive number.";
            case CYCLE_OFF -> "Share of the peak flow at which support ends.";
            case PRESSURE_LIMIT -> "Pressure above ambient that is not exceeded.";
            case BIAS_FLOW -> "Flow through the circuit between breaths.";
            case CYCLE_AFTER -> "Support ends at the latest after this time.";
            case SIGH_EVERY -> "A sigh of 3 s after each such time.";
            case SIGH_PRESSURE -> "Pressure of a sigh, above ambient.";
        };
    }

    private static String[] also(Setting s) {
        return switch (s) {
            case TIDAL_VOLUME -> new String[] {"vt", "volume", "tv"};
            case RATE -> new String[] {"respiratory rate", "frequency", "rr", "f"};
            case INSPIRATORY_TIME -> new String[] {"ti", "inspiration"};
            case PAUSE -> new String[] {"inspiratory pause", "plateau time"};
            case FIO2 -> new String[] {"oxygen", "o2"};
            case RISE_TIME -> new String[] {"ramp", "slope"};
            case CYCLE_OFF -> new String[] {"cycling", "expiratory trigger"};
            case PRESSURE_LIMIT -> new String[] {"pmax", "maximum pressure", "max pressure"};
            case CYCLE_AFTER -> new String[] {"longest support", "maximum inspiratory time"};
            case SIGH_EVERY -> new String[] {"sigh", "sigh interval"};
            case SIGH_PRESSURE -> new String[] {"sigh pressure"};
            case INSPIRATORY_PRESSURE, SUPPORT_PRESSURE, PEEP, FLOW_TRIGGER, PRESSURE_TRIGGER, BIAS_FLOW -> new String[0];
        };
    }

    static Form ratio() {
        return Form.written("a ratio in quotation marks, for example \"1:2\"", "\"1:2\"", "^\\s*\\d+(\\.\\d+)?\\s*:\\s*\\d+(\\.\\d+)?\\s*$", text -> {
            String wrong = "%s is not a ratio".formatted(Complaints.echo(text));
            if (!text.matches("\\s*\\d{1,4}(\\.\\d{1,4})?\\s*:\\s*\\d{1,4}(\\.\\d{1,4})?\\s*")) return Forms.Parsed.bad(wrong, "Write inspiration to expiration in quotation marks, \"1:2\".");
            String[] parts = text.split(":");
            double i = Double.parseDouble(parts[0].strip());
            double e = Double.parseDouble(parts[1].strip());
            if (i > 0 && e > 0 && i / e >= 0.1 && i / e <= 4) return Forms.Parsed.good(new Ratio(i / e));
            return Forms.Parsed.bad("%s is impossible: an i:e lies between 1:10 and 4:1".formatted(Complaints.echo(text)), "Inspiration stands first.");
        });
    }

    /** Mode and values; a ratio becomes an inspiratory time where the rate is there, else it waits for the rate of the strategy; an absolute pressure needs a PEEP. What does not fit is a complaint. */
    public static Settings of(Section s, Complaints complaints) { return of(s, Settings.NONE, true, complaints); }

    /** @param before what is set already: an event's ratio may lean on the rate of the file's settings */
    public static Settings of(Section s, Settings before, Complaints complaints) { return of(s, before, false, complaints); }

    private static Settings of(Section s, Settings before, boolean rateMayFollow, Complaints complaints) {
        Map<Setting, Double> values = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) s.number(setting.words()).ifPresent(v -> values.put(setting, v));
        both(s, RATIO, Setting.INSPIRATORY_TIME.words(), complaints);
        both(s, ABSOLUTE, Setting.INSPIRATORY_PRESSURE.words(), complaints);
        both(s, Setting.FLOW_TRIGGER.words(), Setting.PRESSURE_TRIGGER.words(), complaints);
        Optional<Ratio> ratio = s.as(RATIO, Ratio.class);
        OptionalDouble share = OptionalDouble.empty();
        if (ratio.isPresent() && !s.written(Setting.INSPIRATORY_TIME.words())) {
            if (values.containsKey(Setting.RATE) || before.has(Setting.RATE)) {
                values.put(Setting.INSPIRATORY_TIME, 60 / values.getOrDefault(Setting.RATE, before.get(Setting.RATE, 0)) * ratio.get().value() / (1 + ratio.get().value()));
            } else if (!s.written("rate") && rateMayFollow) {
                share = OptionalDouble.of(ratio.get().value() / (1 + ratio.get().value()));
            } else if (!s.written("rate")) {
                complaints.add(s.atKey(RATIO), "\"i:e\" needs a \"rate\" beside it", "Add a rate, or write \"inspiratory time: 1 s\".");
            }
        }
        if (s.number(ABSOLUTE).isPresent() && !s.written(Setting.INSPIRATORY_PRESSURE.words())) {
            if (values.containsKey(Setting.PEEP) || before.has(Setting.PEEP)) {
                double above = s.number(ABSOLUTE).getAsDouble() - values.getOrDefault(Setting.PEEP, before.get(Setting.PEEP, 0));
                if (above < 1) {
                    complaints.add(s.at(ABSOLUTE), "the absolute inspiratory pressure does not lie above PEEP", "Did you mean \"inspiratory pressure above PEEP\"?");
                } else {
                    values.put(Setting.INSPIRATORY_PRESSURE, above);
                }
            } else if (!s.written("peep")) {
                complaints.add(s.atKey(ABSOLUTE), "\"inspiratory pressure absolute\" needs a \"peep\" beside it", "Add the PEEP, or write \"inspiratory pressure above PEEP\".");
            }
        }
        fits(s, values, complaints);
        return new Settings(s.text("mode").flatMap(Mode::ofCode), values, share);
    }

    private static void both(Section s, String one, String other, Complaints complaints) {
        if (s.node().entry(one).isPresent() && s.node().entry(other).isPresent()) complaints.add(s.atKey(other), "\"%s\" and \"%s\" say the same thing twice".formatted(one, other), "Keep one of them.");
    }

    /** What no device could do, whatever its sheet says. */
    private static void fits(Section s, Map<Setting, Double> v, Complaints complaints) {
        if (v.containsKey(Setting.RATE) && v.containsKey(Setting.INSPIRATORY_TIME) && v.get(Setting.INSPIRATORY_TIME) >= 60 / v.get(Setting.RATE)) {
            complaints.add(s.at(Setting.INSPIRATORY_TIME.words()), "the inspiratory time is as long as the whole breath", "At this rate a breath takes %s s.".formatted(short1(60 / v.get(Setting.RATE))));
        }
        if (v.containsKey(Setting.PAUSE) && v.containsKey(Setting.INSPIRATORY_TIME) && v.get(Setting.PAUSE) >= v.get(Setting.INSPIRATORY_TIME)) {
            complaints.add(s.at(Setting.PAUSE.words()), "the pause is as long as the inspiratory time that it is a part of", "Make it shorter.");
        }
        if (v.containsKey(Setting.PEEP) && v.containsKey(Setting.PRESSURE_LIMIT) && v.get(Setting.PRESSURE_LIMIT) <= v.get(Setting.PEEP)) {
            complaints.add(s.at(Setting.PRESSURE_LIMIT.words()), "the pressure limit does not lie above PEEP", "The limit is above ambient.");
        }
    }

    private static String short1(double v) { return Double.toString(Math.rint(v * 100) / 100); }
}
