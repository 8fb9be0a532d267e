package leeway.core.lung;

/**
 * A resistance that grows with flow: pressure drop = K1 F + K2 F |F|. Leaves out inertia and the bend's history.
 * <p>Rohrer 1915. The same in both directions.
 *
 * @param k1CmH2OSPerL   linear part
 * @param k2CmH2OS2PerL2 quadratic part
 */
public record Rohrer(double k1CmH2OSPerL, double k2CmH2OS2PerL2) {
    public static final Rohrer NONE = new Rohrer(0, 0);

    public Rohrer {
        if (!(k1CmH2OSPerL >= 0 && k2CmH2OS2PerL2 >= 0) || Double.isInfinite(k1CmH2OSPerL + k2CmH2OS2PerL2)) {
            throw new IllegalArgumentException("Rohrer's K1 (%s) and K2 (%s) must be finite and not negative".formatted(k1CmH2OSPerL, k2CmH2OS2PerL2));
        }
    }

    /** Pressure drop in cmH2O at this flow in L/s; negative for a negative flow. */
    public double dropCmH2O(double flowLPerS) {
        return (k1CmH2OSPerL + k2CmH2OS2PerL2 * Math.abs(flowLPerS)) * flowLPerS;
    }

    public Rohrer times(double factor) {
        return new Rohrer(k1CmH2OSPerL * factor, k2CmH2OS2PerL2 * factor);
    }
}
