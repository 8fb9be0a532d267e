package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The virtual patient as a user runs it. */
class BreatheCommandTest {
    private static final String HEALTHY = """
            transport: A healthy man in a quiet room
            patient: {sex: male, height: 175 cm, weight: 70 kg, age: 30 years, illness: healthy lungs, airway: tracheal tube 8.0 mm}
            ventilator: example turbine
            settings: {mode: CMV-VC, tidal volume: 500 mL, rate: 12 /min, inspiratory time: 1.5 s, peep: 5 cmH2O, fio2: %s}
            oxygen:
              - {name: wall, wall: yes}
            legs:
              - {leg: waiting, takes: 60 min, oxygen: wall}
            %s
            """;

    @TempDir
    Path folder;

    private Path file(String fio2, String rest) throws IOException {
        Path file = folder.resolve("t.yaml");
        Files.writeString(file, HEALTHY.formatted(fio2, rest));
        return file;
    }

    private static JsonNode rows(Run run) throws IOException {
        assertThat(run.exit()).as(run.err()).isZero();
        return new ObjectMapper().readTree(run.out()).get("breaths");
    }

    @Test
    void aRowABreathWithTheKeysOfTheContract() throws IOException {
        JsonNode rows = rows(Run.of("breathe", file("40 %", "").toString(), "--for", "2 min", "--format", "json"));
        assertThat(rows.size()).as("12 a minute, the last ends with the two minutes").isEqualTo(24);
        JsonNode row = rows.get(10);
        for (String key : List.of("atS", "leg", "mandatory", "inspiredMl", "expiredMl", "inspiredAtVentilatorMl", "peakCmH2O", "plateauCmH2O", "peepCmH2O", "meanCmH2O",
                "fio2", "etco2MmHg", "paco2MmHg", "pao2MmHg", "sao2", "spo2")) assertThat(row.has(key)).as(key).isTrue();
        assertThat(row.get("expiredMl").asDouble()).isBetween(490.0, 505.0);
        assertThat(row.get("mandatory").asBoolean()).isTrue();
    }

    @Test
    void breathsThatReadAlikeAreCountedAndNoneIsLost() throws IOException {
        Path file = file("40 %", "what if:\n  - {at: 2 min, fault: disconnection at the patient, for: 20 s}\n");
        int rows = rows(Run.of("breathe", file.toString(), "--for", "5 min", "--format", "json")).size();
        Run run = Run.of("breathe", file.toString(), "--for", "5 min");
        List<String> lines = run.out().lines().toList();
        int told = 0;
        for (String line : lines) {
            Matcher folded = Pattern.compile("the last of (\\d+) more like it").matcher(line);
            if (folded.find()) told += Integer.parseInt(folded.group(1));
            else if (line.matches(" \\d:\\d\\d:\\d\\d.*\\d") && !line.contains("heard")) told++;
        }
        assertThat(told).isEqualTo(rows);
        assertThat(lines).anyMatch(l -> l.matches(" 0:01:\\d\\d  the last of 2\\d more like it")).anyMatch(l -> l.contains("heard: ")).hasSizeLessThan(rows + 10);
    }

    /** Benumof 1997 (from memory): a healthy adult of 70 kg, preoxygenated, airway closed, reaches SaO2 80 % after 8.7 min; within 20 %. */
    @Test
    void aPreoxygenatedHealthyAdultWhoStopsBreathingReachesEightyPercentWhenPrintSaysSo() throws IOException {
        Path file = file("100 %", "what if:\n  - {at: 10 min, apnoea: airway closed, for: 20 min}\n");
        double at80S = Double.NaN;
        for (JsonNode row : rows(Run.of("breathe", file.toString(), "--for", "30 min", "--format", "json"))) {
            if (Double.isNaN(at80S) && row.get("sao2").asDouble() < 0.80) at80S = row.get("atS").asDouble() - 600;
        }
        assertThat(at80S / 60).isBetween(8.7 * 0.8, 8.7 * 1.2);
    }

    @Test
    void ninetySecondsOfPureOxygenRaiseOxygenAndDrawForThatTime() throws IOException {
        Path file = file("30 %", "events:\n  - {at: 5 min, set: {fio2: 100 %}, for: 90 s}\n");
        double before = 0, high = 0, after = 0, drawBefore = 0, drawHigh = 0;
        for (JsonNode row : rows(Run.of("breathe", file.toString(), "--for", "25 min", "--format", "json"))) {
            double atS = row.get("atS").asDouble(), pao2 = row.get("pao2MmHg").asDouble();
            if (atS < 290) {
                before = pao2;
                drawBefore = row.get("oxygenDrawLPerMin").asDouble();
            }
            if (atS > 320 && atS < 380) drawHigh = row.get("oxygenDrawLPerMin").asDouble();
            high = Math.max(high, pao2);
            after = pao2;
        }
        assertThat(high).isGreaterThan(2.5 * before);
        assertThat(after).isBetween(before * 0.97, before * 1.06);
        assertThat(drawHigh).isGreaterThan(4 * drawBefore);
    }

    @Test
    void rowsThatNoLivingHeartBearsAreSaidToBeBeyondTheModel() throws IOException {
        String stops = "what if:\n  - {at: 2 min, apnoea: airway closed, for: 20 min}\n";
        JsonNode json = new ObjectMapper().readTree(Run.of("breathe", file("30 %", stops).toString(), "--for", "20 min", "--format", "json").out());
        double fromS = json.get("beyondModelFromS").asDouble();
        for (JsonNode row : json.get("breaths")) if (row.get("atS").asDouble() < fromS) assertThat(row.get("sao2").asDouble()).isGreaterThanOrEqualTo(0.5);
        assertThat(Run.of("breathe", file("30 %", stops).toString(), "--for", "20 min").out()).containsOnlyOnce("beyond the model: SaO2 below 50 %");
        assertThat(new ObjectMapper().readTree(Run.of("breathe", file("30 %", stops).toString(), "--for", "2 min", "--format", "json").out()).has("beyondModelFromS")).isFalse();
    }

    @Test
    void wavesAreWrittenAtTheRateAskedFor() throws IOException {
        Path csv = folder.resolve("w.csv"), edf = folder.resolve("w.edf");
        assertThat(Run.of("breathe", file("40 %", "").toString(), "--for", "10 s", "--as", "waves", "--rate", "50 /s", "--out", csv.toString()).exit()).isZero();
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(501);
        assertThat(lines.get(0)).isEqualTo("time [s],airway pressure [cmH2O],flow [L/min],volume [mL],muscle pressure [cmH2O],mark");
        assertThat(lines.get(2)).startsWith("0.020,");
        assertThat(Run.of("breathe", file("40 %", "").toString(), "--for", "10 s", "--as", "waves", "--out", edf.toString()).exit()).isZero();
        assertThat(Files.size(edf)).isEqualTo(256 * 6 + 10 * (4 * 100 * 2 + 16));
        try (var left = Files.list(folder)) {
            assertThat(left.map(p -> p.getFileName().toString())).containsExactlyInAnyOrder("t.yaml", "w.csv", "w.edf");
        }
    }

    @Test
    void eachOfTwoLungsIsShown() throws IOException {
        Path file = folder.resolve("t.yaml");
        Files.writeString(file, HEALTHY.formatted("40 %", "what if:\n  - {at: 1 min, fault: tube in the right main bronchus}\n").replace("healthy lungs", "two healthy lungs"));
        JsonNode rows = rows(Run.of("breathe", file.toString(), "--for", "2 min", "--format", "json"));
        JsonNode both = rows.get(5).get("lungs"), one = rows.get(rows.size() - 1).get("lungs");
        assertThat(both.get("first").asText()).isEqualTo("right");
        assertThat(both.get("firstTidalMl").asDouble() + both.get("secondTidalMl").asDouble()).isCloseTo(rows.get(5).get("inspiredMl").asDouble(), org.assertj.core.api.Assertions.within(0.02));
        assertThat(both.get("firstShare").asDouble()).isBetween(0.45, 0.55);
        assertThat(one.get("firstShare").asDouble()).isEqualTo(1);
        assertThat(one.get("secondTidalMl").asDouble()).isZero();
        assertThat(one.get("firstPlateauCmH2O").asDouble()).as("all of it into one lung").isGreaterThan(one.get("secondPlateauCmH2O").asDouble() + 5);
        Run text = Run.of("breathe", file.toString(), "--for", "2 min");
        assertThat(text.out()).contains("left 0 mL (0 %)").containsPattern("right 24\\d mL \\(50 %\\)").contains("cmH2O full");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        Path csv = folder.resolve("r.csv"), waves = folder.resolve("w.csv"), edf = folder.resolve("w.edf");
        Run.of("breathe", file.toString(), "--for", "1 min", "--out", csv.toString());
        assertThat(Files.readAllLines(csv).get(0)).contains("elastic [J],resistive [J]").endsWith("left inspired [mL],left share [1],left held at the end [mL],left plateau [cmH2O],left PEEP [cmH2O]");
        assertThat(Files.readAllLines(csv)).allSatisfy(line -> assertThat(line.chars().filter(c -> c == ',').count()).isEqualTo(43));
        Run.of("breathe", file.toString(), "--for", "2 s", "--as", "waves", "--out", waves.toString());
        String[] sample = Files.readAllLines(waves).get(50).split(",", -1);
        assertThat(Double.parseDouble(sample[5]) + Double.parseDouble(sample[6])).as("the two make the whole").isCloseTo(Double.parseDouble(sample[3]), org.assertj.core.api.Assertions.within(0.11));
        Run.of("breathe", file.toString(), "--for", "2 s", "--as", "waves", "--out", edf.toString());
        assertThat(Files.size(edf)).isEqualTo(256 * 10 + 2 * (8 * 100 * 2 + 16));
    }

    /** What ventilator and muscles put in is what recoil, resistance and PEEP take. */
    @Test
    void theEnergyOfABreathIsToldByItsShares() throws IOException {
        for (JsonNode row : rows(Run.of("breathe", file("40 %", "").toString(), "--for", "1 min", "--format", "json"))) {
            double put = row.get("mechanicalEnergyJ").asDouble() + row.get("muscleEnergyJ").asDouble();
            double taken = row.get("elasticEnergyJ").asDouble() + row.get("resistiveEnergyJ").asDouble() + row.get("peepEnergyJ").asDouble();
            assertThat(taken).isCloseTo(put, org.assertj.core.api.Assertions.within(3e-4));
        }
    }

    @Test
    void badWordsGetOneLineAndExitTwo() throws IOException {
        Path file = file("40 %", "");
        for (String[] wrong : new String[][] {{"--for", "soon"}, {"--for", "5"}, {"--for", "-3 min"}, {"--as", "waves", "--format", "json"}, {"--out", "x.txt"},
                {"--out", "rows.edf"}, {"--as", "waves", "--rate", "0 /s"}, {"--as", "waves", "--rate", "12.5 /s", "--out", "x.edf"}}) {
            String[] all = new String[2 + wrong.length];
            all[0] = "breathe";
            all[1] = file.toString();
            for (int i = 0; i < wrong.length; i++) all[2 + i] = wrong[i];
            Run run = Run.of(all);
            assertThat(run.exit()).as(String.join(" ", all)).isEqualTo(2);
            assertThat(run.err().strip().lines()).as(run.err()).hasSize(1);
        }
    }

    @Test
    void theTextFitsEightyColumns() throws IOException {
        Run run = Run.of("breathe", file("40 %", "").toString(), "--for", "1 min", "--gases", "kPa");
        assertThat(run.exit()).isZero();
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }
}
