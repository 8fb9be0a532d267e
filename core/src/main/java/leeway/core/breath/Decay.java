package leeway.core.breath;

/**
 * e^-x, the same to the last bit on every machine and JDK, and cheap: plain arithmetic on a table of 128 roots of 2.
 * <p>x = (k ln 2 + s) / 128 with |s| at most ln 2 / 2; then 2^(-k/128) from the table and a polynomial of degree 5 for the
 * rest (its remainder is under 1e-18). Within 2 units in the last place of {@link StrictMath#exp}, which answers where x is
 * negative or above 700.
 */
final class Decay {
    private static final int PARTS = 128;
    private static final double PER_LN2 = PARTS / 0.6931471805599453;
    /** ln 2 / 128 in two pieces, the first with its last 21 bits 0, so that k times it is exact. */
    private static final double LN2_HIGH = Double.longBitsToDouble(Double.doubleToLongBits(0.6931471805599453 / PARTS) & 0xffffffffffe00000L);
    /** What is left of it; ln 2 = 0.6931471805599453 + 2.3190468138462996e-17. */
    private static final double LN2_LOW = (0.6931471805599453 - LN2_HIGH * PARTS + 2.3190468138462996e-17) / PARTS;
    private static final double[] ROOT = new double[PARTS];

    static {
        for (int i = 0; i < PARTS; i++) ROOT[i] = StrictMath.pow(2, -i / (double) PARTS);
    }

    private Decay() { }

    static double of(double x) {
        if (!(x >= 0 && x < 700)) return StrictMath.exp(-x);
        int k = (int) (x * PER_LN2 + 0.5);
        double r = x - k * LN2_HIGH - k * LN2_LOW, r2 = r * r;
        double rest = r2 * (0.5 - r * (1 / 6.0) + r2 * (1 / 24.0 - r * (1 / 120.0))) - r, root = ROOT[k & PARTS - 1];
        return (root + root * rest) * Double.longBitsToDouble((long) (1023 - (k >> 7)) << 52);
    }
}
