package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.kit.Mode;
import org.junit.jupiter.api.Test;

/** The oracle itself, against worked figures and against thousand-step sums written the dumb way. */
class ClosedFormTest {
    @Test
    void autoPeepOfTheWorkedExample() {
        // VT 0.5 L, C 0.05 L/cmH2O, tau 1 s, Te 2 s: (0.5/0.05) / (e^2 - 1)
        assertThat(ClosedForm.autoPeepCmH2O(500, 50, 1, 2)).isCloseTo(1.565, within(0.0005));
    }

    @Test
    void cyclicPressureControlOfTheWorkedExample() {
        // C 50, 15 cmH2O, tau 0.5 s, Ti 1 s, Te 2 s: VT = C dP (1-a)(1-b)/(1-ab) = 638.2 mL, trapped 11.9 mL
        BreathNumbers n = ClosedForm.steady(Mechanics.linear(10, 50), BreathSettings.pressure(15, 20, 1, 0, 5));
        assertThat(n.expiredMl()).isCloseTo(638.2, within(0.05));
        assertThat(n.trappedMl()).isCloseTo(11.9, within(0.05));
    }

    @Test
    void energyAndMeanAgreeWithSumsOverSmallSteps() {
        for (BreathSettings s : new BreathSettings[] {
                BreathSettings.volume(420, 16, 1.3, 0.3, 8), BreathSettings.volume(420, 16, 1.3, 0.2, 8).withFlowEnd(0.4),
                BreathSettings.pressure(14, 20, 0.9, 0.25, 5), BreathSettings.pressure(14, 20, 0.9, 0, 5), BreathSettings.targeted(380, 22, 0.9, 0.2, 6)}) {
            Mechanics m = Mechanics.linear(12, 40).withFilterAndCircuit(2, 3, 0);
            BreathNumbers n = ClosedForm.steady(m, s);
            double v = 40 * n.peepCmH2O(), v0 = v, mean = 0, energy = 0, peak = 0, h = 1e-5, te = n.expiratoryTimeS(), ti = s.inspiratoryTimeS();
            int steps = (int) Math.round((ti + te) / h);
            for (int i = 0; i < steps; i++) {
                double t = (i + 0.5) * h, p, f;
                if (t > ti) {
                    f = (s.peepCmH2O() - v / 40) / 0.017;
                    p = s.peepCmH2O() - 0.003 * f;
                } else if (s.mode().mandatory() == Mode.Inflation.VOLUME) {
                    double tf = ti - s.pauseS(), f0 = 2 * s.tidalVolumeMl() / tf / (1 + s.flowEndShare());
                    f = t < tf ? f0 * (1 - (1 - s.flowEndShare()) * t / tf) : 0;
                    p = (v + f * h / 2) / 40 + 0.014 * f;
                } else {
                    p = s.peepCmH2O() + n.targetAbovePeepCmH2O() * (s.riseS() > 0 ? Math.min(1, t / s.riseS()) : 1);
                    f = (p - v / 40) / 0.014;
                }
                if (t < ti) energy += p * f * h * 98.0665e-6;
                mean += p * h / (ti + te);
                peak = Math.max(peak, p);
                v += f * h;
            }
            assertThat(v).as("%s repeats itself", s).isCloseTo(v0, within(0.05));
            assertThat(mean).isCloseTo(n.meanCmH2O(), within(2e-3));
            assertThat(energy).isCloseTo(n.energyJ(), within(2e-4));
            assertThat(peak).isCloseTo(n.peakCmH2O(), within(2e-3));
        }
    }
}
