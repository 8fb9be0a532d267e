package leeway.core.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import leeway.core.gas.RealOxygen;
import leeway.core.run.Normal;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.junit.jupiter.api.Test;

/** The quick paths against slow ones: quantile, bend and contents. */
class NumericsTest {
    @Test
    void theQuantileIsThatOfAGeneralPurposeLibrary() {
        var random = new SplittableRandom(2);
        var theirs = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
        for (int i = 0; i < 300; i++) {
            int n = random.nextInt(1, i % 4 == 0 ? 5000 : 400);
            double[] values = random.doubles(n).map(v -> Math.floor(v * (n % 3 == 0 ? 5 : 1e6))).toArray();
            for (double p : new double[] { 0.01, 0.05, 0.5, 0.95, 0.99, 1 }) {
                assertThat(Quantiles.of(values, n, p)).isCloseTo(theirs.evaluate(values, p * 100), within(1e-9));
            }
        }
        double[] sorted = new double[1000];
        Arrays.setAll(sorted, i -> i);
        assertThat(Quantiles.of(sorted, 1000, 0.5)).isEqualTo(499.5);
        assertThat(Quantiles.of(new double[] { 1, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY }, 3, 0.75)).isInfinite();
    }

    @Test
    void theBendIsTheFunctionOfTheNormalQuantile() {
        var random = new SplittableRandom(4);
        Bend normal = new Bend(z -> z, z -> 1);
        Bend minutes = new Bend(z -> 45 * StrictMath.exp(0.4 * z), z -> 18 * StrictMath.exp(0.4 * z));
        for (int i = 0; i < 200_000; i++) {
            double wish = i % 4 == 0 ? StrictMath.pow(2, -random.nextDouble(1, 40)) : random.nextDouble();
            long bits = i == 0 ? 0 : i == 1 ? (1L << 52) - 1 : (long) ((i % 8 == 0 ? 1 - wish : wish) * 0x1.0p52);
            double u = (bits + 0.5) * 0x1.0p-52;
            double z = Normal.quantile(u);
            double exact = 45 * StrictMath.exp(0.4 * z);
            if (Math.abs(normal.at(bits) - z) > 1e-7 || Math.abs(minutes.at(bits) - exact) > 1e-7 * exact) throw new AssertionError("at " + u + ": " + normal.at(bits) + ", not " + z);
        }
    }

    @Test
    void theSurfaceOfContentsIsTheEquationOfState() {
        var random = new SplittableRandom(3);
        double[][] readings = { { 185, 12.875, 20, 5 }, { 200, 12.875, -20, 2 }, { 8, 12.875, 15, 5 }, { 300, 20, 40, 5 }, { 150, 0, 15, 0 } };
        for (double[] r : readings) {
            Contents contents = new Contents(r[0], r[1], r[2], r[3], 10);
            for (int i = 0; i < 500; i++) {
                double bar = Math.max(0, r[0] + (r[1] > 0 ? random.nextDouble(-r[1], r[1]) : 0));
                double cel = r[2] + (r[3] > 0 ? random.nextDouble(-r[3], r[3]) : 0);
                assertThat(contents.usable(bar, cel)).as("%s bar, %s °C", bar, cel).isCloseTo(RealOxygen.usableL(1, bar, cel, 10), within(2e-4));
            }
        }
    }
}
