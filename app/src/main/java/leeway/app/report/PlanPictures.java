package leeway.app.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import leeway.app.report.GasPicture.Lane;
import leeway.app.report.JourneyPicture.Mark;
import leeway.app.report.JourneyPicture.Run;
import leeway.app.report.JourneyPicture.Stretch;
import leeway.core.plan.Plan;
import leeway.core.plan.Plan.Moment;
import leeway.core.plan.Plan.Span;
import leeway.core.supply.SupplyResult.Changeover;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.Point;
import leeway.core.supply.SupplyResult.Series;

/** The pictures of a plan, for the report and for the pages: the journey, the gases, one breath. */
public final class PlanPictures {
    private PlanPictures() { }

    private static List<Stretch> legs(Plan plan) { return plan.legs().stream().map(l -> new Stretch(l.leg(), l.startMin(), l.endMin())).toList(); }

    /** What each store holds along the journey; empty where nothing has an end. */
    public static List<Run> runs(Plan plan) {
        List<Run> runs = new ArrayList<>();
        Oxygen o = plan.supply().oxygen();
        for (Series s : o.series()) runs.add(run(s, last(o, s.name()) ? OptionalDouble.of(o.reserveL()) : OptionalDouble.empty(), marks(o, s.name())));
        plan.supply().power().ifPresent(p -> p.series().forEach(s -> runs.add(run(s, OptionalDouble.empty(), List.of()))));
        return runs;
    }

    /** The journey with its stores; an empty text where there is nothing to draw. */
    public static String journey(Plan plan, String cssClass, int width) {
        List<Run> runs = runs(plan);
        return runs.isEmpty() ? "" : JourneyPicture.of(cssClass, width, legs(plan), runs);
    }

    /** The patient's gases along the journey; an empty text where none are exchanged. */
    public static String gases(Plan plan, String cssClass, int width) {
        if (plan.course().isEmpty()) return "";
        List<Moment> c = plan.banded().get();
        double[] at = c.stream().mapToDouble(Moment::atMin).toArray();
        double[] o2 = c.stream().mapToDouble(Moment::pao2MmHg).toArray(), co2 = c.stream().mapToDouble(Moment::paco2MmHg).toArray(), spo2 = c.stream().mapToDouble(m -> 100 * m.spo2()).toArray();
        double[] spo2Low = span(c, x -> 100 * x.spo2Low()), co2Low = span(c, Span::paco2LowMmHg), o2High = span(c, Span::pao2HighMmHg), co2High = span(c, Span::paco2HighMmHg);
        List<Lane> lanes = List.of(new Lane("SpO2", "%", Math.min(80, floor(both(spo2, spo2Low), 10)), 100, at, spo2, spo2Low, span(c, x -> 100 * x.spo2High())),
                new Lane("PaO2", "mmHg", 0, top(both(o2, o2High), 50), at, o2, span(c, Span::pao2LowMmHg), o2High),
                new Lane("PaCO2", "mmHg", Math.min(20, floor(both(co2, co2Low), 10)), Math.max(60, top(both(co2, co2High), 10)), at, co2, co2Low, co2High));
        return GasPicture.of(cssClass, width, legs(plan), lanes);
    }

    /** One edge of the band; empty where none was worked out. */
    private static double[] span(List<Moment> course, ToDoubleFunction<Span> edge) {
        return course.stream().map(Moment::span).flatMap(Optional::stream).mapToDouble(edge).toArray();
    }

    private static double[] both(double[] a, double[] b) { return DoubleStream.concat(Arrays.stream(a), Arrays.stream(b)).toArray(); }

    /** One breath of the first leg; an empty text where nothing sets one. */
    public static String breath(Plan plan, int width) { return breath(plan, "", width); }

    static String breath(Plan plan, String cssClass, int width) { return plan.breath().map(b -> BreathPicture.of(cssClass, width, b)).orElse(""); }

    private static boolean last(Oxygen o, String store) { return o.byLeg().get(o.byLeg().size() - 1).from().contains(store); }

    private static List<Mark> marks(Oxygen o, String store) {
        List<Mark> marks = new ArrayList<>();
        for (Changeover c : o.changeovers()) {
            if (c.store().equals(store)) marks.add(new Mark(c.aboutMin(), c.atGaugeBar().isPresent() ? "change over at " + Figures.n(c.atGaugeBar().getAsDouble(), 0) + " bar" : "change over"));
        }
        return marks;
    }

    private static Run run(Series s, OptionalDouble reserve, List<Mark> marks) {
        List<Point> p = s.points();
        double full = p.stream().mapToDouble(Point::p95).max().orElse(1);
        return new Run(s.name().equals("internal") && s.unit().equals("Wh") ? "charge" : s.name(), s.unit(), full, reserve, p.stream().mapToDouble(Point::atMin).toArray(), p.stream().mapToDouble(Point::p05).toArray(),
                p.stream().mapToDouble(Point::p50).toArray(), p.stream().mapToDouble(Point::p95).toArray(), marks);
    }

    private static double floor(double[] v, double step) {
        double m = v[0];
        for (double x : v) m = Math.min(m, x);
        return Math.floor(m / step) * step;
    }

    private static double top(double[] v, double step) {
        double m = v[0];
        for (double x : v) m = Math.max(m, x);
        return Math.ceil(m / step) * step;
    }
}
