package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leeway.core.gas.Blend;
import leeway.core.kit.Ventilator;
import leeway.core.supply.SupplyResult.Saving;
import leeway.core.transport.Store;

/**
 * What one change would save, each alone, on the same draws of the journey: less oxygen, another mixture, no bias flow or leak, a
 * shorter leg, another ventilator. Leaves out what the patient says to it: a lower FiO2 lowers the saturation.
 */
final class Savings {
    /** Enough for litres at the median; the chance beside it has a standard error of at most 1.2 points. */
    private static final int DRAWS = 2000;
    private static final double LOWER_FIO2 = 0.10;
    private static final double SHORTER = 0.25;
    /** Less is not worth a line, L. */
    private static final double WORTH_L = 1;

    private Savings() { }

    /**
     * @param others ventilators that the service could take instead; the one that saves most is named
     */
    static List<Saving> of(Route route, List<Ventilator> others, Drawn drawn) {
        int n = Math.min(drawn.draws, DRAWS);
        double now = litres(journey(route, drawn, n));
        List<Saving> all = new ArrayList<>();
        Ventilator v = route.transport.ventilator();
        double lowest = v.drive() == Ventilator.Drive.PNEUMATIC ? v.gas().entrainedFio2().orElse(1) : Blend.AIR;
        needs(all, route, drawn, n, now, "FiO2 10 points lower", need -> need.withFio2(Math.max(Math.min(need.fio2(), lowest), need.fio2() - LOWER_FIO2)));
        if (v.drive() == Ventilator.Drive.PNEUMATIC && lowest < 1) {
            needs(all, route, drawn, n, now, String.format(Locale.ROOT, "its air mixture of %.0f %%", lowest * 100), need -> need.withFio2(Math.min(need.fio2(), lowest)));
        }
        needs(all, route, drawn, n, now, "no bias flow", need -> need.withBiasFlowLPerMin(0));
        needs(all, route, drawn, n, now, "no leak", need -> need.withLeakLPerMin(0));
        int longest = 0;
        for (int l = 1; l < route.legs; l++) if (route.medianMin[l] > route.medianMin[longest]) longest = l;
        Route shorter = new Route(route.transport, route.needs);
        shorter.medianMin[longest] *= 1 - SHORTER;
        add(all, String.format(Locale.ROOT, "%s a quarter shorter", route.transport.legs().get(longest).name()), journey(shorter, drawn, n), now);
        other(route, others, drawn, n, now).ifPresent(all::add);
        all.sort(Comparator.comparingDouble(Saving::savesL).reversed());
        return List.copyOf(all);
    }

    /** The same patient, minute volume and wished FiO2 on another ventilator that fits all stores of the legs. */
    private static Optional<Saving> other(Route route, List<Ventilator> others, Drawn drawn, int n, double now) {
        Optional<Saving> best = Optional.empty();
        for (Ventilator other : others) {
            if (other.name().equals(route.transport.ventilator().name()) || !other.machine() || !fits(route, other)) continue;
            Journey journey = journey(new Route(route.transport.with(other), route.needs), drawn, n);
            double saves = now - litres(journey);
            if (saves >= WORTH_L && (best.isEmpty() || saves > best.get().savesL())) best = Optional.of(new Saving("ventilator: " + other.name(), saves, journey.dryChance()));
        }
        return best;
    }

    private static boolean fits(Route route, Ventilator other) {
        for (int s = 0; s < route.stores; s++) {
            Store store = route.transport.oxygen().get(s);
            boolean flow = store.type() == Store.Type.CONCENTRATOR || !store.inlet().highPressure();
            if (route.named[s] && (flow && other.gas().stopsWithoutGas() || !other.gas().inlets().contains(flow ? Ventilator.Inlet.FLOWMETER : Ventilator.Inlet.HIGH_PRESSURE))) return false;
        }
        return true;
    }

    private static void needs(List<Saving> all, Route route, Drawn drawn, int n, double now, String what, UnaryOperator<LegNeed> change) {
        boolean changes = false;
        for (LegNeed need : route.needs) changes |= !change.apply(need).equals(need);
        if (changes) add(all, what, journey(new Route(route.transport, route.needs, change, null), drawn, n), now);
    }

    private static void add(List<Saving> all, String what, Journey journey, double now) {
        double saves = now - litres(journey);
        if (saves >= WORTH_L) all.add(new Saving(what, saves, journey.dryChance()));
    }

    private static Journey journey(Route route, Drawn drawn, int n) { return new Journey(route, new Chances(route, drawn), n, false); }

    private static double litres(Journey journey) { return Quantiles.of(journey.neededL, journey.draws, 0.5); }
}
