package leeway.core.transport;

import java.util.Optional;
import leeway.core.kit.Battery;

/** Something that holds or gives charge: a battery, or mains. */
public record PowerStore(String name, boolean mains, Optional<Battery> battery, double charge, double ageYears, int cycles) { }
