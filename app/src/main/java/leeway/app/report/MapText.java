package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import leeway.core.map.OperatingMap;
import leeway.core.map.OperatingMap.Axis;
import leeway.core.map.OperatingMap.Chosen;
import leeway.core.map.OperatingMap.Limit;
import leeway.core.map.OperatingMap.Turn;
import leeway.core.settings.Solved.Conflict;
import leeway.core.start.Start;

/** The operating map for a terminal: where the chosen settings lie, how far each knob may be turned, a chart of characters. */
public final class MapText {
    private static final int ROWS = 20;

    private MapText() { }

    public static String of(OperatingMap map, Start start, int width, boolean colour) {
        TextPage page = new TextPage(width, colour);
        Chosen c = map.chosen();
        page.strong(c.room() > 0 ? TextPage.Tone.STRONG : TextPage.Tone.BAD, map.title()).paragraph(PlanText.CAUTION);
        page.paragraph(MapPicture.says(map));
        map.little().ifPresent(page::paragraph);
        start.picked().ifPresent(p -> page.paragraph(Character.toUpperCase(p.charAt(0)) + p.substring(1) + "."));
        page.heading("How far each knob may be turned alone", "until a limit is reached");
        List<String> turns = new ArrayList<>();
        c.turnX().ifPresent(t -> turns.add(turn(map.x(), c.x(), t)));
        c.turnY().ifPresent(t -> turns.add(turn(map.y(), c.y(), t)));
        page.items(turns.isEmpty() ? List.of("The chosen settings lie beyond a limit: " + String.join(", ", c.beyond()) + ".") : turns);
        if (!start.solved().conflicts().isEmpty()) {
            page.heading("What cannot be kept", "");
            page.items(start.solved().conflicts().stream().map(Conflict::sentence).toList());
        }
        page.heading("Room", "# beyond a limit   : little   . some   blank: much   O chosen");
        for (String line : chart(map)) page.verbatim(line);
        page.heading("At the chosen settings", "limit");
        page.table(List.of("", "value", "limit"), rows(map));
        page.heading("What moves the results most", "19 of 20 of its kind");
        page.items(map.sensitivity().results().stream().map(TornadoPicture::says).toList());
        page.blank();
        map.held().forEach(page::paragraph);
        return page.toString();
    }

    private static String turn(Axis axis, double chosen, Turn t) {
        String from = t.endsFrom().isEmpty() ? "at least down to" : "down to";
        String to = t.endsTo().isEmpty() ? "at least up to" : "up to";
        return "%s %s: %s %s%s, %s %s%s.".formatted(axis.name(), MapPicture.value(axis, chosen), from, MapPicture.value(axis, t.from()), t.endsFrom().isEmpty() ? "" : " (then " + t.endsFrom() + ")",
                to, MapPicture.value(axis, t.to()), t.endsTo().isEmpty() ? "" : " (then " + t.endsTo() + ")");
    }

    private static List<String> chart(OperatingMap map) {
        double[] ys = map.y().values();
        double[] xs = map.x().values();
        int rows = Math.min(ROWS, ys.length);
        List<String> lines = new ArrayList<>();
        int chosenI = nearest(xs, map.chosen().x());
        int chosenRow = -1;
        int best = Integer.MAX_VALUE;
        int chosenJ = nearest(ys, map.chosen().y());
        for (int r = 0; r < rows; r++) {
            int distance = Math.abs(j(r, rows, ys.length) - chosenJ);
            if (distance < best) {
                best = distance;
                chosenRow = r;
            }
        }
        for (int r = 0; r < rows; r++) {
            int j = j(r, rows, ys.length);
            StringBuilder line = new StringBuilder("%10s |".formatted(r % 4 == 0 ? MapPicture.value(map.y(), ys[j]) : ""));
            for (int i = 0; i < xs.length; i++) line.append(r == chosenRow && i == chosenI ? 'O' : mark(map.signed()[j][i]));
            lines.add(line.append('|').toString());
        }
        String low = MapPicture.value(map.x(), xs[0]);
        String high = MapPicture.value(map.x(), xs[xs.length - 1]);
        String name = map.x().name();
        int gap = Math.max(2, xs.length + 2 - low.length() - high.length() - name.length());
        lines.add(" ".repeat(11) + low + " ".repeat(gap / 2) + name + " ".repeat(gap - gap / 2) + high);
        return lines;
    }

    /** Rows from the top, the highest value first. */
    private static int j(int row, int rows, int n) { return n - 1 - (int) Math.round(row * (n - 1) / (double) Math.max(1, rows - 1)); }

    private static char mark(double signed) { return signed <= 0 ? '#' : signed < MapPicture.SHOAL ? ':' : signed < MapPicture.DEEP ? '.' : ' '; }

    private static int nearest(double[] values, double v) {
        int best = 0;
        for (int i = 1; i < values.length; i++) if (Math.abs(values[i] - v) < Math.abs(values[best] - v)) best = i;
        return best;
    }

    private static List<List<String>> rows(OperatingMap map) {
        List<List<String>> rows = new ArrayList<>();
        for (Limit l : map.limits()) {
            if (!Double.isNaN(at(map, l.values()))) rows.add(row(map, l));
        }
        for (OperatingMap.Line l : map.lines()) rows.add(List.of(l.name(), Figures.n(at(map, l.values()), l.unit().equals("L/min") ? 1 : 0) + " " + l.unit(), ""));
        return rows;
    }

    /** A limit's name, its value at the chosen settings, the limit. */
    static List<String> row(OperatingMap map, Limit l) {
        double v = at(map, l.values());
        return List.of(l.name(), Double.isNaN(v) ? "" : amount(l, v), (l.upper() ? "at most " : "at least ") + amount(l, l.limit()));
    }

    private static String amount(Limit l, double v) {
        if (l.name().startsWith("pH")) return Figures.n(v, 2);
        if (l.unit().equals("1")) return Figures.percent(v);
        return Figures.n(v, Math.abs(v) < 10 ? 1 : 0) + " " + l.unit();
    }

    /** Between the points of the grid, straight. */
    private static double at(OperatingMap map, double[][] grid) {
        double[] xs = map.x().values();
        double[] ys = map.y().values();
        double fi = (map.chosen().x() - xs[0]) / (xs[xs.length - 1] - xs[0]) * (xs.length - 1);
        double fj = (map.chosen().y() - ys[0]) / (ys[ys.length - 1] - ys[0]) * (ys.length - 1);
        int i = Math.max(0, Math.min(xs.length - 2, (int) fi));
        int j = Math.max(0, Math.min(ys.length - 2, (int) fj));
        double u = fi - i;
        double w = fj - j;
        return (1 - w) * ((1 - u) * grid[j][i] + u * grid[j][i + 1]) + w * ((1 - u) * grid[j + 1][i] + u * grid[j + 1][i + 1]);
    }
}
