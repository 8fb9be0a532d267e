package leeway.app.report;

import java.util.List;
import leeway.app.report.Svg.At;
import leeway.core.map.Sensitivity.Result;
import leeway.core.map.Sensitivity.Swing;

/** What moves one result most: a bar an input, from its low end (open) to its high end (filled), around the median; the widest on top. */
public final class TornadoPicture {
    private static final int ROW = 26;
    private static final int MOST = 6;

    private TornadoPicture() { }

    /** In a width of so many pixels. */
    public static String of(Result r, String cssClass, int width) {
        List<Swing> swings = r.swings().subList(0, Math.min(MOST, r.swings().size()));
        int left = Math.min(190, width / 3);
        int right = width - 14;
        int height = 34 + swings.size() * ROW + 22;
        double low = r.central();
        double high = r.central();
        for (Swing s : swings) {
            low = Math.min(low, Math.min(s.atLow(), s.atHigh()));
            high = Math.max(high, Math.max(s.atLow(), s.atHigh()));
        }
        double pad = Math.max(1e-9, 0.08 * (high - low));
        double from = low - pad;
        double to = high + pad;
        double scale = (right - left) / (to - from);
        Svg svg = new Svg(("tornado " + cssClass).strip(), width, height, says(r));
        svg.text("lab", 0, 16, At.START, r.name() + (r.unit().equals("1") ? "" : ", " + r.unit()) + ": " + value(r, r.central()) + " at the medians");
        for (double t : MapPicture.ticks(from, to)) {
            double x = left + (t - from) * scale;
            svg.line("grid", x, 28, x, 34 + swings.size() * ROW);
            svg.text("tick", x, height - 6, At.MIDDLE, value(r, t));
        }
        for (int i = 0; i < swings.size(); i++) {
            Swing s = swings.get(i);
            double y = 34 + i * ROW + 5;
            double middle = left + (r.central() - from) * scale;
            bar(svg, "swing-low", middle, left + (s.atLow() - from) * scale, y);
            bar(svg, "swing-high", middle, left + (s.atHigh() - from) * scale, y);
            svg.text("tick", 0, y + 7, At.START, s.input());
            svg.text("tick ends", 0, y + 18, At.START, s.low() + " to " + s.high());
        }
        double middle = left + (r.central() - from) * scale;
        svg.line("axis", middle, 28, middle, 34 + swings.size() * ROW);
        return svg.done();
    }

    private static void bar(Svg svg, String cssClass, double middle, double end, double y) { svg.rect(cssClass, Math.min(middle, end), y, Math.abs(end - middle), 12); }

    static String says(Result r) {
        Swing s = r.swings().get(0);
        return "%s is %s at the medians; %s moves it most, from %s (%s) to %s (%s).".formatted(r.name().equals("pH") ? "pH" : Character.toUpperCase(r.name().charAt(0)) + r.name().substring(1), value(r, r.central()) + unit(r), s.input(),
                value(r, s.atLow()), s.low(), value(r, s.atHigh()), s.high());
    }

    private static String unit(Result r) { return r.unit().equals("1") ? "" : " " + r.unit(); }

    static String value(Result r, double v) {
        if (r.name().equals("saturation")) return Figures.n(v * 100, 0) + " %";
        if (r.name().equals("pH")) return Figures.n(v, 2);
        return Figures.n(v, Math.abs(v) < 10 ? 1 : 0);
    }

    /** Style rules of the picture's own classes. */
    public static String rules() {
        return "svg.tornado .swing-low{fill:var(--sheet);stroke:var(--ink);stroke-width:1.2}svg.tornado .swing-high{fill:var(--deep2);stroke:var(--ink);stroke-width:1.2}svg.tornado .ends{font-size:12px}";
    }
}
