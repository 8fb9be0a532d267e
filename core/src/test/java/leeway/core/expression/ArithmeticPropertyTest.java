package leeway.core.expression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.ezylang.evalex.Expression;
import com.ezylang.evalex.config.ExpressionConfiguration;
import java.util.SplittableRandom;
import leeway.core.quantity.Units;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Plain arithmetic against a general-purpose expression library: same precedence, same brackets, same functions. */
class ArithmeticPropertyTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 20_261_125})
    void agreesWithAnIndependentLibrary(long seed) throws Exception {
        var random = new SplittableRandom(seed);
        var config = ExpressionConfiguration.builder().build();
        int compared = 0;
        for (int i = 0; i < 500; i++) {
            String text = text(random, 4);
            double peer;
            try {
                peer = new Expression(text, config).evaluate().getNumberValue().doubleValue();
            } catch (com.ezylang.evalex.EvaluationException divisionByZero) {
                continue;
            }
            double ours;
            try {
                ours = FormulaTest.in(text, Units.ONE);
            } catch (SlipException roundedToZero) {
                assertThat(roundedToZero.slip().what()).as("seed %d: %s", seed, text).isEqualTo("division by zero");
                continue;
            }
            assertThat(ours).as("seed %d: %s", seed, text).isCloseTo(peer, within(1e-7 * Math.max(1, Math.abs(peer))));
            compared++;
        }
        assertThat(compared).isGreaterThan(400);
    }

    private static String text(SplittableRandom random, int depth) {
        if (depth == 0 || random.nextInt(6) == 0) return Double.toString(Math.rint(random.nextDouble(0.1, 50) * 100) / 100);
        String a = text(random, depth - 1);
        String b = text(random, depth - 1);
        return switch (random.nextInt(8)) {
            case 0 -> a + " + " + b;
            case 1 -> a + " - " + b;
            case 2 -> a + " * " + b;
            case 3 -> a + " / (" + b + ")";
            case 4 -> "(" + a + ") * (" + b + ")";
            case 5 -> "min(" + a + ", " + b + ")";
            case 6 -> "-(" + a + ") + " + b;
            default -> "(" + a + ") ^ 2";
        };
    }
}
