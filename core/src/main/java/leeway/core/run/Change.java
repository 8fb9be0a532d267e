package leeway.core.run;

/**
 * One layer: from a time to a time, a knob is set, multiplied or added to, at once or growing over a ramp.
 * <p>A change touches coefficients only, never state; when it ends, its layer is gone and what lies below it shows again.
 *
 * @param atS    when it begins; s from the start of the journey; may lie in the past
 * @param untilS when it ends; {@code Double.POSITIVE_INFINITY} for never
 * @param rampS  how long it takes to be in full force, linearly; 0 for at once
 * @param copy   which store or sensor; 0 for a knob of one copy
 */
public record Change(double atS, double untilS, double rampS, Knob knob, int copy, How how, double value) {
    public Change {
        if (!Double.isFinite(atS) || !(untilS >= atS) || !(rampS >= 0) || Double.isInfinite(rampS) || !Double.isFinite(value)) {
            throw new IllegalArgumentException("a change of %s from %s s until %s s, ramp %s s, value %s".formatted(knob, atS, untilS, rampS, value));
        }
        knob.slot(copy);
    }

    /** A lasting change at once. */
    public static Change at(double atS, Knob knob, How how, double value) {
        return new Change(atS, Double.POSITIVE_INFINITY, 0, knob, 0, how, value);
    }

    /** A change at once that ends. */
    public static Change during(double atS, double untilS, Knob knob, How how, double value) {
        return new Change(atS, untilS, 0, knob, 0, how, value);
    }

    /** The same change, ended at this time if it has not ended before; what a remedy does to a fault. */
    public Change endedAt(double endS) {
        return new Change(atS, Math.max(atS, Math.min(untilS, endS)), rampS, knob, copy, how, value);
    }
}
