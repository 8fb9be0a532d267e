package leeway.core.quantity;

/**
 * A unit: how it is printed, what it measures, and how it converts.
 *
 * @param symbol as printed on pages and in files
 * @param ucum   its code in the Unified Code for Units of Measure, for the independent check of the factor
 * @param factor SI = value × factor + offset
 * @param offset nonzero for temperatures only
 */
public record Unit(String symbol, String ucum, Dimension dimension, double factor, double offset) {
    public Unit {
        if (!(factor > 0) || !Double.isFinite(factor + offset)) throw new IllegalArgumentException("unit %s has factor %s".formatted(symbol, factor));
    }

    /** The value in this unit of what is {@code value} in {@code from}; unchanged to the last bit when the units agree. */
    public double from(double value, Unit from) {
        if (!dimension.equals(from.dimension)) throw new IllegalArgumentException("%s is no %s".formatted(from.symbol, symbol));
        if (factor == from.factor && offset == from.offset) return value;
        return (value * from.factor + from.offset - offset) / factor;
    }

    /** By hand, for what the compiler makes costs a short command some 20 ms of its start. */
    @Override public boolean equals(Object o) {
        return this == o || o instanceof Unit u && factor == u.factor && offset == u.offset && symbol.equals(u.symbol) && ucum.equals(u.ucum) && dimension.equals(u.dimension);
    }

    @Override public int hashCode() { return 31 * symbol.hashCode() + Double.hashCode(factor); }

    @Override public String toString() { return symbol; }
}
