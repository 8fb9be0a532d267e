package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The engine's steady breath against the textbook's, where the textbook holds: linear, tight, compensated. */
class SteadyBreathTest {
    private static final DeviceLimits FREE = new DeviceLimits(1000, 200, 0, true, 0.08, 3, 2);

    @Test
    void linearBreathsAreThoseOfTheTextbook() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 400; i++) {
            double c = random.nextDouble(5, 90), rate = random.nextDouble(8, 35), period = 60 / rate, ti = period * random.nextDouble(0.2, 0.6), peep = random.nextDouble(0, 15);
            double rise = random.nextInt(3) == 0 || i % 4 != 2 ? 0 : random.nextDouble(0.01, 0.9) * ti;
            // while the pressure rises from PEEP, trapped gas still leaves: the textbook lets it out by the inspiratory resistance
            Mechanics m = Mechanics.linear(1, c).withLungs(random.nextDouble(3, 25), rise > 0 ? 0 : random.nextDouble(0, 10), c).withFilterAndCircuit(random.nextDouble(0, 4), random.nextDouble(0, 4), 0);
            BreathSettings s = switch (i % 4) {
                case 0 -> BreathSettings.volume(random.nextDouble(1, 12) * c, rate, ti, ti * 0.2, peep);
                case 1 -> BreathSettings.volume(random.nextDouble(1, 12) * c, rate, ti, 0, peep).withFlowEnd(random.nextDouble(0, 1));
                case 2 -> BreathSettings.pressure(random.nextDouble(2, 25), rate, ti, rise, peep);
                default -> BreathSettings.targeted(random.nextDouble(2, 8) * c, rate, ti, 0, peep);
            };
            s = s.withLimit(150);
            BreathNumbers book = ClosedForm.steady(m, s), ours = SteadyBreath.of(m, s, FREE);
            if (book.peakCmH2O() > 150) continue;
            String what = m + " " + s;
            boolean plain = rise == 0 || book.autoPeepCmH2O() < 1e-9;
            if (plain) assertThat(ours.expiredMl()).as("expired %s", what).isCloseTo(book.expiredMl(), within(1e-6 * book.expiredMl()));
            assertThat(ours.peakCmH2O()).as("peak %s", what).isCloseTo(book.peakCmH2O(), within(s.flowEndShare() < 1 ? 2e-3 : 1e-6));
            assertThat(ours.plateauCmH2O()).as("plateau %s", what).isCloseTo(book.plateauCmH2O(), within(1e-6));
            assertThat(ours.peepCmH2O()).as("PEEP %s", what).isCloseTo(book.peepCmH2O(), within(1e-6));
            assertThat(ours.meanCmH2O()).as("mean %s", what).isCloseTo(book.meanCmH2O(), within(1e-6));
            if (plain) assertThat(ours.energyJ()).as("energy %s", what).isCloseTo(book.energyJ(), within(1e-7));
            assertThat(ours.transpulmonaryCmH2O()).isCloseTo(book.transpulmonaryCmH2O(), within(1e-6));
            assertThat(ours.peakExpiratoryFlowLPerMin()).isCloseTo(book.peakExpiratoryFlowLPerMin(), within(1e-5));
        }
    }
}
