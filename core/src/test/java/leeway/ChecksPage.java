package leeway;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * docs/checks.md: every published figure beside ours.
 * <p>Each module owns the stretch of the page between its two marks; a module's test calls {@link #holds} with a class
 * of its own test sources, and all its {@code …PublishedTest} classes are found from there.
 */
public final class ChecksPage {
    private static final String PAGE = "docs/checks.md";
    private static final String HEAD = """
            # Published figures beside ours

            Written by the tests from their own rows (`mvn test -Dsurefire.args=-Dapprove` writes it anew); a test fails when it is stale.
            *Off* is ours minus print. The tolerance is half of the last printed digit or the published spread.
            *from memory* marks a source that nobody looked up; *computed* a value that follows from a formula which was looked up.
            Where the model misses, the row says so and why.

            """;

    private ChecksPage() {
    }

    /** Asserts that this module's stretch of the page is what its rows give. */
    public static void holds(String module, Class<?> anyTestOfModule) {
        String begin = "<!-- rows of " + module + " -->\n";
        String end = "<!-- end of " + module + " -->\n";
        Path file = Approved.root().resolve(PAGE);
        String kept;
        try {
            kept = Files.exists(file) ? Files.readString(file) : HEAD;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String body = begin + rows(anyTestOfModule) + end;
        int from = kept.indexOf(begin);
        int to = kept.indexOf(end);
        String page = from < 0 || to < from ? kept + body : kept.substring(0, from) + body + kept.substring(to + end.length());
        if (!page.startsWith(HEAD)) page = HEAD + page.substring(Math.max(0, page.indexOf("<!-- rows of ")));
        Approved.same(PAGE, page);
    }

    private static String rows(Class<?> anyTestOfModule) {
        StringBuilder page = new StringBuilder();
        String room = "";
        for (Map.Entry<String, List<Check>> test : published(anyTestOfModule).entrySet()) {
            String in = test.getKey().substring(0, test.getKey().lastIndexOf('.'));
            if (!in.equals(room)) page.append("## ").append(in).append("\n\n");
            room = in;
            page.append("### ").append(test.getKey().substring(in.length() + 1)).append("\n\n")
                    .append("| case | published | ours | off | tolerance | unit | source | confidence |\n| --- | ---: | ---: | ---: | ---: | --- | --- | --- |\n");
            for (Check row : test.getValue()) page.append(line(row));
            page.append('\n');
        }
        return page.toString();
    }

    private static String line(Check row) {
        double ours = row.ours().getAsDouble();
        int digits = row.tolerance() > 0 ? Math.max(0, (int) Math.ceil(-Math.log10(row.tolerance())) + 1) : 6;
        String source = row.source() + (row.missed().isEmpty() ? "" : ". **Missed:** " + row.missed());
        return String.format(Locale.ROOT, "| %s | %s | %s | %s | %s | %s | %s | %s |%n", cell(row.what()), plain(row.printed()), rounded(ours, digits),
                rounded(ours - row.printed(), digits), plain(row.tolerance()), cell(row.unit()), cell(source), row.confidence().words()).replace("\r", "");
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }

    private static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private static String rounded(double value, int digits) {
        BigDecimal rounded = new BigDecimal(value).setScale(digits, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }

    /** All lists of rows among the test classes that lie beside the given one, by full class name. */
    private static Map<String, List<Check>> published(Class<?> anyTestOfModule) {
        Map<String, List<Check>> found = new TreeMap<>();
        try {
            Path classes = Path.of(anyTestOfModule.getProtectionDomain().getCodeSource().getLocation().toURI());
            try (var tree = Files.walk(classes)) {
                for (Path file : (Iterable<Path>) tree.filter(f -> f.getFileName().toString().endsWith("PublishedTest.class"))::iterator) {
                    String name = classes.relativize(file).toString().replace(java.io.File.separatorChar, '.').replaceAll("\\.class$", "");
                    for (var field : Class.forName(name).getDeclaredFields()) {
                        if (!field.getName().equals("ROWS") || !field.getGenericType().getTypeName().contains(Check.class.getName())) continue;
                        field.setAccessible(true);
                        @SuppressWarnings("unchecked")
                        List<Check> rows = (List<Check>) field.get(null);
                        found.put(name, rows);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException | ReflectiveOperationException e) {
            throw new AssertionError("the ROWS of a …PublishedTest cannot be read: " + e, e);
        }
        return found;
    }
}
