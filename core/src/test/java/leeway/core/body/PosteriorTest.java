package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.run.Draw;
import leeway.core.transport.PatientEntry.BloodGas;
import org.junit.jupiter.api.Test;

/** What a blood gas leaves to know: as much as it measured, no more, and tied together as it ties it. */
class PosteriorTest {
    private static final Illness PNEUMONIA = new Illness("pneumonia", new Band(0.65, 0.45, 0.9), new Band(1.5, 1, 2.5), Band.of(1.1), new Band(0.18, 0.10, 0.28), new Band(0.12, 0.05, 0.22),
            new Band(0.15, 0.06, 0.28), new Band(0.75, 0.55, 0.95), new Band(0.28, 0.2, 0.38), new Band(1.15, 0.95, 1.45), new Band(0.8, 0.75, 0.95), new Band(1.2, 0.9, 1.6), new Band(0.8, 0.6, 1),
            new Band(-1, -6, 4), 38, Optional.empty(), "restrictive", false, "", "invented");
    private static final PatientModel PRIOR = Sample.of(1400, 0.18, 0.12, 0.15, 140, 240, 0.8, 6, 12);
    private static final BloodGas GAS = gas(OptionalDouble.of(74), 30), WITHOUT_OXYGEN = gas(OptionalDouble.empty(), 30);

    private static BloodGas gas(OptionalDouble pao2, double afterMin) {
        return new BloodGas(7.31, 52, pao2, 0.6, OptionalDouble.of(360), OptionalDouble.of(20), OptionalDouble.empty(), OptionalDouble.of(8), afterMin);
    }

    private static BloodGasFit.Result.Fitted fit(BloodGas gas) {
        return (BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760);
    }

    private static Ventilation set(PatientModel p) {
        return BloodGasFit.ventilation(p, GAS, 760);
    }

    @Test
    void everyPatientDrawnHasAboutThisGas() {
        BloodGasFit.Result.Fitted fit = fit(GAS);
        double[] co2 = new double[400], o2 = new double[400], ph = new double[400];
        for (int d = 0; d < 400; d++) {
            PatientModel p = fit.patient().with(fit.posterior().draw(new Draw(3, d + 1)));
            SteadyGases g = SteadyGases.of(p, set(fit.patient()));
            co2[d] = g.paco2MmHg();
            o2[d] = Math.log(g.pao2MmHg());
            ph[d] = g.ph();
        }
        // the error of the gas, and a little that the bent curves add
        assertThat(deviation(co2)).as("PaCO2, 3 %% of 52").isBetween(1.2, 1.9);
        assertThat(mean(co2)).isCloseTo(52, within(1.0));
        assertThat(deviation(o2)).as("PaO2, 5.1 %%").isBetween(0.04, 0.065);
        assertThat(mean(o2)).isCloseTo(Math.log(74), within(0.04));
        assertThat(deviation(ph)).isBetween(0.008, 0.02);
    }

    @Test
    void deadSpaceAndMetabolismAreKnownTogetherAndHardlyAlone() {
        Posterior p = fit(GAS).posterior();
        assertThat(p.correlation(Unknown.OXYGEN_UPTAKE, Unknown.DEAD_SPACE)).isLessThan(-0.4);
        assertThat(p.left(Unknown.OXYGEN_UPTAKE)).isBetween(0.5, 1.0);
        assertThat(p.left(Unknown.SHUNT)).as("a PaO2 tells of the shunt").isLessThan(0.7);
        assertThat(fit(GAS).said()).anySatisfy(s -> assertThat(s).contains("ties dead space"));
    }

    @Test
    void withoutOxygenNothingIsLearntOfTheShunt() {
        Posterior p = fit(WITHOUT_OXYGEN).posterior();
        assertThat(p.left(Unknown.SHUNT)).isCloseTo(1, within(0.03));
        assertThat(p.left(Unknown.LOW_VENTILATION)).isCloseTo(1, within(0.03));
    }

    @Test
    void anEarlyGasTellsLess() {
        Posterior late = fit(GAS).posterior(), early = fit(gas(OptionalDouble.of(74), 5)).posterior();
        assertThat(early.left(Unknown.DEAD_SPACE)).isGreaterThan(late.left(Unknown.DEAD_SPACE));
    }

    @Test
    void anEndOfADoubtTakesWithItWhatTheGasTiesToIt() {
        BloodGasFit.Result.Fitted fit = fit(GAS);
        PatientModel more = fit.patient().with(fit.posterior().end(Unknown.DEAD_SPACE, true));
        assertThat(more.alveolarDeadSpace()).isGreaterThan(fit.patient().alveolarDeadSpace() + 0.03);
        assertThat(more.vco2MlPerMin()).isLessThan(fit.patient().vco2MlPerMin());
        assertThat(SteadyGases.of(more, set(fit.patient())).paco2MmHg()).as("the gas holds").isCloseTo(52, within(3.2));
    }

    /** The obvious way: a random walk over the exact product of prior and errors, 40 000 steps. */
    @Test
    void agreesWithARandomWalkOverTheExactDoubt() {
        BloodGasFit.Result.Fitted fit = fit(GAS);
        SheetDoubt sheet = new SheetDoubt(PRIOR, PNEUMONIA, false, 360);
        Ventilation set = set(PRIOR);
        int n = Unknown.values().length, excess = Unknown.BASE_EXCESS.ordinal(), steps = 40_000;
        double[] z = fit.posterior().mode(), sum = new double[n], squares = new double[n];
        var random = new SplittableRandom(11);
        double now = misfit(sheet, set, z);
        for (int k = 0; k < steps; k++) {
            double[] next = z.clone();
            for (int i = 0; i < n; i++) next[i] += 0.55 / Math.sqrt(n) * 2 * fit.posterior().left(Unknown.values()[i]) * random.nextGaussian();
            double then = misfit(sheet, set, next);
            if (Math.log(random.nextDouble()) < 0.5 * (now - then)) {
                z = next;
                now = then;
            }
            for (int i = 0; i < n; i++) {
                sum[i] += z[i];
                squares[i] += z[i] * z[i];
            }
        }
        for (Unknown u : Unknown.values()) {
            int i = u.ordinal();
            double mean = sum[i] / steps, sd = Math.sqrt(squares[i] / steps - mean * mean), ours = fit.posterior().left(u);
            assertThat(ours / sd).as("doubt of %s: %s against %s", u.words(), ours, sd).isBetween(0.7, 1.4);
            assertThat(Math.abs(fit.posterior().mode()[i] - mean) / sd).as("middle of %s: %s against %s", u.words(), fit.posterior().mode()[i], mean).isLessThan(0.5);
        }
        assertThat(excess).isEqualTo(n - 1);
    }

    private static double misfit(SheetDoubt sheet, Ventilation set, double[] z) {
        double[] median = new double[z.length];
        SteadyGases g = SteadyGases.of(PRIOR.with(sheet.change(z, median)), set);
        double sum = square((g.paco2MmHg() - 52) / (0.03 * 52)) + square(Math.log(g.pao2MmHg() / 74) / 0.051) + square((g.ph() - 7.31) / (0.03 / 2.53));
        for (int i = 0; i < z.length - 1; i++) sum += z[i] * z[i];
        return sum;
    }

    private static double square(double x) {
        return x * x;
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (double v : x) sum += v;
        return sum / x.length;
    }

    private static double deviation(double[] x) {
        double mean = mean(x), sum = 0;
        for (double v : x) sum += (v - mean) * (v - mean);
        return Math.sqrt(sum / (x.length - 1));
    }
}
