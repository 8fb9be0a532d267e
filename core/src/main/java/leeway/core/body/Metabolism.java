package leeway.core.body;

/** Oxygen used and carbon dioxide made at rest. Leaves out feeding, drugs and the time of day. */
public final class Metabolism {
    /** Carbon dioxide made over oxygen used, mixed diet, at rest. Brody 1945; from memory. */
    public static final double RESPIRATORY_QUOTIENT = 0.8;
    /** Sedated and ventilated over awake at rest; anaesthesia or paralysis 0.80 to 0.85. From memory. */
    public static final double VENTILATED = 0.85;
    /** Growth per degree of body temperature, 10 % (Q10 of 2.3 to 2.5). From memory. */
    public static final double PER_DEGREE = 1.10;
    /** The range of Lindahl's children, kg. */
    public static final double CHILD_KG = 25;
    private static final double GROWN_KG = 50;

    private Metabolism() {
    }

    /** Oxygen used by a resting adult, mL/min: 10·weight^0.75. Brody, Bioenergetics and Growth 1945, Kleiber; from memory, held against eight resting volunteers in `BodyPublishedTest`. */
    public static double adultVo2MlPerMin(double weightKg) {
        return 10 * StrictMath.pow(weightKg, 0.75);
    }

    /** Oxygen used by anaesthetised children of 3.6 to 25 kg, mL/min: 5.0·weight + 19.8. Lindahl, Br J Anaesth 1989;62:70. */
    public static double childVo2MlPerMin(double weightKg) {
        return 5.0 * weightKg + 19.8;
    }

    /** Carbon dioxide made by anaesthetised children of 3.6 to 25 kg, mL/min: 4.8·weight + 6.4. Lindahl, Br J Anaesth 1989;62:70. */
    public static double childVco2MlPerMin(double weightKg) {
        return 4.8 * weightKg + 6.4;
    }

    /** Oxygen used by a healthy sedated patient on a ventilator at 37 °C, mL/min: Lindahl to 25 kg, 0.85 of Brody from 50 kg, a straight line between; adults by Brody at any weight. */
    public static double ventilatedVo2MlPerMin(double weightKg, boolean adult) {
        double brody = VENTILATED * adultVo2MlPerMin(weightKg);
        if (adult || weightKg >= GROWN_KG) return brody;
        // under 3.6 kg the fit's constant would dominate: in proportion to weight from there
        if (weightKg < 3.6) return childVo2MlPerMin(3.6) * weightKg / 3.6;
        if (weightKg <= CHILD_KG) return childVo2MlPerMin(weightKg);
        double share = (weightKg - CHILD_KG) / (GROWN_KG - CHILD_KG);
        return (1 - share) * childVo2MlPerMin(CHILD_KG) + share * VENTILATED * adultVo2MlPerMin(GROWN_KG);
    }

    /** The factor of a body temperature on metabolism: 1.10^(T−37). */
    public static double temperatureTimes(double temperatureCel) {
        return StrictMath.pow(PER_DEGREE, temperatureCel - 37);
    }
}
