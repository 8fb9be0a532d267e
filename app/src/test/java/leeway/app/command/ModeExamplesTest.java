package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each mode has an example transport, and does in it what a clinician expects. */
class ModeExamplesTest {
    private static final Path FOLDER = Path.of("..", "examples");

    @TempDir
    Path folder;

    private static List<JsonNode> run(Path file, String lasting) throws IOException {
        Run run = Run.of("breathe", file.toString(), "--for", lasting, "--format", "json");
        assertThat(run.exit()).as(run.err()).isZero();
        List<JsonNode> rows = new ArrayList<>();
        new ObjectMapper().readTree(run.out()).get("breaths").forEach(rows::add);
        return rows;
    }

    private static List<JsonNode> example(String name, String lasting) throws IOException { return run(FOLDER.resolve(name + ".yaml"), lasting); }

    private List<JsonNode> changed(String name, String lasting, String... fromTo) throws IOException {
        String text = Files.readString(FOLDER.resolve(name + ".yaml"));
        for (int i = 0; i < fromTo.length; i += 2) {
            assertThat(text).contains(fromTo[i]);
            text = text.replace(fromTo[i], fromTo[i + 1]);
        }
        Path file = folder.resolve("changed.yaml");
        Files.writeString(file, text);
        return run(file, lasting);
    }

    private static double mean(List<JsonNode> rows, String key, double fromS, double toS) {
        return rows.stream().filter(r -> r.get("atS").asDouble() >= fromS && r.get("atS").asDouble() < toS && r.has(key)).mapToDouble(r -> r.get(key).asDouble()).average().orElse(Double.NaN);
    }

    private static long count(List<JsonNode> rows, Predicate<JsonNode> what) { return rows.stream().filter(what).count(); }

    private static boolean by(JsonNode row, String who) { return row.path("startedBy").asText().equals(who); }

    private static boolean flagged(JsonNode row, String what) { return row.path("asynchrony").toString().contains(what); }

    @Test void supportFallsAndSoDoesTheVolumeThenTheEffortStopsAndBackupComes() throws IOException {
        List<JsonNode> rows = example("mode-support", "28 min");
        double before = mean(rows, "inspiredMl", 1000, 1195), after = mean(rows, "inspiredMl", 1205, 1240);
        assertThat(after).isLessThan(0.85 * before);
        assertThat(mean(rows, "workOfBreathingJPerL", 1205, 1400)).isGreaterThan(mean(rows, "workOfBreathingJPerL", 1000, 1195));
        assertThat(count(rows, r -> r.get("atS").asDouble() < 1500 && by(r, "patient"))).isGreaterThan(200);
        assertThat(rows.stream().filter(r -> r.get("atS").asDouble() < 1500)).noneMatch(r -> by(r, "nobody"));
        JsonNode backup = rows.stream().filter(r -> by(r, "backup")).findFirst().orElseThrow();
        assertThat(backup.get("atS").asDouble()).as("20 s of the device after the last breath").isBetween(1510.0, 1525.0);
        assertThat(backup.get("mandatory").asBoolean()).isTrue();
    }

    @Test void aMoreSensitiveTriggerTakesTheHeartForThePatient() throws IOException {
        List<JsonNode> rows = changed("mode-support", "5 min", "flow trigger: 2 L/min", "flow trigger: 0.5 L/min", "heart swing: 1.5 L/min", "heart swing: 5 L/min");
        assertThat(count(rows, r -> by(r, "nobody") && flagged(r, "false triggering"))).isGreaterThan(3);
    }

    @Test void whoPullsInPressureControlGetsMore() throws IOException {
        List<JsonNode> pulls = example("mode-assist-pressure", "4 min"), still = changed("mode-assist-pressure", "4 min", "effort: normal", "effort: none");
        assertThat(mean(pulls.stream().filter(r -> by(r, "patient")).toList(), "inspiredMl", 30, 240)).isGreaterThan(mean(still, "inspiredMl", 30, 240) + 80);
        assertThat(pulls).as("slower than the patient, the clock starts nothing").allMatch(r -> !r.has("startedBy") || by(r, "patient"));
        assertThat(pulls.get(10).get("inspiredBy").asText()).isIn("both", "ventilator");
        assertThat(still.get(10).get("inspiredBy").asText()).isEqualTo("ventilator");
    }

    @Test void aVolumeTargetTakesPressureFromAPatientWhoWorks() throws IOException {
        List<JsonNode> strong = example("mode-volume-target", "4 min"), still = changed("mode-volume-target", "4 min", "effort: strong", "effort: none");
        assertThat(mean(strong, "peakCmH2O", 60, 240)).isLessThan(mean(still, "peakCmH2O", 60, 240) - 1);
        assertThat(mean(still, "inspiredMl", 60, 240)).isCloseTo(440, within(15.0));
        // a low limit: the pressure that the target needs is not there
        List<JsonNode> limited = changed("mode-volume-target", "4 min", "effort: strong", "effort: none", "flow trigger: 2 L/min", "flow trigger: 2 L/min, pressure limit: 16 cmH2O");
        assertThat(mean(limited, "inspiredMl", 60, 240)).isLessThan(0.9 * 440);
        assertThat(limited.get(20).path("volumeNotReached").asBoolean()).isTrue();
    }

    @Test void aLowPressureLimitLeavesTheVolumeShortUnderAStrongEffortToo() throws IOException {
        List<JsonNode> rows = changed("mode-volume-target", "4 min", "mode: A/C-vtPC", "mode: A/C-VC", "flow trigger: 2 L/min", "flow trigger: 2 L/min, pressure limit: 14 cmH2O");
        assertThat(count(rows, r -> r.path("volumeNotReached").asBoolean())).isGreaterThan(rows.size() / 4);
        assertThat(rows).allSatisfy(r -> assertThat(r.get("peakCmH2O").asDouble()).isLessThan(14.01));
    }

    @Test void inMandatoryModesNobodyButTheClockStartsABreath() throws IOException {
        List<JsonNode> volume = example("mode-mandatory-volume", "6 min"), pressure = example("mode-mandatory-pressure", "6 min");
        assertThat(volume).allMatch(r -> by(r, "clock"));
        assertThat(count(volume, r -> r.path("sigh").asBoolean())).as("a sigh a minute").isBetween(5L, 6L);
        assertThat(pressure).allMatch(r -> by(r, "clock"));
        assertThat(count(pressure, r -> flagged(r, "ineffective effort"))).isGreaterThan(10);
    }

    @Test void betweenTheBreathsOfTheClockComeThePatientsOwn() throws IOException {
        for (String name : List.of("mode-intermittent-volume", "mode-intermittent-pressure")) {
            List<JsonNode> rows = example(name, "10 min");
            long mandatory = count(rows, r -> r.path("mandatory").asBoolean()), own = count(rows, r -> r.has("mandatory") && !r.get("mandatory").asBoolean());
            assertThat(mandatory).as(name).isBetween(90L, 110L);
            assertThat(own).as(name).isGreaterThan(20);
        }
        List<JsonNode> sedated = example("mode-intermittent-pressure", "25 min");
        assertThat(mean(sedated, "patientShare", 1200, 1500)).as("sedation at 15 min").isLessThan(mean(sedated, "patientShare", 300, 890) - 0.04);
        assertThat(mean(sedated, "p01CmH2O", 1200, 1500)).isLessThan(0.7 * mean(sedated, "p01CmH2O", 300, 890));
    }

    @Test void withoutSupportAllTheWorkIsThePatients() throws IOException {
        List<JsonNode> unaided = example("mode-continuous-pressure", "5 min"),
                helped = changed("mode-continuous-pressure", "5 min", "mode: CPAP, peep: 6 cmH2O", "mode: CSV-PS, support pressure above PEEP: 8 cmH2O, peep: 6 cmH2O");
        assertThat(unaided).allMatch(r -> !r.path("mandatory").asBoolean());
        assertThat(mean(unaided, "patientShare", 60, 300)).isGreaterThan(mean(helped, "patientShare", 60, 300) + 0.15);
        assertThat(unaided.get(20).get("inspiredBy").asText()).isEqualTo("patient");
        assertThat(mean(unaided, "inspiredMl", 60, 300)).isLessThan(mean(helped, "inspiredMl", 60, 300));
    }

    @Test void onTwoLevelsThePatientBreathesOnBoth() throws IOException {
        List<JsonNode> rows = example("mode-two-levels", "5 min");
        assertThat(count(rows, r -> r.path("mandatory").asBoolean())).isBetween(57L, 63L);
        assertThat(count(rows, r -> by(r, "patient") && !r.path("mandatory").asBoolean())).isGreaterThan(15);
    }

    @Test void aLeakKeepsSupportFromEndingUntilItEndsByTime() throws IOException {
        List<JsonNode> rows = example("mode-support-with-leak", "16 min");
        assertThat(count(rows, r -> r.get("atS").asDouble() < 175 && flagged(r, "late cycling"))).as("no leak yet").isZero();
        assertThat(count(rows, r -> r.get("atS").asDouble() < 590 && flagged(r, "late cycling"))).isGreaterThan(50);
        assertThat(mean(rows, "inspiratoryTimeS", 250, 590)).as("the device's longest support").isCloseTo(2, within(0.05));
        assertThat(count(rows, r -> r.get("atS").asDouble() > 610 && flagged(r, "late cycling"))).isLessThan(5);
        assertThat(mean(rows, "inspiratoryTimeS", 610, 960)).isCloseTo(1.2, within(0.05));
        assertThat(mean(rows, "inspiredAtVentilatorMl", 250, 590)).isGreaterThan(mean(rows, "inspiredMl", 250, 590) + 50);
    }

    @Test void carbonDioxideDrivesThePatientWhereTheFileLetsIt() throws IOException {
        String[] more = {"events:", "what if:\n  - {at: 3 min, fault: rebreathing}\nevents:", "what if:\n  - {at: 25 min, fault: effort stops}\n", ""};
        List<JsonNode> answers = changed("mode-support", "18 min", more),
                fixed = changed("mode-support", "18 min", more[0], more[1], more[2], more[3], "heart rate: 90 /min", "drive: fixed\n  heart rate: 90 /min");
        assertThat(mean(answers, "paco2MmHg", 0, 170)).isCloseTo(mean(fixed, "paco2MmHg", 0, 170), within(1.0));
        assertThat(mean(answers, "p01CmH2O", 900, 1080)).isGreaterThan(1.2 * mean(fixed, "p01CmH2O", 900, 1080));
        assertThat(mean(answers, "paco2MmHg", 900, 1080)).isLessThan(mean(fixed, "paco2MmHg", 900, 1080) - 2);
    }

    @Test void theWavesCarryMarks() throws IOException {
        Path csv = folder.resolve("w.csv"), edf = folder.resolve("w.edf");
        String file = FOLDER.resolve("mode-support.yaml").toString();
        assertThat(Run.of("breathe", file, "--for", "30 s", "--as", "waves", "--out", csv.toString()).exit()).isZero();
        assertThat(Files.readAllLines(csv).stream().filter(l -> l.endsWith(",patient"))).hasSizeBetween(5, 14);
        assertThat(Run.of("breathe", file, "--for", "30 s", "--as", "waves", "--out", edf.toString()).exit()).isZero();
        assertThat(new String(Files.readAllBytes(edf), java.nio.charset.StandardCharsets.ISO_8859_1)).contains("\u0014patient\u0014");
    }

    @Test
    void aModeThatWaitsForAPatientWhoStartsNothingIsNoPlan() throws IOException {
        String text = Files.readString(FOLDER.resolve("mode-support.yaml"));
        assertThat(text).contains("effort: normal");
        JsonNode none = plan(text.replace("effort: normal", "effort: none"));
        assertThat(none.at("/verdict/holds").asBoolean()).isFalse();
        assertThat(none.at("/verdict/reasons").toString()).contains("Nobody starts a breath in CSV-PS", "the patient makes no effort", "apnoea backup");
        JsonNode unsaid = plan(text.replaceFirst("effort: normal(, )?", ""));
        assertThat(unsaid.at("/verdict/reasons").toString()).doesNotContain("Nobody starts");
        assertThat(unsaid.at("/verdict/remarks").toString()).contains("The file names no effort", "a normal effort is taken");
        assertThat(plan(text).at("/verdict").toString()).doesNotContain("tarts a breath", "names no effort");
    }

    /** However the breaths stop: sedation at departure, by an event, of one leg; a support that leaves no drive. */
    @Test
    void sedationThatTakesTheBreathIsNoPlan() throws IOException {
        String text = Files.readString(FOLDER.resolve("mode-support.yaml")), head = "  heart rate: 90", events = "events:";
        assertThat(text).contains(head, events);
        JsonNode all = plan(text.replace(head, "  sedation: 100 %\n" + head));
        assertThat(all.at("/verdict/holds").asBoolean()).isFalse();
        assertThat(all.at("/verdict/reasons").toString()).contains("Nobody starts a breath in CSV-PS: sedation takes all of the own effort. ");
        assertThat(plan(text.replace(events, events + "\n  - {at: 10 min, sedation: 100 %}")).at("/verdict/reasons").toString())
                .contains("From 10 min on nobody starts a breath in CSV-PS, for 23 min in all: sedation takes all of the own effort. ");
        assertThat(plan(text.replace(head, "  sedation: 40 %\n" + head).replaceAll("- \\{at: 20 min.*", "- {at: 10 min, set: {support pressure above PEEP: 25 cmH2O}}")).at("/verdict/reasons").toString())
                .contains("nobody starts a breath in CSV-PS, for ", "under this sedation a PaCO2 of ");
    }

    /** An act of the file that harms is judged: the settled states of the legs know nothing of it. */
    @Test
    void anEventThatLeavesTooFewBreathsIsNoPlan() throws IOException {
        String text = Files.readString(FOLDER.resolve("night-transfer.yaml"));
        assertThat(text).contains("events:");
        JsonNode few = plan(text.replace("events:", "events:\n  - {at: 10 min, set: {rate: 4 /min}}"));
        assertThat(few.at("/verdict/holds").asBoolean()).isFalse();
        assertThat(few.at("/verdict/reasons").toString()).contains("PaCO2 ", "saturation ", "where harm begins");
    }

    private JsonNode plan(String text) throws IOException {
        Path file = folder.resolve("plan.yaml");
        Files.writeString(file, text);
        Run run = Run.of("plan", file.toString(), "--format", "json");
        assertThat(run.exit()).as(run.err()).isLessThan(2);
        return new ObjectMapper().readTree(run.out());
    }
}
