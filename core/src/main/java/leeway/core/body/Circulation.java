package leeway.core.body;

import leeway.core.transport.PatientEntry.Sex;

/** Cardiac output and blood volume of a resting, healthy body by size and age. Leaves out training, pregnancy, drugs. */
public final class Circulation {
    /** Output per body surface of children to 5 years, L/min/m²; range 3.5 to 4.5. From memory. */
    private static final double CHILD_INDEX = 3.6;
    private static final double CHILD_YEARS = 5, ADULT_YEARS = 18;

    private Circulation() {
    }

    /** Resting output, L/min: adults 0.20·weight^0.75 (70 kg: 4.84), children to 5 years 3.6 per m² of 0.1·weight^(2/3), a straight line by age between. From memory. */
    public static double outputLPerMin(double weightKg, double ageYears) {
        double adult = 0.20 * StrictMath.pow(weightKg, 0.75);
        double child = CHILD_INDEX * 0.1 * StrictMath.pow(weightKg, 2.0 / 3);
        double share = Math.max(0, Math.min(1, (ageYears - CHILD_YEARS) / (ADULT_YEARS - CHILD_YEARS)));
        return share * adult + (1 - share) * child;
    }

    /** Blood volume, mL per kg of ideal weight: men 70, women 65, children 75, infants 80, newborns 87. From memory. */
    public static double bloodMlPerKg(Sex sex, double ageYears) {
        if (ageYears < 1.0 / 12) return 87;
        if (ageYears < 1) return 80;
        if (ageYears < 12) return 75;
        return sex == Sex.MALE ? 70 : 65;
    }
}
