package leeway.app.report;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import leeway.core.kit.Setting;
import leeway.core.kit.Ventilator;
import leeway.core.plan.Expected;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal.Coverage;

/** The same journey with other kit, side by side: a column an alternative, the file as it stands first. */
public final class Comparison {
    private final List<Alternative> columns;

    /** @param columns the file as it stands, then each alternative */
    public Comparison(List<Alternative> columns) { this.columns = List.copyOf(columns); }

    /** A plan of the journey with some kit changed; {@code with} is empty for the file as it stands. */
    public record Alternative(Map<String, String> with, Ventilator ventilator, Plan plan) {
        public Alternative { with = new LinkedHashMap<>(with); }

        String name() { return with.isEmpty() ? "as the file says" : String.join(", ", with.values()); }
    }

    /** A line of the comparison; an empty cell where an alternative has no such thing. */
    private record Row(String what, List<String> cells) {
        boolean differs() { return cells.stream().distinct().count() > 1; }
    }

    private List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        row(rows, "verdict", a -> a.plan().verdict().word());
        row(rows, "oxygen to spare, 19 of 20", a -> a.plan().supply().oxygen().marginMin().map(m -> Figures.minutes(m.p05())).orElse(""));
        row(rows, "chance that oxygen ends", a -> Figures.chance(a.plan().supply().oxygen().emptyChance()));
        row(rows, "oxygen draw, first leg", a -> a.plan().supply().oxygen().byLeg().isEmpty() ? "" : Figures.n(a.plan().supply().oxygen().byLeg().get(0).drawLPerMin(), 1) + " L/min");
        row(rows, "charge to spare", a -> a.plan().supply().power().flatMap(p -> p.marginMin().isPresent() ? java.util.Optional.of(Figures.minutesAtLeast(p.marginMin().getAsDouble())) : java.util.Optional.empty()).orElse(""));
        row(rows, "faults in time", a -> count(a, Coverage.IN_TIME));
        row(rows, "faults too late", a -> count(a, Coverage.TOO_LATE));
        row(rows, "faults silent", a -> count(a, Coverage.SILENT));
        row(rows, "mode", a -> a.plan().suggested().settings().mode().map(m -> named(a, m.code(), m.code())).orElse(a.plan().suggested().settings().has(leeway.core.kit.Setting.TIDAL_VOLUME) ? "by hand" : "breathes alone"));
        for (Setting s : settings()) row(rows, s.words(), a -> a.plan().suggested().settings().has(s) ? named(a, s.words(), Figures.value(s, a.plan().suggested().settings().get(s))) : "");
        expected(rows, "plateau", Expected::plateauCmH2O, 0, "cmH2O");
        expected(rows, "peak pressure", Expected::peakCmH2O, 0, "cmH2O");
        expected(rows, "auto-PEEP", Expected::autoPeepCmH2O, 1, "cmH2O");
        expected(rows, "PaCO2", Expected::paco2MmHg, 0, "mmHg");
        expected(rows, "pH", Expected::ph, 2, "");
        row(rows, "SpO2", a -> a.plan().expected().map(Expected::spo2).filter(OptionalDouble::isPresent).map(v -> Figures.percent(v.getAsDouble())).orElse(""));
        return rows.stream().filter(r -> r.cells().stream().anyMatch(c -> !c.isEmpty())).toList();
    }

    private Set<Setting> settings() {
        Set<Setting> all = new LinkedHashSet<>();
        for (Setting s : Setting.values()) if (columns.stream().anyMatch(a -> a.plan().suggested().settings().has(s))) all.add(s);
        return all;
    }

    /** The value with what this device calls it, where that is another word. */
    private static String named(Alternative a, String key, String value) {
        String called = a.ventilator().called().get(key);
        return called == null ? value : value + " (\"" + called + "\")";
    }

    private static String count(Alternative a, Coverage c) {
        if (a.plan().rehearsals().isEmpty()) return "";
        return Long.toString(a.plan().rehearsals().stream().filter(r -> r.coverage() == c).count());
    }

    private void row(List<Row> rows, String what, Function<Alternative, String> cell) { rows.add(new Row(what, columns.stream().map(cell).toList())); }

    private void expected(List<Row> rows, String what, Function<Expected, OptionalDouble> of, int decimals, String unit) {
        row(rows, what, a -> a.plan().expected().map(e -> Figures.or(of.apply(e), decimals, unit)).orElse(""));
    }

    /** For a terminal: what differs first, then what does not. */
    public String text(int width, boolean colour) {
        TextPage page = new TextPage(width, colour);
        page.strong(TextPage.Tone.STRONG, columns.get(0).plan().title());
        List<String> head = new ArrayList<>(List.of(""));
        columns.forEach(a -> head.add(a.name()));
        List<Row> rows = rows();
        page.heading("What differs", "");
        List<List<String>> differing = rows.stream().filter(Row::differs).map(Comparison::cells).toList();
        if (differing.isEmpty()) page.paragraph("Nothing that a plan shows.");
        else page.table(head, differing);
        List<String> same = rows.stream().filter(r -> !r.differs()).map(r -> r.what() + " " + r.cells().get(0)).toList();
        if (!same.isEmpty()) page.heading("The same in all", "").paragraph(String.join("; ", same) + ".");
        for (Alternative a : columns) {
            List<String> said = new ArrayList<>(a.plan().verdict().reasons());
            said.addAll(a.plan().suggested().remarks());
            if (!said.isEmpty()) page.heading(a.name(), "").items(said.stream().distinct().toList());
        }
        page.blank().paragraph(PlanText.CAUTION);
        return page.toString();
    }

    private static List<String> cells(Row r) {
        List<String> cells = new ArrayList<>(List.of(r.what()));
        cells.addAll(r.cells());
        return cells;
    }

    public void json(String version, PrintStream out) {
        try (Json json = new Json(out)) {
            json.text("transport", columns.get(0).plan().title());
            json.text("version", version);
            json.objects("alternatives", columns, a -> {
                json.object("with", () -> a.with().forEach(json::text));
                json.object("verdict", () -> {
                    json.flag("holds", a.plan().verdict().holds());
                    json.text("word", a.plan().verdict().word());
                    json.texts("reasons", a.plan().verdict().reasons());
                });
                json.objects("settings", a.plan().suggested().because(), b -> {
                    json.text("setting", b.setting());
                    Setting.ofWords(b.setting()).ifPresent(s -> {
                        json.number("value", a.plan().suggested().settings().get(s));
                        json.text("unit", s.unit().symbol().isEmpty() ? "1" : s.unit().symbol());
                    });
                    if (Setting.ofWords(b.setting()).isEmpty()) json.text("value", a.plan().suggested().settings().mode().map(m -> m.code()));
                    String key = Setting.ofWords(b.setting()).isPresent() ? b.setting() : a.plan().suggested().settings().mode().map(m -> m.code()).orElse("");
                    json.text("called", java.util.Optional.ofNullable(a.ventilator().called().get(key)));
                    json.text("origin", b.origin().word());
                });
            });
            json.objects("rows", rows(), r -> {
                json.text("what", r.what());
                json.flag("differs", r.differs());
                json.texts("values", r.cells());
            });
        }
    }
}
