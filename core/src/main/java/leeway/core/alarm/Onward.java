package leeway.core.alarm;

/**
 * How far a value still moves that is looked at again and again: straight on, unless the last two looks show that it settles. Then each
 * further step is smaller than the one before, but by the square root only of what was seen, for behind what settles fast there may be
 * something slower, and by a fifth at most.
 * <p>For ending a run early; leaves out what comes from outside later. Common practice, no source; held against runs to the end.
 */
public final class Onward {
    /** The least share of a step that the next one is taken to have. */
    private static final double LEAST_SHARE = 0.8;

    private Onward() { }

    /**
     * @param moved  since the last look, in the value's unit
     * @param before in the look before that; {@code NaN} where there was none
     * @param looks  still to come
     * @return at least 0; {@code NaN} where {@code moved} is
     */
    public static double still(double moved, double before, double looks) {
        double step = Math.abs(moved), straight = step * looks;
        double share = moved / before;
        if (!(share >= 0 && share < 1)) return straight;
        double kept = Math.max(LEAST_SHARE, Math.sqrt(share));
        double sum = 0, weight = 1;
        for (double left = looks; left > 0 && weight > 1e-4; left--) {
            sum += weight * Math.min(1, left);
            weight *= kept;
        }
        return Math.min(straight, step * (sum + weight));
    }
}
