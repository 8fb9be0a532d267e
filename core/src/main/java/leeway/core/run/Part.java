package leeway.core.run;

/**
 * Something that moves: breath, gas exchange, supply, power, sensors, alarms, crew.
 * <p>A part keeps no state in its fields. All state is in its slice of {@link Now#y}, so that a copy of {@code Now} is a
 * branch and one part object serves many branches in turn (one thread at a time). Coefficients worked out from the knobs
 * may be fields, for {@link #retune} is called whenever they change and at the start of each {@link Loop#to}.
 * <p>The loop's order in one step: fold the knobs and retune if changed; ask all parts for {@link #nextS}; {@link #pass}
 * all parts over the same dt in their order; move the time; clear the flux; {@link #hit} the part that asked for this
 * moment; if that completed a row, {@link #row} for all parts in order, then the sink.
 */
public interface Part {
    /** Claims state and knobs; once, when the loop is built. */
    void claim(Claims claims);

    /** Writes the first state; knobs are folded and {@link #retune} has been called. Parts before this one have begun. */
    void begin(Now n);

    /** The knobs changed (or another branch goes on): works out all coefficients from {@code n.p}. Never touches state. */
    default void retune(Now n) { }

    /**
     * When this part next needs to be hit: a switch, a crossing, an empty store, an alarm delay, the end of a stretch.
     * Infinity for never. A time in the past means now. {@code latestS} is the latest that matters (what others asked
     * for): a part may stop searching there. Must not change anything.
     */
    double nextS(Now n, double latestS);

    /** Moves its state over dt (0 or more), from {@code n.tS}. The breath writes {@link Flux} and {@link Level}; later parts read them. */
    void pass(Now n, double dtS);

    /** The moment it asked for has come. It must now ask for a later one (or a bounded number of hits at the same moment). */
    default void hit(Now n, Script script, Sink out) { }

    /** A row is complete: fills its own columns, starts its own sums afresh; alarms and crew may act on the script. */
    default void row(Now n, Script script, Sink out) { }

    /** Who it is, for the message of a run that makes no progress; may add what it last asked for. */
    default String who() {
        return getClass().getSimpleName();
    }
}
