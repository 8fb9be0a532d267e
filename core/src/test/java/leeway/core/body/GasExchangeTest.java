package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.run.Knob;
import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.api.Test;

/** Gas exchange in time: at rest where the steady state is, and moving as it should. */
class GasExchangeTest {
    private static final PatientModel ILL = Sample.of(1500, 0.2, 0.15, 0.2, 110, 230, 0.8, 6, 12);

    @Test
    void nothingMovesFromTheSteadyState() {
        for (PatientModel patient : new PatientModel[] {Sample.ideal(), ILL, ILL.with(PatientModel.Change.NONE.deadSpace(190)), ILL.with(PatientModel.Change.NONE.low(0).spread(1)), Apnoea.healthy(Sex.FEMALE, 0.5, 66, 7)}) {
            double tidal = 6.5 * patient.predictedKg(), rate = patient.adult() ? 16 : 26;
            Run run = new Run(patient, tidal, rate, 5, 0.5);
            run.to(3600);
            for (double[] row : run.rows) {
                assertThat(row[1]).as("PaCO2 at %s s", row[0]).isCloseTo(run.steady.paco2MmHg(), within(0.15));
                assertThat(row[3]).as("SaO2 at %s s", row[0]).isCloseTo(run.steady.sao2(), within(0.001));
                assertThat(row[2] / run.steady.pao2MmHg()).as("PaO2 at %s s", row[0]).isCloseTo(1, within(0.005));
            }
            assertThat(run.last()[5]).isCloseTo(run.steady.etco2MmHg(), within(0.3));
        }
    }

    @Test
    void ninetySecondsOfOxygenRaiseAndThenFallWithTheWashout() {
        PatientModel patient = Sample.of(2000, 0.03, 0, 0, 150, 206, 0.8, 5, 15);
        Run run = new Run(patient, 500, 12, 0, 0.4).change(60, 150, Knob.FIO2_SET, 1).to(600);
        double before = run.at(60, 2), top = run.at(155, 2);
        assertThat(top).isGreaterThan(before + 200);
        // alveolar oxygen falls back with τ = lung over alveolar ventilation; the lung stands higher by half a breath on average
        double a0 = run.at(60, 9), a1 = run.at(160, 9), a2 = run.at(190, 9);
        double tau = 30 / Math.log((a1 - a0) / (a2 - a0));
        assertThat(tau).isCloseTo(60 * 2.0 / 4.2, within(0.25 * 28.6));
        assertThat(run.at(600, 2)).isCloseTo(before, within(2.0));
    }

    @Test
    void aHigherRateLowersCarbonDioxideSlowlyToWhatTheLawSays() {
        Run run = new Run(ILL, 420, 20, 8, 0.6).change(600, Knob.RATE_SET, 26).to(600 + 4 * 3600);
        double before = run.steady.paco2MmHg(), law = before * 20 / 26;
        assertThat(run.at(600 + 120, 1)).as("after two minutes it has gone less than half of the way").isGreaterThan(0.5 * (before + law) - 0.5);
        assertThat(run.at(600 + 1800, 1)).isBetween(law, before);
        assertThat(run.last()[1]).isCloseTo(law, within(0.5));
    }

    @Test
    void climbingTakesOxygen() {
        Run run = new Run(ILL, 420, 20, 5, 0.5).change(600, Knob.BAROMETER, 564.5).to(3600);
        SteadyGases high = SteadyGases.of(ILL, new Ventilation(420, 20, 0.5, 564.5, 0));
        assertThat(run.last()[2]).isCloseTo(high.pao2MmHg(), within(0.7));
        assertThat(run.last()[3]).isLessThan(run.steady.sao2());
    }

    @Test
    void rebreathedGasComesBackAsCarbonDioxide() {
        Run run = new Run(ILL, 420, 20, 5, 0.5).change(60, Knob.REBREATHED, 0.3).to(1800);
        assertThat(run.last()[1]).isGreaterThan(run.steady.paco2MmHg() + 5);
        assertThat(run.at(120, 5)).isGreaterThan(run.steady.etco2MmHg());
    }

    @Test
    void aBlockedBronchusTurnsIntoShuntAsItsOxygenIsTakenUp() {
        PatientModel patient = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        Run run = new Run(patient, 450, 14, 5, 1).change(60, Knob.VENTILATED_SHARE, 0.5).to(2400);
        assertThat(run.at(75, 3)).as("at once hardly anything").isGreaterThan(0.985);
        assertThat(run.last()[2]).as("then half of the blood passes lung without gas").isLessThan(90);
        Run back = new Run(patient, 450, 14, 5, 1).change(60, 900, Knob.VENTILATED_SHARE, 0.5).to(3000);
        assertThat(back.last()[2]).isCloseTo(back.steady.pao2MmHg(), within(8.0));
    }

    @Test
    void aClosedLungLosesTheVolumeThatBloodTakes() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        Run run = new Run(adult, 500, 12, 0, 0.8).change(60, Knob.VENTILATOR_ON, 0).change(63, Knob.AIRWAY_CLOSED, 1).to(66);
        double before = run.gas.lungGasMl(run.now);
        run.to(186);
        double lost = before - run.gas.lungGasMl(run.now);
        // oxygen leaves at the rate of its use; carbon dioxide comes for some seconds, then hardly any, for what is left of the gas holds it denser
        assertThat(lost).isBetween(0.6 * 2 * adult.vo2MlPerMin(), 1.05 * 2 * adult.vo2MlPerMin());
        double held = before - lost;
        run.change(run.now.tS + 1, Knob.AIRWAY_CLOSED, 0).change(run.now.tS + 1, Knob.VENTILATOR_ON, 1).to(run.now.tS + 120);
        assertThat(run.gas.lungGasMl(run.now)).as("opened again it fills").isGreaterThan(held + 0.9 * lost);
    }

    @Test
    void aBreathTakesFewEvaluationsOfTheBloodsCurves() {
        for (PatientModel patient : new PatientModel[] {Sample.ideal(), ILL, Apnoea.healthy(Sex.FEMALE, 0.5, 66, 7)}) {
            double rate = patient.adult() ? 15 : 28;
            Run run = new Run(patient, 7 * patient.predictedKg(), rate, 5, 0.5);
            run.change(300, Knob.RATE_SET, rate * 1.3).change(900, 990, Knob.FIO2_SET, 1).change(1200, Knob.SHUNT, 0.3);
            long before = run.gas.evaluations();
            run.to(1800);
            assertThat((run.gas.evaluations() - before) / (double) run.rows.size()).as("a breath, with changes in it").isLessThan(25);
        }
    }

    @Test
    void pressureInTheChestLowersTheOutputUnlessSwitchedOff() {
        assertThat(ILL.outputTimes(20)).isBetween(0.7, 0.95);
        PatientModel free = ILL.uncoupled();
        assertThat(free.outputTimes(20)).isEqualTo(1);
        Ventilation high = new Ventilation(420, 20, 0.6, 760, 25);
        assertThat(SteadyGases.of(ILL, high).cardiacOutputLPerMin()).isLessThan(SteadyGases.of(free, high).cardiacOutputLPerMin());
        assertThat(SteadyGases.of(free, high).cardiacOutputLPerMin()).isEqualTo(free.cardiacOutputLPerMin());
    }

    @Test
    void haemoglobinThatBindsNoOxygenTakesContentNotSaturation() {
        PatientModel poisoned = ILL.withInactive(0.3);
        Ventilation set = new Ventilation(420, 20, 0.6, 760, 10);
        SteadyGases well = SteadyGases.of(ILL, set), ill = SteadyGases.of(poisoned, set);
        assertThat(ill.mixedVenousSaturation()).isLessThan(well.mixedVenousSaturation() - 0.08);
        assertThat(ill.start().arterialO2()).isLessThan(0.75 * well.start().arterialO2());
        Run run = new Run(poisoned, 420, 20, 5, 0.6).to(600);
        assertThat(run.last()[3]).isCloseTo(run.steady.sao2(), within(0.002));
    }

    @Test
    void reoxygenationComesAfterAFurtherFall() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        Run run = new Run(adult, 500, 12, 0, 0.21).change(60, 150, Knob.VENTILATOR_ON, 0).change(60, 150, Knob.AIRWAY_CLOSED, 1).change(150, Knob.FIO2_SET, 1).to(400);
        double atRemedy = run.at(150, 3), lowest = 1, when = 0;
        for (double[] row : run.rows) {
            if (row[3] < lowest) {
                lowest = row[3];
                when = row[0];
            }
        }
        assertThat(when).isBetween(150.0, 175.0);
        assertThat(lowest).isLessThan(atRemedy);
        assertThat(run.at(220, 3)).isGreaterThan(0.97);
    }

    @Test
    void anInfantDesaturatesFasterThanAChildThanAnAdult() {
        double infant = Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 0.3, 62, 6), 1, 0), child = Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 6, 113, 20), 1, 0),
                adult = Apnoea.to(0.9, Apnoea.healthy(Sex.MALE, 40, 175, 70), 1, 0);
        assertThat(infant).isLessThan(0.6 * child);
        assertThat(child).isLessThan(0.65 * adult);
    }

    @Test
    void openToOxygenIsBetterThanOpenToAirThanClosed() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        double closed = Apnoea.to(0.9, adult, 1, 0), air = Apnoea.to(0.9, adult, 1, 1), oxygen = Apnoea.to(0.9, adult, 1, 2);
        assertThat(closed).isLessThan(air);
        assertThat(oxygen).isEqualTo(Double.POSITIVE_INFINITY);
    }

    @Test
    void halvingTheStretchHardlyMovesAnApnoea() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        double two = Apnoea.run(adult, 1, 0, 800, 10).whenSaturation(0.8), one = Apnoea.run(adult, 1, 0, 800, 1).whenSaturation(0.8), half = Apnoea.run(adult, 1, 0, 800, 0.5).whenSaturation(0.8);
        assertThat(two).as("2 s against 0.5 s").isCloseTo(half, within(4.0));
        assertThat(Math.abs(one - half)).as("first order: half the step, half the error").isLessThan(0.75 * Math.abs(two - half) + 0.1);
    }

    /** What a closed airway leaves shrinks until it closes: the fall to 80 % takes half a minute and more, where the lung once held out to its last gas and then failed in seconds. */
    @Test
    void aLungThatShrinksClosesUnitByUnit() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        double at95 = Apnoea.to(0.95, adult, 1, 0), at80 = Apnoea.to(0.8, adult, 1, 0);
        assertThat(at80 - at95).as("s from 95 to 80 %").isBetween(40.0, 120.0);
        // a lung open to the room keeps its volume: nothing closes
        assertThat(Apnoea.to(0.95, adult, 1, 1)).isGreaterThan(at95 + 60);
    }

    /**
     * Harm by carbon dioxide comes a little sooner with more oxygen, and rightly: blood that loses oxygen meanwhile takes carbon dioxide up
     * (Haldane, 6 mL/dL when empty). The delay is what blood takes up so, against the body's store of 1.5 mL/kg/mmHg.
     */
    @Test
    void bloodThatKeepsItsOxygenBringsCarbonDioxideSoonerAsHaldaneSays() {
        PatientModel adult = Apnoea.healthy(Sex.MALE, 40, 175, 70);
        double[] afterS = new double[2], lost = new double[2];
        for (int i = 0; i < 2; i++) {
            Run run = new Run(adult, 450, 14, 5, i == 0 ? 0.25 : 0.6).change(60, Knob.RATE_SET, 4).to(1000);
            double start = run.at(59, 1), atS = run.rows.stream().filter(r -> r[1] >= start + 20).findFirst().orElseThrow()[0];
            afterS[i] = atS - 60;
            lost[i] = run.at(59, 10) - run.at(atS, 10);
        }
        double blood = 6 * (lost[0] - lost[1]) * adult.bloodVolumeMl() / 100, store = 1.5 * 70 * 20;
        assertThat(afterS[0] / afterS[1] - 1).as("later with little oxygen, by a share").isBetween(0.5 * blood / store, 2.5 * blood / store).isBetween(0.01, 0.04);
    }

    @Test
    void lessOutputOfTheHeartDelaysAndDesaturatesVenousBlood() {
        Run run = new Run(ILL, 420, 20, 5, 0.6).change(60, Knob.CARDIAC_OUTPUT, 3).to(1800);
        assertThat(run.last()[10]).isLessThan(run.at(60, 10) - 0.1);
        assertThat(run.last()[3]).isLessThan(run.at(60, 3));
    }

    @Test
    void aTestLungBreathesAndNothingElse() {
        PatientModel bag = new PatientModel(Sex.MALE, 40, true, 175, 70, 70, 50, 5, 0, 0, 2000, 0, 0, 0, 0, 50, java.util.OptionalDouble.empty(), 0, 0, 0, 0, 15, 26.86, 0, 37, false, java.util.List.of());
        Run run = new Run(bag, 500, 12, 5, 0.4).change(30, Knob.FIO2_SET, 1).to(300);
        assertThat(run.last()[5]).isEqualTo(0);
        assertThat(run.last()[9]).isGreaterThan(650);
        assertThat(run.last()[1]).isNaN();
        assertThat(run.steady.living()).isFalse();
    }
}
