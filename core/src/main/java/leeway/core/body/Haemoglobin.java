package leeway.core.body;

import leeway.core.gas.OxygenDissociation;
import leeway.core.transport.PatientEntry.Sex;

/** How much haemoglobin a healthy body has at an age, and which kind. From memory throughout: textbook means; anaemia and prematurity are left out. */
public final class Haemoglobin {
    private static final double[] AGE_YEARS = {0, 1.0 / 12, 2.5 / 12, 0.5, 1, 6, 12, 16};
    private static final double[] GIRLS_G_PER_DL = {17.0, 14.0, 11.0, 11.5, 12.0, 12.5, 13.5, 13.5};
    private static final double[] BOYS_G_PER_DL = {17.0, 14.0, 11.0, 11.5, 12.0, 12.5, 13.5, 15.0};
    /** Half-saturation tension at birth, mmHg (19 to 20), and the age by which the adult kind has taken over. */
    private static final double NEWBORN_P50_MMHG = 19.5, ADULT_KIND_YEARS = 0.5;

    private Haemoglobin() {
    }

    /** Usual amount, g/dL: newborn 17, lowest 11 at 2 to 3 months, then rising to 13.5 (women) or 15 (men). */
    public static double usualGPerDl(Sex sex, double ageYears) {
        double[] values = sex == Sex.MALE ? BOYS_G_PER_DL : GIRLS_G_PER_DL;
        if (ageYears >= AGE_YEARS[AGE_YEARS.length - 1]) return values[values.length - 1];
        int i = 1;
        while (ageYears > AGE_YEARS[i]) i++;
        double share = (ageYears - AGE_YEARS[i - 1]) / (AGE_YEARS[i] - AGE_YEARS[i - 1]);
        return values[i - 1] + share * (values[i] - values[i - 1]);
    }

    /** Half-saturation tension at pH 7.40 and 37 °C, mmHg: foetal haemoglobin gives way to the adult kind in half a year. */
    public static double p50MmHg(double ageYears) {
        double share = Math.max(0, Math.min(1, ageYears / ADULT_KIND_YEARS));
        return NEWBORN_P50_MMHG + share * (OxygenDissociation.ADULT_P50_MMHG - NEWBORN_P50_MMHG);
    }
}
