package leeway.core.supply;

import java.util.Arrays;

/**
 * Many walks at once: leg by leg over a block of draws, so that each inner loop does one thing and most have no branch.
 * <p>Twin of {@link Trial#walk} (a test compares them on random journeys); the figures are the same but for rounding. Leaves out when and in which
 * leg a store or pack ended, and the log.
 */
final class Strides {
    /** Draws in a block: their columns stay in the nearest cache. */
    static final int BLOCK = 256;
    /** A leg that lacks less than this is rounding, and so is a moment this much before an act, as in {@link Trial}. */
    private static final double ROUNDING_MIN = 1e-9;

    /** Where durations and contents come from, a block at a time. */
    interface Source {
        /** The block that is asked for next. */
        void begin(int from, int n);

        void minutes(int leg, int from, int n, double[] out);

        void litres(int store, int from, int n, double[] out);

        void charge(int pack, int from, int n, double[] out);
    }

    /** Hears of the levels at departure (mark 0) and where each part of a leg ends. */
    interface Marks {
        void mark(int mark, int from, int n, Strides at);
    }

    private final Route route;
    /** Whether a moment of the way must be known: for acts, what stores lose by themselves, and parts of a leg. */
    private final boolean timed;
    private final boolean full;
    private final int packs;
    private final int[] turnsTo;
    private final double[] minutes = new double[BLOCK];
    private final double[] restMin = new double[BLOCK];
    private final double[] toMin;
    private final double[] nowMin;
    private final double[] legFromMin;
    private final double[] partFromMin;
    private final double[] pieceFromMin;
    private final double[] turnedMin;
    private final double[] ownMin;
    private final int[] turned;
    private double earliestLegMin;
    private final int[] stretch;
    private final int[] used;
    private final double[] unfedMin = new double[BLOCK];
    private final double[] flatMin = new double[BLOCK];
    private final double[] poweredMin = new double[BLOCK];
    private final double[] left;
    private final double[][] startL;
    private final boolean[][] emptied;
    /** What is left, by store and draw of the block, and by pack. */
    final double[][] levelL;
    final double[][] chargeWh;
    /** By draw of the block. */
    final double[] neededL = new double[BLOCK];
    /** The same, where all is asked for. */
    final double[] marginMin;
    final double[] neededWh;
    final double[] powerMarginMin;

    /** @param full whether margins, charge needed and who was emptied are asked for, beside need and running dry */
    Strides(Route route, boolean full) { this(route, full, true); }

    /** @param power whether charge is followed too */
    Strides(Route route, boolean full, boolean power) {
        this.route = route;
        this.full = full;
        timed = full || route.acts.during.size() > 1 || route.acts.changeTo.length > 0 || route.lossy;
        packs = route.powered && power ? route.packs : 0;
        turnsTo = Arrays.stream(route.acts.changeTo).distinct().toArray();
        levelL = new double[route.stores][BLOCK];
        chargeWh = new double[packs][BLOCK];
        toMin = of(timed);
        nowMin = of(timed);
        legFromMin = of(timed);
        partFromMin = of(timed);
        pieceFromMin = of(timed);
        turnedMin = of(turnsTo.length > 0);
        ownMin = of(turnsTo.length > 0);
        turned = new int[turnsTo.length > 0 ? BLOCK : 0];
        stretch = new int[timed ? BLOCK : 0];
        used = new int[route.lossy ? BLOCK : 0];
        left = of(full);
        startL = new double[full ? route.stores : 0][BLOCK];
        emptied = new boolean[full && route.lossy ? route.stores : 0][BLOCK];
        marginMin = of(full);
        neededWh = of(full);
        powerMarginMin = of(full);
    }

    private static double[] of(boolean wanted) { return new double[wanted ? BLOCK : 0]; }

    /**
     * Walks {@code n} draws, at most {@value #BLOCK}, from the draw of index {@code from} on.
     *
     * @param parts of each leg, for the marks
     * @param marks or null
     */
    void block(Source source, int from, int n, int parts, Marks marks) {
        source.begin(from, n);
        for (int s = 0; s < levelL.length; s++) source.litres(s, from, n, levelL[s]);
        for (int b = 0; b < packs; b++) source.charge(b, from, n, chargeWh[b]);
        Arrays.fill(unfedMin, 0, n, 0);
        Arrays.fill(flatMin, 0, n, 0);
        Arrays.fill(neededL, 0, n, 0);
        if (timed) {
            Arrays.fill(nowMin, 0, n, 0);
            Arrays.fill(stretch, 0, n, 0);
        }
        if (full) {
            Arrays.fill(marginMin, 0, n, Double.POSITIVE_INFINITY);
            Arrays.fill(powerMarginMin, 0, n, Double.POSITIVE_INFINITY);
            Arrays.fill(neededWh, 0, n, 0);
            for (int s = 0; s < route.stores; s++) copy(levelL[s], 0, startL[s], 0, n);
            for (boolean[] e : emptied) Arrays.fill(e, false);
        }
        if (marks != null) marks.mark(0, from, n, this);
        for (int l = 0; l < route.legs; l++) {
            source.minutes(l, from, n, minutes);
            if (timed) {
                copy(nowMin, 0, legFromMin, 0, n);
                earliestLegMin = least(legFromMin, n) - ROUNDING_MIN;
                for (int i = 0; i < parts; i++) {
                    part(l, i, parts, n);
                    if (marks != null) marks.mark(l * parts + i + 1, from, n, this);
                }
            } else {
                copy(minutes, 0, restMin, 0, n);
                piece(l, route.draw[0][l], route.minPerL[0][l], minutes, n);
                if (packs > 0) power(l, minutes, n);
            }
            if (full) margins(l, n);
        }
    }

    static void copy(double[] from, int at, double[] to, int toAt, int n) {
        for (int i = 0; i < n; i++) to[toAt + i] = from[at + i];
    }

    /** How many of the block were dry in some leg. */
    int dry(int n) {
        int dry = 0;
        for (int i = 0; i < n; i++) if (unfedMin[i] > ROUNDING_MIN) dry++;
        return dry;
    }

    /** How many were without charge in some leg. */
    int flat(int n) {
        int flat = 0;
        for (int i = 0; i < n; i++) if (flatMin[i] > 0) flat++;
        return flat;
    }

    /** In how many this store had something and ended. */
    int emptied(int s, int n) {
        int ended = 0;
        for (int i = 0; i < n; i++) if (route.lossy ? emptied[s][i] : levelL[s][i] == 0 && startL[s][i] > 0) ended++;
        return ended;
    }

    private void part(int l, int part, int parts, int n) {
        copy(nowMin, 0, partFromMin, 0, n);
        double share = parts;
        if (part + 1 == parts) for (int i = 0; i < n; i++) toMin[i] = legFromMin[i] + minutes[i];
        else for (int i = 0; i < n; i++) toMin[i] = legFromMin[i] + minutes[i] * (part + 1) / share;
        double earliest = least(nowMin, n), latest = most(toMin, n);
        double[] atMin = route.acts.atMin;
        for (int j = 0; j <= atMin.length; j++) {
            double actMin = j < atMin.length ? atMin[j] : Double.POSITIVE_INFINITY;
            if (actMin <= earliest) continue;
            boolean last = actMin >= latest;
            if (last ? !pieces(j, n) : !piecesUntil(actMin, j, n)) continue;
            if (route.lossy) Arrays.fill(used, 0, n, -1);
            double[] begins = turnsTo.length > 0 ? turnedTo(l, j, actMin, n) : restMin;
            piece(l, route.draw[j][l], route.minPerL[j][l], begins, n);
            if (route.lossy) lose(n);
            if (last) break;
        }
        if (packs == 0) return;
        for (int i = 0; i < n; i++) partFromMin[i] = toMin[i] - partFromMin[i];
        power(l, partFromMin, n);
    }

    private static double least(double[] values, int n) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) if (values[i] < least) least = values[i];
        return least;
    }

    private static double most(double[] values, int n) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) if (values[i] > most) most = values[i];
        return most;
    }

    private static boolean any(double[] values, int n) {
        for (int i = 0; i < n; i++) if (values[i] > 0) return true;
        return false;
    }

    /** What is left of the part, where no further act falls into it; false where nothing is. */
    private boolean pieces(int j, int n) {
        for (int i = 0; i < n; i++) restMin[i] = toMin[i] - nowMin[i];
        copy(nowMin, 0, pieceFromMin, 0, n);
        copy(toMin, 0, nowMin, 0, n);
        return any(restMin, n) && in(j, n);
    }

    /** Each draw's piece of time up to this act within the part; false where none has any. */
    private boolean piecesUntil(double actMin, int j, int n) {
        copy(nowMin, 0, pieceFromMin, 0, n);
        for (int i = 0; i < n; i++) if (actMin > nowMin[i] + ROUNDING_MIN) nowMin[i] = Math.min(toMin[i], actMin);
        for (int i = 0; i < n; i++) restMin[i] = nowMin[i] - pieceFromMin[i];
        return any(restMin, n) && in(j, n);
    }

    private boolean in(int j, int n) {
        for (int i = 0; i < n && full; i++) if (restMin[i] > 0) stretch[i] = j;
        return true;
    }

    /** Where an act of this leg has turned to a store, that one is drawn on first. What of the piece begins with the order of the leg. */
    private double[] turnedTo(int l, int j, double untilMin, int n) {
        boolean any = false;
        for (int c = 0; c < route.acts.changeMin.length; c++) {
            double at = route.acts.changeMin[c];
            if (at >= untilMin || at < earliestLegMin) continue;   // it comes later, or before every draw's leg
            if (!any) Arrays.fill(turned, 0, n, -1);
            any = true;
            for (int i = 0; i < n; i++) if (at >= legFromMin[i] - ROUNDING_MIN && at <= pieceFromMin[i] + ROUNDING_MIN) turned[i] = route.acts.changeTo[c];
        }
        if (!any) return restMin;
        copy(restMin, 0, ownMin, 0, n);
        for (int to : turnsTo) {
            for (int i = 0; i < n; i++) turnedMin[i] = turned[i] == to ? restMin[i] : 0;
            if (!any(turnedMin, n)) continue;
            if (!route.endless[to]) add(route.draw[j][l][to], turnedMin, n);
            for (int i = 0; i < n; i++) ownMin[i] -= turnedMin[i];
            give(to, route.draw[j][l][to], route.minPerL[j][l][to], turnedMin, n);
            for (int i = 0; i < n; i++) if (turned[i] == to) restMin[i] = turnedMin[i];
        }
        return ownMin;
    }

    /** The rest of a piece, fed by the stores of the leg in their order. */
    private void piece(int l, double[] draw, double[] minPerL, double[] neededMin, int n) {
        int[] order = route.order[l];
        if (order.length > 0 && !route.endless[order[0]]) add(draw[order[0]], neededMin, n);
        for (int s : order) give(s, draw[s], minPerL[s], restMin, n);
        for (int i = 0; i < n; i++) unfedMin[i] = Math.max(unfedMin[i], restMin[i]);
    }

    private void add(double perMin, double[] forMin, int n) {
        for (int i = 0; i < n; i++) neededL[i] += perMin * forMin[i];
    }

    /** What one store gives of what is still to be fed. */
    private void give(int s, double perMin, double minPerL, double[] rest, int n) {
        if (route.lossy) note(s, perMin, rest, n);
        if (perMin > 0) feed(perMin, minPerL, levelL[s], rest, n);
        else Arrays.fill(rest, 0, n, 0);
    }

    private static void feed(double perMin, double minPerL, double[] level, double[] rest, int n) {
        for (int i = 0; i < n; i++) {
            double takes = perMin * rest[i];
            double gives = Math.min(takes, level[i]);
            level[i] -= gives;
            rest[i] = (takes - gives) * minPerL;
        }
    }

    /** Which store is the one in use, and whether it ends. */
    private void note(int s, double perMin, double[] rest, int n) {
        for (int i = 0; i < n; i++) {
            double takes = perMin * rest[i];
            if (!(rest[i] > 0) || takes > 0 && levelL[s][i] <= 0) continue;
            used[i] = s;
            if (full && takes > 0 && takes >= levelL[s][i]) emptied[s][i] = true;
        }
    }

    /** What stores lose by themselves while another is in use. */
    private void lose(int n) {
        for (int s = 0; s < route.stores; s++) {
            double lost = route.lossLPerMin[s];
            if (lost <= 0) continue;
            for (int i = 0; i < n; i++) if (used[i] != s) levelL[s][i] = Math.max(0, levelL[s][i] - lost * (nowMin[i] - pieceFromMin[i]));
        }
    }

    private void power(int l, double[] forMin, int n) {
        int first = route.packOfLeg[l];
        if (first < 0) {
            if (route.ownPack < 0 || !(route.chargingW[l] > 0)) return;
            double[] wh = chargeWh[route.ownPack];
            double watt = route.chargingW[l];
            double most = route.fullWh[route.ownPack];
            for (int i = 0; i < n; i++) wh[i] = Math.min(most, wh[i] + watt * forMin[i] / 60);
            return;
        }
        if (full) for (int i = 0; i < n; i++) neededWh[i] += route.whPerMin[l] * forMin[i];
        copy(forMin, 0, poweredMin, 0, n);
        for (int b = first; b >= 0; b = route.nextPack[b]) drain(chargeWh[b], route.whPerMin[l] / route.shareAt[b][l], poweredMin, n);
        for (int i = 0; i < n; i++) flatMin[i] = Math.max(flatMin[i], poweredMin[i]);
    }

    /** As {@link Route#drain}, pack by pack. */
    private static void drain(double[] wh, double perMin, double[] rest, int n) {
        if (perMin == Double.POSITIVE_INFINITY) { // so cold that it gives nothing
            Arrays.fill(wh, 0, n, 0);
            return;
        }
        if (!(perMin > 0)) {
            Arrays.fill(rest, 0, n, 0);
            return;
        }
        for (int i = 0; i < n; i++) {
            double takes = perMin * rest[i];
            double gives = Math.min(takes, wh[i]);
            wh[i] -= gives;
            rest[i] = (takes - gives) / perMin;
        }
    }

    /** What is left at the end of a leg, in minutes of its draw and load. */
    private void margins(int l, int n) {
        Arrays.fill(left, 0, n, 0);
        for (int s : route.order[l]) for (int i = 0; i < n; i++) left[i] += levelL[s][i] * route.minPerL[stretch[i]][l][s];
        for (int i = 0; i < n; i++) marginMin[i] = Math.min(marginMin[i], left[i]);
        if (packs == 0 || route.packOfLeg[l] < 0) return;
        Arrays.fill(left, 0, n, 0);
        for (int b = route.packOfLeg[l]; b >= 0; b = route.nextPack[b]) for (int i = 0; i < n; i++) left[i] += chargeWh[b][i] * route.shareAt[b][l] / route.whPerMin[l];
        for (int i = 0; i < n; i++) powerMarginMin[i] = Math.min(powerMarginMin[i], left[i]);
    }
}
