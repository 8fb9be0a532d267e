package leeway.core.supply;

import java.util.ArrayList;
import java.util.List;
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
    /** Quantiles 0.05 and 0.5 of each store's litres at each leg's end. */
    final double[][] endP05L;
    final double[][] endP50L;

    /** With bands along the way, or without: only need and chances. */
    Journey(Route route, long seed, int draws, boolean banded) {
        this.draws = draws;
        neededL = new double[draws];
        marginMin = new double[draws];
        neededWh = new double[draws];
        powerMarginMin = new double[draws];
        emptied = new int[route.stores];
        endP05L = new double[route.legs][route.stores];
        endP50L = new double[route.legs][route.stores];
        Chances chances = new Chances(route, seed);
        Trial trial = new Trial(route);
        double[] minutes = new double[route.legs];
        Bands bands = new Bands(route, banded ? Math.min(draws, BAND_DRAWS) : 0);
        for (int d = 0; d < draws; d++) {
            chances.durations(d + 1, minutes);
            chances.contents(d + 1, trial);
            if (d < bands.n) {
                bands.begin(d, trial);
                trial.walk(minutes, PARTS, bands, null);
            } else {
                trial.walk(minutes, 1, null, null);
            }
            neededL[d] = trial.neededL;
            marginMin[d] = trial.marginMin;
            neededWh[d] = trial.neededWh;
            powerMarginMin[d] = trial.powerMarginMin;
            if (trial.dryLeg >= 0) dry++;
            if (trial.flatLeg >= 0) flat++;
            for (int s = 0; s < route.stores; s++) if (trial.emptied[s]) emptied[s]++;
        }
        if (banded) bands.reduce(route, this);
    }

    double dryChance() { return (double) dry / draws; }

    double flatChance() { return (double) flat / draws; }

    /** Standard error of a chance from so many draws. */
    static double error(double chance, int draws) { return Math.sqrt(chance * (1 - chance) / draws); }

    Needed needed() {
        double[] v = neededL.clone();
        return new Needed(Quantiles.of(v, draws, 0.5), Quantiles.of(v, draws, 0.95), Quantiles.of(v, draws, 0.99));
    }

    java.util.Optional<Margin> margin() {
        double[] v = marginMin.clone();
        double p50 = Quantiles.of(v, draws, 0.5);
        double p05 = Quantiles.of(v, draws, 0.05);
        return Double.isInfinite(p50) || Double.isInfinite(p05) ? java.util.Optional.empty() : java.util.Optional.of(new Margin(p50, p05));
    }

    static OptionalDouble quantile(double[] values, double p) {
        double q = Quantiles.of(values.clone(), values.length, p);
        return Double.isInfinite(q) ? OptionalDouble.empty() : OptionalDouble.of(q);
    }

    /** Levels at every mark of the first draws. */
    private static final class Bands implements Trial.Marks {
        final int n;
        private final double[][][] storeL; // mark, store, draw
        private final double[][][] packWh;
        private int d;
        private Trial trial;

        Bands(Route route, int n) {
            this.n = n;
            storeL = new double[route.legs * PARTS + 1][route.stores][n];
            packWh = new double[route.legs * PARTS + 1][route.packs][n];
        }

        void begin(int draw, Trial running) {
            d = draw;
            trial = running;
            keep(0);
        }

        @Override
        public void mark(int leg, int part) { keep(leg * PARTS + part + 1); }

        private void keep(int mark) {
            for (int s = 0; s < storeL[mark].length; s++) storeL[mark][s][d] = trial.levelL[s];
            for (int b = 0; b < packWh[mark].length; b++) packWh[mark][b][d] = trial.chargeWh[b];
        }

        void reduce(Route route, Journey into) {
            for (int s = 0; s < route.stores; s++) {
                if (route.endless[s] || !route.named[s]) continue;
                List<Point> points = points(route, storeL, s, 1);
                into.storeSeries.add(new Series(route.transport.oxygen().get(s).name(), "L", points));
                for (int l = 0; l < route.legs; l++) {
                    into.endP05L[l][s] = points.get((l + 1) * PARTS).p05();
                    into.endP50L[l][s] = points.get((l + 1) * PARTS).p50();
                }
            }
            for (int b = 0; b < route.packs && route.powered; b++) {
                if (route.fullWh[b] > 0) into.packSeries.add(new Series(route.packName(b), "Wh", points(route, packWh, b, 1)));
            }
        }

        private List<Point> points(Route route, double[][][] levels, int which, double scale) {
            List<Point> points = new ArrayList<>();
            double fromMin = 0;
            for (int mark = 0; mark < levels.length; mark++) {
                int leg = mark == 0 ? 0 : (mark - 1) / PARTS;
                if (mark > 1 && (mark - 1) % PARTS == 0) fromMin += route.medianMin[leg - 1];
                double atMin = mark == 0 ? 0 : fromMin + route.medianMin[leg] * ((mark - 1) % PARTS + 1) / PARTS;
                double[] v = levels[mark][which];
                points.add(new Point(atMin, scale * Quantiles.of(v, n, 0.05), scale * Quantiles.of(v, n, 0.5), scale * Quantiles.of(v, n, 0.95)));
            }
            return points;
        }
    }
}
