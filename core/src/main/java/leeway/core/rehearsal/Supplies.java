package leeway.core.rehearsal;

import leeway.core.run.Now;

/** What stores and pack still hold at a moment of a run; {@code NaN} for what has no end (a wall outlet, external power) or does not exist. */
public interface Supplies {
    /** Nothing is known of gas and power. */
    Supplies UNKNOWN = new Supplies() {
        @Override public double oxygenL(Now n, int leg) { return Double.NaN; }

        @Override public double charge(Now n, int leg) { return Double.NaN; }
    };

    /** Usable litres of free gas in all stores of a leg together. */
    double oxygenL(Now n, int leg);

    /** Usable litres of free gas in the store that feeds now. */
    default double inUseL(Now n) { return Double.NaN; }

    /** Usable charge of the pack that the ventilator has, Wh. */
    double charge(Now n, int leg);
}
