package leeway.app.report;

import java.util.List;
import leeway.app.report.Svg.At;
import leeway.core.map.Sensitivity.Result;
import leeway.core.map.Sensitivity.Swing;

/**
 * What moves one result most: an input's name and ends, under it a bar from its low end (open) to its high end (filled),
 * around the median; the widest on top.
 */
public final class TornadoPicture {
    private static final int ROW = 38, BAR = 12, TOP = 30, MARGIN = 18;
    private static final int MOST = 6;

    private TornadoPicture() { }

    /** In a width of so many pixels. */
    public static String of(Result r, String cssClass, int width) {
        List<Swing> swings = r.swings().subList(0, Math.min(MOST, r.swings().size()));
        int left = MARGIN;
        int right = width - MARGIN;
        int foot = TOP + swings.size() * ROW;
        int height = foot + 24;
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
        double middle = left + (r.central() - from) * scale;
        double[] ticks = MapPicture.ticks(from, to);
        int decimals = decimals(r, ticks);
        String percent = r.name().equals("saturation") ? " %" : "";
        svg.text("lab", left, 16, At.START, r.name() + (r.unit().equals("1") ? "" : ", " + r.unit()) + ": " + Figures.n(r.central() * times(r), decimals) + percent + " at the medians");
        for (double t : ticks) {
            double x = left + (t - from) * scale;
            for (int i = 0; i < swings.size(); i++) svg.line("grid", x, TOP + i * ROW + 16, x, TOP + i * ROW + 16 + BAR + 6);
            svg.text("tick", x, height - 6, At.MIDDLE, Figures.n(t * times(r), decimals) + percent);
        }
        for (int i = 0; i < swings.size(); i++) {
            Swing s = swings.get(i);
            double y = TOP + i * ROW;
            svg.text("tick", left, y + 12, At.START, s.input() + ", " + minus(s.low()) + " to " + minus(s.high()));
            bar(svg, "swing-low", middle, left + (s.atLow() - from) * scale, y + 19);
            bar(svg, "swing-high", middle, left + (s.atHigh() - from) * scale, y + 19);
            svg.line("axis", middle, y + 16, middle, y + 16 + BAR + 6);
        }
        return svg.done();
    }

    /** As many decimals as it takes to print every tick as what it is. */
    private static int decimals(Result r, double[] ticks) {
        for (int d = 0; d < 4; d++) {
            double unit = Math.pow(10, d);
            boolean exact = true;
            for (double t : ticks) exact &= Math.abs(Math.rint(t * times(r) * unit) / unit - t * times(r)) < 1e-6;
            if (exact) return d;
        }
        return 4;
    }

    private static double times(Result r) { return r.name().equals("saturation") ? 100 : 1; }

    /** A true minus before a figure. */
    static String minus(String words) { return words.replaceAll("-(?=\\d)", "−"); }

    private static void bar(Svg svg, String cssClass, double middle, double end, double y) { svg.rect(cssClass, Math.min(middle, end), y, Math.abs(end - middle), BAR); }

    static String says(Result r) {
        Swing s = r.swings().get(0);
        return "%s is %s at the medians; %s moves it most, from %s (%s) to %s (%s).".formatted(r.name().equals("pH") ? "pH" : Character.toUpperCase(r.name().charAt(0)) + r.name().substring(1), value(r, r.central()) + unit(r), s.input(),
                value(r, s.atLow()), minus(s.low()), value(r, s.atHigh()), minus(s.high()));
    }

    private static String unit(Result r) { return r.unit().equals("1") ? "" : " " + r.unit(); }

    static String value(Result r, double v) {
        if (r.name().equals("saturation")) return Figures.n(v * 100, 0) + " %";
        if (r.name().equals("pH")) return Figures.n(v, 2);
        return Figures.n(v, Math.abs(v) < 10 ? 1 : 0);
    }

    /** Style rules of the picture's own classes. */
    public static String rules() {
        return "svg.tornado .swing-low{fill:var(--sheet);stroke:var(--ink);stroke-width:1.2}svg.tornado .swing-high{fill:var(--deep2);stroke:var(--ink);stroke-width:1.2}";
    }
}
