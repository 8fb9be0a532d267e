package leeway.files.keys;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;

/**
 * A number with its unit, between two bounds. Its value is a {@code Double} in the kind's own unit.
 *
 * @param least the least possible, in that unit, itself included
 * @param most  the most possible
 */
public record QuantityForm(Kind kind, double least, double most, String example) implements Form {
    public QuantityForm {
        if (!(least <= most)) throw new IllegalArgumentException("bounds %s to %s".formatted(least, most));
    }

    @Override public Optional<Kind> quantity() { return Optional.of(kind); }

    /** The kind's own example where it lies between the bounds, otherwise their middle. */
    static String example(Kind kind, double least, double most) {
        double usual = Quantity.parse(kind.example()).orElseThrow().in(kind.internal());
        if (usual >= least && usual <= most) return kind.example();
        return plain(new BigDecimal((least + most) / 2).round(new MathContext(2)).doubleValue()) + " " + kind.internal().symbol();
    }

    @Override public String words() {
        return kind == Kind.NUMBER ? "a plain number from %s to %s".formatted(plain(least), plain(most)) : "%s, for example \"%s\"".formatted(kind.words(), example);
    }

    @Override public Optional<Object> read(Node node, String name, TableReader reader) {
        if (!(node instanceof Node.Scalar s) || s.blank()) {
            reader.complaints().add(node.at(), "\"%s\" has %s where %s belongs".formatted(name, node.words(), kind.words()), "Write for example \"%s: %s\".".formatted(name, example));
            return Optional.empty();
        }
        return read(s, name, reader.complaints()).map(q -> q);
    }

    /** For a text that is part of a value, or comes from elsewhere than a file. */
    public Optional<Double> read(Node.Scalar s, String name, Complaints complaints) {
        String text = s.text().strip();
        Optional<Quantity.Parts> parts = Quantity.split(text);
        if (parts.isEmpty()) {
            complaints.add(s.at(), "%s is not %s".formatted(Complaints.echo(text), kind.words()), ask());
            return Optional.empty();
        }
        double number = parts.get().number();
        String written = parts.get().unit();
        Optional<Unit> unit = Units.find(written);
        if (written.isEmpty() && kind != Kind.NUMBER) {
            complaints.add(s.at(), "%s has no unit".formatted(Complaints.echo(text)), withoutUnit(number));
            return Optional.empty();
        }
        if (unit.isEmpty()) {
            String decimal = text.replaceFirst("^([+-]?\\d+),(\\d+)", "$1.$2");
            boolean comma = !decimal.equals(text) && Quantity.parse(decimal).isPresent();
            complaints.add(s.at(), comma ? "%s has a comma in its number".formatted(Complaints.echo(text)) : notAUnit(text, written), comma ? "Write a point." : ask(),
                    () -> comma ? List.of(decimal) : nearestUnit(number, written));
            return Optional.empty();
        }
        if (!kind.accepted().contains(unit.get())) {
            boolean same = unit.get().dimension().equals(kind.internal().dimension()) && kind != Kind.NUMBER && !unit.get().symbol().isEmpty();
            complaints.add(s.at(), same ? "%s: %s is not taken in %s here".formatted(Complaints.echo(text), name, unit.get().symbol())
                    : "%s is not %s".formatted(Complaints.echo(text), kind.words()), ask());
            return Optional.empty();
        }
        double value = kind.internal().from(number, unit.get());
        if (!Double.isFinite(value) || value < least - slack(least) || value > most + slack(most)) {
            complaints.add(s.at(), "%s is impossible: %s lies between %s and %s".formatted(Complaints.echo(text), name, in(unit.get(), least), in(unit.get(), most)),
                    "Look at the number and its unit.");
            return Optional.empty();
        }
        return Optional.of(value == 0 ? 0.0 : value); // no minus zero
    }

    private static double slack(double bound) { return Math.abs(bound) * 1e-12; }

    private String notAUnit(String text, String written) {
        if (written.matches("(?s)[-–—~±+:].*") || written.matches("(?s)(to|bis|or|\\.\\.).*") || written.matches("(?s)(.*\\D\\s)?\\d.*")) return "%s is more than one number".formatted(Complaints.echo(text));
        return "%s: there is no unit %s".formatted(Complaints.echo(text), Complaints.echo(written));
    }

    private String ask() {
        if (kind == Kind.NUMBER) return "Write a plain number from %s to %s.".formatted(plain(least), plain(most));
        String words = kind.words();
        return "%s is in %s, for example \"%s\".".formatted(Character.toUpperCase(words.charAt(0)) + words.substring(1), kind.unitsInWords(), example);
    }

    private String withoutUnit(double number) {
        if (kind == Kind.FRACTION && number >= least && number <= most && number <= 1) {
            return "A share is in %%, for example \"%s %%\".".formatted(plain(number * 100));
        }
        String words = kind.words();
        String withFirst = plain(number) + (kind.accepted().get(0).symbol().startsWith("/") ? " " : " ") + kind.accepted().get(0).symbol();
        double value = kind.internal().from(number, kind.accepted().get(0));
        return "%s is in %s, for example \"%s\".".formatted(Character.toUpperCase(words.charAt(0)) + words.substring(1), kind.unitsInWords(),
                value >= least && value <= most ? withFirst : example);
    }

    /** The accepted spelling nearest to what was written, with the number before it. */
    private List<String> nearestUnit(double number, String written) {
        List<String> spellings = Units.spellings().entrySet().stream().filter(e -> kind.accepted().contains(e.getValue())).map(Map.Entry::getKey).toList();
        for (String s : spellings) if (s.equalsIgnoreCase(written.replace('0', 'O'))) return List.of(plain(number) + " " + s);
        if (written.length() < 2) return List.of();
        return Nearest.of(written, spellings).stream().map(u -> plain(number) + " " + u).limit(1).toList();
    }

    /** "bar, psi, kPa or MPa; 0 bar to 350 bar". */
    public String unitsAndBounds() {
        String bounds = in(kind.accepted().get(0), least, kind) + " to " + in(kind.accepted().get(0), most, kind);
        return kind == Kind.NUMBER ? "a plain number; " + bounds : kind.unitsInWords() + "; " + bounds;
    }

    private static String in(Unit unit, double internal, Kind kind) {
        double v = unit.from(internal, kind.internal());
        String number = plain(new BigDecimal(v).round(new MathContext(4, RoundingMode.HALF_EVEN)).doubleValue());
        return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
    }

    private String in(Unit unit, double internal) { return in(unit, internal, kind); }

    /** A number as people write it: no exponent, no trailing zeros. */
    static String plain(double v) {
        if (v == 0) return "0";
        return new BigDecimal(v).round(new MathContext(10)).stripTrailingZeros().toPlainString();
    }

    @Override public Map<String, Object> schema() {
        Map<String, Object> out = new LinkedHashMap<>();
        List<String> units = Units.spellings().entrySet().stream().filter(e -> kind.accepted().contains(e.getValue()) && !e.getKey().isEmpty())
                .map(e -> Pattern.quote(e.getKey()).replaceAll("\\\\[QE]", "").replaceAll("([.()/\\[\\]])", "\\\\$1")).sorted().collect(Collectors.toCollection(ArrayList::new));
        String number = "^\\s*[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?";
        if (kind == Kind.NUMBER) {
            out.put("type", "number");
            out.put("minimum", least);
            out.put("maximum", most);
        } else {
            out.put("type", "string");
            out.put("pattern", number + "\\s*(" + String.join("|", units) + ")\\s*$");
        }
        out.put("examples", List.of(kind == Kind.NUMBER ? (Object) Double.valueOf(plain((least + most) / 2)) : example));
        return out;
    }
}
