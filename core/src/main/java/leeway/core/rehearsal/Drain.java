package leeway.core.rehearsal;

import java.util.List;
import leeway.core.run.Change;
import leeway.core.run.Knob;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Follows the stores of a journey while a fault of gas or power lasts: whether those of a leg end before the leg does, on the leg of the
 * fault or on a later one that needs the same store, and until when ending the drain leaves enough for the rest.
 * <p>Enough is what the rest takes without the fault: what was lost so far, against the journey without it, may be no more than each leg's
 * stores would have left at its end. Both are followed along the run; the last moment at which that is so is read from the straight line
 * between two breaths. Later legs that run dry without the fault are not its harm.
 * <p>A store that the journey leaves for another is shut, and what drained it ends there. Leaves out: what a pack regains on external power after the remedy (earlier than true, the cautious side).
 */
final class Drain {
    /** Less than this is nothing: 1 mL of gas, 1 mWh. */
    private static final double NOTHING = 1e-3;

    private final Stage stage;
    private final Nominal nominal;
    private final int leg;
    private final double startS;
    /** By kind (gas, charge) and leg; {@code NaN} for what has no end or is not followed. */
    private final double[][] atEnd = new double[2][];
    private final double[][] lostAtStart = new double[2][];
    private final double[][] lastRoom = new double[2][];
    private final double[] start = new double[2];
    private double lastS;
    private final double[] enoughUntilS = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    private double endS = Double.POSITIVE_INFINITY;
    private int ended = -1;
    private int endedLeg;
    private final Script script;
    private final double[] looked = {Double.NaN, Double.NaN, Double.NaN};
    private final double[] lookedLost = new double[2];
    /** Between the last two looks, by kind: charge taken and what was lost against the journey without the fault, per s; {@code NaN} before. */
    private double takenPerS = Double.NaN;
    private final double[] lostPerS = {Double.NaN, Double.NaN};
    /** When the last of what drains ends by itself, s. */
    private final double untilS;
    private double lookedS;
    /** The fastest that any leg takes charge without the fault, Wh/s. */
    private final double chargePerS;

    /** A loss from a store lasts until the journey goes over to another: whoever leaves a cylinder shuts it. */
    static Change whileInUse(Change c, Stage stage, int leg) {
        if (c.knob() != Knob.EXTRA_DRAIN || c.untilS() < Double.POSITIVE_INFINITY) return c;
        var t = stage.transport();
        for (int l = leg + 1; l < stage.legs(); l++) {
            List<String> from = t.legs().get(l).oxygen();
            if (from.isEmpty() || t.oxygen().indexOf(t.store(from.get(0))) != c.copy()) return new Change(c.atS(), stage.legEndS(l - 1), c.rampS(), c.knob(), c.copy(), c.how(), c.value());
        }
        return c;
    }

    /** @param changes what the fault changes */
    Drain(Stage stage, Nominal nominal, int leg, Now n, Script script, List<Change> changes) {
        untilS = changes.stream().mapToDouble(Change::untilS).max().orElse(Double.POSITIVE_INFINITY);
        this.stage = stage;
        this.nominal = nominal;
        this.script = script;
        this.leg = leg;
        startS = n.tS;
        for (int i = 0; i < 2; i++) {
            start[i] = left(n, i, leg);
            atEnd[i] = new double[stage.legs()];
            lostAtStart[i] = new double[stage.legs()];
            lastRoom[i] = new double[stage.legs()];
            for (int l = leg; l < stage.legs(); l++) {
                double end = i == 0 ? nominal.oxygenAtEndL(l) : nominal.chargeAtEndWh(l);
                boolean followed = l == leg || end > NOTHING && needed(i, l);
                atEnd[i][l] = followed ? Math.max(0, end) : Double.NaN;
                // the journey without the fault is kept once a minute
                lostAtStart[i][l] = nominal.held(i, l, startS) - left(n, i, l);
                lastRoom[i][l] = room(n, i, l);
                if (lastRoom[i][l] < 0) enoughUntilS[i] = startS;
            }
        }
        lastS = startS;
        double fastest = 0;
        for (int l = leg; l < stage.legs(); l++) {
            double fromS = Math.max(startS, stage.legStartS()[l]), lengthS = stage.legEndS(l) - fromS;
            if (lengthS > 0) fastest = Math.max(fastest, (nominal.held(1, l, fromS) - nominal.chargeAtEndWh(l)) / lengthS);
        }
        chargePerS = fastest;
    }

    /** Whether a later leg takes any of it without the fault: a leg with external power needs no charge. */
    private boolean needed(int what, int l) {
        double begins = nominal.held(what, l, stage.legStartS()[l]);
        return begins - (what == 0 ? nominal.oxygenAtEndL(l) : nominal.chargeAtEndWh(l)) > NOTHING;
    }

    private double left(Now n, int what, int l) { return what == 0 ? stage.supplies().oxygenL(n, l) : stage.supplies().charge(n, l); }

    /** Lost of a leg's stores since the fault, against the journey without it. */
    private double lost(Now n, int what, int l) { return nominal.held(what, l, n.tS) - left(n, what, l) - lostAtStart[what][l]; }

    private double room(Now n, int what, int l) { return atEnd[what][l] - lost(n, what, l); }

    /** The leg of a time, the last one after the journey. */
    private int legAt(double tS) {
        int l = leg;
        while (l + 1 < stage.legs() && tS > stage.legEndS(l)) l++;
        return l;
    }

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

    /** For the time after that in which harm to the patient is looked for: stores only, and what speaks. */
    Sink alone(Watch watch) {
        return new Sink() {
            @Override public void row(Now n) { follow(n); }

            @Override public void event(double tS, int what, double value) { watch.event(tS, what, value); }

            @Override public boolean enough() { return ended >= 0; }
        };
    }

    private void follow(Now n) {
        if (n.tS > stage.legEndS(stage.legs() - 1)) return;
        int here = legAt(n.tS);
        for (int i = 0; i < 2; i++) {
            for (int l = here; l < stage.legs(); l++) {
                double room = room(n, i, l);
                if (Double.isNaN(room)) continue;
                if (room < 0 && enoughUntilS[i] == Double.POSITIVE_INFINITY) {
                    double share = lastRoom[i][l] > 0 ? lastRoom[i][l] / (lastRoom[i][l] - room) : 0;
                    enoughUntilS[i] = lastS + share * (n.tS - lastS);
                }
                lastRoom[i][l] = room;
            }
            double left = left(n, i, here);
            boolean hadSome = here == leg ? start[i] > NOTHING : !Double.isNaN(atEnd[i][here]);
            if (left <= NOTHING && hadSome && ended < 0 && n.tS < stage.legEndS(here) - 1) {
                ended = i;
                endedLeg = here;
                endS = n.tS;
            }
        }
        lastS = n.tS;
    }

    /**
     * A look: whether what this and later legs draw on outlasts them, and the store in use the search, at the pace since the last look
     * with a tenth to spare, and no change is to come before. The first is never so.
     */
    boolean lasts(Now n, double searchEndS) {
        double sinceS = n.tS - lookedS;
        double[] left = {left(n, 0, leg), left(n, 1, leg), stage.supplies().inUseL(n)};
        double[] untilS = {stage.legEndS(leg), stage.legEndS(leg), searchEndS};
        boolean lasts = script.nextS(n.tS) >= searchEndS;
        takenPerS = (looked[1] - left[1]) / sinceS;
        for (int i = 0; i < left.length; i++) {
            if (!Double.isNaN(left[i])) lasts &= left[i] - 1.1 * (looked[i] - left[i]) / sinceS * Math.max(0, untilS[i] - n.tS) > 0.1 * left[i];
            looked[i] = left[i];
        }
        for (int i = 0; i < 2; i++) {
            double lost = mostLost(n, i);
            lostPerS[i] = (lost - lookedLost[i]) / sinceS;
            lasts &= lastLegToEnd(n, i, lostPerS[i]) < 0;
            lookedLost[i] = lost;
        }
        lookedS = n.tS;
        return lasts;
    }

    private double mostLost(Now n, int what) {
        double most = 0;
        for (int l = leg; l < stage.legs(); l++) {
            double lost = lost(n, what, l);
            if (lost > most) most = lost;
        }
        return most;
    }

    /**
     * The last leg from this one on whose stores may end before it does, at this loss and a tenth more; -1 where none may. A pack that lasts
     * without any charging cannot.
     */
    private int lastLegToEnd(Now n, int what, double perS) {
        int last = -1;
        double pacePerS = Double.isNaN(takenPerS) ? (start[1] - left(n, 1, leg)) / (n.tS - startS) : takenPerS;
        double mostPerS = 1.1 * Math.max(chargePerS, pacePerS);
        for (int l = legAt(n.tS); l < stage.legs(); l++) {
            if (what == 1 && left(n, 1, l) - mostPerS * (stage.legEndS(l) - n.tS) > NOTHING) continue;
            if (room(n, what, l) - 1.1 * Math.max(0, perS) * Math.max(0, Math.min(untilS, stage.legEndS(l)) - n.tS) <= NOTHING) last = l;
        }
        return last;
    }

    /** Until when it is worth following: the end of the last leg whose stores may end before it does, at the last loss with a tenth to spare; now where none may. */
    double mayEndS(Now n) {
        double sinceS = n.tS - startS;
        if (!(sinceS > 0)) return n.tS;
        int last = -1;
        for (int i = 0; i < 2; i++) {
            last = Math.max(last, lastLegToEnd(n, i, Double.isNaN(lostPerS[i]) ? mostLost(n, i) / sinceS : lostPerS[i]));
            double left = left(n, i, leg), restS = stage.legEndS(leg) - n.tS;
            if (restS > 0 && start[i] > NOTHING && left - 1.1 * (start[i] - left) / sinceS * restS <= NOTHING) last = Math.max(last, leg);
        }
        return last < 0 ? n.tS : stage.legEndS(last);
    }

    boolean endsFirst(Watch watch) { return ended >= 0 && endS <= watch.harmS; }

    double endS() { return endS; }

    /** How long before its leg does what ended, s. */
    double beforeLegS() { return stage.legEndS(endedLeg) - endS; }

    /** After the fault; 0 where even ending the drain at once is too late. */
    double rescueByS() { return Math.max(0, Math.min(enoughUntilS[ended], endS) - startS); }
}
