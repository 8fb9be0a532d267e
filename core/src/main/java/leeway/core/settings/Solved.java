package leeway.core.settings;

import java.util.List;
import java.util.OptionalDouble;
import leeway.core.kit.Setting;

/**
 * Settings that keep the strategy's targets on the model, or come as near as they can.
 *
 * @param suggested the settings with their reasons
 * @param kept      every target with its value, in the strategy's order
 * @param conflicts what cannot be kept and why; none: all targets are kept
 */
public record Solved(Suggested suggested, List<Kept> kept, List<Conflict> conflicts) {
    public Solved {
        kept = List.copyOf(kept);
        conflicts = List.copyOf(conflicts);
    }

    /** A target at the chosen settings; {@code miss} is how far outside it lies, in the measure's unit, 0 inside. */
    public record Kept(Measure measure, OptionalDouble from, OptionalDouble to, OptionalDouble value, double miss) {
        /** "7.30 to 7.45", "at most 30 cmH2O", "at least 92 %". */
        public String wanted() {
            if (from.isPresent() && to.isPresent()) return Shown.bare(measure, from.getAsDouble()) + " to " + Shown.of(measure, to.getAsDouble());
            return to.isPresent() ? "at most " + Shown.of(measure, to.getAsDouble()) : "at least " + Shown.of(measure, from.orElse(Double.NaN));
        }
    }

    /**
     * A target that is given up, and what stands against it.
     *
     * @param missed   the target given up, at the chosen settings
     * @param against  targets that outrank it and would be broken if it were kept, at the settings that would keep it
     * @param held     prescribed settings without which it could be kept
     * @param sentence the same for a reader
     */
    public record Conflict(Kept missed, List<Kept> against, List<Setting> held, String sentence) {
        public Conflict {
            against = List.copyOf(against);
            held = List.copyOf(held);
        }
    }
}
