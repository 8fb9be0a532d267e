package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import leeway.core.kit.Battery;
import leeway.core.kit.Kit;
import leeway.core.supply.SupplyResult.Take;
import leeway.core.supply.SupplyResult.TakeItem;

/**
 * The fewest spare packs: the least mass, then the fewest items, that meets the policy's risk and reserve of charge.
 * <p>Spares are full, one year old and follow the file's own packs, wherever a leg runs on a pack; every set meets the same draws of the
 * journey. Sets are tried from the lightest upwards and more packs never last shorter, so the first that is enough is the
 * smallest. Leaves out the minutes of a swap, charging of spares, and their own gauge errors (they are full).
 */
final class PackKitting {
    /** Of a spare where nobody says otherwise, as in a transport file. */
    private static final double AGE_YEARS = 1;
    private static final int CYCLES = 100;
    /** More sets than this are not tried; then nothing is said. */
    private static final int MOST_SETS = 20_000;

    private final Route route;
    private final List<Kit.Pack> kinds;
    private final int draws;
    private final Chances chances;
    /** By draw in which there are any, and leg: minutes that the file's own packs leave unfed. */
    private final List<double[]> unfedMin;
    private final double[] medianUnfedMin;
    private final double medianLastsMin;

    private record Set(int[] counts, int last, double massKg, int items) { }

    PackKitting(Route route, Chances chances, List<Kit.Pack> kinds, Drawn drawn) {
        this.route = route;
        this.chances = chances;
        this.kinds = !route.powered ? List.of() : kinds.stream().filter(k -> k.battery().isPresent() && k.count() > 0).toList();
        draws = drawn.draws;
        medianUnfedMin = new double[route.legs];
        if (this.kinds.isEmpty()) {
            unfedMin = List.of();
            medianLastsMin = 0;
            return;
        }
        Trial trial = new Trial(route);
        trial.fill();
        medianLastsMin = unfed(route.medianMin, trial.chargeWh, medianUnfedMin);
        unfedMin = unfed();
    }

    /** The draws in which the file's own packs do not last; the others need no spares. */
    private List<double[]> unfed() {
        double[][] minutes = new double[route.legs][];
        double[][] wh = new double[route.packs][draws];
        for (int l = 0; l < minutes.length; l++) minutes[l] = chances.minutes(l);
        for (int b = 0; b < wh.length; b++) chances.charge(b, 0, draws, wh[b]);
        List<double[]> all = new ArrayList<>();
        double[] inDrawMin = new double[route.legs];
        double[] inDrawWh = new double[route.packs];
        for (int d = 0; d < draws; d++) {
            for (int l = 0; l < inDrawMin.length; l++) inDrawMin[l] = minutes[l][d];
            for (int b = 0; b < inDrawWh.length; b++) inDrawWh[b] = wh[b][d];
            double[] unfed = new double[route.legs];
            unfed(inDrawMin, inDrawWh, unfed);
            for (double min : unfed) {
                if (min <= 0) continue;
                all.add(unfed);
                break;
            }
        }
        return all;
    }

    /** What the file's own packs leave unfed, by leg; the least over the legs on a pack of what they last beyond its end. */
    private double unfed(double[] minutes, double[] wh, double[] out) {
        double least = Double.POSITIVE_INFINITY;
        for (int l = 0; l < route.legs; l++) {
            int b = route.packOfLeg[l];
            if (b < 0) {
                if (route.ownPack >= 0) wh[route.ownPack] = Math.min(route.fullWh[route.ownPack], wh[route.ownPack] + route.chargingW[l] * minutes[l] / 60);
                continue;
            }
            out[l] = route.drain(l, b, minutes[l], wh);
            least = Math.min(least, route.lastsMin(l, wh));
        }
        return least;
    }

    Optional<Take> best() {
        if (kinds.isEmpty()) return Optional.empty();
        PriorityQueue<Set> next = new PriorityQueue<>(Comparator.comparingDouble((Set s) -> Math.rint(s.massKg() * 1e9)).thenComparingInt(Set::items));
        next.add(new Set(new int[kinds.size()], 0, 0, 0));
        for (int tried = 0; tried < MOST_SETS && !next.isEmpty(); tried++) {
            Set s = next.poll();
            double chance = chance(s.counts());
            if (chance >= 0) {
                List<TakeItem> items = new ArrayList<>();
                for (int k = 0; k < kinds.size(); k++) if (s.counts()[k] > 0) items.add(new TakeItem(kinds.get(k).name(), s.counts()[k]));
                return Optional.of(new Take(items, s.massKg(), chance));
            }
            for (int k = s.last(); k < kinds.size(); k++) {
                if (s.counts()[k] >= kinds.get(k).count()) continue;
                int[] counts = s.counts().clone();
                counts[k]++;
                next.add(new Set(counts, k, s.massKg() + massKg(kinds.get(k)), s.items() + 1));
            }
        }
        return Optional.empty();
    }

    static double massKg(Kit.Pack pack) { return pack.massKg().orElse(pack.battery().orElseThrow().massKg()); }

    /** Chance of running flat with these spares; -1 where they do not meet the policy. */
    double chance(int[] counts) {
        if (leastMin(counts) < route.transport.policy().powerReserveMin()) return -1;
        int flat = 0;
        int tolerated = (int) Math.floor(route.transport.policy().powerRisk() * draws + 1e-9);
        chances.look();
        for (double[] unfed : unfedMin) if (feed(counts, unfed, true) < 0 && ++flat > tolerated) return -1;
        return (double) flat / draws;
    }

    /** At medians: what is left beyond the leg with the least. */
    private double leastMin(int[] counts) {
        double spare = feed(counts, medianUnfedMin, false);
        return spare < 0 ? spare : medianLastsMin + spare;
    }

    /** What these spares last after the unfed minutes, in the leg that takes the most, min; below 0 where they are too few. */
    private double feed(int[] counts, double[] unfed, boolean only) {
        int k = 0;
        int left = counts.length == 0 ? 0 : counts[0];
        double wh = left > 0 ? full(0) : 0;
        for (int l = 0; l < route.legs; l++) {
            if (route.packOfLeg[l] < 0) continue;
            double rest = unfed[l];
            while (rest > 1e-12) {
                while (left == 0 && ++k < counts.length) {
                    left = counts[k];
                    wh = left > 0 ? full(k) : 0;
                }
                if (left == 0) return -rest;
                double perMin = route.whPerMin[l] / Charge.shareAt(battery(k), route.legCel[l]);
                double gives = Math.min(rest, wh / perMin);
                wh -= gives * perMin;
                rest -= gives;
                if (wh <= 1e-12) {
                    left--;
                    wh = left > 0 ? full(k) : 0;
                }
            }
        }
        if (only) return 0;
        double min = Double.POSITIVE_INFINITY;
        for (int l = 0; l < route.legs; l++) if (route.packOfLeg[l] >= 0) min = Math.min(min, lastsMin(counts, k, left, wh, l));
        return Double.isInfinite(min) ? 0 : min;
    }

    /** How long what is left of the spares lasts in a leg, min: {@code left} of kind k with {@code wh} in the one in use, and all of the kinds after it. */
    private double lastsMin(int[] counts, int k, int left, double wh, int l) {
        double min = 0;
        for (int j = Math.min(k, counts.length); j < counts.length; j++) {
            double total = j == k ? (left > 0 ? wh + (left - 1) * full(j) : 0) : counts[j] * full(j);
            min += total * Charge.shareAt(battery(j), route.legCel[l]) / route.whPerMin[l];
        }
        return min;
    }

    private Battery battery(int k) { return kinds.get(k).battery().orElseThrow(); }

    private double full(int k) { return Charge.capacityWh(battery(k), AGE_YEARS, CYCLES) * (1 - battery(k).cutOff()); }
}
