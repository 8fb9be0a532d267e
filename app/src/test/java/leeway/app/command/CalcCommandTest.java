package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leeway.core.calc.Calc;
import leeway.core.calc.Calcs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CalcCommandTest {
    static Stream<String> names() { return Calcs.all().stream().map(Calc::name); }

    /** The words of a shell line with double quotes. */
    private static String[] words(String name, String line) {
        List<String> words = new ArrayList<>(List.of("calc", name));
        Matcher m = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(line);
        while (m.find()) words.add(m.group(1) != null ? m.group(1) : m.group(2));
        return words.toArray(String[]::new);
    }

    @ParameterizedTest @MethodSource("names") void theExampleOfEveryCalcWorksAsTextAndAsJson(String name) throws Exception {
        Calc calc = Calcs.find(name).orElseThrow();
        String[] line = words(name, calc.example());
        Run text = Run.of(line);
        assertThat(text.exit()).as(text.err()).isZero();
        assertThat(text.out()).startsWith(name + ": ").contains("Working").contains("Source");
        assertThat(text.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(80));
        List<String> json = new ArrayList<>(List.of(line));
        json.addAll(List.of("--format", "json"));
        JsonNode node = new ObjectMapper().readTree(Run.of(json.toArray(String[]::new)).out());
        assertThat(node.get("calc").asText()).isEqualTo(name);
        assertThat(node.get("value").isNumber()).isTrue();
        assertThat(node.get("working")).isNotEmpty();
        assertThat(node.get("source").asText()).isNotBlank();
    }

    @ParameterizedTest @MethodSource("names") void helpOfEveryCalcStartsWithItsExample(String name) {
        Run run = Run.of("calc", name, "--help");
        assertThat(run.exit()).isZero();
        assertThat(run.out()).startsWith("Example:  leeway calc " + name + " --");
    }

    @Test void withoutANameItListsAllOfThem() { assertThat(Run.of("calc").out()).contains(names().toList()); }

    /** 200 bar at 15 °C read 161.4 bar at −20 °C: short equation of state (Span and Wagner 2003), computed apart from this program. */
    @Test void aNegativeTemperatureIsAValue() throws Exception {
        JsonNode node = new ObjectMapper().readTree(Run.of("calc", "gauge", "--pressure", "200 bar", "--temperature", "15 Cel", "--to", "-20 Cel", "--format=json").out());
        assertThat(node.get("pressureBar").asDouble()).isCloseTo(161.4, within(0.05));
        assertThat(Run.of("calc", "gauge", "--pressure=200 bar", "--temperature=15 Cel", "--to=-20 Cel").exit()).isZero();
    }

    @Test void whatIsWrongIsSaidInALineEachWithTheNearestName() {
        assertThat(Run.of("calc", "wieght").err()).startsWith("leeway: there is no calc \"wieght\". Did you mean \"weight\"?");
        Run run = Run.of("calc", "weight", "--sx", "female", "--height", "170");
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("Did you mean \"sex\"?").contains("has no unit").doesNotContain("Exception");
        assertThat(Run.of("calc", "weight", "--sex").err()).contains("has no value");
        assertThat(Run.of("calc", "weight", "female").err()).contains("stands alone");
        assertThat(Run.of("calc", "weight", "--sex", "male", "--sex", "female").err()).contains("is given twice");
    }
}
