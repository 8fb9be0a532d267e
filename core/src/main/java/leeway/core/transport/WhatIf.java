package leeway.core.transport;

import java.util.Optional;
import java.util.OptionalDouble;

/** A fault or a thought experiment of the file; never part of the plan. */
public record WhatIf(double atMin, Optional<String> fault, Optional<Apnoea> apnoea, OptionalDouble forS) {
    /** What the airway is open to while nobody breathes. */
    public enum Apnoea { CLOSED, AIR, OXYGEN }
}
