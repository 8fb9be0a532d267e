package leeway.core.supply;

import java.util.HashMap;
import java.util.Map;
import java.util.function.BooleanSupplier;
import leeway.core.run.Draw;
import leeway.core.run.Stopped;

/**
 * The draws 1 to n of a seed, kept column by column: durations of a leg, what a litre behind a gauge holds, charge.
 * <p>A drawn figure depends on seed, draw and name only, so routes that differ in draw, store or kit meet the very same
 * journeys: what one of them worked out the others read. Leaves out what a route makes of it ({@link Chances}).
 */
final class Drawn {
    final long seed;
    final int draws;
    private final BooleanSupplier unwanted;
    private final long[] streams;
    private final Map<Object, double[]> columns = new HashMap<>();

    /** Fills a column from the streams of its draws. */
    interface Column {
        void into(long[] streams, int n, double[] out);
    }

    /** @param unwanted is asked now and then; once it says so, {@link Stopped} is thrown */
    Drawn(long seed, int draws, BooleanSupplier unwanted) {
        this.seed = seed;
        this.draws = draws;
        this.unwanted = unwanted;
        streams = new long[draws];
        streams(seed, 1, draws, streams);
    }

    /** What all names of a draw share, one number a draw. Draws count from 1. */
    static void streams(long seed, long fromDraw, int n, long[] out) {
        for (int i = 0; i < n; i++) out[i] = Draw.stream(seed, fromDraw + i);
    }

    /** The column of this name, drawn when first asked for. Two that are equal are the same figures. Read only. */
    double[] column(Object name, Column made) {
        double[] kept = columns.get(name);
        if (kept != null) return kept;
        look();
        double[] out = new double[draws];
        made.into(streams, draws, out);
        columns.put(name, out);
        return out;
    }

    /** Looks up whether anybody still waits for the answer. */
    void look() { if (unwanted.getAsBoolean()) throw new Stopped(0); }
}
