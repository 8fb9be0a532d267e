package leeway.core.breath;

import leeway.core.kit.Mode;
import leeway.core.run.Knob;

/**
 * The coefficients of the moment, worked out from the knobs: mL, mL/s, cmH2O, s.
 */
final class Tuned {
    /** Smallest give of a closed circuit, mL/cmH2O, where none is stated; keeps a blocked pressure finite in its rise. From memory: 0.3 is that of a tube and a mount. */
    private static final double LEAST_GIVE = 0.3;
    /** Resistance that no airway lacks, so that flow is always defined; cmH2O.s/mL (0.001 cmH2O.s/L). */
    private static final double LEAST_RESISTANCE = 1e-6;
    private static final double PER_ROOT = 1 / 0.06 / Math.sqrt(20);   // L/min at 20 cmH2O to mL/s per root cmH2O

    private static final Mode[] MODES = Mode.values();

    private final Mechanics fixed;
    private final DeviceLimits device;

    double share, airways, pleuralLeak, elastance, wholeElastance, chestWall, offset, k1In, k1Out, k2, valve, give, cuffLeak, circuitLeak, valveLeak;
    boolean closed, open, oesophagus, ventilating, valveShut;
    Mode mode;
    double peep, limit, largestFlow, volumeSet, period, inspiratory, flowTime, pressureSet, support, rise, flowTrigger, pressureTrigger, cycleOff;
    double biasFlow, backupAfter, flowEnd, delay, targetStep, longestSupport;
    boolean compensated;
    double effort, effortPeriod, effortRise, falsePeriod, coughPeriod, hiccupPeriod, awake, sighEvery, sighPressure, leakSeen;
    /** Of what disturbs a trigger: flow at the airway, mL/s; how often; the pressure that drives such a flow. */
    final double[] swing = new double[3], swingPeriod = new double[3], swingPressure = new double[3];
    boolean disturbed;

    Tuned(Mechanics fixed, DeviceLimits device) {
        this.fixed = fixed;
        this.device = device;
    }

    void from(double[] p) {
        share = at(p, Knob.VENTILATED_SHARE);
        double compliance = at(p, Knob.COMPLIANCE);
        wholeElastance = 1 / compliance;
        elastance = 1 / (compliance * share);
        chestWall = at(p, Knob.CHEST_WALL);
        offset = chestWall * wholeElastance * at(p, Knob.TRAPPED_GAS);
        double tube = at(p, Knob.TUBE_RESISTANCE);
        airways = at(p, Knob.RESISTANCE) / share / 1000;
        k1In = Math.max(LEAST_RESISTANCE, airways + (at(p, Knob.FILTER_RESISTANCE) + tube * fixed.tube().k1CmH2OSPerL()) / 1000);
        k1Out = k1In + at(p, Knob.EXPIRATORY_RESISTANCE) / share / 1000;
        k2 = tube * fixed.tube().k2CmH2OS2PerL2() / 1e6;
        double stuck = at(p, Knob.VALVE_STUCK_CLOSED);
        valveShut = stuck > 0.999;
        valve = at(p, Knob.VALVE_RESISTANCE) / 1000 / Math.max(0.001, 1 - stuck);
        give = at(p, Knob.CIRCUIT_COMPLIANCE);
        cuffLeak = at(p, Knob.LEAK_AIRWAY) * PER_ROOT;
        pleuralLeak = at(p, Knob.PLEURAL_LEAK) * PER_ROOT;
        circuitLeak = at(p, Knob.LEAK_CIRCUIT) * PER_ROOT;
        valveLeak = at(p, Knob.VALVE_STUCK_OPEN) * PER_ROOT;
        closed = at(p, Knob.AIRWAY_CLOSED) >= 0.5;
        open = at(p, Knob.OPEN_AT_PATIENT) >= 0.5 || at(p, Knob.OPEN_AT_VENTILATOR) >= 0.5;
        oesophagus = at(p, Knob.OESOPHAGUS) >= 0.5;
        ventilating = at(p, Knob.VENTILATOR_ON) >= 0.5 && at(p, Knob.STANDBY) < 0.5;
        mode = MODES[(int) Math.min(MODES.length - 1, at(p, Knob.MODE))];
        peep = valveLeak > 0 || open || !ventilating ? 0 : at(p, Knob.PEEP_SET);
        limit = Math.min(at(p, Knob.PRESSURE_LIMIT_SET), device.largestPressureCmH2O());
        largestFlow = device.largestFlowLPerMin() / 0.06;
        volumeSet = at(p, Knob.TIDAL_VOLUME_SET);
        period = 60 / at(p, Knob.RATE_SET);
        inspiratory = at(p, Knob.INSPIRATORY_TIME_SET);
        flowTime = Math.max(0.05, inspiratory - at(p, Knob.PAUSE_SET));
        pressureSet = at(p, Knob.INSPIRATORY_PRESSURE_SET);
        support = mode == Mode.CPAP || mode == Mode.BILEVEL ? 0 : at(p, Knob.SUPPORT_SET);
        rise = Math.max(at(p, Knob.RISE_SET), device.fastestRiseS());
        flowTrigger = at(p, Knob.FLOW_TRIGGER_SET) / 0.06;
        pressureTrigger = at(p, Knob.PRESSURE_TRIGGER_SET);
        cycleOff = at(p, Knob.CYCLE_OFF_SET);
        biasFlow = at(p, Knob.BIAS_FLOW_SET) / 0.06;
        backupAfter = at(p, Knob.BACKUP_AFTER_SET);
        flowEnd = at(p, Knob.FLOW_END_SET);
        delay = device.triggerDelayS();
        targetStep = device.targetStepCmH2O();
        double after = at(p, Knob.CYCLE_AFTER_SET);
        longestSupport = after > 0 ? Math.min(after, device.longestSupportS()) : device.longestSupportS();
        sighEvery = at(p, Knob.SIGH_EVERY_SET);
        sighPressure = at(p, Knob.SIGH_PRESSURE_SET);
        compensated = device.compensatesCircuit();
        awake = 1 - at(p, Knob.SEDATION);
        effort = at(p, Knob.EFFORT) * awake;
        coughPeriod = every(awake > 0 ? at(p, Knob.COUGH) : 0);
        hiccupPeriod = every(awake > 0 ? at(p, Knob.HICCUP) : 0);
        disturbances(p);
        double rate = at(p, Knob.EFFORT_RATE);
        effortPeriod = effort > 0 && rate > 0 ? 60 / rate : Double.POSITIVE_INFINITY;
        effortRise = Math.min(at(p, Knob.EFFORT_TIME), 0.5 * effortPeriod);
        falsePeriod = every(at(p, Knob.FALSE_TRIGGERS));
        if (ventilating) {
            if (mode.hasRate()) needs(period, Knob.RATE_SET, inspiratory, Knob.INSPIRATORY_TIME_SET);
            if (mode.mandatory() == Mode.Inflation.VOLUME || mode.mandatory() == Mode.Inflation.TARGETED) needs(volumeSet, Knob.TIDAL_VOLUME_SET, 0, null);
            if (backupAfter > 0) needs(period, Knob.RATE_SET, inspiratory, Knob.INSPIRATORY_TIME_SET);
        }
    }

    private void disturbances(double[] p) {
        leakSeen = at(p, Knob.LEAK_SEEN) * leakFlow(allLeaks(), peep);
        disturbed = false;
        for (int i = 0; i < swing.length; i++) {
            swing[i] = at(p, i == 0 ? Knob.HEART_SWING : i == 1 ? Knob.WATER_SWING : Knob.VIBRATION) / 0.06;
            swingPeriod[i] = i == 0 ? 60 / at(p, Knob.HEART_RATE) : i == 1 ? Triggering.WATER_S : Triggering.VIBRATION_S;
            swingPressure[i] = (k1In + k2 * swing[i]) * swing[i];
            disturbed |= swing[i] > 0;
        }
    }

    private static double every(double perMinute) {
        return perMinute > 0 ? 60 / perMinute : Double.POSITIVE_INFINITY;
    }

    private void needs(double one, Knob first, double two, Knob second) {
        if (Double.isNaN(one)) throw new IllegalStateException("%s needs %s, which has no value".formatted(mode.code(), first));
        if (Double.isNaN(two)) throw new IllegalStateException("%s needs %s, which has no value".formatted(mode.code(), second));
    }

    private static double at(double[] p, Knob knob) {
        return p[knob.slot()];
    }

    double giveOfClosedCircuit() {
        return Math.max(LEAST_GIVE, give);
    }

    /** All leaks that a pressure at the Y-piece drives, mL/s per root cmH2O. */
    double allLeaks() {
        return cuffLeak + circuitLeak + valveLeak;
    }

    static double leakFlow(double conductance, double pressure) {
        return pressure <= 0 || conductance == 0 ? 0 : conductance * Math.sqrt(pressure);
    }
}
