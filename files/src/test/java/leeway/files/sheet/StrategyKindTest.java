package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leeway.core.settings.Strategy;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Place;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrategyKindTest {
    @TempDir Path folder;

    @Test
    void theTenStrategiesComeAlong() {
        assertThat(Catalogue.builtIn().names("strategy")).contains("lung protective", "obstructive", "head injury", "after cardiac arrest", "blood loss", "child",
                "infant", "obese", "pressure support", "start by weight band");
    }

    private List<String> complaints(String text) throws IOException {
        Files.writeString(folder.resolve("ours.yaml"), text);
        Catalogue own = Catalogue.of(List.of(folder));
        Complaints c = new Complaints();
        c.addAll(own.problems());
        own.sheet(Kinds.STRATEGY, "ours", Place.start("t.yaml"), c);
        return c.all().stream().map(Complaint::line).map(l -> l.replace(folder + "/", "")).toList();
    }

    private static String continued(String settings) { return "strategy: ours\nlike: lung protective\nsource: our service\nsettings:\n" + settings; }

    @Test
    void aServiceChangesOneRuleAndKeepsTheRest() throws IOException {
        assertThat(complaints(continued("  tidal volume: {is: 7 mL/kg * predicted body weight, from: 5 mL/kg * predicted body weight, to: 8 mL/kg * predicted body weight, why: ours}\n"))).isEmpty();
        Strategy ours = Catalogue.of(List.of(folder)).read(Kinds.STRATEGY, "ours").good().orElseThrow();
        assertThat(ours.rules().get(leeway.core.kit.Setting.TIDAL_VOLUME).source()).isEqualTo("our service");
        assertThat(ours.targets()).isNotEmpty();
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', value = {
        "peep: {is: 5 kPa + 1 L, why: x} | 5:20: a pressure cannot be added to a volume.",
        "peep: {is: 'PEEP for oxigen(fio2)', why: x} | 5:15: there is no function or table \"PEEP for oxigen\".",
        "peep: {is: 5, why: x} | 5:14: this is a plain number, a pressure belongs here.",
        "peep: {is: 5 cmH2O * , why: x} | 5:23: a value is missing before the end.",
        "rate: {is: 0.33 / inspiratory time, why: x} | this never ends: ",
        "peep: {is: 5 cmH2O / (fio2 - fio2), why: x} | 5:22: division by zero for a patient of 3.5 kg",
        "peep: {is: 5 cmH2O, why: 'for {wieght}'} | 5:33: there is no \"wieght\" to show.",
        "peep: {is: 5 cmH2O} | 5:9: a setting's rule has no \"why\".",
        "mode: {is: A/C-XX, why: x} | 5:14: there is no \"A\" here."})
    void aBadRuleIsRefusedAtItsPlace(String rule, String expected) throws IOException {
        assertThat(complaints(continued("  " + rule + "\n"))).isNotEmpty().first().asString().contains(expected);
    }
}
