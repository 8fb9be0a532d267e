package leeway.core.supply;

import java.util.Arrays;
import java.util.stream.IntStream;
import leeway.core.gas.Exp;
import leeway.core.run.Draw;
import leeway.core.transport.Store;

/**
 * The uncertain inputs of a route, draw by draw: durations, diversions, contents, charge.
 * <p>A leg's duration is lognormal by its median and 95th percentile; delays may share one factor: z = √ρ z₀ + √(1−ρ) z_l.
 * A gauge errs once a store and draw: its class as a rectangle over ± class % of the span (EN 837-1), its reading as a
 * triangle; the temperature of the gas as a rectangle; the charge shown as a normal. A gauge of class 0, read to 0 bar,
 * stands for contents that are certain. Draw 0 is all medians.
 */
final class Chances {
    private static final Bend NORMAL = new Bend(z -> z, z -> 1);
    private final Route route;
    private final long seed;
    private final long[] legKey;
    private final long[] diversionKey;
    private final long delayKey = Draw.key("delay");
    private final double common;
    private final double own;
    private final Reading[] readings;
    /** Stores whose contents are read, not certain. */
    private final int[] read;
    private final long[] chargeKey;
    private final double[] chargeSdWh;
    /** A leg's duration, min; worked out when first asked for. */
    private Bend[] legs;
    private long streamOf;
    private long stream;
    /** Whether every leg is uncertain by itself alone. */
    private boolean plain;

    Chances(Route route, long seed) {
        this.route = route;
        this.seed = seed;
        double rho = Math.max(0, Math.min(1, route.transport.delayCorrelation()));
        common = Math.sqrt(rho);
        own = Math.sqrt(1 - rho);
        legKey = new long[route.legs];
        diversionKey = new long[route.legs];
        for (int l = 0; l < route.legs; l++) {
            legKey[l] = Draw.key("duration of leg " + (l + 1));
            diversionKey[l] = Draw.key("diversion of leg " + (l + 1));
        }
        readings = new Reading[route.stores];
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            boolean certain = store.gauge().accuracyClass() == 0 && store.gauge().readToBar() == 0;
            if (store.type() == Store.Type.CYLINDER && !certain) {
                readings[s] = new Reading(store.name(), store.waterL().orElse(0) * store.count(), store.pressureBar().orElse(0), route.readAtCel[s],
                        Route.known(store), store.residualBar(), store.gauge());
            }
        }
        read = IntStream.range(0, route.stores).filter(s -> readings[s] != null).toArray();
        chargeKey = new long[route.packs];
        chargeSdWh = new double[route.packs];
        for (int b = 0; b < route.packs; b++) {
            chargeKey[b] = Draw.key("charge of " + route.packName(b));
            chargeSdWh[b] = route.pack(b).battery().orElseThrow().gaugeSd() * route.capacityWh[b];
        }
    }

    long seed() { return seed; }

    /** Minutes of every leg in this draw. */
    void durations(long d, double[] out) {
        if (d == 0) {
            for (int l = 0; l < out.length; l++) out[l] = route.medianMin[l] + (route.diversionChance[l] > 0.5 ? route.diversionMin[l] : 0);
            return;
        }
        if (legs == null) tabulate();
        long stream = stream(d);
        if (plain) {
            for (int l = 0; l < out.length; l++) out[l] = legs[l].at(Draw.bits(stream, legKey[l]));
            return;
        }
        double shared = common > 0 ? common * NORMAL.at(Draw.bits(stream, delayKey)) : 0;
        for (int l = 0; l < out.length; l++) {
            double minutes = route.medianMin[l];
            if (route.sigma[l] > 0) {
                long u = Draw.bits(stream, legKey[l]);
                minutes = common > 0 ? minutes * Exp.exp(route.sigma[l] * (shared + own * NORMAL.at(u))) : legs[l].at(u);
            }
            if (route.diversionChance[l] > 0 && Draw.uniform(stream, diversionKey[l]) < route.diversionChance[l]) minutes += route.diversionMin[l];
            out[l] = minutes;
        }
    }

    /** What {@link #minutes} and {@link #litres} of the draws from here on share: one number a draw. Draws count from 1. */
    static void streams(long seed, long fromDraw, int n, long[] out) {
        for (int i = 0; i < n; i++) out[i] = Draw.stream(seed, fromDraw + i);
    }

    /** What late legs have in common, by draw; used only where {@link #together}. */
    void shared(long[] streams, int n, double[] out) {
        for (int i = 0; i < n; i++) out[i] = common * NORMAL.at(Draw.bits(streams[i], delayKey));
    }

    boolean together() { return common > 0; }

    /** Minutes of one leg in many draws: the same figures as {@link #durations}. */
    void minutes(int l, long[] streams, double[] shared, int n, double[] out) {
        if (legs == null) tabulate();
        double median = route.medianMin[l];
        double sigma = route.sigma[l];
        long key = legKey[l];
        if (sigma == 0) {
            Arrays.fill(out, 0, n, median);
        } else if (common > 0) {
            for (int i = 0; i < n; i++) out[i] = median * Exp.exp(sigma * (shared[i] + own * NORMAL.at(Draw.bits(streams[i], key))));
        } else {
            Bend leg = legs[l];
            for (int i = 0; i < n; i++) out[i] = leg.at(Draw.bits(streams[i], key));
        }
        if (route.diversionChance[l] <= 0) return;
        for (int i = 0; i < n; i++) if (Draw.uniform(streams[i], diversionKey[l]) < route.diversionChance[l]) out[i] += route.diversionMin[l];
    }

    /** Litres of one store in many draws: the same as {@link #contents}. */
    void litres(int s, long[] streams, int n, double[] out) {
        if (readings[s] == null) Arrays.fill(out, 0, n, route.startL[s]);
        else for (int i = 0; i < n; i++) out[i] = Math.max(0, readings[s].usableL(streams[i]) - route.beforeL[s]);
    }

    /** Charge of one pack in many draws. */
    void charge(int b, long[] streams, int n, double[] out) {
        double start = route.startWh[b] - route.beforeWh[b];
        double sd = chargeSdWh[b];
        double full = route.fullWh[b];
        for (int i = 0; i < n; i++) {
            double wh = start + sd * NORMAL.at(Draw.bits(streams[i], chargeKey[b]));
            out[i] = wh > full ? full : wh > 0 ? wh : 0;
        }
    }

    /** What all names of a draw share; durations and contents of one draw are asked for in turn. */
    private long stream(long d) {
        if (d != streamOf) {
            stream = Draw.stream(seed, d);
            streamOf = d;
        }
        return stream;
    }

    private void tabulate() {
        legs = new Bend[route.legs];
        plain = common == 0;
        for (int l = 0; l < route.legs; l++) plain &= route.sigma[l] > 0 && route.diversionChance[l] == 0;
        for (int l = 0; l < route.legs && common == 0; l++) {
            double median = route.medianMin[l];
            double sigma = route.sigma[l];
            legs[l] = new Bend(z -> median * Exp.exp(sigma * z), z -> median * sigma * Exp.exp(sigma * z));
        }
    }

    /** What the stores and packs hold in this draw. */
    void contents(long d, Trial trial) {
        trial.fill();
        if (d == 0) return;
        long stream = stream(d);
        for (int s : read) trial.levelL[s] = Math.max(0, readings[s].usableL(stream) - route.beforeL[s]);
        for (int b = 0; b < chargeKey.length; b++) {
            double wh = route.startWh[b] - route.beforeWh[b] + chargeSdWh[b] * NORMAL.at(Draw.bits(stream, chargeKey[b]));
            trial.chargeWh[b] = wh > route.fullWh[b] ? route.fullWh[b] : wh > 0 ? wh : 0;
        }
    }

    /** A gauge read once, with what the cylinder behind it may hold. */
    static final class Reading {
        private final long gaugeKey;
        private final long readingKey;
        private final long temperatureKey;
        private final double waterL;
        private final double bar;
        private final double cel;
        private final double classBar;
        private final double readBar;
        private final double errorCel;
        private final Contents contents;

        Reading(String name, double waterL, double bar, double cel, double errorCel, double residualBar, Store.Gauge gauge) {
            gaugeKey = Draw.key("gauge of " + name);
            readingKey = Draw.key("reading of " + name);
            temperatureKey = Draw.key("temperature of " + name);
            this.waterL = waterL;
            this.bar = bar;
            this.cel = cel;
            this.errorCel = errorCel;
            classBar = gauge.accuracyClass() / 100 * gauge.spanBar();
            readBar = gauge.readToBar();
            contents = new Contents(bar, classBar + readBar, cel, errorCel, residualBar);
        }

        /** In the draw of this {@link Draw#stream}. */
        double usableL(long stream) {
            double error = classBar * (2 * Draw.uniform(stream, gaugeKey) - 1) + readBar * triangular(Draw.uniform(stream, readingKey));
            return waterL * contents.usable(bar + error, cel + errorCel * (2 * Draw.uniform(stream, temperatureKey) - 1));
        }

        /** Quantile of the triangular distribution on −1 to 1. */
        static double triangular(double u) {
            return u < 0.5 ? Math.sqrt(2 * u) - 1 : 1 - Math.sqrt(2 * (1 - u));
        }

        /** Standard deviation of the gauge reading, bar: JCGM 100, rectangle a/√3, triangle a/√6. */
        static double standardBar(Store.Gauge gauge) {
            double a = gauge.accuracyClass() / 100 * gauge.spanBar();
            return Math.sqrt(a * a / 3 + gauge.readToBar() * gauge.readToBar() / 6);
        }
    }
}
