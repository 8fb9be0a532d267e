package leeway.core.rehearsal;

import java.util.List;
import java.util.Optional;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.run.How;

/**
 * Something that goes wrong, as its sheet says: what changes, what is seen first, what the crew does, how long that takes.
 *
 * @param needs     without any of these it cannot happen with this kit
 * @param effects   what changes while it lasts; in force from the moment it strikes
 * @param remedy    what the remedy changes besides ending the effects
 * @param remedyEnds whether the remedy ends the effects at all (a drug does not end an illness at once)
 * @param with      another fault that it is rehearsed with, for one that harms nobody alone
 * @param priority  of acting on it
 * @param steps     what the crew does, in the order of what kills first
 */
public record Fault(String name, Group group, String firstSign, Priority priority, List<Need> needs, List<Effect> effects, List<Effect> remedy,
                    boolean remedyEnds, Optional<String> with, CrewTime crew, List<String> steps, String source) {
    public Fault {
        needs = List.copyOf(needs);
        effects = List.copyOf(effects);
        remedy = List.copyOf(remedy);
        steps = List.copyOf(steps);
        if (steps.isEmpty()) throw new IllegalArgumentException("fault \"%s\" says nothing to do".formatted(name));
    }

    /** Whether it only takes gas or charge that is needed later, and touches neither patient nor ventilation at once. */
    public boolean drains() {
        return !effects.isEmpty() && effects.stream().allMatch(e -> switch (e.knob()) {
            case EXTRA_DRAIN, MAINS, CHARGING, DRAINED, SOAKED, SILENCED -> true;
            case FIO2_SET -> group == Group.SUPPLY && e.how() == How.SET && e.value() > 0.9;
            default -> false;
        });
    }

    /** What it is about. */
    public enum Group { CIRCUIT, AIRWAY, LUNGS, BLOOD, SUPPLY, POWER, DEVICE, SENSOR, PEOPLE;

        public String words() { return name().toLowerCase(java.util.Locale.ROOT); }
    }
}
