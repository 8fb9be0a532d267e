package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Moments kept along a branch while it is watched, so that a later moment is reached again from one shortly before it and not from
 * the start: once something has come nearer to harm. At most {@value #MOST} are kept: when they are all there every second one goes,
 * and they lie twice as far apart.
 */
final class Trail implements Sink {
    private static final int MOST = 6;
    private final Sink out;
    private final Watch watch;
    private final Script script;
    private final List<Checkpoint> kept = new ArrayList<>(MOST);
    private int every = 6;
    private int rows;

    /**
     * @param out    watches too, and says when it is enough
     * @param script of the branch
     */
    Trail(Sink out, Watch watch, Script script) {
        this.out = out;
        this.watch = watch;
        this.script = script;
    }

    @Override public void row(Now n) {
        out.row(n);
        if (!watch.nearer() || ++rows % every != 0) return;
        if (kept.size() == MOST) thin();
        if (rows % every == 0) kept.add(Checkpoint.of(n, script));
    }

    private void thin() {
        every *= 2;
        for (int i = MOST - 2; i >= 0; i -= 2) kept.remove(i);
    }

    @Override public void event(double tS, int what, double value) { out.event(tS, what, value); }

    @Override public void stretch(Now n, double toS) { out.stretch(n, toS); }

    @Override public boolean enough() { return out.enough(); }

    /** The later one of this moment and the last that was kept up to a time. */
    Checkpoint before(double tS, Checkpoint known) {
        for (int i = kept.size() - 1; i >= 0; i--) {
            Checkpoint c = kept.get(i);
            if (c.tS() <= tS) return c.tS() > known.tS() ? c : known;
        }
        return known;
    }
}
