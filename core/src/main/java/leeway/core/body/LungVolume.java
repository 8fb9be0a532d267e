package leeway.core.body;

import leeway.core.transport.PatientEntry.Sex;

/**
 * Gas left in the lung at the end of a quiet expiration (functional residual capacity), mL at body conditions.
 * <p>Leaves out lung disease, which is a factor of the illness sheet, and PEEP, which adds compliance times PEEP.
 */
public final class LungVolume {
    /** Lying over upright. Range 0.70 to 0.75; from memory. */
    public static final double SUPINE = 0.72;
    /** Anaesthetised or sedated and ventilated over awake, both supine: 15.4 % less in 13 patients (Hewlett, Br J Anaesth 1974;46:495, abstract); ours is the cautious side. */
    public static final double VENTILATED = 0.82;
    /** Fall with body mass index above 25 kg/m², per unit: exponential, so that 40 kg/m² supine and anaesthetised gives about 1 L. Pelosi, Anesth Analg 1998;87:654 (abstract): falls exponentially in 24 patients; the figure from memory. The same group found 0.65 L (SD 0.21) in eight morbidly obese. */
    private static final double PER_BMI = 0.05;
    private static final double LEAN_BMI = 25;

    private LungVolume() {
    }

    /** Upright adult: (2.34·h + 0.01·age − 1.09) L men, (2.24·h + 0.001·age − 1.00) L women, h in m. Quanjer, Eur Respir J 1993;6 Suppl 16:5; from memory, held against the equations of the Global Lung Function Initiative in `BodyPublishedTest`. */
    public static double uprightAdultMl(Sex sex, double heightCm, double ageYears) {
        double h = heightCm / 100;
        return 1000 * (sex == Sex.MALE ? 2.34 * h + 0.01 * ageYears - 1.09 : 2.24 * h + 0.001 * ageYears - 1.00);
    }

    /** Adult, supine and awake. */
    public static double supineAdultMl(Sex sex, double heightCm, double ageYears) {
        return SUPINE * uprightAdultMl(sex, heightCm, ageYears);
    }

    /** Adult, supine, sedated and ventilated, without PEEP, of this body mass index. */
    public static double ventilatedAdultMl(Sex sex, double heightCm, double ageYears, double bodyMassIndex) {
        return VENTILATED * supineAdultMl(sex, heightCm, ageYears) * obesityTimes(bodyMassIndex);
    }

    /** The factor of a body mass index on the supine lung volume. */
    public static double obesityTimes(double bodyMassIndex) {
        return bodyMassIndex <= LEAN_BMI ? 1 : StrictMath.exp(-PER_BMI * (bodyMassIndex - LEAN_BMI));
    }

    /** Anaesthetised, ventilated children of 0.1 to 11.2 years: 0.00175·h^2.66, h in cm. Thorsteinsson, Anesthesiology 1990;73:876. */
    public static double ventilatedChildMl(double heightCm) {
        return 0.00175 * StrictMath.pow(heightCm, 2.66);
    }

    /** Supine children of 1 month to 8 years: 0.0052·h^2.44, h in cm. Bar-Yishay 1987. */
    public static double supineChildMl(double heightCm) {
        return 0.0052 * StrictMath.pow(heightCm, 2.44);
    }
}
