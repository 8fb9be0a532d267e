package leeway.core.plan;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.run.Draw;
import leeway.core.run.Stopped;
import leeway.core.transport.Transport;

/**
 * Within what the expected lies in 9 of 10 patients that the file could mean: draws from the bands of the illness and of
 * what was measured, on the same settings.
 *
 * @param p05 1 of 20 patients lies below
 * @param p95 1 of 20 lies above
 */
public record Bands(Expected p05, Expected p95) {
    /** Draws: the rank of a 5 % quantile is then known to within 1.5 % of patients. */
    static final int DRAWS = 200;

    static Bands of(Transport t, Ventilated v, Settings settings, double hPa, double fio2, long seed, BooleanSupplier unwanted) {
        Expected[] all = new Expected[DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            if (unwanted.getAsBoolean()) throw new Stopped(0);
            Ventilated other = v.drawn(t.patient(), t.illness(), new Draw(seed, d + 1));
            all[d] = PlanMaker.expected(Steady.of(other, settings, hPa, fio2), t);
        }
        return new Bands(quantile(all, 0.05), quantile(all, 0.95));
    }

    private static Expected quantile(Expected[] all, double p) {
        return new Expected(q(all, p, Expected::tidalVolumeMl), q(all, p, Expected::peakCmH2O), q(all, p, Expected::plateauCmH2O), q(all, p, Expected::drivingCmH2O),
                q(all, p, Expected::autoPeepCmH2O), q(all, p, Expected::meanCmH2O), q(all, p, Expected::mechanicalPowerJPerMin), q(all, p, Expected::minuteVolumeLPerMin),
                q(all, p, Expected::paco2MmHg), q(all, p, Expected::etco2MmHg), q(all, p, Expected::pao2MmHg), q(all, p, Expected::spo2), q(all, p, Expected::ph));
    }

    private static OptionalDouble q(Expected[] all, double p, Function<Expected, OptionalDouble> of) {
        double[] values = Arrays.stream(all).map(of).filter(OptionalDouble::isPresent).mapToDouble(OptionalDouble::getAsDouble).sorted().toArray();
        if (values.length < all.length) return OptionalDouble.empty();
        double at = p * (values.length - 1);
        int low = (int) at;
        return OptionalDouble.of(values[low] + (at - low) * (values[Math.min(low + 1, values.length - 1)] - values[low]));
    }
}
