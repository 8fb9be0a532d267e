package leeway.core.rehearsal;

import leeway.core.run.Draw;

/** From the alarm to the remedy: a lognormal time, by its median and its 95th percentile, s, with its source. */
public record CrewTime(double medianS, double atWorstS, String source) {
    public CrewTime {
        if (!(medianS > 0 && atWorstS >= medianS)) throw new IllegalArgumentException("crew time %s s, at worst %s s".formatted(medianS, atWorstS));
    }

    /** The time of this draw; the same for all faults, kits and legs of a draw that share the fault's name. */
    public double drawnS(Draw draw, String fault) {
        return draw.lognormal("crew time of " + fault, medianS, atWorstS);
    }
}
