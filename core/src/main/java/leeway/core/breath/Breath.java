package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Effort;
import leeway.core.run.Claims;
import leeway.core.run.Flux;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * The breath as a part of the loop: one ventilated compartment behind a tube, any mode, with or without effort. Leaves out
 * inertia, the circuit's resistance in inspiration, uneven filling (see {@link TwoCompartments}), and the drop across the
 * tube that a cuff leak would see (the leak is taken at the airway opening, which overstates it in inspiration).
 * <p>Exact from switch to switch: each pass is one {@link Stretch}. It must be passed over no more than {@link #nextS} said,
 * on the same moment, as the loop does.
 */
public final class Breath implements Part {
    /** Volume and flow below this are rounding; cmH2O. */
    private static final double TINY_CMH2O = 1e-10;
    /** After this long in expiration without anything that could start a breath, rows of 2 s follow. Design 6. */
    static final double IDLE_ROW_S = 2;
    /** No trigger is taken this early in expiration; common practice, no source. */
    static final double REFRACTORY_S = 0.2;
    /** Support does not cycle off earlier; common practice, no source. */
    private static final double LEAST_SUPPORT_S = 0.2;
    private static final int PIECES = 12;
    private static final int SETTLING_ROWS = 400;

    private static final int NOTHING = -1;
    static final int PHASE_ENDS = 0, LIMIT_MET = 1, VOLUME_MET = 2, FLOW_MET = 3, AIM_MET = 4, CYCLE = 5, TRIGGER = 6, ANSWER = 7, DUE_NOW = 8,
            BACKUP_NOW = 9, EFFORT_BEGINS = 10, EFFORT_KNOT = 11, REVERSAL = 12, FALSE_NOW = 13, IDLE = 14, PIECE = 15;

    private final Mechanics mechanics;
    private final DeviceLimits device;
    private final boolean settles;
    private final Tuned tuned;
    private final Ventilator ventilator;
    private final Stretch stretch = new Stretch();
    private int at;
    // what prepare worked out for the moment
    private double v, m0, mg, pawA, pawG, soonestS;
    private boolean pawGiven;
    private int what;

    /** The tube and the device's limits are fixed; all else is read from the knobs (see {@link #base}). */
    public Breath(Mechanics mechanics, DeviceLimits device) {
        this(mechanics, device, true);
    }

    private Breath(Mechanics mechanics, DeviceLimits device, boolean settles) {
        this.mechanics = mechanics;
        this.device = device;
        this.settles = settles;
        tuned = new Tuned(mechanics, device);
        ventilator = new Ventilator(tuned);
    }

    /** Writes mechanics and settings as base values; settings that the mode does not use are left as they are. */
    public static Script base(Script script, Mechanics m, BreathSettings s) {
        script.base(Knob.RESISTANCE, Math.max(Knob.RESISTANCE.low, m.resistanceCmH2OSPerL())).base(Knob.EXPIRATORY_RESISTANCE, m.expiratoryExtraCmH2OSPerL())
                .base(Knob.COMPLIANCE, m.complianceMlPerCmH2O()).base(Knob.CHEST_WALL, m.chestWallShare()).base(Knob.FILTER_RESISTANCE, m.filterCmH2OSPerL())
                .base(Knob.VALVE_RESISTANCE, m.valveCmH2OSPerL()).base(Knob.CIRCUIT_COMPLIANCE, m.circuitComplianceMlPerCmH2O())
                .base(Knob.LEAK_AIRWAY, m.cuffLeakLPerMin()).base(Knob.LEAK_CIRCUIT, m.circuitLeakLPerMin())
                .base(Knob.MODE, s.mode().ordinal()).base(Knob.RISE_SET, s.riseS()).base(Knob.PEEP_SET, s.peepCmH2O()).base(Knob.FIO2_SET, s.fio2())
                .base(Knob.PRESSURE_LIMIT_SET, s.pressureLimitCmH2O()).base(Knob.FLOW_END_SET, s.flowEndShare());
        known(script, Knob.TIDAL_VOLUME_SET, s.tidalVolumeMl());
        known(script, Knob.RATE_SET, s.ratePerMin());
        known(script, Knob.INSPIRATORY_TIME_SET, s.inspiratoryTimeS());
        known(script, Knob.PAUSE_SET, s.pauseS());
        known(script, Knob.INSPIRATORY_PRESSURE_SET, s.pressureAbovePeepCmH2O());
        known(script, Knob.SUPPORT_SET, s.supportAbovePeepCmH2O());
        known(script, Knob.FLOW_TRIGGER_SET, s.flowTriggerLPerMin());
        known(script, Knob.PRESSURE_TRIGGER_SET, s.pressureTriggerCmH2O());
        known(script, Knob.CYCLE_OFF_SET, s.cycleOffShare());
        known(script, Knob.BIAS_FLOW_SET, s.biasFlowLPerMin());
        known(script, Knob.BACKUP_AFTER_SET, s.backupAfterS());
        return script;
    }

    private static void known(Script script, Knob knob, double value) {
        if (!Double.isNaN(value)) script.base(knob, value);
    }

    @Override
    public void claim(Claims claims) {
        at = claims.state(COUNT);
        ventilator.at = at;
        claims.reads(Knob.RESISTANCE, Knob.COMPLIANCE);
    }

    /** Starts where a breath begins, in the steady state of the first knobs (with effort: after {@value #SETTLING_ROWS} rows at the most). */
    @Override
    public void begin(Now n) {
        double[] y = n.y;
        y[at + EFFORT_AT] = Double.NEGATIVE_INFINITY;
        y[at + KNOT] = -1;
        y[at + PENDING] = Double.POSITIVE_INFINITY;
        y[at + FALSE_NEXT] = tuned.falsePeriod;
        y[at + EFFORT_NEXT] = tuned.effortPeriod < Double.POSITIVE_INFINITY ? 0 : Double.POSITIVE_INFINITY;
        y[at + VOLUME] = (tuned.peep - tuned.offset) / tuned.wholeElastance;
        y[at + TARGET] = firstTarget();
        n.level[Level.PAW_CMH2O.ordinal()] = tuned.peep;
        n.level[Level.LAST_BREATH_S.ordinal()] = 0;
        if (settles) settle(n);
    }

    /** The volume target's first pressure: that of the passive textbook breath. */
    private double firstTarget() {
        if (tuned.mode.mandatory != Mode.Kind.TARGETED || Double.isNaN(tuned.volumeSet)) return 0;
        double rise = Math.min(tuned.rise, tuned.inspiratory);
        double drop = (tuned.k1In + tuned.k2 * tuned.volumeSet / tuned.inspiratory) * tuned.volumeSet / tuned.inspiratory;
        return Math.min(tuned.limit - tuned.peep, tuned.volumeSet * tuned.elastance + drop * (1 + rise));
    }

    private void settle(Now n) {
        Loop own = new Loop(new Breath(mechanics, device, false));
        Script script = Script.holding(n.p);
        Now k = own.begin(script);
        double[] last = {Double.NaN, Double.NaN, 0};
        own.to(36_000, k, script, new Sink() {
            @Override public void row(Now now) {
                last[2] += Math.abs(now.y[VOLUME] - last[0]) < 1e-9 && Math.abs(now.y[TARGET] - last[1]) < 1e-9 || last[2] >= SETTLING_ROWS ? 1000 : 1;
                last[0] = now.y[VOLUME];
                last[1] = now.y[TARGET];
            }
            @Override public boolean enough() {
                return last[2] >= 1000;
            }
        });
        for (int i = 0; i < COUNT; i++) n.y[at + i] = k.y[i] - (i >= PHASE_AT && i <= TIMES_END ? k.tS : 0);
        n.y[at + ROW_AT] = k.y[ROW_AT] - k.tS;
        levels(k, n);
    }

    private static void levels(Now from, Now to) {
        for (int i = 0; i < from.level.length; i++) to.level[i] = from.level[i];
        to.level[Level.BREATH_AT_S.ordinal()] -= from.tS;
        to.level[Level.LAST_BREATH_S.ordinal()] -= from.tS;
    }

    @Override
    public void retune(Now n) {
        tuned.from(n.p);
    }

    // ---- what comes next ----

    @Override
    public double nextS(Now n, double latestS) {
        prepare(n);
        double[] y = n.y;
        double now = n.tS;
        int phase = (int) y[at + PHASE];
        soonestS = Double.POSITIVE_INFINITY;
        what = NOTHING;
        effortNext(y);
        offer(y[at + FALSE_NEXT], FALSE_NOW);
        offer(y[at + PENDING], ANSWER);
        if (phase == EXHALE) exhaleNext(y, now);
        else inflateNext(y, now, phase);
        double f0 = stretch.startFlow();
        if (f0 != 0) {
            offer(now + stretch.timeTo(0), REVERSAL);
            if (f0 < 0 && tuned.cuffLeak > 0) offer(now + stretch.timeTo(-Tuned.leakFlow(tuned.cuffLeak, tuned.peep)), REVERSAL);
        }
        return soonestS;
    }

    private void offer(double atS, int code) {
        if (atS < soonestS) {
            soonestS = atS;
            what = code;
        }
    }

    private void effortNext(double[] y) {
        int knot = (int) y[at + KNOT];
        if (knot >= 0) offer(y[at + EFFORT_AT] + Effort.atS(knot + 1, y[at + EFFORT_RISE]), EFFORT_KNOT);
        else if (tuned.effortPeriod < Double.POSITIVE_INFINITY) offer(y[at + EFFORT_NEXT], EFFORT_BEGINS);
    }

    private void exhaleNext(double[] y, double now) {
        Tuned t = tuned;
        double since = y[at + PHASE_AT];
        if (!t.ventilating) {
            if (t.effortPeriod == Double.POSITIVE_INFINITY) offer(Math.max(y[at + ROW_AT], since) + IDLE_ROW_S, IDLE);
            return;
        }
        if (t.mode.timed) offer(Math.max(y[at + DUE], y[at + ROW_OPEN] > 0 ? since + REFRACTORY_S : 0), DUE_NOW);
        else if (t.backupAfter > 0) offer(y[at + LAST_START] + (y[at + BACKUP] > 0 ? t.period : t.backupAfter), BACKUP_NOW);
        if (!t.mode.timed && t.effortPeriod == Double.POSITIVE_INFINITY && y[at + KNOT] < 0) offer(Math.max(y[at + ROW_AT], since) + IDLE_ROW_S, IDLE);
        if (!t.mode.triggered || t.open || t.closed || y[at + PENDING] < Double.POSITIVE_INFINITY) return;
        double ready = since + REFRACTORY_S;
        if (t.flowTrigger > 0) {
            double seen = stretch.startFlow();
            if (seen >= t.flowTrigger) offer(Math.max(now, ready), TRIGGER);
            else offer(Math.max(now + stretch.timeTo(t.flowTrigger), ready), TRIGGER);
        } else if (t.pressureTrigger > 0) {
            double below = t.peep - t.pressureTrigger, pel = t.elastance * v + t.offset - m0;
            if (pel <= below) offer(Math.max(now, ready), TRIGGER);
            else if (mg > 0 && stretch.startFlow() >= 0) offer(Math.max(now + (pel - below) / mg, ready), TRIGGER);
        }
    }

    private void inflateNext(double[] y, double now, int phase) {
        Tuned t = tuned;
        Mode.Kind kind = ventilator.kind(y);
        double breathAt = y[at + BREATH_AT];
        boolean supported = kind == Mode.Kind.SUPPORT || kind == Mode.Kind.UNAIDED;
        double end = breathAt + (supported ? t.longestSupport : t.inspiratory);
        if (phase == FLOW) end = breathAt + Math.min(t.flowTime, t.inspiratory);
        if (phase == RISE) end = Math.min(end, breathAt + t.rise);
        offer(end, PHASE_ENDS);
        double left = end - now;
        if (phase == FLOW) {
            if (t.flowEnd < 1 && (t.allLeaks() > 0 || !t.compensated && t.give > 0)) offer(ventilator.pieceEnd(y, now, PIECES), PIECE);
            if (t.flowEnd < 1) {
                double top = ventilator.topOfDecelerating(v, stretch.startFlow(), stretch.flowAt(1) - stretch.flowAt(0), mg);
                if (top > TINY_CMH2O && top < left) offer(now + top, PIECE);
            }
            offer(now + timeToPressure(t.limit, left), LIMIT_MET);
        } else if (phase == FULL) {
            offer(now + timeToPressure(y[at + AIM], left), AIM_MET);
        } else if (phase == LIMIT && !t.closed && !t.open) {
            double wanted = t.volumeSet - y[at + IN];
            offer(now + timeToVolume(wanted, left), VOLUME_MET);
        } else if ((phase == RISE || phase == HOLD) && !t.closed && !t.open) {
            double f0 = stretch.startFlow(), most = t.largestFlow - Tuned.leakFlow(t.allLeaks(), y[at + AIM]);
            if (f0 > most * (1 + 1e-9)) offer(now, FLOW_MET);
            else if (!stretch.falling()) offer(now + stretch.timeTo(most), FLOW_MET);
            if (supported && now + left > breathAt) {
                double ready = Math.max(now, breathAt + Math.max(LEAST_SUPPORT_S, t.rise)), leak = Tuned.leakFlow(t.allLeaks(), y[at + AIM]);
                double off = t.cycleOff * Math.max(y[at + PEAK_SEEN], f0 + leak) - leak;
                if (f0 <= off && stretch.falling()) offer(ready, CYCLE);
                else if (stretch.falling()) offer(Math.max(ready, now + stretch.timeTo(off)), CYCLE);
                if (ready > now) offer(ready, PIECE);
            }
        }
    }

    /** When the airway pressure reaches a level in a stretch in which the flow is the ventilator's; at most {@code left} later, else infinity. */
    private double timeToPressure(double level, double left) {
        Tuned t = tuned;
        if (t.open) return Double.POSITIVE_INFINITY;
        if (pawGiven) return pawG > 0 ? Math.max(0, (level - pawA) / pawG) : pawA >= level ? 0 : Double.POSITIVE_INFINITY;
        double start = pressureAt(0);
        if (start >= level - TINY_CMH2O) return 0;
        double end = pressureAt(left);
        // the pressure can only turn within a decelerating flow: look at its top too
        if (end < level) {
            double top = ventilator.topOfDecelerating(v, stretch.startFlow(), stretch.flowAt(1) - stretch.flowAt(0), mg);
            if (!(top > 0 && top < left) || pressureAt(top) < level) return Double.POSITIVE_INFINITY;
            left = top;
        }
        double low = 0, high = left;
        for (int i = 0; i < 80 && high - low > 1e-14 * (1 + high); i++) {
            double mid = secant(low, high, level);
            if (pressureAt(mid) >= level) high = mid;
            else low = mid;
        }
        return high;
    }

    private double secant(double low, double high, double level) {
        double a = pressureAt(low), b = pressureAt(high), x = low + (level - a) / (b - a) * (high - low), edge = 1e-3 * (high - low);
        return b > a ? Math.min(high - edge, Math.max(low + edge, x)) : 0.5 * (low + high);
    }

    private double timeToVolume(double wanted, double left) {
        if (wanted <= 0) return 0;
        if (!(stretch.volumeAt(left, stretch.flowAt(left)) > wanted)) return Double.POSITIVE_INFINITY;
        double low = 0, high = left;
        for (int i = 0; i < 80 && high - low > 1e-14; i++) {
            double mid = 0.5 * (low + high);
            if (stretch.volumeAt(mid, stretch.flowAt(mid)) >= wanted) high = mid;
            else low = mid;
        }
        return high;
    }

    // ---- the law of the moment ----

    private void prepare(Now n) {
        double[] y = n.y;
        Tuned t = tuned;
        v = y[at + VOLUME] * t.share;
        pawGiven = false;
        muscles(y, n.tS);
        int phase = (int) y[at + PHASE];
        if (t.closed) {
            airwayClosed(n, phase);
        } else if (t.open) {
            pressure(0, 0, 0, true, true);
        } else if (!t.ventilating) {
            pressure(0, 0, t.valve, true, !t.valveShut);
        } else {
            ventilated(n, phase);
        }
    }

    private void muscles(double[] y, double now) {
        int knot = (int) y[at + KNOT];
        if (knot < 0) {
            m0 = 0;
            mg = 0;
            return;
        }
        double rise = y[at + EFFORT_RISE], from = y[at + EFFORT_AT] + Effort.atS(knot, rise), to = y[at + EFFORT_AT] + Effort.atS(knot + 1, rise);
        mg = y[at + EFFORT_HEIGHT] * (Effort.height(knot + 1) - Effort.height(knot)) / (to - from);
        m0 = y[at + EFFORT_HEIGHT] * Effort.height(knot) + mg * (now - from);
    }

    private void ventilated(Now n, int phase) {
        Tuned t = tuned;
        double[] y = n.y;
        switch (phase) {
            case EXHALE -> {
                double pel = t.elastance * v + t.offset - m0;
                boolean supplies = t.flowTrigger > 0 || t.pressureTrigger <= 0 || !t.mode.triggered;
                if (t.valveShut && t.allLeaks() > 0 && pel > t.peep) leaking(0);
                else pressure(t.peep, 0, t.valve, supplies, !t.valveShut);
            }
            case RISE -> {
                double slope = (y[at + AIM] - t.peep) / t.rise;
                pressure(t.peep + slope * (n.tS - y[at + BREATH_AT]), slope, 0, true, !t.valveShut);
            }
            case HOLD, LIMIT -> pressure(phase == HOLD ? y[at + AIM] : t.limit, 0, 0, true, !t.valveShut);
            case FULL -> pushed(n, t.largestFlow, 0);
            case PAUSE -> pushed(n, 0, 0);
            default -> {
                double start = Math.min(t.largestFlow, 2 * t.volumeSet / t.flowTime / (1 + t.flowEnd)), slope = -start * (1 - t.flowEnd) / t.flowTime;
                pushed(n, start + slope * (n.tS - y[at + BREATH_AT]), slope);
            }
        }
    }

    /** The ventilator gives a flow; what of it reaches the patient depends on leaks and on an uncompensated circuit. */
    private void pushed(Now n, double flow, double slope) {
        Tuned t = tuned;
        boolean soft = !t.compensated && t.give > 0;
        if (t.allLeaks() > 0) {
            double mid = slope == 0 ? flow : flow + slope * 0.5 * (ventilator.pieceEnd(n.y, n.tS, PIECES) - n.tS);
            leaking(soft ? mid / (1 + t.give * t.elastance) : mid);
        } else if (soft) {
            circuit(n, slope == 0 ? flow : flow + slope * 0.5 * (ventilator.pieceEnd(n.y, n.tS, PIECES) - n.tS));
        } else {
            stretch.given(flow, slope);
        }
    }

    /** Airway pressure p + g t at the Y-piece (behind the valve when gas leaves), flow follows. */
    private void pressure(double p, double g, double valve, boolean in, boolean out) {
        Tuned t = tuned;
        double d = p - (t.elastance * v + t.offset - m0), slope = g + mg;
        boolean inward = d > TINY_CMH2O || d >= -TINY_CMH2O && slope > 0, outward = d < -TINY_CMH2O || d <= TINY_CMH2O && slope < 0;
        if (inward && in) {
            stretch.free(t.k1In, 2 * t.k2, slope, t.elastance, root(t.k1In, t.k2, Math.max(0, d)));
        } else if (outward && out) {
            double k1 = t.k1Out + valve;
            stretch.free(k1, -2 * t.k2, slope, t.elastance, -root(k1, t.k2, Math.max(0, -d)));
        } else {
            stretch.given(0, 0);
        }
    }

    /** F of k1 F + k2 F^2 = d. */
    private static double root(double k1, double k2, double d) {
        return 2 * d / (k1 + Math.sqrt(k1 * k1 + 4 * k2 * d));
    }

    /** A constant flow from the ventilator, of which a leak at the Y-piece takes its part. */
    private void leaking(double flow) {
        Tuned t = tuned;
        double l2 = 1 / (t.allLeaks() * t.allLeaks()), pel = t.elastance * v + t.offset - m0;
        boolean inward = flow * flow * l2 >= pel;
        double k1 = inward ? t.k1In : t.k1Out, k2 = inward ? t.k2 : -t.k2;
        if (inward && pel + (k1 + k2 * flow) * flow <= 0) {
            stretch.given(flow, 0);         // the patient draws it all: no pressure, no leak
            return;
        }
        double a = l2 - k2, b = 2 * flow * l2 + k1, c = flow * flow * l2 - pel;
        double start = 2 * c / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
        stretch.free(b, 2 * k2 - 2 * l2, mg, t.elastance, start);
    }

    /** A constant flow from the ventilator into a circuit that gives: its pressure is a state of its own. */
    private void circuit(Now n, double flow) {
        Tuned t = tuned;
        double d = n.level[Level.PAW_CMH2O.ordinal()] - (t.elastance * v + t.offset - m0);
        boolean inward = d > TINY_CMH2O || d >= -TINY_CMH2O && flow / t.give + mg > 0;
        double k1 = inward ? t.k1In : t.k1Out, k2 = inward ? t.k2 : -t.k2;
        double start = inward ? root(k1, t.k2, Math.max(0, d)) : -root(k1, t.k2, Math.max(0, -d));
        stretch.free(t.give * k1, 2 * t.give * k2, flow + t.give * mg, 1 + t.give * t.elastance, start);
    }

    private void airwayClosed(Now n, int phase) {
        Tuned t = tuned;
        double[] y = n.y;
        stretch.given(0, 0);
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
    private double pressureAt(double dt) {
        if (pawGiven) return pawA + pawG * dt;
        if (tuned.open) return 0;
        double f = stretch.flowAt(dt);
        return tuned.elastance * (v + stretch.volumeAt(dt, f)) + tuned.offset - m0 - mg * dt + drop(f);
    }

    private double drop(double f) {
        return f >= 0 ? (tuned.k1In + tuned.k2 * f) * f : (tuned.k1Out - tuned.k2 * f) * f;
    }

    // ---- moving ----

    @Override
    public void pass(Now n, double dt) {
        stretch.over(dt);
        Tuned t = tuned;
        double[] y = n.y, flux = n.flux, level = n.level;
        int phase = (int) y[at + PHASE];
        double f0 = stretch.startFlow(), f1 = stretch.flow, dv = stretch.volume, v1 = v + dv, half = 0.5 * dt * dt;
        double mus = m0 * dt + mg * half, muscle = m0 * dv + mg * (dt * dv - stretch.volumeTime);
        double pel = t.elastance * (v * dt + stretch.volumeTime) + t.offset * dt - mus;
        boolean inward = f0 > 0 || f1 > 0;
        double k1 = inward ? t.k1In : t.k1Out, s = inward ? t.k2 : -t.k2;
        double resistive = k1 * stretch.square + s * stretch.cube;
        double paw = pawGiven ? pawA * dt + pawG * half : t.open ? 0 : pel + k1 * dv + s * stretch.square;
        double work = pawGiven || t.open ? 0 : t.elastance * (v + 0.5 * dv) * dv + t.offset * dv - muscle + resistive;
        double start = pressureAt(0), end = endPressure(dt, v1, f1);
        y[at + VOLUME] += dv / t.share;

        double mean = dt > 0 ? Math.max(0, paw / dt) : 0, root = dt > 0 ? Math.sqrt(mean) * dt : 0;
        boolean live = t.ventilating && !t.open && !t.closed;
        double cuff = live ? t.cuffLeak * root : 0, circuitLeak = live ? (t.circuitLeak + t.valveLeak) * root : 0;
        double airway = dv + cuff, in = Math.max(0, airway), out = Math.max(0, -airway);
        double squeezed = live || t.closed ? t.give * (end - level[Level.PAW_CMH2O.ordinal()]) : 0;
        flux[Flux.IN_ML.ordinal()] += in;
        flux[Flux.OUT_ML.ordinal()] += out;
        flux[Flux.CUFF_LEAK_ML.ordinal()] += cuff;
        flux[Flux.CIRCUIT_LEAK_ML.ordinal()] += circuitLeak;
        if (!t.oesophagus) flux[Flux.LUNG_ML.ordinal()] += dv;
        if (t.open || !t.ventilating) flux[Flux.IN_ROOM_ML.ordinal()] += in;
        double delivered = ventilator.delivered(phase, in, circuitLeak, squeezed, dt, n.tS - y[at + BREATH_AT]);
        double valve = t.ventilating && !t.open && !(Slot.inflating(phase) && airway >= 0) ? Math.max(0, out - squeezed) : 0;
        flux[Flux.DELIVERED_ML.ordinal()] += delivered;
        flux[Flux.VALVE_ML.ordinal()] += valve;
        if (t.open && t.ventilating) flux[Flux.SPILLED_ML.ordinal()] += delivered;
        if (t.ventilating) flux[Flux.BIAS_ML.ordinal()] += t.biasFlow * dt;
        flux[Flux.PAW_CMH2O_S.ordinal()] += paw;
        flux[Flux.PALV_CMH2O_S.ordinal()] += pel;
        double ppl = t.chestWall * t.elastance * (v * dt + stretch.volumeTime) + t.offset * dt - mus;
        flux[Flux.PPL_CMH2O_S.ordinal()] += ppl;
        flux[Flux.WORK_CMH2O_ML.ordinal()] += work;
        flux[Flux.MUSCLE_CMH2O_ML.ordinal()] += muscle;

        level[Level.PAW_CMH2O.ordinal()] = end;
        level[Level.PAW_HIGH_CMH2O.ordinal()] = Math.max(start, end);
        level[Level.PAW_LOW_CMH2O.ordinal()] = Math.min(start, end);
        level[Level.PVENT_CMH2O.ordinal()] = end;
        double m1 = m0 + mg * dt;
        level[Level.PALV_CMH2O.ordinal()] = t.elastance * v1 + t.offset - m1;
        level[Level.PPL_CMH2O.ordinal()] = t.chestWall * t.elastance * v1 + t.offset - m1;
        level[Level.PMUS_CMH2O.ordinal()] = m1;
        level[Level.FLOW_ML_S.ordinal()] = f1;
        level[Level.LUNG_ML.ordinal()] = t.oesophagus ? 0 : y[at + VOLUME];
        ventilator.sum(y, phase, in, out, delivered, valve, cuff, circuitLeak, paw, work, resistive, muscle, dt, Math.max(start, end), f0, f1, t.oesophagus ? 0 : dv);
    }

    private double endPressure(double dt, double v1, double f1) {
        return pawGiven ? pawA + pawG * dt : tuned.open ? 0 : tuned.elastance * v1 + tuned.offset - m0 - mg * dt + drop(f1);
    }

    @Override
    public void hit(Now n, Script script, Sink out) {
        ventilator.hit(n, what);
    }

    /**
     * What stands dt after the moment of the last {@link #nextS}, at most as late as it said: airway pressure cmH2O, flow
     * mL/s, lung volume above relaxation mL, muscle pressure cmH2O. For waves; changes nothing.
     */
    public void sample(double dtS, double[] four) {
        double f = stretch.flowAt(dtS);
        four[0] = pressureAt(dtS);
        four[1] = f;
        four[2] = (v + stretch.volumeAt(dtS, f)) / tuned.share;
        four[3] = m0 + mg * dtS;
    }
}
