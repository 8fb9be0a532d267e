package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.app.rehearse.Rehearsals;
import leeway.app.report.TextPage.Tone;
import leeway.core.rehearsal.Nuisance;
import leeway.core.rehearsal.Pair;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearsal.Coverage;

/** Rehearsals for a terminal of 80 columns: who speaks first, then what is uncovered and why, then what to do. */
public final class RehearsalText {
    /** Stands over every list of steps. */
    public static final String PROTOCOL = "Local protocol comes first; what follows is common practice, what kills first at the top.";

    private RehearsalText() { }

    public static String of(Rehearsals all, int width, boolean colour) {
        List<Rehearsal> rows = all.rows();
        List<Nuisance> nuisance = all.nuisance();
        Optional<List<Pair>> pairs = all.pairs();
        TextPage page = new TextPage(width, colour);
        page.strong(Tone.STRONG, all.title()).paragraph(PlanText.CAUTION);
        long uncovered = rows.stream().filter(r -> r.coverage().uncovered()).count();
        long harms = rows.stream().filter(r -> r.harm().isPresent()).count();
        page.strong(uncovered > 0 ? Tone.BAD : Tone.GOOD, uncovered == 0 ? "No fault is uncovered; %d of %d can harm.".formatted(harms, rows.size())
                : "%d of %d faults that can harm %s uncovered.".formatted(uncovered, harms, uncovered == 1 ? "is" : "are"));
        all.suppliesEndS().ifPresent(s -> page.paragraph(endsByItself(s)));
        StringBuilder text = new StringBuilder(page.toString());
        String picture = SpeaksFirst.text(rows, width);
        if (!picture.isEmpty()) text.append(new TextPage(width, colour).heading("Who speaks first", "time since the fault")).append(picture).append(SpeaksFirst.LEGEND).append('\n');
        TextPage rest = new TextPage(width, colour);
        group(rest, "Uncovered", rows.stream().filter(r -> r.coverage().uncovered()).toList(), true);
        group(rest, "In time", rows.stream().filter(r -> r.coverage() == Coverage.IN_TIME).toList(), rows.size() == 1);
        group(rest, "No harm", rows.stream().filter(r -> r.coverage() == Coverage.NO_HARM).toList(), rows.size() == 1);
        group(rest, "Not in this kit", rows.stream().filter(r -> r.coverage() == Coverage.NOT_IN_THIS_KIT).toList(), rows.size() == 1);
        if (!nuisance.isEmpty()) rest.heading("Alarms without a fault", "heard an hour").table(List.of(), nuisance.stream().map(n -> List.of(n.limit().condition().words(), n.limit().from().words(), Figures.n(n.perHour(), 2))).toList());
        pairs.ifPresent(p -> {
            rest.heading("Two at once", "each covered alone, together not");
            if (p.isEmpty()) rest.paragraph("No pair of covered faults is uncovered together.");
            else rest.items(p.stream().limit(12).map(x -> "%s and %s: %s".formatted(x.first(), x.second(), x.why())).toList());
            if (p.size() > 12) rest.paragraph((p.size() - 12) + " more are in --format json.");
        });
        if (!all.whatIf().isEmpty()) group(rest, "What if, as the file asks", all.whatIf(), false);
        all.trace().ifPresent(trace -> TraceText.add(rest, trace));
        if (rows.size() > 1) rest.blank().paragraph("First sign, steps and the time line of one: leeway rehearse FILE --fault \"%s\"".formatted(rows.get(0).fault().name()));
        return text.append(rest).toString();
    }

    /** Said once, not in every row. */
    static String endsByItself(double endS) {
        return "Gas or power ends by itself after %s min, without any fault. Faults are rehearsed before that, and what would have come without them is not their harm.".formatted(Figures.n(endS / 60, 0));
    }

    private static void group(TextPage page, String heading, List<Rehearsal> rows, boolean steps) {
        if (rows.isEmpty()) return;
        page.heading(heading, rows.get(0).marginS().isPresent() || rows.get(0).coverage() == Coverage.SILENT ? "margin" : "");
        if (steps) page.paragraph(PROTOCOL);
        for (Rehearsal r : rows) {
            String right = r.coverage() == Coverage.SILENT ? "silent" : RehearsalJson.margin(r.marginS());
            String where = r.leg().map(m -> " (%s, minute %s)".formatted(m.name(), Figures.n(m.atMin(), 0))).orElse("");
            page.blank().strong(Tone.STRONG, r.fault().name() + where + (right.isEmpty() ? "" : ": " + right));
            if (r.margins().isPresent()) {
                var m = r.margins().get();
                List<String> parts = new ArrayList<>();
                m.p50S().ifPresent(v -> parts.add("median " + Figures.seconds(v)));
                m.p05S().ifPresent(v -> parts.add("19 of 20 at least " + Figures.seconds(v)));
                parts.add("uncovered in " + Figures.percent(m.uncoveredShare()) + " of " + m.draws() + " draws");
                page.paragraph(String.join("; ", parts) + ".");
            }
            page.paragraph(r.why());
            if (steps) {
                page.paragraph("First sign: " + r.fault().firstSign());
                page.items(r.fault().steps());
            }
        }
    }
}
