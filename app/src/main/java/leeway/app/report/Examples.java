package leeway.app.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The example transports that come along, as resources. */
public final class Examples {
    private static final String FOLDER = "/leeway/examples/";

    private Examples() { }

    /** Names without ending, in order. */
    public static List<String> names() {
        return leeway.files.sheet.Resources.names(Examples.class, FOLDER).stream().filter(n -> n.endsWith(".yaml")).map(Examples::plain).toList();
    }

    /** The text of an example; the folder and the ending may be left out. */
    public static Optional<String> text(String name) {
        String plain = plain(name);
        if (!names().contains(plain)) return Optional.empty();
        try (InputStream in = Examples.class.getResourceAsStream(FOLDER + plain + ".yaml")) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@code examples/night-transfer.yaml} and {@code night-transfer} are the same. */
    public static String plain(String name) { return name.replaceFirst("^(\\./)?examples/", "").replaceFirst("\\.ya?ml$", ""); }
}
