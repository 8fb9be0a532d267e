package leeway.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class JsonTest {
    private static String sample() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Json json = new Json(out)) {
            json.text("transport", "Holm \"clinic\" – 5 °C\n");
            json.object("expected", () -> {
                json.number("peakCmH2O", 23.4567);
                json.number("spo2", OptionalDouble.empty());
                json.number("marginMin", -0.0001);
                json.objects("byLeg", List.of("road", "flight"), leg -> json.text("leg", leg));
            });
            json.texts("cautions", List.of());
            json.rows("room", "room", new double[][] {{0.25, Double.NaN}});
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test void anIndependentReaderReadsWhatWasWritten() throws Exception {
        JsonNode node = new ObjectMapper().readTree(sample());
        assertThat(node.at("/transport").asText()).isEqualTo("Holm \"clinic\" – 5 °C\n");
        assertThat(node.at("/expected/peakCmH2O").asDouble()).isEqualTo(23.46);
        assertThat(node.at("/expected/byLeg/1/leg").asText()).isEqualTo("flight");
        assertThat(node.at("/room/0/1").isNull()).isTrue();
    }

    @Test void whatIsAbsentIsLeftOutAndMinusZeroIsZero() {
        assertThat(sample()).doesNotContain("spo2").contains("\"marginMin\": 0,");
    }

    @Test void twoLevelsStandOnLinesAndARowIsALine() {
        assertThat(sample()).endsWith("}\n").contains("\n    \"byLeg\": [{\"leg\": \"road\"}, {\"leg\": \"flight\"}]\n");
    }

    @Test void aFigureThatIsNotFiniteNeverReachesThePage() {
        assertThatThrownBy(() -> Digits.json("paco2MmHg", Double.NaN)).isInstanceOf(IllegalStateException.class).hasMessageContaining("paco2MmHg");
    }

    @Test void decimalsFollowTheUnitOfTheKey() {
        assertThat(Digits.json("drawLPerMin", 0.12349)).isEqualTo("0.123");
        assertThat(Digits.json("freeGasL", 1234.567)).isEqualTo("1234.57");
        assertThat(Digits.json("emptyChance", 0.00034)).isEqualTo("0.0003");
        assertThat(Digits.json("tidalVolumeMl", 366)).isEqualTo("366");
    }
}
