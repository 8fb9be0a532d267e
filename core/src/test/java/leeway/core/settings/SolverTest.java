package leeway.core.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.expression.Formula;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.settings.Solved.Kept;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SolverTest {
    private static final Ventilator DEVICE = Sheets.ventilator(Sheets.ranges(), Mode.AC_VC, Mode.AC_PC, Mode.CSV_PS);
    private static final Lung LUNG = new Lung(34, 17, 140, 195, 61.516, 0.75);
    private static final Lung STIFF = new Lung(11, 15, 180, 240, 61.516, 0.8);
    private static final Lung NARROW = new Lung(50, 45, 160, 220, 61.516, 0.6);

    private static Strategy.Target target(Measure m, String from, String to) {
        return new Strategy.Target(m, Optional.ofNullable(from).map(Formula::of), Optional.ofNullable(to).map(Formula::of), "test");
    }

    private static Strategy strategy(Strategy.Target... targets) {
        Strategy s = Sheets.strategy();
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(s.rules());
        rules.put(Setting.FIO2, Sheets.rule("40 %", "30 %", "100 %", "a start"));
        rules.put(Setting.PEEP, Sheets.rule("8 cmH2O", "5 cmH2O", "15 cmH2O", "a start"));
        rules.put(Setting.INSPIRATORY_TIME, Sheets.rule("0.33 / rate", "0.5 s", "1.5 s", "a third"));
        rules.put(Setting.INSPIRATORY_PRESSURE, Sheets.rule("tidal volume / compliance", "5 cmH2O", "25 cmH2O", "for the volume"));
        return new Strategy(s.name(), s.plain(), s.names(), s.tables(), s.mode(), rules, List.of(targets), s.source());
    }

    private static Strategy usual() {
        return strategy(target(Measure.PLATEAU, null, "30 cmH2O"), target(Measure.SATURATION, "92 %", null), target(Measure.VOLUME_PER_WEIGHT, "4 mL/kg", "8 mL/kg"),
                target(Measure.AUTO_PEEP, null, "5 cmH2O"), target(Measure.PH, "7.30", "7.45"));
    }

    private static Solved solve(Settings prescribed, Strategy strategy, Lung lung) {
        return Solver.solve(Sheets.WOMAN, Sheets.PNEUMONIA, DEVICE, prescribed, strategy, lung);
    }

    @Test
    void nothingMovesWhereTheStartKeepsEveryTarget() {
        Solved s = solve(Settings.NONE.with(Setting.FIO2, 0.8), usual(), LUNG);
        assertThat(s.conflicts()).isEmpty();
        assertThat(s.suggested()).isEqualTo(Suggest.settings(Sheets.WOMAN, Sheets.PNEUMONIA, DEVICE, Settings.NONE.with(Setting.FIO2, 0.8), usual()));
    }

    @Test
    void whatMovesSaysWhyAndStaysInTheDevicesSteps() {
        Solved s = solve(Settings.NONE.with(Setting.RATE, 12), usual(), LUNG);
        assertThat(s.conflicts()).isEmpty();
        double volume = s.suggested().settings().get(Setting.TIDAL_VOLUME).getAsDouble();
        assertThat(volume).isGreaterThan(370).isLessThanOrEqualTo(8 * 61.516);
        assertThat(volume % 10).isCloseTo(0, within(1e-9));
        assertThat(s.suggested().because()).anyMatch(b -> b.setting().equals("tidal volume") && b.why().startsWith("raised from 370 mL so that")
                && b.why().contains("pH keeps to 7.30 to 7.45"));
        assertThat(s.kept()).allMatch(k -> k.miss() == 0);
    }

    @Test
    void aStiffLungIsGivenUpInTheStrategysOrder() {
        Solved s = solve(Settings.NONE, usual(), STIFF);
        assertThat(s.kept().get(0).miss()).as("plateau is kept to the end").isZero();
        assertThat(s.conflicts()).isNotEmpty();
        assertThat(s.conflicts().get(s.conflicts().size() - 1).missed().measure()).isEqualTo(Measure.PH);
        assertThat(s.conflicts().get(s.conflicts().size() - 1).sentence()).startsWith("pH comes to 7.").contains("plateau pressure of");
    }

    @Test
    void twiceTheSameQuestionGivesTheSameAnswer() {
        assertThat(solve(Settings.NONE, usual(), STIFF)).isEqualTo(solve(Settings.NONE, usual(), STIFF));
    }

    /** A brute-force search over every step of the device must find nothing better. */
    @Test
    void noStepOfTheDeviceIsBetterThanWhatTheSolverFound() {
        for (Lung lung : List.of(LUNG, STIFF, NARROW)) {
            Strategy strategy = strategy(target(Measure.PLATEAU, null, "28 cmH2O"), target(Measure.PH, "7.32", "7.45"));
            Settings fixed = Settings.NONE.with(Setting.FIO2, 0.6).with(Setting.PEEP, 8).with(Setting.INSPIRATORY_TIME, 0.8);
            Solved s = solve(fixed, strategy, lung);
            double plateau = s.kept().get(0).miss();
            double ph = s.kept().get(1).miss();
            for (double vt = 250; vt <= 490; vt += 10) {
                for (double rate = 6; rate <= 35; rate++) {
                    Outlook o = lung.at(fixed.with(Setting.TIDAL_VOLUME, vt).with(Setting.RATE, rate));
                    double missPlateau = Math.max(0, o.of(Measure.PLATEAU).getAsDouble() - 28);
                    double missPh = Math.max(0, Math.max(7.32 - o.of(Measure.PH).getAsDouble(), o.of(Measure.PH).getAsDouble() - 7.45));
                    boolean better = missPlateau < plateau - 0.01 || missPlateau <= plateau + 1e-9 && missPh < ph - 0.002;
                    assertThat(better).as("%s mL × %s /min: plateau %s, pH %s; found %s, %s", vt, rate, missPlateau, missPh, plateau, ph).isFalse();
                }
            }
        }
    }

    record Wish(String name, Settings prescribed, Strategy strategy, Lung lung, Measure missed, String because) {
        @Override public String toString() { return name; }
    }

    static List<Wish> wishes() {
        Settings none = Settings.NONE;
        List<Wish> w = new ArrayList<>();
        w.add(new Wish("pH 7.4 with 4 mL/kg at rate 10", none.with(Setting.TIDAL_VOLUME, 250).with(Setting.RATE, 10), strategy(target(Measure.PH, "7.38", "7.42")), LUNG, Measure.PH, "what is prescribed stands against it"));
        w.add(new Wish("PaCO2 70 with 6 mL/kg at rate 8", none.with(Setting.RATE, 8), strategy(target(Measure.VOLUME_PER_WEIGHT, null, "6 mL/kg"), target(Measure.PACO2, null, "70 mmHg")), LUNG, Measure.PACO2, "tidal volume per body weight of"));
        w.add(new Wish("plateau below 20 at PEEP 15", none.with(Setting.PEEP, 15), strategy(target(Measure.PLATEAU, null, "20 cmH2O")), LUNG, Measure.PLATEAU, "PEEP 15 cmH2O"));
        w.add(new Wish("driving pressure 8 and pH 7.4 in a stiff lung", none, strategy(target(Measure.DRIVING, null, "8 cmH2O"), target(Measure.PH, "7.38", null)), STIFF, Measure.DRIVING, "nothing that the strategy lets move"));
        w.add(new Wish("saturation 95 % in air", none.with(Setting.FIO2, 0.21), strategy(target(Measure.SATURATION, "95 %", null)), LUNG, Measure.SATURATION, "FiO2 21 %"));
        w.add(new Wish("no auto-PEEP at rate 30 in narrow airways", none.with(Setting.RATE, 30), strategy(target(Measure.AUTO_PEEP, null, "1 cmH2O")), NARROW, Measure.AUTO_PEEP, "rate 30 /min"));
        w.add(new Wish("normal CO2 and little auto-PEEP in narrow airways", none, strategy(target(Measure.AUTO_PEEP, null, "2 cmH2O"), target(Measure.VOLUME_PER_WEIGHT, null, "7 mL/kg"), target(Measure.PACO2, null, "40 mmHg")), NARROW, Measure.PACO2, "auto-PEEP of"));
        w.add(new Wish("8 mL/kg under a plateau of 30 in a stiff lung", none.with(Setting.TIDAL_VOLUME, 490), strategy(target(Measure.PLATEAU, null, "30 cmH2O")), STIFF, Measure.PLATEAU, "tidal volume 490 mL"));
        w.add(new Wish("power under 5 J/min with normal CO2 in a stiff lung", none, strategy(target(Measure.MECHANICAL_POWER, null, "5 J/min"), target(Measure.PACO2, null, "45 mmHg")), STIFF, Measure.PACO2, "mechanical power of"));
        w.add(new Wish("PaCO2 35 with an inspiratory pressure of 8", none.with(Mode.AC_PC).with(Setting.INSPIRATORY_PRESSURE, 8), strategy(target(Measure.PACO2, null, "35 mmHg")), LUNG, Measure.PACO2, "inspiratory pressure above PEEP 8 cmH2O"));
        return w;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wishes")
    void anImpossibleWishNamesItsConflict(Wish wish) {
        Solved s = solve(wish.prescribed(), wish.strategy(), wish.lung());
        assertThat(s.conflicts()).isNotEmpty();
        Solved.Conflict c = s.conflicts().get(0);
        assertThat(c.missed().measure()).isEqualTo(wish.missed());
        assertThat(c.missed().miss()).isPositive();
        assertThat(c.sentence()).contains(wish.because());
        for (Kept k : c.against()) assertThat(k.miss()).isPositive();
    }
}
