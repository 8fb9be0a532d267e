package leeway.files.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.gas.Barometer;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Sensor.Measured;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.rehearsal.Effect;
import leeway.core.rehearsal.Effect.FromJourney;
import leeway.core.rehearsal.Effect.On;
import leeway.core.rehearsal.Effect.Where;
import leeway.core.rehearsal.Need;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.QuantityForm;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;

/** A declared effect of a fault: which knob, how, where, when. {@code {what: leak circuit, by: 20 L/min, over: 30 s}}. */
final class Effects {
    private static final List<String> KNOBS = Arrays.stream(Knob.values()).map(Effects::words).toList();
    private static final List<String> NEEDS = Arrays.stream(Need.values()).map(Need::words).toList();
    private static final String AIRCRAFT = "altitude of the aircraft";
    static final Table TABLE = Table.of("an effect",
            Key.must("what", Form.choice("thing to change", KNOBS), "The coefficient that changes."),
            Key.may("to", Form.text(40, "1"), "The value it takes, in its own unit."),
            Key.may("by", Form.text(40, "20 L/min"), "What is added to it."),
            Key.may("times", Form.text(40, "0.5"), "What it is multiplied with."),
            Key.may("or", Form.choice("value of the journey", AIRCRAFT), "What the journey says instead, where it says it."),
            Key.may("on", Form.text(60, "store in use"), "Which store, sensor or alarm condition.").otherwise("the only one"),
            Key.may("after", Form.of(Kind.TIME, 0, 7200, "10 s"), "How long after the fault it begins.").otherwise("at once"),
            Key.may("over", Form.of(Kind.TIME, 0, 7200, "60 s"), "How long it grows, evenly.").otherwise("at once"),
            Key.may("for", Form.of(Kind.TIME, 0.1, 7200, "110 s"), "How long it lasts.").otherwise("as long as the fault"),
            Key.may("only with", Form.list(Form.choice("need", NEEDS), 6), "What kit, mode or patient must have for this effect.").otherwise("always"));

    private Effects() { }

    /** A knob as a sheet names it. */
    static String words(Knob knob) { return knob.name().toLowerCase(Locale.ROOT).replace('_', ' '); }

    static Optional<Effect> of(Section s, Complaints complaints) {
        Knob knob = Knob.values()[KNOBS.indexOf(s.text("what").orElse(""))];
        List<String> given = List.of("to", "by", "times").stream().filter(s::has).toList();
        if (given.size() != 1) {
            complaints.add(s.at(), "an effect has one of \"to\", \"by\" and \"times\", not %d of them".formatted(given.size()), "Write for example {what: %s, times: 2}.".formatted(words(knob)));
            return Optional.empty();
        }
        String key = given.get(0);
        How how = key.equals("to") ? How.SET : key.equals("by") ? How.PLUS : How.TIMES;
        Optional<Double> value = value(knob, how, (Node.Scalar) s.value(key).orElseThrow().node(), key, complaints);
        Optional<On> on = on(knob, s, complaints);
        if (value.isEmpty() || on.isEmpty()) return Optional.empty();
        if (how == How.SET && (value.get() < knob.low || value.get() > knob.high)) {
            complaints.add(s.at(key), "%s lies between %s and %s %s".formatted(words(knob), knob.low, knob.high, knob.unit), "Look at the number and its unit.");
            return Optional.empty();
        }
        FromJourney from = s.has("or") ? FromJourney.AIRCRAFT_ALTITUDE : FromJourney.NOTHING;
        if (from == FromJourney.AIRCRAFT_ALTITUDE && knob != Knob.BAROMETER) {
            complaints.add(s.at("or"), "\"%s\" is a value of the barometer".formatted(AIRCRAFT), "Leave \"or\" away.");
            return Optional.empty();
        }
        List<Need> only = s.texts("only with").stream().map(n -> Need.ofWords(n).orElseThrow()).toList();
        return Optional.of(new Effect(knob, on.get(), how, value.get(), from, s.number("after", 0), s.number("over", 0),
                s.number("for", Double.POSITIVE_INFINITY), only));
    }

    /** In the knob's unit. */
    private static Optional<Double> value(Knob knob, How how, Node.Scalar node, String key, Complaints complaints) {
        if (how == How.TIMES) return new QuantityForm(Kind.NUMBER, 0, 10_000, "2").read(node, key, complaints);
        Kind kind = kind(knob);
        boolean altitude = knob == Knob.BAROMETER && Quantity.parse(node.text()).map(q -> Kind.ALTITUDE.accepted().contains(q.unit())).orElse(false);
        if (altitude) return new QuantityForm(Kind.ALTITUDE, 0, 11_000, "14000 ft").read(node, key, complaints).map(Barometer::pressureMmHg);
        // a difference of temperatures has the unit's name but not its zero
        if (kind == Kind.TEMPERATURE && how == How.PLUS) {
            Optional<Quantity> q = Quantity.parse(node.text()).filter(x -> x.unit().symbol().equals("Cel") || x.unit().symbol().equals("K"));
            if (q.isEmpty()) complaints.add(node.at(), "%s is not a difference of temperatures".formatted(Complaints.echo(node.text())), "Write for example \"by: 1.5 Cel\".");
            return q.map(Quantity::value);
        }
        if (kind == Kind.FRACTION && Quantity.parse(node.text()).map(q -> q.unit().symbol().isEmpty()).orElse(false)) kind = Kind.NUMBER;
        double bound = how == How.SET ? 1e6 : 1e4;
        double toKnob = knob.unit.equals("mL/min") ? 1000 : 1;
        return new QuantityForm(kind, -bound, bound, kind.example()).read(node, key, complaints).map(v -> v * toKnob);
    }

    private static Kind kind(Knob knob) {
        return switch (knob.unit) {
            case "1" -> Kind.FRACTION;
            case "cmH2O" -> Kind.AIRWAY_PRESSURE;
            case "cmH2O.s/L" -> Kind.RESISTANCE;
            case "mL/cmH2O" -> Kind.COMPLIANCE;
            case "mL" -> Kind.VOLUME;
            case "L/min", "L/min at 20 cmH2O", "mL/min" -> Kind.FLOW;
            case "/min" -> Kind.RATE;
            case "s" -> Kind.TIME;
            case "mmHg" -> Kind.GAS_TENSION;
            case "Cel" -> Kind.TEMPERATURE;
            case "g/L" -> Kind.HAEMOGLOBIN;
            case "mmol/L" -> Kind.CONCENTRATION;
            case "W" -> Kind.POWER;
            default -> Kind.NUMBER;
        };
    }

    private static Optional<On> on(Knob knob, Section s, Complaints complaints) {
        List<String> may = places(knob);
        String text = s.text("on", "");
        if (may.isEmpty()) {
            if (text.isEmpty()) return Optional.of(On.ONLY);
            complaints.add(s.at("on"), "there is only one %s".formatted(words(knob)), "Leave \"on\" away.");
            return Optional.empty();
        }
        if (!may.contains(text)) {
            complaints.add(s.at(text.isEmpty() ? "what" : "on"), text.isEmpty() ? "%s needs \"on\"".formatted(words(knob)) : "there is no %s %s".formatted(words(knob), Complaints.echo(text)),
                    "It is on \"%s\", for example.".formatted(may.get(0)), () -> Nearest.of(text, may));
            return Optional.empty();
        }
        if (text.equals("all")) return Optional.of(On.stores(Where.ALL));
        if (text.equals("store in use")) return Optional.of(On.stores(Where.STORE_IN_USE));
        if (text.equals("stores of the leg")) return Optional.of(On.stores(Where.STORES_OF_LEG));
        Optional<AlarmCondition> condition = AlarmCondition.ofWords(text);
        if (condition.isPresent()) return condition.map(On::condition);
        From from = text.startsWith("monitor") ? From.MONITOR : From.VENTILATOR;
        String measured = text.substring(from.words().length() + 1);
        return Arrays.stream(Measured.values()).filter(m -> m.words().equals(measured)).findFirst().map(m -> On.sensor(from, m));
    }

    private static List<String> places(Knob knob) {
        List<String> out = new ArrayList<>();
        switch (knob) {
            case STORE_OPEN, EXTRA_DRAIN, INLET, SOAKED -> out.addAll(List.of("store in use", "stores of the leg", "all"));
            case SENSOR_GAIN, SENSOR_BIAS, SENSOR_FROZEN -> {
                for (From from : From.values()) for (Measured m : Measured.values()) out.add(from.words() + " " + m.words());
            }
            case SILENCED -> {
                for (AlarmCondition c : AlarmCondition.values()) out.add(c.words());
            }
            default -> {
                if (knob.copies > 1) out.add("all");
            }
        }
        return out;
    }
}
