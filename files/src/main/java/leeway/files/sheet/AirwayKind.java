package leeway.files.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import leeway.core.kit.Airway;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** What leads into the patient. */
public final class AirwayKind implements SheetKind<Airway> {
    private static final Table TABLE = Table.sourced("airway",
            Key.must("type", Form.choice("type of airway", words(Airway.Type.values())), "What kind of airway it is."),
            Key.must("inner diameter", Form.of(Kind.DIAMETER, 1, 30), "Of its narrowest long part."),
            Key.must("length", Form.of(Kind.LENGTH, 1, 60, "29 cm"), "As used, cut or not."),
            Key.must("friction", Form.of(Kind.FRACTION, 0.5, 5, "200 %"), "Measured pressure drop over that of a straight smooth pipe: bend, connector, entry."),
            Key.may("bypass", Form.of(Kind.FRACTION, 0, 1, "100 %"), "Share of the dead space outside the chest that it bypasses.").otherwise("0 %"),
            Key.must("dead space", Form.of(Kind.VOLUME, 0, 500, "12 mL"), "Its own volume."),
            Key.may("cuffed", Form.yesNo(), "Whether a cuff can seal it.").otherwise("yes"),
            Key.may("leak", Form.of(Kind.FLOW, 0, 200, "3 L/min"), "The leak it usually has, at 20 cmH2O.").otherwise("none"));

    @Override public String word() { return "airway"; }

    @Override public String plural() { return "airways"; }

    @Override public Table table() { return TABLE; }

    @Override public Airway record(String name, Section s, Complaints complaints) {
        return new Airway(name, Airway.Type.valueOf(s.text("type").orElseThrow().toUpperCase(Locale.ROOT).replace(' ', '_')),
                s.number("inner diameter").orElseThrow(), s.number("length").orElseThrow(), s.number("friction").orElseThrow(), s.number("bypass", 0),
                s.number("dead space").orElseThrow(), s.yes("cuffed", true), Leak.mlPerSPerSqrtCmH2O(s.number("leak", 0)), SheetKind.source(s));
    }

    static List<String> words(Enum<?>[] values) { return Arrays.stream(values).map(v -> v.name().toLowerCase(Locale.ROOT).replace('_', ' ')).toList(); }

    static List<String> upper(Enum<?>[] values) { return Arrays.stream(values).map(Enum::name).toList(); }
}
