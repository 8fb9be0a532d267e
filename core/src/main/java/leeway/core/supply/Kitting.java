package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
import leeway.core.run.Draw;
import leeway.core.supply.SupplyResult.Take;
import leeway.core.supply.SupplyResult.TakeItem;
import leeway.core.transport.Store;

/**
 * The smallest kit: the least mass, then the fewest items, that meets the policy's risk, reserve and loss of one cylinder.
 * <p>Every kit meets the same draws of the journey, and a heavier load of any kind never runs drier, so the search is exact:
 * depth first over the counts of each kind, cut where even the lightest filling of what the needs demand at the least would
 * be heavier than what is already found; the last kind's count by bisection. Proven for at most 12 kinds (a test compares
 * with trying all). Leaves out volume, the shape of a rucksack, and batteries.
 */
final class Kitting {
    /** Of the file's own cylinders, where no kit is named: as many of a kind as might be found; common practice, no source. */
    private static final int OWN_MOST = 6;
    /** The best and the next three. */
    private static final int KEPT = 4;
    private static final double SAME_KG = 1e-9;

    /** One kind of cylinder, the store in whose place it goes, what one gives at medians. */
    record Kind(String name, int slot, double oneL, double massKg, int most) { }

    /** A set of stores, and the least litres of new cylinders that must be among them. */
    private record Demand(boolean[] slots, double litres) { }

    final List<Kind> kinds = new ArrayList<>();
    private final Route route;
    private final Policy policy;
    private final int draws;
    private final double[][] minutes;
    private final double[][] fixedL;
    private final double[][] oneL;
    private final boolean[] replaced;
    private final List<Demand> demands = new ArrayList<>();
    private final Trial trial;
    private final List<Found> best = new ArrayList<>();

    private record Found(int[] counts, double massKg, int items, double chance) { }

    Kitting(Route route, Chances chances, Optional<Kit> kit, long seed, int draws) {
        this.route = route;
        this.draws = draws;
        policy = route.transport.policy();
        trial = new Trial(route);
        replaced = new boolean[route.stores];
        List<Chances.Reading> readings = new ArrayList<>();
        if (kit.isPresent()) kit.get().items().forEach(item -> item(item, readings));
        else own(readings);
        for (Kind k : kinds) replaced[k.slot()] = true;
        minutes = new double[draws][route.legs];
        fixedL = new double[draws][];
        oneL = new double[draws][kinds.size()];
        for (int d = 0; d < draws; d++) {
            chances.durations(d + 1, minutes[d]);
            chances.contents(d + 1, trial);
            for (int s = 0; s < route.stores; s++) if (replaced[s]) trial.levelL[s] = 0;
            fixedL[d] = trial.levelL.clone();
            long stream = Draw.stream(seed, d + 1);
            for (int k = 0; k < kinds.size(); k++) oneL[d][k] = readings.get(k).usableL(stream);
        }
        for (int s = 0; s < route.stores; s++) {
            if (!replaced[s]) continue;
            boolean[] alone = new boolean[route.stores];
            alone[s] = true;
            demand(alone);
        }
        demand(replaced.clone());
    }

    private void own(List<Chances.Reading> readings) {
        for (int s = 0; s < route.stores && kinds.size() < 12; s++) {
            Store store = route.transport.oxygen().get(s);
            if (!route.named[s] || store.type() != Store.Type.CYLINDER || route.oneL[s] <= 0) continue;
            double water = store.waterL().orElseThrow();
            double free = RealOxygen.freeGasL(water, store.pressureBar().orElseThrow(), route.readAtCel[s]);
            kinds.add(new Kind(store.name(), s, route.oneL[s], store.massKg().orElse(CylinderSizes.massKg(water, free)), Math.max(OWN_MOST, store.count())));
            readings.add(new Chances.Reading(store.name(), water, store.pressureBar().orElseThrow(), route.readAtCel[s], Route.known(store), store.residualBar(), store.gauge()));
        }
    }

    private void item(Kit.Item item, List<Chances.Reading> readings) {
        int slot = -1;
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            if (!route.named[s] || store.type() != Store.Type.CYLINDER) continue;
            if (item.as().isPresent() ? store.name().equals(item.as().get()) : slot < 0 || legsOn(s) > legsOn(slot)) slot = s;
        }
        if (slot < 0 || item.count() == 0) return;
        Store store = route.transport.oxygen().get(slot);
        double one = RealOxygen.usableL(item.waterL(), item.pressureBar(), route.readAtCel[slot], store.residualBar());
        if (one <= 0) return;
        kinds.add(new Kind(item.name(), slot, one, item.massKg(), item.count()));
        readings.add(new Chances.Reading(item.name(), item.waterL(), item.pressureBar(), route.readAtCel[slot], Route.known(store), store.residualBar(), store.gauge()));
    }

    private int legsOn(int s) {
        int n = 0;
        for (int[] order : route.order) for (int other : order) if (other == s) n++;
        return n;
    }

    /**
     * A lower bound on what must be carried in these places: the legs that can use nothing else. Drawn with the most
     * favourable gauge of all kinds in each draw, and less what stays aboard anyway, so that no sufficient kit is below it.
     */
    private void demand(boolean[] slots) {
        double[] litres = new double[draws];
        int used = 0;
        for (int d = 0; d < draws; d++) {
            double need = 0;
            double aboard = 0;
            boolean[] counted = new boolean[route.stores];
            for (int l = 0; l < route.legs; l++) {
                boolean only = route.order[l].length > 0;
                double least = Double.POSITIVE_INFINITY;
                for (int s : route.order[l]) {
                    only &= slots[s] || !replaced[s] && !route.endless[s];
                    least = Math.min(least, leastDraw(l, s));
                }
                if (!only) continue;
                need += least * minutes[d][l];
                for (int s : route.order[l]) {
                    if (replaced[s] || counted[s]) continue;
                    counted[s] = true;
                    aboard += fixedL[d][s];
                }
            }
            double favour = 0;
            for (int k = 0; k < kinds.size(); k++) if (slots[kinds.get(k).slot()]) favour = Math.max(favour, oneL[d][k] / kinds.get(k).oneL());
            litres[used++] = favour > 0 ? Math.max(0, need - aboard) / favour : need > aboard ? Double.POSITIVE_INFINITY : 0;
        }
        // with acts that change stores on the way any leg may use another store: no bound holds then
        double least = route.acts.changeTo.length > 0 ? 0 : atMost(litres);
        demands.add(new Demand(slots, least * (1 - 1e-9)));
    }

    private double leastDraw(int l, int s) {
        double least = Double.POSITIVE_INFINITY;
        for (double[][] during : route.draw) least = Math.min(least, during[l][s]);
        return least;
    }

    /** The least value that no more than the tolerated number of draws exceed. */
    private double atMost(double[] values) {
        double[] v = values.clone();
        java.util.Arrays.sort(v);
        return v[Math.max(0, draws - 1 - tolerated())];
    }

    private int tolerated() { return (int) Math.floor(policy.oxygenRisk() * draws + 1e-9); }

    /** The lightest sufficient kits, best first; each needs every one of its items. Empty where not even all of it is enough. */
    List<Take> best() {
        if (kinds.isEmpty()) return List.of();
        int[] all = kinds.stream().mapToInt(Kind::most).toArray();
        if (chance(all) < 0) return List.of();
        best.clear();
        search(0, new int[kinds.size()], 0, 0);
        return best.stream().map(f -> {
            List<TakeItem> items = new ArrayList<>();
            for (int k = 0; k < kinds.size(); k++) if (f.counts()[k] > 0) items.add(new TakeItem(kinds.get(k).name(), f.counts()[k]));
            return new Take(items, f.massKg(), f.chance());
        }).toList();
    }

    private void search(int k, int[] counts, double massKg, int items) {
        if (tooHeavy(k, counts, massKg, items)) return;
        Kind kind = kinds.get(k);
        if (k == kinds.size() - 1) {
            last(counts, massKg, items);
            return;
        }
        for (int n = 0; n <= kind.most(); n++) {
            counts[k] = n;
            search(k + 1, counts, massKg + n * kind.massKg(), items + n);
        }
        counts[k] = 0;
    }

    /** The least count of the last kind that is enough, by bisection; more of it is never better. */
    private void last(int[] counts, double massKg, int items) {
        int k = kinds.size() - 1;
        int low = leastLast(counts);
        int high = kinds.get(k).most();
        if (low > high || worse(massKg + low * kinds.get(k).massKg(), items + low)) return;
        counts[k] = low;
        double chance = chance(counts);
        if (chance < 0 && low < high) {
            counts[k] = high;
            double atHigh = chance(counts);
            while (atHigh >= 0 && high - low > 1) {
                int mid = (low + high) >>> 1;
                counts[k] = mid;
                double here = chance(counts);
                if (here >= 0) {
                    high = mid;
                    atHigh = here;
                } else {
                    low = mid;
                }
            }
            counts[k] = high;
            chance = atHigh;
        }
        if (chance >= 0) keep(counts, massKg + counts[k] * kinds.get(k).massKg(), items + counts[k], chance);
        counts[k] = 0;
    }

    private int leastLast(int[] counts) {
        Kind kind = kinds.get(kinds.size() - 1);
        double least = 0;
        for (Demand d : demands) if (d.slots()[kind.slot()]) least = Math.max(least, (d.litres() - litres(d, counts)) / kind.oneL());
        return (int) Math.min(kind.most() + 1.0, Math.ceil(least - 1e-9));
    }

    private double litres(Demand d, int[] counts) {
        double litres = 0;
        for (int k = 0; k < counts.length; k++) if (d.slots()[kinds.get(k).slot()]) litres += counts[k] * kinds.get(k).oneL();
        return litres;
    }

    /** Whether nothing that can still be added makes this a kit worth keeping. */
    private boolean tooHeavy(int from, int[] counts, double massKg, int items) {
        double least = 0;
        for (Demand d : demands) {
            double missing = d.litres() - litres(d, counts);
            if (missing <= 0) continue;
            double lightest = Double.POSITIVE_INFINITY;
            double reach = 0;
            for (int k = from; k < kinds.size(); k++) {
                if (!d.slots()[kinds.get(k).slot()]) continue;
                lightest = Math.min(lightest, kinds.get(k).massKg() / kinds.get(k).oneL());
                reach += kinds.get(k).most() * kinds.get(k).oneL();
            }
            if (reach < missing) return true;
            least = Math.max(least, missing * lightest);
        }
        return worse(massKg + least, items + (least > 0 ? 1 : 0));
    }

    private boolean worse(double massKg, int items) {
        if (best.size() < KEPT) return false;
        Found last = best.get(KEPT - 1);
        return massKg > last.massKg() + SAME_KG || massKg > last.massKg() - SAME_KG && items >= last.items();
    }

    private void keep(int[] counts, double massKg, int items, double chance) {
        if (worse(massKg, items)) return;
        int[] less = counts.clone();
        for (int k = 0; k < less.length; k++) {
            if (less[k] == 0) continue;
            less[k]--;
            if (chance(less) >= 0) return; // one item too many: the smaller kit is found on its own
            less[k]++;
        }
        best.add(new Found(counts.clone(), massKg, items, chance));
        best.sort(Comparator.comparingDouble((Found f) -> Math.rint(f.massKg() / SAME_KG)).thenComparingInt(Found::items));
        if (best.size() > KEPT) best.remove(KEPT);
    }

    /** Chance of running dry with this kit; -1 where it does not meet the policy. */
    double chance(int[] counts) {
        double[] one = new double[kinds.size()];
        for (int k = 0; k < one.length; k++) one[k] = kinds.get(k).oneL();
        fill(route.startL, one, counts, -1);
        trial.walk(route.medianMin, 1, null, null);
        if (leftAtEndMin() < policy.reserveMin()) return -1;
        if (policy.surviveOneLoss() && !survivesLoss(one, counts)) return -1;
        int tolerated = tolerated();
        int dry = 0;
        for (int d = 0; d < draws; d++) {
            fill(fixedL[d], oneL[d], counts, -1);
            trial.walk(minutes[d], 1, null, null);
            if (trial.dryLeg >= 0 && ++dry > tolerated) return -1;
        }
        return (double) dry / draws;
    }

    private boolean survivesLoss(double[] one, int[] counts) {
        int largest = -1;
        double most = 0;
        for (int k = 0; k < counts.length; k++) {
            if (counts[k] > 0 && one[k] > most) {
                most = one[k];
                largest = k;
            }
        }
        int aboard = -1;
        for (int s = 0; s < route.stores; s++) {
            if (!replaced[s] && route.named[s] && !route.endless[s] && route.oneL[s] > most) {
                most = route.oneL[s];
                aboard = s;
            }
        }
        fill(route.startL, one, counts, aboard >= 0 ? -1 : largest);
        if (aboard >= 0) trial.levelL[aboard] -= route.oneL[aboard];
        trial.walk(route.medianMin, 1, null, null);
        return trial.dryLeg < 0;
    }

    private void fill(double[] aboardL, double[] one, int[] counts, int without) {
        trial.fill();
        for (int s = 0; s < route.stores; s++) trial.levelL[s] = replaced[s] ? 0 : aboardL[s];
        for (int k = 0; k < counts.length; k++) trial.levelL[kinds.get(k).slot()] += (counts[k] - (k == without ? 1 : 0)) * one[k];
        for (int s = 0; s < route.stores; s++) if (replaced[s]) trial.levelL[s] = Math.max(0, trial.levelL[s] - route.beforeL[s]);
    }

    private double leftAtEndMin() {
        int last = route.legs - 1;
        double left = 0;
        for (int s : route.order[last]) {
            double rate = route.draw[0][last][s];
            if (route.endless[s] || rate <= 0) return Double.POSITIVE_INFINITY;
            left += trial.levelL[s] / rate;
        }
        return left;
    }
}
