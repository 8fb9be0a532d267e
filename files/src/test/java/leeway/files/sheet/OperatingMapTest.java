package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Setting;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.map.OperatingMap.Limit;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Read;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The map on real sheets: what it must be whatever the patient. */
class OperatingMapTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();

    private static Transport transport(String patient, String ventilator, String settings) {
        String text = "transport: map\npatient: " + patient + "\nventilator: " + ventilator + "\n" + (settings.isEmpty() ? "" : "settings: " + settings + "\n")
                + "oxygen:\n  - {name: one, cylinder: 2 L, pressure: 180 bar}\nlegs:\n  - {leg: road, takes: 30 min, oxygen: one}\n";
        Read<Transport> read = TransportReader.read("map.yaml", text, CATALOGUE);
        return read.good().orElseThrow(() -> new AssertionError(read.toString()));
    }

    private static Start start(Transport t) { return Start.of(t, Ventilated.of(t), n -> CATALOGUE.read(Kinds.STRATEGY, n).good().orElseThrow()); }

    private static OperatingMap map(String patient, String ventilator, String settings) {
        Transport t = transport(patient, ventilator, settings);
        return MapMaker.of(start(t), t, 16);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"{sex: female, height: 170 cm, illness: moderate pneumonia}", "{sex: male, height: 180 cm, illness: severe ARDS}",
        "{sex: male, height: 175 cm, illness: asthma attack}", "{sex: female, height: 165 cm, weight: 110 kg}", "{sex: male, age: 4 years, airway: tracheal tube 5.0 mm}"})
    void roomIsZeroExactlyWhereALimitIsCrossedAndOneAtMost(String patient) {
        OperatingMap map = map(patient, "example turbine", "");
        double[][] room = map.room();
        assertThat(map.limits()).extracting(Limit::name).contains("plateau pressure", "driving pressure", "mechanical power", "auto-PEEP", "pH low", "PaCO2 high");
        for (int j = 0; j < room.length; j++) {
            for (int i = 0; i < room[j].length; i++) {
                boolean beyond = false;
                for (Limit l : map.limits()) beyond |= l.upper() ? l.values()[j][i] > l.limit() : l.values()[j][i] < l.limit();
                assertThat(room[j][i]).isBetween(0.0, 1.0);
                if (beyond) assertThat(room[j][i]).isZero();
                else assertThat(map.signed()[j][i]).isNotNegative();
            }
        }
    }

    @Test
    void moreVolumeNeverLowersPlateauOrDrawAndNeverRaisesCarbonDioxide() {
        OperatingMap map = map("{sex: female, height: 170 cm, illness: moderate pneumonia}", "example turbine", "");
        double[][] plateau = values(map, "plateau pressure");
        double[][] paco2 = map.lines().get(0).values();
        double[][] draw = map.lines().get(1).values();
        for (int j = 0; j < plateau.length; j++) {
            for (int i = 1; i < plateau[j].length; i++) {
                assertThat(plateau[j][i]).isGreaterThanOrEqualTo(plateau[j][i - 1] - 1e-6);
                assertThat(draw[j][i]).isGreaterThanOrEqualTo(draw[j][i - 1] - 1e-6);
                assertThat(paco2[j][i]).isLessThanOrEqualTo(paco2[j][i - 1] + 1e-6);
            }
        }
    }

    private static double[][] values(OperatingMap map, String name) { return map.limits().stream().filter(l -> l.name().equals(name)).findFirst().orElseThrow().values(); }

    @Test
    void theEndsOfATurnAreWhereTheNamedLimitLies() {
        OperatingMap map = map("{sex: female, height: 170 cm, illness: moderate pneumonia}", "example turbine", "{fio2: 60 %, peep: 8 cmH2O}");
        OperatingMap.Turn rate = map.chosen().turnY().orElseThrow();
        assertThat(map.chosen().room()).isPositive();
        assertThat(rate.from()).isLessThan(map.chosen().y());
        assertThat(rate.to()).isGreaterThan(map.chosen().y());
        Limit low = map.limits().stream().filter(l -> l.name().equals(rate.endsFrom())).findFirst().orElseThrow();
        assertThat(low.name()).isEqualTo("pH low");
    }

    @Test
    void minutesOfSupplyTimesDrawIsWhatTheStoreHolds() {
        OperatingMap map = map("{sex: female, height: 170 cm}", "example pneumatic", "");
        List<OperatingMap.Line> lines = map.lines();
        double held = lines.get(1).values()[0][0] * lines.get(2).values()[0][0];
        assertThat(held).isBetween(300.0, 400.0);
        assertThat(lines.get(1).values()[9][9] * lines.get(2).values()[9][9]).isCloseTo(held, within(1e-6));
    }

    @Test
    void aPressureModeTurnsItsPressureAndSupportItsSupport() {
        assertThat(map("{sex: male, height: 180 cm}", "example turbine", "{mode: A/C-PC}").x().setting()).isEqualTo(Setting.INSPIRATORY_PRESSURE);
        OperatingMap support = map("{sex: male, height: 180 cm, lungs: {effort: normal}}", "example turbine", "{mode: CSV-PS}");
        assertThat(support.x().setting()).isEqualTo(Setting.SUPPORT_PRESSURE);
        assertThat(support.y().setting()).isEqualTo(Setting.PEEP);
    }

    @Test
    void aTestLungHasNoGases() {
        OperatingMap map = map("{sex: male, height: 180 cm, illness: test lung}", "example turbine", "");
        assertThat(map.limits()).extracting(Limit::name).doesNotContain("pH low", "PaCO2 high", "saturation low").contains("plateau pressure");
    }

    @Test
    void theHandBagHasAMapToo() { assertThat(map("{sex: male, height: 180 cm}", "hand bag", "").limits()).isNotEmpty(); }
}
