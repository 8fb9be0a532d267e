package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leeway.core.kit.Sensor;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;

/** The part of a device's sheet that says what it measures, and how well: a mapping from what is measured to how. */
final class Sensors {
    static final Table TABLE = new Table("sensors", true, keys(), List.of());

    private Sensors() { }

    private static List<Key> keys() {
        List<Key> out = new ArrayList<>();
        for (Sensor.Measured m : Sensor.Measured.values()) {
            out.add(Key.may(m.words(), Form.section(() -> one(m)), "How it measures " + m.words() + "."));
        }
        return out;
    }

    private static Table one(Sensor.Measured m) {
        Kind kind = kindOf(m.unit()).orElseThrow();
        double widest = kind == Kind.FRACTION ? 0.5 : 1000;
        Form band = Form.of(kind, 0, widest, example(kind));
        List<Key> keys = new ArrayList<>(List.of(
                Key.must("at", Form.choice("place of a sensor", AirwayKind.words(Sensor.Place.values())), "Where it measures."),
                Key.may("delay", Form.of(Kind.TIME, 0, 120, "2 s"), "Transport delay.").otherwise("none"),
                Key.may("lag", Form.of(Kind.TIME, 0, 120, "0.2 s"), "Time constant of a first-order lag.").otherwise("none"),
                Key.may("average", Form.of(Kind.TIME, 0, 120, "8 s"), "Length of the moving mean that is shown.").otherwise("none"),
                Key.may("noise", band, "Standard deviation of the noise.").otherwise("none"),
                Key.may("error", band, "Half-width of a constant error.").otherwise("none"),
                Key.may("resolution", band, "Smallest step shown.").otherwise("continuous"),
                Key.may("drift per hour", Form.of(kind, -widest, widest, example(kind)),
                        "How far it goes off in an hour of use, up or down; in draws between none and twice as much.").otherwise("none"),
                Key.may("sample flow", Form.of(Kind.FLOW, 0, 1, "50 mL/min"), "Gas that it takes out of the circuit.").otherwise("none")));
        if (m == Sensor.Measured.SATURATION) {
            keys.add(Key.may("weak below", Form.of(Kind.FRACTION, 0, 1, "30 %"), "Share of the patient's usual cardiac output under which the pulse is too weak to read.").otherwise("never"));
        }
        return Table.sourced("the sensor of " + m.words(), keys.toArray(new Key[0]));
    }

    static List<Sensor> of(Section sensors) {
        List<Sensor> out = new ArrayList<>();
        for (Sensor.Measured m : Sensor.Measured.values()) {
            sensors.section(m.words()).ifPresent(s -> out.add(new Sensor(m, Sensor.Place.valueOf(s.text("at").orElseThrow().toUpperCase(Locale.ROOT).replace(' ', '_')),
                    s.number("delay", 0), s.number("lag", 0), s.number("average", 0), s.number("noise", 0), s.number("error", 0), s.number("resolution", 0),
                    s.number("sample flow").isPresent() ? java.util.OptionalDouble.of(s.number("sample flow").getAsDouble() * 1000) : java.util.OptionalDouble.empty(),
                    s.number("drift per hour", 0), m == Sensor.Measured.SATURATION ? s.number("weak below", 0) : 0)));
        }
        return out;
    }

    /** The family of quantities that the core's words for a unit stand for; empty for a condition without a limit. */
    static Optional<Kind> kindOf(String unit) {
        return switch (unit) {
            case "" -> Optional.empty();
            case "cmH2O" -> Optional.of(Kind.AIRWAY_PRESSURE);
            case "mL" -> Optional.of(Kind.VOLUME);
            case "L/min" -> Optional.of(Kind.FLOW);
            case "/min" -> Optional.of(Kind.RATE);
            case "s" -> Optional.of(Kind.TIME);
            case "mmHg" -> Optional.of(Kind.GAS_TENSION);
            case "1" -> Optional.of(Kind.FRACTION);
            case "bar" -> Optional.of(Kind.STORE_PRESSURE);
            default -> throw new IllegalArgumentException("no family for unit " + unit);
        };
    }

    private static String example(Kind kind) { return kind == Kind.FRACTION ? "1 %" : kind.example(); }
}
