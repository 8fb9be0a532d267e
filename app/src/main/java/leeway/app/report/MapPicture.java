package leeway.app.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import leeway.app.report.Contours.Chain;
import leeway.app.report.Svg.At;
import leeway.core.map.OperatingMap;
import leeway.core.map.OperatingMap.Axis;
import leeway.core.map.OperatingMap.Limit;
import leeway.core.map.OperatingMap.Line;

/**
 * The operating map as a chart: land beyond a limit, shoal where little room is left, deep water where there is much; the
 * limits as named coasts, PaCO2 and oxygen as lines, the chosen settings as a ring. Hatching, line styles and words carry
 * the same as colour.
 */
public final class MapPicture {
    /** Rooms at which the water gets deeper: shoal to here, deep from here, deepest from here. */
    static final double SHOAL = 0.2, DEEP = 0.5;
    /** How far inland a limit's line is still drawn, in room. */
    private static final double INLAND = 0.05;
    private static final double FONT = 12;
    private static final int MOST_LINES = 4;
    /** Room by which a line may miss its level and still border it: what straight pieces between points cost. */
    private static final double NEAR = 0.02;
    private final OperatingMap map;
    private final Svg svg;
    private final String pattern;
    private final int left;
    private final int right;
    private final int top = 26;
    private final int bottom;
    private final List<double[]> taken = new ArrayList<>();

    private MapPicture(OperatingMap map, String cssClass, int width) {
        this.map = map;
        int height = Math.max(300, Math.min(520, (int) (width * 0.72)));
        this.left = 40;
        this.right = width - 10;
        this.bottom = height - 40;
        this.svg = new Svg(("operating " + cssClass).strip(), width, height, says(map));
        // a name of its own: a pattern in a picture that the page hides is no pattern for the one that it shows
        this.pattern = "inland" + (cssClass.isEmpty() ? "" : "-" + cssClass.replaceAll("[^a-z]+", "-"));
    }

    /** In a width of so many pixels, styled by the page around it. */
    public static String of(OperatingMap map, String cssClass, int width) { return new MapPicture(map, cssClass, width).draw(); }

    /** A file of its own, light and dark by the reader's choice. */
    public static String standalone(OperatingMap map, int width) {
        String svg = of(map, "", width);
        return svg.replaceFirst("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ").replaceFirst(">", "><style>" + STYLE + "</style>") + "\n";
    }

    /** What the picture shows, in a sentence. */
    public static String says(OperatingMap map) {
        OperatingMap.Chosen c = map.chosen();
        String point = "%s %s and %s %s".formatted(map.x().name(), value(map.x(), c.x()), map.y().name(), value(map.y(), c.y()));
        if (!c.beyond().isEmpty()) return "Room to every limit. The chosen %s lies beyond a limit: %s.".formatted(point, String.join(", ", c.beyond()));
        return "Room to every limit. The chosen %s has a room of %s of 1; %s comes first.".formatted(point, Figures.n(c.room(), 2), c.nearest());
    }

    static String value(Axis axis, double v) {
        if (axis.setting().kind() == leeway.core.quantity.Kind.FRACTION) return Figures.n(v * 100, 0) + " %";
        return Figures.n(v, Math.abs(v) < 10 && v != Math.rint(v) ? 1 : 0) + (axis.unit().equals("1") ? "" : " " + axis.unit());
    }

    private double px(double x) { return left + (x - first(map.x())) / (last(map.x()) - first(map.x())) * (right - left); }

    private double py(double y) { return bottom - (y - first(map.y())) / (last(map.y()) - first(map.y())) * (bottom - top); }

    private static double first(Axis a) { return a.values()[0]; }

    private static double last(Axis a) { return a.values()[a.values().length - 1]; }

    private String draw() {
        svg.raw("<defs><pattern id=\"" + pattern + "\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><line class=\"hatch\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"7\"/></pattern></defs>");
        svg.rect("deepest", left, top, right - left, bottom - top);
        for (Limit l : map.limits()) less("deep", l, DEEP);
        for (Limit l : map.limits()) less("shoal", l, SHOAL);
        for (Limit l : map.limits()) less("inland", l, 0);
        for (Limit l : map.limits()) less("hatched", l, 0);
        double cx = px(map.chosen().x());
        double cy = py(map.chosen().y());
        taken.add(new double[] {cx - 12, cy - 12, cx + 12, cy + 12});
        for (double level : new double[] {SHOAL, DEEP}) for (Limit l : map.limits()) {
            for (Chain c : Contours.lines(map.x().values(), map.y().values(), l.values(), l.at(level))) for (Chain part : where(c, level - NEAR)) polyline("depth", part);
        }
        List<Limit> inland = new ArrayList<>();
        for (Limit l : map.limits()) if (!coast(l)) inland.add(l);
        Line minutes = map.lines().stream().filter(l -> l.name().equals("minutes of supply")).findFirst().orElse(null);
        for (Line l : map.lines()) if (l != minutes) iso(l, minutes);
        for (Limit l : inland) behind(l);
        svg.circle("halo", cx, cy, 7);
        svg.circle("here", cx, cy, 7);
        frame();
        return svg.done();
    }

    /** Paints over where this limit leaves less room than the level: all limits together leave the water. */
    private void less(String cssClass, Limit l, double level) {
        double[][] beyond = new double[l.values().length][];
        for (int j = 0; j < beyond.length; j++) {
            beyond[j] = new double[l.values()[j].length];
            for (int i = 0; i < beyond[j].length; i++) beyond[j][i] = Double.isNaN(l.values()[j][i]) ? -1 : level - l.room(l.values()[j][i]);
        }
        StringBuilder d = new StringBuilder();
        for (Chain c : Contours.area(map.x().values(), map.y().values(), beyond, 1e-12)) {
            double lastX = Double.NaN;
            double lastY = Double.NaN;
            for (int i = 0; i < c.size(); i++) {
                double x = px(c.x()[i]);
                double y = py(c.y()[i]);
                boolean straight = i > 0 && i + 1 < c.size() && offLine(lastX, lastY, x, y, px(c.x()[i + 1]), py(c.y()[i + 1])) < 0.12;
                if (straight) continue;
                Svg.n(Svg.n(d.append(i == 0 ? 'M' : 'L'), x).append(' '), y);
                lastX = x;
                lastY = y;
            }
            d.append('Z');
        }
        if (d.length() > 0 && cssClass.equals("hatched")) svg.raw("<path class=\"hatched\" fill=\"url(#" + pattern + ")\" d=\"" + d + "\"/>");
        else if (d.length() > 0) svg.path(cssClass, d.toString());
    }

    /** How far a point lies from the line through its neighbours. */
    private static double offLine(double ax, double ay, double x, double y, double bx, double by) {
        double length = Math.hypot(bx - ax, by - ay);
        return length < 1e-9 ? Math.hypot(x - ax, y - ay) : Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / length;
    }

    private void polyline(String cssClass, Chain c) {
        double[] x = new double[c.size()];
        double[] y = new double[c.size()];
        for (int i = 0; i < x.length; i++) {
            x[i] = px(c.x()[i]);
            y[i] = py(c.y()[i]);
        }
        svg.polyline(cssClass, x, y);
    }

    /** A limit that borders no water, seen through the land: where the next one would be if the nearer gave way. */
    private void behind(Limit l) {
        if (l.name().startsWith("pH") || l.name().startsWith("PaCO2")) return;
        for (Chain c : Contours.lines(map.x().values(), map.y().values(), l.values(), l.limit())) {
            polyline("behind", c);
            if (length(c) > 60) name(c, words(l), "behind-name", false);
        }
    }

    /** The stretch of a limit that borders water, named where it is long enough; false where there is none. */
    private boolean coast(Limit l) {
        List<Chain> shore = new ArrayList<>();
        for (Chain c : Contours.lines(map.x().values(), map.y().values(), l.values(), l.limit())) shore.addAll(where(c, -INLAND));
        for (Chain c : shore) polyline("wall", c);
        shore.stream().max(Comparator.comparingDouble(this::length)).filter(c -> length(c) > 24).ifPresent(c -> name(c, words(l), "named", true));
        return !shore.isEmpty();
    }

    private static String words(Limit l) {
        String name = l.name().replace(" pressure", "").replace(" per body weight", "").replace(" high", "").replace(" low", "");
        double limit = l.unit().equals("1") && l.name().startsWith("saturation") ? l.limit() * 100 : l.limit();
        String unit = l.name().startsWith("saturation") ? " %" : l.name().startsWith("tidal") ? " mL/kg" : l.name().contains("power") ? " J/min" : l.name().contains("flow") ? " L/min" : "";
        return name + " " + Figures.n(limit, l.name().startsWith("pH") ? 2 : limit == Math.rint(limit) ? 0 : 1) + unit;
    }

    /** The stretches of a line that have at least this room. */
    private List<Chain> where(Chain c, double least) {
        List<Chain> runs = new ArrayList<>();
        List<double[]> run = new ArrayList<>();
        for (int i = 0; i < c.size(); i++) {
            if (signed(c.x()[i], c.y()[i]) > least) {
                run.add(new double[] {c.x()[i], c.y()[i]});
            } else {
                close(runs, run);
            }
        }
        close(runs, run);
        return runs;
    }

    private static void close(List<Chain> runs, List<double[]> run) {
        if (run.size() > 1) runs.add(new Chain(run.stream().mapToDouble(p -> p[0]).toArray(), run.stream().mapToDouble(p -> p[1]).toArray()));
        run.clear();
    }

    private double signedAt(double px, double py) {
        double fx = Math.max(0, Math.min(1, (px - left) / (right - left)));
        double fy = Math.max(0, Math.min(1, (bottom - py) / (bottom - top)));
        return signed(first(map.x()) + fx * (last(map.x()) - first(map.x())), first(map.y()) + fy * (last(map.y()) - first(map.y())));
    }

    private double signed(double x, double y) {
        double fi = (x - first(map.x())) / (last(map.x()) - first(map.x())) * (map.x().values().length - 1);
        double fj = (y - first(map.y())) / (last(map.y()) - first(map.y())) * (map.y().values().length - 1);
        int i = Math.max(0, Math.min(map.x().values().length - 2, (int) fi));
        int j = Math.max(0, Math.min(map.y().values().length - 2, (int) fj));
        double u = fi - i;
        double v = fj - j;
        double least = 1;
        for (Limit l : map.limits()) {
            double[][] s = l.values();
            double value = (1 - v) * ((1 - u) * s[j][i] + u * s[j][i + 1]) + v * ((1 - u) * s[j + 1][i] + u * s[j + 1][i + 1]);
            if (!Double.isNaN(value)) least = Math.min(least, l.room(value));
        }
        return least;
    }

    /** Some levels of a line, those that cross the water most. */
    private void iso(Line l, Line minutes) {
        record Level(double at, List<Chain> chains, double wet) { }
        List<Level> levels = new ArrayList<>();
        for (double at : l.levels()) {
            if (map.limits().stream().anyMatch(m -> m.name().startsWith(l.name() + " ") && m.limit() == at)) continue;
            List<Chain> chains = Contours.lines(map.x().values(), map.y().values(), l.values(), at);
            double wet = 0;
            for (Chain c : chains) for (int i = 0; i < c.size(); i++) if (signed(c.x()[i], c.y()[i]) > 0) wet++;
            if (wet > 2) levels.add(new Level(at, chains, wet));
        }
        levels.sort(Comparator.comparingDouble(Level::wet).reversed());
        boolean oxygen = l.name().equals("oxygen draw");
        for (Level level : levels.subList(0, Math.min(MOST_LINES, levels.size()))) {
            for (Chain c : level.chains()) polyline(oxygen ? "draw" : "iso", c);
            String words = oxygen ? Figures.n(level.at(), level.at() == Math.rint(level.at()) ? 0 : 1) + " L/min" + minutes(l, minutes, level.at()) : l.name() + " " + Figures.n(level.at(), 0);
            level.chains().stream().max(Comparator.comparingDouble(this::length)).ifPresent(c -> name(c, words, oxygen ? "drawn" : "iso-name", false));
        }
    }

    /** Draw and minutes are one family of lines: their product is what the stores hold. */
    private static String minutes(Line draw, Line minutes, double at) {
        if (minutes == null) return "";
        double held = minutes.values()[0][0] * draw.values()[0][0];
        if (!Double.isFinite(held)) return "";
        return ", " + (held / at > 24 * 60 ? "over 24 h" : Figures.minutesAtLeast(held / at));
    }

    private double length(Chain c) {
        double sum = 0;
        for (int i = 1; i < c.size(); i++) sum += Math.hypot(px(c.x()[i]) - px(c.x()[i - 1]), py(c.y()[i]) - py(c.y()[i - 1]));
        return sum;
    }

    /** Writes a name on its line, or beside it on the land, at the first place where it covers neither edge, ring nor another name; none where there is no such place. */
    private void name(Chain c, String words, String cssClass, boolean ashore) {
        double w = Svg.width(words, FONT);
        for (double share : new double[] {0.5, 0.35, 0.65, 0.22, 0.78, 0.12, 0.88, 0.05, 0.95}) {
            int i = (int) Math.round(share * (c.size() - 1));
            double onX = px(c.x()[i]);
            double onY = py(c.y()[i]);
            if (ashore) {
                int a = Math.max(0, i - 2);
                int b = Math.min(c.size() - 1, i + 2);
                double dx = px(c.x()[b]) - px(c.x()[a]);
                double dy = py(c.y()[b]) - py(c.y()[a]);
                double long2 = Math.max(1e-9, Math.hypot(dx, dy));
                double away = 10 + w / 2 * Math.abs(dy) / long2;
                double sx = -dy / long2 * away;
                double sy = dx / long2 * away;
                boolean landThere = signedAt(onX + sx, onY + sy) < signedAt(onX - sx, onY - sy);
                onX += landThere ? sx : -sx;
                onY += landThere ? sy : -sy;
            }
            double x = Math.max(left + w / 2 + 3, Math.min(right - w / 2 - 3, onX));
            double y = Math.max(top + 12, Math.min(bottom - 6, onY));
            if (Math.hypot(x - onX, y - onY) > w / 2 + 4) continue;
            double[] box = {x - w / 2 - 2, y - FONT * 0.6, x + w / 2 + 2, y + FONT * 0.6};
            if (taken.stream().anyMatch(t -> t[0] < box[2] && box[0] < t[2] && t[1] < box[3] && box[1] < t[3])) continue;
            taken.add(box);
            svg.text(cssClass, x, y + 4, At.MIDDLE, words);
            return;
        }
    }

    private void frame() {
        svg.raw("<rect class=\"frame\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>".formatted(left, top, right - left, bottom - top));
        for (double t : ticks(first(map.x()), last(map.x()))) {
            svg.line("axis", px(t), bottom, px(t), bottom + 5);
            svg.text("tick", px(t), bottom + 18, At.MIDDLE, tick(map.x(), t));
        }
        for (double t : ticks(first(map.y()), last(map.y()))) {
            svg.line("axis", left - 5, py(t), left, py(t));
            svg.text("tick", left - 8, py(t) + 4, At.END, tick(map.y(), t));
        }
        svg.text("lab", (left + right) / 2.0, bottom + 36, At.MIDDLE, map.x().name() + unit(map.x()));
        svg.text("lab", left - 34, top - 10, At.START, map.y().name() + unit(map.y()));
    }

    private static String unit(Axis a) { return a.setting().kind() == leeway.core.quantity.Kind.FRACTION ? ", %" : a.unit().equals("1") ? "" : ", " + a.unit(); }

    private static String tick(Axis a, double t) {
        double v = a.setting().kind() == leeway.core.quantity.Kind.FRACTION ? t * 100 : t;
        String text = Decimals.fixed(v, 2);
        return text.endsWith("00") ? text.substring(0, text.length() - 3) : text.endsWith("0") ? text.substring(0, text.length() - 1) : text;
    }

    static double[] ticks(double from, double to) {
        double raw = (to - from) / 6;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double step = raw / power < 1.5 ? power : raw / power < 3.5 ? 2 * power : raw / power < 7.5 ? 5 * power : 10 * power;
        List<Double> ticks = new ArrayList<>();
        for (double t = Math.ceil(from / step - 1e-9) * step; t <= to + 1e-9 * step; t += step) ticks.add(Math.rint(Math.rint(t / step) * step * 1e9) / 1e9);
        return ticks.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static final String STYLE = ":root{color-scheme:light dark;--sheet:#fffdf7;--ink:#14263d;--soft:#526273;--shoal2:#fae6b4;--deep:#dcebf2;--deep2:#a9cfe3;--land:#e5dcc3;--crew:#7a5b00}"
            + "@media (prefers-color-scheme:dark){:root{--sheet:#16222e;--ink:#e9e4d6;--soft:#a6b6c5;--shoal2:#4d431f;--deep:#183447;--deep2:#27597a;--land:#3a3527;--crew:#e0b84f}}"
            + "svg{background:var(--sheet);font:12px \"Atkinson Hyperlegible\",system-ui,\"DejaVu Sans\",sans-serif}text{fill:var(--ink)}.tick{fill:var(--soft);font-size:12px}.lab{font-size:13px}.axis{stroke:var(--ink);stroke-width:.8}"
            + ".operating .inland{fill:var(--land);fill-rule:evenodd}.operating .hatched{fill-rule:evenodd}.operating .hatch{stroke:var(--soft);stroke-width:.45}.operating .shoal{fill:var(--shoal2);fill-rule:evenodd}.operating .deep{fill:var(--deep);fill-rule:evenodd}.operating .deepest{fill:var(--deep2);fill-rule:evenodd}"
            + ".operating .depth{fill:none;stroke:var(--soft);stroke-width:.7;stroke-dasharray:1 3}.operating .wall{fill:none;stroke:var(--ink);stroke-width:2}"
            + ".operating .iso{fill:none;stroke:var(--ink);stroke-width:.8}.operating .draw{fill:none;stroke:var(--crew);stroke-width:1;stroke-dasharray:6 4}"
            + ".operating .behind{fill:none;stroke:var(--soft);stroke-width:.9;stroke-dasharray:2 4}"
            + ".operating .named,.operating .behind-name,.operating .iso-name,.operating .drawn{font-size:12px;stroke:var(--sheet);stroke-width:3.5px;paint-order:stroke;stroke-linejoin:round}.operating .named{font-weight:700}.operating .drawn{fill:var(--crew)}.operating .behind-name{fill:var(--soft)}"
            + ".operating .halo{fill:none;stroke:var(--sheet);stroke-width:7}.operating .here{fill:none;stroke:var(--ink);stroke-width:3}.operating .frame{fill:none;stroke:var(--ink);stroke-width:1}";

    /** Style rules of the picture's own classes, for the style sheet of a page that defines the palette. */
    public static String rules() { return STYLE.substring(STYLE.indexOf(".operating .inland{")).replace(".operating", "svg.operating"); }
}
