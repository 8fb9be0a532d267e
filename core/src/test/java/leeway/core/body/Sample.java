package leeway.core.body;

import java.util.List;
import java.util.OptionalDouble;
import leeway.core.transport.PatientEntry.Sex;

/** Patients that tests start from. */
final class Sample {
    private Sample() {
    }

    /** A healthy man of 70 kg, ventilated: no shunt, no alveolar dead space. */
    static PatientModel ideal() {
        return of(2000, 0, 0, 0, 150, 242 * 0.85, 0.8, 5, 15);
    }

    static PatientModel of(double frc, double shunt, double low, double dead, double series, double vo2, double r, double output, double hb) {
        return new PatientModel(Sex.MALE, 40, true, 175, 70, 70.6, 55, 6, 0, 0.35, frc, shunt, low, dead, series, 0, OptionalDouble.empty(),
                vo2, r * vo2, output, 4900, hb, 26.86, 0, 37, true, List.of());
    }
}
