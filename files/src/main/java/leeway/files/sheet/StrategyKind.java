package leeway.files.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.core.kit.Setting;
import leeway.core.quantity.Quantity;
import leeway.core.settings.Measure;
import leeway.core.settings.Proof;
import leeway.core.settings.Strategy;
import leeway.files.keys.Form;
import leeway.files.keys.Forms;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;

/** The rules that turn a patient into starting settings; proved as soon as it is read. */
public final class StrategyKind implements SheetKind<Strategy> {
    private static final Key SOURCE = Key.may("source", Form.text(400, "common practice, no source"), "Where it comes from.").otherwise("that of the sheet");
    private static final Table NAMED = Table.of("a value with a name",
            Key.must("name", Form.text(60, "CO2 target"), "What formulas call it."),
            Key.must("is", new FormulaForm("40 mmHg"), "What it comes to."), SOURCE);
    private static final Form AMOUNT = Form.written("an amount with its unit, for example \"30 %\"", "30 %", "^.+$", text -> Quantity.parse(text).<Forms.Parsed>map(Forms.Parsed::good)
            .orElseGet(() -> Forms.Parsed.bad("%s is not an amount with a unit that we know".formatted(Complaints.echo(text)), "Write for example \"30 %\" or \"5 cmH2O\".")));
    private static final Table ROW = Table.of("a row", Key.must("from", AMOUNT, "From this amount on, up to the next row."), Key.must("gives", AMOUNT, "The table gives this."));
    private static final Table LOOKED_UP = Table.of("a table",
            Key.must("name", Form.text(60, "PEEP for oxygen"), "What formulas call it: PEEP for oxygen(fio2)."),
            Key.must("rows", Form.list(Form.section(ROW), leeway.core.expression.Table.MOST_ROWS), "In rising order; below the first row the first holds."),
            Key.may("between", Form.choice("way between two rows", "step", "line"), "Whether a row holds up to the next, or values between are drawn straight.").otherwise("step"), SOURCE);
    private static final Table MODE = Table.of("the mode's rule",
            Key.must("is", new FormulaForm("A/C-VC"), "The code of a mode, or a formula that gives one."), why(), SOURCE);
    private static final Table RULE = Table.of("a setting's rule",
            Key.must("is", new FormulaForm("6 mL/kg * predicted body weight"), "What is suggested."),
            Key.may("from", new FormulaForm("4 mL/kg * predicted body weight"), "The least that may be suggested, and that the search for targets may choose.").otherwise("no bound, and no search"),
            Key.may("to", new FormulaForm("8 mL/kg * predicted body weight"), "The most.").otherwise("no bound, and no search"), why(), SOURCE);
    private static final Table TARGET = Table.of("a target",
            Key.must("keep", Form.choice("measure", Arrays.stream(Measure.values()).map(Measure::words).toList()), "What is kept to."),
            Key.may("from", new FormulaForm("7.30"), "At least."), Key.may("to", new FormulaForm("30 cmH2O"), "At most."), SOURCE);
    private static final Table SETTINGS = settings();
    private static final Table TABLE = Table.sourced("strategy",
            Key.may("names", Form.list(Form.section(NAMED), 50), "Values that several rules share."),
            Key.may("tables", Form.list(Form.section(LOOKED_UP), 20), "What is looked up."),
            Key.must("settings", Form.section(SETTINGS), "A rule for the mode and for each setting."),
            Key.must("targets", Form.list(Form.section(TARGET), 20), "What the search for settings keeps, the most important first; the last is given up first."));

    private static Key why() { return Key.must("why", Form.text(300, "6 mL/kg of {predicted body weight}"), "The reason as a reader sees it; {name} shows a value, {name in mmHg} in that unit."); }

    private static Table settings() {
        List<Key> keys = new ArrayList<>();
        keys.add(Key.must("mode", Form.section(MODE), "Which mode."));
        for (Setting s : Setting.values()) keys.add(Key.may(s.words(), Form.section(RULE), "How the " + s.words() + " follows."));
        return new Table("settings", false, keys, List.of());
    }

    @Override public String word() { return "strategy"; }

    @Override public String plural() { return "strategies"; }

    @Override public Table table() { return TABLE; }

    @Override public Strategy record(String name, Section s, Complaints complaints) {
        String source = SheetKind.source(s);
        Map<String, Strategy.Named> names = new LinkedHashMap<>();
        for (Section n : s.sections("names")) {
            String key = n.text("name").orElseThrow();
            if (names.put(key, new Strategy.Named(written(n, "is").formula(), n.text("source", source))) != null) twice(n, key, complaints);
        }
        Map<String, leeway.core.expression.Table> tables = new LinkedHashMap<>();
        for (Section t : s.sections("tables")) {
            String key = t.text("name").orElseThrow();
            table(key, t, source, complaints).ifPresent(made -> {
                if (tables.put(key, made) != null) twice(t, key, complaints);
            });
        }
        Section settings = s.section("settings").orElseThrow();
        Strategy.Rule mode = rule(settings.section("mode").orElseThrow(), source);
        Map<Setting, Strategy.Rule> rules = new EnumMap<>(Setting.class);
        for (Setting x : Setting.values()) settings.section(x.words()).ifPresent(r -> rules.put(x, rule(r, source)));
        List<Strategy.Target> targets = new ArrayList<>();
        for (Section t : s.sections("targets")) {
            if (!t.has("from") && !t.has("to")) complaints.add(t.at(), "this target has neither \"from\" nor \"to\"", "Write at least one.");
            targets.add(new Strategy.Target(Measure.ofWords(t.text("keep").orElseThrow()).orElseThrow(), formula(t, "from"), formula(t, "to"), t.text("source", source)));
        }
        Strategy strategy = new Strategy(name, s.text("plain", ""), names, tables, mode, rules, targets, source);
        return strategy;
    }

    @Override public void prove(Strategy strategy, Section s, Complaints complaints) {
        for (Proof.Defect d : Proof.of(strategy)) complain(d, s, complaints);
    }

    private static void twice(Section at, String name, Complaints complaints) {
        complaints.add(at.at("name"), "%s stands here twice".formatted(Complaints.echo(name)), "Rename one of them.");
    }

    private static FormulaForm.Written written(Section s, String key) { return s.as(key, FormulaForm.Written.class).orElseThrow(); }

    private static Optional<leeway.core.expression.Formula> formula(Section s, String key) {
        return s.has(key) ? Optional.of(written(s, key).formula()) : Optional.empty();
    }

    private static Strategy.Rule rule(Section r, String source) {
        boolean bounded = r.table() == RULE;
        return new Strategy.Rule(written(r, "is").formula(), bounded ? formula(r, "from") : Optional.empty(), bounded ? formula(r, "to") : Optional.empty(),
                r.text("why").orElseThrow(), r.text("source", source));
    }

    private static Optional<leeway.core.expression.Table> table(String name, Section t, String source, Complaints complaints) {
        List<leeway.core.expression.Table.Row> rows = new ArrayList<>();
        Quantity first = null;
        Quantity gives = null;
        for (Section row : t.sections("rows")) {
            Quantity from = row.as("from", Quantity.class).orElseThrow();
            Quantity to = row.as("gives", Quantity.class).orElseThrow();
            if (first == null) {
                first = from;
                gives = to;
            }
            if (!from.dimension().equals(first.dimension()) || !to.dimension().equals(gives.dimension())) {
                complaints.add(row.at(), "this row measures other things than the first one", "All rows of a table go from one kind of amount to one kind.");
                return Optional.empty();
            }
            if (!rows.isEmpty() && !(from.si() > rows.get(rows.size() - 1).from())) {
                complaints.add(row.at("from"), "the rows do not rise", "Each \"from\" must be above the one before.");
                return Optional.empty();
            }
            rows.add(new leeway.core.expression.Table.Row(from.si(), to.si()));
        }
        return Optional.of(new leeway.core.expression.Table(name, leeway.core.expression.Type.of(first.dimension()), leeway.core.expression.Type.of(gives.dimension()),
                t.text("between", "step").equals("line"), rows, t.text("source", source)));
    }

    private static void complain(Proof.Defect defect, Section s, Complaints complaints) {
        List<String> path = defect.path();
        switch (path.get(0)) {
            case "names", "tables" -> {
                Section named = s.sections(path.get(0)).stream().filter(n -> n.text("name").orElseThrow().equals(path.get(1))).findFirst().orElseThrow();
                boolean inherited = !named.at().file().equals(s.at().file());
                if (path.size() > 2) written(named, path.get(2)).complain(defect.slip(), complaints);
                else if (!inherited) complaints.add(named.at("name"), defect.slip().what(), defect.slip().right());
            }
            case "targets" -> written(s.sections("targets").get(Integer.parseInt(path.get(1))), path.get(2)).complain(defect.slip(), complaints);
            default -> {
                Section settings = s.section("settings").orElseThrow();
                if (path.size() < 3) {
                    complaints.add(s.atKey("settings"), defect.slip().what(), defect.slip().right());
                    return;
                }
                Section rule = settings.section(path.get(1)).orElseThrow();
                if (!path.get(2).equals("why")) {
                    written(rule, path.get(2)).complain(defect.slip(), complaints);
                    return;
                }
                Place at = rule.value("why").map(v -> v.node() instanceof Node.Scalar n ? FormulaForm.inside(n, defect.slip().offset()) : v.at()).orElseThrow();
                complaints.add(at, defect.slip().what(), defect.slip().right());
            }
        }
    }
}
