package leeway.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import leeway.core.journey.Someone;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.lung.Lungs;
import leeway.core.transport.PatientEntry;
import org.junit.jupiter.api.Test;

/** The breath that is drawn is the breath that the plan's figures are of. */
class OneBreathTest {
    private static final double SEA = 1013.25;

    private static Plan.Breath drawn(Ventilated v, Settings s) { return OneBreath.of(v, s, Steady.of(v, s, SEA)).orElseThrow(); }

    private static double highest(double[] values) {
        double most = values[0];
        for (double x : values) most = Math.max(most, x);
        return most;
    }

    @Test
    void aPassiveBreathHasThePlansFigures() {
        Ventilated v = Someone.on(Someone.ILL, null);
        Settings s = Someone.volume(420, 15, 0.5);
        Steady steady = Steady.of(v, s, SEA);
        Plan.Breath b = drawn(v, s);
        assertThat(highest(b.pressureCmH2O())).isCloseTo(steady.breath().peakCmH2O(), within(0.01));
        assertThat(highest(b.volumeMl())).isCloseTo(steady.breath().inspiredMl(), within(0.1));
        assertThat(b.plateauCmH2O().orElseThrow()).isCloseTo(steady.breath().plateauCmH2O(), within(0.01));
        assertThat(b.inspiratoryTimeS()).isCloseTo(steady.breath().inspiratoryTimeS(), within(1e-6));
        assertThat(b.atS()[0]).isZero();
        assertThat(b.atS()[b.atS().length - 1]).as("one whole breath").isCloseTo(4, within(1e-6));
        assertThat(b.atS()).isSorted();
        assertThat(b.volumeMl()[b.atS().length - 1]).as("what went in is out").isCloseTo(b.volumeMl()[0], within(0.1));
        assertThat(b.lungs()).isEmpty();
    }

    /** Flow is what the volume does: its sum over the drawn moments is the volume at each of them. */
    @Test
    void flowAndVolumeBelongTogether() {
        Plan.Breath b = drawn(Someone.on(Someone.HEALTHY, PatientEntry.Effort.NORMAL), support(10));
        double sum = b.volumeMl()[0];
        for (int i = 1; i < b.atS().length; i++) {
            sum += 0.5 * (b.flowLPerMin()[i] + b.flowLPerMin()[i - 1]) / 0.06 * (b.atS()[i] - b.atS()[i - 1]);
            assertThat(sum).as("at %s s", b.atS()[i]).isCloseTo(b.volumeMl()[i], within(3.0));
        }
        assertThat(highest(b.volumeMl())).isBetween(250.0, 900.0);
    }

    @Test
    void twoLungsShareWhatIsDrawn() {
        Ventilated v = Someone.on(Someone.HEALTHY, null).withLungs(Lungs.LINEAR.withLeft(0.4));
        Plan.Breath b = drawn(v, Someone.volume(420, 15, 0.4));
        Plan.TwoLungs two = b.lungs().orElseThrow();
        assertThat(highest(two.firstMl()) + highest(two.secondMl())).isCloseTo(highest(b.volumeMl()), within(2.0));
        assertThat(highest(two.secondMl()) / highest(b.volumeMl())).as("the left lung's share").isCloseTo(0.4, within(0.02));
    }

    private static Settings support(double cmH2O) {
        return new Settings(Optional.of(Mode.CSV_PS), Map.of(Setting.SUPPORT_PRESSURE, cmH2O, Setting.PEEP, 5.0, Setting.FIO2, 0.4));
    }
}
