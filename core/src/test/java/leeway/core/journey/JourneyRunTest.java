package leeway.core.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.gas.Barometer;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Sink;
import leeway.core.transport.Event;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** A journey in the loop: legs, climbs and events reach the parts. */
class JourneyRunTest {
    private record Row(double atS, double expiredMl, double drawLPerMin, double barometerMmHg, double fio2) { }

    private static List<Row> rows(Transport t) {
        JourneyRun run = JourneyRun.of(t, Someone.volume(420, 16, 0.5), new Draw(1, 0));
        Loop loop = new Loop(run.parts());
        Now now = loop.begin(run.script());
        List<Row> rows = new ArrayList<>();
        loop.to(run.endS(), now, run.script().copy(), new Sink() {
            @Override public void row(Now n) {
                rows.add(new Row(n.get(Column.AT_S), n.get(Column.EXPIRED_ML), n.get(Column.OXYGEN_DRAW_L_MIN), n.get(Knob.BAROMETER), n.get(Knob.FIO2_SET)));
            }
        });
        return rows;
    }

    @Test
    void theClimbTakesItsTimeAndTheDrawFollowsThePressure() {
        List<Row> rows = rows(Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of()));
        assertThat(rows).hasSizeBetween(470, 485);
        Row ground = rows.get(50), climbing = rows.get((10 * 60 + 150) * 16 / 60), high = rows.get(450);
        double top = Barometer.pressureMmHg(2000);
        assertThat(ground.barometerMmHg()).isCloseTo(760, within(0.5));
        assertThat(climbing.barometerMmHg()).isBetween(top + 20, 740.0);
        assertThat(high.barometerMmHg()).isCloseTo(top, within(1e-6));
        assertThat(high.expiredMl()).isCloseTo(ground.expiredMl(), within(0.5));
        assertThat(high.drawLPerMin() / ground.drawLPerMin()).isCloseTo((Barometer.pressureHPa(2000) - 62.8) / (1013.25 - 62.8), within(0.01));
    }

    @Test
    void aFixedMassFlowSwellsWithTheClimb() {
        List<Row> rows = rows(Someone.journey(Someone.ventilator(Ventilator.Altitude.FIXED_MASS_FLOW), List.of()));
        assertThat(rows.get(450).expiredMl() / rows.get(50).expiredMl()).isCloseTo(1013.25 / Barometer.pressureHPa(2000), within(0.01));
    }

    @Test
    void anEventHoldsForItsTimeOnly() {
        Event pure = new Event(5, new Settings(Optional.empty(), Map.of(Setting.FIO2, 1.0)), OptionalDouble.of(90), Optional.empty());
        List<Row> rows = rows(Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of(pure)));
        assertThat(rows.stream().filter(r -> r.fio2() == 1).count()).isBetween(22L, 26L);
        assertThat(rows.get(100).fio2()).isEqualTo(1);
        assertThat(rows.get(100).drawLPerMin()).isGreaterThan(2 * rows.get(50).drawLPerMin());
        assertThat(rows.get(130).fio2()).isEqualTo(0.5);
    }

    @Test
    void theLegOfAMomentIsKnown() {
        JourneyRun run = JourneyRun.of(Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of()), Someone.volume(420, 16, 0.5), new Draw(1, 0));
        assertThat(run.legAt(0)).isZero();
        assertThat(run.legAt(599)).isZero();
        assertThat(run.legAt(600)).isEqualTo(1);
        assertThat(run.legAt(99_999)).isEqualTo(1);
    }

    @Test
    void aDescentOfWhichNothingIsSaidTakesTheCabinsUsualTime() {
        var legs = Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of()).legs();
        assertThat(JourneyRun.rampS(legs.get(0), legs.get(1), 1200)).as("the file's own climb of 5 min").isEqualTo(300);
        assertThat(JourneyRun.rampS(legs.get(1), legs.get(0), 36_000)).as("2000 m at 300 ft/min").isCloseTo(2000 / 91.44 * 60, within(1e-9));
        assertThat(JourneyRun.rampS(legs.get(1), legs.get(0), 600)).as("half of a short leg").isEqualTo(300);
    }

    @Test
    void aDrawDrawsTheLegsToo() {
        Transport t = Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of());
        double[] first = new double[400], whole = new double[400];
        for (int d = 1; d <= first.length; d++) {
            double[] starts = JourneyRun.of(t, Someone.volume(420, 16, 0.5), new Draw(7, d)).legStartS();
            first[d - 1] = starts[1] / 60;
            whole[d - 1] = starts[2] / 60;
        }
        java.util.Arrays.sort(first);
        assertThat(first[200]).as("median of 10 min").isCloseTo(10, within(0.5));
        assertThat(first[380]).as("19 of 20 within 15 min").isCloseTo(15, within(1.2));
        assertThat(java.util.Arrays.stream(whole).average().orElse(0)).as("10 and 20 min, and what lateness adds").isBetween(30.0, 32.5);
        assertThat(JourneyRun.of(t, Someone.volume(420, 16, 0.5), new Draw(7, 3)).legStartS()).isEqualTo(JourneyRun.of(t, Someone.volume(420, 16, 0.5), new Draw(7, 3)).legStartS());
    }
}
