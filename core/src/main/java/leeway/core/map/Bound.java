package leeway.core.map;

import leeway.core.journey.Steady;
import leeway.core.settings.Measure;
import leeway.core.start.SteadyModel;

/**
 * One limit as the map judges it: where it lies, and at which distance from it the room is full.
 *
 * @param limit in the unit of the measure
 * @param full  the distance inside it at which the room counts as 1
 */
record Bound(String name, String unit, What what, boolean upper, double limit, double full) {
    /** What is looked at in a steady state; {@code NaN} where the model does not know it. */
    @FunctionalInterface
    interface What { double of(Steady steady, double predictedKg); }

    static What measure(Measure m) { return (s, kg) -> SteadyModel.value(s, kg, m); }

    /** A limit from above; full room at half of it. Common practice, no source. */
    static Bound most(String name, String unit, What what, double limit) { return new Bound(name, unit, what, true, limit, Math.max(1e-9, Math.abs(limit) / 2)); }

    /** An edge of a band; full room at a distance that matters in itself, so that a narrow band never looks deep. */
    static Bound edge(String name, String unit, What what, boolean upper, double limit, double full) { return new Bound(name, unit, what, upper, limit, full); }

    /** Room at a value: 1 where full or more, 0 at the limit, below 0 beyond, never under −1. */
    double room(double value) { return Math.max(-1, Math.min(1, (upper ? limit - value : value - limit) / full)); }
}
