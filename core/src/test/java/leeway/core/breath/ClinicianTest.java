package leeway.core.breath;

import static leeway.core.breath.Bench.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import leeway.core.lung.Tube;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.How;
import leeway.core.run.Knob;
import org.junit.jupiter.api.Test;

/** What a clinician would expect, and would stop trusting us without. */
class ClinicianTest {
    private static BreathNumbers steady(Mechanics m, BreathSettings s) {
        return SteadyBreath.of(m, s, DeviceLimits.strong());
    }

    @Test
    void obstructionTrapsGas() {
        BreathNumbers healthy = steady(ADULT, BreathSettings.volume(450, 20, 1, 0, 0)), asthma = steady(ADULT.withLungs(30, 15, 50), BreathSettings.volume(450, 20, 1, 0, 0));
        assertThat(healthy.autoPeepCmH2O()).isLessThan(0.6);
        assertThat(asthma.autoPeepCmH2O()).isGreaterThan(4);
        BreathNumbers slower = steady(ADULT.withLungs(30, 15, 50), BreathSettings.volume(450, 10, 1, 0, 0));
        assertThat(slower.autoPeepCmH2O()).as("more time to breathe out").isLessThan(asthma.autoPeepCmH2O() / 3);
    }

    @Test
    void obstructionShowsBetweenPeakAndPlateauAndAStiffLungInThePlateau() {
        BreathNumbers start = steady(ADULT, VOLUME), obstructed = steady(ADULT.withLungs(22, 0, 34), VOLUME), stiff = steady(ADULT.withLungs(11, 0, 17), VOLUME);
        assertThat(obstructed.peakCmH2O() - obstructed.plateauCmH2O()).isCloseTo(start.peakCmH2O() - start.plateauCmH2O() + 0.011 * 369 / 0.8, within(1e-9));
        assertThat(stiff.drivingCmH2O()).isCloseTo(2 * start.drivingCmH2O(), within(1e-9));
        assertThat(stiff.peakCmH2O() - stiff.plateauCmH2O()).isCloseTo(start.peakCmH2O() - start.plateauCmH2O(), within(1e-9));
    }

    @Test
    void inPressureControlAStiffOrObstructedLungGetsLess() {
        double start = steady(ADULT, PRESSURE).expiredMl();
        assertThat(steady(ADULT.withLungs(11, 0, 17), PRESSURE).expiredMl()).isLessThan(0.65 * start);
        assertThat(steady(ADULT.withLungs(30, 0, 34), PRESSURE).expiredMl()).isLessThan(0.85 * start);
    }

    @Test
    void aSmallTubeCostsPressureAndTheLungDoesNotFeelIt() {
        BreathNumbers large = steady(ADULT, VOLUME), small = steady(ADULT.withTube(new Tube(6, 28).rohrer()), VOLUME);
        assertThat(small.peakCmH2O()).isGreaterThan(large.peakCmH2O() + 2);
        assertThat(small.plateauCmH2O()).isCloseTo(large.plateauCmH2O(), within(0.4));
    }

    @Test
    void aLeakLetsLessOutThanIn() {
        BreathNumbers tight = steady(ADULT, VOLUME), cuff = steady(ADULT.withLeaks(6, 0), VOLUME), circuit = steady(ADULT.withLeaks(0, 6), VOLUME);
        assertThat(tight.expiredMl()).isCloseTo(tight.inspiredMl(), within(1e-6));
        assertThat(cuff.expiredMl()).isLessThan(0.75 * cuff.inspiredMl());
        assertThat(cuff.inspiredMl()).isCloseTo(369, within(1e-6));
        assertThat(circuit.inspiredMl()).as("the circuit leaks before the patient").isLessThan(0.9 * 369);
        assertThat(circuit.inspiredAtVentilatorMl()).isGreaterThan(circuit.inspiredMl() + 30);
        assertThat(circuit.peakCmH2O()).isLessThan(tight.peakCmH2O());
    }

    @Test
    void anUncompensatedCircuitKeepsItsShare() {
        DeviceLimits plain = new DeviceLimits(240, 100, 0, false, 0.08, 3, 2);
        // Vset / (1 + Cc / C) in equilibrium (physiology: 500 mL, Cc 2, C 50: 480.8 mL)
        Mechanics m = Mechanics.linear(2, 50).withFilterAndCircuit(0, 0, 2);
        assertThat(SteadyBreath.of(m, BreathSettings.volume(500, 12, 2, 1.2, 5), plain).inspiredMl()).isCloseTo(480.8, within(0.05));
    }

    @Test
    void aWeakDeviceShowsAsWeak() {
        DeviceLimits weak = new DeviceLimits(30, 25, 0.2, true, 0.08, 3, 2);
        BreathNumbers volume = SteadyBreath.of(ADULT, BreathSettings.volume(600, 20, 0.8, 0, 8), weak);
        assertThat(volume.volumeNotReached()).isTrue();
        assertThat(volume.peakFlowLPerMin()).isLessThanOrEqualTo(30 + 1e-9);
        assertThat(volume.peakCmH2O()).isLessThanOrEqualTo(25 + 1e-9);
        BreathNumbers pressure = SteadyBreath.of(ADULT, PRESSURE, weak), strong = steady(ADULT, PRESSURE);
        assertThat(pressure.expiredMl()).isLessThan(strong.expiredMl());
        assertThat(pressure.peakFlowLPerMin()).isLessThanOrEqualTo(30 + 1e-3);
    }

    @Test
    void thePressureLimitHoldsAndTheVolumeFallsShort() {
        BreathNumbers limited = steady(ADULT, VOLUME.withLimit(20));
        assertThat(limited.peakCmH2O()).isCloseTo(20, within(1e-9));
        assertThat(limited.pressureLimited()).isTrue();
        assertThat(limited.volumeNotReached()).isTrue();
        assertThat(limited.inspiredMl()).isBetween(200.0, 369 * 0.95);
        assertThat(steady(ADULT, VOLUME.withLimit(40)).pressureLimited()).isFalse();
    }

    @Test
    void aVolumeTargetFindsItsPressureInThreeBreathsAndNeverStepsTooFar() {
        List<double[]> rows = rows(ADULT, BreathSettings.targeted(369, 20, 1, 0.15, 8), 120, s -> s.add(Change.at(9, Knob.COMPLIANCE, How.TIMES, 0.75)));
        double last = Double.NaN;
        for (double[] r : rows) {
            double above = of(r, Column.TARGET_CMH2O);
            if (!Double.isNaN(last)) assertThat(Math.abs(above - last)).isLessThanOrEqualTo(3 + 1e-9);
            last = above;
        }
        assertThat(of(rowFrom(rows, 8.9), Column.INSPIRED_ML)).as("the first breath after the change").isLessThan(0.9 * 369);
        assertThat(of(rowFrom(rows, 18), Column.INSPIRED_ML)).as("the fourth").isCloseTo(369, within(0.05 * 369));
        assertThat(of(rows.get(rows.size() - 1), Column.INSPIRED_ML)).isCloseTo(369, within(1e-3));
    }

    @Test
    void disconnectedNothingGoesInAndPressureIsGone() {
        List<double[]> rows = rows(ADULT, VOLUME, 30, s -> s.add(Change.during(9, 18, Knob.OPEN_AT_PATIENT, How.SET, 1)));
        double[] off = rowFrom(rows, 11);
        assertThat(of(off, Column.INSPIRED_ML)).isEqualTo(0);
        assertThat(of(off, Column.PEAK_CMH2O)).isLessThan(0.5);
        assertThat(of(off, Column.INSPIRED_AT_VENTILATOR_ML)).as("the ventilator blows on").isCloseTo(369, within(1e-6));
        assertThat(of(rowFrom(rows, 24), Column.EXPIRED_ML)).isCloseTo(369.0, within(1.0));
    }

    @Test
    void aClosedAirwayReachesTheLimitAndLetsNothingThrough() {
        double[] closed = rowFrom(rows(ADULT, VOLUME.withLimit(40), 20, s -> s.add(Change.at(5, Knob.AIRWAY_CLOSED, How.SET, 1))), 8);
        assertThat(of(closed, Column.PEAK_CMH2O)).isCloseTo(40, within(1e-9));
        assertThat(of(closed, Column.INSPIRED_ML)).isEqualTo(0);
        assertThat(of(closed, Column.EXPIRED_ML)).isEqualTo(0);
    }

    @Test
    void aValveStuckClosedStacksBreaths() {
        List<double[]> rows = rows(ADULT, VOLUME.withLimit(60), 20, s -> s.add(Change.at(5, Knob.VALVE_STUCK_CLOSED, How.SET, 1)));
        assertThat(of(rowFrom(rows, 8.5), Column.PLATEAU_CMH2O)).isCloseTo(of(rowFrom(rows, 5.5), Column.PLATEAU_CMH2O) + 369 / 34.0, within(1e-6));
        assertThat(of(rows.get(rows.size() - 1), Column.EXPIRED_ML)).isEqualTo(0);
        assertThat(of(rows.get(rows.size() - 1), Column.PEAK_CMH2O)).isLessThanOrEqualTo(60 + 1e-9);
    }

    @Test
    void aTubeInOneBronchusNeedsAboutTwiceTheDrivingPressureForTheSameVolume() {
        List<double[]> rows = rows(ADULT, VOLUME, 30, s -> s.add(Change.at(6, Knob.VENTILATED_SHARE, How.SET, 0.55)));
        assertThat(of(rowFrom(rows, 20), Column.DRIVING_CMH2O)).isCloseTo(369 / 34.0 / 0.55, within(0.3));
        List<double[]> pressure = rows(ADULT, PRESSURE, 30, s -> s.add(Change.at(6, Knob.VENTILATED_SHARE, How.SET, 0.55)));
        assertThat(of(rowFrom(pressure, 20), Column.EXPIRED_ML)).isBetween(0.45 * of(pressure.get(0), Column.EXPIRED_ML), 0.7 * of(pressure.get(0), Column.EXPIRED_ML));
    }

    @Test
    void aLostPeepEmptiesTheLungAndAPneumothoraxTakesItsRoom() {
        List<double[]> lost = rows(ADULT, VOLUME, 30, s -> s.add(Change.at(6, Knob.VALVE_STUCK_OPEN, How.SET, 5)));
        assertThat(of(rowFrom(lost, 15), Column.PEEP_CMH2O)).isLessThan(1.5);
        assertThat(of(rowFrom(lost, 15), Column.INSPIRED_ML)).isLessThan(369 * 0.95);
        List<double[]> chest = rows(ADULT, VOLUME, 60, s -> s.add(new Change(6, 1e9, 20, Knob.TRAPPED_GAS, 0, How.SET, 800)).add(new Change(6, 1e9, 20, Knob.COMPLIANCE, 0, How.TIMES, 0.5)));
        assertThat(of(rowFrom(chest, 40), Column.PLATEAU_CMH2O)).isGreaterThan(of(chest.get(0), Column.PLATEAU_CMH2O) + 8);
    }
}
