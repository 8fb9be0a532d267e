package leeway.core.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.expression.Formula;
import leeway.core.expression.Table;
import leeway.core.expression.Type;
import leeway.core.kit.Setting;
import leeway.core.quantity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProofTest {
    private static Strategy sound() {
        Strategy s = Sheets.strategy();
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(s.rules());
        rules.put(Setting.RATE, Sheets.rule("20 /min", "6 /min", "35 /min", "usual"));
        rules.put(Setting.SUPPORT_PRESSURE, Sheets.rule("10 cmH2O", "usual"));
        return new Strategy(s.name(), s.plain(), s.names(), s.tables(), s.mode(), rules, s.targets(), s.source());
    }

    private static Strategy with(Setting setting, String is, String why) {
        Strategy s = sound();
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(s.rules());
        rules.put(setting, Sheets.rule(is, why));
        return new Strategy(s.name(), s.plain(), s.names(), s.tables(), s.mode(), rules, s.targets(), s.source());
    }

    @Test
    void aSoundSheetHasNoDefect() { assertThat(Proof.of(sound())).isEmpty(); }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(delimiter = '|', value = {
        "rate | 20 | this is a plain number, a rate belongs here",
        "rate | 12 L/min / tidal volume + 3 s | a rate cannot be added to a time",
        "rate | 1 / inspiratory time | this never ends: rate needs inspiratory time needs rate",
        "peep | pause * 1 cmH2O / 1 s | this sheet has no rule for the pause",
        "peep | 5 kPa | a peep of 51 cmH2O for a patient of 3.5 kg, 50 cm and 0.01 years is impossible",
        "tidal volume | 0.3 L / abs(age / 1 year - 8) | division by zero for a patient of 31 kg, 128 cm and 8 years",
        "tidal volume | clamp(6 mL/kg * weight, 50 mL, 6 mL/kg * predicted body weight) | clamp has its lower end above its upper one for a patient of 3.5 kg"})
    void everyDefectIsNamed(String setting, String is, String message) {
        List<Proof.Defect> defects = Proof.of(with(Setting.ofWords(setting).orElseThrow(), is, "because"));
        assertThat(defects).isNotEmpty();
        assertThat(defects.get(0).slip().what()).startsWith(message);
        assertThat(defects.get(0).path()).containsSubsequence("settings");
    }

    @Test
    void whatASentenceShowsMustExistInItsUnit() {
        assertThat(Proof.of(with(Setting.PEEP, "5 cmH2O", "for {wight}")).get(0).slip().what()).isEqualTo("there is no \"wight\" to show");
        assertThat(Proof.of(with(Setting.PEEP, "5 cmH2O", "for {weight in furlong}")).get(0).slip().what()).isEqualTo("\"furlong\" is no unit");
        assertThat(Proof.of(with(Setting.PEEP, "5 cmH2O", "for {weight in mL}")).get(0).slip().what()).isEqualTo("{weight} is a mass, not in mL");
        assertThat(Proof.of(with(Setting.PEEP, "5 cmH2O", "for {weight in g}"))).isEmpty();
    }

    @Test
    void whatNothingUsesIsADefect() {
        Strategy s = sound();
        Map<String, Strategy.Named> names = new LinkedHashMap<>(s.names());
        names.put("spare", new Strategy.Named(Formula.of("3 s"), ""));
        Table table = new Table("lonely", Type.NUMBER, Type.of(Kind.AIRWAY_PRESSURE), false, List.of(new Table.Row(0, 1)), "");
        List<Proof.Defect> defects = Proof.of(new Strategy("x", "", names, Map.of("lonely", table), s.mode(), s.rules(), List.of(), ""));
        assertThat(defects).extracting(d -> d.slip().what()).containsExactly("nothing uses \"spare\"", "nothing looks up in \"lonely\"");
    }

    @Test
    void aSheetMustKnowTheSettingsOfEveryMode() {
        Strategy s = sound();
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(s.rules());
        rules.remove(Setting.SUPPORT_PRESSURE);
        assertThat(Proof.of(new Strategy("x", "", s.names(), Map.of(), s.mode(), rules, List.of(), "")).get(0).slip().what())
                .isEqualTo("this sheet has no rule for the support pressure above PEEP, which mode SIMV-VC\\PS needs");
    }

    @Test
    void aTargetIsCheckedAgainstItsMeasure() {
        Strategy s = sound();
        Strategy.Target wrong = new Strategy.Target(Measure.PACO2, Optional.empty(), Optional.of(Formula.of("6 mL")), "");
        Strategy.Target turned = new Strategy.Target(Measure.PACO2, Optional.of(Formula.of("6 kPa")), Optional.of(Formula.of("40 mmHg")), "");
        assertThat(Proof.of(new Strategy("x", "", s.names(), Map.of(), s.mode(), s.rules(), List.of(wrong), "")).get(0).slip().what()).isEqualTo("this is a volume, a pressure belongs here");
        assertThat(Proof.of(new Strategy("x", "", s.names(), Map.of(), s.mode(), s.rules(), List.of(turned), "")).get(0).slip().what()).startsWith("from lies above to");
    }
}
