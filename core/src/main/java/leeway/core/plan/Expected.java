package leeway.core.plan;

import java.util.OptionalDouble;

/**
 * What is expected of a patient on these settings; absent where the model does not know it (a test lung has no gases).
 *
 * @param tidalVolumeMl          expired, BTPS
 * @param peakCmH2O              at the Y-piece, before filter and tube
 * @param plateauCmH2O           what an end-inspiratory hold would show
 * @param drivingCmH2O           plateau less total PEEP
 * @param autoPeepCmH2O          total PEEP less set PEEP
 * @param mechanicalPowerJPerMin with the share of PEEP in it
 * @param minuteVolumeLPerMin    expired, BTPS
 * @param spo2                   as the oximeter shows it
 */
public record Expected(OptionalDouble tidalVolumeMl, OptionalDouble peakCmH2O, OptionalDouble plateauCmH2O, OptionalDouble drivingCmH2O,
                       OptionalDouble autoPeepCmH2O, OptionalDouble meanCmH2O, OptionalDouble mechanicalPowerJPerMin, OptionalDouble minuteVolumeLPerMin,
                       OptionalDouble paco2MmHg, OptionalDouble etco2MmHg, OptionalDouble pao2MmHg, OptionalDouble spo2, OptionalDouble ph) {
    /** Where nobody breathes. */
    static final Expected NOTHING = nothing();

    private static Expected nothing() {
        OptionalDouble n = OptionalDouble.empty();
        return new Expected(n, n, n, n, n, n, n, n, n, n, n, n, n);
    }

    /** A number that may not be known: {@code NaN} is absent. */
    public static OptionalDouble known(double value) { return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty(); }
}
