package leeway.core.lung;

/**
 * How well one number of the lungs is known: what 19 of 20 of the kind lie in, about the value that {@link Lungs} holds.
 *
 * @param low  in the value's own unit, at most the value
 * @param high at least the value
 */
public record LungDoubt(LungValue value, double low, double high) {
    public LungDoubt {
        if (!(low <= high)) throw new IllegalArgumentException("%s from %s to %s".formatted(value.words(), low, high));
    }

    /** The value this many standard deviations away, normal on either side; 0 is the value that the lungs hold. */
    public double at(Lungs lungs, double deviations) {
        double middle = value.of(lungs);
        return middle + deviations / Z975 * (deviations > 0 ? high - middle : middle - low);
    }

    /** The 0.975 quantile of the standard normal. */
    private static final double Z975 = 1.959963984540054;
}
