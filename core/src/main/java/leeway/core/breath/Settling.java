package leeway.core.breath;

import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Runs a breath until it repeats itself: the fixed point of what one breath does to the lung's volume.
 * <p>Of a passive patient one number returns changed, so the secant of the last two breaths says where it comes to rest;
 * with effort, or while a volume target still moves, breath follows breath as they come. Leaves out rhythms longer than one
 * breath: such a patient is where {@value #MOST_ROWS} rows end; of lungs whose breaths are dear, where the mean of
 * {@value #WINDOW} rows stands still within what it swings.
 */
final class Settling implements Sink {
    private static final int MOST_ROWS = 400;
    /** A lung that keeps more than this of a change from breath to breath is not extrapolated: too long a throw. */
    private static final double LONGEST_MEMORY = 0.98;
    /** A volume target that moves by less, cmH2O, has arrived. */
    private static final double SAME_CMH2O = 1e-9;
    private static final double MOST_S = 36_000;
    /** Rows of a mean, and how far two of them may lie apart: a share of the swing within one; of the open share itself. */
    private static final int WINDOW = 8;
    private static final double OF_SWING = 0.1, SAME_SHARE = 1e-4;
    private static final int[] WATCHED = {Slot.VOLUME, Slot.TARGET, Slot.FIRST_OPEN, Slot.SECOND_OPEN};
    private boolean rowEnded;
    private final double[] mean = new double[WATCHED.length], last = new double[WATCHED.length], low = new double[WATCHED.length], high = new double[WATCHED.length];

    private Settling() { }

    /**
     * Leaves {@code k} at the start of a breath that repeats itself. The breath must be the loop's only part.
     *
     * @param sameMl  two breaths that end closer together than this are the same
     * @param secant  the volume is all that a breath hands to the next
     * @param dear    a rhythm longer than a breath need not be waited for
     */
    static void run(Loop loop, Now k, Script script, double sameMl, boolean secant, boolean dear) {
        Settling sink = new Settling();
        double before = Double.NaN, after = Double.NaN, target = Double.NaN;
        for (int rows = 0; rows < MOST_ROWS && k.tS < MOST_S; rows++) {
            double from = rows == 0 ? Double.NaN : k.y[Slot.VOLUME];
            sink.rowEnded = false;
            loop.to(MOST_S, k, script, sink);
            double to = k.y[Slot.VOLUME];
            boolean aimed = Math.abs(k.y[Slot.TARGET] - target) < SAME_CMH2O;
            if (aimed && Math.abs(to - from) < sameMl) return;
            double memory = (to - after) / (from - before);
            if (secant && aimed && memory > 0 && memory < LONGEST_MEMORY) k.y[Slot.VOLUME] = from + (to - from) / (1 - memory);
            if (dear && sink.swings(k.y, rows, sameMl)) return;
            target = k.y[Slot.TARGET];
            before = from;
            after = to;
        }
    }

    /** Whether the means of the last two windows agree within what one of them swings. */
    private boolean swings(double[] y, int row, double sameMl) {
        int in = row % WINDOW;
        boolean same = row >= 2 * WINDOW;
        for (int i = 0; i < WATCHED.length; i++) {
            double now = y[WATCHED[i]];
            mean[i] = in == 0 ? now / WINDOW : mean[i] + now / WINDOW;
            low[i] = in == 0 ? now : Math.min(low[i], now);
            high[i] = in == 0 ? now : Math.max(high[i], now);
            if (in < WINDOW - 1) continue;
            double wide = high[i] - low[i], least = WATCHED[i] == Slot.VOLUME ? sameMl : WATCHED[i] == Slot.TARGET ? SAME_CMH2O : SAME_SHARE;
            same &= Math.abs(mean[i] - last[i]) <= (WATCHED[i] < Slot.FIRST ? Math.max(least, OF_SWING * wide) : least);
            last[i] = mean[i];
        }
        return in == WINDOW - 1 && same;
    }

    @Override
    public void row(Now n) {
        rowEnded = true;
    }

    @Override
    public boolean enough() {
        return rowEnded;
    }
}
