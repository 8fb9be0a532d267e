package leeway.core.run;

/**
 * Who listens to a run: rows, waves, the first harm, or nobody. Never changes what the run computes.
 */
public interface Sink {
    /** Hears nothing, never has enough. */
    Sink NONE = new Sink() { };

    /** A row is complete in {@link Now#row}, which is used again for the next: copy what is to be kept. */
    default void row(Now n) { }

    /** Something happened: an alarm began or ended, a store ran dry. {@code what} is the part's own number for it. */
    default void event(double tS, int what, double value) { }

    /** The loop is about to pass from {@code n.tS} to {@code toS}; a sampler may ask parts for values in between. */
    default void stretch(Now n, double toS) { }

    /** True: the run may stop here. Asked after every step. */
    default boolean enough() {
        return false;
    }
}
