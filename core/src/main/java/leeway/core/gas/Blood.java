package leeway.core.gas;

/**
 * What stays the same in a patient's blood while its gases change: haemoglobin, what it binds, base excess, temperature.
 * <p>Leaves out: the slow shift of bicarbonate into tissue fluid, 2,3-diphosphoglycerate but for {@code p50MmHg}, and the
 * effect of temperature on pH itself; tensions are those at body temperature.
 */
public final class Blood {
    static final double LN10 = StrictMath.log(10);
    final double haemoglobinGPerDl, baseExcessMmolL, temperatureCel, inactive, p50MmHg;
    /** Bound oxygen at full saturation, mL/dL. */
    final double capacity;
    /** Bicarbonate = freeBicarbonate − perSaturation·S − buffer·(pH−7.4), mmol/L: the Van Slyke equation at held base excess. */
    final double freeBicarbonate, perSaturation, buffer;
    final double lnP50Shift, degrees, plasma, pkAt, pkSlope, cells;

    /**
     * @param haemoglobinGPerDl 0 to 30 g/dL
     * @param baseExcessMmolL   −30 to 30 mmol/L, held
     * @param temperatureCel    20 to 43 Cel
     * @param p50MmHg           half-saturation tension at pH 7.40, 37 °C: 26.86 adult, about 20 newborn
     * @param inactive          share of haemoglobin that binds no oxygen, with carbon monoxide or as methaemoglobin
     */
    public Blood(double haemoglobinGPerDl, double baseExcessMmolL, double temperatureCel, double p50MmHg, double inactive) {
        require("haemoglobin", haemoglobinGPerDl, 0, 30, "g/dL");
        require("base excess", baseExcessMmolL, -30, 30, "mmol/L");
        require("temperature", temperatureCel, 20, 43, "Cel");
        require("half-saturation tension", p50MmHg, 10, 50, "mmHg");
        require("inactive haemoglobin", inactive, 0, 0.7, "");
        this.haemoglobinGPerDl = haemoglobinGPerDl;
        this.baseExcessMmolL = baseExcessMmolL;
        this.temperatureCel = temperatureCel;
        this.p50MmHg = p50MmHg;
        this.inactive = inactive;
        double hb = haemoglobinGPerDl;
        capacity = OxygenContent.ML_PER_G * hb * (1 - inactive);
        perSaturation = 0.2 * hb / (1 - 0.0143 * hb);
        freeBicarbonate = baseExcessMmolL / (1 - 0.0143 * hb) + perSaturation + AcidBase.NORMAL_BICARBONATE;
        buffer = 9.5 + 1.63 * hb;
        lnP50Shift = StrictMath.log(p50MmHg / OxygenDissociation.ADULT_P50_MMHG);
        degrees = temperatureCel - 37;
        plasma = 2.226 * CarbonDioxideContent.solubility(temperatureCel);
        pkAt = 7.4 - CarbonDioxideContent.pk(7.4, temperatureCel);
        pkSlope = 1 + 0.042 + (38 - temperatureCel) * 0.00139;
        cells = 0.0289 * hb;
    }

    /** Adult haemoglobin, all of it active. */
    public static Blood adult(double haemoglobinGPerDl, double baseExcessMmolL, double temperatureCel) {
        return new Blood(haemoglobinGPerDl, baseExcessMmolL, temperatureCel, OxygenDissociation.ADULT_P50_MMHG, 0);
    }

    public double haemoglobinGPerDl() {
        return haemoglobinGPerDl;
    }

    public double baseExcessMmolL() {
        return baseExcessMmolL;
    }

    public double temperatureCel() {
        return temperatureCel;
    }

    public double p50MmHg() {
        return p50MmHg;
    }

    public double inactive() {
        return inactive;
    }

    private static void require(String what, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) throw new IllegalArgumentException("%s (%s %s) must lie between %s and %s".formatted(what, value, unit, low, high));
    }
}
