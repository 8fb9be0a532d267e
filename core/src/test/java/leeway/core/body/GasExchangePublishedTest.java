package leeway.core.body;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;
import leeway.core.gas.Barometer;
import leeway.core.run.Knob;
import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/**
 * Gas exchange in time and at rest against published courses. All bodies follow the program's rules for age and size; mask
 * preoxygenation is taken alike everywhere, as 95 % inspired (end-tidal about 0.9), and nothing was fitted to a row.
 */
class GasExchangePublishedTest {
    private static final String PATEL = "Patel 1994, mean, preoxygenated; tolerance 30 %, about two of its SD";
    private static final String BERTHOUD = "Berthoud et al., Br J Anaesth 1991;67:464, n 6";
    private static final String KOBAYASHI = "Kobayashi & Yokoyama, Masui 1994, mean and SD";
    private static final String METABOLISM = "we count a sedated adult at 0.85 of the resting metabolism (165 mL/min of carbon dioxide at 70 kg), and at the full 194 the row after next agrees; a smaller store would agree too, but ours is the published one (row below)";
    private static final String STORES = "the published size of the step is not known, and the body's stores are doubtful by 30 %; ours moves more slowly, half as fast down as remembered";
    private static final double MASK = 0.95;
    private static final PatientModel ADULT = Apnoea.healthy(Sex.MALE, 40, 175, 70);
    private static final PatientModel RESTING = ADULT.with(PatientModel.Change.NONE.metabolism(1 / 0.85, 1 / 0.85));

    private static final String ALTERMATT = "Altermatt et al., Br J Anaesth 2005;95:706, n 20, mean; tolerance two of its SD (38 and 28); eight deep breaths of oxygen";
    private static final String DIXON = "Dixon et al., Anesthesiology 2005;102:1110, n 42, mean; tolerance two of its SD (69 and 55)";
    private static final String STOCK = "Stock et al., J Clin Anesth 1988;1:96, end-tidal after breath holding, 20 volunteers; 7 in 10 s, 2 in the next, 6 a minute after";
    private static final String BARAKA = "Baraka et al., Anesth Analg 1992;75:757, abstract, 10 women, mean; size not given, ours 30 years, 160 cm, 65 kg; theirs is an oximeter's, some 20 s later than the artery; tolerance 30 %";
    private static final PatientModel WOMAN = Apnoea.healthy(Sex.FEMALE, 30, 160, 65), WOMAN_RESTING = WOMAN.with(PatientModel.Change.NONE.metabolism(1 / 0.85, 1 / 0.85));
    private static final PatientModel HEAVY = Apnoea.healthy(Sex.FEMALE, 40, 165, 109), HEAVIER = Apnoea.healthy(Sex.FEMALE, 40, 165, 128);
    private static final PatientModel UNWELL = ADULT.with(PatientModel.Change.NONE.metabolism(1.2, 1.2).cardiacOutput(1.2).lungVolume(0.8).shunt(0.1));

    static final List<Check> ROWS = List.of(
            computed("washout: lung 2.5 L, alveolar ventilation 4.2 L/min, 3 min of oxygen, alveolar oxygen", 0.94, 0.02, "", "washout law e^(-t/τ); end-tidal 0.9 or more",
                    GasExchangePublishedTest::washout),
            lookedUp("apnoea, airway closed, healthy adult of 70 kg, preoxygenated, to 90 %", 595, 178, "s", BERTHOUD + ", mean; SD 142, range 430 to 825; tolerance 30 %", () -> Apnoea.to(0.9, ADULT, MASK, 0)),
            fromMemory("apnoea, airway closed, healthy adult of 70 kg, alveolar oxygen 0.87, to 80 %", 522, 104, "s", "Benumof, Anesthesiology 1997;87:979, 8.7 min; within 20 %", () -> Apnoea.to(0.8, ADULT, 0.92, 0)),
            lookedUp("apnoea, airway closed, infant of 8 months, to 90 %", 96.5, 29, "s", PATEL, () -> Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 0.7, 71, 8.2), MASK, 0)),
            lookedUp("apnoea, airway closed, child of 3.5 years, to 90 %", 160, 48, "s", PATEL, () -> Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 3.5, 98, 15), MASK, 0)),
            lookedUp("apnoea, airway closed, adult of 127 kg and 165 cm, to 90 %", 131.5, 76.5, "s", BERTHOUD + ", morbidly obese, range 55 to 208", () -> Apnoea.to(0.9, Apnoea.healthy(Sex.FEMALE, 40, 165, 127), MASK, 0)),
            lookedUp("apnoea, airway closed, adolescent of 14 years, to 90 %", 382.4, 115, "s", "Patel et al., Can J Anaesth 1994;41:771, 11 to 18 years, mean; SD 80; tolerance 30 %", () -> Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 14, 163, 50), MASK, 0)),
            lookedUp("apnoea, airway closed, adult, to 90 %", 462, 139, "s", "Huang et al., Chin J Clin Med 2008, 20 adults, abstract; two minutes of oxygen; no SD given, tolerance 30 %", () -> Apnoea.to(0.9, ADULT, MASK, 0)),
            lookedUp("apnoea, airway closed, woman lying flat, metabolism of one awake until then, to 95 %", 243, 73, "s", BARAKA, () -> Apnoea.to(0.95, WOMAN_RESTING, MASK, 0)),
            lookedUp("the same, sedated as all our patients", 243, 73, "s", BARAKA, () -> Apnoea.to(0.95, WOMAN, MASK, 0)),
            lookedUp("the same, half sitting", 331, 99, "s", BARAKA, () -> Apnoea.to(0.95, posture(WOMAN, "semi-recumbent"), MASK, 0)),
            lookedUp("apnoea, airway closed, obese adult (index 40), supine, to 90 %", 162, 76, "s", ALTERMATT, () -> Apnoea.to(0.9, HEAVY, MASK, 0)),
            lookedUp("the same after breathing oxygen sitting", 214, 56, "s", ALTERMATT, () -> Apnoea.to(0.9, posture(HEAVY, "sitting"), MASK, 0)),
            lookedUp("apnoea, airway closed, severely obese adult (index 47), supine, to 92 %", 155, 138, "s", DIXON, () -> Apnoea.to(0.92, HEAVIER, MASK, 0)),
            lookedUp("the same, 25 degrees head up (index 45)", 201, 110, "s", DIXON, () -> Apnoea.to(0.92, posture(HEAVIER, "head up"), MASK, 0)).missedBecause("ours is earlier, the cautious side: so small a lung has closed in part before its oxygen is used; whether their airway was closed is not known"),
            lookedUp("gain from lying to 25 degrees head up in the severely obese", 1.30, 0.25, "", "Dixon 2005: 201 over 155 s", () -> Apnoea.to(0.92, posture(HEAVIER, "head up"), MASK, 0) / Apnoea.to(0.92, HEAVIER, MASK, 0)),
            fromMemory("apnoea, airway closed, moderately ill adult of 70 kg, alveolar oxygen 0.87, to 80 %", 330, 99, "s", "Benumof, Anesthesiology 1997;87:979, 5.5 min; ours with 1.2 of the metabolism, 0.8 of the lung, shunt 10 %; within 30 %", () -> Apnoea.to(0.8, UNWELL, 0.92, 0)),
            fromMemory("apnoea, airway closed, child of 10 kg, alveolar oxygen 0.87, to 80 %", 222, 67, "s", "Benumof 1997, 3.7 min; within 30 %", () -> Apnoea.to(0.8, Apnoea.healthy(Sex.MALE, 1, 76, 10), 0.92, 0))
                    .missedBecause("theirs is computed, not measured, with a larger lung; measured in this age, 96.5 s to 90 % (row above), and ours lies near that. The cautious side"),
            fromMemory("apnoea, airway closed, obese adult of 127 kg, alveolar oxygen 0.87, to 80 %", 186, 56, "s", "Benumof 1997, 3.1 min; within 30 %", () -> Apnoea.to(0.8, Apnoea.healthy(Sex.MALE, 40, 175, 127), 0.92, 0)),
            fromMemory("apnoea, airway closed, healthy adult on air, to 90 %", 55, 25, "s", "textbook, about a minute; 30 to 80 s", () -> Apnoea.to(0.9, ADULT, 0.21, 0)),
            lookedUp("rise of PaCO2 in the first minute of apnoea, anaesthetised", 9.8, 1.9, "mmHg", KOBAYASHI, () -> rise(ADULT, 0, 1)),
            lookedUp("rise of PaCO2 in each later minute", 3.9, 0.5, "mmHg/min", KOBAYASHI, () -> rise(ADULT, 1, 5) / 4).missedBecause(METABOLISM),
            lookedUp("the same at resting metabolism: first minute", 9.8, 1.9, "mmHg", KOBAYASHI, () -> rise(RESTING, 0, 1)),
            lookedUp("the same at resting metabolism: each later minute", 3.9, 0.5, "mmHg/min", KOBAYASHI, () -> rise(RESTING, 1, 5) / 4),
            lookedUp("rise of carbon dioxide in the first 20 s of apnoea, awake, ours arterial 8 s later", 9, 3, "mmHg", STOCK, () -> rise(RESTING, 8.0 / 60, 28.0 / 60)),
            lookedUp("the same, each minute after", 6, 1.5, "mmHg/min", STOCK, () -> rise(RESTING, 28.0 / 60, 88.0 / 60))
                    .missedBecause("they were awake and held their breath, at a metabolism nobody measured; ours is the resting one, and its tissues take up most of what comes in that minute"),
            lookedUp("store of carbon dioxide in blood and tissue, early", 1.5, 0.3, "mL/kg/mmHg", "Farhi & Rahn, J Appl Physiol 1955, dogs, abstract; tissue alone 1.02. Bone and fat, slower: 3.7 in another series", GasExchangePublishedTest::store),
            fromMemory("rise of PaCO2 late in apnoea open to oxygen, as in the test of brain death", 3, 1, "mmHg/min", "textbook, 2 to 4", () -> rise(ADULT, 2, 5, 8) / 3),
            fromMemory("apnoea open to oxygen, healthy adult, saturation after 10 min", 1, 0.02, "", "Frumin, Epstein & Cohen, Anesthesiology 1959;20:789: no desaturation in tens of minutes", () -> Apnoea.run(ADULT, 1, 2, 640).at(900, 3)),
            fromMemory("air at 8000 ft, healthy, spontaneous PaCO2 of 36 mmHg", 65, 5, "mmHg", "aviation medicine text, 8.7 kPa", GasExchangePublishedTest::cabin),
            lookedUp("a few hours at 4559 m, PaCO2 30 mmHg", 39.6, 4.5, "mmHg", "arterial gas in a mountain hut, 14 healthy subjects, mean and SD; review table, Eur Respir Rev; ours in the standard atmosphere", () -> high(4559, 30)),
            fromMemory("saturation at 8000 ft, healthy, PaCO2 36 mmHg", 0.93, 0.02, "", "Muhm et al., N Engl J Med 2007;357:18: four points below sea level", () -> at(8000 * 0.3048, 36).sao2()),
            computed("washout: the same after 1 min", 0.772, 0.02, "", "washout law of the lung and half a breath, τ = 39.3 s: nitrogen 0.79·e^(−60/τ), carbon dioxide 0.056", () -> washout(60)),
            computed("washout: the same after 2 min", 0.907, 0.02, "", "washout law of the lung and half a breath, τ = 39.3 s: nitrogen 0.79·e^(−120/τ), carbon dioxide 0.056", () -> washout(120)),
            lookedUp("physiological dead space over tidal volume, healthy, 500 mL", 0.3, 0.06, "", "anaesthesia handbook, formulas: normal is about 0.3", () -> at(0, 40).deadSpaceMl() / 500),
            computed("hyperbola in the whole patient: PaCO2 at 1.5 times the rate over before", 0.667, 0.012, "", "863 law", () -> atRate(18) / atRate(12)),
            computed("hyperbola in the whole patient: PaCO2 at half the rate over before", 2, 0.06, "", "863 law; oxygen kept sets a little aside", () -> atRate(6) / atRate(12)),
            fromMemory("half-time of PaCO2 after ventilation is doubled", 3, 1.5, "min", "Nunn: 3 min", () -> halfTime(2)).missedBecause(STORES),
            fromMemory("half-time of PaCO2 after ventilation is halved", 16, 6, "min", "Nunn: 16 min", () -> halfTime(0.5)).missedBecause(STORES),
            lookedUp("half-time of PaCO2 to a new level", 4, 2, "min", "Farhi & Rahn, J Appl Physiol 1955, read in a copy; size of the step not given", () -> halfTime(2)));

    private static PatientModel posture(PatientModel patient, String position) {
        return patient.with(PatientModel.Change.NONE.lungVolume(Posture.lungVolumeTimes(position)));
    }

    /** Carbon dioxide in blood and tissue at two steady levels 10 mmHg apart, per kg and mmHg. */
    private static double store() {
        Run usual = new Run(ADULT, 500, 12, 0, 0.4), less = new Run(ADULT, 500, 10, 0, 0.4);
        return (less.gas.bodyCo2Ml(less.now) - usual.gas.bodyCo2Ml(usual.now)) / ADULT.weightKg() / (less.steady.paco2MmHg() - usual.steady.paco2MmHg());
    }

    private static SteadyGases at(double altitudeM, double paco2) {
        PatientModel healthy = Sample.of(2500, 0.03, 0, 0, 150, 242, 0.8, 5, 15);
        double mmHg = Barometer.pressureMmHg(altitudeM), rate = 12;
        for (int i = 0; i < 20; i++) rate *= SteadyGases.of(healthy, new Ventilation(500, rate, 0.21, mmHg, 0)).paco2MmHg() / paco2;
        return SteadyGases.of(healthy, new Ventilation(500, rate, 0.21, mmHg, 0));
    }

    private static double high(double altitudeM, double paco2) {
        return at(altitudeM, paco2).pao2MmHg();
    }

    private static double atRate(double rate) {
        return SteadyGases.of(ADULT, new Ventilation(500, rate, 0.4, 760, 0)).paco2MmHg();
    }

    private static double washout() {
        return washout(180);
    }

    private static double washout(double afterS) {
        PatientModel patient = Sample.of(2500, 0, 0, 0, 150, 206, 0.8, 5, 15);
        Run run = new Run(patient, 500, 12, 0, 0.21).change(60, Knob.FIO2_SET, 1).to(61 + afterS);
        return run.at(60 + afterS, 9) / 713;
    }

    private static double rise(PatientModel patient, double fromMin, double toMin) {
        return rise(patient, 0, fromMin, toMin);
    }

    private static double rise(PatientModel patient, double mouthGas, double fromMin, double toMin) {
        Run run = Apnoea.run(patient, 1, mouthGas, 500);
        return run.at(300 + 60 * toMin, 1) - run.at(300 + 60 * fromMin, 1);
    }

    private static double cabin() {
        double mmHg = Barometer.pressureMmHg(8000 * 0.3048), rate = 12;
        PatientModel healthy = Sample.of(2500, 0.03, 0, 0, 150, 242, 0.8, 5, 15);
        for (int i = 0; i < 20; i++) rate *= SteadyGases.of(healthy, new Ventilation(500, rate, 0.21, mmHg, 0)).paco2MmHg() / 36;
        return SteadyGases.of(healthy, new Ventilation(500, rate, 0.21, mmHg, 0)).pao2MmHg();
    }

    /** Minutes until PaCO2 has gone half of the way to its new level. */
    private static double halfTime(double times) {
        double rate = 12;
        PatientModel patient = ADULT;
        Run run = new Run(patient, 500, rate, 0, 0.4).change(60, Knob.RATE_SET, rate * times).to(60 + 6 * 3600);
        double from = run.at(60, 1), to = SteadyGases.of(patient, new Ventilation(500, rate * times, 0.4, 760, 0)).paco2MmHg(), half = 0.5 * (from + to);
        for (double[] row : run.rows) if (row[0] > 60 && (row[1] - half) * (to - from) > 0) return (row[0] - 60) / 60;
        return Double.POSITIVE_INFINITY;
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
