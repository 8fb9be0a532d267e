package leeway.app.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * How many decimals a number keeps at the edge, by the unit in which its key ends.
 * <p>A figure keeps one digit more than the model can answer for, so that sums and differences of printed figures still
 * agree; no more, so that the last bits of a machine or a JDK never show.
 */
public final class Digits {
    private static final String[] UNITS = {
        "MlPerCmH2O", "CmH2OSPerL", "MlPerMin", "MlPerKg", "MlPerDl", "LPerMin", "JPerMin", "PerMin", "PerHour", "MmolL", "PerL", "CmH2O", "MmHg", "HPa",
        "Bar", "Min", "Ml", "Wh", "Kg", "Cel", "W", "L", "S" };
    private static final int[] DECIMALS = { 2, 2, 1, 3, 3, 3, 2, 2, 3, 2, 2, 2, 2, 3, 2, 2, 2, 2, 2, 2, 2, 2, 2 };
    /** Shares, chances, pH, z: four decimals, as many as 10,000 draws can tell apart. */
    private static final int OTHERWISE = 4;

    private Digits() { }

    /** Decimals of the key's number. */
    public static int decimals(String key) {
        for (int i = 0; i < UNITS.length; i++) if (key.endsWith(UNITS[i])) return DECIMALS[i];
        return OTHERWISE;
    }

    /** The number rounded as one whose key ends like this. */
    static double round(String key, double value) { return new BigDecimal(value).setScale(decimals(key), RoundingMode.HALF_EVEN).doubleValue(); }

    /** The number as JSON has it: plain, without trailing zeros, never −0; a number that is not finite is a fault of ours. */
    static String json(String key, double value) {
        if (!Double.isFinite(value)) throw new IllegalStateException("the figure %s is %s".formatted(key, value));
        return Decimals.shortest(value, decimals(key));
    }
}
