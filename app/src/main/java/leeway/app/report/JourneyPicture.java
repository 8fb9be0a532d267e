package leeway.app.report;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import leeway.app.report.Svg.At;

/**
 * The journey as a chart has it: the legs as a scale bar, below it what each store and the pack still hold, with the band
 * of 19 journeys in 20, the reserve dashed, and where to change over.
 */
public final class JourneyPicture {
    private static final int BAR_TOP = 30;
    private static final int BAR_HEIGHT = 14;
    private static final int LANE = 62;
    private static final int DEPTH = 44;

    private JourneyPicture() { }

    /** A leg, at the medians. */
    public record Stretch(String name, double startMin, double endMin) { }

    /** A moment worth a mark, with its words: "change over at 62 bar". */
    public record Mark(double atMin, String words) { }

    /**
     * What one store holds along the journey.
     *
     * @param full    the top of its scale
     * @param reserve what must be left at the end
     * @param atMin   times from departure, rising
     * @param low     19 of 20 journeys hold more
     */
    public record Run(String name, String unit, double full, OptionalDouble reserve, double[] atMin, double[] low, double[] mid, double[] high, List<Mark> marks) {
        public Run { marks = List.copyOf(marks); }
    }

    /** In a width of so many pixels; names stand beside the lanes where there is room, above them where there is not. */
    public static String of(String cssClass, int width, List<Stretch> legs, List<Run> runs) {
        boolean wide = width >= 600;
        int left = wide ? 128 : 4;
        int right = width - (wide ? 64 : 4);
        int head = wide ? 0 : 18;
        int lanesTop = BAR_TOP + BAR_HEIGHT + 20;
        int height = lanesTop + runs.size() * (LANE + head) + 22;
        double end = Math.max(legs.get(legs.size() - 1).endMin(), runs.stream().mapToDouble(r -> r.atMin()[r.atMin().length - 1]).max().orElse(0));
        Svg svg = new Svg("journey " + cssClass, width, height, says(legs, runs));
        double scale = (right - left) / end;
        for (int i = 0; i < legs.size(); i++) {
            Stretch leg = legs.get(i);
            double x1 = left + leg.startMin() * scale;
            double x2 = left + leg.endMin() * scale;
            svg.rect(i % 2 == 0 ? "leg land" : "leg sheet", x1, BAR_TOP, x2 - x1, BAR_HEIGHT);
            String name = Svg.width(leg.name(), 12) <= x2 - x1 - 4 ? leg.name() : String.valueOf(i + 1);
            svg.text("tick", x1 + 2, BAR_TOP - 7, At.START, name);
        }
        for (int i = 0; i < runs.size(); i++) lane(svg, runs.get(i), legs, left, right, lanesTop + i * (LANE + head) + head, scale, wide);
        axis(svg, left, scale, end, height - 6, wide ? 8 : 4);
        return svg.done();
    }

    private static void lane(Svg svg, Run run, List<Stretch> legs, int left, int right, int top, double scale, boolean wide) {
        double bottom = top + DEPTH;
        int n = run.atMin().length;
        double[] x = new double[n];
        double[] bandX = new double[2 * n];
        double[] bandY = new double[2 * n];
        double[] midY = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = left + run.atMin()[i] * scale;
            midY[i] = y(run, run.mid()[i], bottom);
            bandX[i] = x[i];
            bandY[i] = y(run, run.high()[i], bottom);
            bandX[2 * n - 1 - i] = x[i];
            bandY[2 * n - 1 - i] = y(run, run.low()[i], bottom);
        }
        String ends = amount(run.mid()[n - 1]) + (wide ? "" : " " + run.unit());
        if (wide) {
            svg.text("lab", 0, top + DEPTH / 2.0, At.START, run.name());
            svg.text("tick", 0, top + DEPTH / 2.0 + 15, At.START, amount(run.mid()[0]) + " " + run.unit());
            svg.text("tick", right + 6, Math.min(bottom, midY[n - 1] + 4), At.START, ends + " " + run.unit());
        } else {
            svg.text("lab", left, top - 5, At.START, run.name() + ": " + amount(run.mid()[0]) + " to " + ends);
        }
        for (Stretch leg : legs) svg.line("grid", left + leg.endMin() * scale, top, left + leg.endMin() * scale, bottom);
        svg.line("grid", left, bottom, right, bottom);
        svg.polygon("band", bandX, bandY);
        svg.polyline("mid", x, midY);
        if (run.reserve().isPresent()) {
            double r = y(run, run.reserve().getAsDouble(), bottom);
            svg.line("reserve", left, r, right, r);
        }
        double free = left - 4; // words stand below the lane, where no line runs; what finds no room there is in the list beside the picture
        for (Mark mark : run.marks()) {
            double at = left + mark.atMin() * scale;
            svg.line("mark", at, top - 2, at, bottom + 5);
            double width = Svg.width(mark.words(), 12);
            double from = at + 4 + width > right + (wide ? 60 : 0) ? at - 4 - width : at + 4;
            if (from < free) continue;
            svg.text("marked", from, bottom + 13, At.START, mark.words());
            free = from + width + 6;
        }
    }

    private static double y(Run run, double value, double bottom) {
        return bottom - DEPTH * Math.max(0, Math.min(1, run.full() <= 0 ? 0 : value / run.full()));
    }

    static void axis(Svg svg, int left, double scale, double endMin, int y, int most) {
        int[] steps = {5, 10, 15, 30, 60, 120, 240, 480, 960};
        int step = steps[steps.length - 1];
        for (int s : steps) {
            if (endMin / s <= most) {
                step = s;
                break;
            }
        }
        for (int t = 0; t <= endMin; t += step) {
            double x = left + t * scale;
            svg.line("axis", x, y - 16, x, y - 12);
            svg.text("tick", x, y, t == 0 ? At.START : At.MIDDLE, clock(t));
        }
    }

    /** "1:05". */
    static String clock(double min) {
        long whole = Math.round(min);
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static String amount(double v) { return Decimals.fixed(v, v < 10 ? 1 : 0); }

    private static String says(List<Stretch> legs, List<Run> runs) {
        StringBuilder s = new StringBuilder("The journey takes %s at the medians. ".formatted(clock(legs.get(legs.size() - 1).endMin())));
        for (Run r : runs) {
            int last = r.mid().length - 1;
            s.append("%s goes from %s to %s %s, in 19 of 20 journeys to no less than %s. ".formatted(r.name(), amount(r.mid()[0]), amount(r.mid()[last]), r.unit(),
                    amount(r.low()[last])));
            for (Mark m : r.marks()) s.append("At %s: %s. ".formatted(clock(m.atMin()), m.words()));
        }
        return s.toString().strip();
    }
}
