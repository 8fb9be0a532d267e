package leeway.core.supply;

import leeway.core.gas.RealOxygen;
import leeway.core.transport.Store;

/** What the gauges of a route's cylinders show while a store has so much left. */
final class Gauge {
    private final Route route;

    Gauge(Route route) {
        this.route = route;
    }

    /** Which of a store's cylinders is in use, from 1. */
    int cylinder(int s, double leftL) {
        int count = route.transport.oxygen().get(s).count();
        if (route.oneL[s] <= 0) return count;
        return Math.max(1, Math.min(count, count - (int) Math.ceil(leftL / route.oneL[s] - 1e-9) + 1));
    }

    /** Of the cylinder in use, bar, at the temperature of the leg; where the leg has none, as when it was read. */
    double bar(int s, double leftL, int leg) { return bar(s, leftL, leg, cylinder(s, leftL)); }

    double bar(int s, double leftL, int leg, int cylinder) {
        return barAt(s, leftL, route.transport.legs().get(leg).temperatureCel().orElse(route.readAtCel[s]), cylinder);
    }

    /** Of one of a store's cylinders at this temperature. */
    double barAt(int s, double leftL, double cel, int cylinder) {
        Store store = route.transport.oxygen().get(s);
        if (store.type() != Store.Type.CYLINDER) throw new IllegalArgumentException("store %s has no gauge".formatted(store.name()));
        double water = store.waterL().orElseThrow();
        double inIt = Math.max(0, Math.min(route.oneL[s], leftL - (store.count() - cylinder) * route.oneL[s]));
        double held = RealOxygen.freeGasL(water, Math.min(store.residualBar(), store.pressureBar().orElse(0)), route.readAtCel[s]) + inIt;
        return Math.max(0, RealOxygen.gaugeOfContentBar(water, held, cel));
    }
}
