package leeway.core.body;

import leeway.core.gas.BloodPoint;

/**
 * Where searches of one kind ended the last two times, four numbers of the state each, and from there where the next may start:
 * straight on, which spares a step of Newton's where things change evenly. What is found does not depend on it.
 */
final class Warm {
    static final int EACH = 4;
    /** A jump larger than this is not continued; ln of oxygen tension, pH. */
    private static final double JUMP = 0.3;

    private Warm() { }

    /** A first start, at the point. */
    static void begin(double[] y, int slot, BloodPoint point) {
        y[slot] = y[slot + 2] = point.u;
        y[slot + 1] = y[slot + 3] = point.h;
    }

    /** Puts the point where the search begins. */
    static void recall(double[] y, int slot, BloodPoint point) {
        double du = y[slot] - y[slot + 2], dh = y[slot + 1] - y[slot + 3];
        boolean even = Math.abs(du) < JUMP && Math.abs(dh) < JUMP;
        point.u = even ? y[slot] + du : y[slot];
        point.h = even ? y[slot + 1] + dh : y[slot + 1];
    }

    /** Notes where the search ended. */
    static void keep(double[] y, int slot, BloodPoint point) {
        y[slot + 2] = y[slot];
        y[slot + 3] = y[slot + 1];
        y[slot] = point.u;
        y[slot + 1] = point.h;
    }
}
