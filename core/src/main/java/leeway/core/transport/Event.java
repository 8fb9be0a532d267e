package leeway.core.transport;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Settings;

/**
 * A planned act; times from the start of the journey.
 *
 * @param use      what is driven with oxygen beside the ventilator meanwhile
 * @param sedation given then
 */
public record Event(double atMin, Settings set, OptionalDouble forS, Optional<String> changeOver, Optional<Use> use, Optional<Sedation> sedation) {
    /** An act that sedates nobody. */
    public Event(double atMin, Settings set, OptionalDouble forS, Optional<String> changeOver, Optional<Use> use) { this(atMin, set, forS, changeOver, use, Optional.empty()); }

    /** An act that drives nothing. */
    public Event(double atMin, Settings set, OptionalDouble forS, Optional<String> changeOver) { this(atMin, set, forS, changeOver, Optional.empty()); }

    /** Something that takes oxygen from the store in use, free gas, as long as it is open. */
    public record Use(String what, double flowLPerMin) { }
}
