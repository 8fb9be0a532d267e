package leeway;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Texts that a person has read and approved, kept in files. {@code -Dapprove} writes them anew; the difference is then reviewed. */
public final class Approved {
    private Approved() {
    }

    /** The root of the repository, wherever the test runs from. */
    public static Path root() {
        Path here = Path.of("").toAbsolutePath();
        while (here != null && !Files.isRegularFile(here.resolve("LICENSE"))) here = here.getParent();
        if (here == null) throw new IllegalStateException("no repository above " + Path.of("").toAbsolutePath());
        return here;
    }

    /** Asserts that the file at this path below the root holds exactly this text. */
    public static void same(String pathBelowRoot, String text) {
        Path file = root().resolve(pathBelowRoot);
        try {
            if (System.getProperty("approve") != null) {
                Files.createDirectories(file.getParent());
                Files.writeString(file, text);
            }
            String kept = Files.exists(file) ? Files.readString(file) : "";
            assertThat(text).as("%s is stale; if the new text is right, run the test with -Dsurefire.args=-Dapprove", pathBelowRoot).isEqualTo(kept);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
