package leeway.core.lung;

/**
 * The shape of an inspiratory effort: the muscles' pressure over its largest, against time. Leaves out expiratory muscles.
 * <p>A quarter sine to the peak, then an exponential release with a time constant of 0.1 s (from memory; the shape of
 * published occlusion traces), as straight lines between knots: within 1 % of the peak of the smooth curve, and between two
 * knots the breath stays exact.
 */
public final class Effort {
    /** Time constant of the release, s. From memory. */
    private static final double RELEASE_S = 0.1;
    private static final int RISING = 6;
    private static final double[] FALLING = {0.45, 1.0, 1.8, 3.0, 5.0};
    /** Straight stretches of an effort. */
    public static final int STRETCHES = RISING + FALLING.length;
    private static final double[] HEIGHT = new double[STRETCHES + 1];
    /** Change of height over a stretch: of the rise per its duration, of the release per second. */
    private static final double[] CHANGE = new double[STRETCHES];

    static {
        for (int i = 0; i <= RISING; i++) HEIGHT[i] = StrictMath.sin(StrictMath.PI / 2 * i / RISING);
        for (int i = 0; i < FALLING.length - 1; i++) HEIGHT[RISING + 1 + i] = StrictMath.exp(-FALLING[i]);
        HEIGHT[STRETCHES] = 0;
        for (int i = 0; i < STRETCHES; i++) CHANGE[i] = (HEIGHT[i + 1] - HEIGHT[i]) / (atS(i + 1, 1) - atS(i, 1));
    }

    private Effort() { }

    /** When knot i (0 to {@link #STRETCHES}) comes after the start of the effort, s. */
    public static double atS(int knot, double riseS) {
        return knot <= RISING ? riseS * knot / RISING : riseS + RELEASE_S * FALLING[knot - RISING - 1];
    }

    /** How fast the share changes from knot i to the next, 1/s. */
    public static double perS(int knot, double riseS) {
        return knot < RISING ? CHANGE[knot] / riseS : CHANGE[knot];
    }

    /** Share of the largest pressure at knot i. */
    public static double height(int knot) {
        return HEIGHT[knot];
    }

    /** Share of the largest pressure at a time of the rise. */
    public static double heightAt(double seconds, double riseS) {
        double at = Math.min(RISING, seconds / riseS * RISING);
        int knot = Math.min(RISING - 1, (int) at);
        return HEIGHT[knot] + (HEIGHT[knot + 1] - HEIGHT[knot]) * (at - knot);
    }

    /** The knot of the largest pressure. */
    public static int peak() {
        return RISING;
    }
}
