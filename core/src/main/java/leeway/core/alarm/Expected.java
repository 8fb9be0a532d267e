package leeway.core.alarm;

/**
 * What is expected of the steady state that limits are set for; {@code NaN} where it is not known, and the limit is then absent.
 *
 * @param peakCmH2O     at the Y-piece, as {@code expected.peakCmH2O}
 * @param plateauCmH2O  what an end-inspiratory hold would show
 * @param tidalVolumeMl expired, at the patient's airway
 * @param minuteVolumeLPerMin expired
 * @param etco2MmHg     end-tidal
 * @param spo2          0 to 1, as the oximeter shows it
 * @param ratePerMin    all breaths
 */
public record Expected(double peakCmH2O, double plateauCmH2O, double tidalVolumeMl, double minuteVolumeLPerMin, double etco2MmHg,
                       double spo2, double ratePerMin) {
    /** Nothing is known. */
    public static final Expected NOTHING = new Expected(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
}
