package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.QuantityForm;
import leeway.files.keys.Table;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import org.junit.jupiter.api.Test;

/** The pages of keys in docs are made of the tables that the reader uses; {@code -Dsurefire.args=-Dapprove} writes them anew. */
class KeyPagesTest {
    private static final Path DOCS = Path.of("../docs");

    @Test void thePageOfTheTransportFileListsEveryKey() throws IOException {
        StringBuilder out = new StringBuilder("""
                # The transport file, key by key

                Made by the tests from the table that the reader uses. `leeway new FILE` writes a commented file, `leeway schema` the
                same as JSON Schema. A quantity is a number and a unit: the units that a key takes are named, and the bounds
                beyond which a value is refused as impossible.
                """);
        keys(TransportKeys.TRANSPORT, "The file", 2, out);
        same("transport-file.md", out.toString());
    }

    @Test void thePageOfSheetsListsEveryKeyOfEveryKind() throws IOException {
        StringBuilder out = new StringBuilder("""
                # Sheets, key by key

                Made by the tests from the tables that the reader uses. How a sheet is written: [sheets.md](sheets.md). Every sheet
                begins with `KIND: NAME` and a `source`; it may have `like` and `plain`. Any value may be `{is: …, source: …}`.
                """);
        for (SheetKind<?> k : Kinds.ALL) keys(k.table(), Character.toUpperCase(k.word().charAt(0)) + k.word().substring(1), 2, out);
        same("sheet-keys.md", out.toString());
    }

    private static void keys(Table table, String title, int level, StringBuilder out) {
        out.append('\n').append("#".repeat(Math.min(level, 4))).append(' ').append(title).append("\n\n| key | takes | otherwise | meaning |\n| --- | --- | --- | --- |\n");
        for (Key k : table.keys()) {
            out.append("| `").append(k.name()).append("` | ").append(takes(k.form())).append(" | ").append(k.required() ? "**required**" : k.otherwise().orElse(""))
                    .append(" | ").append(k.meaning()).append(k.later() ? " Read and checked, not used yet." : "").append(" |\n");
        }
        List<Key> sections = table.keys().stream().filter(k -> k.form().inner().isPresent()).toList();
        if (alike(table, sections)) {
            Key first = sections.get(0);
            keys(first.form().inner().orElseThrow(), title + ", " + first.name() + " (the others alike)", level + 1, out);
            return;
        }
        for (Key k : sections) keys(k.form().inner().orElseThrow(), title + ", " + k.name(), level + 1, out);
    }

    /** Long rows of sections with the same keys, one for each setting, alarm or sensor, are shown once. */
    private static boolean alike(Table table, List<Key> sections) { return sections.size() > 8 && sections.size() == table.keys().size(); }

    private static String takes(Form form) {
        if (form instanceof QuantityForm q) return q.unitsAndBounds();
        String words = form.inner().isPresent() ? (form.words().startsWith("a list") ? "a list of mappings, below" : form.words().startsWith("the name") ? form.words() : "a mapping, below") : form.words();
        return words.replace("|", "\\|").replace("\"", "`").replaceAll("`([^`]*)`", "`$1`");
    }

    private static void same(String name, String text) throws IOException {
        Path file = DOCS.resolve(name);
        if (System.getProperty("approve") != null) Files.writeString(file, text);
        assertThat(text).as("%s is stale; if the new text is right, run with -Dsurefire.args=-Dapprove", name).isEqualTo(Files.exists(file) ? Files.readString(file) : "");
    }
}
