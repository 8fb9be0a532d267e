package leeway.core.settings;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leeway.core.expression.Formula;
import leeway.core.expression.Names;
import leeway.core.expression.Slip;
import leeway.core.expression.Type;
import leeway.core.kit.Setting;

/**
 * Shows that a strategy's sheet can be used: every name exists, every unit fits, nothing goes in a circle, nothing lies
 * idle, and on a row of trial patients every rule gives a value that a device could have.
 */
public final class Proof {
    private final Strategy strategy;
    private final Names names;
    private final List<Defect> defects = new ArrayList<>();

    private Proof(Strategy strategy) {
        this.strategy = strategy;
        this.names = Rules.names(strategy);
    }

    /**
     * Something wrong in a sheet.
     *
     * @param path keys from the top: {@code ["settings", "rate", "is"]}, {@code ["targets", "0", "to"]}
     */
    public record Defect(List<String> path, Slip slip) {
        public Defect { path = List.copyOf(path); }
    }

    /** Every defect; none means that the sheet is sound. */
    public static List<Defect> of(Strategy strategy) {
        Proof proof = new Proof(strategy);
        proof.shadows();
        proof.circles();
        if (proof.defects.isEmpty()) proof.types();
        if (proof.defects.isEmpty()) {
            proof.defects.addAll(Trial.of(strategy));
            proof.idle();
        }
        return List.copyOf(proof.defects);
    }

    private void add(Slip slip, String... path) { defects.add(new Defect(List.of(path), slip)); }

    private void shadows() {
        for (String name : strategy.names().keySet()) {
            if (Fact.ofWords(name).isPresent() || Setting.ofWords(name).isPresent()) add(new Slip(0, "\"" + name + "\" is a name already", "Choose another; facts and settings have their own."), "names", name);
            if (strategy.tables().containsKey(name)) add(new Slip(0, "\"" + name + "\" names a value and a table", "Rename one."), "names", name);
        }
    }

    /** Formulas that give a setting or a name, by the keys that lead to them. */
    private Map<List<String>, Formula> formulas() {
        Map<List<String>, Formula> all = new LinkedHashMap<>();
        strategy.names().forEach((n, v) -> all.put(List.of("names", n, "is"), v.is()));
        all.put(List.of("settings", "mode", "is"), strategy.mode().is());
        strategy.rules().forEach((s, r) -> {
            all.put(List.of("settings", s.words(), "is"), r.is());
            r.from().ifPresent(f -> all.put(List.of("settings", s.words(), "from"), f));
            r.to().ifPresent(f -> all.put(List.of("settings", s.words(), "to"), f));
        });
        for (int i = 0; i < strategy.targets().size(); i++) {
            Strategy.Target t = strategy.targets().get(i);
            String at = Integer.toString(i);
            t.from().ifPresent(f -> all.put(List.of("targets", at, "from"), f));
            t.to().ifPresent(f -> all.put(List.of("targets", at, "to"), f));
        }
        return all;
    }

    private void circles() {
        Map<String, Set<String>> needs = new LinkedHashMap<>();
        Map<String, List<String>> paths = new LinkedHashMap<>();
        strategy.names().forEach((n, v) -> {
            needs.put(n, v.is().uses());
            paths.put(n, List.of("names", n, "is"));
        });
        strategy.rules().forEach((s, r) -> {
            Set<String> uses = new LinkedHashSet<>(r.is().uses());
            r.from().ifPresent(f -> uses.addAll(f.uses()));
            r.to().ifPresent(f -> uses.addAll(f.uses()));
            needs.put(s.words(), uses);
            paths.put(s.words(), List.of("settings", s.words(), "is"));
        });
        Set<String> done = new HashSet<>();
        for (String name : needs.keySet()) {
            Optional<List<String>> circle = circle(name, needs, new ArrayList<>(), done);
            if (circle.isEmpty()) continue;
            List<String> round = circle.get();
            defects.add(new Defect(paths.get(round.get(0)), new Slip(0, "this never ends: " + String.join(" needs ", round), "Break the circle: one of them must follow from the patient alone.")));
            return;
        }
    }

    private static Optional<List<String>> circle(String name, Map<String, Set<String>> needs, List<String> open, Set<String> done) {
        int at = open.indexOf(name);
        if (at >= 0) {
            List<String> round = new ArrayList<>(open.subList(at, open.size()));
            round.add(name);
            return Optional.of(round);
        }
        if (!needs.containsKey(name) || done.contains(name)) return Optional.empty();
        open.add(name);
        for (String next : needs.get(name)) {
            Optional<List<String>> found = circle(next, needs, open, done);
            if (found.isPresent()) return found;
        }
        open.remove(open.size() - 1);
        done.add(name);
        return Optional.empty();
    }

    private void types() {
        formulas().forEach((path, formula) -> {
            Optional<Slip> slip = wanted(path).map(type -> formula.check(names, type)).orElseGet(() -> {
                try {
                    formula.type(names);
                    return Optional.empty();
                } catch (leeway.core.expression.SlipException e) {
                    return Optional.of(e.slip());
                }
            });
            slip.or(() -> ruleless(formula)).ifPresent(s -> defects.add(new Defect(path, s)));
        });
        strategy.rules().forEach((s, r) -> sentence(r.why(), "settings", s.words(), "why"));
        sentence(strategy.mode().why(), "settings", "mode", "why");
    }

    private Optional<Type> wanted(List<String> path) {
        return switch (path.get(0)) {
            case "settings" -> Optional.of(path.get(1).equals("mode") ? Type.WORD : Type.of(Setting.ofWords(path.get(1)).orElseThrow().kind()));
            case "targets" -> Optional.of(Type.of(strategy.targets().get(Integer.parseInt(path.get(1))).measure().kind()));
            default -> Optional.empty();
        };
    }

    private Optional<Slip> ruleless(Formula formula) {
        return formula.uses().stream().flatMap(n -> Setting.ofWords(n).stream()).filter(s -> !strategy.rules().containsKey(s)).findFirst()
                .map(s -> new Slip(Math.max(0, formula.text().indexOf(s.words())), "this sheet has no rule for the " + s.words(), "Give it one under settings."));
    }

    private void sentence(String why, String... path) {
        for (Sentence.Gap gap : Sentence.gaps(why)) {
            Optional<Type> type = names.type(gap.name());
            if (type.isEmpty()) add(new Slip(gap.offset(), "there is no \"" + gap.name() + "\" to show", "In braces stands the name of a fact, a setting or a value of this sheet."), path);
            else if (!gap.unitWritten().isEmpty() && gap.unit().isEmpty()) add(new Slip(gap.offset(), "\"" + gap.unitWritten() + "\" is no unit", "Write {" + gap.name() + "} or {" + gap.name() + " in cmH2O}."), path);
            else if (gap.unit().isPresent() && !Type.of(gap.unit().get().dimension()).equals(type.get())) add(new Slip(gap.offset(), "{" + gap.name() + "} is " + type.get().words() + ", not in " + gap.unitWritten(), "Choose a unit that fits."), path);
        }
    }

    private void idle() {
        Set<String> used = new HashSet<>();
        Collection<Formula> all = formulas().values();
        all.forEach(f -> used.addAll(f.uses()));
        List<String> sentences = new ArrayList<>();
        strategy.rules().values().forEach(r -> sentences.add(r.why()));
        sentences.add(strategy.mode().why());
        sentences.forEach(w -> Sentence.gaps(w).forEach(g -> used.add(g.name())));
        for (String name : strategy.names().keySet()) {
            if (!used.contains(name)) add(new Slip(0, "nothing uses \"" + name + "\"", "Use it or leave it out."), "names", name);
        }
        for (String table : strategy.tables().keySet()) {
            if (all.stream().noneMatch(f -> f.looksUpIn(table))) add(new Slip(0, "nothing looks up in \"" + table + "\"", "Use it or leave it out."), "tables", table);
        }
    }
}
