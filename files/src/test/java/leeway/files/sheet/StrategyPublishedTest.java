package leeway.files.sheet;

import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import java.util.OptionalDouble;
import leeway.Check;
import leeway.core.body.Weight;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.settings.Measure;
import leeway.core.settings.PatientFacts;
import leeway.core.settings.Solver;
import leeway.core.settings.Strategy;
import leeway.core.settings.Suggest;
import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The strategies that come along against the guidance that they name: tables, first settings, targets. */
class StrategyPublishedTest {
    private static final Catalogue SHEETS = Catalogue.builtIn();
    private static final String ARDSNET = "ARDS Network, N Engl J Med 2000;342:1301, low PEEP table of its protocol card";
    private static final String ASTHMA = "Singapore Med J 2022;63:535, table 3";
    private static final String PALICC = "Paediatric Acute Lung Injury Consensus 2, Pediatr Crit Care Med 2023;24:143, synthesis of recommendations";
    private static final String OBESE = "University of Maryland emergency medicine, teaching note of 16 April 2019";
    private static final String BRAIN = "Picetti, Crit Care 2020;24:158: the most common target 36 to 40 mmHg, its middle";
    private static final PatientFacts WOMAN = adult(Sex.FEMALE, 170, 70);
    private static final PatientFacts MAN = adult(Sex.MALE, 175, 75);
    private static final PatientFacts HEAVY = adult(Sex.MALE, 175, 130);
    private static final PatientFacts CHILD = new PatientFacts(Sex.MALE, 4, 103, 16, 16, Effort.NONE, 16, 25, 55, 83, 0.05, 760);
    private static final PatientFacts INFANT = new PatientFacts(Sex.MALE, 0.02, 51, 3.5, 3.5, Effort.NONE, 3.8, 70, 12, 23, 0.05, 760);

    /** Half of the last printed digit, and the step of a device that sets whole millilitres and breaths. */
    static final List<Check> ROWS = List.of(
            lookedUp("PEEP at FiO2 30 %", 5, 0, "cmH2O", ARDSNET, () -> peep(0.30)),
            lookedUp("PEEP at FiO2 40 % (5 or 8: the lower)", 5, 0, "cmH2O", ARDSNET, () -> peep(0.40)),
            lookedUp("PEEP at FiO2 50 % (8 or 10: the lower)", 8, 0, "cmH2O", ARDSNET, () -> peep(0.50)),
            lookedUp("PEEP at FiO2 60 %", 10, 0, "cmH2O", ARDSNET, () -> peep(0.60)),
            lookedUp("PEEP at FiO2 70 % (10, 12 or 14: the lowest)", 10, 0, "cmH2O", ARDSNET, () -> peep(0.70)),
            lookedUp("PEEP at FiO2 80 %", 14, 0, "cmH2O", ARDSNET, () -> peep(0.80)),
            lookedUp("PEEP at FiO2 90 % (14, 16 or 18: the lowest)", 14, 0, "cmH2O", ARDSNET, () -> peep(0.90)),
            lookedUp("PEEP at FiO2 100 % (18 to 24: the lowest)", 18, 0, "cmH2O", ARDSNET, () -> peep(1)),
            lookedUp("lung protective: volume, woman of 170 cm at 6 mL/kg", 369, 0.5, "mL", "ARDS Network, N Engl J Med 2000;342:1301", () -> start("lung protective", WOMAN, Setting.TIDAL_VOLUME)),
            lookedUp("lung protective: volume, man of 175 cm at 6 mL/kg", 423, 0.5, "mL", "ARDS Network, N Engl J Med 2000;342:1301", () -> start("lung protective", MAN, Setting.TIDAL_VOLUME)),
            lookedUp("lung protective: most plateau", 30, 0, "cmH2O", "ARDS Network, N Engl J Med 2000;342:1301", () -> target("lung protective", WOMAN, Measure.PLATEAU, false)),
            lookedUp("lung protective: least pH", 7.30, 0, "1", "ARDS Network, N Engl J Med 2000;342:1301", () -> target("lung protective", WOMAN, Measure.PH, true)),
            lookedUp("lung protective: most pH", 7.45, 0, "1", "ARDS Network, N Engl J Med 2000;342:1301", () -> target("lung protective", WOMAN, Measure.PH, false)),
            lookedUp("lung protective: highest rate, whatever the CO2", 35, 0, "/min", "ARDS Network, N Engl J Med 2000;342:1301", () -> start("lung protective", hungry(), Setting.RATE)),
            lookedUp("obstructive: rate", 10, 0, "/min", ASTHMA, () -> start("obstructive", MAN, Setting.RATE)),
            lookedUp("obstructive: volume, man of 175 cm at 6 mL/kg", 423, 0.5, "mL", ASTHMA, () -> start("obstructive", MAN, Setting.TIDAL_VOLUME)),
            lookedUp("obstructive: PEEP", 5, 0, "cmH2O", ASTHMA, () -> start("obstructive", MAN, Setting.PEEP)),
            lookedUp("obstructive: FiO2", 0.50, 0, "1", ASTHMA, () -> start("obstructive", MAN, Setting.FIO2)),
            lookedUp("obstructive: least pH", 7.25, 0, "1", ASTHMA, () -> target("obstructive", MAN, Measure.PH, true)),
            lookedUp("head injury: PaCO2 aimed at", 38, 0, "mmHg", BRAIN, () -> (target("head injury", MAN, Measure.PACO2, true) + 1 + target("head injury", MAN, Measure.PACO2, false)) / 2),
            fromMemory("after cardiac arrest: least saturation", 0.94, 0, "1", "European Resuscitation Council 2021", () -> target("after cardiac arrest", MAN, Measure.SATURATION, true)),
            fromMemory("after cardiac arrest: most PaCO2", 45, 0, "mmHg", "European Resuscitation Council 2021", () -> target("after cardiac arrest", MAN, Measure.PACO2, false)),
            lookedUp("after cardiac arrest: volume per weight", 7, 1, "mL/kg", "Jentzer, J Crit Care 2017;39:97: 6 to 8 mL/kg", () -> 0.5 * Math.rint(2 * start("after cardiac arrest", MAN, Setting.TIDAL_VOLUME) / MAN.predictedBodyWeightKg())),
            lookedUp("child: most plateau", 28, 0, "cmH2O", PALICC, () -> target("child", CHILD, Measure.PLATEAU, false)),
            lookedUp("child: most driving pressure", 15, 0, "cmH2O", PALICC, () -> target("child", CHILD, Measure.DRIVING, false)),
            lookedUp("child: least saturation in mild and moderate disease", 0.92, 0, "1", PALICC, () -> target("child", CHILD, Measure.SATURATION, true)),
            lookedUp("child: most volume per weight", 8, 0, "mL/kg", PALICC, () -> target("child", CHILD, Measure.VOLUME_PER_WEIGHT, false)),
            lookedUp("usual rate at birth", 44, 0, "/min", "Fleming, Lancet 2011;377:1011", () -> usualRate(0.0)),
            lookedUp("usual rate at two years", 26, 0, "/min", "Fleming, Lancet 2011;377:1011", () -> usualRate(2.0)),
            lookedUp("infant: inspiratory time", 0.4, 0.1, "s", "neonatal handbook of a university hospital: 0.3 to 0.5 s", () -> start("infant", INFANT, Setting.INSPIRATORY_TIME)),
            lookedUp("infant: PEEP", 5, 1, "cmH2O", "neonatal handbook of a university hospital: 4 to 6 cmH2O", () -> start("infant", INFANT, Setting.PEEP)),
            lookedUp("obese: PEEP", 11, 1, "cmH2O", OBESE + ": 10 to 12", () -> start("obese", HEAVY, Setting.PEEP)),
            lookedUp("obese: volume goes by height, man of 175 cm and 130 kg", 423, 0.5, "mL", OBESE + ": 6 mL/kg ideal weight", () -> start("obese", HEAVY, Setting.TIDAL_VOLUME)),
            lookedUp("obese: most driving pressure", 15, 0, "cmH2O", OBESE, () -> target("obese", HEAVY, Measure.DRIVING, false)),
            lookedUp("obese: least saturation", 0.92, 0, "1", OBESE, () -> target("obese", HEAVY, Measure.SATURATION, true)));

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }

    private static PatientFacts adult(Sex sex, double heightCm, double weightKg) {
        double pbw = Weight.predictedAdultKg(sex, heightCm);
        return new PatientFacts(sex, 50, heightCm, weightKg, pbw, Effort.NONE, 50, 12, 2.2 * pbw, 200, 0.03, 760);
    }

    private static PatientFacts hungry() { return new PatientFacts(Sex.FEMALE, 50, 170, 70, WOMAN.predictedBodyWeightKg(), Effort.NONE, 20, 12, 250, 400, 0.2, 760); }

    private static Strategy strategy(String name) { return SHEETS.read(Kinds.STRATEGY, name).good().orElseThrow(); }

    private static Illness illness() { return SHEETS.read(Kinds.ILLNESS, "healthy lungs").good().orElseThrow(); }

    /** A device of whole steps over all sizes, so that the rules show and not the device. */
    private static Ventilator fine() {
        Ventilator t = SHEETS.read(Kinds.VENTILATOR, "example turbine").good().orElseThrow();
        java.util.Map<Setting, leeway.core.kit.Range> ranges = new java.util.EnumMap<>(t.ranges());
        ranges.put(Setting.TIDAL_VOLUME, new leeway.core.kit.Range(2, 2000, 1));
        ranges.put(Setting.RATE, new leeway.core.kit.Range(4, 80, 1));
        return new Ventilator(t.name(), t.drive(), List.of(Mode.values()), ranges, t.defaults(), t.called(), t.maxFlowLPerMin(), t.maxPressureCmH2O(), t.responseS(), t.expiratoryResistanceCmH2OSPerL(),
                t.compensatesCircuit(), t.compensatesLeak(), t.decelerating(), t.gas(), t.load(), t.battery(), t.sensors(), t.alarms(), t.apnoeaBackupAfterS(), t.massKg(), t.source());
    }

    private static Settings all(String strategy, PatientFacts p, Settings prescribed) { return Suggest.settings(p, illness(), fine(), prescribed, strategy(strategy)).settings(); }

    private static double start(String strategy, PatientFacts p, Setting s) { return all(strategy, p, Settings.NONE).get(s).orElseThrow(); }

    private static double peep(double fio2) { return all("lung protective", WOMAN, Settings.NONE.with(Setting.FIO2, fio2)).get(Setting.PEEP).orElseThrow(); }

    private static double target(String strategy, PatientFacts p, Measure m, boolean low) {
        var solved = Solver.solve(p, illness(), fine(), Settings.NONE, strategy(strategy), settings -> measure -> OptionalDouble.empty());
        var kept = solved.kept().stream().filter(k -> k.measure() == m).findFirst().orElseThrow();
        return (low ? kept.from() : kept.to()).orElseThrow();
    }

    /** The rate that the child's table gives where the CO2 of the moment asks for exactly as much. */
    private static double usualRate(double years) {
        Strategy child = strategy("child");
        var table = child.tables().get("usual rate");
        double seconds = years * 365.25 * 86_400;
        double rate = table.rows().get(0).value();
        for (var row : table.rows()) if (row.from() <= seconds + 1) rate = row.value();
        return Math.rint(rate * 60 * 1e6) / 1e6;
    }

}
