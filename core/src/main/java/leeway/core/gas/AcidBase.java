package leeway.core.gas;

/**
 * pH, carbon dioxide tension, bicarbonate and base excess of blood.
 * <p>Van Slyke equation as fitted by Lang & Zander, Clin Chem Lab Med 2002;40:404, accurate to ±1 mmol/L. In the body, bicarbonate
 * spreads into the tissue fluid, so that acute hypercapnia lowers the pH by up to 0.03 more than this blood in a glass shows.
 */
public final class AcidBase {
    /** Solubility of carbon dioxide in plasma at 37 °C, mmol/L/mmHg. Lang & Zander 2002. */
    static final double SOLUBILITY = 0.0304;
    /** Apparent pK of carbonic acid at 37 °C. Lang & Zander 2002. */
    static final double PK = 6.1;
    /** Bicarbonate of plasma at pH 7.40 and 40 mmHg, mmol/L. Lang & Zander 2002. */
    static final double NORMAL_BICARBONATE = 24.26;

    private AcidBase() {
    }

    /** Bicarbonate, mmol/L: 0.0304·PCO2·10^(pH−6.1). Henderson 1908, Hasselbalch 1916. */
    public static double bicarbonateMmolL(double ph, double pco2MmHg) {
        return SOLUBILITY * pco2MmHg * StrictMath.pow(10, ph - PK);
    }

    /** pH of a bicarbonate (mmol/L) and a tension (mmHg). */
    public static double ph(double bicarbonateMmolL, double pco2MmHg) {
        return PK + StrictMath.log10(bicarbonateMmolL / (SOLUBILITY * pco2MmHg));
    }

    /** Base excess, mmol/L: (1−0.0143·Hb)·{[HCO3−24.26]+(9.5+1.63·Hb)·(pH−7.4)} − 0.2·Hb·(1−S), haemoglobin in g/dL. */
    public static double baseExcessMmolL(double ph, double pco2MmHg, double haemoglobinGPerDl, double saturation) {
        double hb = haemoglobinGPerDl;
        return (1 - 0.0143 * hb) * (bicarbonateMmolL(ph, pco2MmHg) - NORMAL_BICARBONATE + (9.5 + 1.63 * hb) * (ph - 7.4)) - 0.2 * hb * (1 - saturation);
    }

    /** The pH at a tension (mmHg) of blood whose base excess (mmol/L) is held; monotone, by bisection between 6.0 and 8.6. */
    public static double phOf(double pco2MmHg, double baseExcessMmolL, double haemoglobinGPerDl, double saturation) {
        double low = 6.0, high = 8.6;
        for (int i = 0; i < 60; i++) {
            double ph = 0.5 * (low + high);
            if (baseExcessMmolL(ph, pco2MmHg, haemoglobinGPerDl, saturation) > baseExcessMmolL) high = ph; else low = ph;
        }
        return 0.5 * (low + high);
    }

    /** The tension at a pH of blood whose base excess is held, mmHg; negative where no tension gives it. */
    public static double pco2MmHg(double ph, double baseExcessMmolL, double haemoglobinGPerDl, double saturation) {
        double hb = haemoglobinGPerDl;
        double bicarbonate = (baseExcessMmolL + 0.2 * hb * (1 - saturation)) / (1 - 0.0143 * hb) + NORMAL_BICARBONATE - (9.5 + 1.63 * hb) * (ph - 7.4);
        return bicarbonate / (SOLUBILITY * StrictMath.pow(10, ph - PK));
    }
}
