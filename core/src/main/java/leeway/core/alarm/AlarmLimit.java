package leeway.core.alarm;

import java.util.OptionalDouble;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;

/**
 * An alarm condition as it stands on a device during a journey.
 *
 * @param low              in the condition's unit; absent where the condition has no lower limit
 * @param high             in the condition's unit
 * @param conditionDelayS  from the measured value's crossing to the alarm condition
 * @param conditionBreaths breaths in a row that must cross it, beside the delay
 * @param generationDelayS from the alarm condition to the signal
 * @param rule             how the limits came about, in words
 */
public record AlarmLimit(AlarmCondition condition, From from, OptionalDouble low, OptionalDouble high, double conditionDelayS,
                         int conditionBreaths, double generationDelayS, Priority priority, boolean latching, String rule) {
    /** Which device speaks. */
    public enum From { VENTILATOR, MONITOR;

        public String words() { return this == VENTILATOR ? "ventilator" : "monitor"; }
    }

    /** As printed; empty where the condition has no limit. */
    public String unit() { return condition.unit(); }

    /** The same with its limits as wide as the device lets them: nothing that has a limit crosses it. */
    public AlarmLimit leftWide() {
        return new AlarmLimit(condition, from, OptionalDouble.empty(), OptionalDouble.empty(), conditionDelayS, conditionBreaths, generationDelayS,
                priority, latching, "left at its widest");
    }
}
