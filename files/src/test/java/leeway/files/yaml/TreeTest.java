package leeway.files.yaml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TreeTest {
    private static Read<Node> read(String text) { return Tree.of("f.yaml", text); }

    private static List<String> lines(String text) { return read(text).problems().stream().map(Complaint::line).toList(); }

    @Test void everyValueKnowsItsPlaceAndItsStretchOfText() {
        String text = "a: 1\nb:\n  - {c: 'x y', d: [é𝄞, z]} # note\n  - \"q\"\n";
        Node.Mapping root = (Node.Mapping) read(text).good().orElseThrow();
        Node.Items b = (Node.Items) root.get("b").orElseThrow();
        Node.Mapping first = (Node.Mapping) b.items().get(0);
        Node.Scalar c = (Node.Scalar) first.get("c").orElseThrow();
        assertThat(c.at()).isEqualTo(new Place("f.yaml", 3, 9));
        assertThat(text.substring(c.span().start(), c.span().end())).isEqualTo("'x y'");
        Node.Items d = (Node.Items) first.get("d").orElseThrow();
        assertThat(text.substring(d.items().get(1).span().start(), d.items().get(1).span().end())).isEqualTo("z");
        assertThat(text.substring(b.items().get(1).span().start(), b.items().get(1).span().end())).isEqualTo("\"q\"");
        assertThat(b.items().get(1).at().toString()).isEqualTo("f.yaml:4:5");
    }

    @Test void plainWordsStayAsTheyAreWritten() {
        Node.Mapping m = (Node.Mapping) read("a: yes\nb: 010\nc: 1:2\nd: 0o10\ne: .nan\nf: ~\n").good().orElseThrow();
        assertThat(m.entries()).extracting(e -> ((Node.Scalar) e.value()).text()).containsExactly("yes", "010", "1:2", "0o10", ".nan", "~");
    }

    record Wrong(String text, String line) { }

    static List<Wrong> wrong() {
        return List.of(
                new Wrong("", "f.yaml:1:1: this file is empty. \"leeway new FILE\" writes one to start from."),
                new Wrong("# only a comment\n", "f.yaml:1:1: this file is empty. \"leeway new FILE\" writes one to start from."),
                new Wrong("a: 1\nb: 2\na: 3\n", "f.yaml:3:1: \"a\" stands twice, on line 1 and on line 3. Keep one of them."),
                new Wrong("a: &x [1]\nb: *x\n", "f.yaml:2:4: an alias, \"*x\". Write the value out: aliases are not taken."),
                new Wrong("a: 1\n---\nb: 2\n", "f.yaml:2:1: a second document begins here. One file holds one document: take out the \"---\"."),
                new Wrong("a:\n\tb: 1\n", "f.yaml:2:1: a tab at the beginning of a line. YAML is indented with spaces."),
                new Wrong("a: \"open\nb: 1\n", "f.yaml:1:4: a quotation mark opens here and is never closed. Close it, or take it out."),
                new Wrong("a: {b: 1\nc: 2\n", "f.yaml:2:2: a \"}\" or a comma is missing. The bracket was opened at 1:4."),
                new Wrong("a: 1\n  b: 2\n", "f.yaml:2:4: a \":\" where none can stand. Is this line indented too far, is a line break missing, or does a text with \": \" in it need quotation marks?"),
                new Wrong("a: x: y\n", "f.yaml:1:5: a \":\" where none can stand. Is this line indented too far, is a line break missing, or does a text with \": \" in it need quotation marks?"),
                new Wrong("a: 1\nb\nc: 1\n", "f.yaml:2:1: a key without a \":\". A line reads \"key: value\"."),
                new Wrong("a: !!float 3\n", "f.yaml:1:4: a tag, \"!!float\". Take it out: tags are not taken."),
                new Wrong("[a, b]: 1\n", "f.yaml:1:1: a key that is a list or a mapping. A key is a word or two, as in \"height: 170 cm\"."),
                new Wrong("a: \0\n", "f.yaml:1:4: a character that no text has (U+0000). Is it a text file at all?"),
                new Wrong("[".repeat(20_000), "f.yaml:1:65: nested more than 64 deep. A transport file is at most five deep."),
                new Wrong("a:\n  b: 1\n c: 2\n", "f.yaml:3:2: the indentation does not fit what stands above. Keys of one mapping begin in the same column; items of a list begin with \"- \"."),
                new Wrong("a: @b\n", "f.yaml:1:4: a value cannot begin like this. Put quotation marks around it."));
    }

    @ParameterizedTest @MethodSource("wrong")
    void whatIsNoYamlIsSaidInOneLineWithItsPlace(Wrong w) {
        List<String> lines = assertTimeoutPreemptively(Duration.ofSeconds(20), () -> lines(w.text()));
        assertThat(lines).containsExactly(w.line());
    }

    @Test void bytesAreLookedAtBeforeAnythingElse() {
        assertThat(Text.of(new byte[1_000_001], "f").problems()).singleElement().hasToString("f:1:1: this file is longer than 1 MB. A transport file has a few kilobytes.");
        assertThat(Text.of("a: 1\nb: \u00e9".getBytes(StandardCharsets.ISO_8859_1), "f").problems()).singleElement()
                .hasToString("f:2:4: this is not UTF-8 text. Save it as UTF-8; is it a text at all?");
        assertThat(Text.of("\uFEFFa: 1".getBytes(StandardCharsets.UTF_8), "f").good()).contains("a: 1");
        assertThat(Text.of("a: 1".getBytes(StandardCharsets.UTF_16), "f").problems()).singleElement().hasToString("f:1:1: this is UTF-16 text. Save it as UTF-8.");
    }

    @Test void moreThanFiftyComplaintsAreCounted() {
        StringBuilder text = new StringBuilder("a: 1\n");
        for (int i = 0; i < 120; i++) text.append("a: 1\n");
        List<String> lines = lines(text.toString());
        assertThat(lines).hasSize(51).last().isEqualTo("f.yaml:52:1: 70 more errors are not shown. Right the first ones, then check again.");
    }

    @Test void echoIsShortAndOnOneLine() {
        assertThat(Complaints.echo("a\nb")).isEqualTo("\"a b\"");
        assertThat(Complaints.echo("x".repeat(41))).hasSize(42).endsWith("x…\"");
        assertThat(Complaints.echo("𝄞".repeat(40)).codePointCount(0, Complaints.echo("𝄞".repeat(40)).length())).isEqualTo(42);
    }

    @Test void nearestNames() {
        List<String> known = List.of("example pneumatic", "example turbine", "hand bag", "tidal volume", "moderate pneumonia", "fio2");
        assertThat(Nearest.of("exmple pneumatic", known)).containsExactly("example pneumatic");
        assertThat(Nearest.of("exampel turbine", known)).containsExactly("example turbine");
        assertThat(Nearest.of("tidalVolume", known)).containsExactly("tidal volume");
        assertThat(Nearest.of("tidal-volume", known)).containsExactly("tidal volume");
        assertThat(Nearest.of("pneumonia", known)).containsExactly("moderate pneumonia");
        assertThat(Nearest.of("FiO2", known)).containsExactly("fio2");
        assertThat(Nearest.of("example", known)).containsExactlyInAnyOrder("example pneumatic", "example turbine");
        assertThat(Nearest.of("zebra", known)).isEmpty();
    }
}
