package leeway.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import leeway.app.report.Contours.Chain;
import org.junit.jupiter.api.Test;

class ContoursTest {
    private static double[] axis(int n) {
        double[] a = new double[n];
        for (int i = 0; i < n; i++) a[i] = -2 + 4.0 * i / (n - 1);
        return a;
    }

    private interface Height { double at(double x, double y); }

    private static double[][] grid(int n, Height h) {
        double[] a = axis(n);
        double[][] v = new double[n][n];
        for (int j = 0; j < n; j++) for (int i = 0; i < n; i++) v[j][i] = h.at(a[i], a[j]);
        return v;
    }

    /** Shoelace, even-odd by sign of nesting: rings of one even-odd area are summed as absolute, holes subtracted by the caller. */
    private static double area(Chain c) {
        double twice = 0;
        for (int i = 0; i < c.size(); i++) {
            int k = (i + 1) % c.size();
            twice += c.x()[i] * c.y()[k] - c.x()[k] * c.y()[i];
        }
        return Math.abs(twice) / 2;
    }

    @Test
    void theLineOfAConeIsACircle() {
        List<Chain> lines = Contours.lines(axis(81), axis(81), grid(81, (x, y) -> 1.5 - Math.hypot(x, y)), 0.5);
        assertThat(lines).hasSize(1);
        Chain c = lines.get(0);
        assertThat(c.x()[0]).isEqualTo(c.x()[c.size() - 1]);
        for (int i = 0; i < c.size(); i++) assertThat(Math.hypot(c.x()[i], c.y()[i])).isCloseTo(1, within(0.001));
        assertThat(area(c)).isCloseTo(Math.PI, within(0.01));
    }

    @Test
    void anAreaThatRunsOffTheGridIsClosedAlongItsEdge() {
        List<Chain> rings = Contours.area(axis(41), axis(41), grid(41, (x, y) -> x - 1), 0);
        assertThat(rings).hasSize(1);
        assertThat(area(rings.get(0))).isCloseTo(4, within(0.02));
    }

    @Test
    void aRingOfLandIsTwoRings() {
        List<Chain> rings = Contours.area(axis(81), axis(81), grid(81, (x, y) -> 0.25 - Math.abs(Math.hypot(x, y) - 1)), 0);
        assertThat(rings).hasSize(2);
        double larger = Math.max(area(rings.get(0)), area(rings.get(1)));
        double smaller = Math.min(area(rings.get(0)), area(rings.get(1)));
        assertThat(larger - smaller).isCloseTo(Math.PI * (1.25 * 1.25 - 0.75 * 0.75), within(0.02));
    }

    @Test
    void everywhereAndNowhere() {
        assertThat(area(Contours.area(axis(11), axis(11), grid(11, (x, y) -> 1), 0).get(0))).isCloseTo(16, within(1e-9));
        assertThat(Contours.area(axis(11), axis(11), grid(11, (x, y) -> -1), 0)).isEmpty();
        assertThat(Contours.lines(axis(11), axis(11), grid(11, (x, y) -> Double.NaN), 0)).isEmpty();
    }

    @Test
    void aSaddleIsSplitNotCrossed() {
        List<Chain> lines = Contours.lines(axis(41), axis(41), grid(41, (x, y) -> x * y), 0.1);
        assertThat(lines).hasSize(2);
        for (Chain c : lines) for (int i = 0; i < c.size(); i++) assertThat(c.x()[i] * c.y()[i]).isCloseTo(0.1, within(0.01));
    }

    @Test
    void ticksAreRoundNumbers() {
        assertThat(MapPicture.ticks(185, 585)).containsExactly(200, 250, 300, 350, 400, 450, 500, 550);
        assertThat(MapPicture.ticks(0.21, 1)).containsExactly(0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0);
    }
}
