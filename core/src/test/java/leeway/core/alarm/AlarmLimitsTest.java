package leeway.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow;
import leeway.core.kit.AlarmRow.Basis;
import leeway.core.kit.AlarmRow.LimitRule;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.kit.Mode;
import leeway.core.kit.Monitor;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.AlarmChange;
import org.junit.jupiter.api.Test;

/** Limits follow their rules, and the file has the last word. */
class AlarmLimitsTest {
    private static final Expected EXPECTED = new Expected(27.4, 22, 372, 7.1, 41, 0.94, 20);
    private static final Settings SETTINGS = new Settings(Optional.of(Mode.AC_VC), Map.of(Setting.PEEP, 8.0, Setting.FIO2, 0.6));

    @Test
    void aPressureLimitFollowsTheExpectedPeak() {
        var limit = only(row(AlarmCondition.AIRWAY_PRESSURE_HIGH, null, rule(Basis.EXPECTED_PEAK, 1, 10, 99)), EXPECTED, Map.of());
        assertThat(limit.high()).hasValue(37);
        assertThat(limit.low()).isEmpty();
    }

    @Test
    void atMostIsKept() {
        var limit = only(row(AlarmCondition.AIRWAY_PRESSURE_HIGH, null, rule(Basis.EXPECTED_PEAK, 1, 20, 40)), EXPECTED, Map.of());
        assertThat(limit.high()).hasValue(40);
    }

    @Test
    void volumesAreRoundedToTheKnobsStep() {
        var limit = only(row(AlarmCondition.EXPIRED_TIDAL_VOLUME_LOW, rule(Basis.EXPECTED_TIDAL_VOLUME, 0.7, 0, 9999), null), EXPECTED, Map.of());
        assertThat(limit.low()).hasValue(260);
    }

    @Test
    void theFileOutranksTheRule() {
        var changes = Map.of(AlarmCondition.PEEP_LOW, new AlarmChange(OptionalDouble.of(6.5), OptionalDouble.empty(), OptionalDouble.of(12), false));
        var limit = only(row(AlarmCondition.PEEP_LOW, rule(Basis.SET_PEEP, 1, -3, 99), null), EXPECTED, changes);
        assertThat(limit.low()).hasValue(6.5);
        assertThat(limit.conditionDelayS()).isEqualTo(12);
        assertThat(limit.rule()).startsWith("prescribed in the file");
    }

    @Test
    void offMeansThatItDoesNotSpeak() {
        var changes = Map.of(AlarmCondition.PEEP_LOW, new AlarmChange(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), true));
        assertThat(limits(row(AlarmCondition.PEEP_LOW, rule(Basis.SET_PEEP, 1, -3, 99), null), EXPECTED, changes)).isEmpty();
    }

    @Test
    void aRuleWithoutItsBasisLeavesNoLimit() {
        assertThat(limits(row(AlarmCondition.END_TIDAL_CO2_LOW, rule(Basis.EXPECTED_END_TIDAL_CO2, 1, -8, 99), null), Expected.NOTHING, Map.of())).isEmpty();
    }

    private static AlarmRow row(AlarmCondition condition, LimitRule low, LimitRule high) {
        return new AlarmRow(condition, Priority.HIGH, 0, 2, 1, false, Optional.ofNullable(low), Optional.ofNullable(high), "invented");
    }

    private static LimitRule rule(Basis basis, double times, double plus, double atMost) {
        return new LimitRule(basis, times, plus, OptionalDouble.empty(), OptionalDouble.of(atMost), "by rule");
    }

    private static List<AlarmLimit> limits(AlarmRow row, Expected expected, Map<AlarmCondition, AlarmChange> changes) {
        Monitor monitor = new Monitor("one row", List.of(), List.of(row), 1, "invented");
        return AlarmLimits.of(silent(), monitor, SETTINGS, expected, changes);
    }

    private static AlarmLimit only(AlarmRow row, Expected expected, Map<AlarmCondition, AlarmChange> changes) {
        var limits = limits(row, expected, changes);
        assertThat(limits).hasSize(1);
        return limits.get(0);
    }

    /** A ventilator without any alarm. */
    private static Ventilator silent() {
        var gas = new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), true, 0, 0, 0, 0, 0, 2.7, 6, true,
                Ventilator.VolumeBasis.BTPS, Ventilator.Altitude.COMPENSATED, 0.05);
        return new Ventilator("silent", Ventilator.Drive.PNEUMATIC, List.of(Mode.AC_VC), Map.of(), Settings.NONE, Map.of(), 80, 60, 0.05, 5, true, true,
                false, gas, Optional.empty(), Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 5, "invented");
    }
}
