package leeway.files.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** What lies in a folder of resources, in a jar or in a folder of classes. */
public final class Resources {
    private Resources() { }

    /**
     * Names of the files in the folder, in order; empty where there is no such folder.
     *
     * @param near   a class beside which the folder lies
     * @param folder absolute, with a slash at both ends
     */
    public static List<String> names(Class<?> near, String folder) {
        URL url = near.getResource(folder.substring(0, folder.length() - 1));
        if (url == null) return List.of();
        try {
            if (url.openConnection() instanceof JarURLConnection jar) {
                String prefix = folder.substring(1);
                return sorted(jar.getJarFile().stream().map(e -> e.getName()).filter(n -> n.startsWith(prefix) && n.length() > prefix.length()).map(n -> n.substring(prefix.length())));
            }
            try (Stream<Path> files = Files.list(Path.of(url.toURI()))) {
                return sorted(files.map(f -> f.getFileName().toString()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException("resource folder " + url, e);
        }
    }

    private static List<String> sorted(Stream<String> files) { return files.filter(f -> f.indexOf('/') < 0).sorted(String.CASE_INSENSITIVE_ORDER).toList(); }
}
