package leeway.core.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number with its unit, as it was written. Never NaN, never infinite. */
public record Quantity(double value, Unit unit) {
    private static final Pattern WRITTEN = Pattern.compile("([+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(.*)");

    public Quantity {
        if (!Double.isFinite(value)) throw new IllegalArgumentException("quantity (%s %s) must be finite".formatted(value, unit));
    }

    /** The value in another unit of the same dimension. */
    public double in(Unit other) { return other.from(value, unit); }

    public Dimension dimension() { return unit.dimension(); }

    /** The value in the coherent SI unit. */
    public double si() { return value * unit.factor() + unit.offset(); }

    @Override public String toString() {
        String number = value == Math.rint(value) && Math.abs(value) < 1e15 ? Long.toString((long) value) : Double.toString(value);
        return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
    }

    /** A text split into number and the rest; empty when it does not begin with a number. */
    public record Parts(double number, String unit) { }

    /** Splits "185 bar" into 185 and "bar"; a printed minus sign and unbreakable spaces are taken as typed ones. Numbers that are not finite are no numbers here. */
    public static Optional<Parts> split(String text) {
        Matcher m = WRITTEN.matcher(text.replace('\u2212', '-').replace('\u00A0', ' ').replace('\u202F', ' ').strip());
        if (!m.matches()) return Optional.empty();
        double number = Double.parseDouble(m.group(1));
        return Double.isFinite(number) ? Optional.of(new Parts(number, m.group(2).strip())) : Optional.empty();
    }

    /** Reads "185 bar"; empty when the number or the unit is not known. A bare number has the unit {@link Units#ONE}. */
    public static Optional<Quantity> parse(String text) {
        return split(text).flatMap(p -> Units.find(p.unit()).map(u -> new Quantity(p.number(), u)));
    }
}
