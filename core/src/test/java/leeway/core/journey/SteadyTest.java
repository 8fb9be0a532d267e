package leeway.core.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import leeway.core.gas.Barometer;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.PatientEntry;
import org.junit.jupiter.api.Test;

/** What a clinician expects of a patient on settings that do not change. */
class SteadyTest {
    private static final double SEA = Barometer.SEA_LEVEL_HPA;

    @Test
    void healthyLungsNeedLittlePressureAndGiveOrdinaryGases() {
        Steady s = Steady.of(Someone.on(Someone.HEALTHY, null), Someone.volume(420, 14, 0.4), SEA);
        assertThat(s.breath().plateauCmH2O()).isBetween(10.0, 16.0);
        assertThat(s.breath().peakCmH2O()).isGreaterThan(s.breath().plateauCmH2O() + 2);
        assertThat(s.gases().paco2MmHg()).isBetween(30.0, 50.0);
        assertThat(s.gases().pao2MmHg()).isBetween(120.0, 230.0);
    }

    @Test
    void sickLungsNeedMorePressureAndGiveWorseGases() {
        Settings set = Someone.volume(420, 14, 0.4);
        Steady well = Steady.of(Someone.on(Someone.HEALTHY, null), set, SEA), ill = Steady.of(Someone.on(Someone.ILL, null), set, SEA);
        assertThat(ill.breath().plateauCmH2O()).isGreaterThan(well.breath().plateauCmH2O() + 3);
        assertThat(ill.gases().pao2MmHg()).isLessThan(well.gases().pao2MmHg() - 30);
        assertThat(ill.gases().paco2MmHg()).isGreaterThan(well.gases().paco2MmHg());
    }

    @Test
    void thinAirLowersOxygenAndLeavesCarbonDioxide() {
        Ventilated v = Someone.on(Someone.ILL, null);
        Settings set = Someone.volume(420, 14, 0.5);
        Steady ground = Steady.of(v, set, SEA), high = Steady.of(v, set, Barometer.pressureHPa(1981.2));
        assertThat(high.gases().pao2MmHg()).isLessThan(ground.gases().pao2MmHg() - 10);
        assertThat(high.gases().paco2MmHg()).isCloseTo(ground.gases().paco2MmHg(), within(1.5));
    }

    @Test
    void aFixedMassFlowDeliversMoreWhereTheAirIsThin() {
        Ventilated v = Ventilated.of(Someone.woman(null), Someone.HEALTHY, Someone.TUBE, Someone.FILTER, Someone.CIRCUIT,
                Someone.ventilator(Ventilator.Altitude.FIXED_MASS_FLOW));
        double hPa = Barometer.pressureHPa(2438.4);     // 8000 ft: a volume grows by 1.346 (ISO 2533 pressure 752.6 hPa)
        assertThat(Steady.of(v, Someone.volume(400, 14, 0.5), hPa).breath().expiredMl()).isCloseTo(400 * 1013.25 / hPa, within(0.5));
    }

    @Test
    void supportFallsAndVolumeFalls() {
        Ventilated v = Someone.on(Someone.HEALTHY, PatientEntry.Effort.NORMAL);
        double[] volume = new double[2];
        for (int i = 0; i < 2; i++) {
            Settings set = new Settings(Optional.of(Mode.CSV_PS), Map.of(Setting.SUPPORT_PRESSURE, i == 0 ? 12.0 : 5.0, Setting.PEEP, 5.0, Setting.FIO2, 0.4));
            Steady s = Steady.of(v, set, SEA);
            volume[i] = s.breath().expiredMl();
            assertThat(s.breath().ratePerMin()).isBetween(13.0, 20.0);
        }
        assertThat(volume[1]).isLessThan(volume[0] - 50);
    }

    @Test
    void aPatientWhoStartsBreathsInAssistControlBreathesFasterThanSet() {
        Steady s = Steady.of(Someone.on(Someone.HEALTHY, PatientEntry.Effort.STRONG), Someone.volume(420, 12, 0.4), SEA);
        assertThat(s.breath().ratePerMin()).isGreaterThan(20);
    }
}
