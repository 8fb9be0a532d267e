package leeway.files.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;

/** The sheets that come along, as resources: {@code leeway/sheets/KIND/NAME.yaml}; the file is called as the sheet is. */
final class BuiltIn {
    private static final String ROOT = "/leeway/sheets/";
    private static final String END = ".yaml";

    private BuiltIn() { }

    /** As complaints print it. */
    static String fileName(String kind, String name) { return "catalogue/" + kind + "/" + name + END; }

    static boolean has(String kind, String name) { return plausible(name) && BuiltIn.class.getResource(ROOT + kind + "/" + name + END) != null; }

    /** Empty when there is no such sheet. */
    static Optional<Read<String>> text(String kind, String name) {
        if (!plausible(name)) return Optional.empty();
        try (InputStream in = BuiltIn.class.getResourceAsStream(ROOT + kind + "/" + name + END)) {
            return in == null ? Optional.empty() : Optional.of(Text.of(in.readNBytes(Text.LIMIT + 1), fileName(kind, name)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Names come from users: none leads out of the folder. */
    private static boolean plausible(String name) { return !name.contains("/") && !name.contains("\\") && !name.contains("..") && !name.isBlank(); }

    /** Names of all sheets of a kind, without reading one; in order. */
    static List<String> names(String kind) {
        URL folder = BuiltIn.class.getResource(ROOT + kind);
        if (folder == null) return List.of();
        try {
            if (folder.openConnection() instanceof JarURLConnection jar) {
                String prefix = ROOT.substring(1) + kind + "/";
                return sorted(jar.getJarFile().stream().map(e -> e.getName()).filter(n -> n.startsWith(prefix)).map(n -> n.substring(prefix.length())));
            }
            try (Stream<Path> files = Files.list(Path.of(folder.toURI()))) {
                return sorted(files.map(f -> f.getFileName().toString()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException("resource folder " + folder, e);
        }
    }

    private static List<String> sorted(Stream<String> files) {
        return files.filter(f -> f.endsWith(END)).map(f -> f.substring(0, f.length() - END.length())).sorted(String.CASE_INSENSITIVE_ORDER).toList();
    }
}
