package leeway.core.settings;

import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.PatientEntry.Sex;

/**
 * What a strategy may know of a patient; what nobody measured is as {@code leeway.core.body} works it out.
 *
 * @param ageYears               as given, else estimated; an adult of unknown age counts as 40
 * @param weightKg               measured, else ideal
 * @param predictedBodyWeightKg  what tidal volumes go by; a child's ideal weight
 * @param complianceMlPerCmH2O   static, of the respiratory system
 * @param resistanceCmH2OSPerL   of airways, tube and filter together, in expiration
 * @param deadSpaceMl            all of it at a usual volume: airways, tube, filter, alveolar
 * @param co2OutputMlPerMin      made by the body, STPD
 * @param shunt                  share of the output that passes no ventilated lung
 * @param barometerMmHg          ambient pressure at the start
 */
public record PatientFacts(Sex sex, double ageYears, double heightCm, double weightKg, double predictedBodyWeightKg, Effort effort,
                           double complianceMlPerCmH2O, double resistanceCmH2OSPerL, double deadSpaceMl, double co2OutputMlPerMin, double shunt,
                           double barometerMmHg) {
    public PatientFacts {
        if (!(ageYears >= 0) || !Double.isFinite(ageYears)) throw new IllegalArgumentException("age in years (%s) must not be negative".formatted(ageYears));
        positive("height in cm", heightCm);
        positive("weight in kg", weightKg);
        positive("predicted body weight in kg", predictedBodyWeightKg);
        positive("compliance in mL/cmH2O", complianceMlPerCmH2O);
        positive("resistance in cmH2O.s/L", resistanceCmH2OSPerL);
        positive("barometric pressure in mmHg", barometerMmHg);
        if (!(deadSpaceMl >= 0) || !(co2OutputMlPerMin >= 0) || !(shunt >= 0 && shunt < 1)) {
            throw new IllegalArgumentException("dead space %s mL, CO2 output %s mL/min, shunt %s".formatted(deadSpaceMl, co2OutputMlPerMin, shunt));
        }
    }

    private static void positive(String what, double value) {
        if (!(value > 0) || !Double.isFinite(value)) throw new IllegalArgumentException("%s (%s) must be above zero".formatted(what, value));
    }

    /** Product of resistance and compliance: 63 % of a breath is out after one, 95 % after three. */
    public double timeConstantS() { return resistanceCmH2OSPerL * complianceMlPerCmH2O / 1000; }

    public double bodyMassIndex() { return weightKg / (heightCm * heightCm) * 1e4; }

    /** By age: under one year an infant, under 16 a child (the age of the paediatric sources; common practice, no source). */
    public Group group() { return ageYears < 1 ? Group.INFANT : ageYears < 16 ? Group.CHILD : Group.ADULT; }

    /** Whom a strategy is for. */
    public enum Group {
        INFANT, CHILD, ADULT;

        public String word() { return name().toLowerCase(java.util.Locale.ROOT); }
    }
}
