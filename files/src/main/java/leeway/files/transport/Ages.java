package leeway.files.transport;

import java.util.OptionalDouble;
import leeway.core.quantity.Kind;

/**
 * Whom a file describes, as far as the default kit depends on it. A child is whoever is younger than 13 years, or has no
 * age, no height and a weight of at most 40 kg. The limits are common practice, no source.
 */
enum Ages {
    INFANT, CHILD, ADULT;

    /** From here on formulas of adults hold, by height. */
    static final double ADULT_FROM_YEARS = 13;
    static final double GROWN_UP_YEARS = 18;
    static final double INFANT_UP_TO_YEARS = 1;
    static final double INFANT_UP_TO_KG = 10;
    /** A child of this weight takes adult hoses. */
    static final double CHILD_UP_TO_KG = 40;
    /** Below this height the formulas of an adult's body weight say nothing. */
    static final double LEAST_ADULT_CM = 130;
    static final double LEAST_YOUTH_CM = 120;

    static Ages of(OptionalDouble ageYears, OptionalDouble heightCm, OptionalDouble weightKg) {
        if (ageYears.isEmpty()) {
            if (weightKg.isEmpty() || weightKg.getAsDouble() > CHILD_UP_TO_KG) return ADULT;
            if (heightCm.isPresent() && heightCm.getAsDouble() >= LEAST_ADULT_CM) return ADULT;
            return weightKg.getAsDouble() < INFANT_UP_TO_KG ? INFANT : CHILD;
        }
        double age = ageYears.getAsDouble();
        if (age >= ADULT_FROM_YEARS) return ADULT;
        boolean small = weightKg.isPresent() ? weightKg.getAsDouble() < INFANT_UP_TO_KG : age < INFANT_UP_TO_YEARS;
        return small ? INFANT : CHILD;
    }

    /**
     * A tube for that age: cuffed, inner diameter = age / 4 + 3.5 mm from 2 years on (Motoyama's formula, right in 65 % of
     * 300 children and too large in thin ones, as a study of cuffed preformed tubes for tonsillectomy found, abstract), 4.0
     * from 1 year, 3.5 from 6 months or 5 kg, 3.0 below, 2.5 under 1 kg (common practice, no source); 7.5 for adults.
     */
    static String tube(OptionalDouble ageYears, OptionalDouble heightCm, OptionalDouble weightKg) {
        if (of(ageYears, heightCm, weightKg) == ADULT) return named(7.5);
        if (ageYears.isEmpty()) {
            double kg = weightKg.orElseThrow();
            return named(kg < 1 ? 2.5 : kg < 5 ? 3.0 : kg < 8 ? 3.5 : kg < 12 ? 4.0 : kg < 16 ? 4.5 : kg < 22 ? 5.0 : kg < 30 ? 5.5 : 6.0);
        }
        double age = ageYears.getAsDouble();
        if (age >= 2) return named(Math.min(6.5, Math.floor((age / 4 + 3.5) * 2) / 2));
        if (weightKg.isPresent() && weightKg.getAsDouble() < 1) return named(2.5);
        if (age >= INFANT_UP_TO_YEARS) return named(4.0);
        boolean bigger = weightKg.isPresent() ? weightKg.getAsDouble() >= 5 : age >= 0.5;
        return named(bigger ? 3.5 : 3.0);
    }

    private static String named(double mm) { return "tracheal tube " + mm + " mm"; }

    String circuit() { return switch (this) { case INFANT -> "single limb infant"; case CHILD -> "single limb child"; case ADULT -> "single limb adult"; }; }

    String filter() { return switch (this) { case INFANT -> "infant HME filter"; case CHILD -> "child HME filter"; case ADULT -> "adult HME filter"; }; }

    String words() { return switch (this) { case INFANT -> "an infant"; case CHILD -> "a child"; case ADULT -> "an adult"; }; }

    /** Weights that an age cannot have, kg: from, to. Catches months for years and grams for kilograms. */
    static double[] possibleKg(double ageYears) {
        if (ageYears < 1.0 / 12) return new double[] {0.3, 7};
        if (ageYears < 1) return new double[] {1, 16};
        if (ageYears < 3) return new double[] {4, 30};
        if (ageYears < 6) return new double[] {6, 50};
        if (ageYears < ADULT_FROM_YEARS) return new double[] {9, 150};
        return new double[] {20, 400};
    }

    /** Heights that an age cannot have, cm: from, to. */
    static double[] possibleCm(double ageYears) {
        if (ageYears < 1.0 / 12) return new double[] {20, 65};
        if (ageYears < 1) return new double[] {30, 95};
        if (ageYears < 3) return new double[] {50, 120};
        if (ageYears < 6) return new double[] {65, 145};
        return new double[] {75, 210};
    }

    /** In days, months or years, as a person would say it. */
    static String age(double years) {
        Kind k = Kind.AGE;
        if (years < 2.0 / 12) return Math.round(years * 365.25) + " " + k.accepted().get(2).symbol();
        if (years < 2) return Math.round(years * 12) + " " + k.accepted().get(1).symbol();
        return (years == Math.rint(years) ? Long.toString((long) years) : Double.toString(Math.rint(years * 10) / 10)) + " " + k.accepted().get(0).symbol();
    }
}
