package leeway.core.settings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;

/** What the solver may move, and to which values: the device's steps within the strategy's bounds, thinned where they are many. */
final class Levers {
    /** The most values of one lever. */
    private static final int MOST = 41;
    /** How much more a move of the volume weighs than one of the rate: a strategy names its volume first. Common practice, no source. */
    private static final double VOLUME_STAYS = 10;
    /** In this order they are moved: what ventilates first, then oxygen, then the shape of the breath. */
    private static final List<Setting> ORDER = List.of(Setting.TIDAL_VOLUME, Setting.INSPIRATORY_PRESSURE, Setting.SUPPORT_PRESSURE, Setting.RATE,
            Setting.FIO2, Setting.INSPIRATORY_TIME, Setting.PEEP);
    private final EnumMap<Setting, double[]> values = new EnumMap<>(Setting.class);
    private final EnumMap<Setting, Double> spans = new EnumMap<>(Setting.class);

    Levers(Strategy strategy, Rules rules, Ventilator device, Settings prescribed, Settings start) {
        Set<Setting> needed = start.mode().map(Needs::essential).orElseGet(() -> EnumSet.copyOf(start.values().keySet()));
        for (Setting s : ORDER) {
            Strategy.Rule rule = strategy.rules().get(s);
            if (rule == null || !rule.movable() || prescribed.has(s) || s == Setting.INSPIRATORY_TIME && prescribed.inspiratoryShare().isPresent() || !needed.contains(s)) continue;
            Range range = device.ranges().get(s);
            if (range == null && device.drive() != Ventilator.Drive.HAND) continue;
            double from = rules.in(rule.from().get(), s.unit());
            double to = rules.in(rule.to().get(), s.unit());
            double[] v = steps(s, range == null ? new Range(from, to, 0) : range, from, to, start.get(s, from));
            if (v.length > 1) {
                values.put(s, v);
                spans.put(s, Math.max(1e-9, to - from));
            }
        }
    }

    private static double[] steps(Setting s, Range range, double from, double to, double start) {
        double low = Math.max(from, range.min());
        double high = Math.min(to, range.max());
        double step = Math.max(Math.max(range.step(), usual(s)), (high - low) / (MOST - 1));
        if (range.step() > 0) step = Math.ceil(step / range.step() - 1e-9) * range.step();
        List<Double> out = new ArrayList<>();
        for (double x = Math.max(range.min(), low); x <= high + 1e-9 && step > 0; x += step) add(out, range.nearest(x), low, high);
        add(out, range.nearestBelow(high), low, high);
        add(out, start, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        return out.stream().mapToDouble(Double::doubleValue).sorted().distinct().toArray();
    }

    private static void add(List<Double> out, double x, double low, double high) {
        if (x >= low - 1e-9 && x <= high + 1e-9) out.add(x);
    }

    /** The finest step worth trying; common practice, no source. */
    private static double usual(Setting s) {
        return switch (s) {
            case RATE, INSPIRATORY_PRESSURE, SUPPORT_PRESSURE, PEEP -> 1;
            case FIO2, INSPIRATORY_TIME -> 0.05;
            case TIDAL_VOLUME -> 1;
            default -> 0;
        };
    }

    Set<Setting> settings() { return values.keySet(); }

    boolean has(Setting s) { return values.containsKey(s); }

    double[] of(Setting s) { return values.get(s); }

    /** How far a choice lies from the start, each lever as a share of its bounds; the volume for the weight moves last. */
    double distance(Map<Setting, Double> moved, Settings start) {
        double sum = 0;
        for (Map.Entry<Setting, Double> e : moved.entrySet()) {
            double share = Math.abs(e.getValue() - start.get(e.getKey(), e.getValue())) / spans.getOrDefault(e.getKey(), 1.0);
            sum += (e.getKey() == Setting.TIDAL_VOLUME ? VOLUME_STAYS : 1) * share;
        }
        return sum;
    }
}
