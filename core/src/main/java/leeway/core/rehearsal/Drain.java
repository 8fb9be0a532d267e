package leeway.core.rehearsal;

import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Follows the stores of a leg while a fault of gas or power lasts: whether they end before the leg does, and until when ending
 * the drain leaves enough for the rest.
 * <p>Enough is what the rest of the leg takes without the fault, in proportion to the time left. Both are followed along the run;
 * the last moment at which what is left is at least that is read from the straight line between two breaths.
 */
final class Drain {
    /** Less than this is nothing: 1 mL of gas, 1 mWh. */
    private static final double NOTHING = 1e-3;

    private final Stage stage;
    private final int leg;
    private final double startS;
    private final double legS;
    private final double[] start = new double[2];
    private final double[] rate = new double[2];
    private final double[] lastRoom = new double[2];
    private double lastS;
    private final double[] enoughUntilS = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    private double endS = Double.POSITIVE_INFINITY;
    private int ended = -1;
    private final Script script;
    private final double[] looked = {Double.NaN, Double.NaN, Double.NaN};
    private double lookedS;

    Drain(Stage stage, Nominal nominal, int leg, Now n, Script script) {
        this.stage = stage;
        this.script = script;
        this.leg = leg;
        startS = n.tS;
        legS = Math.max(0, stage.legEndS(leg) - startS);
        double[] end = {nominal.oxygenAtEndL(leg), nominal.chargeAtEndWh(leg)};
        for (int i = 0; i < 2; i++) {
            start[i] = left(n, i);
            rate[i] = legS > 0 ? Math.max(0, start[i] - end[i]) / legS : 0;
            lastRoom[i] = start[i] - rate[i] * legS;
            if (lastRoom[i] < 0) enoughUntilS[i] = startS;
        }
        lastS = startS;
    }

    private double left(Now n, int what) { return what == 0 ? stage.supplies().oxygenL(n, leg) : stage.supplies().charge(n, leg); }

    /** Both watch; either may have enough. */
    Sink beside(Watch watch) {
        return new Sink() {
            @Override public void row(Now n) {
                watch.row(n);
                follow(n);
            }

            @Override public void event(double tS, int what, double value) { watch.event(tS, what, value); }

            @Override public boolean enough() { return watch.enough() || ended >= 0; }
        };
    }

    private void follow(Now n) {
        if (n.tS > startS + legS) return;
        for (int i = 0; i < 2; i++) {
            double left = left(n, i);
            if (Double.isNaN(left)) continue;
            double room = left - rate[i] * (startS + legS - n.tS);
            if (room < 0 && enoughUntilS[i] == Double.POSITIVE_INFINITY) {
                double share = lastRoom[i] > 0 ? lastRoom[i] / (lastRoom[i] - room) : 0;
                enoughUntilS[i] = lastS + share * (n.tS - lastS);
            }
            lastRoom[i] = room;
            if (left <= NOTHING && start[i] > NOTHING && ended < 0 && n.tS < startS + legS - 1) {
                ended = i;
                endS = n.tS;
            }
        }
        lastS = n.tS;
    }

    /**
     * A look: whether what the leg draws on outlasts the leg, and the store in use the search, at the pace since the last look with a
     * tenth to spare, and no change is to come before. The first is never so.
     */
    boolean lasts(Now n, double searchEndS) {
        double sinceS = n.tS - lookedS;
        double[] left = {left(n, 0), left(n, 1), stage.supplies().inUseL(n)};
        double[] untilS = {startS + legS, startS + legS, searchEndS};
        boolean lasts = script.nextS(n.tS) >= searchEndS;
        for (int i = 0; i < left.length; i++) {
            if (!Double.isNaN(left[i])) lasts &= left[i] - 1.1 * (looked[i] - left[i]) / sinceS * Math.max(0, untilS[i] - n.tS) > 0.1 * left[i];
            looked[i] = left[i];
        }
        lookedS = n.tS;
        return lasts;
    }

    /** Whether the stores could still end before the leg does, at the mean pace since the fault with a tenth to spare. */
    boolean mayEnd(Now n) {
        double restS = startS + legS - n.tS, sinceS = n.tS - startS;
        if (!(restS > 0 && sinceS > 0)) return false;
        for (int i = 0; i < 2; i++) {
            double left = left(n, i);
            if (start[i] > NOTHING && left - 1.1 * (start[i] - left) / sinceS * restS <= NOTHING) return true;
        }
        return false;
    }

    boolean endsFirst(Watch watch) { return ended >= 0 && endS <= watch.harmS; }

    double endS() { return endS; }

    /** After the fault; 0 where even ending the drain at once is too late. */
    double rescueByS() { return Math.max(0, Math.min(enoughUntilS[ended], endS) - startS); }
}
