package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * The law of the moment: which {@link Stretch} follows from lungs, effort, phase and faults, and when it would reach a
 * pressure or a volume. Reads state, changes none.
 */
class Law {
    /** A driving pressure below this, and below what the clock's last digit is worth, counts as none where it is about to change sign. */
    static final double TINY_CMH2O = 1e-9;
    /** A decelerating flow into a leak or an uncompensated circuit is taken in this many equal pieces, each of constant flow. */
    private static final int PIECES = 12;

    final Tuned t;
    final Stretches path = new Stretches();
    private final Stretch stretch = path.first;
    final Illinois root = new Illinois();
    int at;
    /** Ventilated volume; muscle pressure and its slope; airway pressure where it does not follow from the flow; flow that met a leak, else NaN. */
    double v, lastDigitS, m0, mg, pawA, pawG, leakedFrom;
    boolean pawGiven;
    private int endKnot;
    /** After {@link #over}: flow at the end, volume through the airway opening, integrals over time and volume, what stands at the end. */
    double endFlow, gained, airwayS, alveolarS, pleuralS, work, elastic, resistive, muscle, leakRootS, startPressure, endPressure, highPressure, lowPressure,
            endAlveolar, endPleural, endMuscle, muscleS, highFlow, lowFlow;

    Law(Tuned tuned) {
        t = tuned;
    }

    void prepare(Now n) {
        double[] y = n.y;
        v = y[at + VOLUME] * t.share;
        lastDigitS = Math.ulp(n.tS);
        pawGiven = false;
        leakedFrom = Double.NaN;
        path.begin(y, at, n.tS);
        m0 = path.muscle();
        mg = path.slope();
        int phase = (int) y[at + PHASE];
        if (t.closed) {
            airwayClosed(n, phase);
        } else if (t.open) {
            pressure(0, 0, 0, true, true);
        } else if (!t.ventilating) {
            pressure(0, 0, t.valve, true, !t.valveShut);
        } else {
            ventilated(n, phase);
            // nothing but flow is waited for then, and the pressure goes straight
            if (phase == EXHALE || phase == RISE || phase == HOLD) path.followBends();
            else if ((phase == FLOW || phase == FULL || phase == PAUSE) && Double.isNaN(leakedFrom)) path.followBendsOfGiven();
        }
    }

    /** The bends of the effort are passed; else each ends a pass. */
    boolean passesBends() {
        return path.bends();
    }

    private void ventilated(Now n, int phase) {
        double[] y = n.y;
        switch (phase) {
            case EXHALE -> {
                double pel = alveolar();
                boolean supplies = t.flowTrigger > 0 || t.pressureTrigger <= 0 || !t.mode.triggered();
                if (t.valveShut && t.allLeaks() > 0 && pel > t.peep) leaking(0);
                else pressure(t.peep, 0, t.valve, supplies, !t.valveShut);
            }
            case RISE -> {
                double slope = (y[at + AIM] - t.peep) / t.rise;
                pressure(t.peep + slope * (n.tS - y[at + BREATH_AT]), slope, 0, true, !t.valveShut);
            }
            case HOLD -> pressure(y[at + AIM], 0, 0, true, !t.valveShut);
            case LIMIT -> pressure(t.limit, 0, 0, true, !t.valveShut);
            case FULL -> pushed(n, t.largestFlow, 0);
            case PAUSE -> pushed(n, 0, 0);
            default -> {
                double start = Math.min(t.largestFlow, 2 * t.volumeSet / t.flowTime / (1 + t.flowEnd)), slope = -start * (1 - t.flowEnd) / t.flowTime;
                pushed(n, start + slope * (n.tS - y[at + BREATH_AT]), slope);
            }
        }
    }

    /** The ventilator gives a flow; what of it reaches the patient depends on leaks and on an uncompensated circuit. */
    void pushed(Now n, double flow, double slope) {
        boolean soft = !t.compensated && t.give > 0;
        if (t.allLeaks() > 0) {
            double mid = slope == 0 ? flow : flow + slope * 0.5 * (pieceEnd(n.y, n.tS) - n.tS);
            leaking(soft ? mid / (1 + t.give * t.elastance) : mid);
        } else if (soft) {
            circuit(n, slope == 0 ? flow : flow + slope * 0.5 * (pieceEnd(n.y, n.tS) - n.tS));
        } else {
            stretch.given(flow, slope);
        }
    }

    /** Airway pressure p + g t at the Y-piece (behind the valve when gas leaves), flow follows. */
    void pressure(double p, double g, double valve, boolean in, boolean out) {
        double d = p - (t.elastance * v + t.offset - m0), slope = g + mg;
        boolean turns = Math.abs(d) <= tiny(slope) && slope != 0, inward = turns ? slope > 0 : d > 0, outward = turns ? slope < 0 : d < 0;
        if (inward && in) {
            stretch.free(true, t.k1In, 2 * t.k2, slope, t.elastance, root(t.k1In, t.k2, Math.max(0, d)));
        } else if (outward && out) {
            double k1 = t.k1Out + valve;
            stretch.free(false, k1, -2 * t.k2, slope, t.elastance, -root(k1, t.k2, Math.max(0, -d)));
        } else {
            stretch.given(0, 0);
        }
    }

    private double tiny(double slope) {
        return TINY_CMH2O + 8 * lastDigitS * Math.abs(slope);
    }

    /** F of k1 F + k2 F^2 = d. */
    private static double root(double k1, double k2, double d) {
        return k2 == 0 ? d / k1 : 2 * d / (k1 + Math.sqrt(k1 * k1 + 4 * k2 * d));
    }

    /** A constant flow from the ventilator, of which a leak at the Y-piece takes its part. */
    void leaking(double flow) {
        leakedFrom = flow;
        double l2 = 1 / (t.allLeaks() * t.allLeaks()), pel = t.elastance * v + t.offset - m0;
        double d = flow * flow * l2 - pel;
        boolean inward = Math.abs(d) <= tiny(mg) && mg != 0 ? mg > 0 : d >= 0;
        double k1 = inward ? t.k1In : t.k1Out, k2 = inward ? t.k2 : -t.k2;
        if (inward && pel + (k1 + k2 * flow) * flow <= tiny(mg)) {
            stretch.given(flow, 0);         // the patient draws it all: no pressure, no leak
            return;
        }
        double a = l2 - k2, b = 2 * flow * l2 + k1, c = flow * flow * l2 - pel;
        double start = 2 * c / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
        if (inward != start >= 0) start = 0;
        stretch.free(inward, b, 2 * k2 - 2 * l2, mg, t.elastance, start);
    }

    /** A constant flow from the ventilator into a circuit that gives: its pressure is a state of its own. */
    void circuit(Now n, double flow) {
        double d = n.level[Level.PAW_CMH2O.ordinal()] - (t.elastance * v + t.offset - m0);
        double slope = flow / t.give + mg;
        boolean inward = Math.abs(d) <= tiny(slope) && slope != 0 ? slope > 0 : d > 0;
        double k1 = inward ? t.k1In : t.k1Out, k2 = inward ? t.k2 : -t.k2;
        double start = inward ? root(k1, t.k2, Math.max(0, d)) : -root(k1, t.k2, Math.max(0, -d));
        stretch.free(inward, t.give * k1, 2 * t.give * k2, flow + t.give * mg, 1 + t.give * t.elastance, start);
    }

    private void airwayClosed(Now n, int phase) {
        double[] y = n.y;
        still();
        pawGiven = true;
        pawG = 0;
        double last = n.level[Level.PAW_CMH2O.ordinal()];
        switch (phase) {
            case EXHALE -> pawA = t.peep;
            case FLOW, FULL -> {
                pawA = Math.max(last, t.peep);
                pawG = (phase == FULL ? t.largestFlow : Math.min(t.largestFlow, t.volumeSet / t.flowTime)) / t.giveOfClosedCircuit();
            }
            case RISE -> {
                pawG = (y[at + AIM] - t.peep) / t.rise;
                pawA = t.peep + pawG * (n.tS - y[at + BREATH_AT]);
            }
            case HOLD -> pawA = y[at + AIM];
            case LIMIT -> pawA = t.limit;
            default -> pawA = last;
        }
    }

    /** Airway pressure at the Y-piece dt after the prepared moment. */
    double pressureAt(double dt) {
        if (pawGiven) return pawA + pawG * dt;
        if (t.open) return 0;
        double f = path.flowAt(dt);
        return t.elastance * (v + path.volumeAt(dt, f)) + t.offset - path.muscleAt(dt) + drop(f);
    }

    double drop(double f) {
        return f >= 0 ? (t.k1In + t.k2 * f) * f : (t.k1Out - t.k2 * f) * f;
    }

    /** When the airway pressure reaches a level in a stretch in which the flow is the ventilator's; at most {@code left} later, else infinity. */
    double timeToPressure(double level, double left) {
        if (t.open) return Double.POSITIVE_INFINITY;
        if (pawGiven) return pawG > 0 ? Math.max(0, (level - pawA) / pawG) : pawA >= level ? 0 : Double.POSITIVE_INFINITY;
        double missing = level - pressureAt(0);
        if (missing <= TINY_CMH2O) return 0;
        if (path.bends()) return path.timeToRise(missing, t.elastance * stretch.startFlow(), left);
        if (stretch.isGiven()) {
            // a flow linear in time makes a pressure quadratic in it; the first root after now
            double f0 = stretch.startFlow(), slope = stretch.slope();
            double a = 0.5 * t.elastance * slope + t.k2 * slope * slope, b = t.elastance * f0 - mg + (t.k1In + 2 * t.k2 * f0) * slope;
            double root = b + Math.sqrt(b * b + 4 * a * missing), time = 2 * missing / root;
            return root > 0 && time <= left ? time : Double.POSITIVE_INFINITY;     // NaN too: it turns before
        }
        if (!Double.isNaN(leakedFrom)) {
            // what the leak takes tells the pressure, so the level is reached at a known flow
            double time = stretch.timeTo(leakedFrom - t.allLeaks() * Math.sqrt(level), left);
            return time <= left ? time : Double.POSITIVE_INFINITY;
        }
        if (pressureAt(left) < level) return Double.POSITIVE_INFINITY;
        root.begin(0, left, -missing, pressureAt(left) - level);
        for (int i = 0; i < 80 && root.wide(1e-14); i++) if (root.took(pressureAt(root.next()) - level)) break;
        return root.high;
    }

    /** When this much has gone in, at most {@code left} later, else infinity: Newton, for flow is the slope, kept between bounds. */
    double timeToVolume(double wanted, double left) {
        if (wanted <= 0) return 0;
        if (!(stretch.volumeAt(left, stretch.flowAt(left)) > wanted)) return Double.POSITIVE_INFINITY;
        double low = 0, high = left, time = 0;
        for (int i = 0; i < 80; i++) {
            double flow = stretch.flowAt(time), miss = stretch.volumeAt(time, flow) - wanted;
            if (miss >= 0) high = time;
            else low = time;
            double next = time - miss / flow;
            if (!(next >= low && next <= high)) next = 0.5 * (low + high);
            if (Math.abs(next - time) <= 1e-14) return next;
            time = next;
        }
        return high;
    }

    /** End of the running piece of a decelerating flow. */
    double pieceEnd(double[] y, double now) {
        double from = y[at + BREATH_AT];
        return from + t.flowTime * (Math.floor((now - from) / t.flowTime * PIECES + 1e-6) + 1) / PIECES;
    }

    /** When the pressure under a decelerating flow is highest, from the start of the stretch; NaN for a constant flow. */
    double topOfDecelerating() {
        if (!stretch.isGiven()) return Double.NaN;      // flow and pressure are monotone then
        double f0 = stretch.startFlow(), slope = stretch.flowAt(1) - f0;
        return ((mg - t.k1In * slope) / (t.elastance + 2 * t.k2 * slope) - f0) / slope;
    }

    /** No flow through the airway opening. */
    void still() { stretch.given(0, 0); }

    /** Alveolar pressure at the prepared moment: elastic recoil less the muscles. */
    double alveolar() { return t.elastance * v + t.offset - m0; }

    double startFlow() { return stretch.startFlow(); }

    boolean isGiven() { return stretch.isGiven(); }

    /** True where flow falls (or rests) from here. */
    boolean falling() {
        return stretch.falling();
    }

    /** When flow reaches this value, from the prepared moment; infinity for never, or for surely later than {@code within}. */
    double timeTo(double flow, double within) {
        return path.timeTo(flow, within);
    }

    /** A decelerating flow has to be taken in pieces. */
    boolean inPieces() {
        return t.flowEnd < 1 && (t.allLeaks() > 0 || !t.compensated && t.give > 0);
    }

    /** Length of a sample that has room for two lungs. */
    static final int WITH_LUNGS = 8;

    /** Airway pressure, flow, lung volume above relaxation and muscle pressure dt after the prepared moment; of two lungs also volume and alveolar pressure of each. */
    void sample(double dt, double[] four) {
        double f = path.flowAt(dt);
        four[0] = pressureAt(dt);
        four[1] = f;
        four[2] = (v + path.volumeAt(dt, f)) / t.share;
        four[3] = path.muscleAt(dt);
    }

    /** Works out what a pass of this length makes. */
    void over(double dt) {
        int last = path.over(dt, t.k2 > 0);
        double f0 = stretch.startFlow(), f1 = path.flow, dv = path.volume, v1 = v + dv, half = 0.5 * dt * dt;
        muscleS = path.muscleS;
        endMuscle = path.endMuscle;
        muscle = path.muscleVolume;
        highFlow = path.highFlow;
        lowFlow = path.lowFlow;
        alveolarS = t.elastance * (v * dt + path.volumeTime) + t.offset * dt - muscleS;
        boolean inward = inward(dv, f0, f1);
        double k1 = inward ? t.k1In : t.k1Out, s = inward ? t.k2 : -t.k2;
        resistive = k1 * path.square + s * path.cube;
        airwayS = pawGiven ? pawA * dt + pawG * half : t.open ? 0 : alveolarS + k1 * dv + s * path.square;
        elastic = (t.elastance * (v + 0.5 * dv) + t.offset) * dv;
        work = pawGiven || t.open ? 0 : elastic - muscle + resistive;
        startPressure = pawGiven ? pawA : t.open ? 0 : t.elastance * v + t.offset - m0 + drop(f0);
        endPressure = pawGiven ? pawA + pawG * dt : t.open ? 0 : t.elastance * v1 + t.offset - endMuscle + drop(f1);
        highPressure = Math.max(startPressure, endPressure);
        lowPressure = Math.min(startPressure, endPressure);
        for (int k = 1; k <= last; k++) {
            double bend = t.elastance * (v + path.gainedBefore(k)) + t.offset - path.muscleBefore(k) + drop(path.flowBefore(k));
            highPressure = Math.max(highPressure, bend);
            lowPressure = Math.min(lowPressure, bend);
        }
        leakRootS = 0;
        if (t.allLeaks() > 0 && dt > 0) leakRootS = pawGiven || t.open ? Math.sqrt(Math.max(0, airwayS / dt)) * dt : path.rootS(dt, t.elastance, v, t.offset, k1, s);
        // where a given flow met the leak, what did not reach the lung leaked: exact; elsewhere by the mean pressure
        if (!Double.isNaN(leakedFrom)) leakRootS = Math.max(0, leakedFrom * dt - dv) / t.allLeaks();
        pleuralS = t.chestWall * t.elastance * (v * dt + path.volumeTime) + t.offset * dt - muscleS;
        endAlveolar = t.elastance * v1 + t.offset - endMuscle;
        endPleural = t.chestWall * t.elastance * v1 + t.offset - endMuscle;
        endFlow = f1;
        gained = dv;
        if (path.bends()) endKnot = path.knotAt(dt, 4 * lastDigitS);
    }

    /** No pass turns, but it may begin and end at rest; there and at a turn a flow is zero but for rounding. */
    static boolean inward(double gained, double startFlow, double endFlow) {
        return gained > 0 || gained == 0 && startFlow + endFlow > 0;
    }

    /** Writes the state at the end of the pass. */
    void store(double[] y) {
        y[at + VOLUME] += gained / t.share;
        if (path.bends()) y[at + KNOT] = endKnot;
    }

    /** The coefficients changed. */
    void retuned() { }

    /** When a flow that rises from here may begin to fall, or one that falls to rise; infinity where it cannot within. */
    double turns(double within) {
        return path.turns(within);
    }

    // ---- the lung at rest, without muscles ----

    /** A row begins, an inflation ends, a row is complete: what a lung of several parts notes of itself. */
    void rowBegins(double[] y) { }

    void inflationEnds(double[] y) { }

    void row(Now n) { }

    /** The steady state is sought, not the way to it: what changes slowly may be led. */
    void hasten(boolean now) { }

    /** What closed lung adds to the shunt. */
    double shuntAdded(double[] y) {
        return 0;
    }

    /** Writes the lung that rests at PEEP. */
    void rest(double[] y) {
        y[at + VOLUME] = (t.peep - t.offset) / t.wholeElastance;
    }

    /** Two breaths that end closer together than this are the same. */
    double settledMl() {
        return 1e-9;
    }

    /** The volume is all that a passive breath hands to the next; a lung with more state must say no. */
    boolean volumeIsAll() {
        return true;
    }

    /** Elastic recoil of lung and chest wall, what a hold would show. */
    double recoil(double[] y) {
        return t.elastance * (y[at + VOLUME] * t.share) + t.offset;
    }

    /** The part of it that spans the lung, above its value at relaxation. */
    double lungRecoil(double[] y) {
        return (1 - t.chestWall) * t.elastance * (y[at + VOLUME] * t.share);
    }

    /** Lung volume above what it would be after an endless expiration. */
    double trapped(double[] y) {
        return Math.max(0, y[at + VOLUME] * t.share - (t.peep - t.offset) / t.elastance);
    }
}
