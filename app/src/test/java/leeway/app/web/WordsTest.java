package leeway.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class WordsTest {
    private static final Map<String, String> ENGLISH = Words.in("en").all();
    private static final Map<String, String> GERMAN = Words.in("de").all();
    /** Names of the file, which English shows as they stand there. */
    private static final Pattern NAMES = Pattern.compile("(key|value|hint|brief|unit|row|kind|calc|fault|alarm|coverage|priority|group|item)\\..*");

    @Test
    void germanSaysEverythingThatEnglishSays() {
        Set<String> missing = new TreeSet<>(ENGLISH.keySet());
        missing.removeAll(GERMAN.keySet());
        assertThat(missing).isEmpty();
        Set<String> more = new TreeSet<>(GERMAN.keySet());
        more.removeAll(ENGLISH.keySet());
        assertThat(more).allMatch(k -> NAMES.matcher(k).matches());
    }

    @Test
    void bothLeaveTheSameGaps() {
        Pattern gap = Pattern.compile("\\{\\d}");
        ENGLISH.forEach((key, text) -> assertThat(gaps(gap, GERMAN.get(key))).as(key).isEqualTo(gaps(gap, text)));
    }

    private static Set<String> gaps(Pattern gap, String text) {
        Set<String> gaps = new TreeSet<>();
        Matcher m = gap.matcher(text);
        while (m.find()) gaps.add(m.group());
        return gaps;
    }

    @Test
    void everyTextThatAPageSaysIsThere() throws IOException {
        Pattern said = Pattern.compile("\\b(?:say|new Refused\\(\\d+,|Refused\\(\\d+,) ?\\(?\\s*\"([a-z0-9A-Z.]+)\"");
        Set<String> missing = new TreeSet<>();
        for (Path root : new Path[] {Path.of("src/main/jte"), Path.of("src/main/java/leeway/app/web")}) {
            try (var files = Files.walk(root)) {
                for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
                    Matcher m = said.matcher(Files.readString(file));
                    while (m.find()) if (!ENGLISH.containsKey(m.group(1)) && !m.group(1).endsWith(".")) missing.add(file.getFileName() + ": " + m.group(1));
                }
            }
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void templatesHoldNoTextOfTheirOwn() throws IOException {
        Pattern text = Pattern.compile(">([^<>@${}`!]*[A-Za-z]{3,}[^<>@${}`!]*)<");
        Set<String> found = new TreeSet<>();
        try (var files = Files.walk(Path.of("src/main/jte"))) {
            for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
                for (String line : Files.readAllLines(file)) {
                    String markup = line.replaceAll("\\$(unsafe)?\\{[^}]*}", "").replaceAll("@\\w+\\([^\\n]*?\\)(?=<|$)", "");
                    Matcher m = text.matcher(markup);
                    while (m.find()) if (!line.contains("<code>") && !m.group(1).strip().matches("(· )?Leeway|min|s")) found.add(file.getFileName() + ": " + m.group(1).strip());
                }
            }
        }
        assertThat(found).isEmpty();
    }
}
