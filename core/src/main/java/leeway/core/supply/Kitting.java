package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Kit;
import leeway.core.kit.Policy;
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
    private final Chances chances;
    private final int draws;
    /** By leg, by store that stays aboard, by kind; then by draw, the most demanding first. */
    private final double[][] minutes;
    private final double[][] fixedL;
    private final double[][] oneL;
    private final boolean[] replaced;
    private final List<Demand> demands = new ArrayList<>();
    private final Trial trial;
    private final Strides strides;
    /** Kits that meet the policy, none of which holds another; and kits that do not. */
    private final List<int[]> sufficient = new ArrayList<>();
    private final List<int[]> insufficient = new ArrayList<>();
    private final List<Found> best = new ArrayList<>();

    private record Found(int[] counts, double massKg, int items, double chance) { }

    Kitting(Route route, Chances chances, Optional<Kit> kit, Drawn drawn) {
        this.route = route;
        this.chances = chances;
        draws = drawn.draws;
        policy = route.transport.policy();
        trial = new Trial(route);
        strides = new Strides(route, false, false);
        replaced = new boolean[route.stores];
        List<Chances.Reading> readings = new ArrayList<>();
        if (kit.isPresent()) kit.get().items().forEach(item -> item(item, readings));
        else own(readings);
        for (Kind k : kinds) replaced[k.slot()] = true;
        minutes = new double[route.legs][];
        fixedL = new double[route.stores][];
        oneL = new double[kinds.size()][];
        if (kinds.isEmpty()) return;
        for (int l = 0; l < route.legs; l++) minutes[l] = chances.minutes(l).clone();
        for (int s = 0; s < route.stores; s++) {
            fixedL[s] = new double[draws];
            if (!replaced[s]) chances.litres(s, 0, draws, fixedL[s]);
        }
        for (int k = 0; k < oneL.length; k++) oneL[k] = readings.get(k).usableL(drawn);
        for (int s = 0; s < route.stores; s++) {
            if (!replaced[s]) continue;
            boolean[] alone = new boolean[route.stores];
            alone[s] = true;
            demand(alone);
        }
        hardestFirst(demand(replaced.clone()));
    }

    /** What is not enough then shows itself in the first block; the chance is that of any order. */
    private void hardestFirst(double[] litres) {
        double hard = Quantiles.ranked(litres, draws, Math.max(0, draws - 2 * Strides.BLOCK));
        for (double[][] columns : List.of(minutes, fixedL, oneL)) {
            for (double[] column : columns) {
                double[] was = column.clone();
                int at = 0;
                for (int d = 0; d < draws; d++) if (litres[d] >= hard) column[at++] = was[d];
                for (int d = 0; d < draws; d++) if (!(litres[d] >= hard)) column[at++] = was[d];
            }
        }
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
     * The litres of each draw.
     */
    private double[] demand(boolean[] slots) {
        double[] need = new double[draws];
        double[] aboard = new double[draws];
        boolean[] counted = new boolean[route.stores];
        for (int l = 0; l < route.legs; l++) {
            boolean only = route.order[l].length > 0;
            double least = Double.POSITIVE_INFINITY;
            for (int s : route.order[l]) {
                only &= slots[s] || !replaced[s] && !route.endless[s];
                least = Math.min(least, leastDraw(l, s));
            }
            if (!only) continue;
            for (int d = 0; d < draws; d++) need[d] += least * minutes[l][d];
            for (int s : route.order[l]) {
                if (replaced[s] || counted[s]) continue;
                counted[s] = true;
                for (int d = 0; d < draws; d++) aboard[d] += fixedL[s][d];
            }
        }
        double[] favour = new double[draws];
        for (int k = 0; k < oneL.length; k++) {
            if (!slots[kinds.get(k).slot()]) continue;
            double median = kinds.get(k).oneL();
            for (int d = 0; d < draws; d++) favour[d] = Math.max(favour[d], oneL[k][d] / median);
        }
        double[] litres = new double[draws];
        for (int d = 0; d < draws; d++) litres[d] = favour[d] > 0 ? Math.max(0, need[d] - aboard[d]) / favour[d] : need[d] > aboard[d] ? Double.POSITIVE_INFINITY : 0;
        // with acts that change stores on the way any leg may use another store: no bound holds then
        double least = route.acts.changeTo.length > 0 ? 0 : Quantiles.ranked(litres, draws, Math.max(0, draws - 1 - tolerated()));
        demands.add(new Demand(slots, least * (1 - 1e-9)));
        return litres;
    }

    private double leastDraw(int l, int s) {
        double least = Double.POSITIVE_INFINITY;
        for (double[][] during : route.draw) least = Math.min(least, during[l][s]);
        return least;
    }

    private int tolerated() { return (int) Math.floor(policy.oxygenRisk() * draws + 1e-9); }

    /** The lightest sufficient kits, best first; each needs every one of its items. Empty where not even all of it is enough. */
    List<Take> best() {
        if (kinds.isEmpty()) return List.of();
        int[] all = kinds.stream().mapToInt(Kind::most).toArray();
        if (!enough(all)) return List.of();
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
        if (!enough(counts)) {
            counts[k] = high;
            if (low == high || !enough(counts)) low = high = -1;
            while (high - low > 1) {
                int mid = (low + high) >>> 1;
                counts[k] = mid;
                if (enough(counts)) high = mid; else low = mid;
            }
            counts[k] = high;
        }
        if (counts[k] >= 0) keep(counts, massKg + counts[k] * kinds.get(k).massKg(), items + counts[k]);
        counts[k] = 0;
    }

    /** Whether a kit meets the policy: known where it holds all of one that does, or no more than one that does not. */
    private boolean enough(int[] counts) {
        for (int[] one : sufficient) if (holds(counts, one)) return true;
        for (int[] one : insufficient) if (holds(one, counts)) return false;
        boolean enough = chance(counts) >= 0;
        List<int[]> among = enough ? sufficient : insufficient;
        among.removeIf(one -> enough ? holds(one, counts) : holds(counts, one));
        among.add(counts.clone());
        return enough;
    }

    private static boolean holds(int[] kit, int[] all) {
        for (int k = 0; k < kit.length; k++) if (kit[k] < all[k]) return false;
        return true;
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

    private void keep(int[] counts, double massKg, int items) {
        if (worse(massKg, items)) return;
        int[] less = counts.clone();
        for (int k = 0; k < less.length; k++) {
            if (less[k] == 0) continue;
            less[k]--;
            if (enough(less)) return; // one item too many: the smaller kit is found on its own
            less[k]++;
        }
        best.add(new Found(counts.clone(), massKg, items, chance(counts)));
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
        chances.look();
        int tolerated = tolerated();
        int dry = 0;
        Strides.Source with = new With(counts);
        for (int from = 0; from < draws; from += Strides.BLOCK) {
            int n = Math.min(Strides.BLOCK, draws - from);
            strides.block(with, from, n, 1, null);
            dry += strides.dry(n);
            if (dry > tolerated) return -1;
        }
        return (double) dry / draws;
    }

    /** The journeys' draws with this kit in its places. */
    private final class With implements Strides.Source {
        private final int[] counts;

        With(int[] counts) { this.counts = counts; }

        @Override public void begin(int from, int n) { }

        @Override public void minutes(int leg, int from, int n, double[] out) { Strides.copy(minutes[leg], from, out, 0, n); }

        @Override public void litres(int store, int from, int n, double[] out) {
            Strides.copy(fixedL[store], from, out, 0, n);
            if (!replaced[store]) return;
            for (int k = 0; k < counts.length; k++) {
                if (kinds.get(k).slot() != store) continue;
                for (int i = 0; i < n; i++) out[i] += counts[k] * oneL[k][from + i];
            }
            for (int i = 0; i < n; i++) out[i] = Math.max(0, out[i] - route.beforeL[store]);
        }

        @Override public void charge(int pack, int from, int n, double[] out) { throw new AssertionError("charge is not asked for"); }
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
