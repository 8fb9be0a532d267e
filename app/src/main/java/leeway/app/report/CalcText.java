package leeway.app.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import leeway.app.report.TextPage.Tone;
import leeway.core.calc.Calc;
import leeway.core.calc.CalcResult;
import leeway.core.calc.Key;

/** A calculation for a terminal: result, working, source. */
public final class CalcText {
    private CalcText() { }

    public static String of(CalcResult r, int width, boolean colour) {
        TextPage page = new TextPage(width, colour);
        page.strong(Tone.STRONG, r.calc() + ": " + plain(r.value()) + (r.unit().isEmpty() ? "" : " " + r.unit()));
        List<List<String>> rows = new ArrayList<>();
        r.keys().forEach((key, value) -> rows.add(List.of(key, plain(value))));
        if (rows.size() > 1) page.table(List.of(), rows);
        if (!r.working().isEmpty()) page.heading("Working", "");
        for (String step : r.working()) {
            if (step.contains(" |")) page.verbatim(step); // a row of a table stays one
            else page.items(List.of(step));
        }
        return page.heading("Source", "").paragraph(r.source()).blank().paragraph(PlanText.CAUTION).toString();
    }

    /** Six significant digits, as the calc gives them, without an exponent. */
    static String plain(double value) { return value == 0 ? "0" : new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString().replace('-', '−'); }

    public static String list(List<Calc> calcs, int width, boolean colour) {
        TextPage page = new TextPage(width, colour);
        page.table(List.of(), calcs.stream().map(c -> List.of(c.name(), c.plain())).toList());
        return page.blank().paragraph("\"leeway calc NAME --help\" shows what one needs.").toString();
    }

    /** What one calc needs; begins with an example. */
    public static String help(Calc c) {
        TextPage page = new TextPage(80, false);
        page.paragraph(c.plain()).blank();
        List<List<String>> rows = new ArrayList<>();
        for (Key k : c.keys()) {
            String must = k.required() ? "Must be given." : k.otherwise().map(o -> o.isBlank() ? "" : "Otherwise " + o + ".").orElse("");
            rows.add(List.of("--" + k.name(), (k.meaning() + ". " + k.right() + " " + must).replace("..", ".").strip()));
        }
        return "Example:  leeway calc " + c.name() + " " + c.example() + "\n\n" + page.table(List.of(), rows);
    }
}
