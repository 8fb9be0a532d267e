package leeway.core.rehearsal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;

/**
 * One fault, rehearsed: the row that results show. Times are rounded to 0.1 s, and the margin is worked out from the rounded ones.
 *
 * @param leg          its worst leg; absent where it is not in this kit
 * @param alarm        the first that is heard, before harm
 * @param lateAlarm    the first that is heard, where that is after harm
 * @param harm         untreated
 * @param rescueByS    latest moment of the remedy that still prevents harm, after the fault; 0 where even at once is too late
 * @param margins      over the draws; absent without draws
 * @param near         without harm: the measure that came near to it
 * @param byLeg        every leg on which it was rehearsed, the worst one too
 */
public record Rehearsal(Fault fault, Optional<Moment> leg, Coverage coverage, Optional<Spoken> alarm, Optional<Spoken> lateAlarm, Optional<Harm> harm,
                        OptionalDouble rescueByS, double crewTimeS, OptionalDouble marginS, Optional<Margins> margins, String why, List<ByLeg> byLeg, Optional<Harm.Near> near) {
    public Rehearsal { byLeg = List.copyOf(byLeg); }

    /** Where and when the fault strikes. */
    public record Moment(int index, String name, double atS) {
        public double atMin() { return atS / 60; }
    }

    /** An alarm that is heard. */
    public record Spoken(AlarmCondition condition, AlarmLimit.From from, double afterS, Priority priority) { }

    /**
     * The margin over all draws; a draw without harm counts as more than any margin, a silent one as less.
     *
     * @param p50S absent where it is one of those
     */
    public record Margins(int draws, OptionalDouble p50S, OptionalDouble p05S, double uncoveredShare, double noHarmShare) { }

    /** The same fault on one leg. */
    public record ByLeg(Moment leg, Coverage coverage, Optional<Spoken> alarm, Optional<Harm> harm, OptionalDouble rescueByS, OptionalDouble marginS) { }

    /** What the margin means. */
    public enum Coverage {
        SILENT("silent"), TOO_LATE("too late"), IN_TIME("in time"), NO_HARM("no harm"), NOT_IN_THIS_KIT("not in this kit");

        private final String words;

        Coverage(String words) { this.words = words; }

        public String words() { return words; }

        public boolean uncovered() { return this == SILENT || this == TOO_LATE; }
    }

    /** True in time, false uncovered, absent where nothing had to be covered. */
    public Optional<Boolean> covered() {
        if (coverage == Coverage.IN_TIME) return Optional.of(true);
        return coverage.uncovered() ? Optional.of(false) : Optional.empty();
    }
}
