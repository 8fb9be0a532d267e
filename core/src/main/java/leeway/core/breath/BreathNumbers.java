package leeway.core.breath;

/**
 * The numbers of a breath in the cyclic steady state: what comes in goes out, leaks included. Volumes BTPS.
 *
 * @param inspiredMl               into the patient at the airway opening
 * @param expiredMl                out of the patient at the airway opening
 * @param inspiredAtVentilatorMl   delivered by the ventilator, compression and circuit leak included
 * @param peakCmH2O                at the Y-piece, before filter and tube
 * @param plateauCmH2O             alveolar pressure at the end of inspiration: what an end-inspiratory hold would show
 * @param drivingCmH2O             plateau less total PEEP
 * @param peepCmH2O                total PEEP, alveolar
 * @param autoPeepCmH2O            total PEEP less set PEEP
 * @param trappedMl                volume held back by expiration cut short
 * @param meanCmH2O                mean airway pressure
 * @param transpulmonaryCmH2O      plateau less pleural pressure
 * @param energyJ                  energy of the ventilator into the patient in one inspiration, PEEP's share included
 * @param mechanicalPowerJPerMin   the same a minute
 * @param targetAbovePeepCmH2O     inspiratory pressure above PEEP of a pressure-controlled inflation
 * @param pressureLimited          the pressure limit or the device's own was reached
 * @param volumeNotReached         the set or target volume was not delivered
 * @param shuntAdded               what lung that closed since the sheet's pressures adds to the shunt
 */
public record BreathNumbers(double inspiredMl, double expiredMl, double inspiredAtVentilatorMl, double ratePerMin, double inspiratoryTimeS, double expiratoryTimeS,
        double peakCmH2O, double plateauCmH2O, double drivingCmH2O, double peepCmH2O, double autoPeepCmH2O, double trappedMl, double meanCmH2O,
        double transpulmonaryCmH2O, double peakFlowLPerMin, double peakExpiratoryFlowLPerMin, double energyJ, double mechanicalPowerJPerMin,
        double targetAbovePeepCmH2O, boolean pressureLimited, boolean volumeNotReached, double shuntAdded) {
    /** Of a lung that neither opens nor closes. */
    public BreathNumbers(double inspiredMl, double expiredMl, double inspiredAtVentilatorMl, double ratePerMin, double inspiratoryTimeS, double expiratoryTimeS,
            double peakCmH2O, double plateauCmH2O, double drivingCmH2O, double peepCmH2O, double autoPeepCmH2O, double trappedMl, double meanCmH2O,
            double transpulmonaryCmH2O, double peakFlowLPerMin, double peakExpiratoryFlowLPerMin, double energyJ, double mechanicalPowerJPerMin,
            double targetAbovePeepCmH2O, boolean pressureLimited, boolean volumeNotReached) {
        this(inspiredMl, expiredMl, inspiredAtVentilatorMl, ratePerMin, inspiratoryTimeS, expiratoryTimeS, peakCmH2O, plateauCmH2O, drivingCmH2O, peepCmH2O, autoPeepCmH2O,
                trappedMl, meanCmH2O, transpulmonaryCmH2O, peakFlowLPerMin, peakExpiratoryFlowLPerMin, energyJ, mechanicalPowerJPerMin, targetAbovePeepCmH2O, pressureLimited,
                volumeNotReached, 0);
    }

    /** Expired minute volume, BTPS. */
    public double minuteVolumeLPerMin() {
        return expiredMl * ratePerMin / 1000;
    }
}
