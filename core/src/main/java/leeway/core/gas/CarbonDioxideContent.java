package leeway.core.gas;

/**
 * Carbon dioxide in blood in all its forms.
 * <p>Douglas, Jones & Reed, J Appl Physiol 1988;65:473. Made for pH 7.0 to 7.7; above pH 7.8 the cells' share is held, since
 * the printed formula has a pole at 8.142.
 */
public final class CarbonDioxideContent {
    /** From here on the ratio of blood to plasma is held. */
    static final double HELD_ABOVE_PH = 7.8;

    private CarbonDioxideContent() {
    }

    /** Solubility in plasma, mmol/L/mmHg. */
    static double solubility(double temperatureCel) {
        double below = 37 - temperatureCel;
        return 0.0307 + 0.00057 * below + 0.00002 * below * below;
    }

    /** The apparent pK of carbonic acid. */
    static double pk(double ph, double temperatureCel) {
        return 6.086 + 0.042 * (7.4 - ph) + (38 - temperatureCel) * (0.00472 + 0.00139 * (7.4 - ph));
    }

    /** Content of plasma, mL/dL: 2.226·s·PCO2·(1+10^(pH−pK')). */
    public static double plasmaMlPerDl(double pco2MmHg, double ph, double temperatureCel) {
        return 2.226 * solubility(temperatureCel) * pco2MmHg * (1 + StrictMath.pow(10, ph - pk(ph, temperatureCel)));
    }

    /** Content of whole blood, mL/dL: plasma·(1 − 0.0289·Hb/((3.352−0.456·S)·(8.142−pH))), haemoglobin in g/dL. */
    public static double mlPerDl(double pco2MmHg, double ph, double haemoglobinGPerDl, double saturation, double temperatureCel) {
        double held = Math.min(ph, HELD_ABOVE_PH);
        return plasmaMlPerDl(pco2MmHg, ph, temperatureCel) * (1 - 0.0289 * haemoglobinGPerDl / ((3.352 - 0.456 * saturation) * (8.142 - held)));
    }
}
