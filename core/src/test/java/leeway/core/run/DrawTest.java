package leeway.core.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DrawTest {
    @Test
    void drawNoughtIsAllMedians() {
        Draw medians = new Draw(7, 0);
        assertThat(medians.uniform("a")).isEqualTo(0.5);
        assertThat(medians.normal("b")).isEqualTo(0);
        assertThat(medians.lognormal("leg 1", 12, 25)).isEqualTo(12);
    }

    @Test
    void sameSeedDrawAndNameGiveTheSameNumberAndNothingElseMatters() {
        assertThat(new Draw(7, 3).uniform("a")).isEqualTo(new Draw(7, 3).uniform("a"))
                .isNotEqualTo(new Draw(7, 4).uniform("a")).isNotEqualTo(new Draw(8, 3).uniform("a")).isNotEqualTo(new Draw(7, 3).uniform("b"));
    }

    @Test
    void drawsAreNormalAndIndependentAcrossDrawsNamesAndSeeds() {
        int n = 200_000;
        double sum = 0, squares = 0, names = 0, draws = 0, seeds = 0, above = 0;
        for (int d = 1; d <= n; d++) {
            double z = new Draw(1, d).normal("x");
            sum += z;
            squares += z * z;
            names += z * new Draw(1, d).normal("y");
            draws += z * new Draw(1, d + 1).normal("x");
            seeds += z * new Draw(2, d).normal("x");
            if (new Draw(1, d).lognormal("leg", 12, 25) > 25) above++;
        }
        double scatter = 4 / Math.sqrt(n);
        assertThat(sum / n).isCloseTo(0, within(scatter));
        assertThat(squares / n).isCloseTo(1, within(scatter * Math.sqrt(2)));
        assertThat(names / n).isCloseTo(0, within(scatter));
        assertThat(draws / n).isCloseTo(0, within(scatter));
        assertThat(seeds / n).isCloseTo(0, within(scatter));
        assertThat(above / n).isCloseTo(0.05, within(4 * Math.sqrt(0.05 * 0.95 / n)));
    }
}
