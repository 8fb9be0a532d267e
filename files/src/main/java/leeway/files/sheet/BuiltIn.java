package leeway.files.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
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
        return Resources.names(BuiltIn.class, ROOT + kind + "/").stream().filter(f -> f.endsWith(END)).map(f -> f.substring(0, f.length() - END.length())).toList();
    }
}
