package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Effort;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * When the patient's muscles act, and how hard: breaths, coughs, hiccups, one at a time. A breath is as deep and as frequent
 * as the knobs say and as the drive part changes it.
 * <p>A cough is the expiratory muscles' burst alone, a negative effort of the same shape: behind a tube there is no glottis to
 * close. Leaves out the deep breath before it.
 */
final class Muscles {
    static final int BREATH = 0, COUGH = 1, HICCUP = 2;
    /**
     * Expiratory pressure of a cough past a tube and its rise. Invented: from a filled lung it drives about 100 L/min, where
     * patients before extubation cough 70 (median; Duan, Crit Care 2016;20:316); healthy people reach 165 to 214 cmH2O with a
     * closed glottis (Am J Respir Crit Care Med, article 200303-334BC).
     */
    static final double COUGH_CMH2O = 40, COUGH_RISE_S = 0.12;
    /** Inspiratory pressure and rise of a hiccup. Common practice, no source. */
    static final double HICCUP_CMH2O = 15, HICCUP_RISE_S = 0.1;
    /** Depth of the drive under which nothing comes. */
    private static final double APNOEA = -0.98;
    private static final double MOST_CMH2O = 150;

    private final Tuned t;
    int at;

    Muscles(Tuned tuned) {
        t = tuned;
    }

    void begin(double[] y, double now, boolean all) {
        y[at + KNOT] = -1;
        y[at + EFFORT_AT] = Double.NEGATIVE_INFINITY;
        y[at + EFFORT_NEXT] = t.effortPeriod < Double.POSITIVE_INFINITY ? now : Double.POSITIVE_INFINITY;
        y[at + COUGH_NEXT] = all ? now + t.coughPeriod : Double.POSITIVE_INFINITY;
        y[at + HICCUP_NEXT] = all ? now + t.hiccupPeriod : Double.POSITIVE_INFINITY;
    }

    /** True where no breath of the patient's own is to be expected. */
    boolean quiet(Now n) {
        return t.effortPeriod == Double.POSITIVE_INFINITY || n.level[Level.DRIVE_DEPTH.ordinal()] < APNOEA;
    }

    /** When one of them next begins, where none acts; one that wakes on the way begins now. */
    double next(double[] y, double now, int kind) {
        double period = kind == BREATH ? t.effortPeriod : kind == COUGH ? t.coughPeriod : t.hiccupPeriod;
        if (!(period < Double.POSITIVE_INFINITY)) return Double.POSITIVE_INFINITY;
        double due = y[at + EFFORT_NEXT + kind];
        return due < Double.POSITIVE_INFINITY ? due : now;
    }

    /** Begins; false where the drive is too low for a breath. */
    boolean begins(Now n, int kind) {
        double[] y = n.y;
        double faster = 1, deeper = 1;
        if (kind == BREATH) {
            faster = Math.max(0.2, 1 + n.level[Level.DRIVE_RATE.ordinal()]);
            deeper = Math.max(0, 1 + n.level[Level.DRIVE_DEPTH.ordinal()]);
        }
        double period = (kind == BREATH ? t.effortPeriod : kind == COUGH ? t.coughPeriod : t.hiccupPeriod) / faster;
        y[at + EFFORT_NEXT + kind] = n.tS + period;
        if (kind == BREATH && quiet(n)) return false;
        y[at + EFFORT_KIND] = kind;
        y[at + EFFORT_AT] = n.tS;
        y[at + EFFORT_HEIGHT] = kind == BREATH ? Math.min(MOST_CMH2O, t.effort * deeper) : t.awake * (kind == COUGH ? -COUGH_CMH2O : HICCUP_CMH2O);
        y[at + EFFORT_RISE] = kind == BREATH ? Math.min(t.effortRise, 0.5 * period) : kind == COUGH ? COUGH_RISE_S : HICCUP_RISE_S;
        y[at + KNOT] = 0;
        y[at + EFFORT_WORK] = 0;
        y[at + EFFORT_PRESSURE_TIME] = 0;
        y[at + EFFORT_P01] = kind == COUGH ? Double.NaN : y[at + EFFORT_HEIGHT] * Effort.heightAt(0.1, y[at + EFFORT_RISE]);
        return true;
    }
}
