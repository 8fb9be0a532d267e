package leeway.core.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ScriptTest {
    private static double resistance(Script script, double tS) {
        double[] p = new double[Knob.SLOTS];
        script.copy().fold(tS, p);
        return p[Knob.RESISTANCE.slot()];
    }

    @Test
    void layersActInTheOrderOfTheirTimeAndEndingOneUncoversTheRest() {
        Script script = new Script().base(Knob.RESISTANCE, 10)
                .add(Change.during(20, 40, Knob.RESISTANCE, How.PLUS, 5))
                .add(Change.during(10, 30, Knob.RESISTANCE, How.TIMES, 3));
        assertThat(resistance(script, 9.999)).isEqualTo(10);
        assertThat(resistance(script, 10)).isEqualTo(30);
        assertThat(resistance(script, 25)).isEqualTo(35);
        assertThat(resistance(script, 30)).isEqualTo(15);
        assertThat(resistance(script, 40)).isEqualTo(10);
    }

    @Test
    void aSetAboveHidesWhatIsBelowAndEqualTimesKeepTheirOrder() {
        Script script = new Script().base(Knob.RESISTANCE, 10)
                .add(Change.at(5, Knob.RESISTANCE, How.SET, 50)).add(Change.at(5, Knob.RESISTANCE, How.TIMES, 2));
        assertThat(resistance(script, 5)).isEqualTo(100);
    }

    @Test
    void aRampGrowsLinearlyAndItsIntegralIsRight() {
        Script script = new Script().base(Knob.RESISTANCE, 10).add(new Change(100, 1e9, 60, Knob.RESISTANCE, 0, How.TIMES, 5));
        double[] p = new double[Knob.SLOTS];
        double t = 100, area = 0;
        while (t < 160) {
            double next = Math.min(160, script.nextS(t));
            assertThat(next).isGreaterThan(t);
            script.fold(t, p);
            assertThat(p[Knob.RESISTANCE.slot()]).isCloseTo(10 * (1 + 4 * ((t + next) / 2 - 100) / 60), within(1e-9));
            area += p[Knob.RESISTANCE.slot()] * (next - t);
            t = next;
        }
        assertThat(area).isCloseTo(60 * (10 + 50) / 2.0, within(1e-9));
        assertThat(resistance(script, 160)).isEqualTo(50);
    }

    @Test
    void aRemedyEndsTheVeryLayerThatWasAdded() {
        Change fault = Change.at(10, Knob.RESISTANCE, How.TIMES, 8);
        Script script = new Script().base(Knob.RESISTANCE, 10).add(fault).end(fault, 15);
        assertThat(resistance(script, 14)).isEqualTo(80);
        assertThat(resistance(script, 15)).isEqualTo(10);
    }

    @Test
    void aBranchDoesNotTouchItsOrigin() {
        Script origin = new Script().base(Knob.RESISTANCE, 10);
        origin.copy().add(Change.at(0, Knob.RESISTANCE, How.SET, 99));
        assertThat(resistance(origin, 1)).isEqualTo(10);
    }

    @Test
    void valuesAreClippedToTheKnobsBoundsAndBasesOutsideAreRefused() {
        Script script = new Script().base(Knob.RESISTANCE, 10).add(Change.at(0, Knob.RESISTANCE, How.TIMES, 1e6));
        assertThat(resistance(script, 1)).isEqualTo(Knob.RESISTANCE.high);
        assertThatThrownBy(() -> new Script().base(Knob.FIO2_SET, 60)).hasMessageContaining("FIO2_SET").hasMessageContaining("60");
    }

    @Test
    void indexedKnobsHaveSlotsOfTheirOwn() {
        assertThat(Knob.STORE_OPEN.slot(1)).isEqualTo(Knob.STORE_OPEN.slot() + 1);
        assertThatThrownBy(() -> Knob.STORE_OPEN.slot(16)).hasMessageContaining("STORE_OPEN");
        int slots = Arrays.stream(Knob.values()).mapToInt(k -> k.copies).sum();
        assertThat(Knob.SLOTS).isEqualTo(slots);
    }
}
