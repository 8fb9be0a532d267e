package leeway.core.supply;

import static leeway.core.supply.Kits.cylinder;
import static leeway.core.supply.Kits.leg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator.VolumeBasis;
import leeway.core.run.Draw;
import leeway.core.run.Stopped;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** Many walks at once against one walk after the other. */
class StridesTest {
    private static final int N = 300;

    private static Store liquid(String name, double litres) {
        return new Store(name, Store.Type.LIQUID, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(litres), OptionalDouble.empty(), 1, 0,
                Kits.EXACT, OptionalDouble.empty(), Kits.HIGH);
    }

    /** One to four legs; acts that alter the draw, turn to another store, drive a nebuliser; walls, liquid, packs one after the other, detours, late together. */
    private static Route any(SplittableRandom random) {
        List<Store> oxygen = new ArrayList<>();
        int stores = random.nextInt(1, 5);
        for (int s = 0; s < stores; s++) {
            int kind = random.nextInt(8);
            oxygen.add(kind == 0 ? Kits.wall("s" + s) : kind == 1 ? liquid("s" + s, random.nextDouble(0.1, 1))
                    : cylinder("s" + s, random.nextDouble(0.5, 5), random.nextDouble(12, 200), 15, random.nextInt(1, 3), 5, kind < 5 ? Kits.USUAL : Kits.EXACT));
        }
        List<PowerStore> power = new ArrayList<>(List.of(Kits.pack("own", random.nextDouble(0.15, 1), 1), Kits.mains("socket")));
        if (random.nextBoolean()) power.add(new PowerStore("spare", false, Optional.of(Kits.PACK), random.nextDouble(0.2, 1), 2, 50, Optional.of("own")));
        Leg[] way = new Leg[random.nextInt(1, 5)];
        List<LegNeed> needs = new ArrayList<>();
        double totalMin = 0;
        for (int l = 0; l < way.length; l++) {
            String[] names = random.ints(0, stores).distinct().limit(random.nextInt(1, stores + 1)).mapToObj(s -> "s" + s).toArray(String[]::new);
            double takes = random.nextDouble(5, 200);
            totalMin += takes;
            way[l] = Kits.on(leg("leg " + l, takes, takes * random.nextDouble(1, 2.5), names), random.nextBoolean() ? "own" : "socket", random.nextDouble(-15, 30));
            if (random.nextInt(4) == 0) way[l] = Kits.diverted(way[l], 0.3, 25);
            needs.add(Kits.need(random.nextDouble(1, 12), random.nextDouble(0.3, 1)));
        }
        List<Event> events = new ArrayList<>();
        for (int e = random.nextInt(4); e > 0; e--) {
            double at = random.nextDouble(0, totalMin);
            switch (random.nextInt(3)) {
                case 0 -> events.add(new Event(at, Settings.NONE.with(Setting.FIO2, 1), OptionalDouble.of(random.nextDouble(60, 3000)), Optional.empty()));
                case 1 -> events.add(new Event(at, Settings.NONE, OptionalDouble.empty(), Optional.of("s" + random.nextInt(stores))));
                default -> events.add(new Event(at, Settings.NONE, OptionalDouble.of(600), Optional.empty(), Optional.of(new Event.Use("nebuliser", 8))));
            }
        }
        Transport t = Kits.transport(Kits.turbine(VolumeBasis.FREE), oxygen, power, events, random.nextInt(3) == 0 ? 0.4 : 0, Kits.POLICY, way);
        return new Route(t, needs);
    }

    @Test
    void aBlockIsAsManyWalksWhateverHappensOnTheWay() {
        var random = new SplittableRandom(12);
        int dry = 0, flat = 0, turned = 0, lossy = 0;
        for (int i = 0; i < 80; i++) {
            Route route = any(random);
            int parts = i % 2 == 0 ? 1 : 3;
            Chances chances = i % 3 == 0 ? new Chances(route, i) : new Chances(route, new Drawn(i, N, () -> false));
            Strides full = new Strides(route, true), short1 = new Strides(route, false);
            int n = Math.min(N, Strides.BLOCK);
            double[][] atEnd = new double[route.stores][];
            full.block(chances, 0, n, parts, (mark, from, count, at) -> {
                if (mark == route.legs * parts) for (int s = 0; s < atEnd.length; s++) atEnd[s] = at.levelL[s].clone();
            });
            short1.block(chances, 0, n, route.lossy ? parts : 1, null);     // what a store loses by itself is taken at the end of each part
            Trial trial = new Trial(route);
            double[] minutes = new double[route.legs];
            int dryHere = 0, flatHere = 0;
            int[] emptied = new int[route.stores];
            for (int d = 0; d < n; d++) {
                chances.durations(d + 1, minutes);
                chances.contents(d + 1, trial);
                trial.walk(minutes, parts, null, null);
                int what = 1000 * i + d;
                near(full.neededL[d], trial.neededL, what);
                near(short1.neededL[d], trial.neededL, what);
                near(full.marginMin[d], trial.marginMin, what);
                near(full.neededWh[d], trial.neededWh, what);
                near(full.powerMarginMin[d], trial.powerMarginMin, what);
                for (int s = 0; s < route.stores; s++) {
                    near(full.levelL[s][d], trial.levelL[s], what);
                    near(short1.levelL[s][d], trial.levelL[s], what);
                    near(atEnd[s][d], trial.levelL[s], what);
                    if (trial.emptied[s]) emptied[s]++;
                }
                for (int b = 0; b < route.packs; b++) near(full.chargeWh[b][d], trial.chargeWh[b], what);
                if (trial.dryLeg >= 0) dryHere++;
                if (trial.flatLeg >= 0) flatHere++;
            }
            assertThat(List.of(full.dry(n), short1.dry(n), full.flat(n), short1.flat(n))).as("journey %s", i).containsExactly(dryHere, dryHere, flatHere, flatHere);
            for (int s = 0; s < route.stores; s++) assertThat(full.emptied(s, n)).as("journey %s, store %s", i, s).isEqualTo(emptied[s]);
            dry += dryHere;
            flat += flatHere;
            if (route.acts.changeTo.length > 0) turned++;
            if (route.lossy) lossy++;
        }
        assertThat(dry).isBetween(1000, 80 * 256 - 1000);
        assertThat(flat).isBetween(1000, 80 * 256 - 1000);
        assertThat(turned).isGreaterThan(15);
        assertThat(lossy).isGreaterThan(10);
    }

    private static void near(double is, double isToBe, int what) {
        if (is != isToBe && !(Double.isNaN(is) && Double.isNaN(isToBe)) && !(Math.abs(is - isToBe) <= 1e-9 * Math.max(1, Math.abs(isToBe)))) throw new AssertionError("journey " + what / 1000 + ", draw " + what % 1000 + ": " + is + ", not " + isToBe);
    }

    @Test
    void whatIsKeptOfTheDrawsIsWhatEachDrawGives() {
        Route route = any(new SplittableRandom(3));
        Drawn drawn = new Drawn(9, 1000, () -> false);
        Chances kept = new Chances(route, drawn), alone = new Chances(route, 9);
        double[] minutes = new double[route.legs], column = new double[1000];
        Trial trial = new Trial(route);
        for (int d = 0; d < 1000; d++) {
            alone.durations(d + 1, minutes);
            for (int l = 0; l < route.legs; l++) assertThat(kept.minutes(l)[d]).isEqualTo(minutes[l]);
            alone.contents(d + 1, trial);
            for (int s = 0; s < route.stores && d % 100 == 0; s++) {
                kept.litres(s, 0, 1000, column);
                assertThat(column[d]).isEqualTo(trial.levelL[s]);
            }
            for (int b = 0; b < route.packs && d % 100 == 0; b++) {
                kept.charge(b, 0, 1000, column);
                assertThat(column[d]).isEqualTo(trial.chargeWh[b]);
            }
        }
        assertThat(new Chances(new Route(route.transport, route.needs), drawn).minutes(0)).isSameAs(kept.minutes(0));
    }

    @Test
    void theChanceOfAKitIsThatOfWalkingEveryDrawWithIt() {
        KittingTest.tenJourneys().forEach(c -> {
            Route route = new Route(c.transport(), c.needs());
            Drawn drawn = new Drawn(1, N, () -> false);
            Kitting kitting = new Kitting(route, new Chances(route, drawn), c.kit(), drawn);
            int[] all = kitting.kinds.stream().mapToInt(Kitting.Kind::most).toArray();
            int[] some = Arrays.stream(all).map(n -> (n + 1) / 2).toArray();
            for (int[] counts : List.of(all, some)) assertThat(kitting.chance(counts)).as(c.name()).isIn(-1.0, walked(route, c, kitting, counts));
        });
    }

    /** Every draw with its own reading of each cylinder, walked alone. */
    private static double walked(Route route, KittingTest.Case c, Kitting kitting, int[] counts) {
        Chances chances = new Chances(route, 1);
        Trial trial = new Trial(route);
        double[] minutes = new double[route.legs];
        List<Chances.Reading> readings = kitting.kinds.stream().map(k -> reading(route, c, k)).toList();
        int dry = 0;
        for (int d = 1; d <= N; d++) {
            chances.durations(d, minutes);
            chances.contents(d, trial);
            for (Kitting.Kind k : kitting.kinds) trial.levelL[k.slot()] = 0;
            for (int k = 0; k < counts.length; k++) trial.levelL[kitting.kinds.get(k).slot()] += counts[k] * readings.get(k).usableL(Draw.stream(1, d));
            trial.walk(minutes, 1, null, null);
            if (trial.dryLeg >= 0) dry++;
        }
        return (double) dry / N;
    }

    private static Chances.Reading reading(Route route, KittingTest.Case c, Kitting.Kind kind) {
        Store slot = route.transport.oxygen().get(kind.slot());
        var item = c.kit().flatMap(kit -> kit.items().stream().filter(i -> i.name().equals(kind.name())).findFirst());
        return new Chances.Reading(kind.name(), item.map(i -> i.waterL()).orElse(slot.waterL().orElse(0)), item.map(i -> i.pressureBar()).orElse(slot.pressureBar().orElse(0)),
                route.readAtCel[kind.slot()], Route.known(slot), slot.residualBar(), slot.gauge());
    }

    @Test
    void theSupplyOfAJourneyStopsWhenNobodyWaitsForIt() {
        Route route = any(new SplittableRandom(5));
        int[] asked = {0};
        assertThatThrownBy(() -> Supply.of(route.transport, route.needs, Optional.empty(), List.of(), 1, 10_000, () -> ++asked[0] > 10)).isInstanceOf(Stopped.class);
        assertThat(asked[0]).isEqualTo(11);
    }
}
