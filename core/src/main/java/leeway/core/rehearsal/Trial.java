package leeway.core.rehearsal;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.rehearsal.Harm.Near;
import leeway.core.rehearsal.Rehearsal.Coverage;
import leeway.core.rehearsal.Rehearsal.Moment;
import leeway.core.rehearsal.Rehearsal.Spoken;

/**
 * One fault at one moment in one draw: what was found.
 *
 * @param toTheEnd whether gas and charge were followed to the end of the journey
 */
record Trial(Moment moment, Optional<Spoken> spoken, Optional<Harm> harm, OptionalDouble rescueByS, double crewTimeS, Optional<Near> near, boolean toTheEnd) {
    /** With less than this share of its room left a measure has come near; a branch that ended early says nothing of more. */
    private static final double NEAR_SHARE = 0.3;

    Trial {
        crewTimeS = tenth(crewTimeS);
        spoken = spoken.map(s -> new Spoken(s.condition(), s.from(), tenth(s.afterS()), s.priority()));
        harm = harm.map(h -> new Harm(h.measure(), h.threshold(), tenth(h.afterS())));
        // never later than it is
        rescueByS = rescueByS.isPresent() ? OptionalDouble.of(Math.floor(rescueByS.getAsDouble() * 10 + 1e-9) / 10) : rescueByS;
    }

    /** Nothing harmed. */
    static Trial harmless(Moment moment, Optional<Spoken> spoken, double crewTimeS, Watch watch, boolean toTheEnd) {
        boolean near = watch.nearest != null && watch.nearestShare < NEAR_SHARE;
        return new Trial(moment, spoken, Optional.empty(), OptionalDouble.empty(), crewTimeS, near ? Optional.of(new Near(watch.nearest, watch.nearestValue, watch.nearestShare)) : Optional.empty(), toTheEnd);
    }

    private static double tenth(double seconds) { return Math.rint(seconds * 10) / 10; }

    /** Heard before harm, or without any harm. */
    Optional<Spoken> alarm() { return spoken.filter(s -> harm.isEmpty() || s.afterS() < harm.get().afterS()); }

    Optional<Spoken> lateAlarm() { return spoken.filter(s -> alarm().isEmpty()); }

    OptionalDouble marginS() {
        if (harm.isEmpty() || alarm().isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(tenth(rescueByS.orElse(0) - alarm().get().afterS() - crewTimeS));
    }

    Coverage coverage() {
        if (harm.isEmpty()) return Coverage.NO_HARM;
        OptionalDouble margin = marginS();
        if (margin.isEmpty()) return Coverage.SILENT;
        return margin.getAsDouble() >= 0 ? Coverage.IN_TIME : Coverage.TOO_LATE;
    }

    /** Worst first: silent by the time to harm, then by margin, then by how near harm came. */
    static int worseFirst(Trial a, Trial b) {
        int byCoverage = a.coverage().compareTo(b.coverage());
        if (byCoverage != 0) return byCoverage;
        return switch (a.coverage()) {
            case SILENT -> Double.compare(a.harm.orElseThrow().afterS(), b.harm.orElseThrow().afterS());
            case TOO_LATE, IN_TIME -> Double.compare(a.marginS().orElseThrow(), b.marginS().orElseThrow());
            case NO_HARM, NOT_IN_THIS_KIT -> {
                int byRoom = Double.compare(a.near.map(Near::share).orElse(1.0), b.near.map(Near::share).orElse(1.0));
                yield byRoom != 0 ? byRoom : Double.compare(a.moment.atS(), b.moment.atS());
            }
        };
    }

    /** The margin as a number that sorts: less than any where silent, more than any without harm. */
    double sortable() {
        return switch (coverage()) {
            case SILENT -> Double.NEGATIVE_INFINITY;
            case NO_HARM, NOT_IN_THIS_KIT -> Double.POSITIVE_INFINITY;
            default -> marginS().orElseThrow();
        };
    }
}
