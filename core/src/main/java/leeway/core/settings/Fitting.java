package leeway.core.settings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.settings.Suggested.Because;
import leeway.core.settings.Suggested.Origin;

/** One patient, one device, one strategy: every setting worked out once, in the order in which rules need each other. */
final class Fitting {
    /** Of a breath, what inspiration may take at most when a rule decides (I:E 1:1; ARDS Network protocol card: 1:1 to 1:3). */
    private static final double MOST_INSPIRATION = 0.5;
    /** Expiration is never set shorter; a breath could not end. Common practice, no source. */
    private static final double LEAST_EXPIRATION_S = 0.15;
    private final Ventilator device;
    private final Settings prescribed;
    private final Strategy strategy;
    private final Map<Setting, Double> moved;
    private final Rules rules;
    private final boolean quiet;
    private final EnumMap<Setting, Double> standing = new EnumMap<>(Setting.class);
    private final EnumMap<Setting, Because> because = new EnumMap<>(Setting.class);
    private final List<String> reasons = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private Settings asked = Settings.NONE;
    private boolean ratioOpen;

    /**
     * @param moved what the solver chose instead of a rule's value
     * @param quiet settings only: the search asks a thousand times and reads no sentence
     */
    Fitting(PatientFacts patient, Illness illness, Ventilator device, Settings prescribed, Strategy strategy, Map<Setting, Double> moved, boolean quiet) {
        this.quiet = quiet;
        this.device = device;
        this.prescribed = prescribed;
        this.strategy = strategy;
        this.moved = moved;
        this.rules = new Rules(strategy, patient, illness, device, this::standing);
    }

    Suggested result() {
        List<Because> rows = new ArrayList<>();
        Mode wish = wishedMode();
        Optional<Mode> mode = mode(wish, rows);
        Set<Setting> wanted = wanted(mode.orElse(wish));
        for (Setting s : wanted) standing(s);
        if (!device.alone() && mode.orElse(wish).hasRate()) {
            inspirationFitsTheBreath();
            if (mode.orElse(wish).control() == Mode.Control.VOLUME) flowIsWithinTheDevice();
        }
        EnumMap<Setting, Double> values = new EnumMap<>(Setting.class);
        for (Setting s : wanted) {
            Double v = standing.get(s);
            if (v == null || !has(s)) continue;
            values.put(s, v);
            if (because.containsKey(s)) rows.add(because.get(s));
        }
        leftOut(mode.orElse(wish), wanted);
        if (hand() && values.containsKey(Setting.FIO2)) reservoir(values, rows);
        return new Suggested(new Settings(mode, values), rows, asked, reasons, remarks, strategy.name());
    }

    Rules rules() { return rules; }

    /** A bag has no blender: other rules have gone by the wish, but what stands is what its reservoir gives. */
    private void reservoir(Map<Setting, Double> values, List<Because> rows) {
        double wish = values.put(Setting.FIO2, 1.0);
        if (wish == 1) return;
        boolean byFile = prescribed.has(Setting.FIO2);
        String what = (byFile ? "prescribed " : "the strategy would set ") + Shown.of(Setting.FIO2, wish) + "; the " + device.name() + " has no blender and gives what its reservoir holds, about 100 % oxygen";
        rows.replaceAll(b -> b.setting().equals(Setting.FIO2.words()) ? new Because(b.setting(), b.origin(), what) : b);
        if (!byFile) return;
        asked = asked.with(Setting.FIO2, wish);
        reasons.add("FiO2: " + what + ".");
    }

    private boolean hand() { return device.drive() == Ventilator.Drive.HAND; }

    private boolean has(Setting s) { return hand() || device.ranges().containsKey(s) || device.defaults().has(s); }

    private Mode wishedMode() {
        if (device.alone()) return Mode.CPAP;           // nothing but the patient breathes
        if (hand()) return Mode.CMV_VC;                 // a hand squeezes a volume, whatever the strategy would set on a device
        if (prescribed.mode().isPresent()) return prescribed.mode().get();
        if (prescribed.has(Setting.INSPIRATORY_PRESSURE)) return Mode.AC_PC;
        if (prescribed.has(Setting.SUPPORT_PRESSURE) && !prescribed.has(Setting.RATE) && !prescribed.has(Setting.TIDAL_VOLUME)) return Mode.CSV_PS;
        Mode byRule = Mode.ofCode(rules.value(strategy.mode().is()).word()).orElseThrow(() -> new IllegalStateException("strategy " + strategy.name() + " gives no mode"));
        boolean volume = byRule.control() == Mode.Control.VOLUME || byRule.control() == Mode.Control.VOLUME_TARGETED_PRESSURE;
        return prescribed.has(Setting.TIDAL_VOLUME) && !volume ? Mode.AC_VC : byRule;
    }

    private Optional<Mode> mode(Mode wish, List<Because> rows) {
        boolean byFile = prescribed.mode().isPresent();
        if (hand() || device.alone()) {
            if (byFile) {
                asked = asked.with(prescribed.mode().get());
                reasons.add("The " + device.name() + " has no modes; \"" + prescribed.mode().get().code() + "\" cannot be set.");
            }
            return Optional.empty();
        }
        Optional<Mode> got = NearestMode.of(wish, device.modes());
        if (got.isEmpty()) throw new IllegalArgumentException("ventilator %s has no mode".formatted(device.name()));
        String name = wish.code() + " (" + wish.plain() + ")";
        if (got.get() == wish) {
            boolean implied = !byFile && !rules.value(strategy.mode().is()).word().equals(wish.code());
            rows.add(new Because("mode", byFile ? Origin.PRESCRIBED : Origin.SUGGESTED, byFile ? "as the file says" : implied ? "the mode in which what is prescribed can be set"
                    : text(strategy.mode()) + called(wish.code())));
        } else {
            String instead = got.get().code() + " (" + got.get().plain() + ")";
            String what = "the " + device.name() + " does not have " + name + "; " + instead + " comes nearest: " + NearestMode.difference(wish, got.get());
            rows.add(new Because("mode", byFile ? Origin.PRESCRIBED : Origin.SUGGESTED, what));
            if (byFile) {
                asked = asked.with(wish);
                reasons.add(Character.toUpperCase(what.charAt(0)) + what.substring(1) + ".");
            } else {
                remarks.add(Character.toUpperCase(what.charAt(0)) + what.substring(1) + ".");
            }
        }
        return got;
    }

    private String called(String key) {
        String name = device.called().get(key);
        return name == null ? "" : "; called \"" + name + "\" on the " + device.name();
    }

    private Set<Setting> wanted(Mode mode) {
        if (device.alone()) return EnumSet.of(Setting.BIAS_FLOW);
        EnumSet<Setting> wanted = EnumSet.copyOf(Needs.essential(mode));
        for (Setting s : Needs.optional(mode)) if (has(s) && !hand() || prescribed.has(s)) wanted.add(s);
        boolean flow = wanted.contains(Setting.FLOW_TRIGGER);
        boolean pressure = wanted.contains(Setting.PRESSURE_TRIGGER);
        if (flow && pressure) wanted.remove(prescribed.has(Setting.PRESSURE_TRIGGER) && !prescribed.has(Setting.FLOW_TRIGGER) ? Setting.FLOW_TRIGGER : Setting.PRESSURE_TRIGGER);
        return wanted;
    }

    /** The value at which a setting stands, worked out when first asked for; NaN where nothing gives one. */
    private double standing(Setting s) {
        Double before = standing.get(s);
        if (before != null) return before;
        double value = prescribed.has(s) ? prescribed(s, prescribed.values().get(s)) : s == Setting.INSPIRATORY_TIME ? byRatio() : suggested(s);
        if (!Double.isNaN(value)) standing.put(s, value);
        return value;
    }

    private double prescribed(Setting s, double wish) {
        Range range = device.ranges().get(s);
        if (range == null && !hand()) {
            asked = asked.with(s, wish);
            double stands = suggested(s);
            reasons.add("On the " + device.name() + " the " + s.said() + " cannot be set; " + Shown.of(s, wish) + " is prescribed"
                    + (device.defaults().has(s) ? ", it stands at " + Shown.of(s, stands) + "." : "."));
            return stands;
        }
        double got = range == null ? wish : range.nearest(wish);
        if (Math.abs(got - wish) < 1e-9) {
            because.put(s, new Because(s.words(), Origin.PRESCRIBED, "as the file says" + called(s.words())));
            return got;
        }
        asked = asked.with(s, wish);
        String what = "prescribed " + Shown.of(s, wish) + ", the nearest that the " + device.name() + " has is " + Shown.of(s, got);
        because.put(s, new Because(s.words(), Origin.PRESCRIBED, what));
        (range.holds(wish) ? remarks : reasons).add(Character.toUpperCase(s.said().charAt(0)) + s.said().substring(1) + ": " + what + ".");
        return got;
    }

    /** The inspiratory time of a prescribed i:e at the strategy's rate; without one what the strategy suggests. */
    private double byRatio() {
        if (prescribed.inspiratoryShare().isEmpty() || ratioOpen) return suggested(Setting.INSPIRATORY_TIME);
        ratioOpen = true;                               // a rate that itself asks for the inspiratory time gets the rule's
        double rate = standing(Setting.RATE);
        ratioOpen = false;
        if (Double.isNaN(rate)) return suggested(Setting.INSPIRATORY_TIME);
        double share = prescribed.inspiratoryShare().getAsDouble();
        double wish = share * 60 / rate;
        Range range = device.ranges().get(Setting.INSPIRATORY_TIME);
        double got = range == null ? wish : range.nearest(wish);
        because.put(Setting.INSPIRATORY_TIME, new Because(Setting.INSPIRATORY_TIME.words(), Origin.PRESCRIBED,
                "the file's I:E of " + (share > 0.5 ? Shown.number(share / (1 - share)) + ":1" : "1:" + Shown.number((1 - share) / share)) + " at " + Shown.of(Setting.RATE, rate) + called(Setting.INSPIRATORY_TIME.words())));
        standing.put(Setting.INSPIRATORY_TIME, got);
        return got;
    }

    private double suggested(Setting s) {
        Strategy.Rule rule = strategy.rules().get(s);
        Range range = device.ranges().get(s);
        if (rule == null || range == null && !hand() && device.defaults().has(s)) {
            if (!device.defaults().has(s)) return Double.NaN;
            because.put(s, new Because(s.words(), Origin.SUGGESTED, "as the " + device.name() + " stands" + called(s.words())));
            return device.defaults().get(s).getAsDouble();
        }
        double from = rule.from().isPresent() ? rules.in(rule.from().get(), s.unit()) : Double.NEGATIVE_INFINITY;
        double to = rule.to().isPresent() ? rules.in(rule.to().get(), s.unit()) : Double.POSITIVE_INFINITY;
        double wish = moved.containsKey(s) ? moved.get(s) : Math.max(from, Math.min(to, rules.in(rule.is(), s.unit())));
        double got = range == null ? wish : within(range, wish, from, to);
        String why = text(rule);
        if (!quiet && range != null && (got < from - 1e-9 || got > to + 1e-9)) {
            why += "; the strategy would set " + Shown.of(s, wish) + ", the nearest that the " + device.name() + " has is " + Shown.of(s, got);
            remarks.add("The strategy would set a " + s.said() + " of " + Shown.of(s, wish) + "; the nearest that the " + device.name() + " has is " + Shown.of(s, got) + ".");
        } else if (range == null && !hand()) {
            why += "; the " + device.name() + " does not let one set it";
        }
        because.put(s, new Because(s.words(), Origin.SUGGESTED, why + called(s.words())));
        return got;
    }

    /** The device's nearest value that the rule's bounds also hold, where there is one. */
    static double within(Range range, double wish, double from, double to) {
        double got = range.nearest(wish);
        if (got > to + 1e-9) got = range.nearestBelow(to);
        if (got < from - 1e-9 && range.step() > 0 && range.holds(got + range.step()) && got + range.step() <= to + 1e-9) got = range.nearest(got + range.step());
        return got;
    }

    private String text(Strategy.Rule rule) {
        if (quiet) return "";
        String why = Sentence.filled(rule.why(), gap -> Shown.of(gap.name(), rules.of(gap.name()), gap.unit()));
        return rule.source().isEmpty() ? why : why + " (" + rule.source() + ")";
    }

    private void inspirationFitsTheBreath() {
        Double rate = standing.get(Setting.RATE);
        Double ti = standing.get(Setting.INSPIRATORY_TIME);
        if (rate == null || ti == null || !(rate > 0)) return;
        double cycle = 60 / rate;
        if (!prescribed.has(Setting.INSPIRATORY_TIME) && prescribed.inspiratoryShare().isEmpty()) {
            double most = cycle * MOST_INSPIRATION;
            if (ti > most + 1e-9) inspiration(below(Setting.INSPIRATORY_TIME, most), "shortened so that it takes no more than half of the breath");
        } else if (ti > cycle - LEAST_EXPIRATION_S && !prescribed.has(Setting.RATE)) {
            double slower = below(Setting.RATE, 60 * MOST_INSPIRATION / ti);
            standing.put(Setting.RATE, slower);
            because.put(Setting.RATE, new Because(Setting.RATE.words(), Origin.SUGGESTED, "slowed so that the prescribed inspiratory time takes no more than half of the breath"));
        } else if (ti > cycle - LEAST_EXPIRATION_S) {
            double shorter = below(Setting.INSPIRATORY_TIME, cycle * MOST_INSPIRATION);
            asked = asked.with(Setting.INSPIRATORY_TIME, ti);
            reasons.add("An inspiratory time of " + Shown.of(Setting.INSPIRATORY_TIME, ti) + " leaves no expiration at a rate of " + Shown.of(Setting.RATE, rate)
                    + "; " + Shown.of(Setting.INSPIRATORY_TIME, shorter) + " is half of the breath.");
            standing.put(Setting.INSPIRATORY_TIME, shorter);
            because.put(Setting.INSPIRATORY_TIME, new Because(Setting.INSPIRATORY_TIME.words(), Origin.PRESCRIBED, "prescribed "
                    + Shown.of(Setting.INSPIRATORY_TIME, ti) + ", shortened to half of the breath"));
        }
        Double pause = standing.get(Setting.PAUSE);
        double now = standing.get(Setting.INSPIRATORY_TIME);
        if (pause != null && pause > now / 2) {
            double shorter = below(Setting.PAUSE, now / 2);
            if (prescribed.has(Setting.PAUSE)) {
                asked = asked.with(Setting.PAUSE, pause);
                remarks.add("A pause of " + Shown.of(Setting.PAUSE, pause) + " would take more than half of the inspiratory time; it stands at " + Shown.of(Setting.PAUSE, shorter) + ".");
            }
            standing.put(Setting.PAUSE, shorter);
        }
    }

    private void flowIsWithinTheDevice() {
        Double volume = standing.get(Setting.TIDAL_VOLUME);
        Double ti = standing.get(Setting.INSPIRATORY_TIME);
        if (volume == null || ti == null || !(device.maxFlowLPerMin() > 0)) return;
        double pause = standing.getOrDefault(Setting.PAUSE, 0.0);
        double flow = volume / (ti - pause) * 0.06;
        if (flow <= device.maxFlowLPerMin() * (1 + 1e-9)) return;
        String what = "%s in %s need %s L/min, the %s gives at most %s L/min".formatted(Shown.of(Setting.TIDAL_VOLUME, volume), Shown.of(Setting.INSPIRATORY_TIME, ti - pause),
                Shown.number(flow), device.name(), Shown.number(device.maxFlowLPerMin()));
        if (prescribed.has(Setting.INSPIRATORY_TIME)) {
            reasons.add(Character.toUpperCase(what.charAt(0)) + what.substring(1) + ": the volume will not be reached.");
            return;
        }
        double longer = volume * 0.06 / device.maxFlowLPerMin() + pause;
        Range range = device.ranges().get(Setting.INSPIRATORY_TIME);
        double snapped = range == null ? longer : range.nearest(longer);
        if (range != null && snapped < longer - 1e-9 && range.step() > 0) snapped = range.nearest(snapped + range.step());
        inspiration(snapped, "lengthened, for " + what);
        remarks.add("Inspiratory time lengthened, for " + what + ".");
    }

    private double below(Setting s, double value) {
        Range range = device.ranges().get(s);
        return range == null ? value : range.nearestBelow(value);
    }

    private void inspiration(double value, String why) {
        standing.put(Setting.INSPIRATORY_TIME, value);
        Because was = because.get(Setting.INSPIRATORY_TIME);
        because.put(Setting.INSPIRATORY_TIME, new Because(Setting.INSPIRATORY_TIME.words(), Origin.SUGGESTED, (was == null ? "" : was.why() + "; ") + why));
    }

    private void leftOut(Mode mode, Set<Setting> wanted) {
        prescribed.values().forEach((s, v) -> {
            if (wanted.contains(s)) return;
            asked = asked.with(s, v);
            if (device.alone()) remarks.add("The " + device.name() + " has no " + s.said() + "; the prescribed " + Shown.of(s, v) + " is left out.");
            else remarks.add("Mode " + mode.code() + " has no " + s.said() + "; the prescribed " + Shown.of(s, v) + " is left out.");
        });
    }
}
