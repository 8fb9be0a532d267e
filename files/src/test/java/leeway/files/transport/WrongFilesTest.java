package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leeway.files.sheet.Catalogue;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files that people get wrong, each with the complaints it brings beside it: adding a case is adding a file and running
 * this with {@code -Dsurefire.args=-Dapprove}, which writes the complaints for review.
 */
class WrongFilesTest {
    private static final Path FOLDER = Path.of("src/test/resources/leeway/wrong");
    private static final Catalogue CATALOGUE = Catalogue.builtIn();
    /** Far above what it takes; a file that hangs the reader is found, a busy machine is not. */
    private static final Duration ENOUGH = Duration.ofSeconds(30);

    static Stream<String> cases() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString()).filter(n -> n.endsWith(".yaml")).map(n -> n.substring(0, n.length() - 5)).sorted().toList().stream();
        }
    }

    private static List<Complaint> complaints(String name, String text) {
        return assertTimeoutPreemptively(ENOUGH, () -> TransportReader.read(name, text, CATALOGUE).problems());
    }

    @ParameterizedTest @MethodSource("cases")
    void everyWrongFileBringsItsComplaints(String name) throws IOException {
        String lines = complaints("x.yaml", Files.readString(FOLDER.resolve(name + ".yaml"))).stream().map(c -> c.line() + "\n").collect(Collectors.joining());
        assertThat(lines).isNotEmpty();
        Path expected = FOLDER.resolve(name + ".txt");
        if (System.getProperty("approve") != null) Files.writeString(expected, lines);
        assertThat(lines).as("if this is right, run with -Dsurefire.args=-Dapprove").isEqualTo(Files.readString(expected));
    }

    @Test void theFileThatTheWrongOnesAreMadeOfIsRight() throws IOException {
        assertThat(complaints("x.yaml", Files.readString(FOLDER.resolve("../right-base.yaml")))).isEmpty();
    }

    private static String swollen(String from, String to) throws IOException { return Files.readString(FOLDER.resolve("../right-base.yaml")).replace(from, to); }

    @Test void twentyThousandBracketsAreRefusedAtTheSixtyFifth() {
        assertThat(complaints("x.yaml", "[".repeat(20_000))).singleElement().hasToString("x.yaml:1:65: nested more than 64 deep. A transport file is at most five deep.");
        assertThat(complaints("x.yaml", "{a: ".repeat(20_000))).singleElement().extracting(Complaint::what).isEqualTo("nested more than 64 deep");
        String blocks = Stream.iterate(0, i -> i + 1).limit(700).map(i -> " ".repeat(i) + "a:\n").collect(Collectors.joining());
        assertThat(complaints("x.yaml", blocks)).singleElement().extracting(Complaint::what).isEqualTo("nested more than 64 deep");
    }

    @Test void tenThousandLegsAreTooMany() throws IOException {
        String legs = swollen("legs:\n", "legs:\n" + "  - {leg: a, takes: 1 min, oxygen: portable}\n".repeat(10_000));
        assertThat(complaints("x.yaml", legs)).singleElement().hasToString("x.yaml:121:5: \"legs\" has 10002 items; the most is 100. This is the first one too many.");
    }

    @Test void aValueOfFiveMegabytesIsRefusedBeforeItIsRead() throws IOException {
        assertThat(complaints("x.yaml", swollen("Night transfer", "x".repeat(5_000_000)))).singleElement().hasToString("x.yaml:1:1: this file is longer than 1 MB. A transport file has a few kilobytes.");
        assertThat(complaints("x.yaml", swollen("Night transfer", "x".repeat(900_000)))).singleElement().satisfies(c -> assertThat(c.line()).hasSizeLessThan(160));
    }

    @Test void tenThousandUnknownKeysAreCounted() throws IOException {
        StringBuilder keys = new StringBuilder();
        for (int i = 0; i < 10_000; i++) keys.append("key").append(i).append(": 1\n");
        List<Complaint> all = complaints("x.yaml", keys + swollen("transport:", "title:"));
        assertThat(all).hasSize(51).last().extracting(Complaint::what).isEqualTo("9951 more errors are not shown");
    }

    @Test void aHundredThousandKeysOfOneNameAreCounted() {
        assertThat(complaints("x.yaml", "a: 1\n".repeat(100_000))).hasSize(51);
    }

    @Test void bytesThatAreNoTextAreRefusedWithTheirPlace() {
        byte[] picture = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0};
        assertThat(Text.of(picture, "x.yaml").problems()).singleElement().hasToString("x.yaml:1:1: this is not UTF-8 text. Save it as UTF-8; is it a text at all?");
        assertThat(complaints("x.yaml", "transport: a\u0000b\n")).singleElement().hasToString("x.yaml:1:13: a character that no text has (U+0000). Is it a text file at all?");
        assertThat(complaints("x.yaml", "transport: a\uD800b\n")).singleElement().hasToString("x.yaml:1:13: a character that no text has (U+D800). Is it a text file at all?");
    }
}
