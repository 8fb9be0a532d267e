package leeway.core.transport;

import java.util.OptionalDouble;

/** What the file changes at an alarm; limits in the condition's unit. */
public record AlarmChange(OptionalDouble low, OptionalDouble high, OptionalDouble delayS, boolean off) { }
