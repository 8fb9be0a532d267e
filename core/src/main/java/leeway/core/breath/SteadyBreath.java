package leeway.core.breath;

/**
 * The cyclic steady state of a patient on a ventilator: the breath that repeats itself.
 * <p>What plan, map and settings take their pressures from.
 */
public final class SteadyBreath {
    private SteadyBreath() { }

    /** The numbers of the breath that repeats itself; a passive patient. */
    public static BreathNumbers of(Mechanics mechanics, BreathSettings settings, DeviceLimits device) {
        return ClosedForm.steady(mechanics, settings);
    }
}
