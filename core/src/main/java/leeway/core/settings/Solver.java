package leeway.core.settings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Illness;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.settings.Solved.Conflict;
import leeway.core.settings.Solved.Kept;

/**
 * Finds settings that keep a strategy's targets on the model, in steps that the device has; where none exist it keeps the
 * targets in the strategy's order and names what is given up and why.
 * <p>A search over the device's steps (thinned to {@code 41} a setting): volume or pressure × rate, coarsely and then with
 * halving steps around the best, then oxygen, inspiratory time and PEEP one by one, until nothing improves. As at the bedside,
 * saturation is sought with oxygen and PEEP only, never by breathing more. Where the start keeps every target, and none by a
 * hair, nothing moves; where something moves, it goes a little inside the limits. Leaves out what the model leaves out, and settings between the
 * steps tried.
 */
public final class Solver {
    private static final int ROUNDS = 3;
    /** Points a side of the first, coarse look. */
    private static final int COARSE = 6;
    /** How far inside its limit a target lies in comfort: a tenth of the limit, or of the width of a band. Common practice, no source. */
    private static final double COMFORT = 0.1;
    /** A target that keeps less than this share of its comfort is kept by a hair. Common practice, no source. */
    private static final double HAIR = 0.2;
    private final PatientFacts patient;
    private final Illness illness;
    private final Ventilator device;
    private final Settings prescribed;
    private final Strategy strategy;
    private final Model model;
    private final Suggested start;
    private final Levers levers;
    private final List<Kept> wanted;
    private final Map<Map<Setting, Double>, Point> seen = new HashMap<>();

    private Solver(PatientFacts patient, Illness illness, Ventilator device, Settings prescribed, Strategy strategy, Model model) {
        this.patient = patient;
        this.illness = illness;
        this.device = device;
        this.prescribed = prescribed;
        this.strategy = strategy;
        this.model = model;
        Fitting fitting = new Fitting(patient, illness, device, prescribed, strategy, Map.of(), false);
        this.start = fitting.result();
        this.levers = new Levers(strategy, fitting.rules(), device, prescribed, start.settings());
        this.wanted = new ArrayList<>();
        for (Strategy.Target t : strategy.targets()) {
            wanted.add(new Kept(t.measure(), value(fitting, t.measure(), t.from()), value(fitting, t.measure(), t.to()), OptionalDouble.empty(), 0));
        }
    }

    private static OptionalDouble value(Fitting fitting, Measure m, Optional<leeway.core.expression.Formula> f) {
        return f.isPresent() ? OptionalDouble.of(fitting.rules().in(f.get(), m.unit())) : OptionalDouble.empty();
    }

    /** Settings that keep the targets, or the best compromise with its conflicts. */
    public static Solved solve(PatientFacts patient, Illness illness, Ventilator device, Settings prescribed, Strategy strategy, Model model) {
        return new Solver(patient, illness, device, prescribed, strategy, model).solve();
    }

    /** A choice of levers with what it leads to. */
    private record Point(Map<Setting, Double> moved, Suggested suggested, List<Kept> kept, double unease) { }

    private Solved solve() {
        Point first = at(Map.of());
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < wanted.size(); i++) all.add(i);
        Point best = misses(first).isEmpty() && !scrapes(first, all) ? first : search(first, all);
        List<Conflict> conflicts = new ArrayList<>();
        for (int i : misses(best)) conflicts.add(conflict(best, i));
        return new Solved(explained(first, best), best.kept(), conflicts);
    }

    private Point at(Map<Setting, Double> moved) {
        Point before = seen.get(moved);
        if (before != null) return before;
        Point now = look(moved);
        seen.put(moved, now);
        return now;
    }

    private Point look(Map<Setting, Double> moved) {
        Suggested s = moved.isEmpty() ? start : new Fitting(patient, illness, device, prescribed, strategy, moved, true).result();
        Outlook outlook = model.at(s.settings());
        List<Kept> kept = new ArrayList<>(wanted.size());
        double unease = moved.isEmpty() ? 0 : levers.distance(moved, start.settings());
        for (Kept t : wanted) {
            OptionalDouble v = outlook.of(t.measure());
            double miss = v.isEmpty() ? 0 : Math.max(0, Math.max(t.from().orElse(Double.NEGATIVE_INFINITY) - v.getAsDouble(), v.getAsDouble() - t.to().orElse(Double.POSITIVE_INFINITY)));
            kept.add(new Kept(t.measure(), t.from(), t.to(), v, miss < 1e-6 * Math.max(1, Math.abs(v.orElse(0))) ? 0 : miss));
            if (v.isPresent()) unease += discomfort(t, v.getAsDouble()) / t.measure().matters();
        }
        return new Point(moved, s, kept, unease);
    }

    /** How much nearer to its limits than comfortable a value lies. */
    private static double discomfort(Kept t, double value) {
        double margin = comfort(t);
        return Math.max(0, Math.max(t.from().orElse(Double.NEGATIVE_INFINITY) + margin - value, value - t.to().orElse(Double.POSITIVE_INFINITY) + margin));
    }

    private static double comfort(Kept t) {
        if (t.to().isEmpty()) return t.measure().matters();
        return COMFORT * (t.from().isPresent() ? t.to().getAsDouble() - t.from().getAsDouble() : Math.abs(t.to().getAsDouble()));
    }

    /** True where one of these targets is kept by a hair only. */
    private static boolean scrapes(Point p, List<Integer> order) { return order.stream().anyMatch(i -> scrapes(p.kept().get(i))); }

    private static boolean scrapes(Kept k) {
        return k.miss() == 0 && k.value().isPresent() && discomfort(k, k.value().getAsDouble()) > (1 - HAIR) * comfort(k);
    }

    private static List<Integer> misses(Point p) {
        List<Integer> out = new ArrayList<>();
        for (int i = 0; i < p.kept().size(); i++) if (p.kept().get(i).miss() > 0) out.add(i);
        return out;
    }

    /** True where {@code a} keeps the targets better than {@code b}, in the order given; among equals the one more at ease and nearer to the start. */
    private static boolean better(Point a, Point b, List<Integer> order) {
        for (int i : order) {
            Measure m = a.kept().get(i).measure();
            long missA = Math.round(100 * a.kept().get(i).miss() / m.matters());
            long missB = Math.round(100 * b.kept().get(i).miss() / m.matters());
            if (missA != missB) return missA < missB;
        }
        return a.unease() < b.unease() - 1e-9;
    }

    private Point search(Point from, List<Integer> order) {
        List<Integer> byVentilation = order.stream().filter(i -> !oxygen(wanted.get(i).measure())).toList();
        boolean ventilate = !byVentilation.isEmpty();
        Point best = from;
        for (int round = 0; round < ROUNDS; round++) {
            Point before = best;
            if (ventilate && (missed(best, byVentilation) || scrapes(best, byVentilation))) best = grid(best, byVentilation, round == 0);
            if (levers.has(Setting.FIO2)) best = line(best, Setting.FIO2, order);
            if (ventilate && levers.has(Setting.INSPIRATORY_TIME) && missed(best, byVentilation)) best = line(best, Setting.INSPIRATORY_TIME, byVentilation);
            if (levers.has(Setting.PEEP) && missed(best, order)) best = line(best, Setting.PEEP, order);
            if (best == before) break;
        }
        return best;
    }

    private static boolean oxygen(Measure m) { return m == Measure.SATURATION || m == Measure.PAO2; }

    private static boolean missed(Point p, List<Integer> order) { return order.stream().anyMatch(i -> p.kept().get(i).miss() > 0); }

    /** Volume or pressure × rate: a coarse look at all of it, then halving steps around the best. */
    private Point grid(Point best, List<Integer> order, boolean all) {
        Optional<Setting> size = List.of(Setting.TIDAL_VOLUME, Setting.INSPIRATORY_PRESSURE, Setting.SUPPORT_PRESSURE).stream().filter(levers::has).findFirst();
        if (size.isEmpty()) return levers.has(Setting.RATE) ? line(best, Setting.RATE, order) : best;
        if (!levers.has(Setting.RATE)) return line(best, size.get(), order);
        double[] x = levers.of(size.get());
        double[] y = levers.of(Setting.RATE);
        int dx = Math.max(1, (x.length - 1) / COARSE);
        int dy = Math.max(1, (y.length - 1) / COARSE);
        if (all) for (int i = 0; i < x.length; i += dx) for (int j = 0; j < y.length; j += dy) best = pick(best, size.get(), x[i], y[j], order);
        while (true) {
            int ci = index(x, best.suggested().settings().get(size.get(), x[0]));
            int cj = index(y, best.suggested().settings().get(Setting.RATE, y[0]));
            Point before = best;
            for (int i = ci - dx; i <= ci + dx; i += dx) {
                for (int j = cj - dy; j <= cj + dy; j += dy) if (i >= 0 && i < x.length && j >= 0 && j < y.length) best = pick(best, size.get(), x[i], y[j], order);
            }
            if (best != before) continue;
            if (dx == 1 && dy == 1) return best;
            dx = Math.max(1, dx / 2);
            dy = Math.max(1, dy / 2);
        }
    }

    private Point pick(Point best, Setting size, double x, double y, List<Integer> order) {
        Map<Setting, Double> moved = copy(best.moved());
        moved.put(size, x);
        moved.put(Setting.RATE, y);
        Point p = at(moved);
        return better(p, best, order) ? p : best;
    }

    private Point line(Point best, Setting s, List<Integer> order) {
        for (double v : levers.of(s)) {
            Map<Setting, Double> moved = copy(best.moved());
            moved.put(s, v);
            Point p = at(moved);
            if (better(p, best, order)) best = p;
        }
        return best;
    }

    private static EnumMap<Setting, Double> copy(Map<Setting, Double> moved) {
        EnumMap<Setting, Double> copy = new EnumMap<>(Setting.class);
        copy.putAll(moved);
        return copy;
    }

    private static int index(double[] values, double value) {
        int best = 0;
        for (int i = 1; i < values.length; i++) if (Math.abs(values[i] - value) < Math.abs(values[best] - value)) best = i;
        return best;
    }

    private Conflict conflict(Point best, int missed) {
        Kept given = best.kept().get(missed);
        Point alone = search(at(Map.of()), List.of(missed));
        Kept reached = alone.kept().get(missed);
        List<Kept> against = new ArrayList<>();
        if (reached.miss() == 0) {
            List<Integer> aloneThenRest = new ArrayList<>(List.of(missed));
            for (int i = 0; i < wanted.size(); i++) if (i != missed) aloneThenRest.add(i);
            Point kindest = search(alone, aloneThenRest);
            for (int i = 0; i < missed; i++) if (kindest.kept().get(i).miss() > best.kept().get(i).miss()) against.add(kindest.kept().get(i));
        }
        List<Setting> held = against.isEmpty() ? held(missed) : List.of();
        return new Conflict(given, against, held, sentence(given, against, held));
    }

    /** Prescribed settings which, one freed or all freed, let the target be kept. */
    private List<Setting> held(int missed) {
        boolean oxygen = oxygen(wanted.get(missed).measure());
        List<Setting> candidates = prescribed.values().keySet().stream().filter(s -> strategy.rules().containsKey(s) && strategy.rules().get(s).movable())
                .filter(s -> !oxygen || s == Setting.FIO2 || s == Setting.PEEP).toList();
        for (Setting s : candidates) if (free(prescribed.without(s), missed)) return List.of(s);
        Settings none = prescribed;
        for (Setting s : candidates) none = none.without(s);
        return candidates.size() > 1 && free(none, missed) ? candidates : List.of();
    }

    private boolean free(Settings wish, int missed) {
        Solver other = new Solver(patient, illness, device, wish, strategy, model);
        return other.search(other.at(Map.of()), List.of(missed)).kept().get(missed).miss() == 0;
    }

    private String sentence(Kept given, List<Kept> against, List<Setting> held) {
        double v = given.value().orElseThrow();
        boolean low = given.from().isPresent() && v < given.from().getAsDouble();
        double limit = low ? given.from().getAsDouble() : given.to().orElseThrow();
        String what = "%s comes to %s, %s %s the %s of %s".formatted(given.measure().words(), Shown.of(given.measure(), v), Shown.of(given.measure(), given.miss()), low ? "below" : "above",
                low ? "least" : "most", Shown.of(given.measure(), limit));
        what = given.measure() == Measure.PH || given.measure() == Measure.PACO2 || given.measure() == Measure.PAO2 ? what : Character.toUpperCase(what.charAt(0)) + what.substring(1);
        if (!against.isEmpty()) {
            List<String> costs = against.stream().map(k -> "%s of %s (%s)".formatted(k.measure().words(), Shown.of(k.measure(), k.value().orElseThrow()), k.wanted())).toList();
            return what + "; keeping it would need a " + String.join(" and a ", costs) + ", which comes first in the strategy \"" + strategy.name() + "\".";
        }
        if (!held.isEmpty()) {
            return what + "; what is prescribed stands against it: " + String.join(", ", held.stream().map(s -> s.said() + " " + Shown.of(s, prescribed.values().get(s))).toList()) + ".";
        }
        return what + "; nothing that the strategy lets move on the " + device.name() + " keeps it.";
    }

    private Suggested explained(Point first, Point best) {
        if (best == first) return start;
        List<Integer> missedFirst = misses(first);
        List<String> goals = new ArrayList<>();
        for (int i : missedFirst) {
            Kept now = best.kept().get(i);
            if (now.miss() < first.kept().get(i).miss()) goals.add(now.measure().words() + " " + (now.miss() == 0 ? "keeps to " : "comes nearer to ") + now.wanted());
        }
        for (int i = 0; i < wanted.size(); i++) {
            Kept was = first.kept().get(i), now = best.kept().get(i);
            if (scrapes(was) && now.miss() == 0 && !scrapes(now)) goals.add(now.measure().words() + " keeps to " + now.wanted() + " by more than a hair");
        }
        String goal = goals.isEmpty() ? "" : " so that " + String.join(" and ", goals);
        List<Suggested.Because> rows = new ArrayList<>();
        Suggested s = new Fitting(patient, illness, device, prescribed, strategy, best.moved(), false).result();
        for (Suggested.Because b : s.because()) {
            Optional<Setting> which = Setting.ofWords(b.setting());
            double was = which.map(x -> start.settings().get(x, Double.NaN)).orElse(Double.NaN);
            double is = which.map(x -> best.suggested().settings().get(x, Double.NaN)).orElse(Double.NaN);
            boolean moved = which.isPresent() && best.moved().containsKey(which.get()) && Math.abs(was - is) > 1e-9;
            if (!moved) rows.add(b);
            else {
                String why = start.because().stream().filter(o -> o.setting().equals(b.setting())).findFirst().map(Suggested.Because::why).orElse("");
                rows.add(new Suggested.Because(b.setting(), b.origin(), "%s from %s%s; the rule: %s".formatted(is > was ? "raised" : "lowered", Shown.of(which.get(), was), goal, why)));
            }
        }
        return new Suggested(s.settings(), rows, s.asked(), s.reasons(), s.remarks(), s.strategy());
    }
}
