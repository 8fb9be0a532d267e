package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What {@code map} and {@code compare} say on a terminal and in JSON. */
class MapAndCompareTest {
    private static final String NIGHT = Path.of("..", "examples", "night-transfer.yaml").toString();

    private static void fitsATerminal(String text) {
        assertThat(text.lines()).allSatisfy(l -> assertThat(l.codePointCount(0, l.length())).as(l).isLessThanOrEqualTo(80));
        assertThat(text).doesNotContain("\u001b", "NaN", "null");
    }

    @Test void theMapSaysWhereTheSettingsLieHowFarTheyMayBeTurnedAndWhatMovesTheResults() {
        Run map = Run.of("map", NIGHT);
        assertThat(map.exit()).isZero();
        assertThat(map.err()).isEmpty();
        fitsATerminal(map.out());
        assertThat(map.out()).contains("How far each knob may be turned alone", "At the chosen settings", "What moves the results most", "at most 30 cmH2O", "nothing here is an order");
        assertThat(map.out().lines().filter(l -> l.contains("|") && l.contains("O")).count()).as("one chosen point on the chart").isOne();
        assertThat(map.out().replaceAll("\\s+", " ")).contains("Little room on these settings: saturation low", "prescribed FiO2 60 % and PEEP 8 cmH2O");
    }

    @Test void aPictureIsWrittenUnderItsOwnNameOnly() {
        Run run = Run.of("map", NIGHT, "--points", "5", "--out", "map.png");
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.err()).isEqualTo("leeway: --out \"map.png\" does not end in .svg.\n");
    }

    @Test void aConflictStandsOnTheMapInTheWordsOfThePlan() {
        String text = Run.of("map", Path.of("..", "examples", "one-small-cylinder.yaml").toString()).out();
        fitsATerminal(text);
        assertThat(text.replaceAll("\\s+", " ")).contains("lies beyond a limit: ", "What cannot be kept", "keeping it would need a");
    }

    @Test void comparedPlansStandSideBySideAndWhatIsTheSameStandsOnce() throws Exception {
        Run text = Run.of("compare", NIGHT, "--with", "ventilator=example turbine");
        assertThat(text.exit()).isZero();
        fitsATerminal(text.out());
        assertThat(text.out()).contains("What differs", "as the file says", "example turbine", "The same in all", "not a medical device");
        JsonNode json = new ObjectMapper().readTree(Run.of("compare", NIGHT, "--with", "ventilator=example turbine,circuit=two limb adult", "--format", "json").out());
        assertThat(json.toString()).contains("two limb adult");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"ventilator=example turbin | Did you mean \"example turbine\"?", "ventilatr=example turbine | Did you mean \"ventilator\"?", "ventilator= | has no name", "ventilator | has no name"})
    void aWrongAlternativeIsALineAndExitTwo(String with, String said) {
        Run run = Run.of("compare", NIGHT, "--with", with);
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(said);
        assertThat(run.err().lines()).hasSize(1);
    }

    /** The strategy of a child sets a pressure, a hand squeezes a volume: this pair once ended in a fault of ours. */
    @Test void aHandBagHasAMapForAChildToo(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("child.yaml");
        Files.writeString(file, "transport: t\npatient: {age: 4 years}\nventilator: hand bag\noxygen:\n  - {name: one, cylinder: 10 L, pressure: 200 bar}\nlegs:\n  - {leg: road, takes: 20 min, oxygen: one}\n");
        Run map = Run.of("map", file.toString());
        assertThat(map.exit()).as(map.err()).isZero();
        assertThat(map.out()).contains("tidal volume");
    }
}
