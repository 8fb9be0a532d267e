package leeway.core.transport;

import java.util.Optional;
import leeway.core.kit.Battery;

/**
 * Something that holds or gives charge: a battery, or mains.
 *
 * @param after name of the battery that this one follows when that is empty
 */
public record PowerStore(String name, boolean mains, Optional<Battery> battery, double charge, double ageYears, int cycles, Optional<String> after) {
    /** One that follows no other. */
    public PowerStore(String name, boolean mains, Optional<Battery> battery, double charge, double ageYears, int cycles) {
        this(name, mains, battery, charge, ageYears, cycles, Optional.empty());
    }
}
