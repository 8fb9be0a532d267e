package leeway.core.breath;

import static leeway.core.breath.Bench.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Consumer;
import leeway.core.kit.Mode;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Triggers, sighs, coughs and asynchrony: who started a breath, whether patient and ventilator meet, what it costs the patient. */
class BreathingPatientTest {
    /** Slow enough that the lung is nearly empty when a pulse comes. */
    private static final BreathSettings SLOW = BreathSettings.volume(369, 12, 1, 0.2, 8);
    private static final BreathSettings SUPPORT = BreathSettings.support(10, 0.1, 5, 0.25);

    private static Consumer<Script> effort(double cmH2O, double perMin) {
        return s -> s.base(Knob.EFFORT, cmH2O).base(Knob.EFFORT_RATE, perMin);
    }

    private static long by(List<double[]> rows, int who) {
        return rows.stream().filter(r -> of(r, Column.STARTED_BY) == who && of(r, Column.KIND) > 0).count();
    }

    private static long with(List<double[]> rows, Asynchrony what) {
        return rows.stream().filter(r -> Asynchrony.of(of(r, Column.ASYNCHRONY)).contains(what)).count();
    }

    @Test
    void aHeartBeatTriggersASensitiveTriggerAndNotALessSensitiveOne() {
        // the hearts of patients after cardiac surgery made 4.0 +- 1.8 L/min at the airway; a trigger of 10 L/min heeded none of them (Imanaka, Crit Care Med 2004;32:1546)
        Consumer<Script> heart = s -> s.base(Knob.HEART_SWING, 4).base(Knob.HEART_RATE, 90);
        List<double[]> sensitive = rows(ADULT, SLOW.withTriggers(1, 0), 60, heart), dull = rows(ADULT, SLOW.withTriggers(10, 0), 60, heart);
        assertThat(by(sensitive, 2)).as("breaths that nobody asked for").isGreaterThan(15);
        assertThat(sensitive.size()).isGreaterThan(dull.size() + 5);
        assertThat(by(dull, 2)).isZero();
        assertThat(by(rows(ADULT, SLOW.withTriggers(5, 0), 60, heart), 2)).as("just above the swing").isZero();
        assertThat(sensitive).filteredOn(r -> of(r, Column.STARTED_BY) == 2).allSatisfy(r -> assertThat(Asynchrony.of(of(r, Column.ASYNCHRONY))).contains(Asynchrony.FALSE));
    }

    @Test
    void aFalseTriggerComesWithAHeartBeatAndTheDelayOfTheDevice() {
        List<double[]> rows = rows(ADULT, SUPPORT.withTriggers(2, 0), 30, s -> s.base(Knob.HEART_SWING, 5).base(Knob.HEART_RATE, 75));
        assertThat(by(rows, 2)).isGreaterThan(5);
        for (double[] r : rows) {
            if (of(r, Column.STARTED_BY) != 2 || of(r, Column.AT_S) < 1) continue;
            double beats = (of(r, Column.AT_S) - 0.08) / 0.8;
            assertThat(beats).isCloseTo(Math.rint(beats), within(1e-9));
            assertThat(of(r, Column.TRIGGER_DELAY_S)).isNaN();
        }
    }

    @Test
    void toAPressureTriggerTheSamePulseIsThePressureThatDrivesIt() {
        Consumer<Script> heart = s -> s.base(Knob.HEART_SWING, 4).base(Knob.HEART_RATE, 90);
        // 4 L/min through 11 + 1.5 + tube is about 0.9 cmH2O
        assertThat(by(rows(ADULT, SLOW.withTriggers(0, 0.5), 60, heart), 2)).isGreaterThan(10);
        assertThat(by(rows(ADULT, SLOW.withTriggers(0, 2), 60, heart), 2)).isZero();
    }

    @Test
    void waterAndVibrationDoTheSame() {
        for (Knob knob : new Knob[] {Knob.WATER_SWING, Knob.VIBRATION}) {
            assertThat(by(rows(ADULT, SLOW.withTriggers(2, 0), 60, s -> s.base(knob, 4)), 2)).as(knob.name()).isGreaterThan(10);
            assertThat(by(rows(ADULT, SLOW.withTriggers(6, 0), 60, s -> s.base(knob, 4)), 2)).as(knob.name()).isZero();
            assertThat(by(rows(ADULT, SLOW.withMode(Mode.CMV_VC).withTriggers(2, 0), 60, s -> s.base(knob, 4)), 2)).as("no trigger in this mode").isZero();
        }
    }

    @Test
    void aLeakThatIsNotCompensatedTriggersUntilTheTriggerIsLessSensitive() {
        Mechanics leaking = ADULT.withLeaks(0, 8);       // at a PEEP of 8 cmH2O about 5 L/min
        Consumer<Script> seen = s -> s.base(Knob.LEAK_SEEN, 1);
        assertThat(by(rows(leaking, VOLUME.withTriggers(3, 0), 60, seen), 2)).isGreaterThan(10);
        assertThat(by(rows(leaking, VOLUME.withTriggers(7, 0), 60, seen), 2)).isZero();
        assertThat(by(rows(leaking, VOLUME.withTriggers(3, 0), 60, s -> { }), 2)).as("a device that compensates").isZero();
    }

    @Test
    void anEffortThatTriggersPaysForItsDelayAndIsCounted() {
        List<double[]> rows = rows(ADULT, SUPPORT, 40, effort(6, 16));
        double[] r = rows.get(rows.size() - 1);
        assertThat(of(r, Column.STARTED_BY)).isEqualTo(1);
        assertThat(of(r, Column.TRIGGER_DELAY_S)).isBetween(0.09, 0.3);
        // half a sine's quarter and the release: area under the muscle pressure, of which every part counts once
        double area = 0;
        for (int k = 0; k < leeway.core.lung.Effort.STRETCHES; k++) {
            area += 6 * 0.5 * (leeway.core.lung.Effort.height(k) + leeway.core.lung.Effort.height(k + 1)) * (leeway.core.lung.Effort.atS(k + 1, 0.9) - leeway.core.lung.Effort.atS(k, 0.9));
        }
        assertThat(of(r, Column.PRESSURE_TIME_CMH2O_S)).isCloseTo(area, within(1e-9));
        assertThat(of(r, Column.P01_CMH2O)).isCloseTo(6 * Math.sin(Math.PI / 12) * 0.1 / 0.15, within(1e-9));
        assertThat(of(r, Column.MUSCLE_J)).isPositive();
        assertThat(of(r, Column.ASYNCHRONY)).isZero();
    }

    @Test
    void moreSupportMeansLessWorkForThePatient() {
        double last = Double.POSITIVE_INFINITY;
        for (double support : new double[] {0, 5, 10, 15}) {
            List<double[]> rows = rows(ADULT, BreathSettings.support(support, 0.1, 5, 0.25), 60, effort(8, 16));
            double[] r = rows.get(rows.size() - 1);
            double perLitre = of(r, Column.MUSCLE_J) / of(r, Column.INSPIRED_ML) * 1000;
            assertThat(perLitre).isLessThan(last);
            last = perLitre;
        }
    }

    @Test
    void trappedGasMakesEffortsIneffective() {
        List<double[]> rows = rows(ADULT.withLungs(22, 25, 60), BreathSettings.pressure(18, 12, 1.3, 0.1, 3), 60, effort(4, 32));
        assertThat(with(rows, Asynchrony.INEFFECTIVE)).isGreaterThan(3);
    }

    @Test
    void aShortInflationUnderALongStrongEffortEndsTooEarlyAndTriggersTwice() {
        List<double[]> rows = rows(ADULT, BreathSettings.pressure(6, 10, 0.4, 0.05, 5), 60, s -> s.base(Knob.EFFORT, 16).base(Knob.EFFORT_RATE, 14).base(Knob.EFFORT_TIME, 1.3));
        assertThat(with(rows, Asynchrony.EARLY)).isGreaterThan(8);
        assertThat(with(rows, Asynchrony.DOUBLE)).isGreaterThan(8);
    }

    @Test
    void slowLungsOrALeakMakeSupportEndTooLate() {
        assertThat(with(rows(ADULT.withLungs(30, 10, 70), BreathSettings.support(18, 0.1, 5, 0.1), 60, s -> s.base(Knob.EFFORT, 6).base(Knob.EFFORT_RATE, 12).base(Knob.EFFORT_TIME, 0.6)), Asynchrony.LATE)).isGreaterThan(5);
        assertThat(with(rows(ADULT.withLeaks(0, 40), SUPPORT, 60, s -> s.base(Knob.EFFORT, 6).base(Knob.EFFORT_RATE, 12).base(Knob.EFFORT_TIME, 0.6)), Asynchrony.LATE)).isGreaterThan(5);
        assertThat(with(rows(ADULT, SUPPORT, 60, effort(6, 12)), Asynchrony.LATE)).isZero();
    }

    @Test
    void supportMayEndByTimeInstead() {
        List<double[]> rows = rows(ADULT.withLeaks(0, 40), SUPPORT, 30, effort(6, 12).andThen(s -> s.base(Knob.CYCLE_AFTER_SET, 0.9)));
        assertThat(of(rows.get(2), Column.INSPIRATORY_TIME_S)).isCloseTo(0.9, within(1e-9));
    }

    @Test
    void aSighComesOnceAMinuteAndIsHeldAtItsPressureInEveryMode() {
        for (BreathSettings s : new BreathSettings[] {VOLUME, PRESSURE, SUPPORT}) {
            List<double[]> rows = rows(ADULT, s, 300, effort(s == SUPPORT ? 6 : 0, 16).andThen(x -> x.base(Knob.SIGH_EVERY_SET, 60).base(Knob.SIGH_PRESSURE_SET, 30)));
            List<double[]> sighs = rows.stream().filter(r -> of(r, Column.SIGH) > 0).toList();
            assertThat(sighs).as(s.mode().code()).hasSizeBetween(3, 4);
            double usual = of(rows.get(1), Column.INSPIRED_ML);
            assertThat(sighs).allSatisfy(r -> {
                assertThat(of(r, Column.PEAK_CMH2O)).isCloseTo(30, within(1e-6));
                assertThat(of(r, Column.INSPIRATORY_TIME_S)).isCloseTo(3, within(1e-9));
                assertThat(of(r, Column.INSPIRED_ML)).isGreaterThan(1.4 * usual);
            });
            for (int i = 1; i < rows.size(); i++) assertThat(of(rows.get(i), Column.AT_S) - of(rows.get(i - 1), Column.AT_S)).as("time to breathe out").isGreaterThan(1.2);
        }
    }

    @Test
    void aCoughDrivesThePressureUpInVolumeControlAndSedationQuietensIt() {
        Consumer<Script> coughs = s -> s.base(Knob.COUGH, 13);
        // without a trigger, so that the coughs meet the breaths wherever they come
        BreathSettings set = VOLUME.withMode(Mode.CMV_VC);
        List<double[]> coughing = rows(ADULT, set, 60, coughs), sedated = rows(ADULT, set, 60, coughs.andThen(s -> s.base(Knob.SEDATION, 0.9)));
        double peak = peak(rows(ADULT, set, 60, s -> { }));
        assertThat(coughing.stream().mapToDouble(r -> of(r, Column.COUGHS)).sum()).isBetween(11.0, 13.0);
        assertThat(peak(coughing)).isGreaterThan(peak + 15);
        assertThat(peak(sedated)).isLessThan(peak + 6);
        assertThat(rows(ADULT, set, 60, coughs.andThen(s -> s.base(Knob.SEDATION, 1))).stream().mapToDouble(r -> of(r, Column.COUGHS)).sum()).isZero();
        assertThat(rows(ADULT, VOLUME, 60, coughs).stream().mapToDouble(r -> of(r, Column.PEAK_EXPIRATORY_FLOW_L_MIN)).max().orElseThrow()).isGreaterThan(50);
    }

    private static double peak(List<double[]> rows) {
        return rows.stream().mapToDouble(r -> of(r, Column.PEAK_CMH2O)).max().orElseThrow();
    }

    @Test
    void aHiccupTriggersABreath() {
        List<double[]> rows = rows(ADULT, VOLUME.withMode(Mode.AC_VC), 60, s -> s.base(Knob.HICCUP, 30));
        assertThat(by(rows, 1)).isGreaterThan(8);
    }

    @Test
    void withHalfTheDriveSedatedTheVolumeFalls() {
        List<double[]> awake = rows(ADULT, SUPPORT, 40, effort(8, 16)), sedated = rows(ADULT, SUPPORT, 40, effort(8, 16).andThen(s -> s.base(Knob.SEDATION, 0.5)));
        assertThat(of(sedated.get(5), Column.INSPIRED_ML)).isLessThan(0.85 * of(awake.get(5), Column.INSPIRED_ML));
        List<double[]> deep = rows(ADULT, SUPPORT.withBackup(20, 12, 1.2, 12), 90, effort(8, 16).andThen(s -> s.add(Change.at(20, Knob.SEDATION, How.SET, 1))));
        assertThat(by(deep, 3)).as("backup").isGreaterThan(5);
    }

    @Test
    void onTwoLevelsThePatientBreathesFreelyOnBoth() {
        BreathSettings s = new BreathSettings(Mode.BILEVEL, Double.NaN, 6, 4, 0, 14, Double.NaN, 0.2, 6, 0.4, 45, 2, 0, 0.25, 0, 0, 1);
        List<double[]> rows = rows(ADULT, s, 120, effort(5, 20));
        assertThat(rows.stream().filter(r -> of(r, Column.KIND) == 1).count()).as("six a minute to the high level").isBetween(11L, 13L);
        assertThat(rows.stream().filter(r -> of(r, Column.KIND) == 2).count()).as("breaths on the low level between").isGreaterThan(15);
        double[] high = rows.stream().filter(r -> of(r, Column.KIND) == 1).skip(3).findFirst().orElseThrow(), still = rows(ADULT, s, 120, x -> { }).get(3);
        assertThat(of(high, Column.PEAK_CMH2O)).isCloseTo(20, within(1e-6));
        assertThat(of(high, Column.INSPIRED_ML)).as("efforts on the high level add to it").isGreaterThan(of(still, Column.INSPIRED_ML) + 10);
    }

    /** Eight hours of everything that disturbs a trigger, coughs, hiccups, sighs and an effort, in every mode with every lung of the bench. */
    @ParameterizedTest
    @EnumSource(Mode.class)
    @Tag("long")
    void everyModeRunsEightHoursWithAllThatDisturbsIt(Mode mode) {
        for (Mechanics m : new Mechanics[] {ADULT, ADULT.withLungs(35, 20, 55), ADULT.withLungs(12, 0, 15), ADULT.withLeaks(8, 3), Mechanics.linear(60, 4)}) {
            double scale = Math.min(1, m.complianceMlPerCmH2O() / 34);
            BreathSettings s = new BreathSettings(mode, 369 * scale, 18, 0.9, 0.1, 13, 8, 0.1, 6, 0.4, 45, 2 * scale, 0, 0.25, 0, 15, 1);
            List<double[]> rows = rows(m, s, 28_800, effort(7, 20).andThen(x -> x.base(Knob.COUGH, 3).base(Knob.HICCUP, 5).base(Knob.HEART_SWING, 3 * scale).base(Knob.WATER_SWING, 2.5 * scale)
                    .base(Knob.VIBRATION, 1.5 * scale).base(Knob.LEAK_SEEN, 0.5).base(Knob.SIGH_EVERY_SET, 60).base(Knob.CYCLE_AFTER_SET, 1.5)));
            double[] last = rows.get(rows.size() - 1);
            assertThat(of(last, Column.END_S)).as(mode.code()).isGreaterThan(28_780);
            for (double[] r : rows) {
                for (Column c : new Column[] {Column.INSPIRED_ML, Column.EXPIRED_ML, Column.PEAK_CMH2O, Column.MEAN_CMH2O, Column.PEEP_CMH2O, Column.MUSCLE_J, Column.PRESSURE_TIME_CMH2O_S, Column.ASYNCHRONY}) {
                    if (!Double.isFinite(of(r, c))) throw new AssertionError(mode + " " + c + " at " + of(r, Column.AT_S));
                }
            }
        }
    }
}
