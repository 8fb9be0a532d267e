package leeway.core.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
import leeway.core.kit.Ventilator;
import leeway.core.supply.SupplyResult.High;
import leeway.core.supply.SupplyResult.Home;
import leeway.core.supply.SupplyResult.Needed;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.OxygenLeg;
import leeway.core.supply.SupplyResult.OxygenStore;
import leeway.core.supply.SupplyResult.Power;
import leeway.core.supply.SupplyResult.PowerLeg;
import leeway.core.supply.SupplyResult.PowerPack;
import leeway.core.supply.SupplyResult.Saving;
import leeway.core.supply.SupplyResult.Take;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * Enough oxygen and enough charge? One journey's supply, with its risk.
 * <p>The walk of each leg over its stores, thousands of times with uncertain durations, gauges and temperatures, and once at
 * medians. Leaves out: that draw and lateness grow together when a patient gets worse, the cooling of a cylinder that is
 * emptied fast, flow limits of regulators, the electrical need of a concentrator.
 */
public final class Supply {
    /** Draws where nobody says otherwise. */
    public static final int DRAWS = 10_000;

    private Supply() { }

    /**
     * @param needs one a leg, in order: what the patient needs there
     * @param kit   what can be carried instead; empty: more or fewer of the file's own cylinders
     */
    public static SupplyResult of(Transport transport, List<LegNeed> needs, Optional<Kit> kit, long seed, int draws) { return of(transport, needs, kit, List.of(), seed, draws); }

    /** The same, with ventilators that could be taken instead. */
    public static SupplyResult of(Transport transport, List<LegNeed> needs, Optional<Kit> kit, List<Ventilator> others, long seed, int draws) {
        return of(transport, needs, kit, others, seed, draws, () -> false);
    }

    /** The same; stops with {@link leeway.core.run.Stopped} soon after it is told to be unwanted. */
    public static SupplyResult of(Transport transport, List<LegNeed> needs, Optional<Kit> kit, List<Ventilator> others, long seed, int draws, BooleanSupplier unwanted) {
        Route route = new Route(transport, needs);
        Drawn drawn = new Drawn(seed, draws, unwanted);
        Chances chances = new Chances(route, drawn);
        Journey journey = new Journey(route, chances, draws, true);
        Nominal nominal = new Nominal(route);
        Findings findings = new Findings(route);
        List<Take> kits = new Kitting(route, chances, kit, drawn).best();
        Oxygen oxygen = oxygen(route, journey, nominal, kits, Savings.of(route, others, drawn), high(route, drawn));
        Optional<Power> power = power(route, journey, new PackKitting(route, chances, kit.map(Kit::packs).orElse(List.of()), drawn).best());
        Optional<Home> home = new Homeward(route, nominal.end).home();
        findings.judge(oxygen, power, home, kit);
        return new SupplyResult(oxygen, power, home, findings.reasons, findings.remarks, findings.assumed);
    }

    private static Oxygen oxygen(Route route, Journey journey, Nominal nominal, List<Take> kits, List<Saving> savings, Optional<High> high) {
        Transport t = route.transport;
        Policy policy = t.policy();
        Route at100 = new Route(t, route.needs, n -> n.withFio2(1), null);
        List<OxygenLeg> byLeg = new ArrayList<>();
        for (int l = 0; l < route.legs; l++) {
            Leg leg = t.legs().get(l);
            int first = route.order[l].length > 0 ? route.order[l][0] : -1;
            OxygenDraw draw = first >= 0 ? OxygenDraw.of(t.ventilator(), route.needs.get(l), t.oxygen().get(first)) : OxygenDraw.of(t.ventilator(), route.needs.get(l));
            byLeg.add(new OxygenLeg(leg.name(), draw.oxygenLPerMin(), draw.oxygenLPerMin() * route.medianMin[l], leg.oxygen(), draw.fio2(),
                    first >= 0 ? at100.draw[0][l][first] : draw.oxygenLPerMin(), draw.working()));
        }
        List<OxygenStore> stores = new ArrayList<>();
        double usableL = 0;
        int largest = -1;
        for (int s = 0; s < route.stores; s++) {
            Store store = t.oxygen().get(s);
            stores.add(store(route, journey, s, store));
            if (route.endless[s] || !route.named[s]) continue;
            usableL += route.usableL[s];
            if (store.count() > 0 && (largest < 0 || route.oneL[s] > route.oneL[largest])) largest = s;
        }
        double chance = journey.dryChance();
        int last = route.legs - 1;
        double lastDraw = byLeg.get(last).drawLPerMin();
        return new Oxygen(byLeg, stores, journey.needed(), usableL, chance, Journey.error(chance, journey.draws), journey.margin(), nominal.leftAtEndMin(),
                nominal.changeovers(), nominal.handovers(journey), largest < 0 ? OptionalDouble.empty() : Nominal.untilDry(route, largest),
                Nominal.untilDry(at100, -1), Nominal.untilDry(new Route(t, route.needs, n -> n, OxygenDraw.HAND_BAG_L_PER_MIN), -1), nominal.turnBackByMin(),
                policy.reserveMin() * lastDraw, kits.stream().findFirst(), kits.stream().skip(1).toList(), savings, analytic(route), journey.storeSeries,
                Arrays.stream(route.beforeL).sum(), high, walls(route));
    }

    /** The journey where the ventilator gives more oxygen than is set, by its sheet's error, all the way. */
    private static Optional<High> high(Route route, Drawn drawn) {
        Route high = Route.high(route.transport, route.needs);
        if (Arrays.deepEquals(high.draw, route.draw)) return Optional.empty();
        Journey journey = new Journey(high, new Chances(high, drawn), drawn.draws, false);
        List<Double> draw = new ArrayList<>();
        for (int l = 0; l < route.legs; l++) {
            int first = route.order[l].length > 0 ? route.order[l][0] : 0;
            draw.add(high.draw[0][l][first]);
        }
        return Optional.of(new High(route.transport.ventilator().gas().fio2Error(), draw, journey.needed(), journey.dryChance()));
    }

    /** A table for each kind of cylinder of the legs, at the temperature of its reading and the largest draw on it. */
    private static List<WallTable> walls(Route route) {
        List<WallTable> tables = new ArrayList<>();
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            if (store.type() != Store.Type.CYLINDER || !route.named[s]) continue;
            double most = 0;
            for (int l = 0; l < route.legs; l++) for (int other : route.order[l]) if (other == s) most = Math.max(most, route.draw[0][l][s]);
            if (most <= 0) continue;
            WallTable table = WallTable.of(store.waterL().orElseThrow(), route.readAtCel[s], store.residualBar(), store.pressureBar().orElseThrow(), most);
            if (tables.stream().noneMatch(t -> t.of().equals(table.of()))) tables.add(table);
        }
        return tables;
    }

    private static OxygenStore store(Route route, Journey journey, int s, Store store) {
        OptionalDouble none = OptionalDouble.empty();
        if (route.endless[s]) return new OxygenStore(store.name(), store.count(), none, none, none, none);
        OptionalDouble empty = route.named[s] ? OptionalDouble.of((double) journey.emptied[s] / journey.draws) : none;
        OptionalDouble usable = OptionalDouble.of(route.usableL[s]);
        if (store.type() == Store.Type.LIQUID) return new OxygenStore(store.name(), store.count(), usable, usable, none, empty);
        double bar = store.pressureBar().orElseThrow();
        double free = RealOxygen.freeGasL(store.waterL().orElseThrow(), bar, route.readAtCel[s]) * store.count();
        return new OxygenStore(store.name(), store.count(), OptionalDouble.of(free), usable, OptionalDouble.of(RealOxygen.zAtGauge(bar, route.readAtCel[s])), empty);
    }

    private static Optional<Needed> analytic(Route route) {
        if (!route.plain() || route.transport.delayCorrelation() > 0) return Optional.empty();
        double[] weight = new double[route.legs];
        boolean any = false;
        for (int l = 0; l < route.legs; l++) {
            if (route.order[l].length == 0) return Optional.empty();
            int first = route.order[l][0];
            weight[l] = route.endless[first] ? 0 : route.draw[0][l][first];
            any |= weight[l] > 0;
        }
        if (!any) return Optional.empty();
        LognormalSum sum = LognormalSum.of(weight, route.medianMin, route.sigma);
        return Optional.of(new Needed(sum.quantile(0.5), sum.quantile(0.95), sum.quantile(0.99)));
    }

    private static Optional<Power> power(Route route, Journey journey, Optional<Take> take) {
        if (!route.powered) return Optional.empty();
        Transport t = route.transport;
        List<PowerLeg> byLeg = new ArrayList<>();
        double[] coldest = new double[route.packs];
        Arrays.fill(coldest, 1);
        boolean[] used = new boolean[route.packs];
        for (int l = 0; l < route.legs; l++) {
            int b = route.packOfLeg[l];
            String from = b >= 0 ? route.packName(b) : t.legs().get(l).power().orElse("outside");
            byLeg.add(new PowerLeg(t.legs().get(l).name(), route.loadW[l], route.loadW[l] * route.medianMin[l] / 60, from));
            for (int k = b; k >= 0; k = route.nextPack[k]) {
                coldest[k] = used[k] ? Math.min(coldest[k], route.shareAt[k][l]) : route.shareAt[k][l];
                used[k] = true;
            }
        }
        List<PowerPack> packs = new ArrayList<>();
        double usable = 0;
        for (int b = 0; b < route.packs; b++) {
            double share = used[b] ? coldest[b] : route.shareAt[b][0];
            packs.add(new PowerPack(route.packName(b), route.capacityWh[b], route.startWh[b] * share));
            if (used[b]) usable += route.startWh[b] * share;
        }
        double chance = journey.flatChance();
        return Optional.of(new Power(Quantiles.of(journey.neededWh, journey.draws, 0.5), usable, chance, Journey.error(chance, journey.draws),
                Journey.quantile(journey.powerMarginMin, 0.5), Journey.quantile(journey.powerMarginMin, 0.05), Nominal.untilFlat(route, false), byLeg, packs,
                journey.packSeries, take));
    }
}
