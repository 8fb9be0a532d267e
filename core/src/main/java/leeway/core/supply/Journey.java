package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.supply.SupplyResult.Margin;
import leeway.core.supply.SupplyResult.Needed;
import leeway.core.supply.SupplyResult.Point;
import leeway.core.supply.SupplyResult.Series;

/**
 * Thousands of walks over one route, reduced: need, chance of running dry, what is left, bands along the way.
 * <p>Draws 1 to n; the sums run in the order of the draws, so the answer depends on seed and n only.
 */
final class Journey {
    /** Draws behind a band: enough for a picture, quantiles within 0.7 % of rank at the median. */
    static final int BAND_DRAWS = 2000;
    /** Parts of a leg in a band. */
    static final int PARTS = 8;

    final int draws;
    final double[] neededL;
    final double[] marginMin;
    final double[] neededWh;
    final double[] powerMarginMin;
    final int[] emptied;
    int dry;
    int flat;
    final List<Series> storeSeries = new ArrayList<>();
    final List<Series> packSeries = new ArrayList<>();
    /** Quantiles 0.5 and 0.95 of what each store has given at each leg's end: what its gauge has fallen by, whatever its own error. */
    final double[][] usedP50L;
    final double[][] usedP95L;

    /** With bands along the way, or without: only need and chances. */
    Journey(Route route, Chances chances, int draws, boolean banded) {
        this.draws = draws;
        neededL = new double[draws];
        marginMin = new double[banded ? draws : 0];
        neededWh = new double[banded ? draws : 0];
        powerMarginMin = new double[banded ? draws : 0];
        emptied = new int[route.stores];
        usedP50L = new double[route.legs][route.stores];
        usedP95L = new double[route.legs][route.stores];
        Strides strides = new Strides(route, banded);
        Bands bands = new Bands(route, banded ? Math.min(draws, BAND_DRAWS) : 0);
        for (int from = 0; from < draws; ) {
            boolean marked = from < bands.n;
            int n = Math.min(Strides.BLOCK, (marked ? bands.n : draws) - from);
            chances.look();
            strides.block(chances, from, n, marked ? PARTS : 1, marked ? bands : null);
            Strides.copy(strides.neededL, 0, neededL, from, n);
            dry += strides.dry(n);
            flat += strides.flat(n);
            if (banded) {
                Strides.copy(strides.marginMin, 0, marginMin, from, n);
                Strides.copy(strides.neededWh, 0, neededWh, from, n);
                Strides.copy(strides.powerMarginMin, 0, powerMarginMin, from, n);
                for (int s = 0; s < route.stores; s++) emptied[s] += strides.emptied(s, n);
            }
            from += n;
        }
        if (banded) bands.reduce(route, this);
    }

    double dryChance() { return (double) dry / draws; }

    double flatChance() { return (double) flat / draws; }

    /** Standard error of a chance from so many draws, with two hits and two misses added (Agresti and Coull, Am. Stat. 1998;52:119): never 0, for none in 10,000 is not never. */
    static double error(double chance, int draws) {
        double p = (chance * draws + 2) / (draws + 4);
        return Math.sqrt(p * (1 - p) / (draws + 4));
    }

    Needed needed() {
        double[] q = Quantiles.of(neededL, draws, 0.5, 0.95, 0.99);
        return new Needed(q[0], q[1], q[2]);
    }

    Optional<Margin> margin() {
        double[] q = Quantiles.of(marginMin, draws, 0.5, 0.05);
        return Double.isInfinite(q[0]) || Double.isInfinite(q[1]) ? Optional.empty() : Optional.of(new Margin(q[0], q[1]));
    }

    static OptionalDouble quantile(double[] values, double p) {
        double q = Quantiles.of(values, values.length, p);
        return Double.isInfinite(q) ? OptionalDouble.empty() : OptionalDouble.of(q);
    }

    /** Levels at every mark of the first draws. */
    private static final class Bands implements Strides.Marks {
        final int n;
        private final double[][][] storeL; // mark, store, draw
        private final double[][][] packWh;

        Bands(Route route, int n) {
            this.n = n;
            storeL = new double[route.legs * PARTS + 1][route.stores][n];
            packWh = new double[route.legs * PARTS + 1][route.powered ? route.packs : 0][n];
        }

        @Override public void mark(int mark, int from, int count, Strides at) {
            for (int s = 0; s < storeL[mark].length; s++) Strides.copy(at.levelL[s], 0, storeL[mark][s], from, count);
            for (int b = 0; b < packWh[mark].length; b++) Strides.copy(at.chargeWh[b], 0, packWh[mark][b], from, count);
        }

        void reduce(Route route, Journey into) {
            for (int s = 0; s < route.stores; s++) {
                if (route.endless[s] || !route.named[s]) continue;
                List<Point> points = points(route, storeL, s);
                into.storeSeries.add(new Series(route.transport.oxygen().get(s).name(), "L", points));
                for (int l = 0; l < route.legs; l++) {
                    double[] used = new double[n];
                    for (int d = 0; d < n; d++) used[d] = storeL[0][s][d] - storeL[(l + 1) * PARTS][s][d];
                    double[] q = Quantiles.of(used, n, 0.5, 0.95);
                    into.usedP50L[l][s] = q[0];
                    into.usedP95L[l][s] = q[1];
                }
            }
            for (int b = 0; b < route.packs && route.powered; b++) {
                if (route.fullWh[b] > 0) into.packSeries.add(new Series(route.packName(b), "Wh", points(route, packWh, b)));
            }
        }

        private List<Point> points(Route route, double[][][] levels, int which) {
            List<Point> points = new ArrayList<>();
            double fromMin = 0;
            for (int mark = 0; mark < levels.length; mark++) {
                int leg = mark == 0 ? 0 : (mark - 1) / PARTS;
                if (mark > 1 && (mark - 1) % PARTS == 0) fromMin += route.medianMin[leg - 1];
                double atMin = mark == 0 ? 0 : fromMin + route.medianMin[leg] * ((mark - 1) % PARTS + 1) / PARTS;
                double[] q = Quantiles.of(levels[mark][which], n, 0.05, 0.5, 0.95);
                points.add(new Point(atMin, q[0], q[1], q[2]));
            }
            return points;
        }
    }
}
