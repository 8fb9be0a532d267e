package leeway.core.lung;

/**
 * e^x and ln x for the pressure–volume curve: plain arithmetic on tables, so the same to the last bit on every machine, and
 * several times as fast as {@link StrictMath}.
 * <p>Range: e^x for |x| under 700, relative error under 1e-14; ln x for normal positive x, absolute error under 1e-14 beside
 * the logarithm's own size. Elsewhere {@link StrictMath} answers.
 */
public final class Exponentials {
    private static final int PARTS = 128;
    private static final double LN2 = 0.6931471805599453, PER_LN2 = PARTS / LN2, STEP = LN2 / PARTS;
    private static final double[] POWER = new double[PARTS], CENTRE = new double[PARTS], LOG = new double[PARTS];

    static {
        for (int i = 0; i < PARTS; i++) {
            POWER[i] = StrictMath.pow(2, i / (double) PARTS);
            CENTRE[i] = 1 / (1 + (i + 0.5) / PARTS);
            LOG[i] = -StrictMath.log(CENTRE[i]);
        }
    }

    private Exponentials() { }

    public static double of(double x) {
        if (!(x > -700 && x < 700)) return StrictMath.exp(x);
        int k = (int) Math.floor(x * PER_LN2 + 0.5);
        double r = x - k * STEP, r2 = r * r;
        double rest = r + r2 * (0.5 + r * (1 / 6.0) + r2 * (1 / 24.0 + r * (1 / 120.0))), root = POWER[k & PARTS - 1];
        return (root + root * rest) * Double.longBitsToDouble((long) (1023 + (k >> 7)) << 52);
    }

    public static double log(double x) {
        if (!(x >= Double.MIN_NORMAL && x <= Double.MAX_VALUE)) return StrictMath.log(x);
        long bits = Double.doubleToRawLongBits(x);
        int e = (int) (bits >> 52) - 1023, j = (int) (bits >> 45) & PARTS - 1;
        double m = Double.longBitsToDouble(bits & 0x000fffffffffffffL | 0x3ff0000000000000L), r = m * CENTRE[j] - 1, r2 = r * r;
        return e * LN2 + LOG[j] + (r - r2 * (0.5 - r * (1 / 3.0) + r2 * (0.25 - r * 0.2)));
    }
}
