package leeway.core.body;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;
import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Weight, metabolism, lung volume, dead space: figures from print. */
class BodyPublishedTest {
    private static final String ARDSNET = "ARDS Network, N Engl J Med 2000;342:1301";
    private static final String APLS = "APLS 2011 edition, after Marikar, BMJ Innov 2015";
    private static final String NUMA = "Numa & Newth, J Appl Physiol 1996;80:1485";
    private static final String LINDAHL = "Lindahl, Br J Anaesth 1989;62:70";
    private static final String THORSTEINSSON = "Thorsteinsson, Anesthesiology 1990;73:876";

    private static final String GLI = "Global Lung Function Initiative, Eur Respir J 2021, table of equations, its spline of age (a few percent) left out; tolerance a tenth";

    static final List<Check> ROWS = List.of(
            computed("predicted body weight, man of 175 cm", 70.6, 0.05, "kg", ARDSNET, () -> Weight.predictedAdultKg(Sex.MALE, 175)),
            computed("predicted body weight, woman of 160 cm", 52.4, 0.05, "kg", ARDSNET, () -> Weight.predictedAdultKg(Sex.FEMALE, 160)),
            computed("predicted body weight, man of 152.4 cm", 50.0, 0.05, "kg", ARDSNET, () -> Weight.predictedAdultKg(Sex.MALE, 152.4)),
            computed("6 mL/kg, woman of 170 cm", 369, 0.5, "mL", ARDSNET, () -> 6 * Weight.predictedAdultKg(Sex.FEMALE, 170)),
            fromMemory("6 mL/kg, woman of 170 cm, as given in practice", 366, 3.66, "mL", "common practice, no source; within 1 %", () -> 6 * Weight.predictedAdultKg(Sex.FEMALE, 170)),
            lookedUp("weight at 6 months", 7, 0.05, "kg", APLS, () -> Weight.childByAgeKg(0.5)),
            lookedUp("weight at 4 years", 16, 0.05, "kg", APLS, () -> Weight.childByAgeKg(4)),
            lookedUp("weight at 8 years", 31, 0.05, "kg", APLS, () -> Weight.childByAgeKg(8)),
            lookedUp("airways of a newborn", 3.28, 0.005, "mL/kg", NUMA, () -> DeadSpace.anatomicalMlPerKg(0)),
            computed("airways at 6 years", 2.19, 0.005, "mL/kg", NUMA, () -> DeadSpace.anatomicalMlPerKg(6)),
            fromMemory("airways of an adult", 2.2, 0.05, "mL/kg", "Radford, J Appl Physiol 1955;7:451", () -> DeadSpace.anatomicalMlPerKg(40)),
            computed("airways of an adult with a tracheal tube, the tube itself left out", 1.15, 0.15, "mL/kg", "range 1.0 to 1.3, after Numa & Newth", () -> DeadSpace.withAirwayMlPerKg(40, 1)),
            lookedUp("oxygen used at 10 kg", 69.8, 0.05, "mL/min", LINDAHL, () -> Metabolism.childVo2MlPerMin(10)),
            lookedUp("carbon dioxide made at 10 kg", 54.4, 0.05, "mL/min", LINDAHL, () -> Metabolism.childVco2MlPerMin(10)),
            lookedUp("oxygen used, ventilated children of 2.8 to 20.5 kg, per kg, ours at 10 kg", 7.8, 2.0, "mL/min/kg", "Lindahl 1984, mean and SD", () -> Metabolism.ventilatedVo2MlPerMin(10, false) / 10),
            fromMemory("oxygen used at rest, 70 kg", 242, 0.5, "mL/min", "Brody 1945", () -> Metabolism.adultVo2MlPerMin(70)),
            computed("lung volume of a child of 100 cm, ventilated", 366, 2, "mL", THORSTEINSSON, () -> LungVolume.ventilatedChildMl(100)),
            computed("lung volume of a child of 100 cm, supine", 395, 5, "mL", "Bar-Yishay 1987", () -> LungVolume.supineChildMl(100)),
            lookedUp("oxygen used by a resting adult of 70 kg, awake", 3.0, 0.5, "mL/kg/min", "Lieberman, Anesthesiology 2000;92:407, abstract, eight volunteers of 19 to 25 years, mean and SD", () -> Metabolism.adultVo2MlPerMin(70) / 70),
            lookedUp("lung volume of an upright man of 175 cm and 40 years", 3.295, 0.33, "L", GLI, () -> LungVolume.uprightAdultMl(Sex.MALE, 175, 40) / 1000),
            lookedUp("lung volume of an upright woman of 160 cm and 30 years", 2.407, 0.24, "L", GLI, () -> LungVolume.uprightAdultMl(Sex.FEMALE, 160, 30) / 1000),
            lookedUp("lung volume at a PEEP of 5 cmH2O, ventilated without lung disease, over the predicted sitting one", 0.66, 0.07, "", "Bikker, Crit Care 2008;12:R145, abstract, mean; tolerance a tenth",
                    () -> (LungVolume.ventilatedAdultMl(Sex.MALE, 175, 45, 24) + 5 * Patients.complianceMlPerCmH2O(45, Weight.predictedAdultKg(Sex.MALE, 175))) / LungVolume.uprightAdultMl(Sex.MALE, 175, 45)),
            lookedUp("lung volume of an infant of 70 cm", 168, 5, "mL", "ATS/ERS infant reference, 95 % 119 to 237", () -> LungVolume.supineChildMl(70)),
            lookedUp("lung volume, ventilated infants under 1 year, per kg, ours at 6 months", 17, 4, "mL/kg", THORSTEINSSON, () -> LungVolume.ventilatedChildMl(Weight.childHeightCm(0.5)) / 7),
            lookedUp("lung volume, ventilated children over 1 year, per kg, ours at 4 years", 24, 6, "mL/kg", THORSTEINSSON, () -> LungVolume.ventilatedChildMl(Weight.childHeightCm(4)) / 16),
            fromMemory("lung volume at a body mass index of 40, supine, anaesthetised, man of 175 cm, 45 years", 0.9, 0.15, "L", "Pelosi, Anesth Analg 1998;87:654, about 0.8 to 1.0 L",
                    () -> LungVolume.ventilatedAdultMl(Sex.MALE, 175, 45, 40) / 1000),
            fromMemory("cardiac output at rest, 70 kg", 4.84, 0.05, "L/min", "0.20 weight^0.75, textbook scale", () -> Circulation.outputLPerMin(70, 40)),
            fromMemory("cardiac output of a newborn of 3.5 kg, per kg", 225, 25, "mL/min/kg", "textbook, 200 to 250", () -> 1000 * Circulation.outputLPerMin(3.5, 0) / 3.5));

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
