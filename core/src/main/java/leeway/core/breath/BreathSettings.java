package leeway.core.breath;

import leeway.core.kit.Mode;

/**
 * What is set on the ventilator, as numbers. A number that the mode does not use may be {@code NaN}.
 *
 * @param tidalVolumeMl          set or target volume, BTPS
 * @param inspiratoryTimeS       with the pause in it
 * @param pressureAbovePeepCmH2O inspiratory pressure above PEEP
 * @param supportAbovePeepCmH2O  support above PEEP
 * @param riseS                  linear rise to the set pressure
 * @param fio2                   0 to 1
 * @param pressureLimitCmH2O     absolute; held when reached
 * @param flowTriggerLPerMin     0: no flow trigger
 * @param pressureTriggerCmH2O   below PEEP; 0: no pressure trigger
 * @param cycleOffShare          share of the peak flow at which support ends
 * @param backupAfterS           apnoea time; 0: no backup
 * @param flowEndShare           volume control: flow at the end over flow at the start; 1 constant, below 1 decelerating
 */
public record BreathSettings(Mode mode, double tidalVolumeMl, double ratePerMin, double inspiratoryTimeS, double pauseS,
        double pressureAbovePeepCmH2O, double supportAbovePeepCmH2O, double riseS, double peepCmH2O, double fio2, double pressureLimitCmH2O,
        double flowTriggerLPerMin, double pressureTriggerCmH2O, double cycleOffShare, double biasFlowLPerMin, double backupAfterS, double flowEndShare) {
    public BreathSettings {
        if (mode == null) throw new IllegalArgumentException("mode is missing");
        Mechanics.within("PEEP", peepCmH2O, 0, 50);
        Mechanics.within("rise time", riseS, 0, 3);
        Mechanics.within("FiO2", fio2, 0, 1);
        Mechanics.within("pressure limit", pressureLimitCmH2O, 1, 150);
        Mechanics.within("flow at the end over flow at the start", flowEndShare, 0, 1);
        if (mode.hasRate()) {
            Mechanics.within("rate", ratePerMin, 0.1, 200);
            Mechanics.within("inspiratory time", inspiratoryTimeS, 0.05, 60 / ratePerMin * 0.98);
            Mechanics.within("pause", pauseS, 0, inspiratoryTimeS * 0.95);
        }
        if (mode.mandatory() == Mode.Inflation.VOLUME || mode.mandatory() == Mode.Inflation.TARGETED) Mechanics.within("tidal volume", tidalVolumeMl, 0.5, 5000);
        if (mode.mandatory() == Mode.Inflation.PRESSURE) Mechanics.within("inspiratory pressure above PEEP", pressureAbovePeepCmH2O, 0, 100);
        if (mode.between() == Mode.Inflation.SUPPORT) Mechanics.within("support pressure above PEEP", supportAbovePeepCmH2O, 0, 100);
    }

    private static BreathSettings of(Mode mode, double vt, double rate, double ti, double pause, double pressure, double support, double rise, double peep) {
        return new BreathSettings(mode, vt, rate, ti, pause, pressure, support, rise, peep, 0.21, 60, 2, 0, 0.25, 0, 0, 1);
    }

    /** Volume control, constant flow, no limit in reach. */
    public static BreathSettings volume(double tidalVolumeMl, double ratePerMin, double inspiratoryTimeS, double pauseS, double peepCmH2O) {
        return of(Mode.AC_VC, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, Double.NaN, Double.NaN, 0, peepCmH2O);
    }

    /** Pressure control. */
    public static BreathSettings pressure(double abovePeepCmH2O, double ratePerMin, double inspiratoryTimeS, double riseS, double peepCmH2O) {
        return of(Mode.AC_PC, Double.NaN, ratePerMin, inspiratoryTimeS, 0, abovePeepCmH2O, Double.NaN, riseS, peepCmH2O);
    }

    /** Volume-targeted pressure control. */
    public static BreathSettings targeted(double tidalVolumeMl, double ratePerMin, double inspiratoryTimeS, double riseS, double peepCmH2O) {
        return of(Mode.AC_VTPC, tidalVolumeMl, ratePerMin, inspiratoryTimeS, 0, Double.NaN, Double.NaN, riseS, peepCmH2O);
    }

    /** Pressure support, the patient starts every breath. */
    public static BreathSettings support(double abovePeepCmH2O, double riseS, double peepCmH2O, double cycleOffShare) {
        return new BreathSettings(Mode.CSV_PS, Double.NaN, Double.NaN, Double.NaN, 0, Double.NaN, abovePeepCmH2O, riseS, peepCmH2O, 0.21, 60, 2, 0, cycleOffShare, 0, 0, 1);
    }

    public BreathSettings withLimit(double limitCmH2O) {
        return new BreathSettings(mode, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, pressureAbovePeepCmH2O, supportAbovePeepCmH2O, riseS, peepCmH2O, fio2,
                limitCmH2O, flowTriggerLPerMin, pressureTriggerCmH2O, cycleOffShare, biasFlowLPerMin, backupAfterS, flowEndShare);
    }

    public BreathSettings withMode(Mode other) {
        return new BreathSettings(other, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, pressureAbovePeepCmH2O, supportAbovePeepCmH2O, riseS, peepCmH2O, fio2,
                pressureLimitCmH2O, flowTriggerLPerMin, pressureTriggerCmH2O, cycleOffShare, biasFlowLPerMin, backupAfterS, flowEndShare);
    }

    public BreathSettings withPeep(double peep) {
        return new BreathSettings(mode, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, pressureAbovePeepCmH2O, supportAbovePeepCmH2O, riseS, peep, fio2,
                pressureLimitCmH2O, flowTriggerLPerMin, pressureTriggerCmH2O, cycleOffShare, biasFlowLPerMin, backupAfterS, flowEndShare);
    }

    public BreathSettings withFlowEnd(double share) {
        return new BreathSettings(mode, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, pressureAbovePeepCmH2O, supportAbovePeepCmH2O, riseS, peepCmH2O, fio2,
                pressureLimitCmH2O, flowTriggerLPerMin, pressureTriggerCmH2O, cycleOffShare, biasFlowLPerMin, backupAfterS, share);
    }

    public BreathSettings withTriggers(double flowLPerMin, double pressureCmH2O) {
        return new BreathSettings(mode, tidalVolumeMl, ratePerMin, inspiratoryTimeS, pauseS, pressureAbovePeepCmH2O, supportAbovePeepCmH2O, riseS, peepCmH2O, fio2,
                pressureLimitCmH2O, flowLPerMin, pressureCmH2O, cycleOffShare, biasFlowLPerMin, backupAfterS, flowEndShare);
    }

    /** Apnoea backup: after this long without a breath, mandatory breaths of this rate, time and pressure. */
    public BreathSettings withBackup(double afterS, double rate, double inspiratoryTime, double abovePeep) {
        return new BreathSettings(mode, tidalVolumeMl, rate, inspiratoryTime, pauseS, abovePeep, supportAbovePeepCmH2O, riseS, peepCmH2O, fio2,
                pressureLimitCmH2O, flowTriggerLPerMin, pressureTriggerCmH2O, cycleOffShare, biasFlowLPerMin, afterS, flowEndShare);
    }
}
