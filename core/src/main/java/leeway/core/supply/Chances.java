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
final class Chances implements Strides.Source {
    private static final Bend NORMAL = new Bend(z -> z, z -> 1);
    private final Route route;
    private final long seed;
    /** What other routes have drawn already; null where nothing is kept. */
    private final Drawn drawn;
    private final long[] blockStreams;
    private final double[] blockShared;
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
    /** A leg's duration, min; each worked out when first asked for. */
    private Bend[] legs;
    private long streamOf;
    private long stream;
    /** Whether every leg is uncertain by itself alone. */
    private boolean plain;

    /** Nothing is kept of what is drawn. */
    Chances(Route route, long seed) { this(route, seed, null); }

    /** What is drawn is kept, and what others have drawn is read. */
    Chances(Route route, Drawn drawn) { this(route, drawn.seed, drawn); }

    private Chances(Route route, long seed, Drawn drawn) {
        this.route = route;
        this.seed = seed;
        this.drawn = drawn;
        blockStreams = new long[drawn == null ? Strides.BLOCK : 0];
        blockShared = new double[drawn == null ? Strides.BLOCK : 0];
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

    /** Minutes of every leg in this draw. */
    void durations(long d, double[] out) {
        if (d == 0) {
            for (int l = 0; l < out.length; l++) out[l] = route.medianMin[l] + (route.diversionChance[l] > 0.5 ? route.diversionMin[l] : 0);
            return;
        }
        if (legs == null) tabulate();
        long stream = stream(d);
        if (plain) {
            for (int l = 0; l < out.length; l++) out[l] = leg(l).at(Draw.bits(stream, legKey[l]));
            return;
        }
        double shared = common > 0 ? common * NORMAL.at(Draw.bits(stream, delayKey)) : 0;
        for (int l = 0; l < out.length; l++) {
            double minutes = route.medianMin[l];
            if (route.sigma[l] > 0) {
                long u = Draw.bits(stream, legKey[l]);
                minutes = common > 0 ? minutes * Exp.exp(route.sigma[l] * (shared + own * NORMAL.at(u))) : leg(l).at(u);
            }
            if (route.diversionChance[l] > 0 && Draw.uniform(stream, diversionKey[l]) < route.diversionChance[l]) minutes += route.diversionMin[l];
            out[l] = minutes;
        }
    }

    /** The name of a leg's drawn durations. */
    private record LegColumn(int leg, double median, double sigma, double diversionChance, double diversionMin, double common) { }

    /** The name of what late legs have in common. */
    private record SharedColumn(double common) { }

    /** Looks up whether anybody still waits for what is kept. */
    void look() { if (drawn != null) drawn.look(); }

    /** Minutes of a leg in all draws that are kept. */
    double[] minutes(int l) {
        return drawn.column(new LegColumn(l, route.medianMin[l], route.sigma[l], route.diversionChance[l], route.diversionMin[l], common),
                (streams, n, out) -> minutes(l, streams, common > 0 ? drawn.column(new SharedColumn(common), this::shared) : null, n, out));
    }

    @Override public void begin(int from, int n) {
        if (drawn != null) return;
        Drawn.streams(seed, from + 1L, n, blockStreams);
        if (common > 0) shared(blockStreams, n, blockShared);
    }

    @Override public void minutes(int l, int from, int n, double[] out) {
        if (drawn == null) minutes(l, blockStreams, blockShared, n, out);
        else Strides.copy(minutes(l), from, out, 0, n);
    }

    @Override public void litres(int s, int from, int n, double[] out) {
        Reading reading = readings[s];
        if (reading == null) {
            Arrays.fill(out, 0, n, route.startL[s]);
            return;
        }
        if (drawn == null) reading.perLitre(blockStreams, n, out);
        else Strides.copy(reading.perLitre(drawn), from, out, 0, n);
        for (int i = 0; i < n; i++) out[i] = Math.max(0, reading.waterL * out[i] - route.beforeL[s]);
    }

    @Override public void charge(int b, int from, int n, double[] out) {
        if (drawn == null) normals(chargeKey[b], blockStreams, n, out);
        else Strides.copy(drawn.column(chargeKey[b], (streams, all, z) -> normals(chargeKey[b], streams, all, z)), from, out, 0, n);
        double start = route.startWh[b] - route.beforeWh[b];
        double sd = chargeSdWh[b];
        double full = route.fullWh[b];
        for (int i = 0; i < n; i++) {
            double wh = start + sd * out[i];
            out[i] = wh > full ? full : wh > 0 ? wh : 0;
        }
    }

    private static void normals(long key, long[] streams, int n, double[] out) {
        for (int i = 0; i < n; i++) out[i] = NORMAL.at(Draw.bits(streams[i], key));
    }

    /** What late legs have in common, by draw. */
    private void shared(long[] streams, int n, double[] out) {
        for (int i = 0; i < n; i++) out[i] = common * NORMAL.at(Draw.bits(streams[i], delayKey));
    }

    /** Minutes of one leg in many draws: the same figures as {@link #durations}. */
    private void minutes(int l, long[] streams, double[] shared, int n, double[] out) {
        if (legs == null) tabulate();
        double median = route.medianMin[l];
        double sigma = route.sigma[l];
        long key = legKey[l];
        if (sigma == 0) {
            Arrays.fill(out, 0, n, median);
        } else if (common > 0) {
            for (int i = 0; i < n; i++) out[i] = median * Exp.exp(sigma * (shared[i] + own * NORMAL.at(Draw.bits(streams[i], key))));
        } else {
            Bend leg = leg(l);
            for (int i = 0; i < n; i++) out[i] = leg.at(Draw.bits(streams[i], key));
        }
        if (route.diversionChance[l] <= 0) return;
        for (int i = 0; i < n; i++) if (Draw.uniform(streams[i], diversionKey[l]) < route.diversionChance[l]) out[i] += route.diversionMin[l];
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
    }

    private Bend leg(int l) {
        if (legs[l] == null) {
            double median = route.medianMin[l];
            double sigma = route.sigma[l];
            legs[l] = new Bend(z -> median * Exp.exp(sigma * z), z -> median * sigma * Exp.exp(sigma * z));
        }
        return legs[l];
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
        private final Object name;
        private final long gaugeKey;
        private final long readingKey;
        private final long temperatureKey;
        private final double waterL;
        private final double bar;
        private final double cel;
        private final double classBar;
        private final double readBar;
        private final double errorCel;
        private final double residualBar;
        /** What a litre holds; worked out when first asked for, as others may have drawn it. */
        private Contents contents;

        /** Whatever else two readings differ in, a litre behind them holds the same in every draw. */
        private record Column(String name, double bar, double cel, double errorCel, double residualBar, Store.Gauge gauge) { }

        Reading(String name, double waterL, double bar, double cel, double errorCel, double residualBar, Store.Gauge gauge) {
            this.name = new Column(name, bar, cel, errorCel, residualBar, gauge);
            gaugeKey = Draw.key("gauge of " + name);
            readingKey = Draw.key("reading of " + name);
            temperatureKey = Draw.key("temperature of " + name);
            this.waterL = waterL;
            this.bar = bar;
            this.cel = cel;
            this.errorCel = errorCel;
            classBar = gauge.accuracyClass() / 100 * gauge.spanBar();
            readBar = gauge.readToBar();
            this.residualBar = residualBar;
        }

        private Contents contents() {
            if (contents == null) contents = new Contents(bar, classBar + readBar, cel, errorCel, residualBar);
            return contents;
        }

        /** In the draw of this {@link Draw#stream}. */
        double usableL(long stream) {
            double error = classBar * (2 * Draw.uniform(stream, gaugeKey) - 1) + readBar * triangular(Draw.uniform(stream, readingKey));
            return waterL * contents().usable(bar + error, cel + errorCel * (2 * Draw.uniform(stream, temperatureKey) - 1));
        }

        /** Usable litres in all draws that are kept; its caller's. */
        double[] usableL(Drawn drawn) {
            double[] litres = perLitre(drawn).clone();
            for (int i = 0; i < litres.length; i++) litres[i] *= waterL;
            return litres;
        }

        private double[] perLitre(Drawn drawn) { return drawn.column(name, this::perLitre); }

        /** What a litre of water gives in many draws. */
        private void perLitre(long[] streams, int n, double[] out) {
            double[] gaugeBar = new double[n];
            double[] gasCel = new double[n];
            for (int i = 0; i < n; i++) {
                double error = classBar * (2 * Draw.uniform(streams[i], gaugeKey) - 1) + readBar * triangular(Draw.uniform(streams[i], readingKey));
                gaugeBar[i] = bar + error;
                gasCel[i] = cel + errorCel * (2 * Draw.uniform(streams[i], temperatureKey) - 1);
            }
            contents().usable(gaugeBar, gasCel, n, out);
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
