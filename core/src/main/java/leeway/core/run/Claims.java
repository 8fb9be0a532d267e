package leeway.core.run;

import java.util.EnumSet;
import java.util.Set;

/** What a part asks for when a loop is built: room for its state, and the knobs it reads. */
public final class Claims {
    private int size;
    private final Set<Knob> knobs = EnumSet.noneOf(Knob.class);

    Claims() { }

    /** Room for this many doubles in {@link Now#y}; the answer is the offset of the first. */
    public int state(int doubles) {
        int offset = size;
        size += doubles;
        return offset;
    }

    /** These knobs are read: a run in which one of them has no value is refused by name. */
    public void reads(Knob... read) {
        knobs.addAll(Set.of(read));
    }

    int size() {
        return size;
    }

    Set<Knob> knobs() {
        return knobs;
    }
}
