package leeway.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Now;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Logic that every alarm owes, whatever the figures. */
class SpeakingPropertyTest {
    private static final double NONE = Double.NaN;
    private static final double AT = 40;

    private static Bench lowPressure(double low) {
        return new Bench().limit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, low, NONE, 2, 0, 1);
    }

    private static Bench disconnected(double atS, double low) { return lowPressure(low).change(Change.at(atS, Knob.OPEN_AT_PATIENT, How.SET, 1)); }

    @Test void nothingSpeaksWhileNothingIsWrong() {
        assertThat(lowPressure(11).heard(600, new Draw(1, 0))).isEmpty();
    }

    @ParameterizedTest(name = "seed {0}") @ValueSource(longs = {1, 2, 3, 20_261_125})
    void anAlarmNeverPrecedesItsCause(long seed) {
        var random = new SplittableRandom(seed);
        for (int i = 0; i < 25; i++) {
            double at = random.nextDouble(10, 60);
            double heard = disconnected(at, 11).firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, at + 60);
            assertThat(heard).as("disconnected at %s, seed %s", at, seed).isGreaterThan(at + 1).isLessThan(at + 3 * 4 + 1.1);
        }
    }

    @Test void aWiderLimitNeverSpeaksSooner() {
        double before = 0;
        for (double low = 20; low >= 1; low -= 1) {
            Bench bench = lowPressure(low).change(new Change(AT, Double.POSITIVE_INFINITY, 120, Knob.LEAK_CIRCUIT, 0, How.PLUS, 120));
            double heard = bench.firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 400);
            assertThat(heard).as("low limit %s", low).isGreaterThanOrEqualTo(before);
            before = heard;
        }
    }

    @Test void anAudioPauseBegunEarlierDelaysTheSoundByWhatIsLeftOfIt() {
        double unpaused = disconnected(AT, 11).firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 300);
        for (double begun = AT - 130; begun < AT; begun += 7) {
            double ends = begun + Speaking.LONGEST_PAUSE_S;
            Bench bench = disconnected(AT, 11).change(Change.during(Math.max(0, begun), Math.max(0, ends), Knob.AUDIO_PAUSED, How.SET, 1));
            assertThat(bench.firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 300)).as("pause begun at %s", begun).isCloseTo(Math.max(unpaused, ends), within(1e-9));
        }
    }

    @Test void aPauseEndsByItselfHoweverLongItWasSet() {
        Bench bench = disconnected(AT, 11).change(Change.during(AT - 20, AT + 600, Knob.AUDIO_PAUSED, How.SET, 1));
        assertThat(bench.firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 300)).isCloseTo(AT - 20 + Speaking.LONGEST_PAUSE_S, within(1e-9));
    }

    @Test void aLatchingSignalGoesOnAfterItsConditionAndAnotherDoesNot() {
        for (boolean latching : new boolean[] {true, false}) {
            Bench bench = new Bench();
            bench.limits.add(new AlarmLimit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, OptionalDouble.of(11), OptionalDouble.empty(), 0, 2, 1, Priority.HIGH, latching, "for the test"));
            bench.change(Change.during(AT, AT + 30, Knob.OPEN_AT_PATIENT, How.SET, 1));
            boolean[] over = {false};
            bench.run(AT + 120, new Draw(1, 0), new Sink() {
                @Override public void event(double tS, int what, double value) { over[0] |= what >= Speaking.FIRST_EVENT && Speaking.whatOf(what) == Speaking.OVER; }
            });
            assertThat(over[0]).as("latching %s", latching).isEqualTo(!latching);
        }
    }

    @Test void aLatchingSignalUnderAPauseIsHeardAfterItThoughItsConditionIsOverAndAnotherIsNot() {
        for (boolean latching : new boolean[] {true, false}) {
            Bench bench = new Bench();
            bench.limits.add(new AlarmLimit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, OptionalDouble.of(11), OptionalDouble.empty(), 0, 2, 1, Priority.HIGH, latching, "for the test"));
            bench.change(Change.during(AT, AT + 30, Knob.OPEN_AT_PATIENT, How.SET, 1)).change(Change.during(AT - 10, AT + 70, Knob.AUDIO_PAUSED, How.SET, 1));
            double heardS = bench.firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, AT + 200);
            if (latching) assertThat(heardS).isCloseTo(AT + 70, within(1e-9));
            else assertThat(heardS).isInfinite();
        }
    }

    @Test void aLatchingSignalWithoutAResetSpeaksOnceAndAnotherEachTime() {
        for (boolean latching : new boolean[] {true, false}) {
            Bench bench = new Bench();
            bench.limits.add(new AlarmLimit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, OptionalDouble.of(11), OptionalDouble.empty(), 0, 2, 1, Priority.HIGH, latching, "for the test"));
            for (double atS : new double[] {AT, AT + 80}) bench.change(Change.during(atS, atS + 30, Knob.OPEN_AT_PATIENT, How.SET, 1));
            assertThat(bench.heard(AT + 200, new Draw(1, 0))).as("latching %s", latching).hasSize(latching ? 1 : 2);
        }
    }

    @Test void conditionDelayAndGenerationDelayAdd() {
        double at = disconnected(AT, 11).firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 300);
        Bench later = new Bench().limit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, 11, NONE, 2, 10, 3).change(Change.at(AT, Knob.OPEN_AT_PATIENT, How.SET, 1));
        double first = later.firstS(AlarmCondition.AIRWAY_PRESSURE_LOW, 300);
        // two breaths pass within the condition delay, so it alone counts: crossing + 0.02 + 10 + 3, the crossing one breath before the second
        assertThat(first).isCloseTo(at - 1 - 4 + 0.02 + 10 + 3, within(1e-6));
    }

    @Test void aTransientShorterThanTheDelayIsNotHeard() {
        Bench bench = new Bench().limit(AlarmCondition.AIRWAY_PRESSURE_LOW, From.VENTILATOR, 11, NONE, 2, 15, 1)
                .change(Change.during(AT, AT + 8, Knob.OPEN_AT_PATIENT, How.SET, 1));
        assertThat(bench.heard(300, new Draw(1, 0))).isEmpty();
    }

    @Test void highPressureSpeaksWithinTheSameBreath() {
        Bench bench = new Bench().limit(AlarmCondition.AIRWAY_PRESSURE_HIGH, From.VENTILATOR, NONE, 35, 0, 0, 0.2).change(Change.at(AT, Knob.TUBE_RESISTANCE, How.SET, 1))
                .change(Change.at(AT, Knob.RESISTANCE, How.TIMES, 8));
        assertThat(bench.firstS(AlarmCondition.AIRWAY_PRESSURE_HIGH, 300)).isBetween(AT, AT + 4 + 0.5);
    }

    @Test void aDeadMonitorSaysNothingAndTheVentilatorStillDoes() {
        Bench bench = disconnected(AT, 11).limit(AlarmCondition.SATURATION_LOW, From.MONITOR, 0.9, NONE, 0, 5, 1)
                .change(Change.at(10, Knob.MONITOR_ON, How.SET, 0));
        bench.saturation = t -> t < AT ? 0.96 : 0.7;
        assertThat(bench.heard(300, new Draw(1, 0))).extracting(Bench.Heard::from).containsOnly(From.VENTILATOR);
    }

    @Test void aConditionThatIsOffIsNotHeard() {
        Bench bench = disconnected(AT, 11).change(new Change(0, Double.POSITIVE_INFINITY, 0, Knob.SILENCED, AlarmCondition.AIRWAY_PRESSURE_LOW.ordinal(), How.SET, 1));
        assertThat(bench.heard(300, new Draw(1, 0))).isEmpty();
    }

    @Test void limitsLeftWideNeverSpeakOfALimit() {
        Bench bench = disconnected(AT, 11).change(Change.at(0, Knob.LIMITS_WIDE, How.SET, 1));
        assertThat(bench.heard(300, new Draw(1, 0))).isEmpty();
    }

    @Test void theOximeterShowsTheMeanOfASaturationDelayed() {
        Bench bench = new Bench();
        bench.saturation = t -> 0.96 - 0.001 * Math.max(0, t - AT);
        double[] shown = new double[1];
        bench.run(150, new Draw(1, 0), new Sink() {
            @Override public void row(Now n) {
                // a straight fall, so delay 20 s and mean over 8 s are a shift of 24 s
                if (n.tS > AT + 40) assertThat(n.get(Column.SPO2)).as("at %s", n.tS).isCloseTo(0.96 - 0.001 * (n.tS - 24 - AT), within(1e-9));
                shown[0] = n.get(Column.SPO2);
            }
        });
        assertThat(shown[0]).isLessThan(0.9);
    }

    @Test void aFallingOutputDelaysTheOximeter() {
        double normal = saturationAlarm(1);
        assertThat(saturationAlarm(0.5)).isBetween(normal + 15, normal + 25);
    }

    private static double saturationAlarm(double outputTimes) {
        Bench bench = new Bench().limit(AlarmCondition.SATURATION_LOW, From.MONITOR, 0.9, NONE, 0, 5, 1).change(Change.at(AT, Knob.CARDIAC_OUTPUT, How.TIMES, outputTimes));
        bench.saturation = t -> t < AT ? 0.96 : 0.8;
        return bench.firstS(AlarmCondition.SATURATION_LOW, 300);
    }

    @Test void repetitionsUntilHeardAreThoseOfIndependentTries() {
        var random = new SplittableRandom(7);
        for (double chance : new double[] {0.05, 0.3, 0.6, 0.95}) {
            double sum = 0;
            int n = 40_000;
            for (int i = 0; i < n; i++) sum += Speaking.afterS(chance, random.nextDouble(), 1);
            // mean number of failures before the first success of a geometric distribution: (1 - p)/p, standard error sqrt(1-p)/p/sqrt(n)
            assertThat(sum / n).as("chance %s", chance).isCloseTo((1 - chance) / chance, within(4 * Math.sqrt(1 - chance) / chance / Math.sqrt(n)));
        }
        assertThat(Speaking.afterS(0, 0.5, 8)).isInfinite();
        assertThat(Speaking.afterS(1, 0.999, 8)).isZero();
        assertThat(Speaking.afterS(0.5, 0.5, 8)).as("half the crews hear the first burst").isZero();
    }

    @Test void sameSeedSameAnswer() {
        Bench bench = disconnected(AT, 11);
        assertThat(bench.heard(200, new Draw(3, 5))).isEqualTo(bench.heard(200, new Draw(3, 5)));
    }
}
