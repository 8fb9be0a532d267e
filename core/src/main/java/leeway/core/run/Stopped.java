package leeway.core.run;

/** The answer is no longer wanted: whoever asked has gone, or has waited long enough. What was computed so far is thrown away. */
public final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param atS where the run stood, s */
    public Stopped(double atS) {
        super("stopped at " + atS + " s of the run", null, false, false);
    }
}
