package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Table;
import leeway.files.keys.TableReader;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Node;
import leeway.files.yaml.Tree;
import org.junit.jupiter.api.Test;

class NewFileTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();

    @Test void theFileToStartFromIsRightAsItStands() {
        assertThat(TransportReader.read("new.yaml", NewFile.text(), CATALOGUE).problems()).isEmpty();
    }

    /** Each commented line, taken alone or with its section, brings no complaint but those of keys that exclude each other. */
    @Test void everyCommentedKeyMayBeTakenIn() {
        List<String> lines = NewFile.text().lines().toList();
        Set<String> needMore = Set.of("climb", "wall", "liquid", "concentrator", "return", "sedation half-time");
        int tried = 0;
        for (int i = 3; i < lines.size(); i++) {
            String line = lines.get(i);
            String bare = line.strip();
            if (!bare.startsWith("# ") || bare.startsWith("#  ")) continue;
            String key = bare.substring(2, bare.indexOf(':'));
            if (needMore.contains(key)) continue;
            List<String> changed = new ArrayList<>(lines);
            changed.set(i, line.replaceFirst("# ", ""));
            int kept = 0;
            for (int j = i + 1; j < lines.size() && lines.get(j).strip().startsWith("#  "); j++) {
                boolean clash = lines.get(j).matches(".*(mains|change over|apnoea|inspiratory pressure absolute|i:e|pressure trigger|resistance with tube|minute volume|battery|after|slow part|use|sedation|sedation half-time): .*") && !lines.get(j).matches("\\W*battery: .*");
                if (!clash) {
                    changed.set(j, lines.get(j).replaceFirst("# ", ""));
                    kept++;
                }
            }
            if (lines.get(i).strip().matches("# power:.*") || kept >= 0) tried++;
            String text = String.join("\n", changed) + "\n";
            List<String> complaints = TransportReader.read("new.yaml", text, CATALOGUE).problems().stream().map(Object::toString)
                    .filter(c -> !c.contains("there is no strategy")).toList();
            assertThat(complaints).as(line).isEmpty();
        }
        assertThat(tried).isGreaterThan(40);
    }

    @Test void everyExampleInTheTablesIsTakenByItsOwnForm() {
        examples(TransportKeys.TRANSPORT);
        for (SheetKind<?> k : Kinds.ALL) examples(k.table());
    }

    private static void examples(Table table) {
        for (Key k : table.keys()) {
            k.form().inner().ifPresent(NewFileTest::examples);
            if (k.form().inner().isPresent()) continue; // its example is shortened
            String yaml = "\"" + k.name().replace("\\", "\\\\") + "\": " + k.form().example() + "\n";
            Complaints c = new Complaints();
            Node root = Tree.of("x", yaml, c).orElseThrow(() -> new AssertionError(yaml + c.all()));
            Table one = new Table(table.what(), table.sourced(), List.of(k), List.of());
            new TableReader(c, one).read((Node.Mapping) root, one);
            assertThat(c.all()).as(yaml).isEmpty();
        }
    }
}
