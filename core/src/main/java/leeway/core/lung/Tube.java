package leeway.core.lung;

/**
 * The pressure that an airway tube costs. Leaves out secretions, kinks and the swivel's geometry, which the multiplier
 * stands for; trust it to ±25 %.
 * <p>Turbulent flow in a smooth straight pipe after Blasius, times {@link #FITTED} for bend, entry and connector of an
 * oral tube; where laminar flow in the curved tube costs more (small tubes, small flows), that instead. For the breath it
 * is fitted once by a {@link Rohrer} quadratic.
 *
 * @param diameterMm inner diameter
 * @param lengthCm   cut length
 */
public record Tube(double diameterMm, double lengthCm) {
    /** 1 cmH2O in Pa: conventional water and gravity, exact by definition. */
    private static final double PA_PER_CMH2O = 98.0665;
    /** Density of air at 37 °C, saturated, 1013 hPa; kg/m3. From memory. */
    public static final double DENSITY_KG_PER_M3 = 1.11;
    /** Viscosity of air at 37 °C; Pa.s. From memory. */
    private static final double VISCOSITY_PA_S = 1.9e-5;
    /**
     * Pressure of an oral tube with connector over that of a straight smooth pipe: 2.0 ± 0.5. Preformed nasal tubes of 6.0
     * and 7.5 mm measured 2.5 to 2.7 (Futagawa, BMC Anesthesiol 2017: 8.9 and 2.88 cmH2O at 30 L/min, tube and slip
     * joint); a bare straight tube has 1.0 to 1.3.
     */
    public static final double FITTED = 2.0;
    /** Radius of a tube's bend, m; common practice, no source (a preformed adult tube lies on a circle of about 14 cm radius). */
    private static final double BEND_RADIUS_M = 0.14;
    private static final int FIT_POINTS = 200;

    public Tube {
        if (!(diameterMm >= 1.5 && diameterMm <= 25)) throw new IllegalArgumentException("tube of " + diameterMm + " mm: inner diameters from 1.5 to 25 mm are known");
        if (!(lengthCm >= 2 && lengthCm <= 60)) throw new IllegalArgumentException("tube of " + lengthCm + " cm: lengths from 2 to 60 cm are known");
    }

    /** Straight smooth pipe, turbulent: 0.2414 rho^0.75 mu^0.25 L Q^1.75 D^-4.75 in SI (Blasius; Jarreau, J Appl Physiol 1999;87:36). */
    public double straightTurbulentCmH2O(double flowLPerS, double densityKgPerM3) {
        double q = Math.abs(flowLPerS) * 1e-3, d = diameterMm * 1e-3, l = lengthCm * 1e-2;
        double pa = 0.2414 * StrictMath.pow(densityKgPerM3, 0.75) * StrictMath.pow(VISCOSITY_PA_S, 0.25) * l
                * StrictMath.pow(q, 1.75) * StrictMath.pow(d, -4.75);
        return Math.copySign(pa / PA_PER_CMH2O, flowLPerS);
    }

    /** Laminar: Poiseuille, times Ito's factor (1959, after Jarreau 1999) 21.5 De / (1.56 + log10 De)^5.73 of a bend, 13.5 &lt; De &lt; 2000. */
    public double curvedLaminarCmH2O(double flowLPerS, double densityKgPerM3) {
        double q = Math.abs(flowLPerS) * 1e-3, d = diameterMm * 1e-3, l = lengthCm * 1e-2;
        double straight = 128 * VISCOSITY_PA_S * l * q / (StrictMath.PI * d * d * d * d);
        double reynolds = 4 * densityKgPerM3 * q / (StrictMath.PI * d * VISCOSITY_PA_S);
        double dean = Math.min(2000, reynolds * StrictMath.sqrt(d / (2 * BEND_RADIUS_M)));
        double bend = dean <= 13.5 ? 1 : Math.max(1, 21.5 * dean / StrictMath.pow(1.56 + StrictMath.log10(dean), 5.73));
        return Math.copySign(straight * bend / PA_PER_CMH2O, flowLPerS);
    }

    /** The drop at a flow, by the law that costs more. */
    public double dropCmH2O(double flowLPerS, double densityKgPerM3) {
        double turbulent = FITTED * straightTurbulentCmH2O(flowLPerS, densityKgPerM3);
        double laminar = curvedLaminarCmH2O(flowLPerS, densityKgPerM3);
        return Math.abs(turbulent) > Math.abs(laminar) ? turbulent : laminar;
    }

    /** The drop at a flow, in air. */
    public double dropCmH2O(double flowLPerS) {
        return dropCmH2O(flowLPerS, DENSITY_KG_PER_M3);
    }

    /** The flow up to which the quadratic is fitted: 1 L/s in a tube of 7.5 mm, the same gas speed in others. */
    public double fittedToLPerS() {
        return diameterMm * diameterMm / (7.5 * 7.5);
    }

    /** The quadratic that fits the drop best (least squares over {@link #fittedToLPerS}), K1 and K2 not negative. */
    public Rohrer rohrer(double densityKgPerM3) {
        double top = fittedToLPerS(), s2 = 0, s3 = 0, s4 = 0, r1 = 0, r2 = 0;
        for (int i = 1; i <= FIT_POINTS; i++) {
            double q = top * i / FIT_POINTS, p = dropCmH2O(q, densityKgPerM3);
            s2 += q * q;
            s3 += q * q * q;
            s4 += q * q * q * q;
            r1 += p * q;
            r2 += p * q * q;
        }
        double det = s2 * s4 - s3 * s3, k1 = (r1 * s4 - r2 * s3) / det, k2 = (r2 * s2 - r1 * s3) / det;
        if (k1 < 0) return new Rohrer(0, r2 / s4);
        return k2 < 0 ? new Rohrer(r1 / s2, 0) : new Rohrer(k1, k2);
    }

    /** The quadratic for air. */
    public Rohrer rohrer() {
        return rohrer(DENSITY_KG_PER_M3);
    }
}
