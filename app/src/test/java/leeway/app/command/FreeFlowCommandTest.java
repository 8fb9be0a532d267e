package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Free flow as a user meets it: a ventilator of the file, an alternative of compare, no map. */
class FreeFlowCommandTest {
    private static final Path WARD = Path.of("..", "examples", "free-flow-to-the-ward.yaml"), NIGHT = Path.of("..", "examples", "night-transfer.yaml");

    @TempDir
    Path folder;

    @Test
    void theSedatedPatientWakesAndBreathesBetter() throws IOException {
        JsonNode plan = new ObjectMapper().readTree(Run.of("plan", WARD.toString(), "--format", "json").out());
        assertThat(plan.at("/settings").has("mode")).isFalse();
        assertThat(plan.at("/cautions").toString() + plan.at("/turnaround")).doesNotContain("filter").doesNotContain("circuit");
        assertThat(plan.at("/expected/paco2MmHg").asDouble()).isBetween(44.0, 54.0);
        assertThat(plan.at("/expected/byLeg/0/paco2MmHg").asDouble()).as("sedation wears off").isLessThan(plan.at("/expected/paco2MmHg").asDouble() - 1);
        assertThat(plan.at("/oxygen/byLeg/0/drawLPerMin").asDouble()).isEqualTo(6);
        double rate = 1000 * plan.at("/expected/minuteVolumeLPerMin").asDouble() / plan.at("/expected/tidalVolumeMl").asDouble();
        assertThat(plan.at("/ownBreathing/byPatientPerMin").asDouble()).as("the driven effort in all figures").isBetween(rate - 1.5, rate + 1.5);
    }

    @Test
    void whoDoesNotBreatheIsARefusalAndNothingIsExpected() throws IOException {
        Path file = folder.resolve("t.yaml");
        Files.writeString(file, Files.readString(WARD).replace("  lungs: {effort: normal}\n", "  paralysed: yes\n"));
        Run run = Run.of("plan", file.toString(), "--format", "json");
        assertThat(run.exit()).isEqualTo(1);
        JsonNode plan = new ObjectMapper().readTree(run.out());
        assertThat(plan.at("/verdict/reasons").toString()).contains("Nobody breathes");
        assertThat(plan.at("/expected").has("tidalVolumeMl")).isFalse();
        assertThat(plan.at("/expected").has("paco2MmHg")).isFalse();
    }

    @Test
    void itStandsBesideAVentilatorAndAHandBag() {
        Run run = Run.of("compare", NIGHT.toString(), "--with", "ventilator=free flow", "--with", "ventilator=hand bag");
        assertThat(run.out()).contains("breathes alone", "by hand", "Nobody breathes");
    }

    @Test
    void thereIsNoMapOfIt() {
        Run run = Run.of("map", WARD.toString());
        assertThat(run.exit()).isEqualTo(1);
        assertThat(run.err().strip().lines()).hasSize(1);
        assertThat(run.err()).contains("no operating map");
        Run report = Run.of("plan", WARD.toString(), "--report", folder.resolve("r").toString());
        assertThat(report.exit()).as(report.err()).isZero();
        assertThat(folder.resolve("r").resolve("plan.html")).content().contains("Room to every limit", "there is no operating map");
    }
}
