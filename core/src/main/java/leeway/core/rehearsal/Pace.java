package leeway.core.rehearsal;

import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * Whether gas and charge last to the end of the search under a fault that takes more of them than the journey does without it, as a leak
 * or a patient who breathes fast: what is taken beyond that must fit into what each leg's stores would have left without the fault.
 * <p>Leaves out: what is lost outside the ventilator, which {@link Drain} follows, and a fault that takes still more on a later leg.
 */
final class Pace {
    private static final Column[] TAKEN = {Column.OXYGEN_DRAW_L_MIN, Column.LOAD_W};
    /** L/min and W as L/s and Wh/s. */
    private static final double[] PER_S = {1.0 / 60, 1.0 / 3600};
    /** What is taken beyond counts so much more until the end of the search, for it is not quite steady; common practice, no source. */
    private static final double SPARE = 1.1;
    /** So much more is not more: a breath's pace is not quite that of the next. */
    private static final double SAME = 1.05;
    /** A store near its end is announced before: this share of what it holds as the fault strikes must stay. Common practice, no source. */
    private static final double KEPT = 0.15;

    private final Stage stage;
    private final Nominal nominal;
    private final int leg;
    private final double searchEndS;
    private final double suppliesEndS;
    private final double[] before = new double[TAKEN.length];
    private final double[] taken = new double[TAKEN.length];
    private final double[] beyond = new double[TAKEN.length];
    private final double[][] startOfLeg;
    private double lookedS;
    private double lastS;

    /** @param n as the fault strikes, after a breath without it */
    Pace(Stage stage, Nominal nominal, int leg, Now n, double searchEndS) {
        this.stage = stage;
        this.nominal = nominal;
        this.leg = leg;
        this.searchEndS = searchEndS;
        suppliesEndS = nominal.suppliesEndS(n.tS);
        lookedS = n.tS;
        lastS = n.tS;
        startOfLeg = new double[TAKEN.length][stage.legs()];
        for (int i = 0; i < TAKEN.length; i++) {
            before[i] = n.get(TAKEN[i]) * PER_S[i];
            for (int l = leg; l < stage.legs(); l++) startOfLeg[i][l] = i == 0 ? stage.supplies().oxygenL(n, l) : stage.supplies().charge(n, l);
        }
    }

    void row(Now n) {
        for (int i = 0; i < TAKEN.length; i++) taken[i] += n.get(TAKEN[i]) * PER_S[i] * (n.tS - lastS);
        lastS = n.tS;
    }

    /** A look: whether all lasts, at the mean pace since the last look. */
    boolean lasts(Now n) {
        boolean lasts = true;
        double sinceS = n.tS - lookedS;
        for (int i = 0; i < TAKEN.length; i++) {
            double more = taken[i] / sinceS - before[i];
            taken[i] = 0;
            // NaN, what this device does not take, is never more
            if (!(more > (SAME - 1) * before[i])) continue;
            beyond[i] += more * sinceS;
            for (int l = leg; l < stage.legs() && (l == leg || stage.legStartS()[l] < searchEndS); l++) {
                double untilS = l == stage.legs() - 1 ? searchEndS : Math.min(searchEndS, stage.legEndS(l));
                if (beyond[i] + SPARE * more * Math.max(0, untilS - n.tS) > without(i, l, untilS) - KEPT * startOfLeg[i][l]) lasts = false;
            }
        }
        lookedS = n.tS;
        return lasts;
    }

    /** What a leg's stores hold at a time without the fault; {@code NaN} where they have no end. */
    private double without(int what, int l, double tS) {
        double atEnd = what == 0 ? nominal.oxygenAtEndL(l) : nominal.chargeAtEndWh(l);
        double left = atEnd + before[what] * (stage.legEndS(l) - tS);
        return suppliesEndS < Double.POSITIVE_INFINITY ? Math.min(left, before[what] * (suppliesEndS - tS)) : left;
    }
}
