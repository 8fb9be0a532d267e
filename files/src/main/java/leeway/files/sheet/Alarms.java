package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.keys.Value;
import leeway.files.yaml.Complaints;

/** The part of a device's sheet that says of what it warns: a mapping from the alarm condition to its limits and delays. */
public final class Alarms {
    static final Table TABLE = new Table("alarms", true, keys(), List.of());

    private Alarms() { }

    private static List<Key> keys() {
        List<Key> out = new ArrayList<>();
        for (AlarmCondition c : AlarmCondition.values()) {
            out.add(Key.may(c.words(), Form.section(() -> one(c)), "How it warns of " + c.words() + "."));
        }
        return out;
    }

    private static Table one(AlarmCondition c) {
        List<Key> one = new ArrayList<>(List.of(
                Key.must("priority", Form.choice("priority", AirwayKind.words(AlarmRow.Priority.values())), "High, medium or low, as in IEC 60601-1-8."),
                Key.may("condition delay", Form.of(Kind.TIME, 0, 600, "5 s"), "From the measured value's crossing to the alarm condition.").otherwise("none"),
                Key.may("breaths", Form.whole(0, 20), "Breaths in a row that must cross it.").otherwise("0, at once"),
                Key.may("generation delay", Form.of(Kind.TIME, 0, 60, "1 s"), "From the alarm condition to the signal.").otherwise("none"),
                Key.may("latching", Form.yesNo(), "Whether the signal goes on after the condition ends.").otherwise("no")));
        limitKind(c).ifPresent(kind -> {
            one.add(Key.may("low", Form.section(() -> rule(c, kind)), "How the lower limit follows.").otherwise("none"));
            one.add(Key.may("high", Form.section(() -> rule(c, kind)), "How the upper limit follows.").otherwise("none"));
        });
        return new Table("the alarm " + c.words(), true, one, List.of());
    }

    /** The family in which a condition's limits stand; empty for a condition without limits. */
    public static Optional<Kind> limitKind(AlarmCondition c) { return Sensors.kindOf(c.unit()); }

    private static Table rule(AlarmCondition c, Kind kind) {
        Form value = Form.of(kind, kind == Kind.FRACTION ? -1 : -10_000, kind == Kind.FRACTION ? 1 : 10_000);
        return Table.of("the limit of " + c.words(),
                Key.may("from", Form.choice("start of a limit", AirwayKind.words(AlarmRow.Basis.values())), "What the limit starts from.").otherwise("fixed"),
                Key.may("times", Form.of(Kind.FRACTION, 0, 10, "150 %"), "What that is multiplied with.").otherwise("100 %"),
                Key.may("plus", value, "What is then added.").otherwise("nothing"),
                Key.may("is", value, "A fixed limit."),
                Key.may("at least", value, "Never below this."),
                Key.may("at most", value, "Never above this."));
    }

    static List<AlarmRow> of(Section alarms, String sheetSource, Complaints complaints) {
        List<AlarmRow> out = new ArrayList<>();
        for (AlarmCondition c : AlarmCondition.values()) {
            Optional<Section> row = alarms.section(c.words());
            if (row.isEmpty()) continue;
            Section s = row.get();
            boolean limits = limitKind(c).isPresent();
            String source = s.values().stream().map(Value::source).flatMap(Optional::stream).findFirst().orElse(sheetSource);
            out.add(new AlarmRow(c, AlarmRow.Priority.valueOf(s.text("priority").orElseThrow().toUpperCase(Locale.ROOT)), s.number("condition delay", 0),
                    s.whole("breaths", 0), s.number("generation delay", 0), s.yes("latching", false),
                    limits ? s.section("low").map(r -> rule(c, r, complaints)) : Optional.empty(), limits ? s.section("high").map(r -> rule(c, r, complaints)) : Optional.empty(), source));
        }
        return out;
    }

    private static AlarmRow.LimitRule rule(AlarmCondition c, Section r, Complaints complaints) {
        AlarmRow.Basis basis = r.text("from").map(t -> AlarmRow.Basis.valueOf(t.toUpperCase(Locale.ROOT).replace(' ', '_'))).orElse(AlarmRow.Basis.FIXED);
        OptionalDouble fixed = r.number("is");
        if (fixed.isPresent() == (basis != AlarmRow.Basis.FIXED)) {
            complaints.add(r.at(), "a limit of %s starts from something, or is fixed".formatted(c.words()), "Write {is: …}, or {from: …, times: …, plus: …}.");
        }
        OptionalDouble atLeast = r.number("at least");
        OptionalDouble atMost = r.number("at most");
        if (atLeast.isPresent() && atMost.isPresent() && atLeast.getAsDouble() > atMost.getAsDouble()) {
            complaints.add(r.at("at least"), "\"at least\" lies above \"at most\"", "Swap them.");
        }
        if (fixed.isPresent()) return new AlarmRow.LimitRule(AlarmRow.Basis.FIXED, 0, fixed.getAsDouble(), atLeast, atMost, r.asWritten("is").orElseThrow());
        return new AlarmRow.LimitRule(basis, r.number("times", 1), r.number("plus", 0), atLeast, atMost, words(basis, r));
    }

    /** "expected peak × 120 % + 10 cmH2O, at least 20 cmH2O, at most 40 cmH2O". */
    private static String words(AlarmRow.Basis basis, Section r) {
        StringBuilder out = new StringBuilder(basis.name().toLowerCase(Locale.ROOT).replace('_', ' ').replace("peep", "PEEP").replace("fio2", "FiO2").replace("co2", "CO2"));
        r.asWritten("times").ifPresent(t -> out.append(" × ").append(t));
        r.asWritten("plus").flatMap(Quantity::parse).ifPresent(q -> out.append(q.value() < 0 ? " − " : " + ").append(new Quantity(Math.abs(q.value()), q.unit())));
        r.asWritten("at least").ifPresent(t -> out.append(", at least ").append(t));
        r.asWritten("at most").ifPresent(t -> out.append(", at most ").append(t));
        return out.toString();
    }
}
