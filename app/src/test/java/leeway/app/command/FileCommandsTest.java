package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import leeway.app.report.Examples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check}, {@code catalogue}, {@code new} and {@code schema} as typed: exit code, standard output, standard error. */
class FileCommandsTest {
    private static final Path ROOT = Path.of("..");
    @TempDir Path folder;

    private static JsonNode json(Run run) throws IOException { return new ObjectMapper().readTree(run.out()); }

    private Path write(String name, String text) throws IOException { return Files.writeString(folder.resolve(name), text); }

    @Test void everyExamplePassesTheCheck() throws IOException {
        try (Stream<Path> files = Files.list(ROOT.resolve("examples"))) {
            List<String> examples = files.filter(f -> f.toString().endsWith(".yaml")).map(Path::toString).sorted().toList();
            Run run = Run.of(Stream.concat(Stream.of("check"), examples.stream()).toArray(String[]::new));
            assertThat(run.exit()).as(run.out()).isZero();
            assertThat(run.out().lines()).hasSameSizeAs(examples).allMatch(l -> l.endsWith(": nothing wrong with this transport"));
        }
    }

    @Test void aWrongFileIsExitTwoWithALineForEachError() throws IOException {
        Path f = write("a.yaml", "patient: {sex: female, hieght: 170 cm}\nventilator: exmple turbine\noxygen: [{name: a, cylinder: E, pressure: 185}]\nlegs: [{leg: one, takes: 12 min, oxygen: b}]\n");
        Run run = Run.of("check", f.toString());
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.err()).isEmpty();
        assertThat(run.out().replace(f.toString(), "a.yaml").lines()).containsExactly(
                "a.yaml:1:24: patient has no key \"hieght\". Did you mean \"height\" or \"weight\"?",
                "a.yaml:2:13: there is no ventilator \"exmple turbine\". Did you mean \"example turbine\"?",
                "a.yaml:3:30: \"E\" is a letter alone, and the letters differ between countries. Write \"UK E\" (4.68 L) or \"US E\" (4.5 L), or the water capacity, for example \"2 L\".",
                "a.yaml:3:43: \"185\" has no unit. A pressure is in bar, psi, kPa or MPa, for example \"185 bar\".",
                "a.yaml:4:42: there is no store of oxygen called \"b\". The file has \"a\".");
    }

    @Test void inJsonEachFileHasItsErrorsWithLineColumnMessageAndNearest() throws IOException {
        Path bad = write("a.yaml", "patient: {sex: female, hieght: 170 cm}\n");
        Path good = write("c.yaml", "circuit: ours\nlike: single limb adult\nsource: invented\nvolume: 700 mL\n");
        Run run = Run.of("check", bad.toString(), good.toString(), "--format", "json");
        assertThat(run.exit()).isEqualTo(2);
        JsonNode files = json(run).get("files");
        assertThat(files).hasSize(2);
        assertThat(files.get(0).get("ok").asBoolean()).isFalse();
        JsonNode slip = files.get(0).get("errors").get(3);
        assertThat(slip.get("line").asInt()).isEqualTo(1);
        assertThat(slip.get("column").asInt()).isEqualTo(24);
        assertThat(slip.get("message").asText()).isEqualTo("patient has no key \"hieght\". Did you mean \"height\" or \"weight\"?");
        assertThat(slip.get("nearest").asText()).isEqualTo("height");
        assertThat(files.get(1).get("ok").asBoolean()).isTrue();
        assertThat(files.get(1).get("kind").asText()).isEqualTo("circuit");
    }

    @Test void filesThatCannotBeReadAreBadInputToo() throws IOException {
        assertThat(Run.of("check", folder.resolve("none.yaml").toString()).out()).contains("none.yaml:1:1: there is no such file.");
        assertThat(Run.of("check", folder.toString()).out()).contains(":1:1: this is a folder.");
        assertThat(Run.of("check", write("e.yaml", "").toString()).out()).contains("e.yaml:1:1: this file is empty.");
        assertThat(Run.of("check", write("s.yaml", "a: \n- b\n").toString()).exit()).isEqualTo(2);
    }

    @Test void theCatalogueListsKindsNamesAndOneSheet() throws IOException {
        assertThat(Run.of("catalogue").out()).contains("ventilators", "example pneumatic, example turbine", "circuits");
        assertThat(Run.of("catalogue").out().lines()).allMatch(l -> l.length() <= 80);
        Run one = Run.of("catalogue", "filter", "adult", "HME", "filter");
        assertThat(one.exit()).isZero();
        assertThat(one.out()).startsWith("filter: adult HME filter\n").contains("dead space: 55 mL", "source: common practice, no source: adult filters");
        JsonNode values = json(Run.of("catalogue", "filter", "adult HME filter", "--format", "json")).get("values");
        assertThat(values).allSatisfy(v -> assertThat(v.get("source").asText()).isNotBlank());
        assertThat(json(Run.of("catalogue", "airways", "--format", "json")).get("sheets")).hasSize(17);
    }

    @Test void aKindOrNameThatIsNotThereIsExitTwoWithTheNearest() throws IOException {
        Run kind = Run.of("catalogue", "ventilater");
        assertThat(kind.exit()).isEqualTo(2);
        assertThat(kind.err()).contains("there is no kind of sheet \"ventilater\". Did you mean \"ventilator\"?");
        Run name = Run.of("catalogue", "ventilator", "example turbin", "--format", "json");
        assertThat(name.exit()).isEqualTo(2);
        assertThat(json(name).get("files").get(0).get("errors").get(0).get("nearest").asText()).isEqualTo("example turbine");
    }

    @Test void ownSheetsStandBesideThoseThatComeAlong() throws IOException {
        write("c.yaml", "circuit: ours\nlike: single limb adult\nsource: measured in our workshop\nvolume: 700 mL\n");
        Run run = Run.of("catalogue", "circuit", "ours", "--sheets", folder.toString());
        assertThat(run.out()).contains("volume: 700 mL", "compliance: 1.2 mL/cmH2O", "source: invented");
        write("d.yaml", "circuit: [\n");
        assertThat(Run.of("catalogue", "--sheets", folder.toString()).exit()).isEqualTo(2);
    }

    @Test void newWritesAFileThatPassesAndNeverOverOne() throws IOException {
        Path f = folder.resolve("friday.yaml");
        assertThat(Run.of("new", f.toString()).exit()).isZero();
        assertThat(Run.of("check", f.toString()).exit()).isZero();
        String before = Files.readString(f);
        Run again = Run.of("new", f.toString(), "--like", "night-transfer");
        assertThat(again.exit()).isEqualTo(2);
        assertThat(again.err()).contains("exists already");
        assertThat(Files.readString(f)).isEqualTo(before);
        Path like = folder.resolve("like.yaml");
        assertThat(Run.of("new", like.toString(), "--like", "examples/night-transfer.yaml").exit()).isZero();
        assertThat(Files.readString(like)).isEqualTo(Files.readString(ROOT.resolve("examples/night-transfer.yaml")));
        assertThat(Run.of("new", folder.resolve("x.yaml").toString(), "--like", "night-transfr").err()).contains("Did you mean \"night-transfer\"?");
        assertThat(Run.of("new", folder.resolve("no/such/x.yaml").toString()).err()).contains("there is no folder");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(p -> p.getFileName().toString())).containsExactlyInAnyOrder("friday.yaml", "like.yaml");
        }
        assertThat(Examples.names()).contains("night-transfer");
    }

    @Test void schemasAreJsonForTheTransportAndEachKindOfSheet() throws IOException {
        JsonNode transport = json(Run.of("schema"));
        assertThat(transport.get("$schema").asText()).isEqualTo("https://json-schema.org/draft/2020-12/schema");
        assertThat(transport.at("/properties/legs/items/properties/takes/pattern").asText()).contains("min");
        assertThat(json(Run.of("schema", "ventilator")).at("/properties/gas/type").asText()).isEqualTo("object");
        Run none = Run.of("schema", "transprt");
        assertThat(none.exit()).isEqualTo(2);
        assertThat(none.err()).contains("Did you mean \"transport\"?");
    }
}
