package leeway.core.body;

/** Gas that is moved but meets no blood. Volumes per kilogram are of ideal weight. */
public final class DeadSpace {
    /** Below the larynx, at all ages, mL/kg. Numa & Newth, J Appl Physiol 1996;80:1485. */
    public static final double INTRATHORACIC_ML_PER_KG = 1.03;
    /** All airways of an adult, mL/kg. Radford, J Appl Physiol 1955;7:451; restated in the abstract of Numa & Newth, J Appl Physiol 1996;80:1485. */
    public static final double ADULT_ML_PER_KG = 2.2;
    /** Numa & Newth's oldest children, years. From memory. */
    private static final double CHILD_YEARS = 14, ADULT_YEARS = 18;

    private DeadSpace() {
    }

    /** All airways, mL/kg: 3.28 − 0.56·ln(1 + age/years) to 14 years (Numa & Newth 1996), 2.2 from 18 years, a straight line between. */
    public static double anatomicalMlPerKg(double ageYears) {
        double child = 3.28 - 0.56 * StrictMath.log(1 + Math.min(ageYears, CHILD_YEARS));
        if (ageYears <= CHILD_YEARS) return child;
        double share = Math.min(1, (ageYears - CHILD_YEARS) / (ADULT_YEARS - CHILD_YEARS));
        return child + share * (ADULT_ML_PER_KG - child);
    }

    /** What is left of it when an airway bypasses this share of the part above the larynx, mL/kg; the airway's own volume comes on top. */
    public static double withAirwayMlPerKg(double ageYears, double bypassShare) {
        return INTRATHORACIC_ML_PER_KG + (1 - bypassShare) * (anatomicalMlPerKg(ageYears) - INTRATHORACIC_ML_PER_KG);
    }
}
