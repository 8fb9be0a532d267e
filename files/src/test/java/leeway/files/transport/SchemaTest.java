package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.FileSchemas;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Node;
import leeway.files.yaml.Tree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schemas against a validator that we did not write. */
class SchemaTest {
    private static final Schema TRANSPORT = schema(FileSchemas.document(TransportKeys.TRANSPORT, "t", "transport"));
    private static final Path ROOT = Path.of("..");

    private static Schema schema(Map<String, Object> tree) { return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(json(tree)); }

    private static List<String> problems(Schema schema, String yaml) {
        Node root = Tree.of("x", yaml).good().orElseThrow();
        return schema.validate(json(root), InputFormat.JSON).stream().map(Object::toString).toList();
    }

    static Stream<Path> rightFiles() throws IOException {
        try (Stream<Path> files = Files.list(ROOT.resolve("examples"))) {
            return Stream.concat(files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList().stream(), Stream.of(Path.of("src/test/resources/leeway/right-base.yaml")));
        }
    }

    @ParameterizedTest @MethodSource("rightFiles")
    void whatWeReadTheSchemaTakes(Path file) throws IOException { assertThat(problems(TRANSPORT, Files.readString(file))).isEmpty(); }

    @Test void theSchemaRefusesWhatIsPlainlyWrong() {
        String least = "patient: {sex: female, height: 170 cm}\nventilator: a\noxygen: [{name: a, cylinder: 2 L, pressure: 185 bar}]\nlegs: [{leg: one, takes: 12 min, oxygen: a}]\n";
        assertThat(problems(TRANSPORT, least)).isEmpty();
        for (String[] change : new String[][] {{"170 cm", "170"}, {"170 cm", "170 kg"}, {"185 bar", "185"}, {"2 L", "E"}, {"takes: 12 min, ", ""}, {"height", "hieght"}, {"female", "woman"}, {"ventilator: a\n", ""}}) {
            assertThat(problems(TRANSPORT, least.replace(change[0], change[1]))).as(change[0] + " → " + change[1]).isNotEmpty();
        }
    }

    static Stream<SheetKind<?>> kinds() { return Kinds.ALL.stream(); }

    @ParameterizedTest @MethodSource("kinds")
    void everySheetThatComesAlongFitsItsSchema(SheetKind<?> kind) throws IOException {
        Schema schema = schema(FileSchemas.sheet(kind));
        for (String name : Catalogue.builtIn().names(kind.word())) {
            String yaml = Files.readString(Path.of("src/main/resources/leeway/sheets", kind.word(), name + ".yaml"));
            assertThat(problems(schema, yaml)).as(name).isEmpty();
        }
    }

    /** Test-side writing of JSON: trees of maps and lists, and trees of YAML as an editor's YAML language server sees them. */
    private static String json(Object v) {
        if (v instanceof Map<?, ?> m) return m.entrySet().stream().map(e -> quoted((String) e.getKey()) + ":" + json(e.getValue())).collect(Collectors.joining(",", "{", "}"));
        if (v instanceof List<?> l) return l.stream().map(SchemaTest::json).collect(Collectors.joining(",", "[", "]"));
        if (v instanceof Node.Mapping m) return m.entries().stream().map(e -> quoted(e.key().text()) + ":" + json(e.value())).collect(Collectors.joining(",", "{", "}"));
        if (v instanceof Node.Items l) return l.items().stream().map(SchemaTest::json).collect(Collectors.joining(",", "[", "]"));
        if (v instanceof Node.Scalar s) return !s.quoted() && s.text().matches("-?(0|[1-9]\\d*)(\\.\\d+)?") || s.text().matches("true|false") ? s.text() : quoted(s.text());
        return v instanceof String s ? quoted(s) : String.valueOf(v);
    }

    private static String quoted(String s) { return "\"" + s.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + "\""; }
}
