package leeway.core.breath;

import leeway.core.lung.Recruitment;

/**
 * How fast the open share of a lung changes, without an exponential where it surely does not: between the pressure that would
 * open more and the one that would close some, both known for a share nearby. Says exactly what {@link Recruitment#rate} says.
 */
final class OpeningRate {
    /** Shares that lie closer together are nearby. */
    private static final double NEAR = 1e-3;
    private final Recruitment recruitment;
    private double known = Double.NaN, opensAbove, closesBelow;

    OpeningRate(Recruitment recruitment) { this.recruitment = recruitment; }

    /** Change of the open share, 1/s. */
    double at(double open, double pressureCmH2O) {
        if (!(Math.abs(open - known) < NEAR)) {
            known = open;
            opensAbove = recruitment.opensAt(open - 2 * NEAR);
            closesBelow = recruitment.keepsAt(open + 2 * NEAR);
        }
        return pressureCmH2O < opensAbove && pressureCmH2O > closesBelow ? 0 : recruitment.rate(open, pressureCmH2O);
    }
}
