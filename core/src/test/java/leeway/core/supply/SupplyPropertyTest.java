package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.pure;
import static leeway.core.supply.Kits.transport;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import leeway.core.gas.RealOxygen;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SupplyPropertyTest {
    private static final List<LegNeed> NEEDS = List.of(pure(6), pure(8), pure(5));
    private static final int N = 20_000;

    private static Transport holding(double litres, Store.Gauge gauge) {
        double bar = 200;
        double water = litres / RealOxygen.usableL(1, bar, 15, 0);
        return transport(List.of(cylinder("o", water, bar, 15, 1, 0, gauge)), leg("a", 12, 25, "o"), leg("b", 45, 80, "o"), leg("c", 50, 75, "o"));
    }

    @ParameterizedTest @ValueSource(longs = { 1, 20_261_125 })
    void aStoreThatHoldsTheMedianNeedRunsDryInHalfOfTheJourneysAndOneThatHoldsThe95thPercentileInOneOfTwenty(long seed) {
        var needed = Supply.of(holding(5000, Kits.EXACT), NEEDS, Optional.empty(), 4_711, 400_000).oxygen().neededL();
        for (double[] row : new double[][] { { needed.p50(), 0.5 }, { needed.p95(), 0.05 } }) {
            var result = Supply.of(holding(row[0], Kits.EXACT), NEEDS, Optional.empty(), seed, N).oxygen();
            // three standard errors, and what ±2 K at the reading adds to a scatter thirty times as wide
            assertThat(result.emptyChance()).isCloseTo(row[1], within(3 * Math.sqrt(row[1] * (1 - row[1]) / N) + 0.0005));
            assertThat(result.emptyChanceError()).isCloseTo(Math.sqrt(row[1] * (1 - row[1]) / N), within(2e-4));
        }
    }

    @Test
    void twoSeedsAgreeWithinThreeStandardErrorsAndOneSeedWithItself() {
        Transport t = holding(900, Kits.USUAL);
        var one = Supply.of(t, NEEDS, Optional.empty(), 1, N);
        var two = Supply.of(t, NEEDS, Optional.empty(), 2, N);
        assertThat(one.oxygen().emptyChance()).isNotEqualTo(two.oxygen().emptyChance())
                .isCloseTo(two.oxygen().emptyChance(), within(3 * Math.sqrt(2) * one.oxygen().emptyChanceError()));
        assertThat(Supply.of(t, NEEDS, Optional.empty(), 1, N)).isEqualTo(one);
    }

    @Test
    void aCertainJourneyEndsWhereTheArithmeticSays() {
        Transport t = transport(List.of(cylinder("o", 2, 200, 15, 1, 0, Kits.EXACT)), leg("a", 30, 30, "o"), leg("b", 20, 20, "o"));
        var o = Supply.of(t, List.of(pure(5), pure(10)), Optional.empty(), 1, 2000).oxygen();
        assertThat(o.neededL()).isEqualTo(new SupplyResult.Needed(350, 350, 350));
        assertThat(o.emptyChance()).isZero();
        assertThat(o.usableL()).isCloseTo(423.8, within(0.05));
        assertThat(o.leftAtEndMin()).hasValueCloseTo(7.38, within(0.01));
        assertThat(o.marginMin().orElseThrow().p50()).isCloseTo(7.38, within(0.1));
        assertThat(o.at100Min()).hasValueCloseTo(57.38, within(0.01));
        assertThat(o.handBagMin()).hasValueCloseTo(423.8 / 15, within(0.01));
        assertThat(o.withoutLargestMin()).hasValue(0);
        assertThat(o.turnBackByMin()).hasValue(36); // twice 30 min at 5 L/min, then 6.19 min at 10 there and back
    }

    @Test
    void storesAreUsedInTheOrderOfTheLegAndChangedAtTheirResidualPressure() {
        Transport t = transport(List.of(cylinder("small", 2, 150, 15, 2, 10, Kits.EXACT), cylinder("large", 10, 200, 15, 1, 10, Kits.EXACT)),
                leg("a", 60, 60, "small", "large"), leg("b", 60, 60, "large"));
        var o = Supply.of(t, List.of(pure(15), pure(5)), Optional.empty(), 1, 500).oxygen();
        double one = RealOxygen.usableL(2, 150, 15, 10);
        assertThat(o.changeovers()).extracting(SupplyResult.Changeover::store).containsExactly("small", "small");
        assertThat(o.changeovers().get(0).aboutMin()).isCloseTo(one / 15, within(1e-9));
        assertThat(o.changeovers().get(1).aboutMin()).isCloseTo(2 * one / 15, within(1e-9));
        assertThat(o.changeovers().get(1).to()).isEqualTo("large");
        assertThat(o.changeovers()).allSatisfy(c -> assertThat(c.atGaugeBar()).hasValue(10));
        var end = o.handovers().get(o.handovers().size() - 1);
        assertThat(end.store()).isEqualTo("large");
        double left = RealOxygen.usableL(10, 200, 15, 10) - (15 * 60 - 2 * one) - 5 * 60;
        assertThat(RealOxygen.usableL(10, end.gaugeBar(), 15, 10)).isCloseTo(left, within(0.002 * left)); // the median of 2000 draws of ±2 K
    }

    @Test
    void whatIsDrawnIsWhatTheStoresLoseOnAThousandRandomJourneys() {
        var random = new SplittableRandom(99);
        for (int i = 0; i < 1000; i++) {
            int stores = random.nextInt(1, 5);
            List<Store> oxygen = new ArrayList<>();
            for (int s = 0; s < stores; s++) {
                oxygen.add(random.nextInt(6) == 0 ? Kits.wall("s" + s)
                        : cylinder("s" + s, random.nextDouble(1, 10), random.nextDouble(5, 200), 15, random.nextInt(1, 4), 5, Kits.USUAL));
            }
            int legs = random.nextInt(1, 6);
            Leg[] way = new Leg[legs];
            List<LegNeed> needs = new ArrayList<>();
            for (int l = 0; l < legs; l++) {
                String[] names = random.ints(0, stores).distinct().limit(random.nextInt(1, stores + 1)).mapToObj(s -> "s" + s).toArray(String[]::new);
                double takes = random.nextDouble(2, 120);
                way[l] = leg("leg " + l, takes, takes * random.nextDouble(1, 2.5), names);
                needs.add(pure(random.nextDouble(0, 15)));
            }
            Route route = new Route(transport(oxygen, way), needs);
            Chances chances = new Chances(route, i);
            Trial trial = new Trial(route);
            double[] minutes = new double[legs];
            chances.durations(i, minutes);
            chances.contents(i, trial);
            double before = finite(trial.levelL);
            double[] given = { 0, 0 }; // from stores that end, from endless ones
            trial.walk(minutes, 1 + i % 3, null, (l, from, to, s, had, has) -> given[route.endless[s] ? 1 : 0] += (to - from) * route.draw[0][l][s]);
            double left = finite(trial.levelL);
            twin(route, chances);
            assertThat(before - left).as("journey %s", i).isCloseTo(given[0], within(1e-9 * Math.max(1, before)));
            double demand = 0;
            for (int l = 0; l < legs; l++) demand += minutes[l] * needs.get(l).minuteVolumeLPerMin();
            assertThat(given[0] + given[1] + trial.unmetL).isCloseTo(demand, within(1e-9 * Math.max(1, demand)));
        }
    }

    /** Strides over a block of draws are as many walks. */
    private static void twin(Route route, Chances chances) {
        int n = 5;
        Strides strides = new Strides(route, false);
        strides.block(chances, 0, n, 1, null);
        Trial trial = new Trial(route);
        double[] minutes = new double[route.legs];
        int dry = 0;
        int flat = 0;
        for (int d = 0; d < n; d++) {
            chances.durations(d + 1, minutes);
            chances.contents(d + 1, trial);
            double before = finite(trial.levelL);
            trial.walk(minutes, 1, null, null);
            if (trial.dryLeg >= 0) dry++;
            if (trial.flatLeg >= 0) flat++;
            assertThat(strides.neededL[d]).isCloseTo(trial.neededL, within(1e-9 * Math.max(1, trial.neededL)));
            for (int s = 0; s < route.stores; s++) if (!route.endless[s]) assertThat(strides.levelL[s][d]).isCloseTo(trial.levelL[s], within(1e-9 * Math.max(1, before)));
            for (int b = 0; b < route.packs; b++) assertThat(strides.chargeWh[b][d]).isCloseTo(trial.chargeWh[b], within(1e-9));
        }
        assertThat(strides.dry(n)).isEqualTo(dry);
        assertThat(strides.flat(n)).isEqualTo(flat);
    }

    @Test
    void stridesOverABlockAreWalksAlsoWithPacksSharedDelaysDetoursAndAStartUpCheck() {
        var random = new SplittableRandom(7);
        var v = Kits.ventilator("checks", leeway.core.kit.Ventilator.Drive.TURBINE, new leeway.core.kit.Ventilator.Gas(List.of(leeway.core.kit.Ventilator.Inlet.HIGH_PRESSURE),
                java.util.OptionalDouble.empty(), false, 0, 0, 0, 0, 5, 2.7, 6, false, leeway.core.kit.Ventilator.VolumeBasis.FREE, leeway.core.kit.Ventilator.Altitude.COMPENSATED, 0));
        for (int i = 0; i < 200; i++) {
            var oxygen = List.of(cylinder("a", random.nextDouble(1, 4), 180, 15, 2, 5, Kits.USUAL), cylinder("b", random.nextDouble(1, 4), 120, 15, 1, 5, Kits.EXACT));
            var power = List.of(Kits.pack("own", random.nextDouble(0.2, 1), 1), Kits.mains("socket"));
            Transport t = Kits.transport(v, oxygen, power, List.of(), i % 2 == 0 ? 0.3 : 0, Kits.POLICY, Kits.on(leg("x", 40, 40, "a"), "own", 10),
                    Kits.diverted(Kits.on(leg("y", 60, 90, "a", "b"), "socket", 10), 0.3, 40), Kits.on(leg("z", 50, 80, "b"), "own", 0));
            Route route = new Route(t, List.of(pure(6), pure(5), pure(4)));
            assertThat(route.beforeL[0]).isEqualTo(5);
            twin(route, new Chances(route, i));
        }
    }

    private static double finite(double[] levels) {
        double sum = 0;
        for (double v : levels) if (Double.isFinite(v)) sum += v;
        return sum;
    }

    @Test
    void moreOxygenNeverRunsDrierAndADetourNeverHelps() {
        double last = 1;
        for (double litres = 400; litres < 1400; litres += 100) {
            double chance = Supply.of(holding(litres, Kits.USUAL), NEEDS, Optional.empty(), 5, 5000).oxygen().emptyChance();
            assertThat(chance).isLessThanOrEqualTo(last);
            last = chance;
        }
        Transport t = holding(900, Kits.USUAL);
        Leg[] detour = { t.legs().get(0), Kits.diverted(t.legs().get(1), 0.05, 40), t.legs().get(2) };
        var with = Supply.of(transport(t.oxygen(), detour), NEEDS, Optional.empty(), 5, 5000).oxygen();
        assertThat(with.emptyChance()).isGreaterThan(Supply.of(t, NEEDS, Optional.empty(), 5, 5000).oxygen().emptyChance());
        assertThat(with.analytic()).isEmpty();
    }

    @Test
    void correlatedDelaysWidenTheTail() {
        Transport t = holding(900, Kits.USUAL);
        Transport together = transport(Kits.turbine(leeway.core.kit.Ventilator.VolumeBasis.FREE), t.oxygen(), List.of(), List.of(), 0.3, Kits.POLICY,
                t.legs().toArray(Leg[]::new));
        var apart = Supply.of(t, NEEDS, Optional.empty(), 5, N).oxygen().neededL();
        var joined = Supply.of(together, NEEDS, Optional.empty(), 5, N).oxygen().neededL();
        assertThat(joined.p95()).isGreaterThan(apart.p95() * 1.02);
        assertThat(joined.p50()).isCloseTo(apart.p50(), within(0.02 * apart.p50()));
    }
}
