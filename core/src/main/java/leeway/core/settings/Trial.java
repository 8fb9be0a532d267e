package leeway.core.settings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.expression.Formula;
import leeway.core.expression.SlipException;
import leeway.core.expression.Slip;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.PatientEntry.Sex;

/** Runs a strategy's rules on invented patients of every size on a device that has everything. */
final class Trial {
    private Trial() { }

    /** One defect at most a formula; the first patient that shows it is named. */
    static List<Proof.Defect> of(Strategy strategy) {
        List<Proof.Defect> defects = new ArrayList<>();
        Ventilator device = everything();
        for (PatientFacts patient : patients()) {
            Rules[] rules = new Rules[1];
            Rules one = new Rules(strategy, patient, plainIllness(), device, s -> value(strategy, rules, s));
            rules[0] = one;
            String whose = "for a patient of %s kg, %s cm and %s years".formatted(Shown.number(patient.weightKg()), Shown.number(patient.heightCm()), Shown.number(patient.ageYears()));
            mode(strategy, one, whose).ifPresent(d -> keep(defects, d));
            strategy.rules().forEach((s, r) -> setting(one, s, r, whose).forEach(d -> keep(defects, d)));
            for (int i = 0; i < strategy.targets().size(); i++) target(one, strategy.targets().get(i), i, whose).ifPresent(d -> keep(defects, d));
            if (defects.isEmpty()) modes(strategy, patient, device, whose).ifPresent(d -> keep(defects, d));
        }
        return defects;
    }

    private static void keep(List<Proof.Defect> defects, Proof.Defect d) {
        if (defects.stream().noneMatch(o -> o.path().equals(d.path()))) defects.add(d);
    }

    private static double value(Strategy strategy, Rules[] rules, Setting s) {
        Strategy.Rule r = strategy.rules().get(s);
        double from = r.from().isPresent() ? rules[0].in(r.from().get(), s.unit()) : Double.NEGATIVE_INFINITY;
        double to = r.to().isPresent() ? rules[0].in(r.to().get(), s.unit()) : Double.POSITIVE_INFINITY;
        return Math.max(from, Math.min(to, rules[0].in(r.is(), s.unit())));
    }

    private static Optional<Proof.Defect> mode(Strategy strategy, Rules rules, String whose) {
        List<String> path = List.of("settings", "mode", "is");
        try {
            String code = rules.value(strategy.mode().is()).word();
            return Mode.ofCode(code).isPresent() ? Optional.empty() : Optional.of(new Proof.Defect(path, new Slip(0, "\"" + code + "\" is no mode " + whose, "Modes are codes such as A/C-VC, A/C-PC, CSV-PS.")));
        } catch (SlipException e) {
            return Optional.of(at(path, e, whose));
        }
    }

    private static Proof.Defect at(List<String> path, SlipException e, String whose) {
        return new Proof.Defect(path, new Slip(e.slip().offset(), e.slip().what() + " " + whose, e.slip().right()));
    }

    private static List<Proof.Defect> setting(Rules rules, Setting s, Strategy.Rule rule, String whose) {
        List<Proof.Defect> found = new ArrayList<>();
        OptionalDouble from = bound(rules, rule.from(), s, "from", whose, found);
        OptionalDouble to = bound(rules, rule.to(), s, "to", whose, found);
        OptionalDouble is = bound(rules, Optional.of(rule.is()), s, "is", whose, found);
        if (from.isPresent() && to.isPresent() && from.getAsDouble() > to.getAsDouble() + 1e-9) {
            found.add(new Proof.Defect(List.of("settings", s.words(), "from"), new Slip(0, "from (%s) lies above to (%s) %s".formatted(Shown.of(s, from.getAsDouble()), Shown.of(s, to.getAsDouble()), whose), "Keep from at or below to for every patient.")));
        }
        if (is.isEmpty()) return found;
        double v = Math.max(from.orElse(Double.NEGATIVE_INFINITY), Math.min(to.orElse(Double.POSITIVE_INFINITY), is.getAsDouble()));
        Range possible = Possible.of(s);
        if (!possible.holds(v)) {
            found.add(new Proof.Defect(List.of("settings", s.words(), "is"), new Slip(0, "a %s of %s %s is impossible".formatted(s.words(), Shown.of(s, v), whose),
                    "No device has one outside %s to %s; check the units, or give from and to.".formatted(Shown.of(s, possible.min()), Shown.of(s, possible.max())))));
        }
        return found;
    }

    private static OptionalDouble bound(Rules rules, Optional<Formula> formula, Setting s, String key, String whose, List<Proof.Defect> found) {
        if (formula.isEmpty()) return OptionalDouble.empty();
        try {
            return OptionalDouble.of(rules.in(formula.get(), s.unit()));
        } catch (SlipException e) {
            found.add(at(List.of("settings", s.words(), key), e, whose));
            return OptionalDouble.empty();
        }
    }

    private static Optional<Proof.Defect> target(Rules rules, Strategy.Target t, int i, String whose) {
        List<String> path = List.of("targets", Integer.toString(i), t.from().isPresent() ? "from" : "to");
        try {
            OptionalDouble from = t.from().isPresent() ? OptionalDouble.of(rules.in(t.from().get(), t.measure().unit())) : OptionalDouble.empty();
            OptionalDouble to = t.to().isPresent() ? OptionalDouble.of(rules.in(t.to().get(), t.measure().unit())) : OptionalDouble.empty();
            return from.isPresent() && to.isPresent() && from.getAsDouble() > to.getAsDouble()
                    ? Optional.of(new Proof.Defect(path, new Slip(0, "from lies above to " + whose, "Keep from at or below to."))) : Optional.empty();
        } catch (SlipException e) {
            return Optional.of(at(path, e, whose));
        }
    }

    /** Every mode can be asked for, so every mode must find its settings. */
    private static Optional<Proof.Defect> modes(Strategy strategy, PatientFacts patient, Ventilator device, String whose) {
        for (Mode mode : Mode.values()) {
            Suggested s = Suggest.settings(patient, plainIllness(), device, Settings.NONE.with(mode), strategy);
            for (Setting need : Needs.essential(mode)) {
                if (!s.settings().has(need)) return Optional.of(new Proof.Defect(List.of("settings"), new Slip(0, "this sheet has no rule for the " + need.words() + ", which mode " + mode.code() + " needs", "Give it one: a file may prescribe that mode.")));
            }
        }
        return Optional.empty();
    }

    private static List<PatientFacts> patients() {
        List<PatientFacts> all = new ArrayList<>();
        double[][] sizes = {{0.01, 50, 3.5, 3.5}, {0.5, 67, 7, 7}, {0.99, 75, 9.5, 9.5}, {1, 76, 10, 10}, {3, 95, 14, 14}, {8, 128, 31, 26}, {15.9, 170, 60, 60}, {16, 150, 45, 43.3}, {58, 170, 74, 61.5}, {40, 190, 85, 84.2}, {45, 170, 150, 66}, {90, 145, 38, 38.8}};
        for (double[] s : sizes) {
            for (double stiff : new double[] {0.35, 1}) {
                for (double narrow : new double[] {1, 4}) {
                    Effort effort = stiff < 1 == narrow > 1 ? Effort.NONE : Effort.NORMAL;
                    double pbw = s[3];
                    all.add(new PatientFacts(stiff < 1 ? Sex.FEMALE : Sex.MALE, s[0], s[1], s[2], pbw, effort, pbw * stiff, narrow * (8 + 140 / pbw), pbw * (stiff < 1 ? 4.5 : 2.5), 25 + 3.2 * pbw, stiff < 1 ? 0.35 : 0.05, stiff < 1 ? 560 : 760));
                }
            }
        }
        return all;
    }

    private static Illness plainIllness() {
        Band one = Band.of(1);
        Band none = Band.of(0);
        return new Illness("healthy lungs", one, one, one, none, none, none, one, Band.of(0.35), one, Band.of(0.8), one, one, none, 37, Optional.empty(), "any", false, "", "trial");
    }

    private static Ventilator everything() {
        Map<Setting, Range> ranges = new EnumMap<>(Setting.class);
        for (Setting s : Setting.values()) ranges.put(s, Possible.of(s));
        return new Ventilator("trial device", Ventilator.Drive.TURBINE, List.of(Mode.values()), ranges, Settings.NONE, Map.of(), 300, 120, 0, 0, true, true, false,
                new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), true, 0, 0, 0, 0, 0, 0, 10, false, Ventilator.VolumeBasis.BTPS, Ventilator.Altitude.COMPENSATED, 0),
                Optional.empty(), Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 0, "trial");
    }
}
