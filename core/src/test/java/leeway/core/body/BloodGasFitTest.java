package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.run.Knob;
import leeway.core.transport.PatientEntry.BloodGas;
import org.junit.jupiter.api.Test;

/** The fit finds the patient behind a gas, does not pretend to more than it can know, and names what cannot be. */
class BloodGasFitTest {
    private static final Illness PNEUMONIA = new Illness("pneumonia", new Band(0.65, 0.45, 0.9), new Band(1.5, 1, 2.5), Band.of(1.1), new Band(0.18, 0.10, 0.28), new Band(0.12, 0.05, 0.22),
            new Band(0.15, 0.06, 0.28), new Band(0.75, 0.55, 0.95), new Band(0.28, 0.2, 0.38), new Band(1.15, 0.95, 1.45), new Band(0.8, 0.75, 0.95), new Band(1.2, 0.9, 1.6), new Band(0.8, 0.6, 1),
            new Band(-1, -6, 4), 38, Optional.empty(), "restrictive", false, "", "invented");
    private static final PatientModel PRIOR = Sample.of(1400, 0.18, 0.12, 0.15, 140, 240, 0.8, 6, 12);

    private static BloodGas gas(double ph, double paco2, double pao2, double fio2, double vt, double rate) {
        return new BloodGas(ph, paco2, OptionalDouble.of(pao2), fio2, OptionalDouble.of(vt), OptionalDouble.of(rate), OptionalDouble.empty(), OptionalDouble.of(8), 30);
    }

    @Test
    void theFittedPatientReproducesTheGas() {
        BloodGas gas = gas(7.31, 52, 74, 0.6, 360, 20);
        BloodGasFit.Result.Fitted fit = (BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760);
        SteadyGases at = SteadyGases.of(fit.patient(), BloodGasFit.ventilation(fit.patient(), gas, 760));
        assertThat(at.paco2MmHg()).isCloseTo(52, within(1.0));
        assertThat(at.pao2MmHg()).isCloseTo(74, within(2.5));
        assertThat(at.ph()).isCloseTo(7.31, within(0.015));
        assertThat(fit.shunt().low()).isLessThan(fit.shunt().central());
        assertThat(fit.said().get(0)).contains("shunt").contains("dead space");
    }

    @Test
    void raisingTheRateThenLowersCarbonDioxideSlowlyAndOxygenFollowsTheShunt() {
        BloodGas gas = gas(7.31, 52, 74, 0.6, 360, 20);
        PatientModel fitted = ((BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760)).patient();
        Run run = new Run(fitted, 360, 20, 8, 0.6).change(300, Knob.RATE_SET, 26).to(300 + 3 * 3600);
        double before = run.at(300, 1);
        assertThat(run.last()[1]).isCloseTo(before * 20 / 26, within(0.7));
        assertThat(run.at(420, 1)).isGreaterThan(before * 20 / 26 + 0.4 * (before - before * 20 / 26));
        double sat60 = SteadyGases.of(fitted, new Ventilation(360, 20, 0.6, 760, 0)).pao2MmHg(), sat100 = SteadyGases.of(fitted, new Ventilation(360, 20, 1, 760, 0)).pao2MmHg();
        Run oxygen = new Run(fitted, 360, 20, 8, 0.6).change(60, Knob.FIO2_SET, 1).to(1800);
        assertThat(oxygen.last()[2]).isCloseTo(sat100, within(2.0));
        assertThat(sat100).isGreaterThan(sat60);
    }

    @Test
    void patientsWhoMadeTheirOwnGasAreFound() {
        var random = new SplittableRandom(3);
        int inside = 0, all = 0;
        for (int i = 0; i < 60; i++) {
            double shunt = Math.max(0.03, 0.18 + 0.045 * random.nextGaussian()), dead = Math.max(0.02, 0.15 + 0.05 * random.nextGaussian()), metabolism = StrictMath.exp(0.1 * random.nextGaussian());
            PatientModel true_ = PRIOR.with(PatientModel.Change.NONE.shunt(shunt).low(0.12 * shunt / 0.18).alveolarDeadSpace(dead).metabolism(metabolism, metabolism));
            Ventilation set = new Ventilation(400, 20, 0.6, 760, 8 + 0.35 * 400 / 55.0);
            SteadyGases g = SteadyGases.of(true_, set);
            BloodGas gas = gas(g.ph(), g.paco2MmHg(), g.pao2MmHg(), 0.6, 400, 20);
            BloodGasFit.Result result = BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760);
            assertThat(result).as("%s of %s", result, gas).isInstanceOf(BloodGasFit.Result.Fitted.class);
            BloodGasFit.Result.Fitted fit = (BloodGasFit.Result.Fitted) result;
            all++;
            if (shunt >= fit.shunt().low() - 0.01 && shunt <= fit.shunt().high() + 0.01) inside++;
            assertThat(fit.missedCo2MmHg()).isCloseTo(0, within(1.5));
        }
        assertThat(inside).as("true shunt inside the stated band, of %s", all).isGreaterThan((int) (0.85 * all));
    }

    @Test
    void tooLittleDataLeavesTheSheetsBand() {
        BloodGas gas = new BloodGas(7.31, 52, OptionalDouble.empty(), 0.6, OptionalDouble.of(360), OptionalDouble.of(20), OptionalDouble.empty(), OptionalDouble.empty(), 30);
        BloodGasFit.Result.Fitted fit = (BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760);
        assertThat(fit.shunt().central()).isCloseTo(0.18, within(0.01));
        assertThat(fit.shunt().high() - fit.shunt().low()).isGreaterThan(0.15);
        assertThat(fit.said()).anySatisfy(s -> assertThat(s).contains("without a PaO2"));
    }

    @Test
    void anEarlyGasCountsForLess() {
        BloodGas late = gas(7.25, 62, 80, 0.6, 360, 20), early = new BloodGas(7.25, 62, late.pao2MmHg(), 0.6, late.tidalVolumeMl(), late.ratePerMin(), OptionalDouble.empty(), OptionalDouble.empty(), 5);
        double byLate = ((BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, late, 760)).missedCo2MmHg(), byEarly = ((BloodGasFit.Result.Fitted) BloodGasFit.fit(PRIOR, PNEUMONIA, early, 760)).missedCo2MmHg();
        assertThat(Math.abs(byEarly)).isGreaterThan(Math.abs(byLate));
    }

    @Test
    void whatCannotBeIsNamed() {
        assertThat(why(gas(7.40, 40, 300, 0.3, 400, 16))).contains("PaO2 of 300 mmHg is more than");
        assertThat(why(gas(7.80, 90, 80, 0.6, 400, 16))).contains("base excess");
        assertThat(why(gas(7.40, 12, 80, 0.6, 300, 10))).contains("PaCO2 of 12 mmHg");
        assertThat(why(gas(7.10, 110, 80, 0.6, 700, 35))).contains("PaCO2 of 110 mmHg");
        assertThat(why(gas(7.40, 38, 28, 1, 420, 20))).isNotBlank();
    }

    private static String why(BloodGas gas) {
        BloodGasFit.Result result = BloodGasFit.fit(PRIOR, PNEUMONIA, gas, 760);
        assertThat(result).as(result.toString()).isInstanceOf(BloodGasFit.Result.Impossible.class);
        return ((BloodGasFit.Result.Impossible) result).why();
    }
}
