package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What cannot be written is the user's to mend: one line, exit 2, nothing left behind. */
class OutputTest {
    @TempDir
    Path folder;

    @Test
    void aFolderThatCannotBeMadeIsOneLine() throws IOException {
        Path file = Files.writeString(folder.resolve("a file"), "as it was");
        for (Path wish : new Path[] { file, file.resolve("below") }) {
            Run run = Run.of("card", "../examples/one-small-cylinder.yaml", "--out", wish.resolve("card.pdf").toString());
            assertThat(run.exit()).as(run.err()).isEqualTo(2);
            assertThat(run.err().lines()).hasSize(1).first().asString().startsWith("leeway: ").doesNotContain("Exception");
        }
        assertThat(file).hasContent("as it was");
        try (var left = Files.list(folder)) {
            assertThat(left).containsExactly(file);
        }
    }
}
