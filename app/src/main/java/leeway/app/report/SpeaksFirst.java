package leeway.app.report;

import java.util.List;
import leeway.app.report.Svg.At;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearsal.Coverage;

/**
 * Who speaks first: a row a fault on a logarithmic axis of time. Triangle: the alarm; dotted: the crew at work; blue bar: room
 * left; thin red bar: debt; open diamond: harm; fine red dots: no alarm speaks. Uncovered rows come first.
 */
public final class SpeaksFirst {
    private static final double FROM_S = 1;
    private static final double[] TICKS_S = {1, 3, 10, 30, 60, 180, 300, 900, 1800, 3600, 7200};

    private SpeaksFirst() { }

    /** The rows that have something to show: those with harm. */
    static List<Rehearsal> shown(List<Rehearsal> all) { return all.stream().filter(r -> r.harm().isPresent()).toList(); }

    /** The picture; empty where nothing harms. Below 600 wide, names stand above their rows. */
    public static String svg(String cssClass, int width, List<Rehearsal> all) {
        List<Rehearsal> rows = shown(all);
        if (rows.isEmpty()) return "";
        boolean wide = width >= 600;
        int left = wide ? 270 : 6;
        int right = width - 16;
        int each = wide ? 30 : 48;
        int top = 22;
        int height = top + rows.size() * each + 6;
        double most = most(rows);
        Svg svg = new Svg("speaks " + cssClass, width, height, says(all));
        double lastX = Double.NEGATIVE_INFINITY;
        for (double t : TICKS_S) {
            if (t > most * 1.001) break;
            double x = x(t, left, right, most);
            svg.line("grid", x, top, x, height - 4);
            // the last one ends at the edge, so it starts further left
            if (x - lastX < (x > right - 20 ? 52 : 34)) continue;
            svg.text("tick", x, 14, x > right - 20 ? At.END : t == FROM_S ? At.START : At.MIDDLE, tick(t));
            lastX = x;
        }
        for (int i = 0; i < rows.size(); i++) {
            Rehearsal r = rows.get(i);
            double y = top + i * each + (wide ? each / 2.0 : 31);
            svg.text("lab", 0, wide ? y + 4 : y - 13, At.START, r.fault().name());
            row(svg, r, y, left, right, most, wide);
        }
        return svg.done();
    }

    private static void row(Svg svg, Rehearsal r, double y, int left, int right, double most, boolean wide) {
        double harmX = x(r.harm().orElseThrow().afterS(), left, right, most);
        if (r.coverage() == Coverage.SILENT) {
            svg.line("silent", left, y, harmX, y);
            if (harmX - left > 140 || !wide) svg.text("say", left + 4, wide ? y - 5 : y + 14, At.START, r.lateAlarm().isPresent() ? "no alarm before harm" : "no alarm speaks");
            r.lateAlarm().filter(a -> a.afterS() <= most).ifPresent(a -> bell(svg, x(a.afterS(), left, right, most), y));
        } else {
            double alarmS = r.alarm().orElseThrow().afterS();
            double readyS = alarmS + r.crewTimeS();
            double rescueS = r.rescueByS().orElse(0);
            double alarmX = x(alarmS, left, right, most);
            double readyX = x(readyS, left, right, most);
            double rescueX = x(rescueS, left, right, most);
            if (rescueS >= readyS) svg.line("room", readyX, y, Math.max(readyX + 1, rescueX), y);
            svg.line("crew", alarmX, y, readyX, y);
            if (rescueS < readyS) svg.line("debt", rescueX, y + 5, readyX, y + 5);
            bell(svg, alarmX, y);
        }
        svg.polygon("harm", new double[] {harmX, harmX + 6, harmX, harmX - 6}, new double[] {y - 6, y, y + 6, y});
    }

    private static void bell(Svg svg, double x, double y) { svg.polygon("bell", new double[] {x, x + 5, x - 5}, new double[] {y - 6, y + 4, y + 4}); }

    static double most(List<Rehearsal> rows) {
        double most = 900;
        for (Rehearsal r : rows) {
            most = Math.max(most, r.harm().orElseThrow().afterS());
            if (r.alarm().isPresent()) most = Math.max(most, r.alarm().get().afterS() + r.crewTimeS());
        }
        return Math.min(most, 7200);
    }

    private static double x(double s, int left, int right, double most) { return left + place(s, most) * (right - left); }

    /** 0 at one second, 1 at the end, logarithmic between. */
    static double place(double s, double most) { return Math.max(0, Math.min(1, Math.log(Math.max(s, FROM_S) / FROM_S) / Math.log(most / FROM_S))); }

    static String tick(double s) { return s < 60 ? Decimals.fixed(s, 0) + " s" : s < 3600 ? Decimals.fixed(s / 60, 0) + " min" : Decimals.fixed(s / 3600, 0) + " h"; }

    /** The picture in a sentence or two. */
    static String says(List<Rehearsal> all) {
        long uncovered = all.stream().filter(r -> r.coverage().uncovered()).count();
        long inTime = all.stream().filter(r -> r.coverage() == Coverage.IN_TIME).count();
        StringBuilder s = new StringBuilder("Margins by fault: %d uncovered, %d in time.".formatted(uncovered, inTime));
        shown(all).stream().limit(5).forEach(r -> s.append(' ').append(r.fault().name()).append(": ").append(r.coverage().words())
                .append(r.marginS().isPresent() ? ", margin " + Figures.seconds(r.marginS().getAsDouble()) : "").append('.'));
        return s.toString();
    }

    /** The picture for a terminal: names, then the axis in what is left of the width. */
    public static String text(List<Rehearsal> all, int width) {
        List<Rehearsal> rows = shown(all);
        if (rows.isEmpty()) return "";
        int names = Math.min(32, rows.stream().mapToInt(r -> r.fault().name().length()).max().orElse(0));
        int room = width - names - 1;
        double most = most(rows);
        StringBuilder s = new StringBuilder();
        char[] axis = blank(room);
        for (double t : TICKS_S) {
            if (t > most * 1.001) break;
            int at = column(t, most, room);
            String words = tick(t);
            int from = Math.min(at, room - words.length());
            boolean free = from >= 0 && (from == 0 || axis[from - 1] == ' ');
            for (int i = from; free && i < from + words.length(); i++) free = axis[i] == ' ';
            if (free) words.getChars(0, words.length(), axis, from);
        }
        line(s, "", names, axis);
        for (Rehearsal r : rows) {
            char[] c = blank(room);
            int harm = column(r.harm().orElseThrow().afterS(), most, room);
            if (r.coverage() == Coverage.SILENT) {
                fill(c, 0, harm, '.');
                "no alarm".getChars(0, Math.min(8, Math.max(0, harm - 1)), c, 0);
            } else {
                double ready = r.alarm().orElseThrow().afterS() + r.crewTimeS();
                int alarm = column(r.alarm().get().afterS(), most, room);
                int readyAt = column(ready, most, room);
                int rescue = column(r.rescueByS().orElse(0), most, room);
                fill(c, alarm, readyAt, '·');
                if (r.rescueByS().orElse(0) >= ready) fill(c, readyAt, rescue, '=');
                else fill(c, rescue, readyAt, '!');
                c[alarm] = '▲';
            }
            c[harm] = '◇';
            line(s, r.fault().name(), names, c);
        }
        return s.toString();
    }

    /** What the signs of the terminal picture mean. */
    public static final String LEGEND = "▲ alarm   · crew at work   = room left   ! debt   ◇ harm   . no alarm";

    private static char[] blank(int n) {
        char[] c = new char[n];
        java.util.Arrays.fill(c, ' ');
        return c;
    }

    private static void fill(char[] c, int from, int to, char with) { for (int i = Math.max(0, from); i <= Math.min(to, c.length - 1); i++) c[i] = with; }

    private static int column(double s, double most, int room) { return (int) Math.round(place(s, most) * (room - 1)); }

    private static void line(StringBuilder s, String name, int names, char[] c) {
        String shortened = name.length() <= names ? name : name.substring(0, names - 1) + "…";
        s.append((shortened + " ".repeat(names - shortened.length() + 1) + new String(c)).stripTrailing()).append('\n');
    }
}
