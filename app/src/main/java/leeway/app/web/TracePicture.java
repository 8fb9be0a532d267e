package leeway.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import leeway.app.report.Figures;
import leeway.app.report.Svg;
import leeway.app.report.Svg.At;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.Trace.Row;
import leeway.core.rehearsal.Trace.Said;
import leeway.core.rehearsal.Trace.What;

/**
 * A fault along its own time: above, who speaks and, with the truth, the margin on the same scale; below, a lane a measure
 * with what is true as a full line and what each device shows as a broken one, held from one breath to the next as a
 * display holds it. While the truth is hidden, no scale tells what is still to come. A lecture drawing on paper, not a
 * screen: nothing runs, nothing glows.
 */
final class TracePicture {
    private static final int LANE = 96;
    private static final int DEPTH = 66;
    private final Words words;
    private final Trace trace;
    private final double untilS;
    private final boolean truth;
    private final Optional<Rehearsal> judged;
    private final int width;
    private final int left;
    private final int right;
    private final double fromS;
    private final double toS;

    private TracePicture(Words words, Trace trace, double untilS, boolean truth, Optional<Rehearsal> judged, int width) {
        this.words = words;
        this.trace = trace;
        this.untilS = untilS;
        this.truth = truth;
        this.judged = truth ? judged.filter(r -> r.harm().isPresent()) : Optional.empty();
        this.width = width;
        left = width >= 600 ? 132 : 40;
        right = width - (width >= 600 ? 112 : 64);
        fromS = trace.rows().isEmpty() ? 0 : Math.min(0, trace.rows().get(0).tS());
        toS = trace.rows().isEmpty() ? 1 : trace.rows().get(trace.rows().size() - 1).tS();
    }

    /** One line of a lane. */
    private record Line(String name, String cssClass, ToDoubleFunction<Row> of, boolean held) { }

    /** A measure. */
    private record Lane(String name, String unit, double step, double least, double most, double floor, List<Line> lines) { }

    /**
     * @param untilS drawn up to this time after the fault
     * @param truth  whether what is true is drawn as well
     * @param judged how the fault is judged, for the margin on the same scale
     */
    static String of(Words words, Trace trace, double untilS, boolean truth, Optional<Rehearsal> judged, String cssClass, int width) {
        return new TracePicture(words, trace, untilS, truth, judged, width).draw(cssClass);
    }

    private List<Lane> lanes() {
        List<Lane> lanes = new ArrayList<>();
        lane(lanes, "trace.saturation", "%", 10, 60, 100, -1, truly("SaO2", r -> r.sao2() * 100, false), shown(r -> r.ventilator().spo2() * 100, r -> r.monitor().spo2() * 100));
        lane(lanes, "trace.co2", "mmHg", 10, 0, 60, 0, truly("PaCO2", Row::paco2MmHg, false), shown(r -> r.ventilator().etco2MmHg(), r -> r.monitor().etco2MmHg()));
        lane(lanes, "trace.volume", "mL", 100, 0, 100, 0, truly(words.say("trace.atPatient"), Row::expiredMl, true), shown(r -> r.ventilator().expiredMl(), r -> r.monitor().expiredMl()));
        lane(lanes, "trace.peak", "cmH2O", 10, 0, 30, 0, truly(words.say("trace.atPatient"), Row::peakCmH2O, true), shown(r -> r.ventilator().peakCmH2O(), r -> r.monitor().peakCmH2O()));
        return lanes;
    }

    private static Line truly(String name, ToDoubleFunction<Row> of, boolean held) { return new Line(name, "mid", of, held); }

    private List<Line> shown(ToDoubleFunction<Row> ventilator, ToDoubleFunction<Row> monitor) {
        return List.of(new Line(words.say("trace.ventilator"), "byvent", ventilator, true), new Line(words.say("trace.monitor"), "bymon", monitor, true));
    }

    private void lane(List<Lane> lanes, String key, String unit, double step, double least, double most, double floor, Line truth, List<Line> shown) {
        List<Line> lines = new ArrayList<>();
        if (this.truth && known(truth)) lines.add(truth);
        shown.stream().filter(this::known).forEach(lines::add);
        if (lines.isEmpty()) return;
        double low = floor >= 0 ? floor : least;
        double high = most;
        for (Line line : lines) {
            for (Row r : trace.rows()) {
                if (!this.truth && r.tS() > untilS) break;
                double v = line.of.applyAsDouble(r);
                if (!Double.isFinite(v)) continue;
                if (floor < 0 && v > 0) low = Math.min(low, Math.floor(v / step) * step);
                high = Math.max(high, Math.ceil(v / step) * step);
            }
        }
        if (unit.equals("%")) high = 100;
        lanes.add(new Lane(words.say(key), unit, step, Math.max(0, low), high, floor, lines));
    }

    private boolean known(Line line) { return trace.rows().stream().anyMatch(r -> Double.isFinite(line.of.applyAsDouble(r))); }

    private String draw(String cssClass) {
        List<Lane> lanes = lanes();
        int alarms = (int) trace.said().stream().filter(s -> s.what() == What.HEARD && s.tS() <= untilS && s.tS() >= 0).count();
        int head = 34 + Math.max(1, Math.min(8, alarms)) * 17 + (judged.isPresent() ? 26 : 0);
        int height = head + lanes.size() * LANE + 26;
        Svg svg = new Svg("trace " + cssClass, width, height, says());
        double zero = x(0);
        svg.line("strike", zero, 14, zero, height - 22);
        svg.text("say", zero + 4, 12, At.START, words.say("trace.strikes"));
        trace.remedyS().ifPresent(s -> {
            if (s > untilS) return;
            svg.line("mark", x(s), 14, x(s), height - 22);
            svg.text("marked", x(s) + 4, 26, At.START, words.say("trace.remedy"));
        });
        int row = 0;
        for (Said s : trace.said()) {
            if (s.what() != What.HEARD || s.tS() > untilS || s.tS() < 0 || row >= 8) continue;
            double y = 40 + row++ * 17;
            double sx = x(s.tS());
            double overS = trace.said().stream().filter(o -> o.what() == What.OVER && o.limit().equals(s.limit()) && o.tS() > s.tS()).mapToDouble(Said::tS).min().orElse(toS);
            svg.line("thin", sx, y + 2.5, x(Math.min(overS, Math.min(untilS, toS))), y + 2.5);
            svg.polygon("bell", new double[] {sx, sx + 5, sx - 5}, new double[] {y - 9, y, y});
            String condition = words.name("alarm", s.limit().condition().words());
            String whole = condition + ", " + words.say(s.limit().from().words().equals("monitor") ? "trace.monitor" : "trace.ventilator");
            // beside the triangle, where it fits: right, else left, else without the device
            String says = sx + 9 + Svg.width(whole, 12) <= width || sx - 9 - Svg.width(whole, 12) >= 0 ? whole : condition;
            boolean before = sx + 9 + Svg.width(says, 12) > width;
            svg.text("alarm", sx + (before ? -9 : 9), y, before ? At.END : At.START, says);
        }
        judged.ifPresent(r -> margin(svg, r, head - 12));
        for (int i = 0; i < lanes.size(); i++) lane(svg, lanes.get(i), head + i * LANE + 14);
        axis(svg, height - 6);
        return svg.done();
    }

    /** Alarm, the crew at work, room or debt, harm: the row of "who speaks first", here on the scale of the fault. */
    private void margin(Svg svg, Rehearsal r, double y) {
        if (left > 60) svg.text("lab", 0, y + 4, At.START, words.say("rehearse.margin"));
        double harm = x(Math.min(toS, r.harm().orElseThrow().afterS()));
        if (r.alarm().isPresent()) {
            double alarmS = r.alarm().get().afterS();
            double readyS = alarmS + r.crewTimeS();
            svg.polygon("bell", new double[] {x(alarmS), x(alarmS) + 5, x(alarmS) - 5}, new double[] {y - 5, y + 4, y + 4});
            svg.line("crew", x(alarmS) + 6, y, x(Math.min(toS, readyS)), y);
            if (r.rescueByS().isPresent()) {
                double byS = r.rescueByS().getAsDouble();
                svg.line(readyS <= byS ? "room" : "debt", x(Math.min(toS, Math.min(readyS, byS))), readyS <= byS ? y : y + 5, x(Math.min(toS, Math.max(readyS, byS))), readyS <= byS ? y : y + 5);
            }
        } else {
            svg.line("silent", x(0), y, harm - 7, y);
        }
        svg.polygon("harm", new double[] {harm - 5.5, harm, harm + 5.5, harm}, new double[] {y, y - 5.5, y, y + 5.5});
    }

    private void lane(Svg svg, Lane lane, double top) {
        double bottom = top + DEPTH;
        svg.line("grid", left, bottom, right, bottom);
        svg.line("grid", left, top, right, top);
        if (left > 60) {
            svg.text("lab", 0, top + DEPTH / 2.0, At.START, lane.name);
            svg.text("tick", 0, top + DEPTH / 2.0 + 15, At.START, lane.unit);
        } else {
            svg.text("lab", 0, top - 5, At.START, lane.name + ", " + lane.unit);
        }
        svg.text("tick", left - 5, top + (left > 60 ? 4 : 12), At.END, Figures.n(lane.most, 0));
        svg.text("tick", left - 5, bottom + 4, At.END, Figures.n(lane.least, 0));
        double lastY = Double.NEGATIVE_INFINITY;
        double endX = x(Math.min(untilS, toS));
        for (Line line : lane.lines) {
            double endY = Double.NaN;
            double last = Double.NaN;
            List<Double> xs = new ArrayList<>();
            List<Double> ys = new ArrayList<>();
            for (Row r : trace.rows()) {
                if (r.tS() > untilS) break;
                last = line.of.applyAsDouble(r);
                if (!Double.isFinite(last)) {
                    hold(line, xs, ys, x(r.tS()), endY);
                    polyline(svg, line, xs, ys);
                    continue;
                }
                hold(line, xs, ys, x(r.tS()), endY);
                endY = bottom - DEPTH * Math.max(0, Math.min(1, (last - lane.least) / (lane.most - lane.least)));
                xs.add(x(r.tS()));
                ys.add(endY);
            }
            hold(line, xs, ys, endX, endY);
            polyline(svg, line, xs, ys);
            if (!Double.isFinite(last)) continue;
            double labelY = Math.abs(endY - lastY) < 13 ? lastY + 13 : endY;
            lastY = labelY;
            String says = line.name + " " + Figures.n(last, 0);
            boolean fits = endX + 5 + Svg.width(says, 12) <= width;
            svg.text(line.cssClass.equals("mid") ? "said" : "tick", fits ? endX + 5 : width - 1, fits ? labelY + 4 : labelY - 4, fits ? At.START : At.END, says);
        }
    }

    /** Draws a held value on until this place, where it may change. */
    private static void hold(Line line, List<Double> xs, List<Double> ys, double x, double y) {
        if (!line.held || xs.isEmpty() || xs.get(xs.size() - 1) >= x) return;
        xs.add(x);
        ys.add(y);
    }

    private static void polyline(Svg svg, Line line, List<Double> xs, List<Double> ys) {
        if (xs.size() > 1) svg.polyline(line.cssClass, xs.stream().mapToDouble(Double::doubleValue).toArray(), ys.stream().mapToDouble(Double::doubleValue).toArray());
        xs.clear();
        ys.clear();
    }

    private double x(double tS) { return left + (tS - fromS) / (toS - fromS) * (right - left); }

    private void axis(Svg svg, double y) {
        double[] steps = {10, 15, 30, 60, 120, 300, 600};
        double step = steps[steps.length - 1];
        for (double s : steps) {
            if ((toS - fromS) / s <= (width >= 600 ? 10 : 5)) {
                step = s;
                break;
            }
        }
        for (double t = Math.ceil(fromS / step) * step; t <= toS; t += step) {
            svg.line("axis", x(t), y - 16, x(t), y - 12);
            svg.text("tick", x(t), y, At.MIDDLE, t < 60 && step < 60 ? Figures.n(t, 0) + " s" : clock(t));
        }
    }

    static String clock(double s) {
        long whole = Math.round(Math.abs(s));
        return String.format(Locale.ROOT, "%s%d:%02d", s < 0 ? "−" : "", whole / 60, whole % 60);
    }

    private String says() {
        Row last = null;
        for (Row r : trace.rows()) if (r.tS() <= untilS) last = r;
        if (last == null) return words.say("trace.nothing");
        OptionalDouble spo2 = Double.isFinite(last.monitor().spo2()) ? OptionalDouble.of(last.monitor().spo2()) : Double.isFinite(last.ventilator().spo2()) ? OptionalDouble.of(last.ventilator().spo2()) : OptionalDouble.empty();
        return words.say("trace.says", clock(last.tS()), spo2.isPresent() ? Figures.percent(spo2.getAsDouble()) : "–", truth && Double.isFinite(last.sao2()) ? Figures.percent(last.sao2()) : "–",
                Long.toString(trace.said().stream().filter(s -> s.what() == What.HEARD && s.tS() >= 0 && s.tS() <= untilS).count()));
    }
}
