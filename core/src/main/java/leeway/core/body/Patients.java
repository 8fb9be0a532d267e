package leeway.core.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import leeway.core.kit.Airway;
import leeway.core.kit.Circuit;
import leeway.core.kit.Filter;
import leeway.core.kit.Illness;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.PatientEntry.Sex;

/** Turns what a file says of a patient, with the sheets of illness and airway, into the patient's numbers, and names each default. */
public final class Patients {
    /** Age of an adult where the file gives none, years. Common practice, no source. */
    public static final double ASSUMED_AGE_YEARS = 50;
    /** Static compliance of ventilated lungs without disease, mL/cmH2O per kg of predicted weight: adults 54 in the median (Arnal, Respir Care 2018; from memory), infants 1.0 to 1.3 per kg (from memory). */
    private static final double ADULT_COMPLIANCE_PER_KG = 0.8, INFANT_COMPLIANCE_PER_KG = 1.1;
    /** Resistance of lungs and airways without a tube, cmH2O·s/L, by age in years; infants 20 to 30, 10 by 8 years, adults 5 to 10 with anaesthesia; from memory. */
    private static final double[] RESISTANCE_YEARS = {0, 1, 8, 18}, RESISTANCE = {30, 20, 10, 6};
    /** Of a child from 1 to 12 years without a height no more than this share of the usual weight of its age counts for its breaths; a youth's is that of the usual height. What is above is likely fat. Common practice, no source. */
    private static final double HEAVY = 1.25;
    private static final double GROWN_YEARS = 18, TEEN_YEARS = 13, TEEN_LUNG_YEARS = 11;

    private Patients() {
    }

    /** The patient's numbers. Refuses a child of more than 12 years without height and weight, for whom there is no formula. */
    public static PatientModel of(PatientEntry entry, Illness illness, Airway airway, Filter filter, Circuit circuit) {
        List<String> assumed = new ArrayList<>();
        boolean adult = adult(entry);
        double age = age(entry, adult, assumed);
        double height = entry.heightCm().orElseGet(() -> {
            double h = Weight.usualHeightCm(entry.sex(), age);
            assumed.add("height taken as usual for the age: %s cm".formatted(round(h, 0)));
            return h;
        });
        double predicted = predictedKg(entry, adult, age, height, assumed);
        double weight = entry.weightKg().orElseGet(() -> {
            assumed.add("weight taken as predicted: %s kg".formatted(round(predicted, 1)));
            return predicted;
        });
        double bmi = weight / (height * height / 1e4);
        PatientEntry.Lungs lungs = entry.lungs();

        double compliance = lungs.complianceMlPerCmH2O().orElse(illness.complianceTimes().central() * complianceMlPerCmH2O(age, predicted));
        double inspiratory = lungs.resistanceCmH2OSPerL().orElse(illness.resistanceTimes().central() * resistanceCmH2OSPerL(age));
        double expiratoryExtra = (illness.expiratoryResistanceTimes().central() - 1) * inspiratory;
        double posture = entry.position().map(Posture::lungVolumeTimes).orElse(1.0);
        double frc = posture * illness.lungVolumeTimes().central() * frcMl(entry.sex(), age, adult, height, bmi);
        if (posture != 1) assumed.add("gas left in the lung: %s times what it is lying flat, for %s; sedated and heavy patients may gain less".formatted(round(posture, 2), entry.position().orElseThrow()));

        double temperature = entry.temperatureCel().orElse(illness.temperatureCel());
        double hb = entry.haemoglobinGPerL().isPresent() ? entry.haemoglobinGPerL().getAsDouble() / 10
                : illness.haemoglobinTimes().central() * Haemoglobin.usualGPerDl(entry.sex(), age);
        if (entry.haemoglobinGPerL().isEmpty() && !illness.testLung()) assumed.add("haemoglobin %s g/L, usual for age and illness".formatted(round(10 * hb, 0)));
        double vo2 = illness.oxygenUptakeTimes().central() * Metabolism.ventilatedVo2MlPerMin(weight, adult) * Metabolism.temperatureTimes(temperature);
        double output = entry.cardiacOutputLPerMin().orElse(illness.cardiacOutputTimes().central() * Circulation.outputLPerMin(weight, age));
        // fat holds little blood: a third of what lies above the predicted weight counts (from memory)
        double blood = Circulation.bloodMlPerKg(entry.sex(), age) * (weight > predicted ? predicted + (weight - predicted) / 3 : weight);
        if (!illness.testLung()) {
            if (entry.temperatureCel().isEmpty()) assumed.add("temperature %s Cel".formatted(round(temperature, 1)));
            assumed.add("oxygen uptake %s mL/min and carbon dioxide %s mL/min, from weight, temperature and illness".formatted(round(vo2, 0), round(vo2 * illness.respiratoryQuotient().central(), 0)));
            if (entry.cardiacOutputLPerMin().isEmpty()) assumed.add("cardiac output %s L/min, from weight and illness".formatted(round(output, 1)));
        }
        double apparatus = airway.deadSpaceMl() + filter.deadSpaceMl() + circuit.deadSpaceMl();
        double airways = DeadSpace.withAirwayMlPerKg(age, airway.bypassShare()) * predicted;
        OptionalDouble measured = entry.lungs().deadSpaceMl();
        if (measured.isEmpty() && !illness.testLung()) assumed.add("dead space: airways %s mL, tube, filter and circuit %s mL, and %s %% of the rest in the lung"
                .formatted(round(airways, 0), round(apparatus, 0), round(100 * illness.alveolarDeadSpace().central(), 0)));
        boolean living = !illness.testLung();
        double inactive = entry.carboxyhaemoglobin() + entry.methaemoglobin();
        if (living && inactive > 0) assumed.add("%s %% of the haemoglobin binds no oxygen: content is less by as much; saturation here is that of the rest, and an oximeter does not show the loss; the curve's shift to the left is left out"
                .formatted(round(100 * inactive, 0)));
        double spread = living ? entry.lungs().spread().orElse(illness.spread().central()) : 0;
        if (spread > 0) assumed.add("ventilation over perfusion spread over %d compartments, standard deviation of the logarithm %s".formatted(Compartments.NODES, round(spread, 2)));
        boolean low = living && entry.lungs().shunt().isEmpty() && entry.lungs().spread().isEmpty();
        if (living && !entry.pressureLowersOutput()) assumed.add("pressure in the chest does not lower the cardiac output here, as the file says");
        if (!living) measured = OptionalDouble.empty();
        return new PatientModel(entry.sex(), age, adult, height, weight, predicted, compliance, inspiratory, expiratoryExtra, illness.chestWallShare().central(),
                frc, living ? lungs.shunt().orElse(illness.shunt().central()) : 0, low ? illness.lowVentilationShare().central() : 0,
                living ? illness.alveolarDeadSpace().central() : 0, living ? airways : 0, apparatus, measured, living ? vo2 : 0,
                living ? vo2 * illness.respiratoryQuotient().central() : 0, living ? output : 0, living ? blood : 0, hb, Haemoglobin.p50MmHg(age),
                illness.baseExcessMmolL().central(), temperature, spread, living ? inactive : 0, entry.pressureLowersOutput(), living, assumed);
    }

    /** Grown, as far as the file tells: 18 years, or 13 and at least 152 cm, or no age and at least 130 cm. */
    public static boolean adult(PatientEntry entry) {
        if (entry.ageYears().isPresent()) {
            double age = entry.ageYears().getAsDouble();
            return age >= GROWN_YEARS || age >= TEEN_YEARS && entry.heightCm().orElse(0) >= Weight.GROWN_CM;
        }
        return entry.heightCm().orElse(0) >= Weight.LEAST_ADULT_CM;
    }

    private static double age(PatientEntry entry, boolean adult, List<String> assumed) {
        if (entry.ageYears().isPresent()) return entry.ageYears().getAsDouble();
        double age;
        if (adult) {
            age = ASSUMED_AGE_YEARS;
        } else if (entry.heightCm().isPresent()) {
            age = ageWhere(true, entry.heightCm().getAsDouble());
        } else if (entry.weightKg().isPresent()) {
            age = ageWhere(false, entry.weightKg().getAsDouble());
        } else {
            throw new IllegalArgumentException("a patient needs a height, or for a child an age or a weight");
        }
        assumed.add(adult ? "age taken as %s years".formatted(round(age, 0)) : "age taken as %s years, from %s".formatted(round(age, 1), entry.heightCm().isPresent() ? "height" : "weight"));
        return age;
    }

    /** The age at which a child usually has this height or weight, years, 0 to 12.9. */
    private static double ageWhere(boolean height, double value) {
        double low = 0, high = 12.9;
        for (int i = 0; i < 50; i++) {
            double mid = 0.5 * (low + high);
            if ((height ? Weight.childHeightCm(mid) : Weight.childByAgeKg(mid)) < value) low = mid; else high = mid;
        }
        return 0.5 * (low + high);
    }

    private static double predictedKg(PatientEntry entry, boolean adult, double age, double height, List<String> assumed) {
        if (adult) {
            if (entry.heightCm().isEmpty()) throw new IllegalArgumentException("an adult needs a height");
            return Weight.predictedAdultKg(entry.sex(), height);
        }
        if (age >= 1 && entry.heightCm().isPresent() && height >= 70) {
            return height < Weight.GROWN_CM ? Weight.childByHeightKg(height) : Weight.predictedAdultKg(entry.sex(), height);
        }
        if (entry.weightKg().isPresent()) {
            double weight = entry.weightKg().getAsDouble();
            if (entry.ageYears().isEmpty() || age < 1) return weight;
            double most = age < TEEN_YEARS ? HEAVY * Weight.childByAgeKg(age) : Weight.predictedAdultKg(entry.sex(), height);
            if (weight <= most) return weight;
            assumed.add("predicted weight held at %s kg, the most that is usual for the age, for no height is given: breaths follow it, not the %s kg weighed".formatted(round(most, 1), round(weight, 1)));
            return most;
        }
        double kg = Weight.childByAgeKg(age);
        if (Double.isNaN(kg)) throw new IllegalArgumentException("from 13 years there is no formula by age: give the weight or the height");
        assumed.add("predicted weight from age: %s kg".formatted(round(kg, 1)));
        return kg;
    }

    /** Static compliance of a ventilated patient without lung disease, mL/cmH2O. */
    public static double complianceMlPerCmH2O(double ageYears, double predictedKg) {
        double grown = Math.min(1, ageYears / GROWN_YEARS);
        return predictedKg * (INFANT_COMPLIANCE_PER_KG + grown * (ADULT_COMPLIANCE_PER_KG - INFANT_COMPLIANCE_PER_KG));
    }

    /** Resistance of lungs and airways without tube and filter, without lung disease, cmH2O·s/L. */
    public static double resistanceCmH2OSPerL(double ageYears) {
        for (int i = 1; i < RESISTANCE_YEARS.length; i++) {
            if (ageYears <= RESISTANCE_YEARS[i]) {
                double share = (ageYears - RESISTANCE_YEARS[i - 1]) / (RESISTANCE_YEARS[i] - RESISTANCE_YEARS[i - 1]);
                return RESISTANCE[i - 1] + share * (RESISTANCE[i] - RESISTANCE[i - 1]);
            }
        }
        return RESISTANCE[RESISTANCE.length - 1];
    }

    /** Gas in the lung of a healthy ventilated patient at zero PEEP: children by height to 11 years, adults by sex, height and age, in between by age. */
    static double frcMl(Sex sex, double age, boolean adult, double height, double bmi) {
        double child = LungVolume.ventilatedChildMl(height);
        if (age <= TEEN_LUNG_YEARS && !adult) return child;
        double grown = LungVolume.ventilatedAdultMl(sex, height, Math.max(age, GROWN_YEARS), bmi);
        double share = Math.min(1, (age - TEEN_LUNG_YEARS) / (GROWN_YEARS - TEEN_LUNG_YEARS));
        return adult && age >= GROWN_YEARS ? grown : (1 - share) * child + share * grown;
    }

    private static String round(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
