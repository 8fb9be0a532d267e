package leeway.core.supply;

/**
 * What a patient on a ventilator needs during one leg: enough to work out oxygen and load.
 *
 * @param minuteVolumeLPerMin what reaches the patient, on the ventilator's volume basis (BTPS unless its sheet says otherwise)
 * @param leakLPerMin         lost at cuff and circuit and made up for, on the same basis
 * @param biasFlowLPerMin     continuous flow beside the breaths, free gas
 * @param ratePerMin          breaths; 0 where there are none
 * @param fio2                set fraction, 0.21 to 1
 * @param peakCmH2O           highest airway pressure of a breath: the gas is reckoned to be delivered at it (cautious)
 * @param peepCmH2O           pressure against which leak and bias flow run
 * @param ambientHPa          barometric pressure
 */
public record LegNeed(double minuteVolumeLPerMin, double leakLPerMin, double biasFlowLPerMin, double ratePerMin, double fio2,
                      double peakCmH2O, double peepCmH2O, double ambientHPa) {
    public LegNeed {
        if (!(minuteVolumeLPerMin >= 0 && leakLPerMin >= 0 && biasFlowLPerMin >= 0 && ratePerMin >= 0 && fio2 >= 0.2 && fio2 <= 1
                && ambientHPa > 100 && ambientHPa < 1200 && Double.isFinite(peakCmH2O + peepCmH2O))) {
            throw new IllegalArgumentException("a need of %s L/min, leak %s, bias flow %s, %s /min, FiO2 %s, %s and %s cmH2O, %s hPa".formatted(
                    minuteVolumeLPerMin, leakLPerMin, biasFlowLPerMin, ratePerMin, fio2, peakCmH2O, peepCmH2O, ambientHPa));
        }
    }

    public LegNeed withFio2(double other) {
        return new LegNeed(minuteVolumeLPerMin, leakLPerMin, biasFlowLPerMin, ratePerMin, other, peakCmH2O, peepCmH2O, ambientHPa);
    }

    public LegNeed withBiasFlowLPerMin(double other) {
        return new LegNeed(minuteVolumeLPerMin, leakLPerMin, other, ratePerMin, fio2, peakCmH2O, peepCmH2O, ambientHPa);
    }

    public LegNeed withLeakLPerMin(double other) {
        return new LegNeed(minuteVolumeLPerMin, other, biasFlowLPerMin, ratePerMin, fio2, peakCmH2O, peepCmH2O, ambientHPa);
    }

    public LegNeed withMinuteVolumeLPerMin(double other) {
        return new LegNeed(other, leakLPerMin, biasFlowLPerMin, ratePerMin, fio2, peakCmH2O, peepCmH2O, ambientHPa);
    }
}
