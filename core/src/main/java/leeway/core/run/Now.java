package leeway.core.run;

import java.util.Arrays;

/**
 * A moment of a run, as plain numbers; a checkpoint is {@link #copy()}.
 * <p>Parts reach {@link #p} by {@link Knob#slot()}, {@link #y} by the offset they claimed, the rest by the ordinals of
 * {@link Flux}, {@link Level} and {@link Column}; the methods here are the same in a readable form.
 */
public final class Now {
    /** Time since the start of the journey, s. */
    public double tS;
    /** Knobs after all changes; read only for parts. */
    public final double[] p;
    /** State; each part its own slice. Counters and phases too, as whole doubles. */
    public final double[] y;
    /** What flowed in this pass. */
    public final double[] flux;
    /** Where the breath stands. */
    public final double[] level;
    /** The last complete row. */
    public final double[] row;
    /** A part that completes a row sets this in {@code hit}; the loop then lets all parts fill the row and clears it. */
    public boolean rowEnds;

    private Now(double tS, double[] p, double[] y, double[] flux, double[] level, double[] row) {
        this.tS = tS;
        this.p = p;
        this.y = y;
        this.flux = flux;
        this.level = level;
        this.row = row;
    }

    Now(int stateSize) {
        this(0, new double[Knob.SLOTS], new double[stateSize], new double[Flux.values().length],
                new double[Level.values().length], new double[Column.values().length]);
        Arrays.fill(row, Double.NaN);
    }

    public Now copy() {
        Now other = new Now(tS, p.clone(), y.clone(), flux.clone(), level.clone(), row.clone());
        other.rowEnds = rowEnds;
        return other;
    }

    public double get(Knob knob) {
        return p[knob.slot()];
    }

    public double get(Knob knob, int copy) {
        return p[knob.slot(copy)];
    }

    public boolean on(Knob knob) {
        return p[knob.slot()] >= 0.5;
    }

    public double get(Flux what) {
        return flux[what.ordinal()];
    }

    public double get(Level what) {
        return level[what.ordinal()];
    }

    public double get(Column what) {
        return row[what.ordinal()];
    }

    public void set(Column what, double value) {
        row[what.ordinal()] = value;
    }
}
