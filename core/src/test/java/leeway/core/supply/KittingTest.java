package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.pure;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.supply.SupplyResult.Take;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class KittingTest {
    private static final int DRAWS = 1000;

    /** A journey and what can be carried on it. */
    record Case(String name, Transport transport, List<LegNeed> needs, Optional<Kit> kit) {
        @Override public String toString() { return name; }
    }

    private static Policy policy(double risk, double reserveMin, boolean surviveLoss) {
        return new Policy("test", risk, 0.01, reserveMin, 20, surviveLoss, Optional.empty(), null, null, "invented");
    }

    /** Ten journeys: one store or two, a wall at the start, a kit of two to five kinds or the file's own cylinders. */
    static Stream<Case> tenJourneys() {
        var random = new SplittableRandom(10);
        List<Case> cases = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            List<Store> stores = List.of(Kits.wall("wall"), cylinder("bag", 2, 185, 20, 1, 10, Kits.USUAL), cylinder("vehicle", 10, 200, 15, 1, 10, Kits.USUAL));
            Leg[] legs = {
                i % 3 == 0 ? leg("ward", 20, 30, "wall") : leg("ward", 12, 25, "bag"),
                leg("road", random.nextInt(20, 90), 120, i % 2 == 0 ? new String[] { "vehicle", "bag" } : new String[] { "vehicle" }),
                leg("flight", random.nextInt(20, 60), 80, "bag") };
            List<LegNeed> needs = List.of(pure(random.nextDouble(2, 9)), pure(random.nextDouble(2, 9)), pure(random.nextDouble(2, 9)));
            Policy policy = policy(i < 5 ? 0.01 : 0.05, i % 4 * 10, i == 4 || i == 7);
            Transport t = Kits.transport(Kits.turbine(VolumeBasis.FREE), stores, List.of(), List.of(), i == 9 ? 0.3 : 0, policy, legs);
            List<Kit.Item> items = new ArrayList<>(List.of(new Kit.Item("two", 2, 200, 4.0, 4, Optional.of("bag")), new Kit.Item("ten", 10, 200, 16, 2, Optional.of("vehicle"))));
            if (i % 3 > 0) items.add(new Kit.Item("three", 3, 200, 5.5, 2, Optional.of("bag")));
            if (i % 3 > 1) items.add(new Kit.Item("five", 5, 200, 9, 2, Optional.of("vehicle")));
            if (i > 7) items.add(new Kit.Item("light", 2, 300, 3.1, 1, Optional.empty()));
            cases.add(new Case("journey " + (i + 1), t, needs, i == 0 ? Optional.empty() : Optional.of(new Kit("kit", items, "invented"))));
        }
        return cases.stream();
    }

    @ParameterizedTest @MethodSource("tenJourneys")
    void theSmallestKitIsWhatTryingAllOfThemFinds(Case c) {
        Kitting kitting = kitting(c.transport(), c.needs(), c.kit());
        List<Take> ours = kitting.best();
        List<int[]> enough = new ArrayList<>();
        all(kitting, 0, new int[kitting.kinds.size()], enough);
        List<int[]> needed = enough.stream().filter(a -> enough.stream().noneMatch(b -> less(b, a)))
                .sorted(Comparator.comparingDouble((int[] a) -> Math.rint(mass(kitting, a) * 1e9)).thenComparingInt(KittingTest::items)).limit(4).toList();
        assertThat(ours).as("%s of %s kinds", c.name(), kitting.kinds.size()).hasSameSizeAs(needed).isNotEmpty();
        for (int i = 0; i < ours.size(); i++) {
            assertThat(ours.get(i).massKg()).isCloseTo(mass(kitting, needed.get(i)), within(1e-9));
            assertThat(ours.get(i).count()).isEqualTo(items(needed.get(i)));
            assertThat(ours.get(i).emptyChance()).isLessThanOrEqualTo(c.transport().policy().oxygenRisk());
        }
    }

    private static Kitting kitting(Transport t, List<LegNeed> needs, Optional<Kit> kit) {
        Route route = new Route(t, needs);
        Drawn drawn = new Drawn(1, DRAWS, () -> false);
        return new Kitting(route, new Chances(route, drawn), kit, drawn);
    }

    private static void all(Kitting kitting, int k, int[] counts, List<int[]> enough) {
        if (k == counts.length) {
            if (kitting.chance(counts) >= 0) enough.add(counts.clone());
            return;
        }
        for (int n = 0; n <= kitting.kinds.get(k).most(); n++) {
            counts[k] = n;
            all(kitting, k + 1, counts, enough);
        }
        counts[k] = 0;
    }

    private static boolean less(int[] a, int[] b) {
        boolean any = false;
        for (int k = 0; k < a.length; k++) {
            if (a[k] > b[k]) return false;
            any |= a[k] < b[k];
        }
        return any;
    }

    private static double mass(Kitting kitting, int[] counts) {
        double sum = 0;
        for (int k = 0; k < counts.length; k++) sum += counts[k] * kitting.kinds.get(k).massKg();
        return sum;
    }

    private static int items(int[] counts) {
        int sum = 0;
        for (int n : counts) sum += n;
        return sum;
    }

    @Test
    void theFilesOwnCylindersAreEnoughOrNotAsThePlanItselfSays() {
        Case c = tenJourneys().findFirst().orElseThrow();
        Take take = Supply.of(c.transport(), c.needs(), Optional.empty(), 1, DRAWS).oxygen().take().orElseThrow();
        assertThat(plan(c, take, 0, 0).oxygen().emptyChance()).isEqualTo(take.emptyChance());
        assertThat(plan(c, take, 0, 0).reasons()).isEmpty();
        for (var item : take.items()) {
            assertThat(plan(c, take, item.name().equals("bag") ? 1 : 0, item.name().equals("vehicle") ? 1 : 0).reasons()).as("one %s less", item.name()).isNotEmpty();
        }
    }

    private static SupplyResult plan(Case c, Take take, int lessBag, int lessVehicle) {
        List<Store> stores = new ArrayList<>();
        for (Store s : c.transport().oxygen()) {
            int count = take.items().stream().filter(i -> i.name().equals(s.name())).mapToInt(SupplyResult.TakeItem::count).sum()
                    - (s.name().equals("bag") ? lessBag : s.name().equals("vehicle") ? lessVehicle : 0);
            boolean wall = s.type() == Store.Type.WALL;
            stores.add(wall ? s : new Store(s.name(), s.type(), s.size(), s.waterL(), s.pressureBar(), s.readAtCel(), s.liquidL(), s.flowLPerMin(), Math.max(0, count), s.residualBar(),
                    s.gauge(), s.massKg(), s.inlet()));
        }
        Transport t = Kits.transport(c.transport().ventilator(), stores, List.of(), List.of(), c.transport().delayCorrelation(), c.transport().policy(),
                c.transport().legs().toArray(Leg[]::new));
        return Supply.of(t, c.needs(), Optional.empty(), 1, DRAWS);
    }

    @Test
    void twelveKindsAreSearchedWithoutTryingAllAndTheBestIsNoHeavierThanASingleKind() {
        List<Kit.Item> items = new ArrayList<>();
        for (int i = 0; i < 12; i++) items.add(new Kit.Item("kind " + i, 1 + i * 0.7, 200, 2 + i * 0.95 - i % 3 * 0.21, 4, Optional.of("bag")));
        Transport t = Kits.transport(Kits.turbine(VolumeBasis.FREE), List.of(cylinder("bag", 2, 185, 20, 1, 10, Kits.USUAL)), List.of(), List.of(), 0, policy(0.01, 20, false),
                leg("a", 45, 80, "bag"), leg("b", 50, 75, "bag"));
        Kitting kitting = kitting(t, List.of(pure(8), pure(8)), Optional.of(new Kit("many", items, "invented")));
        List<Take> best = kitting.best();
        assertThat(best).hasSize(4);
        for (int k = 0; k < 12; k++) {
            int[] only = new int[12];
            for (only[k] = 0; only[k] <= 4 && kitting.chance(only) < 0; ) only[k]++;
            if (only[k] <= 4) assertThat(best.get(0).massKg()).isLessThanOrEqualTo(mass(kitting, only) + 1e-9);
        }
    }

    @Test
    void aKitWithoutAPlaceIsSaidToBeLeftOutAndNotToBeTooSmall() {
        Transport t = Kits.transport(Kits.turbine(VolumeBasis.FREE), List.of(cylinder("bag", 2, 185, 20, 2, 10, Kits.USUAL)), List.of(), List.of(), 0, policy(0.01, 20, false),
                leg("a", 45, 80, "bag"));
        Kit.Item placeless = new Kit.Item("ten", 10, 200, 16, 2, Optional.of("vehicle"));
        Kit.Item small = new Kit.Item("half", 0.5, 200, 1.5, 1, Optional.of("bag"));
        String leftOut = "Of shelf these are left out: ten. They go in the place of vehicle, and no leg uses a cylinder of that name.";
        String tooSmall = "Not even all cylinders of shelf together meet the policy.";
        assertThat(remarks(t, placeless)).contains(leftOut).doesNotContain(tooSmall);
        assertThat(remarks(t, placeless, small)).contains(leftOut, tooSmall);
        assertThat(remarks(t, small)).contains(tooSmall).noneMatch(r -> r.contains("left out"));
    }

    private static List<String> remarks(Transport t, Kit.Item... items) {
        return Supply.of(t, List.of(pure(8)), Optional.of(new Kit("shelf", List.of(items), "invented")), 1, DRAWS).remarks();
    }

    @Test
    void savingsAreNamedMostFirst() {
        Transport t = Kits.transport(Kits.turbine(VolumeBasis.FREE), List.of(cylinder("bag", 2, 185, 20, 2, 10, Kits.USUAL)), List.of(), List.of(), 0, policy(0.01, 20, false),
                leg("a", 45, 80, "bag"), leg("b", 20, 30, "bag"));
        LegNeed need = Kits.need(8, 0.6).withBiasFlowLPerMin(3);
        var savings = Supply.of(t, List.of(need, need), Optional.empty(), 1, DRAWS).oxygen().savings();
        assertThat(savings).extracting(SupplyResult.Saving::what).containsExactlyInAnyOrder("FiO2 10 points lower", "no bias flow", "a a quarter shorter");
        assertThat(savings).isSortedAccordingTo(Comparator.comparingDouble(SupplyResult.Saving::savesL).reversed());
        assertThat(savings).filteredOn(s -> s.what().equals("no bias flow")).singleElement().satisfies(s -> assertThat(s.savesL()).isCloseTo(65 * 3 * 0.39 / 0.79, within(8.0)));
    }
}
