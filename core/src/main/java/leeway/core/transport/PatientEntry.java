package leeway.core.transport;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The patient as the file says; absent values are absent, what follows from them is worked out in {@code leeway.core.body}.
 *
 * @param ageYears              an adult's may be absent
 * @param lungs                 overrides of the illness sheet
 * @param deadSpaceMl           all of it as measured: airways, tube, filter, alveolar
 * @param airwayDepthCm         how far the tube lies in
 * @param position              how the patient lies, one of the words of {@code leeway.core.body.Posture}
 * @param carboxyhaemoglobin    share of the haemoglobin that carries carbon monoxide
 * @param methaemoglobin        share of the haemoglobin that is methaemoglobin
 * @param pressureLowersOutput  whether pressure in the chest lowers the cardiac output
 * @param breathing             what weakens, disturbs or drives the patient's own breathing
 */
public record PatientEntry(Sex sex, OptionalDouble heightCm, boolean heightEstimated, OptionalDouble weightKg, OptionalDouble ageYears,
                           OptionalDouble airwayDepthCm, Optional<Cuff> cuff, Lungs lungs, OptionalDouble temperatureCel,
                           OptionalDouble haemoglobinGPerL, Optional<String> position, boolean paralysed, boolean chestDrain,
                           OptionalDouble cardiacOutputLPerMin, Optional<BloodGas> bloodGas, double carboxyhaemoglobin, double methaemoglobin,
                           boolean pressureLowersOutput, Breathing breathing) {
    /** Without sedation, coughs or a heart that shakes the airway. */
    public PatientEntry(Sex sex, OptionalDouble heightCm, boolean heightEstimated, OptionalDouble weightKg, OptionalDouble ageYears, OptionalDouble airwayDepthCm,
                        Optional<Cuff> cuff, Lungs lungs, OptionalDouble temperatureCel, OptionalDouble haemoglobinGPerL, Optional<String> position,
                        boolean paralysed, boolean chestDrain, OptionalDouble cardiacOutputLPerMin, Optional<BloodGas> bloodGas, double carboxyhaemoglobin,
                        double methaemoglobin, boolean pressureLowersOutput) {
        this(sex, heightCm, heightEstimated, weightKg, ageYears, airwayDepthCm, cuff, lungs, temperatureCel, haemoglobinGPerL, position, paralysed, chestDrain,
                cardiacOutputLPerMin, bloodGas, carboxyhaemoglobin, methaemoglobin, pressureLowersOutput, Breathing.NONE);
    }

    /** Without haemoglobin that binds no oxygen, and with the declared coupling of chest pressure and heart. */
    public PatientEntry(Sex sex, OptionalDouble heightCm, boolean heightEstimated, OptionalDouble weightKg, OptionalDouble ageYears, OptionalDouble airwayDepthCm,
                        Optional<Cuff> cuff, Lungs lungs, OptionalDouble temperatureCel, OptionalDouble haemoglobinGPerL, Optional<String> position,
                        boolean paralysed, boolean chestDrain, OptionalDouble cardiacOutputLPerMin, Optional<BloodGas> bloodGas) {
        this(sex, heightCm, heightEstimated, weightKg, ageYears, airwayDepthCm, cuff, lungs, temperatureCel, haemoglobinGPerL, position, paralysed, chestDrain,
                cardiacOutputLPerMin, bloodGas, 0, 0, true);
    }

    /** As the formulas of lung volume and body weight know it. */
    public enum Sex { FEMALE, MALE }

    /** What fills the tube's cuff. */
    public enum Cuff { AIR, SALINE, NONE }

    /** Own effort to breathe. */
    public enum Effort { NONE, WEAK, NORMAL, STRONG }

    /**
     * What weakens, disturbs or drives the patient's own breathing.
     *
     * @param sedated           what sedation takes at departure
     * @param drivenByGases     whether effort answers to carbon dioxide and oxygen
     * @param heartSwingLPerMin flow that each heart beat makes at the airway
     */
    public record Breathing(Sedation sedated, boolean drivenByGases, double coughsPerMin, double hiccupsPerMin, OptionalDouble heartRatePerMin, double heartSwingLPerMin) {
        public static final Breathing NONE = new Breathing(Sedation.NONE, true, 0, 0, OptionalDouble.empty(), 0);
    }

    /**
     * Overrides of lung values.
     *
     * @param resistanceCmH2OSPerL  of lungs and airways, without tube and filter
     * @param resistanceWithTubeCmH2OSPerL as taken from a ventilator, tube included
     * @param spread               of ventilation over perfusion, standard deviation of the natural logarithm
     * @param kind                 what the lungs have beyond one linear compartment; its parts replace those of the illness
     */
    public record Lungs(OptionalDouble complianceMlPerCmH2O, OptionalDouble resistanceCmH2OSPerL, OptionalDouble resistanceWithTubeCmH2OSPerL,
                        Optional<Effort> effort, OptionalDouble shunt, OptionalDouble deadSpaceMl, OptionalDouble spread, leeway.core.lung.Lungs kind) {
        public static final Lungs NONE = new Lungs(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(),
                OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), leeway.core.lung.Lungs.LINEAR);

        /** Without a spread, as the illness has them. */
        public Lungs(OptionalDouble complianceMlPerCmH2O, OptionalDouble resistanceCmH2OSPerL, OptionalDouble resistanceWithTubeCmH2OSPerL,
                     Optional<Effort> effort, OptionalDouble shunt, OptionalDouble deadSpaceMl) {
            this(complianceMlPerCmH2O, resistanceCmH2OSPerL, resistanceWithTubeCmH2OSPerL, effort, shunt, deadSpaceMl, OptionalDouble.empty(), leeway.core.lung.Lungs.LINEAR);
        }
    }

    /** A blood gas with the settings it was taken under. */
    public record BloodGas(double ph, double paco2MmHg, OptionalDouble pao2MmHg, double fio2, OptionalDouble tidalVolumeMl, OptionalDouble ratePerMin,
                           OptionalDouble minuteVolumeLPerMin, OptionalDouble peepCmH2O, double afterMin) { }
}
