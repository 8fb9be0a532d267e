package leeway.core.body;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import leeway.core.gas.Blood;
import leeway.core.transport.PatientEntry.Sex;

/**
 * The patient as numbers: what every model of breath and gas starts from.
 * <p>Leaves out: scatter of ventilation over perfusion beyond one poorly ventilated compartment where no {@code spread} is
 * given, recruitment by PEEP, hypoxic vasoconstriction, and everything that changes over days.
 *
 * @param adult                     grown: the formulas of adults hold
 * @param weightKg                  measured, or taken as predicted
 * @param predictedKg               ideal weight from height or age, for volumes per kilogram
 * @param complianceMlPerCmH2O      static, of the respiratory system
 * @param resistanceCmH2OSPerL      of lungs and airways, without tube and filter
 * @param expiratoryExtraCmH2OSPerL what the airways add in expiration
 * @param chestWallShare            of the elastance
 * @param frcMl                     gas in the lung at zero PEEP, supine and ventilated, BTPS
 * @param shunt                     share of the output that meets no gas
 * @param lowVentilationShare       share of the rest that passes poorly ventilated lung
 * @param alveolarDeadSpace         share of alveolar ventilation that meets no blood; not used where {@code measuredDeadSpaceMl} is there
 * @param airwaysMl                 series dead space of the patient, as far as the airway leaves it
 * @param apparatusMl               of airway, filter and circuit
 * @param measuredDeadSpaceMl       all of it as measured
 * @param vo2MlPerMin               oxygen used, STPD
 * @param vco2MlPerMin              carbon dioxide made, STPD
 * @param spread                    of ventilation over perfusion in the well ventilated lung, standard deviation of the natural logarithm; 0: all alike
 * @param inactive                  share of the haemoglobin that binds no oxygen: with carbon monoxide, or as methaemoglobin
 * @param coupled                   whether pressure in the chest lowers the cardiac output ({@link Coupling})
 * @param living                    false: a test lung, without metabolism and blood
 * @param assumed                   every default taken, in words
 */
public record PatientModel(Sex sex, double ageYears, boolean adult, double heightCm, double weightKg, double predictedKg,
        double complianceMlPerCmH2O, double resistanceCmH2OSPerL, double expiratoryExtraCmH2OSPerL, double chestWallShare,
        double frcMl, double shunt, double lowVentilationShare, double alveolarDeadSpace, double airwaysMl, double apparatusMl,
        OptionalDouble measuredDeadSpaceMl, double vo2MlPerMin, double vco2MlPerMin, double cardiacOutputLPerMin, double bloodVolumeMl,
        double haemoglobinGPerDl, double p50MmHg, double baseExcessMmolL, double temperatureCel, double spread, double inactive, boolean coupled, boolean living, List<String> assumed) {

    /** Ventilation over perfusion of the poorly ventilated compartment, against that of the rest. 0.1 is where the literature begins to call it low; from memory. */
    public static final double LOW_RATIO = 0.1;

    public PatientModel {
        assumed = List.copyOf(assumed);
        within("weight", weightKg, 0.3, 400);
        within("predicted weight", predictedKg, 0.3, 200);
        within("compliance", complianceMlPerCmH2O, 0.05, 1000);
        within("lung volume", frcMl, 5, 10_000);
        within("shunt", shunt, 0, 0.95);
        within("share of poorly ventilated lung", lowVentilationShare, 0, 0.9);
        within("alveolar dead space", alveolarDeadSpace, 0, 0.95);
        within("dead space of the airways", airwaysMl, 0, 500);
        within("dead space of the apparatus", apparatusMl, 0, 500);
        within("spread of ventilation over perfusion", spread, 0, 2.5);
        within("inactive haemoglobin", inactive, 0, 0.7);
        if (living) {
            within("oxygen uptake", vo2MlPerMin, 1, 5000);
            within("carbon dioxide production", vco2MlPerMin, 1, 5000);
            within("cardiac output", cardiacOutputLPerMin, 0.05, 30);
            within("blood volume", bloodVolumeMl, 20, 20_000);
        }
    }

    /** Without a spread, with all haemoglobin active, coupled. */
    public PatientModel(Sex sex, double ageYears, boolean adult, double heightCm, double weightKg, double predictedKg,
            double complianceMlPerCmH2O, double resistanceCmH2OSPerL, double expiratoryExtraCmH2OSPerL, double chestWallShare,
            double frcMl, double shunt, double lowVentilationShare, double alveolarDeadSpace, double airwaysMl, double apparatusMl,
            OptionalDouble measuredDeadSpaceMl, double vo2MlPerMin, double vco2MlPerMin, double cardiacOutputLPerMin, double bloodVolumeMl,
            double haemoglobinGPerDl, double p50MmHg, double baseExcessMmolL, double temperatureCel, boolean living, List<String> assumed) {
        this(sex, ageYears, adult, heightCm, weightKg, predictedKg, complianceMlPerCmH2O, resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, chestWallShare, frcMl, shunt,
                lowVentilationShare, alveolarDeadSpace, airwaysMl, apparatusMl, measuredDeadSpaceMl, vo2MlPerMin, vco2MlPerMin, cardiacOutputLPerMin, bloodVolumeMl,
                haemoglobinGPerDl, p50MmHg, baseExcessMmolL, temperatureCel, 0, 0, true, living, assumed);
    }

    private static void within(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) throw new IllegalArgumentException("%s (%s) must lie between %s and %s".formatted(what, value, low, high));
    }

    public Blood blood() {
        return new Blood(haemoglobinGPerDl, baseExcessMmolL, temperatureCel, p50MmHg, inactive);
    }

    /** The heart's output over its own at this mean alveolar pressure. */
    double outputTimes(double meanAlveolarCmH2O) {
        return coupled ? Coupling.outputTimes(meanAlveolarCmH2O, chestWallShare) : 1;
    }

    /** The same patient without the coupling of chest pressure and heart. */
    PatientModel uncoupled() {
        return new PatientModel(sex, ageYears, adult, heightCm, weightKg, predictedKg, complianceMlPerCmH2O, resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, chestWallShare, frcMl, shunt,
                lowVentilationShare, alveolarDeadSpace, airwaysMl, apparatusMl, measuredDeadSpaceMl, vo2MlPerMin, vco2MlPerMin, cardiacOutputLPerMin, bloodVolumeMl,
                haemoglobinGPerDl, p50MmHg, baseExcessMmolL, temperatureCel, spread, inactive, false, living, assumed);
    }

    /** The same patient with this share of the haemoglobin inactive. */
    PatientModel withInactive(double share) {
        return new PatientModel(sex, ageYears, adult, heightCm, weightKg, predictedKg, complianceMlPerCmH2O, resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, chestWallShare, frcMl, shunt,
                lowVentilationShare, alveolarDeadSpace, airwaysMl, apparatusMl, measuredDeadSpaceMl, vo2MlPerMin, vco2MlPerMin, cardiacOutputLPerMin, bloodVolumeMl,
                haemoglobinGPerDl, p50MmHg, baseExcessMmolL, temperatureCel, spread, share, coupled, living, assumed);
    }

    /** Airways and apparatus; never more than what was measured in all. */
    public double seriesDeadSpaceMl() {
        double parts = airwaysMl + apparatusMl;
        return measuredDeadSpaceMl.isPresent() ? Math.min(parts, measuredDeadSpaceMl.getAsDouble()) : parts;
    }

    /** Share of alveolar ventilation that meets no blood, at a tidal volume. */
    public double alveolarDeadSpaceAt(double tidalMl) {
        if (measuredDeadSpaceMl.isEmpty()) return alveolarDeadSpace;
        double series = seriesDeadSpaceMl(), rest = tidalMl - series;
        return rest <= 0 ? 0.9 : Math.min(0.9, (measuredDeadSpaceMl.getAsDouble() - series) / rest);
    }

    /** Share of the perfused lung's ventilation that goes to the poorly ventilated compartment. */
    public double lowVentilation() {
        return LOW_RATIO * lowVentilationShare / (1 - lowVentilationShare + LOW_RATIO * lowVentilationShare);
    }

    /** The same with another share of the chest wall in the elastance. */
    public PatientModel withChestWall(double share) {
        return new PatientModel(sex, ageYears, adult, heightCm, weightKg, predictedKg, complianceMlPerCmH2O, resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, share,
                frcMl, shunt, lowVentilationShare, alveolarDeadSpace, airwaysMl, apparatusMl, measuredDeadSpaceMl, vo2MlPerMin, vco2MlPerMin, cardiacOutputLPerMin,
                bloodVolumeMl, haemoglobinGPerDl, p50MmHg, baseExcessMmolL, temperatureCel, spread, inactive, coupled, living, assumed);
    }

    /** The same patient with other exchange, metabolism or circulation; what a fit or a draw changes. */
    public PatientModel with(Change c, String... alsoAssumed) {
        List<String> all = new ArrayList<>(assumed);
        all.addAll(List.of(alsoAssumed));
        return new PatientModel(sex, ageYears, adult, heightCm, weightKg, predictedKg,
                c.complianceTimes * complianceMlPerCmH2O, c.resistanceTimes * resistanceCmH2OSPerL, c.resistanceTimes * expiratoryExtraCmH2OSPerL, chestWallShare,
                c.lungVolumeTimes * frcMl, c.shunt.orElse(shunt), c.lowVentilationShare.orElse(lowVentilationShare), c.alveolarDeadSpace.orElse(alveolarDeadSpace), airwaysMl, apparatusMl,
                c.measuredDeadSpaceMl.isEmpty() ? measuredDeadSpaceMl : c.measuredDeadSpaceMl.getAsDouble() > 0 ? c.measuredDeadSpaceMl : OptionalDouble.empty(), c.vo2Times * vo2MlPerMin, c.vco2Times * vco2MlPerMin,
                c.cardiacOutputTimes * cardiacOutputLPerMin, bloodVolumeMl, haemoglobinGPerDl, p50MmHg, c.baseExcessMmolL.orElse(baseExcessMmolL),
                temperatureCel, c.spread.orElse(spread), inactive, coupled, living, all);
    }

    /** What {@link #with} changes: factors on the present value, or new values. Built from {@link #NONE}. */
    public record Change(double complianceTimes, double resistanceTimes, double lungVolumeTimes, OptionalDouble shunt, OptionalDouble lowVentilationShare,
            OptionalDouble alveolarDeadSpace, OptionalDouble measuredDeadSpaceMl, double vo2Times, double vco2Times, double cardiacOutputTimes,
            OptionalDouble baseExcessMmolL, OptionalDouble spread) {
        private static final OptionalDouble SAME = OptionalDouble.empty();
        public static final Change NONE = new Change(1, 1, 1, SAME, SAME, SAME, SAME, 1, 1, 1, SAME, SAME);

        public Change mechanics(double compliance, double resistance) {
            return new Change(compliance, resistance, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change lungVolume(double times) {
            return new Change(complianceTimes, resistanceTimes, times, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change shunt(double value) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, OptionalDouble.of(value), lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change low(double share) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, OptionalDouble.of(share), alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change alveolarDeadSpace(double share) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, OptionalDouble.of(share), measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        /** All of the dead space as measured; 0 takes a measured value away, so that the parts count again. */
        public Change deadSpace(double allMl) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, OptionalDouble.of(allMl), vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change metabolism(double vo2, double vco2) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2, vco2, cardiacOutputTimes, baseExcessMmolL, spread);
        }

        public Change cardiacOutput(double times) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, times, baseExcessMmolL, spread);
        }

        public Change baseExcess(double mmolL) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, OptionalDouble.of(mmolL), spread);
        }

        public Change spread(double logDeviation) {
            return new Change(complianceTimes, resistanceTimes, lungVolumeTimes, shunt, lowVentilationShare, alveolarDeadSpace, measuredDeadSpaceMl, vo2Times, vco2Times, cardiacOutputTimes, baseExcessMmolL, OptionalDouble.of(logDeviation));
        }
    }
}
