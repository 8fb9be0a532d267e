package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OneCompartmentTest {
    @Test
    void theSweepsBreathIsThatOfTheEngine() {
        Mechanics m = Mechanics.linear(12, 40).withFilterAndCircuit(0, 3, 0);
        OneCompartment volume = new OneCompartment(), pressure = new OneCompartment();
        volume.volumeMl = pressure.volumeMl = 40 * 8;
        for (int i = 0; i < 60; i++) {
            volume.volumeControl(0.012, 0.015, 40, 369, 0.8, 0.2, 2, 8);
            pressure.pressureControl(0.012, 0.015, 40, 14, 1, 2, 8);
        }
        DeviceLimits free = new DeviceLimits(1000, 200, 0, true, 0.08, 3, 2);
        BreathNumbers v = SteadyBreath.of(m, BreathSettings.volume(369, 20, 1, 0.2, 8), free), p = SteadyBreath.of(m, BreathSettings.pressure(14, 20, 1, 0, 8), free);
        assertThat(volume.peakCmH2O).isCloseTo(v.peakCmH2O(), within(1e-9));
        assertThat(volume.peepCmH2O).isCloseTo(v.peepCmH2O(), within(1e-9));
        // the engine counts the valve's pressure drop in the mean
        assertThat(volume.meanCmH2O).isCloseTo(v.meanCmH2O() - 0.003 * 369 / 3, within(1e-9));
        assertThat(pressure.tidalVolumeMl).isCloseTo(p.expiredMl(), within(1e-7));
        assertThat(pressure.plateauCmH2O).isCloseTo(p.plateauCmH2O(), within(1e-9));
    }
}
