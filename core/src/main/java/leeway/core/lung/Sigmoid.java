package leeway.core.lung;

/**
 * A quasi-static pressure–volume curve: V = a + b / (1 + e^(-(P - c)/d)). Leaves out hysteresis, which is
 * {@link Recruitment}'s.
 * <p>Venegas, J Appl Physiol 1998;84:389, for lungs and whole respiratory systems, healthy and injured (R2 0.997 over their
 * data). Where the slope has fallen to a tenth of its largest, |P - c| above {@value #TAIL} d, the curve goes on as a straight
 * line, so that every volume has a pressure; what lies there is overdistension or collapse that no fit covers.
 *
 * @param lowestMl      a: volume of the lower asymptote
 * @param spanMl        b: between the asymptotes
 * @param inflectionCmH2O c: pressure of the steepest point
 * @param widthCmH2O    d: the middle four fifths of the volume lie within c ± 2.2 d
 */
public record Sigmoid(double lowestMl, double spanMl, double inflectionCmH2O, double widthCmH2O) {
    /** (P - c)/d at which the slope is a tenth of b/4d: z/(1+z)^2 = 1/40. */
    public static final double TAIL = 3.6368931;

    public Sigmoid {
        if (!(spanMl > 0 && widthCmH2O > 0) || !Double.isFinite(lowestMl + spanMl + inflectionCmH2O + widthCmH2O)) {
            throw new IllegalArgumentException("sigmoid with a %s, b %s mL, c %s, d %s cmH2O".formatted(lowestMl, spanMl, inflectionCmH2O, widthCmH2O));
        }
    }

    public double volumeMl(double pressureCmH2O) {
        return lowestMl + spanMl * share((pressureCmH2O - inflectionCmH2O) / widthCmH2O);
    }

    public double pressureCmH2O(double volumeMl) {
        return inflectionCmH2O + widthCmH2O * depth((volumeMl - lowestMl) / spanMl);
    }

    public double complianceMlPerCmH2O(double pressureCmH2O) {
        return spanMl / widthCmH2O * slope((pressureCmH2O - inflectionCmH2O) / widthCmH2O);
    }

    /** Where the tangent at the steepest point meets the lower asymptote: c - 2d. */
    public double lowerCornerCmH2O() {
        return inflectionCmH2O - 2 * widthCmH2O;
    }

    /** Where it meets the upper one: c + 2d. */
    public double upperCornerCmH2O() {
        return inflectionCmH2O + 2 * widthCmH2O;
    }

    /** 1 / (1 + e^-x), straight beyond the tails. */
    public static double share(double x) {
        if (x > TAIL) return TAIL_SHARE + (x - TAIL) * TAIL_SLOPE;
        if (x < -TAIL) return 1 - TAIL_SHARE + (x + TAIL) * TAIL_SLOPE;
        return 1 / (1 + Exponentials.of(-x));
    }

    /** The x of a share: ln(u / (1 - u)), straight beyond the tails. */
    public static double depth(double u) {
        if (u > TAIL_SHARE) return TAIL + (u - TAIL_SHARE) / TAIL_SLOPE;
        if (u < 1 - TAIL_SHARE) return -TAIL + (u - 1 + TAIL_SHARE) / TAIL_SLOPE;
        return Exponentials.log(u / (1 - u));
    }

    /** Whether the curve bends at this share, or is straight already. */
    public static boolean bends(double u) {
        return u <= TAIL_SHARE && u >= 1 - TAIL_SHARE;
    }

    /** The share at which it goes straight, at the upper or the lower end. */
    public static double kink(boolean upper) {
        return upper ? TAIL_SHARE : 1 - TAIL_SHARE;
    }

    /** Slope of {@link #depth} beyond the kinks. */
    public static double straightSlope() {
        return 1 / TAIL_SLOPE;
    }

    private static double slope(double x) {
        double u = share(Math.max(-TAIL, Math.min(TAIL, x)));
        return u * (1 - u);
    }

    /** Integral of {@link #depth} over u from 0.5: the elastic energy of a sigmoid, in units of b d. */
    public static double depthIntegral(double u) {
        double low = 1 - TAIL_SHARE;
        if (u > TAIL_SHARE) return depthIntegral(TAIL_SHARE) + (u - TAIL_SHARE) * (TAIL + 0.5 * (u - TAIL_SHARE) / TAIL_SLOPE);
        if (u < low) return depthIntegral(low) - (low - u) * (-TAIL - 0.5 * (low - u) / TAIL_SLOPE);
        return u * Exponentials.log(u) + (1 - u) * Exponentials.log(1 - u) + LN_2;
    }

    private static final double LN_2 = 0.6931471805599453;
    private static final double TAIL_SHARE = 1 / (1 + StrictMath.exp(-TAIL)), TAIL_SLOPE = TAIL_SHARE * (1 - TAIL_SHARE);
}
