package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Effort;

/**
 * The stretches of one pass, one after another. At every bend of the effort its slope is another and with it what drives; flow
 * and volume go on. Where a pressure drives or the flow is given and even, the pass goes through the bends, each a few sums; elsewhere
 * it has one stretch and ends at the next bend.
 * <p>Times are counted from the prepared moment, s; mL, mL/s, cmH2O.
 */
final class Stretches {
    private static final int MOST = Effort.STRETCHES + 1;
    private final Stretch[] part = new Stretch[MOST];
    private final double[] from = new double[MOST], gained = new double[MOST], muscle = new double[MOST], slope = new double[MOST];
    private int known, knot;
    private boolean bends;
    private double begunS, riseS, height;
    /** The first of them. */
    final Stretch first;
    /** After {@link #over}: flow at the end, its largest and least, integrals of F, F^2, F^3, of the volume gained, of the muscles' pressure over time and over volume. */
    double flow, highFlow, lowFlow, volume, square, cube, volumeTime, muscleS, muscleVolume, endMuscle;

    Stretches() {
        for (int i = 0; i < MOST; i++) part[i] = new Stretch();
        first = part[0];
    }

    /** The muscles at this moment; the first stretch is set by whoever knows what drives. */
    void begin(double[] y, int at, double now) {
        known = 1;
        bends = false;
        knot = (int) y[at + KNOT];
        if (knot < 0) {
            muscle[0] = 0;
            slope[0] = 0;
            return;
        }
        riseS = y[at + EFFORT_RISE];
        height = y[at + EFFORT_HEIGHT];
        begunS = y[at + EFFORT_AT] - now;
        slope[0] = height * Effort.perS(knot, riseS);
        muscle[0] = height * Effort.height(knot) - slope[0] * (begunS + Effort.atS(knot, riseS));
    }

    /** Muscle pressure at the prepared moment. */
    double muscle() {
        return muscle[0];
    }

    /** Its slope there, cmH2O/s. */
    double slope() {
        return slope[0];
    }

    /** A pressure drives: the effort's bends are passed. */
    void followBends() {
        bends = knot >= 0 && !first.isGiven();
    }

    /** An even flow is given, whatever the muscles do: their bends are passed. */
    void followBendsOfGiven() {
        bends = knot >= 0 && first.isGiven() && first.slope() == 0;
    }

    boolean bends() {
        return bends;
    }

    /** The knot that the muscles have reached at a time, give or take what a clock cannot tell. */
    int knotAt(double dt, double slackS) {
        return knot + reach(dt + slackS);
    }

    /** Where the next stretch begins; infinity behind the last. */
    private double endOf(int k) {
        if (!bends) return Double.POSITIVE_INFINITY;
        return k + 1 < known ? from[k + 1] : knot + k + 1 < Effort.STRETCHES ? begunS + Effort.atS(knot + k + 1, riseS) : Double.POSITIVE_INFINITY;
    }

    /** Works out the stretch after the last that is known; false behind the effort's last bend. */
    private boolean extend() {
        int k = known - 1;
        double end = endOf(k);
        if (end == Double.POSITIVE_INFINITY) return false;
        Stretch before = part[k];
        before.over(Math.max(0, end - from[k]));
        from[known] = end;
        gained[known] = gained[k] + before.volume;
        slope[known] = height * Effort.perS(knot + known, riseS);
        muscle[known] = height * Effort.height(knot + known);
        part[known].after(before, slope[known] - slope[k]);
        known++;
        return true;
    }

    /** The stretch that holds this time. */
    int reach(double dt) {
        int k = known - 1;
        while (from[k] <= dt && endOf(k) <= dt && extend()) k++;
        while (k > 0 && from[k] > dt) k--;
        return k;
    }

    /** When flow reaches this value; infinity for never, for surely later than {@code within}, and behind a turn of the flow. */
    double timeTo(double target, double within) {
        if (first.neverAt(target)) return Double.POSITIVE_INFINITY;
        if (first.isGiven()) return first.timeTo(target, within);
        double side = first.startFlow() - target;
        for (int k = 0;; k++) {
            // a crossing that rounding put neither before the bend nor behind it
            if (k > 0 && side != 0 && side * (part[k].startFlow() - target) <= 0) return from[k];
            double end = endOf(k), time = from[k] + part[k].timeTo(target, Math.min(end, within) - from[k]);
            if (time <= end) return time;       // asked before the stretch is followed, which behind a turn would be in vain
            if (!(end < within) || k + 1 == known && !extend() || part[k].turned()) return Double.POSITIVE_INFINITY;
        }
    }

    /** Where a flow that rises begins to fall, or one that falls to rise; infinity where it does neither within. */
    double turns(double within) {
        boolean falling = first.falling();
        for (int k = 0;; k++) {
            if (part[k].falling() != falling) return from[k];
            if (!(endOf(k) < within) || k + 1 == known && !extend() || part[k].turned()) return Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Under a given even flow: when a pressure that the flow raises by so much a second, and the muscles lower, has risen by this much;
     * infinity for not within.
     */
    double timeToRise(double rise, double perS, double within) {
        for (int k = 0;; k++) {
            double end = Math.min(endOf(k), within), rate = perS - slope[k];
            double missing = rise - perS * from[k] + muscle[k] - muscle[0];
            if (missing <= 0) return from[k];
            if (rate > 0 && missing / rate <= end - from[k]) return from[k] + missing / rate;
            if (!(end < within) || k + 1 == known && !extend()) return Double.POSITIVE_INFINITY;
        }
    }

    double flowAt(double dt) {
        int k = reach(dt);
        return part[k].flowAt(dt - from[k]);
    }

    /** Volume gained at a time, when the flow then is known. */
    double volumeAt(double dt, double flowThen) {
        int k = reach(dt);
        return gained[k] + part[k].volumeAt(dt - from[k], flowThen);
    }

    double muscleAt(double dt) {
        int k = reach(dt);
        return muscle[k] + slope[k] * (dt - from[k]);
    }

    /** Works out what a pass of this length makes; the integral of F^3 where it is asked for. Answers the stretch in which it ends. */
    int over(double dt, boolean cubed) {
        int last = reach(dt);
        volumeTime = 0;
        square = 0;
        cube = 0;
        muscleS = 0;
        muscleVolume = 0;
        highFlow = first.startFlow();
        lowFlow = highFlow;
        for (int k = 0; k <= last; k++) {
            Stretch s = part[k];
            double length = (k < last ? from[k + 1] : dt) - from[k];
            if (k == last) s.over(length);          // the others ended where they were extended
            volumeTime += gained[k] * length + s.volumeTime;
            square += s.square;
            if (cubed) cube += s.cube();
            muscleS += (muscle[k] + 0.5 * slope[k] * length) * length;
            muscleVolume += muscle[k] * s.volume + slope[k] * (length * s.volume - s.volumeTime);
            highFlow = Math.max(highFlow, s.flow);
            lowFlow = Math.min(lowFlow, s.flow);
        }
        flow = part[last].flow;
        volume = gained[last] + part[last].volume;
        endMuscle = muscle[last] + slope[last] * (dt - from[last]);
        return last;
    }

    /** After {@link #over}: integral of the root of the airway pressure, from the mean pressure of each stretch; cmH2O^0.5.s. */
    double rootS(double dt, double elastance, double startVolume, double offset, double k1, double s) {
        double all = 0;
        for (int k = 0; k < known && from[k] < dt; k++) {
            double length = Math.min(dt, k + 1 < known ? from[k + 1] : dt) - from[k];
            if (!(length > 0)) continue;
            double mean = offset - muscle[k] - 0.5 * slope[k] * length + elastance * (startVolume + gained[k])
                    + (elastance * part[k].volumeTime + k1 * part[k].volume + s * part[k].square) / length;
            all += Math.sqrt(Math.max(0, mean)) * length;
        }
        return all;
    }

    /** Of a stretch that ended in the last pass: flow, volume gained and muscle pressure where the next began. */
    double flowBefore(int k) {
        return part[k].startFlow();
    }

    double gainedBefore(int k) {
        return gained[k];
    }

    double muscleBefore(int k) {
        return muscle[k];
    }
}
