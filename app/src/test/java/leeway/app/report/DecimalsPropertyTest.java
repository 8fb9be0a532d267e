package leeway.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.api.Test;

/** Against the language's own formatter and its decimal arithmetic. */
class DecimalsPropertyTest {
    private static final int MOST_DECIMALS = 6;

    /** Numbers of every size, and those that are hard: halves of every digit, their neighbours, whole numbers, nothing, and what no double keeps a fraction of. */
    private static void numbers(DoubleConsumer to) {
        SplittableRandom random = new SplittableRandom(20_261_126);
        for (double v : new double[] {0, -0.0, 0.5, 1.5, 2.5, 0.05, 0.15, 0.25, 0.35, 0.04999999999999999, 0.005, 1.005, 2.675, 0.0005, 9.95, 99.95, 999.5, 0.95, 1e13, 1e14, 123456789012345.6, 1e15, 1e22, 1e23, 1.7e308, Double.MIN_VALUE, 4e-7,
            Double.MAX_VALUE, 2e-3, 9007199254740993.0, 99999999999999.5}) both(v, to);
        for (int i = 0; i < 1_500; i++) {
            both(random.nextDouble() * Math.pow(10, random.nextInt(-8, 18)), to);
            double half = (random.nextInt(2_000_000) + 0.5) / Math.pow(10, random.nextInt(7));
            both(half, to);
            both(Math.nextUp(half), to);
            both(Math.nextDown(half), to);
            both(random.nextInt(2_000_000) / Math.pow(10, random.nextInt(7)), to);
            both(random.nextInt(1 << 20) / (double) (1 << random.nextInt(20)), to);
        }
    }

    private static void both(double v, DoubleConsumer to) {
        to.accept(v);
        to.accept(-v);
    }

    private static String withoutMinusZero(String text) { return text.matches("-0(\\.0*)?") ? text.substring(1) : text; }

    @Test void fixedDecimalsAreThoseOfAFormatter() {
        for (int d = 0; d <= MOST_DECIMALS; d++) {
            int decimals = d;
            String pattern = "%." + d + "f";
            numbers(v -> {
                String expected = withoutMinusZero(String.format(Locale.ROOT, pattern, v));
                if (!Decimals.fixed(v, decimals).equals(expected)) assertThat(Decimals.fixed(v, decimals)).as("%s with %d decimals", v, decimals).isEqualTo(expected);
            });
        }
    }

    @Test void shortestDecimalsAreThoseOfExactArithmetic() {
        for (int d = 0; d <= MOST_DECIMALS; d++) {
            int decimals = d;
            numbers(v -> {
                BigDecimal rounded = new BigDecimal(v).setScale(decimals, RoundingMode.HALF_EVEN);
                String expected = rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
                if (!Decimals.shortest(v, decimals).equals(expected)) assertThat(Decimals.shortest(v, decimals)).as("%s with %d decimals", v, decimals).isEqualTo(expected);
            });
        }
    }

    @Test void aCoordinateHasOneDecimalOrNone() {
        numbers(v -> {
            String text = withoutMinusZero(String.format(Locale.ROOT, "%.1f", v));
            String expected = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
            String made = Decimals.tenths(new StringBuilder("x"), v).substring(1);
            if (!made.equals(expected)) assertThat(made).as("%s", v).isEqualTo(expected);
        });
    }

    @Test void whatIsNoNumberIsSaidAsAFormatterSaysIt() {
        assertThat(Decimals.fixed(Double.NaN, 1)).isEqualTo("NaN");
        assertThat(Decimals.fixed(Double.NEGATIVE_INFINITY, 1)).isEqualTo("-Infinity");
    }
}
