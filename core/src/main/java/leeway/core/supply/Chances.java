package leeway.core.supply;

import leeway.core.gas.Exp;
import leeway.core.run.Draw;
import leeway.core.run.Normal;
import leeway.core.transport.Store;

/**
 * The uncertain inputs of a route, draw by draw: durations, diversions, contents, charge.
 * <p>A leg's duration is lognormal by its median and 95th percentile; delays may share one factor: z = √ρ z₀ + √(1−ρ) z_l.
 * A gauge errs once a store and draw: its class as a rectangle over ± class % of the span (EN 837-1), its reading as a
 * triangle; the temperature of the gas as a rectangle; the charge shown as a normal. Draw 0 is all medians.
 */
final class Chances {
    private final Route route;
    private final long seed;
    private final long[] legKey;
    private final long[] diversionKey;
    private final long delayKey = Draw.key("delay");
    private final double common;
    private final double own;
    private final Reading[] readings;
    private final long[] chargeKey;
    private final double[] chargeSdWh;

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
            if (store.type() == Store.Type.CYLINDER) {
                readings[s] = new Reading(store.name(), store.waterL().orElse(0) * store.count(), store.pressureBar().orElse(0), route.readAtCel[s],
                        Route.known(store), store.residualBar(), store.gauge());
            }
        }
        chargeKey = new long[route.packs];
        chargeSdWh = new double[route.packs];
        for (int b = 0; b < route.packs; b++) {
            chargeKey[b] = Draw.key("charge of " + route.packName(b));
            chargeSdWh[b] = route.pack(b).battery().orElseThrow().gaugeSd() * route.capacityWh[b];
        }
    }

    /** Minutes of every leg in this draw. */
    void durations(long d, double[] out) {
        double shared = common > 0 && d > 0 ? common * Normal.quantile(Draw.uniform(seed, d, delayKey)) : 0;
        for (int l = 0; l < out.length; l++) {
            double minutes = route.medianMin[l];
            if (d > 0 && route.sigma[l] > 0) minutes *= Exp.exp(route.sigma[l] * (shared + own * Normal.quantile(Draw.uniform(seed, d, legKey[l]))));
            if (route.diversionChance[l] > 0 && Draw.uniform(seed, d, diversionKey[l]) < route.diversionChance[l]) minutes += route.diversionMin[l];
            out[l] = minutes;
        }
    }

    /** What the stores and packs hold in this draw. */
    void contents(long d, Trial trial) {
        trial.fill();
        if (d == 0) return;
        for (int s = 0; s < readings.length; s++) if (readings[s] != null) trial.levelL[s] = readings[s].usableL(seed, d);
        for (int b = 0; b < chargeKey.length; b++) {
            double wh = route.startWh[b] + chargeSdWh[b] * Normal.quantile(Draw.uniform(seed, d, chargeKey[b]));
            trial.chargeWh[b] = Math.max(0, Math.min(route.fullWh[b], wh));
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

        double usableL(long seed, long d) {
            double error = classBar * (2 * Draw.uniform(seed, d, gaugeKey) - 1) + readBar * triangular(Draw.uniform(seed, d, readingKey));
            return waterL * contents.usable(bar + error, cel + errorCel * (2 * Draw.uniform(seed, d, temperatureKey) - 1));
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
