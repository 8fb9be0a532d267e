package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.journey.Ventilated;
import leeway.core.map.Sensitivity;
import leeway.core.map.Sensitivity.Result;
import leeway.core.map.Sensitivity.Swing;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Test;

class SensitivityTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();

    private static Sensitivity of(String patient, String oxygen) {
        String text = "transport: t\npatient: " + patient + "\nventilator: example turbine\noxygen:\n  - " + oxygen + "\nlegs:\n  - {leg: road, takes: 40 min, at worst: 90 min, oxygen: one}\n";
        Transport t = TransportReader.read("t.yaml", text, CATALOGUE).good().orElseThrow();
        return Sensitivity.of(Start.of(t, Ventilated.of(t), n -> CATALOGUE.read(Kinds.STRATEGY, n).good().orElseThrow()), t);
    }

    private static final Sensitivity PNEUMONIA = of("{sex: female, height: 170 cm, illness: moderate pneumonia}", "{name: one, cylinder: 10 L, pressure: 180 bar}");

    private static Result result(Sensitivity s, String name) { return s.results().stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow(); }

    private static Swing swing(Result r, String input) { return r.swings().stream().filter(s -> s.input().equals(input)).findFirst().orElseThrow(); }

    @Test
    void theWidestSwingComesFirst() {
        for (Result r : PNEUMONIA.results()) {
            for (int i = 1; i < r.swings().size(); i++) assertThat(r.swings().get(i).span()).as(r.name()).isLessThanOrEqualTo(r.swings().get(i - 1).span());
            assertThat(r.swings()).isNotEmpty();
        }
    }

    @Test
    void inputsMoveResultsTheWayPhysiologySays() {
        Swing stiff = swing(result(PNEUMONIA, "plateau pressure"), "compliance");
        assertThat(stiff.atLow()).isGreaterThan(result(PNEUMONIA, "plateau pressure").central()).isGreaterThan(stiff.atHigh());
        Swing shunt = swing(result(PNEUMONIA, "saturation"), "shunt");
        assertThat(shunt.atLow()).isGreaterThan(shunt.atHigh());
        Swing carbonDioxide = swing(result(PNEUMONIA, "PaCO2"), "CO2 output");
        assertThat(carbonDioxide.atLow()).isLessThan(result(PNEUMONIA, "PaCO2").central()).isLessThan(carbonDioxide.atHigh());
    }

    @Test
    void theMedianLiesBetweenTheEnds() {
        for (Result r : PNEUMONIA.results()) {
            for (Swing s : r.swings()) {
                if (r.name().equals("PaCO2") || r.name().equals("plateau pressure") || r.name().equals("oxygen left")) {
                    assertThat(r.central()).as("%s by %s", r.name(), s.input()).isBetween(Math.min(s.atLow(), s.atHigh()) - 1e-6, Math.max(s.atLow(), s.atHigh()) + 1e-6);
                }
            }
        }
    }

    @Test
    void aLongJourneyAndAGaugeMoveTheOxygenLeft() {
        Result left = result(PNEUMONIA, "oxygen left");
        Swing road = swing(left, "duration of road");
        assertThat(road.low()).isEqualTo("17.8 min");
        assertThat(road.high()).isEqualTo("90 min");
        assertThat((left.central() - road.atHigh()) / (road.atLow() - left.central())).isCloseTo(50 / (40 - 1600.0 / 90), within(1e-6));
        assertThat(swing(left, "gauge of one").span()).isBetween(200.0, 300.0);
    }

    @Test
    void aTestLungHasOnlyMechanics() {
        Sensitivity lung = of("{sex: male, height: 180 cm, illness: test lung}", "{name: one, wall: yes}");
        assertThat(lung.results()).extracting(Result::name).doesNotContain("PaCO2", "saturation", "oxygen left");
    }

    @Test
    void whatTheSheetKnowsOfTheLungsAsABandMovesTheResults() {
        Sensitivity open = of("{sex: female, height: 170 cm, illness: 'severe ARDS, recruitable'}", "{name: one, cylinder: 10 L, pressure: 180 bar}");
        // the sheet's shunt holds at PEEP 10 cmH2O: more PEEP than that gains most where lung closes early
        Swing closing = swing(result(open, "saturation"), "closing pressure");
        assertThat(closing.low()).isEqualTo("2 cmH2O");
        assertThat(closing.atHigh()).isGreaterThan(closing.atLow());
        assertThat(open.results().stream().flatMap(r -> r.swings().stream()).map(Swing::input)).contains("lung that opens and closes", "opening pressure");
    }
}
