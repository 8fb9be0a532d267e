package leeway.core.gas;

/** Oxygen in blood, bound and dissolved, and what is carried. */
public final class OxygenContent {
    /** Oxygen bound by a gram of saturated haemoglobin, mL. Measured 1.368 in the mean, 1.322 to 1.387 in 36 men (Dijkhuizen, Pflügers Arch 1977;369:223, abstract); 1.34 (Hüfner 1894, as textbooks have it) is the cautious one. */
    public static final double ML_PER_G = 1.34;
    /** Oxygen dissolved in 1 dL of blood per mmHg at 37 °C, mL. Textbook value 0.003 to 0.0031 (a clinical algorithm collection and a review for clinicians print 0.0031, a physiology text 0.003). */
    public static final double DISSOLVED_ML_PER_DL_MMHG = 0.0031;

    private OxygenContent() {
    }

    /** Content, mL/dL: 1.34·Hb·S + 0.0031·PO2, haemoglobin in g/dL; {@code inactive} is the share that binds no oxygen (with carbon monoxide, methaemoglobin). */
    public static double mlPerDl(double haemoglobinGPerDl, double saturation, double po2MmHg, double inactive) {
        return ML_PER_G * haemoglobinGPerDl * (1 - inactive) * saturation + DISSOLVED_ML_PER_DL_MMHG * po2MmHg;
    }

    /** What the circulation brings to the tissues, mL/min. */
    public static double deliveryMlPerMin(double arterialMlPerDl, double cardiacOutputLPerMin) {
        return arterialMlPerDl * cardiacOutputLPerMin * 10;
    }
}
