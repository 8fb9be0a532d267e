package leeway.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RealOxygenPropertyTest {
    @Test
    void staysWithinThreePerMilleOfTheReferenceEquationFromMinus40To60DegreesAndTo300Bar() {
        for (double cel = -40; cel <= 60; cel += 5) {
            for (double bar = 1; bar <= 301; bar += 5) {
                double reference = ReferenceOxygen.densityMolPerL(cel + 273.15, bar * 100);
                assertThat(RealOxygen.at(cel).densityMolPerL(bar)).as("%s bar, %s °C", bar, cel).isCloseTo(reference, within(0.003 * reference));
            }
        }
    }

    @Test
    void pressureOfTheDensityOfAPressureIsThatPressure() {
        var random = new SplittableRandom(20_261_125);
        for (int i = 0; i < 20_000; i++) {
            double cel = random.nextDouble(-70, 80);
            double bar = random.nextDouble(0.01, 400);
            RealOxygen oxygen = RealOxygen.at(cel);
            assertThat(oxygen.pressureBar(oxygen.densityMolPerL(bar))).as("%s bar, %s °C", bar, cel).isCloseTo(bar, within(1e-11 * bar));
        }
    }

    @Test
    void everyIsothermOfACylinderRisesWithDensityAsItsSlopeSays() {
        for (double cel = -70; cel <= 80; cel += 10) {
            RealOxygen oxygen = RealOxygen.at(cel);
            for (double rho = 0.1; rho < 17; rho += 0.1) {
                double slope = oxygen.slopeBarPerMolPerL(rho);
                double measured = (oxygen.pressureBar(rho + 1e-5) - oxygen.pressureBar(rho - 1e-5)) / 2e-5;
                assertThat(slope).as("%s mol/L, %s °C", rho, cel).isPositive().isCloseTo(measured, within(1e-6 * measured + 1e-6));
            }
        }
    }

    @Test
    void aThinGasIsIdeal() {
        for (double cel = -70; cel <= 80; cel += 10) assertThat(RealOxygen.at(cel).z(1e-6)).isCloseTo(1, within(1e-8));
    }

    @Test
    void compressibilityIsLeastWhereTheIndependentProgramFoundIt() {
        double[][] least = { { 15, 170, .9285 }, { -20, 182, .8546 }, { 40, 147, .9608 } };
        for (double[] row : least) {
            double at = 0;
            double z = 2;
            for (double bar = 50; bar < 300; bar += 0.5) {
                double here = RealOxygen.at(row[0]).z(bar);
                if (here < z) { z = here; at = bar; }
            }
            assertThat(at).isCloseTo(row[1], within(1.0));
            assertThat(z).isCloseTo(row[2], within(0.00005));
        }
    }

    @Test
    void aCylinderCarriedIntoTheColdAndBackShowsWhatItShowed() {
        var random = new SplittableRandom(5);
        for (int i = 0; i < 2_000; i++) {
            double bar = random.nextDouble(1, 250);
            double warm = random.nextDouble(-20, 40);
            double cold = random.nextDouble(-40, warm);
            double there = RealOxygen.gaugeAtBar(bar, warm, cold);
            assertThat(there).isLessThanOrEqualTo(bar);
            assertThat(RealOxygen.gaugeAtBar(there, cold, warm)).isCloseTo(bar, within(1e-9));
        }
    }

    @Test
    void theGaugeOfTheContentsIsTheGauge() {
        assertThat(RealOxygen.gaugeOfContentBar(2, RealOxygen.freeGasL(2, 185, 5), 5)).isCloseTo(185, within(1e-9));
        assertThat(RealOxygen.freeGasL(10, 0, 15)).isCloseTo(10, within(1e-9));
        assertThat(RealOxygen.usableL(10, 5, 15, 10)).isZero();
    }

    @Test
    void refusesWhatNoCylinderLives() {
        assertThatThrownBy(() -> RealOxygen.freeGasL(2, 401, 15)).hasMessageContaining("401.0 bar");
        assertThatThrownBy(() -> RealOxygen.freeGasL(2, Double.NaN, 15)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> RealOxygen.freeGasL(2, 200, -80)).hasMessageContaining("-80.0 °C");
        assertThatThrownBy(() -> RealOxygen.at(15).densityMolPerL(-1)).hasMessageContaining("-1.0 bar");
        assertThatThrownBy(() -> RealOxygen.at(-90).densityMolPerL(3000)).hasMessageContaining("denser than a gas");
    }
}
