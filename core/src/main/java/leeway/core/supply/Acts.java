package leeway.core.supply;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import leeway.core.kit.Setting;
import leeway.core.transport.Event;
import leeway.core.transport.Store;

/**
 * The planned acts of a journey as stretches of time: between two of {@code atMin} nothing changes but the leg.
 * <p>A later act outranks an earlier one while both last. Settings that alter the draw are FiO2, bias flow, rate and tidal
 * volume; others are left out here.
 */
final class Acts {
    /** Moments, minutes from departure, in rising order, at which a stretch ends and the next begins. */
    final double[] atMin;
    /** The events in force in each stretch; one stretch more than moments. */
    final List<List<Event>> during;
    /** Changes of store: when, and to which (index in the transport's list). */
    final double[] changeMin;
    final int[] changeTo;

    Acts(List<Event> events, List<String> stores) {
        TreeSet<Double> moments = new TreeSet<>();
        List<Event> ordered = new ArrayList<>(events);
        ordered.sort(Comparator.comparingDouble(Event::atMin));
        for (Event e : ordered) {
            moments.add(e.atMin());
            if (e.forS().isPresent()) moments.add(e.atMin() + e.forS().getAsDouble() / 60);
        }
        atMin = moments.stream().mapToDouble(Double::doubleValue).toArray();
        during = new ArrayList<>();
        for (int i = 0; i <= atMin.length; i++) {
            double from = i == 0 ? Double.NEGATIVE_INFINITY : atMin[i - 1];
            List<Event> here = new ArrayList<>();
            for (Event e : ordered) {
                double until = e.forS().isPresent() ? e.atMin() + e.forS().getAsDouble() / 60 : Double.POSITIVE_INFINITY;
                if (e.atMin() <= from && from < until) here.add(e);
            }
            during.add(List.copyOf(here));
        }
        List<Event> changes = ordered.stream().filter(e -> e.changeOver().isPresent() && stores.contains(e.changeOver().get())).toList();
        changeMin = changes.stream().mapToDouble(Event::atMin).toArray();
        changeTo = changes.stream().mapToInt(e -> stores.indexOf(e.changeOver().get())).toArray();
    }

    /** What nebuliser and suction take beside the ventilator, L/min; a concentrator has no pressure to drive them. */
    static double usedLPerMin(Store store, List<Event> events) {
        if (store.type() == Store.Type.CONCENTRATOR) return 0;
        double sum = 0;
        for (Event e : events) sum += e.use().map(Event.Use::flowLPerMin).orElse(0.0);
        return sum;
    }

    /** The need of a leg while these events last. */
    static LegNeed changed(LegNeed need, List<Event> events) {
        LegNeed now = need;
        for (Event e : events) {
            if (e.set().has(Setting.FIO2)) now = now.withFio2(e.set().get(Setting.FIO2, now.fio2()));
            if (e.set().has(Setting.BIAS_FLOW)) now = now.withBiasFlowLPerMin(e.set().get(Setting.BIAS_FLOW, 0));
            double rate = e.set().get(Setting.RATE, need.ratePerMin());
            double tidalMl = need.ratePerMin() > 0 ? e.set().get(Setting.TIDAL_VOLUME, need.minuteVolumeLPerMin() / need.ratePerMin() * 1000) : 0;
            if (need.ratePerMin() > 0 && (e.set().has(Setting.RATE) || e.set().has(Setting.TIDAL_VOLUME))) {
                now = now.withMinuteVolumeLPerMin(rate * tidalMl / 1000);
            }
        }
        return now;
    }
}
