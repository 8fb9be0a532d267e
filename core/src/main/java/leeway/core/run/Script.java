package leeway.core.run;

import java.util.Arrays;
import java.util.List;

/**
 * The base values and the changes over them, folded into the knobs of a moment.
 * <p>At time t the layers with {@code atS <= t < untilS} act on the base in the order of their {@code atS}, equal ones in
 * the order in which they were added; then each knob is clipped to its bounds. A growing change is followed in
 * {@value #RAMP_STEPS} steps, each worth the middle of its stretch, so that its integral is right.
 */
public final class Script {
    private static final int RAMP_STEPS = 64;
    private double[] base;
    /** Whether another script has the same base: then it is replaced, not changed. */
    private boolean shared;
    private Change[] layers;
    private int count;
    private double foldedToS = Double.NEGATIVE_INFINITY;
    private double foldedAtS = Double.NaN;

    private Script(double[] base, Change[] layers, int count) {
        this.base = base;
        this.layers = layers;
        this.count = count;
    }

    /** No change, every knob at its neutral value. */
    public Script() {
        this(neutral(), new Change[8], 0);
    }

    /** A script without layers that holds these knobs, all of {@link Now#p}, for ever. */
    public static Script holding(double[] p) {
        return new Script(p.clone(), new Change[8], 0);
    }

    private static double[] neutral() {
        double[] p = new double[Knob.SLOTS];
        for (Knob knob : Knob.values()) Arrays.fill(p, knob.slot(), knob.slot() + knob.copies, knob.neutral);
        return p;
    }

    /** Sets the base value of a knob. Only before the run: a base has no time. */
    public Script base(Knob knob, double value) {
        return base(knob, 0, value);
    }

    /** Sets the base value of one copy of a knob. */
    public Script base(Knob knob, int copy, double value) {
        if (!(value >= knob.low && value <= knob.high)) {
            throw new IllegalArgumentException("%s (%s %s) lies outside %s to %s".formatted(knob, value, knob.unit, knob.low, knob.high));
        }
        if (shared) base = base.clone();
        shared = false;
        base[knob.slot(copy)] = value;
        foldedToS = Double.NEGATIVE_INFINITY;
        return this;
    }

    /** The base value of a knob, {@code NaN} where it must be given and was not. */
    public double base(Knob knob) {
        return base[knob.slot()];
    }

    /** Adds a layer; it may begin in the past, and is then in force from now on. */
    public Script add(Change change) {
        if (count == layers.length) layers = Arrays.copyOf(layers, 2 * count);
        int i = count++;
        for (; i > 0 && layers[i - 1].atS() > change.atS(); i--) layers[i] = layers[i - 1];
        layers[i] = change;
        foldedToS = Double.NEGATIVE_INFINITY;
        return this;
    }

    /** Ends a layer at this time; the very object that was added. What ends a fault. */
    public Script end(Change change, double atS) {
        for (int i = 0; i < count; i++) {
            if (layers[i] == change) {
                layers[i] = change.endedAt(atS);
                foldedToS = Double.NEGATIVE_INFINITY;
                return this;
            }
        }
        throw new IllegalArgumentException("no such layer: " + change);
    }

    public List<Change> layers() {
        return List.of(Arrays.copyOf(layers, count));
    }

    /** A script of its own with the same base and layers; for a branch. */
    public Script copy() {
        Script copy = new Script(base, layers.clone(), count);
        shared = true;
        copy.shared = true;
        return copy;
    }

    /** When the knobs change next, later than t; infinity for never. */
    public double nextS(double tS) {
        if (tS >= foldedAtS && tS < foldedToS) return foldedToS;    // known since the last fold
        double next = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            Change c = layers[i];
            if (c.atS() > tS) return Math.min(next, c.atS());
            if (c.untilS() <= tS) continue;
            next = Math.min(next, c.untilS());
            if (tS < c.atS() + c.rampS()) next = Math.min(next, c.atS() + c.rampS() * ((double) step(c, tS) + 1) / RAMP_STEPS);
        }
        return next;
    }

    private static int step(Change c, double tS) {
        int step = (int) ((tS - c.atS()) / c.rampS() * RAMP_STEPS);
        // the next step's own start, as nextS rounds it, already belongs to the next step
        return tS >= c.atS() + c.rampS() * ((double) step + 1) / RAMP_STEPS ? step + 1 : step;
    }

    /** Writes the knobs of time t into p; false, and nothing written, where they are what the last fold wrote. */
    public boolean fold(double tS, double[] p) {
        if (tS < foldedToS && tS >= foldedAtS) return false;
        for (int i = 0; i < base.length; i++) p[i] = base[i];
        for (int i = 0; i < count; i++) {
            Change c = layers[i];
            if (c.atS() > tS) break;
            if (c.untilS() <= tS) continue;
            double grown = tS >= c.atS() + c.rampS() ? 1 : (step(c, tS) + 0.5) / RAMP_STEPS;
            int slot = c.knob().slot(c.copy());
            p[slot] = Math.min(c.knob().high, Math.max(c.knob().low, c.how().on(p[slot], c.value(), grown)));
        }
        foldedAtS = tS;
        foldedToS = nextS(tS);
        return true;
    }


    /** The next fold writes, whatever was written before: another branch may have used the parts since. */
    void foldAfresh() {
        foldedToS = Double.NEGATIVE_INFINITY;
    }

    /** Refuses a run in which one of these knobs has no value. */
    void require(Iterable<Knob> knobs) {
        for (Knob knob : knobs) {
            if (Double.isNaN(base[knob.slot()])) throw new IllegalArgumentException("%s has no value, in %s".formatted(knob, knob.unit));
        }
    }
}
