package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Read;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A right file, damaged at random: the reader never throws, and whatever is wrong has its place within the file.
 * The seed is in the test's name; {@code Damage} does the same for the same seed.
 */
class FuzzTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();
    private static final String BASE = base();
    private static final List<String> SCRAPS = List.of(":", ": ", "- ", "[", "]", "{", "}", "\"", "'", "#", " #", "&a ", "*a", "!!x ", "|", ">", "\t", "\n", "\r\n", "  ", "%", "@", "`", "---\n",
            "...\n", "? ", "<<: ", "~", "null", "yes", "NaN", "-1", "1e308", "0x10", "\u0000", "\uFEFF", "é", "𝄞", "\u2028", "\\x", "\uD800", "é", "170", " kg", " cmH2O", "like: ", "is: ", "null: ");

    private static String base() {
        try {
            return Files.readString(Path.of("src/test/resources/leeway/right-base.yaml"));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {1, 2, 3, 20_261_125})
    void aDamagedFileNeverThrows(long seed) { damage(seed, 250); }

    @Tag("long") @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {4, 5, 6, 7, 8, 9, 10, 11})
    void aDamagedFileNeverThrowsLong(long seed) { damage(seed, 10_000); }

    private static void damage(long seed, int rounds) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < rounds; i++) {
            String text = damaged(BASE, random);
            Read<?> read = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> TransportReader.read("x.yaml", text, CATALOGUE), () -> "hangs on:\n" + text);
            for (Complaint c : read.problems()) {
                assertThat(c.at().file()).as(c.line()).isEqualTo("x.yaml");
                assertThat(c.at().line()).as(c.line() + "\n" + text).isBetween(1, text.split("\\R", -1).length + 1);
                assertThat(c.at().column()).isPositive();
                assertThat(c.line()).as(text).hasSizeLessThan(600).doesNotContain("\n", "\r", "\t", "null.", "Exception", "leeway.");
            }
        }
    }

    @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {1, 2})
    void aDamagedSheetNeverThrows(long seed) throws IOException { damageSheets(seed, 3); }

    @Tag("long") @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {3, 4})
    void aDamagedSheetNeverThrowsLong(long seed) throws IOException { damageSheets(seed, 120); }

    private static void damageSheets(long seed, int rounds) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (SheetKind<?> kind : Kinds.ALL) {
            for (String name : CATALOGUE.names(kind.word())) {
                String sheet = Files.readString(Path.of("src/main/resources/leeway/sheets", kind.word(), name + ".yaml"));
                for (int i = 0; i < rounds; i++) {
                    String text = random.nextBoolean() ? damaged(sheet, random) : renumbered(sheet, random);
                    FileCheck check = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> FileCheck.of("x.yaml", text, CATALOGUE), () -> "hangs on:\n" + text);
                    for (Complaint c : check.complaints()) {
                        assertThat(c.line()).as(text).hasSizeLessThan(700).doesNotContain("\n", "\r", "\t", "null.", "Exception", "leeway.");
                    }
                }
            }
        }
    }

    /** Still YAML, with one number changed: this reaches what the records refuse. */
    private static String renumbered(String text, SplittableRandom random) {
        List<MatchResult> numbers = Pattern.compile("(?<=[ {])-?\\d+(\\.\\d+)?(?= )").matcher(text).results().toList();
        if (numbers.isEmpty()) return damaged(text, random);
        MatchResult m = numbers.get(random.nextInt(numbers.size()));
        String other = List.of("0", "-1", "1", "3", "1000", "0.001", "50").get(random.nextInt(7));
        return text.substring(0, m.start()) + other + text.substring(m.end());
    }

    private static String damaged(String text, SplittableRandom random) {
        StringBuilder out = new StringBuilder(text);
        int times = 1 + random.nextInt(4);
        for (int i = 0; i < times; i++) {
            int at = random.nextInt(out.length() + 1);
            switch (random.nextInt(6)) {
                case 0 -> out.insert(at, SCRAPS.get(random.nextInt(SCRAPS.size())));
                case 1 -> out.delete(at, Math.min(out.length(), at + 1 + random.nextInt(12)));
                case 2 -> out.insert(at, (char) random.nextInt(0x20, 0x300));
                case 3 -> {
                    int to = Math.min(out.length(), at + random.nextInt(60));
                    out.insert(random.nextInt(out.length() + 1), out.substring(at, to));
                }
                case 4 -> {
                    if (at < out.length()) out.setCharAt(at, (char) random.nextInt(0x20, 0x7f));
                }
                default -> out.setLength(Math.max(1, at));
            }
        }
        return out.toString();
    }
}
