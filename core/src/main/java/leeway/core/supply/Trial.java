package leeway.core.supply;

import java.util.Arrays;

/**
 * One walk along a route with given durations and contents: who gives what, who runs dry, what is left.
 * <p>Fields are overwritten by each {@link #walk}; nothing else is kept. A store empties, the next of the leg takes over at
 * once; where none is left the leg is dry and the demand goes on unmet.
 */
final class Trial {
    private final Route route;
    /** Litres left. */
    final double[] levelL;
    /** Wh left above the cut-off, as at 25 °C. */
    final double[] chargeWh;
    final boolean[] emptied;
    double neededL;
    double unmetL;
    /** First dry leg; -1 for none. */
    int dryLeg;
    double dryAtMin;
    double marginMin;
    double neededWh;
    int flatLeg;
    double flatAtMin;
    double powerMarginMin;
    private double nowMin;
    private int stretch;

    /** Hears of every stretch that one store feeds. */
    interface Log {
        void piece(int leg, double fromMin, double toMin, int store, double beforeL, double afterL);
    }

    /** Hears where each part of a leg ends. */
    interface Marks {
        void mark(int leg, int part);
    }

    Trial(Route route) {
        this.route = route;
        levelL = new double[route.stores];
        chargeWh = new double[route.packs];
        emptied = new boolean[route.stores];
    }

    /** Contents at medians. */
    void fill() {
        for (int s = 0; s < levelL.length; s++) levelL[s] = route.startL[s];
        for (int b = 0; b < chargeWh.length; b++) chargeWh[b] = Math.max(0, route.startWh[b] - route.beforeWh[b]);
    }

    /** Walks all legs from the contents now in {@link #levelL} and {@link #chargeWh}. */
    void walk(double[] durationMin, int parts, Marks marks, Log log) {
        start();
        for (int l = 0; l < route.legs; l++) leg(l, durationMin[l], parts, marks, log);
    }

    void start() {
        neededL = 0;
        unmetL = 0;
        dryLeg = -1;
        dryAtMin = Double.POSITIVE_INFINITY;
        marginMin = Double.POSITIVE_INFINITY;
        neededWh = 0;
        flatLeg = -1;
        flatAtMin = Double.POSITIVE_INFINITY;
        powerMarginMin = Double.POSITIVE_INFINITY;
        nowMin = 0;
        stretch = 0;
        Arrays.fill(emptied, false);
    }

    private void leg(int l, double durationMin, int parts, Marks marks, Log log) {
        double legFromMin = nowMin;
        for (int i = 0; i < parts; i++) {
            double partFromMin = nowMin;
            double partToMin = legFromMin + (i + 1 == parts ? durationMin : durationMin * (i + 1) / parts);
            double[] atMin = route.acts.atMin;
            while (nowMin < partToMin) {
                while (stretch < atMin.length && atMin[stretch] <= nowMin + 1e-9) stretch++;
                double toMin = stretch < atMin.length && atMin[stretch] < partToMin ? atMin[stretch] : partToMin;
                draw(l, route.draw[stretch][l], forced(legFromMin), toMin, log);
                nowMin = toMin;
            }
            if (route.powered) power(l, partFromMin, partToMin - partFromMin);
            if (marks != null) marks.mark(l, i);
        }
        double[] minPerL = route.minPerL[stretch][l];
        double left = 0;
        for (int s : route.order[l]) left += levelL[s] * minPerL[s];
        marginMin = Math.min(marginMin, left);
        if (route.powered && route.packOfLeg[l] >= 0) powerMarginMin = Math.min(powerMarginMin, route.lastsMin(l, chargeWh));
    }

    /** The store that an act of this leg turned to; -1 for none. */
    private int forced(double legFromMin) {
        int to = -1;
        if (route.acts.changeMin.length == 0) return to;
        for (int i = 0; i < route.acts.changeMin.length; i++) {
            double at = route.acts.changeMin[i];
            if (at >= legFromMin - 1e-9 && at <= nowMin + 1e-9) to = route.acts.changeTo[i];
        }
        return to;
    }

    private void draw(int l, double[] drawLPerMin, int forced, double toMin, Log log) {
        int[] order = route.order[l];
        double restMin = toMin - nowMin;
        double atMin = nowMin;
        int used = -1;
        int first = forced >= 0 ? forced : order.length > 0 ? order[0] : -1;
        if (first >= 0 && !route.endless[first]) neededL += drawLPerMin[first] * restMin;
        for (int i = forced >= 0 ? -1 : 0; i < order.length; i++) {
            int s = i < 0 ? forced : order[i];
            if (i >= 0 && s == forced) continue;
            double before = levelL[s];
            double takes = drawLPerMin[s] * restMin;
            double gaveMin = restMin;
            if (takes > 0 && before <= 0) continue;
            if (takes > 0 && takes >= before) {
                gaveMin = before / drawLPerMin[s];
                levelL[s] = 0;
                emptied[s] = true;
            } else {
                levelL[s] = before - takes; // endless stays endless
            }
            used = s;
            if (log != null) log.piece(l, atMin, atMin + gaveMin, s, before, levelL[s]);
            atMin += gaveMin;
            restMin -= gaveMin;
            if (restMin <= 0) break;
        }
        if (route.lossy) {
            for (int s = 0; s < route.stores; s++) {
                if (s != used && route.lossLPerMin[s] > 0) levelL[s] = Math.max(0, levelL[s] - route.lossLPerMin[s] * (toMin - nowMin));
            }
        }
        if (restMin > 1e-9) {
            if (dryLeg < 0) {
                dryLeg = l;
                dryAtMin = toMin - restMin;
            }
            unmetL += first >= 0 ? drawLPerMin[first] * restMin : 0;
        }
    }

    private void power(int l, double fromMin, double forMin) {
        int b = route.packOfLeg[l];
        if (b < 0) {
            if (route.ownPack >= 0) chargeWh[route.ownPack] = Math.min(route.fullWh[route.ownPack], chargeWh[route.ownPack] + route.chargingW[l] * forMin / 60);
            return;
        }
        neededWh += route.whPerMin[l] * forMin;
        double unfed = route.drain(l, b, forMin, chargeWh);
        if (unfed > 0 && flatLeg < 0) {
            flatLeg = l;
            flatAtMin = fromMin + forMin - unfed;
        }
    }
}
