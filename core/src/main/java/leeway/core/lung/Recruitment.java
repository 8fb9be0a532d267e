package leeway.core.lung;

/**
 * Lung that opens and closes: which share of it is open, and how fast that changes. Leaves out gravity, absorption of gas
 * behind closed airways, and units whose opening and closing pressures do not go together.
 * <p>Units open above a pressure of their own and stay open until it falls below another, lower one; both are spread as a
 * bell (Crotti, Am J Respir Crit Care Med 2001;164:131: normal, opening with its mode at 20, closing at 5 cmH2O, five patients).
 * The unit that opens last closes first, so the open share is one number r. The bell is the logistic one of the same standard
 * deviation, nowhere further than 0.023 from the normal. Above the opening pressure of the next unit r rises towards the share
 * that this pressure opens, with {@code openingS}; below the closing pressure of the last one it falls towards the share that
 * this pressure keeps open, with {@code closingS}; between the two it stays, which is the hysteresis.
 * <p>Pressures are those of lung and usual chest wall together, as at the airway of a relaxed patient at rest.
 *
 * @param share         of the lung that can open and close, 0 to 0.95; 0 none
 * @param openingCmH2O  mode of the opening pressures
 * @param openingSdCmH2O their standard deviation
 * @param closingCmH2O  mode of the closing pressures
 * @param closingSdCmH2O their standard deviation
 * @param openingS      time constant of opening; 2.3 ± 1.3 s in a sustained inflation of 40 cmH2O (Arnal, Intensive Care Med 2011;37:1588)
 * @param closingS      time constant of closing; oxygenation is in its new state 5 min after PEEP is lowered (Chiumello, Intensive Care Med 2013;39:1377)
 * @param shuntPerShare what the shunt gains per share of the lung that closes; 0: the shunt does not follow
 * @param atPeepCmH2O   PEEP at which compliance and shunt of the sheet hold
 * @param atPlateauCmH2O plateau at which they hold
 */
public record Recruitment(double share, double openingCmH2O, double openingSdCmH2O, double closingCmH2O, double closingSdCmH2O, double openingS, double closingS,
        double shuntPerShare, double atPeepCmH2O, double atPlateauCmH2O) {
    public static final Recruitment NONE = new Recruitment(0, 20, 9, 5, 4, 2.3, 60, 0, 10, 25);
    /** Scale of a logistic distribution over its standard deviation: root of 3 over pi. */
    private static final double PER_SD = 0.5513288954217921;

    public Recruitment {
        if (!(share >= 0 && share <= 0.95 && openingSdCmH2O > 0 && closingSdCmH2O > 0 && openingS > 0 && closingS > 0 && shuntPerShare >= 0 && shuntPerShare <= 1)
                || !(closingCmH2O <= openingCmH2O) || !(atPeepCmH2O <= atPlateauCmH2O)) {
            throw new IllegalArgumentException("recruitment: share %s, opening %s ± %s, closing %s ± %s cmH2O, %s and %s s, shunt %s, held at %s to %s cmH2O".formatted(share,
                    openingCmH2O, openingSdCmH2O, closingCmH2O, closingSdCmH2O, openingS, closingS, shuntPerShare, atPeepCmH2O, atPlateauCmH2O));
        }
    }

    public Recruitment withShare(double other) {
        return new Recruitment(other, openingCmH2O, openingSdCmH2O, closingCmH2O, closingSdCmH2O, openingS, closingS, shuntPerShare, atPeepCmH2O, atPlateauCmH2O);
    }

    public Recruitment withOpening(double other) {
        return new Recruitment(share, other, openingSdCmH2O, closingCmH2O, closingSdCmH2O, openingS, closingS, shuntPerShare, atPeepCmH2O, atPlateauCmH2O);
    }

    public Recruitment withClosing(double other) {
        return new Recruitment(share, openingCmH2O, openingSdCmH2O, other, closingSdCmH2O, openingS, closingS, shuntPerShare, atPeepCmH2O, atPlateauCmH2O);
    }

    /** Share that this pressure opens, given time. */
    public double opened(double pressureCmH2O) {
        return bell((pressureCmH2O - openingCmH2O) / (openingSdCmH2O * PER_SD));
    }

    /** Share that this pressure keeps open. */
    public double kept(double pressureCmH2O) {
        return bell((pressureCmH2O - closingCmH2O) / (closingSdCmH2O * PER_SD));
    }

    /** Change of the open share, 1/s. */
    public double rate(double open, double pressureCmH2O) {
        double up = opened(pressureCmH2O) - open;
        if (up > 0) return up / openingS;
        double down = kept(pressureCmH2O) - open;
        return down < 0 ? down / closingS : 0;
    }

    /** Where compliance and shunt of the sheet hold: what the plateau opens, as far as the PEEP keeps it. */
    public double reference() {
        return Math.min(opened(atPlateauCmH2O), kept(atPeepCmH2O));
    }

    /** The whole lung that takes part at this open share, over that of the sheet. */
    public double lungTimes(double open) {
        return lungTimes(open, reference());
    }

    /** The same, of who keeps the {@link #reference}. */
    public double lungTimes(double open, double reference) {
        return (1 - share + share * open) / (1 - share + share * reference);
    }

    /** The pressure that opens no more than this share, given time; infinite at its ends. */
    public double opensAt(double open) {
        return openingCmH2O + openingSdCmH2O * PER_SD * logit(open);
    }

    /** The pressure that keeps just this share open. */
    public double keepsAt(double open) {
        return closingCmH2O + closingSdCmH2O * PER_SD * logit(open);
    }

    private static double logit(double share) {
        return share <= 0 ? Double.NEGATIVE_INFINITY : share >= 1 ? Double.POSITIVE_INFINITY : Exponentials.log(share / (1 - share));
    }

    /** What is added to the sheet's shunt. */
    public double shuntAdded(double open) {
        return shuntPerShare * share * (reference() - open);
    }

    private static double bell(double x) {
        return x > 700 ? 1 : 1 / (1 + Exponentials.of(-x));
    }
}
