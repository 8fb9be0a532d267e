package leeway.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Sensor;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Sensor.Place;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Now;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Test;

/** What an oximeter makes of weak pulses, cold fingers and blood with carbon monoxide; and what drift does to a sensor. */
class OximeterTest {
    private static final double AT = 60;

    private static Bench with(Place place, double weakBelow, double driftPerHour) {
        Bench bench = new Bench();
        bench.monitor.set(0, new Sensor(Measured.SATURATION, place, 20, 0, 8, 0.005, 0, 0, OptionalDouble.empty(), driftPerHour, weakBelow));
        return bench;
    }

    /** What is shown at a time. */
    private static double shown(Bench bench, double atS) { return shown(bench, atS, new Draw(1, 0)); }

    private static double shown(Bench bench, double atS, Draw draw) {
        double[] last = {Double.NaN};
        bench.run(atS, draw, new Sink() {
            @Override public void row(Now n) { last[0] = n.get(Column.SPO2); }
        });
        return last[0];
    }

    @Test void carbonMonoxideIsTakenForOxygen() {
        Bench bench = new Bench();
        bench.light = new Oximeter.Light(0.2, 0, 1);
        bench.saturation = t -> 0.95;
        // 0.95 of the 80 % that can carry oxygen, and the 20 % that cannot
        assertThat(shown(bench, 120)).isCloseTo(0.95 * 0.8 + 0.2, within(1e-9));
    }

    @Test void methaemoglobinDrawsFromBothSides() {
        Bench high = new Bench(), low = new Bench();
        high.light = low.light = new Oximeter.Light(0, 0.1, 1);
        high.saturation = t -> 0.98;
        low.saturation = t -> 0.7;
        assertThat(shown(high, 120)).isCloseTo(0.93, within(1e-9));
        assertThat(shown(low, 120)).isCloseTo(0.75, within(1e-9));
    }

    @Test void withoutAPulseNothingIsShownAndTheSaturationAlarmCannotSpeak() {
        Bench bench = with(Place.FINGER, 0.3, 0).limit(AlarmCondition.SATURATION_LOW, From.MONITOR, 0.9, Double.NaN, 0, 5, 1)
                .limit(AlarmCondition.PULSE_LOST, From.MONITOR, Double.NaN, Double.NaN, 0, 10, 1).change(Change.at(AT, Knob.CARDIAC_OUTPUT, How.TIMES, 0.25));
        bench.saturation = t -> t < AT ? 0.96 : 0.7;
        assertThat(shown(bench, 200)).isNaN();
        assertThat(bench.heard(300, new Draw(1, 0))).extracting(Bench.Heard::condition).containsExactly(AlarmCondition.PULSE_LOST);
        assertThat(bench.firstS(AlarmCondition.PULSE_LOST, 300)).isBetween(AT + 11, AT + 11 + 4);
    }

    @Test void whoStartsWithALowOutputIsNearerToTheLoss() {
        Bench bench = with(Place.FINGER, 0.3, 0).change(Change.at(AT, Knob.CARDIAC_OUTPUT, How.TIMES, 0.5));
        assertThat(shown(bench, 200)).isNotNaN();
        bench.light = new Oximeter.Light(0, 0, 0.55);
        assertThat(shown(bench, 200)).isNaN();
    }

    @Test void aColdBodyDelaysTheFingerAndNotTheEar() {
        for (Place place : new Place[] {Place.FINGER, Place.EAR, Place.FOREHEAD}) {
            Bench warm = falling(with(place, 0, 0)), cold = falling(with(place, 0, 0).change(Change.at(0, Knob.TEMPERATURE, How.SET, 34.5)));
            // a straight fall of 0.001 a second
            double laterS = (shown(cold, 300) - shown(warm, 300)) / 0.001;
            assertThat(laterS).as(place.name()).isCloseTo(place == Place.FINGER ? 85 : 0, within(1e-6));
        }
    }

    private static Bench falling(Bench bench) {
        bench.saturation = t -> 0.98 - 0.001 * t;
        return bench;
    }

    @Test void aWeakPulseIsANoisyOne() {
        double usual = spread(1), weak = spread(0.5);
        assertThat(weak / usual).as("noise over the square of the output").isCloseTo(4, within(1e-9));
    }

    private static double spread(double output) {
        Bench bench = with(Place.EAR, 0, 0).change(Change.at(10, Knob.CARDIAC_OUTPUT, How.TIMES, output));
        bench.saturation = t -> 0.8;
        return Math.abs(shown(bench, 200, new Draw(5, 3)) - 0.8);
    }

    @Test void driftGrowsWithTheHours() {
        Bench bench = with(Place.FINGER, 0, -0.06);
        bench.saturation = t -> 0.9;
        assertThat(shown(bench, 600)).as("a tenth to a sixth of an hour").isCloseTo(0.9 - 0.06 * 600 / 3600, within(0.06 * 4.0 / 3600 + 1e-9));
    }

    @Test void aDrawDriftsBetweenNotAtAllAndTwiceAsFar() {
        Bench bench = with(Place.FINGER, 0, -0.36);
        bench.saturation = t -> 0.9;
        for (int d = 1; d < 20; d++) assertThat(shown(bench, 600, new Draw(2, d))).as("draw %s", d).isBetween(0.9 - 0.12 - 0.02, 0.9 + 0.02);
    }
}
