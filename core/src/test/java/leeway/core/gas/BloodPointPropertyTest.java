package leeway.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The joint inversion against its slow twin, the plain formulas and itself. */
class BloodPointPropertyTest {

    @Test
    void theOwnExponentialAgreesWithTheLibrarys() {
        var random = new SplittableRandom(5);
        for (int i = 0; i < 100_000; i++) {
            double x = random.nextDouble(-40, 40);
            assertThat(Exp.exp(x) / StrictMath.exp(x) - 1).isCloseTo(0, within(4.5e-16));
        }
        assertThat(Exp.exp(0)).isEqualTo(1);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 20_261_125})
    void contentsFromTensionsAndBackLoseNothing(long seed) {
        var random = new SplittableRandom(seed);
        var forward = new BloodPoint();
        var back = new BloodPoint();
        for (int i = 0; i < 20_000; i++) {
            Blood blood = anyBlood(random);
            double po2 = StrictMath.exp(random.nextDouble(StrictMath.log(3), StrictMath.log(700)));
            double pco2 = StrictMath.exp(random.nextDouble(StrictMath.log(5), StrictMath.log(200)));
            forward.ofTensions(blood, po2, pco2);
            assertThat(forward.po2MmHg).isCloseTo(po2, within(1e-9 * po2));
            assertThat(forward.pco2MmHg).isCloseTo(pco2, within(1e-9 * pco2));
            back.ofContents(blood, forward.oxygenMlPerDl, forward.carbonDioxideMlPerDl);
            assertThat(back.po2MmHg).as("PO2 of %s, %s", po2, pco2).isCloseTo(po2, within(1e-6));
            assertThat(back.pco2MmHg).isCloseTo(pco2, within(1e-6));
        }
        assertThat(back.fallbacks + forward.fallbacks).as("searches that needed bisection, of 40 000").isLessThan(40);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {3, 4})
    void newtonAndNestedBisectionFindTheSamePoint(long seed) {
        var random = new SplittableRandom(seed);
        var fast = new BloodPoint();
        var slow = new BloodPoint();
        for (int i = 0; i < 300; i++) {
            Blood blood = anyBlood(random);
            fast.ofTensions(blood, random.nextDouble(5, 650), random.nextDouble(8, 150));
            double o2 = fast.oxygenMlPerDl, co2 = fast.carbonDioxideMlPerDl;
            slow.ofContents(blood, o2, co2);
            slow.again(blood);
            fast.ofContents(blood, o2, co2);
            assertThat(fast.po2MmHg).isCloseTo(slow.po2MmHg, within(1e-6));
            assertThat(fast.pco2MmHg).isCloseTo(slow.pco2MmHg, within(1e-6));
            double dry = 713, total = random.nextDouble(50, 3000), dl = total * random.nextDouble(0.0001, 0.01), venous = random.nextDouble(0.3, 0.95);
            double fo2 = random.nextDouble(0.05, 0.95), fco2 = random.nextDouble(0, 0.1);
            fast.ofExchange(blood, fo2 * total, fco2 * total, total, dl, venous * o2, co2, dry);
            double po2 = fast.po2MmHg, pco2 = fast.pco2MmHg;
            fast.again(blood);
            assertThat(po2).as("exchange, oxygen").isCloseTo(fast.po2MmHg, within(1e-6 * Math.max(1, po2)));
            assertThat(pco2).as("exchange, carbon dioxide").isCloseTo(fast.pco2MmHg, within(1e-6 * Math.max(1, pco2)));
        }
    }

    /** A body without oxygen, for days where a plan runs dry, must not cost a bisection at every step. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {5, 6})
    void bloodWithoutOxygenIsFoundWithoutBisection(long seed) {
        var random = new SplittableRandom(seed);
        var fast = new BloodPoint();
        var slow = new BloodPoint();
        for (int i = 0; i < 300; i++) {
            Blood blood = anyBlood(random);
            slow.ofTensions(blood, 1e-3, random.nextDouble(20, 400));
            double co2 = slow.carbonDioxideMlPerDl, dl = random.nextDouble(0.1, 3), store = random.nextDouble(1, 40);
            fast.u = random.nextDouble(-9, 5);
            fast.h = random.nextDouble(-0.8, 0.1);
            slow.ofContents(blood, 0, co2);
            slow.again(blood);
            fast.ofContents(blood, 0, co2);
            assertThat(fast.pco2MmHg).as("contents").isCloseTo(slow.pco2MmHg, within(1e-6 * slow.pco2MmHg));
            assertThat(fast.h).isCloseTo(slow.h, within(1e-9));
            slow.ofTissue(blood, 0, store, dl, store * slow.pco2MmHg + dl * co2);
            slow.again(blood);
            fast.ofTissue(blood, 0, store, dl, store * fast.pco2MmHg + dl * co2);
            assertThat(fast.pco2MmHg).as("tissue").isCloseTo(slow.pco2MmHg, within(1e-6 * slow.pco2MmHg));
            double total = random.nextDouble(500, 3000), fco2 = random.nextDouble(0.05, 0.5);
            slow.ofExchange(blood, 0, fco2 * total, total, dl / 10, 0, co2, 713);
            slow.again(blood);
            fast.ofExchange(blood, 0, fco2 * total, total, dl / 10, 0, co2, 713);
            assertThat(fast.pco2MmHg).as("exchange").isCloseTo(slow.pco2MmHg, within(1e-6 * slow.pco2MmHg));
            assertThat(fast.po2MmHg).isLessThan(1e-2);
        }
        assertThat(fast.fallbacks).as("of 900 searches").isLessThan(10);
    }

    @Test
    void theFusedCurvesAreThePlainFormulas() {
        var random = new SplittableRandom(9);
        var point = new BloodPoint();
        for (int i = 0; i < 5000; i++) {
            Blood b = anyBlood(random);
            point.at(b, random.nextDouble(1, 6.5), random.nextDouble(-0.5, 0.35));
            assertThat(point.saturation).isCloseTo(OxygenDissociation.saturation(point.po2MmHg, point.ph(), b.temperatureCel, b.p50MmHg), within(1e-11));
            assertThat(point.oxygenMlPerDl).isCloseTo(OxygenContent.mlPerDl(b.haemoglobinGPerDl, point.saturation, point.po2MmHg, b.inactive), within(1e-11));
            assertThat(point.pco2MmHg).isCloseTo(AcidBase.pco2MmHg(point.ph(), b.baseExcessMmolL, b.haemoglobinGPerDl, point.saturation), within(1e-8));
            if (point.pco2MmHg > 1) {
                assertThat(AcidBase.baseExcessMmolL(point.ph(), point.pco2MmHg, b.haemoglobinGPerDl, point.saturation)).isCloseTo(b.baseExcessMmolL, within(1e-9));
                assertThat(AcidBase.phOf(point.pco2MmHg, b.baseExcessMmolL, b.haemoglobinGPerDl, point.saturation)).isCloseTo(point.ph(), within(1e-9));
            }
            assertThat(point.carbonDioxideMlPerDl).isCloseTo(
                    CarbonDioxideContent.mlPerDl(point.pco2MmHg, point.ph(), b.haemoglobinGPerDl, point.saturation, b.temperatureCel), within(1e-8));
        }
    }

    @Test
    void contentsRiseWithTensions() {
        Blood blood = Blood.adult(15, 0, 37);
        var point = new BloodPoint();
        double o2 = -1, co2 = -1;
        for (double p = 1; p < 650; p *= 1.05) {
            point.ofTensions(blood, p, 40);
            assertThat(point.oxygenMlPerDl).isGreaterThan(o2);
            o2 = point.oxygenMlPerDl;
        }
        for (double p = 1; p < 250; p *= 1.05) {
            point.ofTensions(blood, 90, p);
            assertThat(point.carbonDioxideMlPerDl).as("content at %s mmHg", p).isGreaterThan(co2);
            co2 = point.carbonDioxideMlPerDl;
        }
    }

    private static Blood anyBlood(SplittableRandom random) {
        return new Blood(random.nextDouble(4, 22), random.nextDouble(-14, 12), random.nextBoolean() ? 37 : random.nextDouble(32, 41),
                random.nextDouble(18, 30), random.nextInt(4) == 0 ? random.nextDouble(0, 0.3) : 0);
    }
}
