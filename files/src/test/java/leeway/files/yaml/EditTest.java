package leeway.files.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class EditTest {
    private static final String TEXT = """
            # a journey
            transport: Holm to Westhaven   # the title
            patient:
              sex: female
              # measured at the bedside
              height: 170 cm   # by tape

            settings: {mode: A/C-VC, peep: 8 cmH2O} # as the ward had it
            oxygen:
              # from the store
              - {name: portable, cylinder: 2 L}
              - name: vehicle     # in the car
                cylinder: 10 L
            legs:
              - {leg: road, oxygen: [vehicle, portable]}
            """;

    private static String value(String text, String path) { return Tree.of("t", text).good().map(r -> value(r, path)).orElse("(not YAML)"); }

    private static String value(Node root, String path) {
        return Edit.at(root, path).map(n -> n instanceof Node.Scalar s ? s.text() : n.words()).orElse("(absent)");
    }

    @Test
    void aValueIsReplacedAndItsCommentStays() {
        String t = Edit.set(TEXT, "patient/height", "1.8 m", List.of()).orElseThrow();
        assertThat(t).isEqualTo(TEXT.replace("170 cm", "1.8 m"));
        assertThat(Edit.set(TEXT, "settings/peep", "5 cmH2O", List.of())).contains(TEXT.replace("8 cmH2O", "5 cmH2O"));
        assertThat(Edit.set(TEXT, "oxygen/1/name", "van", List.of())).contains(TEXT.replace("name: vehicle", "name: van"));
    }

    @Test
    void aNewKeyStandsWhereItsTableHasIt() {
        List<String> order = List.of("sex", "height", "weight", "illness");
        assertThat(Edit.set(TEXT, "patient/weight", "74 kg", order)).contains(TEXT.replace("# by tape\n", "# by tape\n  weight: 74 kg\n"));
        assertThat(Edit.set(TEXT, "settings/rate", "20 /min", List.of("mode", "rate", "peep"))).contains(TEXT.replace("A/C-VC, peep", "A/C-VC, rate: 20 /min, peep"));
        assertThat(Edit.set(TEXT, "ventilator", "example turbine", List.of("transport", "patient", "ventilator", "settings")))
                .contains(TEXT.replace("# by tape\n", "# by tape\nventilator: example turbine\n"));
        assertThat(value(Edit.set(TEXT, "patient/lungs/shunt", "18 %", List.of()).orElseThrow(), "patient/lungs/shunt")).isEqualTo("18 %");
        assertThat(value(Edit.set(TEXT, "oxygen/1/count", "2", List.of("count", "name")).orElseThrow(), "oxygen/1/count")).isEqualTo("2");
    }

    @Test
    void aKeyIsTakenOutAndAnEmptyMappingGoesWithIt() {
        assertThat(Edit.remove(TEXT, "settings/mode")).contains(TEXT.replace("mode: A/C-VC, ", ""));
        assertThat(Edit.remove(TEXT, "settings/peep")).contains(TEXT.replace(", peep: 8 cmH2O", ""));
        assertThat(Edit.remove(TEXT, "patient/height")).contains(TEXT.replace("  height: 170 cm   # by tape\n", ""));
        assertThat(Edit.remove(TEXT, "oxygen/1/name")).contains(TEXT.replace("name: vehicle     # in the car\n    cylinder", "cylinder"));
        String one = Edit.remove(TEXT, "settings/mode").flatMap(t -> Edit.remove(t, "settings/peep")).orElseThrow();
        assertThat(value(one, "settings")).isEqualTo("(absent)");
    }

    @Test
    void itemsAreAddedMovedAndTakenOutWithTheirComments() {
        String added = Edit.append(TEXT, "oxygen", "{name: spare, cylinder: 5 L}", List.of()).orElseThrow();
        assertThat(added).contains("cylinder: 10 L\n  - {name: spare, cylinder: 5 L}\nlegs:");
        String moved = Edit.move(TEXT, "oxygen", 0, 1).orElseThrow();
        assertThat(moved).contains("oxygen:\n  - name: vehicle     # in the car\n    cylinder: 10 L\n  # from the store\n  - {name: portable, cylinder: 2 L}\nlegs:");
        assertThat(Edit.move(moved, "oxygen", 1, -1)).contains(TEXT);
        assertThat(Edit.move(TEXT, "oxygen", 0, -1)).isEmpty();
        assertThat(value(Edit.remove(TEXT, "oxygen/0").orElseThrow(), "oxygen/0/name")).isEqualTo("vehicle");
        assertThat(Edit.remove(TEXT, "legs/0/oxygen/0")).contains(TEXT.replace("[vehicle, portable]", "[portable]"));
        assertThat(Edit.append(TEXT, "power", "{name: mains, mains: yes}", List.of("oxygen", "power", "legs")).orElseThrow())
                .contains("cylinder: 10 L\npower:\n  - {name: mains, mains: yes}\nlegs:");
    }

    @Test
    void aListIsReplacedAsAWhole() {
        assertThat(Edit.put(TEXT, "legs/0/oxygen", "portable", List.of())).contains(TEXT.replace("[vehicle, portable]", "portable"));
        String block = "a:\n  - x\n  - y\nb: 1\n";
        assertThat(Edit.put(block, "a", "[x, z]", List.of())).contains("a: [x, z]\nb: 1\n");
    }

    @Test
    void aValueThatWouldSayMoreIsQuoted() {
        for (String odd : List.of("a: b", "x # y", "{", "- a", "\"", "it's", "yes, no", "[a]", "@x", "a\\b", "1:2", "null", "end:", "tab\there")) {
            assertThat(value(Edit.set(TEXT, "transport", odd, List.of()).orElseThrow(), "transport")).isEqualTo(odd);
            assertThat(value(Edit.set(TEXT, "settings/mode", odd, List.of()).orElseThrow(), "settings/mode")).isEqualTo(odd);
        }
    }

    @Test
    void aTextThatCannotBeReadIsNotChanged() {
        assertThat(Edit.set("a: [", "a", "1", List.of())).isEmpty();
        assertThat(Edit.set("a: 1\n", "a/b", "1", List.of())).isEmpty();
        assertThat(Edit.remove("a: 1\n", "b")).isEmpty();
    }

    static Stream<Path> examples() throws IOException {
        return Files.list(Path.of("..", "examples")).filter(p -> p.toString().endsWith(".yaml")).sorted();
    }

    /** Every value of every example is set, taken out and put back; all other values and every comment stay. */
    @ParameterizedTest
    @MethodSource("examples")
    void everyValueOfAnExampleIsChangedWithoutTouchingAnother(Path example) throws IOException {
        String text = Files.readString(example);
        Node root = Tree.of("t", text).good().orElseThrow();
        SplittableRandom random = new SplittableRandom(1);
        List<String> paths = Edit.leaves(root);
        for (String path : paths) {
            String value = "v" + random.nextInt(1_000_000);
            String set = Edit.set(text, path, value, List.of()).orElseThrow(() -> new AssertionError(path));
            assertThat(set).hasLineCount((int) text.lines().count());
            Node after = Tree.of("t", set).good().orElseThrow();
            for (String other : paths) assertThat(value(after, other)).as("%s after %s", other, path).isEqualTo(other.equals(path) ? value : value(root, other));
            String without = Edit.remove(text, path).orElse(text);
            assertThat(value(without, path)).as(path).isNotEqualTo(path.matches(".*/\\d+$") ? "" : value(root, path));
        }
    }
}
