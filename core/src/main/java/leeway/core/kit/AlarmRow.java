package leeway.core.kit;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An alarm condition that a device has: how its limits come about, how long it waits, how loud it is about it.
 *
 * @param conditionDelayS  from the measured value's crossing to the alarm condition
 * @param conditionBreaths breaths in a row that must cross it, beside the delay; 0 for at once
 * @param generationDelayS from the alarm condition to the signal
 * @param latching         whether the signal goes on after the condition ends
 */
public record AlarmRow(AlarmCondition condition, Priority priority, double conditionDelayS, int conditionBreaths, double generationDelayS,
                       boolean latching, Optional<LimitRule> low, Optional<LimitRule> high, String source) {
    /** IEC 60601-1-8. */
    public enum Priority { HIGH, MEDIUM, LOW }

    /**
     * How a limit follows: {@code times} × basis + {@code plus}, kept between {@code atLeast} and {@code atMost}; in the condition's unit.
     *
     * @param words the rule as a person reads it, "expected peak + 10 cmH2O, at most 40 cmH2O"
     */
    public record LimitRule(Basis basis, double times, double plus, OptionalDouble atLeast, OptionalDouble atMost, String words) { }

    /** What a limit starts from. */
    public enum Basis {
        FIXED, SET_TIDAL_VOLUME, SET_RATE, SET_PEEP, SET_FIO2, SET_PRESSURE_LIMIT, EXPECTED_PEAK, EXPECTED_PLATEAU, EXPECTED_TIDAL_VOLUME,
        EXPECTED_MINUTE_VOLUME, EXPECTED_END_TIDAL_CO2, EXPECTED_SATURATION, EXPECTED_RATE
    }
}
