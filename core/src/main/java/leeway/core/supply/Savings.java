package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import leeway.core.kit.Ventilator;
import leeway.core.supply.SupplyResult.Saving;

/** What one change would save, each alone, on the same draws of the journey. */
final class Savings {
    /** Enough for litres at the median; the chance beside it has a standard error of at most 1.2 points. */
    private static final int DRAWS = 2000;
    private static final double LOWER_FIO2 = 0.10;
    private static final double SHORTER = 0.25;
    /** Less is not worth a line, L. */
    private static final double WORTH_L = 1;

    private Savings() { }

    static List<Saving> of(Route route, long seed, int draws) {
        int n = Math.min(draws, DRAWS);
        double now = litres(journey(route, seed, n));
        List<Saving> all = new ArrayList<>();
        Ventilator v = route.transport.ventilator();
        double lowest = v.gas().entrainedFio2().orElse(0.21);
        needs(all, route, seed, n, now, "FiO2 10 points lower", need -> need.withFio2(Math.max(Math.min(need.fio2(), lowest), need.fio2() - LOWER_FIO2)));
        needs(all, route, seed, n, now, "no bias flow", need -> need.withBiasFlowLPerMin(0));
        needs(all, route, seed, n, now, "no leak", need -> need.withLeakLPerMin(0));
        int longest = 0;
        for (int l = 1; l < route.legs; l++) if (route.medianMin[l] > route.medianMin[longest]) longest = l;
        Route shorter = new Route(route.transport, route.needs);
        shorter.medianMin[longest] *= 1 - SHORTER;
        add(all, String.format(Locale.ROOT, "%s a quarter shorter", route.transport.legs().get(longest).name()), journey(shorter, seed, n), now);
        all.sort(Comparator.comparingDouble(Saving::savesL).reversed());
        return List.copyOf(all);
    }

    private static void needs(List<Saving> all, Route route, long seed, int n, double now, String what, UnaryOperator<LegNeed> change) {
        boolean changes = false;
        for (LegNeed need : route.needs) changes |= !change.apply(need).equals(need);
        if (changes) add(all, what, journey(new Route(route.transport, route.needs, change, null), seed, n), now);
    }

    private static void add(List<Saving> all, String what, Journey journey, double now) {
        double saves = now - litres(journey);
        if (saves >= WORTH_L) all.add(new Saving(what, saves, journey.dryChance()));
    }

    private static Journey journey(Route route, long seed, int n) { return new Journey(route, new Chances(route, seed), n, false); }

    private static double litres(Journey journey) { return Quantiles.of(journey.neededL, journey.draws, 0.5); }
}
