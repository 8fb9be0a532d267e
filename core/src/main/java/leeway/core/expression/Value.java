package leeway.core.expression;

import leeway.core.quantity.Dimension;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;

/**
 * What a formula comes to.
 *
 * @param si    the amount in the coherent SI unit; 0 where it is no amount
 * @param truth the yes or no; false where it is none
 * @param word  the word; empty where it is none
 */
public record Value(Type type, double si, boolean truth, String word) {
    public static Value amount(double si, Dimension dimension) { return new Value(Type.of(dimension), si, false, ""); }

    /** An amount given in the unit in which the program holds that kind. */
    public static Value of(double value, Kind kind) { return of(value, kind.internal()); }

    public static Value of(double value, Unit unit) { return amount(value * unit.factor() + unit.offset(), unit.dimension()); }

    public static Value of(boolean truth) { return new Value(Type.TRUTH, 0, truth, ""); }

    public static Value of(String word) { return new Value(Type.WORD, 0, false, word); }

    /** The amount in this unit, freed of the noise of conversion: rounded to 12 significant digits. */
    public double in(Unit unit) {
        if (!type.amount() || !unit.dimension().equals(type.dimension())) throw new IllegalArgumentException("%s is not in %s".formatted(type.words(), unit.symbol()));
        return tidy((si - unit.offset()) / unit.factor());
    }

    static double tidy(double value) {
        if (value == 0 || !Double.isFinite(value)) return value;
        double scale = StrictMath.pow(10, 11 - Math.floor(StrictMath.log10(Math.abs(value))));
        return Double.isFinite(scale) && scale > 0 ? Math.rint(value * scale) / scale : value;
    }
}
