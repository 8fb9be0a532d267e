package leeway.core.rehearsal;

import java.util.OptionalDouble;
import leeway.core.rehearsal.Rehearsal.Coverage;

/** Two faults at once, each covered alone, together not: one hides the alarm of the other, or leaves less time. */
public record Pair(String first, String second, Coverage coverage, OptionalDouble marginS, String why) { }
