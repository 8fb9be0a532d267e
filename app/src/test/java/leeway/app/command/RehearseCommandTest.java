package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RehearseCommandTest {
    private static final String NIGHT = Path.of("..", "examples", "night-transfer.yaml").toString();

    @Test
    void aFaultThatIsNamedTwiceIsRehearsedOnce() throws IOException {
        JsonNode rows = new ObjectMapper().readTree(Run.of("rehearse", NIGHT, "--fault", "tube kinked", "--fault", "tube kinked", "--format", "json").out()).at("/rehearsals");
        assertThat(rows).hasSize(1);
        assertThat(rows.at("/0/fault").asText()).isEqualTo("tube kinked");
    }

    @ParameterizedTest
    @CsvSource({"--fault, tube kinkd, Did you mean", "--at, 900 min, lies outside the journey", "--draws, ten, no whole number"})
    void whatIsWrongIsToldInOneLine(String option, String value, String says) {
        Run run = Run.of("rehearse", NIGHT, option, value);
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().strip().lines()).hasSize(1);
        assertThat(run.err()).contains(says);
    }
}
