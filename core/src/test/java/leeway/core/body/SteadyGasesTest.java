package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import leeway.core.gas.AlveolarGas;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
import org.junit.jupiter.api.Test;

/** Steady gases against the textbook's equations, which they contain, and against their own sense. */
class SteadyGasesTest {
    private static final Ventilation AIR = new Ventilation(500, 12, 0.21, 760, 0);

    @Test
    void withoutShuntTheAlveolarGasEquationHolds() {
        SteadyGases gases = SteadyGases.of(Sample.ideal(), AIR);
        assertThat(gases.sustainable()).isTrue();
        assertThat(gases.palvO2MmHg()).isCloseTo(AlveolarGas.oxygenMmHg(0.21, 760, gases.paco2MmHg(), 0.8), within(0.02));
        assertThat(gases.pao2MmHg()).isCloseTo(gases.palvO2MmHg(), within(1e-6));
        assertThat(gases.etco2MmHg()).isCloseTo(gases.paco2MmHg(), within(0.02));
    }

    @Test
    void theHyperbolaHoldsForExpiredVentilation() {
        PatientModel patient = Sample.ideal();
        SteadyGases gases = SteadyGases.of(patient, AIR);
        double kept = (patient.vo2MlPerMin() - patient.vco2MlPerMin()) * 863 / 713;
        double ventilation = 12 * (500 - SeriesDeadSpace.effectiveMl(500, 150)) - kept;
        assertThat(gases.paco2MmHg()).isCloseTo(AlveolarGas.carbonDioxideMmHg(patient.vco2MlPerMin(), ventilation), within(0.05));
    }

    @Test
    void aMeasuredDeadSpaceIsTheDeadSpace() {
        PatientModel patient = Sample.of(2000, 0, 0, 0.3, 100, 220, 0.8, 5, 14).with(PatientModel.Change.NONE.deadSpace(210));
        for (double vt : new double[] {350, 420, 600}) {
            SteadyGases gases = SteadyGases.of(patient, new Ventilation(vt, 18, 0.5, 760, 0));
            assertThat(gases.deadSpaceMl()).as("at %s mL", vt).isCloseTo(210, within(6.0));
        }
    }

    @Test
    void shuntFollowsTheShuntEquation() {
        SteadyGases gases = SteadyGases.of(Sample.of(2000, 0.3, 0, 0, 150, 242, 0.8, 5, 14), new Ventilation(500, 14, 0.6, 760, 0));
        Blood blood = Blood.adult(14, 0, 37);
        BloodPoint capillary = new BloodPoint(), artery = new BloodPoint();
        capillary.ofTensions(blood, gases.palvO2MmHg(), gases.etco2MmHg());
        artery.ofTensions(blood, gases.pao2MmHg(), gases.paco2MmHg());
        double venous = artery.oxygenMlPerDl - 242 / 50.0;
        assertThat(AlveolarGas.shuntShare(capillary.oxygenMlPerDl, artery.oxygenMlPerDl, venous)).isCloseTo(0.3, within(1e-3));
    }

    @Test
    void uptakeMatchesNeedWithAPoorlyVentilatedCompartment() {
        var random = new SplittableRandom(11);
        int unsustainable = 0;
        for (int i = 0; i < 2000; i++) {
            PatientModel patient = Sample.of(random.nextDouble(600, 2500), random.nextDouble(0, 0.45), random.nextDouble(0, 0.4), random.nextDouble(0, 0.4), random.nextDouble(60, 180),
                    random.nextDouble(150, 350), random.nextDouble(0.7, 1), random.nextDouble(2.5, 9), random.nextDouble(7, 16));
            SteadyGases gases = SteadyGases.of(patient, new Ventilation(random.nextDouble(250, 650), random.nextDouble(8, 30), random.nextDouble(0.21, 1), random.nextDouble(520, 770), random.nextDouble(5, 20)));
            if (!gases.sustainable()) unsustainable++;
            SteadyGases.Start s = gases.start();
            assertThat(gases.cardiacOutputLPerMin() * 10 * (s.arterialO2() - s.venousO2())).as("patient %s", i).isCloseTo(gases.vo2MlPerMin(), within(1e-4));
            assertThat(gases.cardiacOutputLPerMin() * 10 * (s.venousCo2() - s.arterialCo2())).isCloseTo(gases.vco2MlPerMin(), within(1e-4));
            assertThat(gases.sao2()).isBetween(0.0, 1.0);
            assertThat(gases.pao2MmHg()).isLessThanOrEqualTo(gases.palvO2MmHg() + 1e-6);
            assertThat(gases.etco2MmHg()).isLessThanOrEqualTo(gases.paco2MmHg() + 1e-6);
        }
        assertThat(unsustainable).as("patients whose need cannot be met, of 2000").isLessThan(260);
    }

    @Test
    void moreOxygenHelpsAPoorlyVentilatedLungAndHardlyAShunt() {
        PatientModel shunted = Sample.of(2000, 0.25, 0, 0, 150, 220, 0.8, 5, 14), low = Sample.of(2000, 0, 0.35, 0, 150, 220, 0.8, 5, 14);
        double shuntGain = sat(shunted, 1) - sat(shunted, 0.4), lowGain = sat(low, 1) - sat(low, 0.21);
        assertThat(sat(low, 1)).isGreaterThan(0.99);
        assertThat(sat(low, 0.21)).isLessThan(0.93);
        assertThat(lowGain).isGreaterThan(shuntGain);
    }

    @Test
    void wantOfVentilationIsSaidAndNotHidden() {
        SteadyGases gases = SteadyGases.of(Sample.ideal(), new Ventilation(160, 4, 0.21, 760, 0));
        assertThat(gases.sustainable()).isFalse();
        assertThat(gases.vo2MlPerMin()).isLessThan(150);
        assertThat(SteadyGases.of(Sample.ideal(), new Ventilation(0, 0, 0.21, 760, 0)).sustainable()).isFalse();
    }

    @Test
    void smallBreathsStillMoveSomeGas() {
        assertThat(SeriesDeadSpace.effectiveMl(500, 150)).isCloseTo(150, within(1.5));
        assertThat(SeriesDeadSpace.effectiveMl(150, 150)).isBetween(60.0, 120.0);
        double last = 0;
        for (double vt = 5; vt < 600; vt += 5) {
            double fresh = vt - SeriesDeadSpace.effectiveMl(vt, 150);
            assertThat(fresh).as("fresh gas of a breath of %s mL", vt).isGreaterThan(last);
            last = fresh;
        }
    }

    private static double sat(PatientModel patient, double fio2) {
        return SteadyGases.of(patient, new Ventilation(500, 12, fio2, 760, 0)).sao2();
    }
}
