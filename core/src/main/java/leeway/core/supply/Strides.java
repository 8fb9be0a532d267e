package leeway.core.supply;

import java.util.Arrays;

/**
 * Many walks at once for need and running dry alone, where nothing happens on the way but the legs ({@link Route#simple}).
 * <p>Twin of {@link Trial#walk}, leg by leg over a block of draws, so that each inner loop does one thing
 * without a branch; the figures are the same but for rounding. Leaves out margins, marks and who was emptied.
 */
final class Strides {
    /** Draws in a block: their columns stay in the nearest cache. */
    private static final int BLOCK = 256;
    /** A leg that lacks less than this is rounding, as in {@link Trial}. */
    private static final double UNFED_MIN = 1e-9;
    private final Route route;
    private final Chances chances;
    private final long seed;
    private final long[] streams = new long[BLOCK];
    private final double[] shared = new double[BLOCK];
    private final double[] minutes = new double[BLOCK];
    private final double[] restMin = new double[BLOCK];
    private final double[] unfedMin = new double[BLOCK];
    private final double[] shortWh = new double[BLOCK];
    /** What is left, by store and draw of the block, and by pack. */
    final double[][] levelL;
    final double[][] chargeWh;
    int dry;
    int flat;

    Strides(Route route, Chances chances, long seed) {
        this.route = route;
        this.chances = chances;
        this.seed = seed;
        levelL = new double[route.stores][BLOCK];
        chargeWh = new double[route.packs][BLOCK];
    }

    /** Draws 1 to n; the need of each goes to {@code neededL}. */
    void run(int n, double[] neededL) {
        for (int from = 0; from < n; from += BLOCK) block(from, Math.min(BLOCK, n - from), neededL);
    }

    private void block(int from, int n, double[] neededL) {
        Chances.streams(seed, from + 1L, n, streams);
        if (chances.together()) chances.shared(streams, n, shared);
        for (int s = 0; s < levelL.length; s++) chances.litres(s, streams, n, levelL[s]);
        for (int b = 0; b < chargeWh.length; b++) chances.charge(b, streams, n, chargeWh[b]);
        Arrays.fill(unfedMin, 0, n, 0);
        Arrays.fill(shortWh, 0, n, 0);
        Arrays.fill(neededL, from, from + n, 0);
        for (int l = 0; l < route.legs; l++) {
            chances.minutes(l, streams, shared, n, minutes);
            leg(l, n, from, neededL);
            if (route.powered) power(l, n);
        }
        for (int i = 0; i < n; i++) {
            if (unfedMin[i] > UNFED_MIN) dry++;
            if (shortWh[i] < 0) flat++;
        }
    }

    private void leg(int l, int n, int from, double[] neededL) {
        int[] order = route.order[l];
        double[] draw = route.draw[0][l];
        if (order.length > 0 && !route.endless[order[0]]) add(draw[order[0]], minutes, n, from, neededL);
        for (int i = 0; i < n; i++) restMin[i] = minutes[i];
        for (int s : order) {
            if (draw[s] > 0) feed(draw[s], route.minPerL[0][l][s], levelL[s], restMin, n);
            else Arrays.fill(restMin, 0, n, 0);
        }
        most(restMin, unfedMin, n);
    }

    private static void add(double perMin, double[] minutes, int n, int from, double[] neededL) {
        for (int i = 0; i < n; i++) neededL[from + i] += perMin * minutes[i];
    }

    /** What one store gives of what is still to be fed. */
    private static void feed(double perMin, double minPerL, double[] level, double[] rest, int n) {
        for (int i = 0; i < n; i++) {
            double takes = perMin * rest[i];
            double gives = Math.min(takes, level[i]);
            level[i] -= gives;
            rest[i] = (takes - gives) * minPerL;
        }
    }

    private static void most(double[] rest, double[] unfed, int n) {
        for (int i = 0; i < n; i++) unfed[i] = Math.max(unfed[i], rest[i]);
    }

    private void power(int l, int n) {
        int b = route.packOfLeg[l];
        if (b >= 0) {
            discharge(route.chargePerMin[l], minutes, chargeWh[b], shortWh, n);
        } else if (route.ownPack >= 0 && route.chargingW[l] > 0) {
            charge(route.chargingW[l] / 60, route.fullWh[route.ownPack], minutes, chargeWh[route.ownPack], n);
        }
    }

    private static void discharge(double perMin, double[] minutes, double[] wh, double[] least, int n) {
        for (int i = 0; i < n; i++) {
            double left = wh[i] - perMin * minutes[i];
            least[i] = Math.min(least[i], left);
            wh[i] = Math.max(0, left);
        }
    }

    private static void charge(double perMin, double full, double[] minutes, double[] wh, int n) {
        for (int i = 0; i < n; i++) wh[i] = Math.min(full, wh[i] + perMin * minutes[i]);
    }
}
