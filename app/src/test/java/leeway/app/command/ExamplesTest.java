package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every example transport: its verdict and why, the keys of the contract, numbers that are numbers. */
class ExamplesTest {
    private static final Path FOLDER = Path.of("..", "examples");
    private static final Map<String, JsonNode> PLANS = new TreeMap<>();

    /** Verdict, and words that its reasons must hold; empty: no reason. */
    private record Wanted(String word, List<String> reasons) { }

    private static final Wanted REMARKS = new Wanted("holds with remarks", List.of());
    private static final Map<String, Wanted> WANTED = Map.ofEntries(
            Map.entry("night-transfer", REMARKS), Map.entry("infant-by-road", REMARKS), Map.entry("child-by-helicopter", REMARKS),
            Map.entry("heavy-patient-by-air", REMARKS), Map.entry("head-injury-by-road", REMARKS), Map.entry("copd-by-ferry", REMARKS),
            Map.entry("after-arrest-by-helicopter", REMARKS), Map.entry("hand-bag-across-town", REMARKS), Map.entry("free-flow-to-the-ward", REMARKS), Map.entry("chest-injury-from-the-scene", REMARKS),
            Map.entry("mode-assist-pressure", REMARKS), Map.entry("mode-volume-target", REMARKS), Map.entry("mode-mandatory-volume", REMARKS), Map.entry("mode-mandatory-pressure", REMARKS), Map.entry("mode-intermittent-volume", REMARKS), Map.entry("mode-intermittent-pressure", REMARKS), Map.entry("mode-support", REMARKS), Map.entry("mode-continuous-pressure", REMARKS), Map.entry("mode-two-levels", REMARKS), Map.entry("mode-support-with-leak", REMARKS),
            Map.entry("one-small-cylinder", new Wanted("does not hold", List.of("Oxygen runs out"))),
            Map.entry("tired-battery", new Wanted("does not hold", List.of("charge runs out"))),
            Map.entry("beyond-the-device", new Wanted("does not hold", List.of("75 /min, the nearest that the example pneumatic has is 40 /min"))));

    static Stream<String> names() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString()).filter(n -> n.endsWith(".yaml")).map(n -> n.replace(".yaml", "")).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static synchronized JsonNode plan(String name) {
        return PLANS.computeIfAbsent(name, n -> {
            Run run = Run.of("plan", FOLDER.resolve(n + ".yaml").toString(), "--format", "json");
            assertThat(run.err()).isEmpty();
            try {
                JsonNode plan = new ObjectMapper().readTree(run.out());
                assertThat(run.exit()).as(n).isEqualTo(plan.at("/verdict/holds").asBoolean() ? 0 : 1);
                return plan;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    @Test void theIslandServiceShowsAllThatItPromises() {
        assertThat(names()).containsExactlyInAnyOrderElementsOf(WANTED.keySet());
        assertThat(WANTED.values().stream().filter(w -> !w.reasons().isEmpty()).count()).isGreaterThanOrEqualTo(2);
    }

    @ParameterizedTest @MethodSource("names") void theVerdictAndItsReasonsAreThoseThatTheTitlePromises(String name) {
        JsonNode verdict = plan(name).get("verdict");
        Wanted wanted = WANTED.get(name);
        assertThat(verdict.get("word").asText()).isEqualTo(wanted.word());
        if (wanted.reasons().isEmpty()) assertThat(verdict.get("reasons")).isEmpty();
        for (String part : wanted.reasons()) assertThat(verdict.get("reasons").toString()).contains(part);
    }

    @ParameterizedTest @MethodSource("names") void theKeysOfTheContractAreThere(String name) {
        JsonNode plan = plan(name);
        assertThat(plan.fieldNames()).toIterable().contains("transport", "version", "seed", "sourceHash", "verdict", "assumed", "patient", "settings", "expected", "oxygen",
                "rehearsals", "turnaround", "cautions");
        assertThat(plan.get("sourceHash").asText()).matches("[0-9a-f]{64}");
        assertThat(plan.at("/oxygen/byLeg")).allSatisfy(l -> assertThat(l.fieldNames()).toIterable().contains("leg", "drawLPerMin", "neededL", "from"));
        assertThat(plan.get("oxygen").fieldNames()).toIterable().contains("byLeg", "stores", "neededL", "usableL", "emptyChance", "changeovers");
        assertThat(plan.at("/oxygen/neededL").fieldNames()).toIterable().contains("p50", "p95", "p99");
        assertThat(plan.at("/expected/byLeg")).hasSameSizeAs(plan.at("/oxygen/byLeg"));
        boolean hand = name.startsWith("hand-bag") || name.startsWith("free-flow");
        assertThat(plan.get("settings").has("mode")).isEqualTo(!hand);
        assertThat(plan.has("power")).isEqualTo(!hand);
        assertThat(plan.at("/settings/because")).allSatisfy(b -> assertThat(b.get("origin").asText()).isIn("prescribed", "suggested"));
        if (plan.has("alarmLimits")) {
            assertThat(plan.get("alarmLimits")).allSatisfy(a -> assertThat(a.get("from").asText()).isIn(hand ? List.of("monitor") : List.of("ventilator", "monitor")));
        }
    }

    @ParameterizedTest @MethodSource("names") void sharesLieBetweenNothingAndAllAndSumsAgree(String name) {
        JsonNode plan = plan(name);
        List<String> odd = new ArrayList<>();
        walk("", plan, odd);
        assertThat(odd).isEmpty();
        JsonNode needed = plan.at("/oxygen/neededL");
        assertThat(needed.get("p50").asDouble()).isLessThanOrEqualTo(needed.get("p95").asDouble()).isPositive();
        assertThat(needed.get("p95").asDouble()).isLessThanOrEqualTo(needed.get("p99").asDouble());
    }

    private static void walk(String path, JsonNode node, List<String> odd) {
        if (node.isNumber() && !Double.isFinite(node.asDouble())) odd.add(path);
        if (node.isNull() || node.isTextual() && node.asText().matches(".*\\b(NaN|Infinity|null)\\b.*")) odd.add(path + " " + node);
        if (node.isNumber() && path.matches(".*/(fio2|spo2|emptyChance)") && (node.asDouble() < 0 || node.asDouble() > 1)) odd.add(path + " " + node);
        node.fields().forEachRemaining(e -> walk(path + "/" + e.getKey(), e.getValue(), odd));
        for (int i = 0; node.isArray() && i < node.size(); i++) walk(path + "/" + i, node.get(i), odd);
    }

    /** The chosen point has room, or the plan says which limit it touches or crosses. */
    @ParameterizedTest @MethodSource("names") void theChosenSettingsLieInDeepWaterOrTheLimitIsNamed(String name) throws IOException {
        if (name.startsWith("free-flow")) return;       // no map: nothing is set that ventilates
        JsonNode map = new ObjectMapper().readTree(Run.of("map", FOLDER.resolve(name + ".yaml").toString(), "--format", "json").out());
        JsonNode chosen = map.get("chosen");
        String said = (plan(name).at("/verdict/remarks") + " " + plan(name).at("/verdict/reasons")).toLowerCase(java.util.Locale.ROOT);
        if (chosen.get("room").asDouble() == 0) {
            assertThat(chosen.get("beyond")).isNotEmpty();
            for (JsonNode limit : chosen.get("beyond")) assertThat(said).contains(limit.asText().toLowerCase(java.util.Locale.ROOT).replaceAll(" (low|high)$", ""));
        } else if (chosen.get("room").asDouble() < 0.1) {
            assertThat(chosen.get("little").asText()).startsWith("Little room").contains(chosen.get("nearest").asText());
            assertThat(said).contains("little room on these settings: " + chosen.get("nearest").asText().toLowerCase(java.util.Locale.ROOT));
        } else {
            assertThat(chosen.has("little")).isFalse();
        }
        assertThat(map.get("settings")).allSatisfy(s -> assertThat(s.get("why").asText()).isNotBlank());
    }

    @Test void aWishBeyondTheDeviceStandsInAskedAndTheNearestInSettings() {
        JsonNode plan = plan("beyond-the-device");
        assertThat(plan.at("/asked/ratePerMin").asDouble()).isEqualTo(75);
        assertThat(plan.at("/settings/ratePerMin").asDouble()).isEqualTo(40);
    }

    /** PaCO2 52, PaO2 74 mmHg and pH 7.31 were measured under nearly the suggested settings: the fitted patient shows them again. */
    @Test void thePatientFittedToABloodGasShowsItAgain() {
        JsonNode e = plan("night-transfer").get("expected");
        assertThat(e.get("pao2MmHg").asDouble()).isBetween(70.0, 78.0);
        assertThat(e.get("paco2MmHg").asDouble()).isBetween(48.0, 54.0);
        assertThat(e.get("ph").asDouble()).isBetween(7.29, 7.34);
    }

    @Test void theSameSeedGivesTheSamePlanAndTextFitsTheTerminal() {
        String[] line = {"plan", FOLDER.resolve("night-transfer.yaml").toString(), "--seed", "7"};
        Run one = Run.of(line);
        assertThat(one).isEqualTo(Run.of(line));
        assertThat(one.out().lines()).allSatisfy(l -> assertThat(l.codePointCount(0, l.length())).isLessThanOrEqualTo(80));
        assertThat(one.out()).contains("not a medical device").doesNotContain("\u001b");
    }

    @Test void breatheGivesARowABreathWithTheKeysOfTheContract() throws Exception {
        Run run = Run.of("breathe", FOLDER.resolve("night-transfer.yaml").toString(), "--for", "66 min", "--format", "json");
        assertThat(run.exit()).as(run.err()).isZero();
        JsonNode breaths = new ObjectMapper().readTree(run.out()).get("breaths");
        assertThat(breaths.get(0).fieldNames()).toIterable().contains("atS", "leg", "mandatory", "inspiredMl", "expiredMl", "inspiredAtVentilatorMl", "peakCmH2O", "plateauCmH2O", "peepCmH2O",
                "meanCmH2O", "fio2", "etco2MmHg", "paco2MmHg", "pao2MmHg", "sao2", "spo2");
        double lowest = 1;
        for (JsonNode b : breaths) if (b.get("atS").asDouble() > 3600) lowest = Math.min(lowest, b.get("sao2").asDouble());
        // three minutes of a closed airway in severe hypoxaemia: saturation falls far, as any clinician expects
        assertThat(lowest).isLessThan(0.8);
    }

    @Test void aFileThatIsNotThereNamesTheNearestOne() {
        Run run = Run.of("plan", FOLDER.resolve("night-transfr.yaml").toString());
        assertThat(run.exit()).isEqualTo(2);
        assertThat(run.err()).hasLineCount(1).contains("there is no such file").contains("night-transfer.yaml");
    }
}
