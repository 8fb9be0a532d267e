package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.journey.Ventilated;
import leeway.core.kit.Setting;
import leeway.core.settings.Suggested.Because;
import leeway.core.settings.Suggested.Origin;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An i:e in the file, with the rate left to the strategy. */
class RatioTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();

    @ParameterizedTest
    @CsvSource({"1:2, 0.333333, 1:2", "1:1.5, 0.4, 1:1.5", "2:1, 0.666667, 2:1", "1:4, 0.2, 1:4"})
    void theInspiratoryTimeFollowsFromTheRateOfTheStrategy(String ratio, double share, String said) {
        String file = "transport: t\npatient: {sex: female, height: 170 cm, illness: moderate pneumonia}\nventilator: example turbine\nsettings: {i:e: \"" + ratio
                + "\"}\noxygen:\n  - {name: one, cylinder: 10 L, pressure: 200 bar}\nlegs:\n  - {leg: road, takes: 20 min, oxygen: one}\n";
        Transport t = TransportReader.read("t.yaml", file, CATALOGUE).good().orElseThrow();
        Start start = Start.of(t, Ventilated.of(t), name -> CATALOGUE.read(Kinds.STRATEGY, name).good().orElseThrow());
        double rate = start.settings().get(Setting.RATE).orElseThrow();
        double step = start.ventilated().ventilator().ranges().get(Setting.INSPIRATORY_TIME).step();
        assertThat(start.settings().get(Setting.INSPIRATORY_TIME).orElseThrow()).isCloseTo(share * 60 / rate, within(step / 2 + 1e-9));
        Because because = start.solved().suggested().because().stream().filter(b -> b.setting().equals("inspiratory time")).findFirst().orElseThrow();
        assertThat(because.origin()).isEqualTo(Origin.PRESCRIBED);
        assertThat(because.why()).contains("I:E of " + said + " at " + Math.round(rate) + " /min");
    }
}
