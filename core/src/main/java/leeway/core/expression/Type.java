package leeway.core.expression;

import java.util.Arrays;
import leeway.core.quantity.Dimension;
import leeway.core.quantity.Kind;

/** What a formula or a name stands for: an amount of a dimension, a yes or no, or a word. */
public record Type(Sort sort, Dimension dimension) {
    /** The three sorts of value. */
    public enum Sort { AMOUNT, TRUTH, WORD }

    public static final Type TRUTH = new Type(Sort.TRUTH, Dimension.NONE);
    public static final Type WORD = new Type(Sort.WORD, Dimension.NONE);
    public static final Type NUMBER = new Type(Sort.AMOUNT, Dimension.NONE);

    public static Type of(Dimension dimension) { return new Type(Sort.AMOUNT, dimension); }

    public static Type of(Kind kind) { return of(kind.internal().dimension()); }

    public boolean amount() { return sort == Sort.AMOUNT; }

    /** With its article: "a pressure", "a plain number", "a yes or no". */
    public String words() {
        return switch (sort) {
            case TRUTH -> "a yes or no";
            case WORD -> "a word";
            case AMOUNT -> dimension.equals(Dimension.NONE) ? "a plain number" : Arrays.stream(Kind.values())
                    .filter(k -> k.internal().dimension().equals(dimension) && k != Kind.HEIGHT && k != Kind.ALTITUDE && k != Kind.AGE)
                    .map(k -> dimension.equals(Dimension.PRESSURE) ? "a pressure" : k.words()).findFirst().orElseGet(this::exponents);
        };
    }

    private String exponents() {
        StringBuilder out = new StringBuilder("a quantity in");
        add(out, "kg", dimension.kilogram());
        add(out, "m", dimension.metre());
        add(out, "s", dimension.second());
        add(out, "K", dimension.kelvin());
        add(out, "mol", dimension.mole());
        return out.toString();
    }

    private static void add(StringBuilder out, String unit, int power) {
        if (power != 0) out.append(' ').append(unit).append(power == 1 ? "" : "^" + power);
    }
}
