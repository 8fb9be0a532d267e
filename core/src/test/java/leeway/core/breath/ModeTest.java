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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Patients who breathe, mode by mode: what a clinician would expect. */
class ModeTest {
    private static final BreathSettings SUPPORT = BreathSettings.support(10, 0.1, 5, 0.25);

    private static Consumer<Script> effort(double cmH2O, double perMin) {
        return s -> s.base(Knob.EFFORT, cmH2O).base(Knob.EFFORT_RATE, perMin);
    }

    private static double volume(BreathSettings s, double effort) {
        List<double[]> rows = rows(ADULT, s, 20, effort(effort, 16));
        return of(rows.get(rows.size() - 1), Column.EXPIRED_ML);
    }

    @Test
    void lessSupportMeansLessVolumeAndSoDoesAWeakerEffort() {
        assertThat(volume(BreathSettings.support(5, 0.1, 5, 0.25), 6)).isLessThan(0.85 * volume(SUPPORT, 6));
        assertThat(volume(SUPPORT, 3)).isLessThan(volume(SUPPORT, 8));
        assertThat(volume(SUPPORT.withMode(Mode.CPAP), 6)).isLessThan(volume(BreathSettings.support(5, 0.1, 5, 0.25), 6));
    }

    @Test
    void aStrongerEffortDrawsTheAirwayPressureDownInVolumeControlAndAddsVolumeInPressureControl() {
        double[] calm = rows(ADULT, VOLUME, 12, s -> { }).get(0), pulling = rows(ADULT, VOLUME, 12, effort(10, 22)).get(1);
        assertThat(of(pulling, Column.PEAK_CMH2O)).isLessThan(of(calm, Column.PEAK_CMH2O) - 1);
        assertThat(of(pulling, Column.INSPIRED_ML)).isCloseTo(369, within(40.0));
        double[] more = rows(ADULT, PRESSURE, 12, effort(10, 22)).get(1);
        assertThat(of(more, Column.INSPIRED_ML)).isGreaterThan(of(rows(ADULT, PRESSURE, 12, s -> { }).get(0), Column.INSPIRED_ML) * 1.1);
    }

    @Test
    void aLowPressureLimitLeavesTheVolumeShort() {
        double[] row = rows(ADULT, VOLUME.withLimit(19), 9, s -> { }).get(0);
        assertThat(of(row, Column.VOLUME_NOT_REACHED)).isEqualTo(1);
    }

    @Test
    void withoutEffortSupportFallsBackOnBackupAndEffortTakesOverAgain() {
        BreathSettings s = SUPPORT.withBackup(15, 14, 1, 12);
        List<double[]> rows = rows(ADULT, s, 120, effort(6, 18).andThen(x -> x.add(Change.during(20, 70, Knob.EFFORT, How.SET, 0))));
        double[] backup = rows.stream().filter(r -> of(r, Column.STARTED_BY) == 3).findFirst().orElseThrow();
        assertThat(of(backup, Column.AT_S)).isBetween(20 + 15 - 4.0, 20 + 15 + 1.0);
        assertThat(of(backup, Column.KIND)).isEqualTo(1);
        assertThat(of(backup, Column.INSPIRED_ML)).isGreaterThan(250);
        double[] last = rows.get(rows.size() - 1);
        assertThat(of(last, Column.KIND)).isEqualTo(2);
        assertThat(of(last, Column.STARTED_BY)).isEqualTo(1);
        List<double[]> none = rows(ADULT, SUPPORT, 60, effort(6, 18).andThen(x -> x.add(Change.at(20, Knob.EFFORT, How.SET, 0))));
        assertThat(none).as("no backup: rows of 2 s without a breath").filteredOn(r -> of(r, Column.AT_S) > 26).isNotEmpty()
                .allSatisfy(r -> assertThat(of(r, Column.KIND)).isEqualTo(0)).allSatisfy(r -> assertThat(of(r, Column.END_S) - of(r, Column.AT_S)).isLessThanOrEqualTo(2 + 1e-9));
    }

    @Test
    void aLeakKeepsSupportFromCyclingOffUntilItsLongestTime() {
        List<double[]> tight = rows(ADULT, SUPPORT, 20, effort(6, 12)), leaking = rows(ADULT.withLeaks(0, 40), SUPPORT, 20, effort(6, 12));
        assertThat(of(tight.get(1), Column.INSPIRATORY_TIME_S)).isLessThan(1.2);
        assertThat(of(leaking.get(1), Column.INSPIRATORY_TIME_S)).isCloseTo(2, within(1e-6));
    }

    @Test
    void trappedGasHasToBeOvercomeBeforeAnEffortTriggers() {
        Mechanics copd = ADULT.withLungs(22, 25, 60);
        List<double[]> rows = rows(copd, BreathSettings.pressure(18, 12, 1.3, 0.1, 3), 60, effort(4, 32));
        assertThat(rows.stream().mapToDouble(r -> of(r, Column.MISSED_EFFORTS)).sum()).isGreaterThan(3);
        assertThat(rows(ADULT, BreathSettings.pressure(12, 12, 0.9, 0.1, 3), 60, effort(6, 18)).stream().mapToDouble(r -> of(r, Column.MISSED_EFFORTS)).sum()).isEqualTo(0);
    }

    @Test
    void triggerDelayIsThatOfTheDeviceAndOfTheEffort() {
        double delay = of(rows(ADULT, SUPPORT, 12, effort(6, 16)).get(1), Column.TRIGGER_DELAY_S);
        assertThat(delay).as("published: 0.05 to 0.1 s of the device, and the effort's own").isBetween(0.09, 0.3);
        double[] pressureTriggered = rows(ADULT, SUPPORT.withTriggers(0, 2), 12, effort(6, 16)).get(1);
        assertThat(of(pressureTriggered, Column.TRIGGER_DELAY_S)).isBetween(delay, 0.6);
    }

    @Test
    void intermittentMandatoryBreathsComeAtTheirRateAndSupportedOnesBetween() {
        BreathSettings s = new BreathSettings(Mode.SIMV_PC_PS, Double.NaN, 8, 1, 0, 12, 8, 0.1, 5, 0.21, 60, 2, 0, 0.25, 0, 0, 1);
        List<double[]> rows = rows(ADULT, s, 120, effort(6, 20));
        long mandatory = rows.stream().filter(r -> of(r, Column.KIND) == 1).count(), supported = rows.stream().filter(r -> of(r, Column.KIND) == 2).count();
        assertThat(mandatory).isBetween(14L, 17L);
        assertThat(supported).isGreaterThan(mandatory);
    }

    @Test
    void falseTriggersRaiseTheRate() {
        List<double[]> rows = rows(ADULT, VOLUME, 60, s -> s.base(Knob.FALSE_TRIGGERS, 35));
        assertThat(rows.size()).isGreaterThan(26);
        assertThat(rows).anySatisfy(r -> assertThat(of(r, Column.STARTED_BY)).isEqualTo(2));
    }

    @Test
    void offTheVentilatorAPatientBreathesRoomAirOrNotAtAll() {
        List<double[]> breathing = rows(ADULT, SUPPORT, 40, effort(6, 16).andThen(s -> s.add(Change.at(10, Knob.VENTILATOR_ON, How.SET, 0))));
        assertThat(of(breathing.get(breathing.size() - 1), Column.INSPIRED_ML)).isBetween(60.0, 250.0);
        List<double[]> still = rows(ADULT, VOLUME, 40, s -> s.add(Change.at(10, Knob.STANDBY, How.SET, 1)));
        assertThat(of(still.get(still.size() - 1), Column.KIND)).isEqualTo(0);
        assertThat(of(still.get(still.size() - 1), Column.INSPIRED_ML)).isEqualTo(0);
    }

    /** All modes with all kinds of lung run without a stuck breath, a NaN or lost gas. */
    @ParameterizedTest
    @EnumSource(Mode.class)
    void everyModeRunsAnHourWithEveryLung(Mode mode) {
        Mechanics[] lungs = {ADULT, ADULT.withLungs(35, 20, 55), ADULT.withLungs(12, 0, 15), ADULT.withLeaks(8, 3), Mechanics.linear(60, 4)};
        for (Mechanics m : lungs) {
            double scale = m.complianceMlPerCmH2O() / 34, vt = 369 * Math.min(1.2, scale);
            BreathSettings s = new BreathSettings(mode, vt, 18, 0.9, 0.1, 13, 8, 0.1, 6, 0.4, 45, 2 * Math.min(1, scale), 0, 0.25, 0, 15, 1);
            for (double effort : new double[] {0, 7}) {
                List<double[]> rows = rows(m, s, 3600, effort(effort, 20));
                double[] last = rows.get(rows.size() - 1);
                for (Column c : new Column[] {Column.INSPIRED_ML, Column.EXPIRED_ML, Column.PEAK_CMH2O, Column.MEAN_CMH2O, Column.PEEP_CMH2O}) assertThat(of(last, c)).as("%s %s", mode, c).isFinite();
                assertThat(of(last, Column.END_S)).isGreaterThan(3590);
                double in = rows.stream().mapToDouble(r -> of(r, Column.INSPIRED_ML)).sum();
                assertThat(in).as("ventilated in %s", mode).isGreaterThan(mode.supported() || mode.hasRate() ? 300 * vt : 150 * vt);
            }
        }
    }
}
