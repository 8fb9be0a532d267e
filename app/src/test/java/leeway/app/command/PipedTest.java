package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import leeway.app.report.Examples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A transport file that is piped into a command, and what a terminal shows of long work. */
class PipedTest {
    private static final String FILE = Examples.text("hand-bag-across-town").orElseThrow();
    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource({"plan", "rehearse --fault|disconnection at the patient", "breathe --for|2 min", "map --points|5", "compare --with|circuit=single limb adult", "check"})
    void whatIsPipedIsTheFile(String line) throws IOException {
        String[] words = line.split("[ |]", 3);
        if (words.length == 3) words = new String[] {words[0], words[1], words[2]};
        Path file = Files.writeString(folder.resolve("a.yaml"), FILE);
        Run fromFile = Run.of(with(words, file.toString()));
        Run piped = Run.piped(FILE, with(words, "-"));
        assertThat(piped.exit()).isEqualTo(fromFile.exit()).isNotEqualTo(2);
        assertThat(piped.out()).isEqualTo(fromFile.out().replace(file.toString(), "standard input"));
        assertThat(piped.err()).isEmpty();
    }

    private static String[] with(String[] words, String file) {
        String[] all = new String[words.length + 1];
        all[0] = words[0];
        all[1] = file;
        System.arraycopy(words, 1, all, 2, words.length - 1);
        return all;
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan", "rehearse", "breathe", "map", "card"})
    void aMistakeInWhatIsPipedHasItsLineAndColumn(String command) {
        Run run = Run.piped(FILE.replace("hand bag", "hnad bag"), command, "-");
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.err()).matches("(?s)standard input:\\d+:\\d+: there is no ventilator \"hnad bag\"\\. Did you mean \"hand bag\"\\?\n");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void nothingPipedIsOneLineAndJsonNamesStandardInput() {
        assertThat(Run.piped("", "plan", "-").err()).isEqualTo("standard input:1:1: this file is empty. \"leeway new FILE\" writes one to start from.\n");
        assertThat(Run.piped("", "check", "-", "--format", "json").out()).contains("\"file\": \"standard input\"");
    }

    @Test
    void whatIsPipedIsReadNoFurtherThanTheLimitOfAFile() {
        InputStream endless = new InputStream() {
            @Override public int read() { return '#'; }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream to = new PrintStream(err, true, StandardCharsets.UTF_8);
        assertThat(Main.run(new Terminal(endless, to, to, false, false), Commands.ALL, "plan", "-")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("standard input:1:1: ").contains("1 MB").hasLineCount(1);
    }

    private static String shown(boolean watched, long silentMs) throws InterruptedException {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream to = new PrintStream(err, true, StandardCharsets.UTF_8);
        try (Progress progress = Progress.of(new Terminal(InputStream.nullInputStream(), to, to, false, watched), "rehearsing", silentMs)) {
            progress.at(5, 20);
            for (int i = 0; watched && silentMs == 0 && i < 500 && !err.toString(StandardCharsets.UTF_8).contains(" of "); i++) Thread.sleep(10);
        }
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void longWorkShowsABarOnATerminalThatIsGoneAtTheEndAndNoneInAPipe() throws InterruptedException {
        String bar = "rehearsing [#####...............] 5 of 20, 0 s";
        assertThat(shown(true, 0)).contains("\rrehearsing [#####...............] 5 of 20, ").endsWith("\r" + " ".repeat(bar.length()) + "\r");
        assertThat(shown(false, 0)).isEmpty();
        assertThat(shown(true, 60_000)).as("soon done").isEmpty();
        assertThat(Progress.line("working out the plan", 0, 0, 3)).isEqualTo("working out the plan, 3 s");
        assertThat(Progress.line("x", 20, 20, 3)).doesNotContain(".");
    }
}
