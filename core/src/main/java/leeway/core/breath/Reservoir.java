package leeway.core.breath;

/**
 * Oxygen that flows past an open airway, and the little room that it fills between breaths. Who breathes in faster than it
 * flows empties the room and then draws air; who breathes out faster blows it away.
 * <p>mL, mL/s, as the patient breathes them (BTPS). Leaves out that gas just breathed out stays in a mask at a low flow.
 */
final class Reservoir {
    private final double roomMl;
    /** What of the room holds fresh gas. */
    double heldMl;

    Reservoir(double roomMl) {
        this.roomMl = roomMl;
    }

    /** Passes a stretch of constant flow into the patient; answers how much of it was fresh, mL. */
    double pass(double flow, double dtS, double freshMlPerS) {
        if (flow <= 0) {
            heldMl = Math.max(0, Math.min(roomMl, heldMl + (freshMlPerS + flow) * dtS));
            return 0;
        }
        double there = heldMl + freshMlPerS * dtS, taken = Math.min(flow * dtS, there);
        heldMl = Math.min(roomMl, there - taken);
        return taken;
    }
}
