package leeway.core.body;

import java.util.List;
import java.util.OptionalDouble;
import leeway.core.run.Knob;
import leeway.core.transport.PatientEntry.Sex;

/** Patients as the published apnoea series describe them, and what becomes of them: the program's own rules for age and size, nothing set by hand for a series. */
final class Apnoea {
    private Apnoea() {
    }

    /** A healthy anaesthetised body of this age and size, with the shunt and dead space of the sheet of healthy lungs. */
    static PatientModel healthy(Sex sex, double age, double heightCm, double kg) {
        boolean adult = age >= 18;
        double predicted = adult ? Weight.predictedAdultKg(sex, heightCm) : kg;
        double frc = Patients.frcMl(sex, age, adult, heightCm, kg / (heightCm * heightCm / 1e4));
        double vo2 = Metabolism.ventilatedVo2MlPerMin(kg, adult);
        double blood = Circulation.bloodMlPerKg(sex, age) * (kg > predicted ? predicted + (kg - predicted) / 3 : kg);
        return new PatientModel(sex, age, adult, heightCm, kg, predicted, Patients.complianceMlPerCmH2O(age, predicted), Patients.resistanceCmH2OSPerL(age), 0, 0.3, frc,
                0.05, 0.03, 0.05, DeadSpace.withAirwayMlPerKg(age, 1) * predicted, 0.2 * predicted, OptionalDouble.empty(), vo2, 0.8 * vo2, Circulation.outputLPerMin(kg, age), blood,
                Haemoglobin.usualGPerDl(sex, age), Haemoglobin.p50MmHg(age), 0, 37, true, List.of());
    }

    /** Ventilated with this oxygen for five minutes, then apnoea with the airway closed (0), open to air (1) or to oxygen (2). */
    static Run run(PatientModel patient, double fio2, double mouthGas, double forS) {
        return run(patient, fio2, mouthGas, forS, 10);
    }

    static Run run(PatientModel patient, double fio2, double mouthGas, double forS, double longestS) {
        double rate = patient.adult() ? 12 : patient.ageYears() < 2 ? 30 : 22;
        double tidal = 7 * patient.predictedKg();
        // the rate that keeps end-tidal carbon dioxide near normal
        double best = rate;
        for (int i = 0; i < 12; i++) best *= SteadyGases.of(patient, new Ventilation(tidal, best, fio2, 760, 0)).paco2MmHg() / 40;
        Run run = new Run(patient, tidal, Math.min(60, best), 0, fio2, 760, longestS);
        run.change(300, Knob.VENTILATOR_ON, 0).change(300, Knob.APNOEA_GAS, mouthGas);
        if (mouthGas == 0) run.change(303, Knob.AIRWAY_CLOSED, 1);   // at the end of the last expiration
        return run.to(300 + forS);
    }

    /** Seconds from the start of apnoea to a saturation. */
    static double to(double saturation, PatientModel patient, double fio2, double mouthGas) {
        return run(patient, fio2, mouthGas, 1200).whenSaturation(saturation) - 300;
    }
}
