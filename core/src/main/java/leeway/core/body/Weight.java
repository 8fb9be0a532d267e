package leeway.core.body;

import leeway.core.transport.PatientEntry.Sex;

/** Body weight where nobody weighed: predicted from height, or expected from age. Leaves out build, oedema and prematurity. */
public final class Weight {
    /** A child counts as grown for the height formula from here, cm. Traub & Johnson 1980 give theirs below it. */
    public static final double GROWN_CM = 152;
    /** Least height at which the formula for adults is used, cm. Common practice, no source. */
    public static final double LEAST_ADULT_CM = 130;
    /** A term newborn, kg. Common practice, no source. */
    public static final double NEWBORN_KG = 3.5;

    private Weight() {
    }

    /** Predicted body weight of adults, kg: 50.0 (men) or 45.5 (women) + 0.91·(height − 152.4 cm). ARDS Network, N Engl J Med 2000;342:1301, after Devine 1974. */
    public static double predictedAdultKg(Sex sex, double heightCm) {
        return (sex == Sex.MALE ? 50.0 : 45.5) + 0.91 * (heightCm - 152.4);
    }

    /** Ideal weight of children of 1 to 17 years under 152 cm, kg: 2.396·e^(0.01863·height). Traub & Johnson, Am J Hosp Pharm 1980;37:195; from memory. */
    public static double childByHeightKg(double heightCm) {
        return 2.396 * StrictMath.exp(0.01863 * heightCm);
    }

    /**
     * Expected weight of children by age, kg: 0.5·months + 4 (1 to 12 months), 2·years + 8 (1 to 5), 3·years + 7 (6 to 12);
     * 3.5 kg under one month; from 5 to 6 years in a straight line between the two. APLS 2011 edition, after Marikar, BMJ Innov 2015. NaN over 12 years, where there is no formula.
     */
    public static double childByAgeKg(double ageYears) {
        if (!(ageYears >= 0)) throw new IllegalArgumentException("age (" + ageYears + " years) must not be negative");
        if (ageYears < 1.0 / 12) return NEWBORN_KG;
        if (ageYears < 1) return 0.5 * (ageYears * 12) + 4;
        if (ageYears <= 5) return 2 * ageYears + 8;
        if (ageYears < 6) return 18 + (ageYears - 5) * (25 - 18);
        if (ageYears < 13) return 3 * ageYears + 7;
        return Double.NaN;
    }

    /** Body surface, m²: √(height·weight/3600). Mosteller, N Engl J Med 1987;317:1098. */
    public static double surfaceM2(double heightCm, double weightKg) {
        return StrictMath.sqrt(heightCm * weightKg / 3600);
    }

    /** Usual height by age up to 18 years, cm: that of children, and no more than 163 (girls) or 176 (boys), the medians of the CDC's growth charts at 18 years; girls "slightly over 64 inches" in a page that reads them, boys from memory. */
    public static double usualHeightCm(Sex sex, double ageYears) {
        return Math.min(childHeightCm(ageYears), sex == Sex.MALE ? 176 : 163);
    }

    /** Usual length of children by age, cm: 50 at birth, 75 at one year, 6·years + 77 from 2 to 12 years (Weech), smooth between; from memory. */
    public static double childHeightCm(double ageYears) {
        if (ageYears < 1) return 50 + 25 * StrictMath.sqrt(ageYears);
        if (ageYears < 2) return 75 + 14 * (ageYears - 1);
        return 6 * ageYears + 77;
    }
}
