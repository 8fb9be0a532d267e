package leeway.core.kit;

/** A central value with the range that 19 of 20 patients of the kind lie in. */
public record Band(double central, double low, double high) {
    public Band {
        if (!(low <= central && central <= high)) throw new IllegalArgumentException("band %s (%s to %s)".formatted(central, low, high));
    }

    public static Band of(double value) { return new Band(value, value, value); }

    public Band times(double factor) { return new Band(central * factor, low * factor, high * factor); }
}
