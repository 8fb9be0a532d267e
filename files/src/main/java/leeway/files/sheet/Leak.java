package leeway.files.sheet;

/** A leak as sheets say it, a flow at 20 cmH2O, and as the breath needs it: an orifice, flow = constant × √pressure. */
final class Leak {
    /** The airway pressure at which sheets state a leak. */
    static final double STATED_AT_CMH2O = 20;

    private Leak() { }

    static double mlPerSPerSqrtCmH2O(double lPerMinAt20CmH2O) { return lPerMinAt20CmH2O * 1000 / 60 / Math.sqrt(STATED_AT_CMH2O); }
}
