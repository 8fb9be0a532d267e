package leeway.core.transport;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Settings;

/** A planned act; times from the start of the journey. */
public record Event(double atMin, Settings set, OptionalDouble forS, Optional<String> changeOver) { }
