package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MainTest {
    private static final List<Commands.Row> TABLE = List.of(new Commands.Row("echo", "say it back", "EchoCommand"),
            new Commands.Row("etch", "not there", "NoSuchCommand"));

    private static Run run(String... args) { return Run.of(TABLE, false, args); }

    @Test void withoutArgumentsItPrintsShortHelpThatStartsWithAnExample() {
        Run run = run();
        assertThat(run.exit()).isZero();
        assertThat(run.out()).startsWith("Example:  leeway plan examples/night-transfer.yaml\n").contains("  echo  say it back\n").contains("not a medical device");
        assertThat(run.out().lines().mapToInt(String::length).max().orElse(0)).isLessThanOrEqualTo(80);
        assertThat(run("--help")).isEqualTo(run);
        assertThat(run("help")).isEqualTo(run);
    }

    @Test void helpOfACommandStartsWithItsExample() {
        assertThat(run("echo", "--help").out()).startsWith("Example:  leeway echo holm\n").contains("--seed=N");
        assertThat(run("help", "echo")).isEqualTo(run("echo", "--help"));
    }

    @Test void anUnknownCommandNamesTheNearestAndExitsWith2() {
        Run run = run("ecoh");
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isEqualTo("leeway: there is no command \"ecoh\". Did you mean \"echo\"?\n");
        assertThat(run("zzzzzzzzzz").err()).isEqualTo("leeway: there is no command \"zzzzzzzzzz\". \"leeway --help\" lists the commands.\n");
    }

    @Test void anUnknownOptionNamesTheNearest() {
        Run run = run("echo", "holm", "--sead", "3");
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.err()).isEqualTo("leeway: \"leeway echo\" has no option \"--sead\". Did you mean \"--seed\"?\n");
    }

    @Test void aMissingOrWrongArgumentIsOneLine() {
        for (Run run : List.of(run("echo"), run("echo", "a", "b"), run("echo", "a", "--format", "xml"), run("echo", "a", "--seed", "x"), run("echo", "a", "--seed"))) {
            assertThat(run.exit()).isEqualTo(2);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).startsWith("leeway: ").endsWith("\n").satisfies(e -> assertThat(e.lines()).hasSize(1)).doesNotContain("Exception");
        }
    }

    @Test void aWrongNumberIsToldWithoutTheWordsOfALanguage() {
        assertThat(run("echo", "a", "--format", "xml").err()).startsWith("leeway: --format \"xml\" is not known; it is text or json. ");
        assertThat(run("echo").err()).containsPattern("^leeway: \\w+ is missing\\. ");
        assertThat(run("echo", "a", "--seed", "x").err()).contains("--seed \"x\" is no whole number.").doesNotContain("long");
    }

    @Test void withFormatJsonAWrongCommandLineIsAnsweredInJsonToo() throws Exception {
        JsonNode node = new ObjectMapper().readTree(run("echo", "holm", "--format", "json", "--sead=3").out());
        assertThat(node.at("/errors/0/message").asText()).contains("--sead");
        assertThat(node.at("/errors/0/nearest").asText()).isEqualTo("--seed");
    }

    @Test void exitCodesSayDoneOrNo() {
        assertThat(run("echo", "yes").exit()).isZero();
        assertThat(run("echo", "no").exit()).isEqualTo(1);
    }

    @Test void aNegativeQuantityIsAValueNotAnOption() {
        assertThat(run("echo", "a", "--to", "-15 Cel").out()).isEqualTo("a-15 Cel\n");
        assertThat(run("echo", "a", "--to=-15 Cel").out()).isEqualTo("a-15 Cel\n");
    }

    @Test void aFaultOfOursIsOneLineAndExits3() {
        for (Run run : List.of(run("echo", "fall"), run("etch"))) {
            assertThat(run.exit()).isEqualTo(3);
            assertThat(run.err().lines()).hasSize(1);
            assertThat(run.err()).startsWith("leeway: a fault of ours, not of your file: IllegalStateException ");
        }
        assertThat(run("echo", "fall").err()).contains("fell over 3 stones");
    }

    @Test void colourNeedsATerminalAndNobodyAgainstIt() {
        assertThat(Terminal.colour(Map.of(), true)).isTrue();
        assertThat(Terminal.colour(Map.of("NO_COLOR", ""), true)).isTrue();
        assertThat(Terminal.colour(Map.of("NO_COLOR", "1"), true)).isFalse();
        assertThat(Terminal.colour(Map.of("TERM", "dumb"), true)).isFalse();
        assertThat(Terminal.colour(Map.of(), false)).isFalse();
    }

    @Test void everyRowOfTheTableHasItsClassAndHelpWithAnExample() {
        for (Commands.Row row : Commands.ALL) {
            Run run = Run.of(row.name(), "--help");
            assertThat(run.exit()).as(row.name()).isZero();
            assertThat(run.out()).startsWith("Example:  leeway " + row.name());
        }
    }
}
