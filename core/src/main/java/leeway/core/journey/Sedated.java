package leeway.core.journey;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import leeway.core.run.Change;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.transport.Event;
import leeway.core.transport.Sedation;
import leeway.core.transport.Transport;

/**
 * Sedation along the journey: what is given at departure, at the start of legs and by events. Each stands from then on until
 * the next, wearing off where it has a half-time; an event that ends gives way to what stood before, as far as that has worn off.
 * <p>Leaves out that two add up, and that one that falls asleep is given less.
 */
public record Sedated(List<Given> given) {
    /** Steps in which half of it wears off, and the share of the effort below which none is left. */
    private static final int STEPS_A_HALF = 12;
    private static final double WORN_OFF = 0.01;

    public Sedated { given = List.copyOf(given); }

    /** One of them, s from departure. */
    public record Given(double atS, double untilS, Sedation sedation) {
        boolean standsAt(double tS) { return atS <= tS && tS < untilS; }

        double shareAt(double tS) {
            double share = sedation.after((tS - atS) / 60);
            return sedation.halfMin().isPresent() && share < WORN_OFF ? 0 : share;
        }
    }

    /** @param starts of each leg, s */
    public static Sedated of(Transport t, double[] starts) {
        List<Given> given = new ArrayList<>();
        given.add(new Given(0, Double.POSITIVE_INFINITY, t.patient().breathing().sedated()));
        for (int i = 0; i < t.legs().size(); i++) {
            double atS = starts[i];
            t.legs().get(i).sedation().ifPresent(s -> given.add(new Given(atS, Double.POSITIVE_INFINITY, s)));
        }
        for (Event e : t.events()) {
            double atS = e.atMin() * 60;
            e.sedation().ifPresent(s -> given.add(new Given(atS, e.forS().isPresent() ? atS + e.forS().getAsDouble() : Double.POSITIVE_INFINITY, s)));
        }
        return new Sedated(given);
    }

    /** Share of the effort that is taken at a time: by the one that began last and still stands. */
    public double shareAt(double tS) {
        Given last = given.get(0);
        for (Given g : given) if (g.standsAt(tS) && g.atS >= last.atS) last = g;
        return last.shareAt(tS);
    }

    /** As layers that do not overlap, each worth the middle of its stretch; nothing where it never changes. */
    void into(Script script) {
        TreeSet<Double> knots = new TreeSet<>();
        for (Given g : given) {
            knots.add(g.atS);
            if (g.untilS < Double.POSITIVE_INFINITY) knots.add(g.untilS);
            if (g.sedation.halfMin().isEmpty() || !(g.sedation.share() > 0)) continue;
            double stepS = g.sedation.halfMin().getAsDouble() * 60 / STEPS_A_HALF, tS = g.atS;
            while (g.shareAt(tS) > 0 && tS < g.untilS) knots.add(tS += stepS);
        }
        List<Double> at = new ArrayList<>(knots);
        for (int i = 0; i < at.size(); i++) {
            double fromS = at.get(i), toS = i + 1 < at.size() ? at.get(i + 1) : Double.POSITIVE_INFINITY;
            double share = shareAt(Double.isInfinite(toS) ? fromS + 1e-6 : 0.5 * (fromS + toS));
            if (share != (i == 0 ? script.base(Knob.SEDATION) : Double.NaN)) script.add(Change.during(fromS, toS, Knob.SEDATION, How.SET, share));
        }
    }
}
