package leeway.app.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Numbers as decimal text: the text that {@code String.format} or {@link BigDecimal} would write, by plain arithmetic.
 * <p>A picture has thousands of coordinates, and a formatter looks up a locale for each. Arithmetic in binary can only be
 * wrong about a number beside a half of its last digit, so such a number, and one too large, goes the long way.
 */
final class Decimals {
    private static final long[] TENS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};
    /** Below this a double still tells the halves between whole numbers well apart. */
    private static final double MOST = 1e14;
    /**
     * A number times a power of ten is off by half a last place, its shortest decimal text by one at most: farther than this
     * from a half, all three lie on the same side.
     */
    private static final double PLACES = 4;

    private Decimals() { }

    /** With so many decimals, a half of its shortest text rounded away from zero; never −0. */
    static String fixed(double v, int decimals) { return fixed(new StringBuilder(12), v, decimals).toString(); }

    /** The same, behind what is there. */
    static StringBuilder fixed(StringBuilder out, double v, int decimals) {
        double size = Math.abs(v);
        long units = units(size, decimals);
        if (units < 0) units = exactly(size, decimals);
        if (units < 0) return out.append(String.format(Locale.ROOT, "%." + decimals + "f", v));
        if (v < 0 && units > 0) out.append('-');
        return put(out, units, decimals);
    }

    /** With at most so many decimals and no zero at the end, a half of its exact value rounded to the even neighbour; never −0. */
    static String shortest(double v, int decimals) {
        double size = Math.abs(v);
        long units = units(size, decimals);
        if (units < 0) {
            BigDecimal rounded = new BigDecimal(v).setScale(decimals, RoundingMode.HALF_EVEN);
            return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        }
        StringBuilder out = new StringBuilder(12);
        if (v < 0 && units > 0) out.append('-');
        int kept = decimals;
        for (; kept > 0 && units % 10 == 0; kept--) units /= 10;
        return put(out, units, kept).toString();
    }

    /** A coordinate: one decimal, or none where it is whole. */
    static StringBuilder tenths(StringBuilder out, double v) {
        int from = out.length();
        fixed(out, v, 1);
        int end = out.length();
        if (out.charAt(end - 1) == '0' && end - from > 2) out.setLength(end - 2);
        return out;
    }

    /** The number in units of its last decimal, where arithmetic is sure of it; −1 where it is not. */
    private static long units(double size, int decimals) {
        double scaled = decimals < TENS.length ? size * TENS[decimals] : MOST;
        if (!(scaled < MOST)) return -1;
        long below = (long) scaled;
        double part = scaled - below;
        if (Math.abs(part - 0.5) <= PLACES * Math.ulp(scaled)) return -1;
        return part > 0.5 ? below + 1 : below;
    }

    /** The same beside a half, by the shortest text of the number, as a formatter does it; −1 where the number is too large. */
    private static long exactly(double size, int decimals) {
        if (decimals >= TENS.length || !(size * TENS[decimals] < MOST)) return -1;
        return new BigDecimal(Double.toString(size)).setScale(decimals, RoundingMode.HALF_UP).unscaledValue().longValueExact();
    }

    private static StringBuilder put(StringBuilder out, long units, int decimals) {
        long whole = units / TENS[decimals];
        out.append(whole);
        if (decimals == 0) return out;
        out.append('.');
        long rest = units - whole * TENS[decimals];
        for (int i = decimals - 1; i > 0 && rest < TENS[i]; i--) out.append('0');
        return out.append(rest);
    }
}
