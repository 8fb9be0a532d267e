package leeway.core.breath;

import java.util.ArrayList;
import java.util.List;

/**
 * Where patient and ventilator miss each other, breath by breath. Judged from the muscles themselves, which a clinician does
 * not see: what a curve on paper shows of it is less.
 * <p>Definitions by muscle pressure: Crit Care 2023, article s13054-023-04414-9, table 1 (read); double triggering also by the
 * short expiration of Thille, Intensive Care Med 2006, as quoted in Crit Care, article cc13063, table 1 (read). Leaves out
 * reverse triggering.
 */
public enum Asynchrony {
    /** An effort that started no inflation. */
    INEFFECTIVE("ineffective effort"),
    /** Two inflations in one effort; or a second one after less than half of a mean inspiratory time, the first being the patient's. */
    DOUBLE("double triggering"),
    /** An inflation that neither clock nor effort asked for. */
    FALSE("false triggering"),
    /** The inflation ends before the effort's peak. */
    EARLY("early cycling"),
    /** The inflation lasts beyond the end of the effort. */
    LATE("late cycling");

    private final String words;

    Asynchrony(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Its bit in {@code Column.ASYNCHRONY}. */
    int bit() {
        return 1 << ordinal();
    }

    /** What a column's sum of bits means. */
    public static List<Asynchrony> of(double sum) {
        List<Asynchrony> all = new ArrayList<>();
        for (Asynchrony a : values()) if (sum > 0 && ((int) sum & a.bit()) != 0) all.add(a);
        return List.copyOf(all);
    }
}
