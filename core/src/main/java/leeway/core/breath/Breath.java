package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.kit.Mode;
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
    /** A hundred steps of a double at 48 h; the flow so near to its turn is under a millionth of a mL/s. */
    private static final double LEAST_TURN_S = 3e-9;
    /** A flow below this is rounding and has no direction; mL/s. */
    private static final double STILL_ML_S = 1e-9;
    /** After this long in expiration without anything that could start a breath, rows of 2 s follow. Design 6. */
    static final double IDLE_ROW_S = 2;
    /** No trigger is taken this early in expiration; common practice, no source. */
    static final double REFRACTORY_S = 0.2;
    /** Support does not cycle off earlier; common practice, no source. */
    private static final double LEAST_SUPPORT_S = 0.2;
    /** The device's largest flow counts as passed only by this share, so that reaching a pressure does not throw it back. */
    private static final double FLOW_SLACK = 1e-6;

    private static final int NOTHING = -1;
    static final int PHASE_ENDS = 0, LIMIT_MET = 1, VOLUME_MET = 2, FLOW_MET = 3, AIM_MET = 4, CYCLE = 5, TRIGGER = 6, ANSWER = 7, DUE_NOW = 8,
            BACKUP_NOW = 9, EFFORT_BEGINS = 10, EFFORT_KNOT = 11, REVERSAL = 12, FALSE_NOW = 13, IDLE = 14, PIECE = 15, PULSE = 16, COUGH_BEGINS = 17, HICCUP_BEGINS = 18;

    private final Mechanics mechanics;
    private final DeviceLimits device;
    private final boolean settles;
    private final Tuned tuned;
    private final Ventilator ventilator;
    private final Law law;
    private final Muscles muscles;
    private final Triggering triggering;
    private int at;
    private double soonestS;
    private int what;

    /** The tube and the device's limits are fixed; all else is read from the knobs (see {@link #base}). */
    public Breath(Mechanics mechanics, DeviceLimits device) {
        this(mechanics, device, true);
    }

    /** Without settling it starts with the lung at PEEP. */
    Breath(Mechanics mechanics, DeviceLimits device, boolean settles) {
        this.mechanics = mechanics;
        this.device = device;
        this.settles = settles;
        tuned = new Tuned(mechanics, device);
        law = mechanics.lungs().linear() ? new Law(tuned) : new NonlinearLaw(tuned, mechanics.lungs());
        muscles = new Muscles(tuned);
        triggering = new Triggering(tuned, law);
        ventilator = new Ventilator(tuned, law, muscles, triggering);
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
        muscles.at = at;
        triggering.at = at;
        law.at = at;
        claims.reads(Knob.RESISTANCE, Knob.COMPLIANCE);
    }

    /** Starts where a breath begins, in the steady state of the first knobs (with effort: after some hundred rows at the most). */
    @Override
    public void begin(Now n) {
        double[] y = n.y;
        muscles.begin(y, n.tS, settles);
        y[at + SIGH_NEXT] = settles && tuned.sighEvery > 0 ? n.tS + tuned.sighEvery : Double.POSITIVE_INFINITY;
        y[at + PENDING] = Double.POSITIVE_INFINITY;
        y[at + FALSE_NEXT] = tuned.falsePeriod;
        law.rest(y);
        y[at + TARGET] = firstTarget();
        n.level[Level.PAW_CMH2O.ordinal()] = tuned.peep;
        n.level[Level.LAST_BREATH_S.ordinal()] = 0;
        n.level[Level.SHUNT_ADDED.ordinal()] = law.shuntAdded(y);
        if (settles) settle(n);
    }

    /** The volume target's first pressure: that of the passive textbook breath. */
    private double firstTarget() {
        if (tuned.mode.mandatory() != Mode.Inflation.TARGETED || Double.isNaN(tuned.volumeSet)) return 0;
        double rise = Math.min(tuned.rise, tuned.inspiratory);
        double drop = (tuned.k1In + tuned.k2 * tuned.volumeSet / tuned.inspiratory) * tuned.volumeSet / tuned.inspiratory;
        return Math.min(tuned.limit - tuned.peep, tuned.volumeSet * tuned.elastance + drop * (1 + rise));
    }

    private void settle(Now n) {
        Breath other = new Breath(mechanics, device, false);
        Loop own = new Loop(other);
        Script script = Script.holding(n.p);
        Now k = own.begin(script);
        other.settle(own, k, script);
        double cough = n.y[at + COUGH_NEXT], hiccup = n.y[at + HICCUP_NEXT], sigh = n.y[at + SIGH_NEXT];
        for (int i = 0; i < COUNT; i++) n.y[at + i] = k.y[i] - (i >= PHASE_AT && i <= TIMES_END ? k.tS : 0);
        n.y[at + ROW_AT] = k.y[ROW_AT] - k.tS;
        n.y[at + COUGH_NEXT] = cough;
        n.y[at + HICCUP_NEXT] = hiccup;
        n.y[at + SIGH_NEXT] = sigh;
        levels(k, n);
    }

    /** Runs a loop of this breath alone until the breath repeats itself. */
    void settle(Loop alone, Now k, Script script) {
        boolean passive = tuned.effortPeriod == Double.POSITIVE_INFINITY && tuned.falsePeriod == Double.POSITIVE_INFINITY && !tuned.disturbed && tuned.leakSeen == 0;
        law.hasten(true);
        Settling.run(alone, k, script, law.settledMl(), passive && law.volumeIsAll(), !passive && !mechanics.lungs().linear());
        law.hasten(false);
    }

    private static void levels(Now from, Now to) {
        for (int i = 0; i < from.level.length; i++) to.level[i] = from.level[i];
        to.level[Level.BREATH_AT_S.ordinal()] -= from.tS;
        to.level[Level.LAST_BREATH_S.ordinal()] -= from.tS;
    }

    @Override
    public void retune(Now n) {
        tuned.from(n.p);
        law.retuned();
    }

    // ---- what comes next ----

    @Override
    public double nextS(Now n, double latestS) {
        law.prepare(n);
        double[] y = n.y;
        double now = n.tS;
        int phase = (int) y[at + PHASE];
        soonestS = latestS;
        what = NOTHING;
        effortNext(y, now);
        // false triggers that begin on the way begin an interval from now
        if (tuned.falsePeriod < Double.POSITIVE_INFINITY) offer(y[at + FALSE_NEXT] < Double.POSITIVE_INFINITY ? y[at + FALSE_NEXT] : now, FALSE_NOW);
        offer(y[at + PENDING], ANSWER);
        if (phase == EXHALE) exhaleNext(n, y, now);
        else inflateNext(y, now, phase);
        double f0 = law.startFlow();
        if (Math.abs(f0) > STILL_ML_S || law.passesBends()) {     // what leaves at rest may be back behind a bend
            offer(after(now, law.timeTo(0, soonestS - now)), REVERSAL);
            double leak = Tuned.leakFlow(tuned.cuffLeak, tuned.peep);       // below it, the airway opening sees gas go in again
            if (leak > 0 && f0 < -leak * (1 + 1e-7)) offer(after(now, law.timeTo(-leak, soonestS - now)), REVERSAL);
        }
        // where the patient begins to draw more than is given, pressure and leak end
        if (!law.isGiven() && f0 < law.leakedFrom) offer(after(now, law.timeTo(law.leakedFrom, soonestS - now)), REVERSAL);
        return soonestS;
    }

    /** A turn of the flow, never so soon that hours after departure the clock could not tell it from now. */
    private static double after(double now, double dtS) { return now + Math.max(dtS, LEAST_TURN_S); }

    private void offer(double atS, int code) {
        if (atS < soonestS) {
            soonestS = atS;
            what = code;
        }
    }

    private void effortNext(double[] y, double now) {
        int knot = (int) y[at + KNOT];
        if (knot >= 0) {
            offer(y[at + EFFORT_AT] + Effort.atS(law.passesBends() ? Effort.STRETCHES : knot + 1, y[at + EFFORT_RISE]), EFFORT_KNOT);
            return;
        }
        offer(muscles.next(y, now, Muscles.BREATH), EFFORT_BEGINS);
        offer(muscles.next(y, now, Muscles.COUGH), COUGH_BEGINS);
        offer(muscles.next(y, now, Muscles.HICCUP), HICCUP_BEGINS);
    }

    private void exhaleNext(Now n, double[] y, double now) {
        Tuned t = tuned;
        double since = y[at + PHASE_AT];
        if (!t.ventilating) {
            if (muscles.quiet(n)) offer(Math.max(y[at + ROW_AT], since) + IDLE_ROW_S, IDLE);
            return;
        }
        if (t.mode.hasRate()) offer(Math.max(y[at + DUE], y[at + ROW_OPEN] > 0 ? since + REFRACTORY_S : 0), DUE_NOW);
        else if (t.backupAfter > 0) offer(y[at + LAST_START] + (y[at + BACKUP] > 0 ? t.period : t.backupAfter), BACKUP_NOW);
        if (!t.mode.hasRate() && y[at + KNOT] < 0 && y[at + BACKUP] == 0 && muscles.quiet(n)) offer(Math.max(y[at + ROW_AT], since) + IDLE_ROW_S, IDLE);
        if (!t.mode.triggered() || t.open || t.closed || y[at + PENDING] < Double.POSITIVE_INFINITY) return;
        double ready = since + REFRACTORY_S;
        offer(triggering.met(now, ready, soonestS - now), TRIGGER);
        if (t.disturbed) offer(triggering.pulse(now, ready, soonestS - now), PULSE);
    }

    private void inflateNext(double[] y, double now, int phase) {
        Tuned t = tuned;
        Mode.Inflation kind = ventilator.kind(y);
        double breathAt = y[at + BREATH_AT];
        boolean supported = kind == Mode.Inflation.SUPPORT || kind == Mode.Inflation.UNAIDED;
        double end = breathAt + ventilator.lasts(y);
        if (phase == FLOW) end = breathAt + Math.min(t.flowTime, t.inspiratory);
        if (phase == RISE) end = Math.min(end, breathAt + t.rise);
        offer(end, PHASE_ENDS);
        double left = end - now;
        if (phase == FLOW) {
            if (law.inPieces()) offer(law.pieceEnd(y, now), PIECE);
            if (t.flowEnd < 1) {
                double top = law.topOfDecelerating();
                if (top > Law.TINY_CMH2O && top < left) offer(now + top, PIECE);
            }
            offer(now + law.timeToPressure(t.limit, left), LIMIT_MET);
        } else if (phase == FULL) {
            offer(now + law.timeToPressure(y[at + AIM], left), AIM_MET);
        } else if (phase == LIMIT && !t.closed && !t.open) {
            double wanted = t.volumeSet - y[at + IN];
            offer(now + law.timeToVolume(wanted, left), VOLUME_MET);
        } else if ((phase == RISE || phase == HOLD) && !t.closed && !t.open) {
            double f0 = law.startFlow(), most = t.largestFlow - Tuned.leakFlow(t.allLeaks(), y[at + AIM]);
            most += FLOW_SLACK * t.largestFlow;
            boolean falling = law.falling(), turns = supported || law.passesBends();
            double ready = Math.max(now, breathAt + Math.max(LEAST_SUPPORT_S, t.rise));
            // a turn first where flow rises, the end where it falls: nobody looks further ahead than the nearest
            if (turns && !falling) offer(now + law.turns(soonestS - now), PIECE);
            if (f0 > most) offer(now, FLOW_MET);
            else if (!falling) offer(now + law.timeTo(most, soonestS - now), FLOW_MET);
            if (supported && falling && now + left > breathAt) {
                double leak = Tuned.leakFlow(t.allLeaks(), y[at + AIM]), off = t.cycleOff * Math.max(y[at + PEAK_SEEN], f0 + leak) - leak;
                offer(f0 <= off ? ready : Math.max(ready, now + law.timeTo(off, soonestS - now)), CYCLE);
            }
            if (turns && falling) offer(now + law.turns(soonestS - now), PIECE);
        }
    }

    // ---- moving ----

    @Override
    public void pass(Now n, double dt) {
        law.over(dt);
        Tuned t = tuned;
        double[] y = n.y, flux = n.flux, level = n.level;
        int phase = (int) y[at + PHASE];
        double f0 = law.startFlow(), f1 = law.endFlow, dv = law.gained, end = law.endPressure;
        law.store(y);
        boolean live = t.ventilating && !t.open && !t.closed;
        double cuff = live ? t.cuffLeak * law.leakRootS : 0, circuitLeak = live ? (t.circuitLeak + t.valveLeak) * law.leakRootS : 0;
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
        flux[Flux.PAW_CMH2O_S.ordinal()] += law.airwayS;
        flux[Flux.PALV_CMH2O_S.ordinal()] += law.alveolarS;
        flux[Flux.PPL_CMH2O_S.ordinal()] += law.pleuralS;
        flux[Flux.WORK_CMH2O_ML.ordinal()] += law.work;
        flux[Flux.MUSCLE_CMH2O_ML.ordinal()] += law.muscle;

        level[Level.PAW_CMH2O.ordinal()] = end;
        level[Level.PAW_HIGH_CMH2O.ordinal()] = law.highPressure;
        level[Level.PAW_LOW_CMH2O.ordinal()] = law.lowPressure;
        level[Level.PVENT_CMH2O.ordinal()] = end;
        level[Level.PALV_CMH2O.ordinal()] = law.endAlveolar;
        level[Level.PPL_CMH2O.ordinal()] = law.endPleural;
        level[Level.PMUS_CMH2O.ordinal()] = law.endMuscle;
        level[Level.FLOW_ML_S.ordinal()] = f1;
        level[Level.SHUNT_ADDED.ordinal()] = law.shuntAdded(y);
        level[Level.LUNG_ML.ordinal()] = t.oesophagus ? 0 : y[at + VOLUME];
        ventilator.sum(y, phase, in, out, delivered, valve, cuff, circuitLeak, law.airwayS, law.work, law.resistive, law.muscle, dt, law.highPressure,
                law.highFlow, law.lowFlow, Law.inward(dv, f0, f1), t.oesophagus ? 0 : dv, law.muscleS);
    }

    @Override
    public void hit(Now n, Script script, Sink out) {
        ventilator.hit(n, what);
    }

    /**
     * What stands dt after the moment of the last {@link #nextS}, at most as late as it said: airway pressure cmH2O, flow
     * mL/s, lung volume above relaxation mL, muscle pressure cmH2O; of two lungs or parts, where the array has room for eight,
     * then the volume of each, mL, and the alveolar pressure of each, cmH2O. For waves; changes nothing.
     */
    public void sample(double dtS, double[] four) {
        law.sample(dtS, four);
    }

    @Override
    public String who() {
        return "Breath (asked for %d, flow %s mL/s)".formatted(what, law.startFlow());
    }
}
