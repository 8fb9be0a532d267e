package leeway.app.report;

import java.util.List;
import leeway.app.report.JourneyPicture.Stretch;
import leeway.app.report.Svg.At;

/** The patient's gases along the journey: a lane a measure, with its band where one is known; a fall on the climb, a rise with a change of settings. */
public final class GasPicture {
    private static final int LANE = 74;
    private static final int DEPTH = 54;

    private GasPicture() { }

    /**
     * One measure along the journey.
     *
     * @param floor the bottom of its scale, {@code top} the top of it
     * @param low   NaN-free and as long as {@code mid}, or empty where no band is known
     */
    public record Lane(String name, String unit, double floor, double top, double[] atMin, double[] mid, double[] low, double[] high) { }

    public static String of(String cssClass, int width, List<Stretch> legs, List<Lane> lanes) {
        boolean wide = width >= 600;
        int left = wide ? 128 : 34;
        int right = width - 4;
        int head = wide ? 0 : 16;
        int height = 26 + lanes.size() * (LANE + head) + 18;
        double end = legs.get(legs.size() - 1).endMin();
        double scale = (right - left) / end;
        Svg svg = new Svg("gases " + cssClass, width, height, says(lanes));
        for (int i = 0; i < legs.size(); i++) {
            Stretch leg = legs.get(i);
            double room = (leg.endMin() - leg.startMin()) * scale;
            svg.text("tick", left + leg.startMin() * scale + 2, 12, At.START, Svg.width(leg.name(), 12) < room - 4 ? leg.name() : String.valueOf(i + 1));
        }
        for (int k = 0; k < lanes.size(); k++) {
            Lane lane = lanes.get(k);
            int top = 26 + k * (LANE + head) + head;
            int bottom = top + DEPTH;
            for (Stretch leg : legs) svg.line("grid", left + leg.endMin() * scale, top, left + leg.endMin() * scale, bottom);
            svg.line("grid", left, bottom, right, bottom);
            svg.line("grid", left, top, right, top);
            if (wide) svg.text("lab", 0, top + 26, At.START, lane.name()).text("tick", 0, top + 42, At.START, lane.unit());
            else svg.text("lab", left, top - 5, At.START, lane.name() + ", " + lane.unit());
            svg.text("tick", left - 4, top + 8, At.END, whole(lane.top()));
            svg.text("tick", left - 4, bottom, At.END, whole(lane.floor()));
            int n = lane.mid().length;
            double[] x = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = left + Math.min(end, lane.atMin()[i]) * scale;
                y[i] = y(lane, lane.mid()[i], bottom);
            }
            if (lane.low().length == n) {
                double[] bx = new double[2 * n];
                double[] by = new double[2 * n];
                for (int i = 0; i < n; i++) {
                    bx[i] = x[i];
                    by[i] = y(lane, lane.high()[i], bottom);
                    bx[2 * n - 1 - i] = x[i];
                    by[2 * n - 1 - i] = y(lane, lane.low()[i], bottom);
                }
                svg.polygon("band", bx, by);
            }
            svg.polyline("mid", x, y);
        }
        JourneyPicture.axis(svg, left, scale, end, height - 4, wide ? 8 : 4);
        return svg.done();
    }

    private static double y(Lane lane, double v, int bottom) {
        return bottom - DEPTH * Math.max(0, Math.min(1, (v - lane.floor()) / (lane.top() - lane.floor())));
    }

    private static String whole(double v) { return Decimals.fixed(v, 0); }

    private static String says(List<Lane> lanes) {
        StringBuilder s = new StringBuilder();
        for (Lane l : lanes) {
            double min = Double.MAX_VALUE;
            double max = -Double.MAX_VALUE;
            for (double v : l.mid()) {
                min = Math.min(min, v);
                max = Math.max(max, v);
            }
            s.append("%s starts at %s, lies between %s and %s, ends at %s %s. ".formatted(l.name(), whole(l.mid()[0]), whole(min), whole(max), whole(l.mid()[l.mid().length - 1]), l.unit()));
        }
        return s.toString().strip();
    }
}
