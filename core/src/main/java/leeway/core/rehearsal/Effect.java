package leeway.core.rehearsal;

import java.util.List;
import java.util.Optional;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Sensor.Measured;
import leeway.core.run.How;
import leeway.core.run.Knob;

/**
 * One declared effect of a fault or of its remedy: a knob, how it changes, when and how fast.
 *
 * @param on      which copy of the knob: a store, a sensor, an alarm condition
 * @param value   in the knob's unit
 * @param from    instead of the value, what the journey says; the value holds where it says nothing
 * @param afterS  after the fault strikes (or the remedy is given)
 * @param rampS   how long it grows, linearly
 * @param forS    how long it lasts; infinite for as long as the fault
 * @param only    what the kit, the mode or the patient must have for this effect; the others of the fault hold all the same
 */
public record Effect(Knob knob, On on, How how, double value, FromJourney from, double afterS, double rampS, double forS, List<Need> only) {
    public Effect {
        only = List.copyOf(only);
        if (!(afterS >= 0 && rampS >= 0 && forS > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException("effect on %s: value %s, after %s s, over %s s, for %s s".formatted(knob, value, afterS, rampS, forS));
        }
    }

    /** At once, for as long as the fault, on a knob of one copy. */
    public static Effect of(Knob knob, How how, double value) {
        return new Effect(knob, On.ONLY, how, value, FromJourney.NOTHING, 0, 0, Double.POSITIVE_INFINITY, List.of());
    }

    /** Grows over this time. */
    public Effect over(double seconds) { return new Effect(knob, on, how, value, from, afterS, seconds, forS, only); }

    /** Which copies of a knob are meant. */
    public record On(Where where, Optional<From> device, Optional<Measured> sensor, Optional<AlarmCondition> condition) {
        public static final On ONLY = new On(Where.ONLY, Optional.empty(), Optional.empty(), Optional.empty());

        public static On stores(Where where) { return new On(where, Optional.empty(), Optional.empty(), Optional.empty()); }

        public static On sensor(From device, Measured sensor) { return new On(Where.SENSOR, Optional.of(device), Optional.of(sensor), Optional.empty()); }

        public static On condition(AlarmCondition condition) { return new On(Where.CONDITION, Optional.empty(), Optional.empty(), Optional.of(condition)); }
    }

    /** The kind of copy. */
    public enum Where { ONLY, STORE_IN_USE, STORES_OF_LEG, ALL, SENSOR, CONDITION }

    /** A value that only the journey knows. */
    public enum FromJourney { NOTHING,
        /** Barometric pressure at the aircraft's altitude of the leg. */
        AIRCRAFT_ALTITUDE
    }
}
