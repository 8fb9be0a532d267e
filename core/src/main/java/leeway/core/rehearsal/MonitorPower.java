package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;

/**
 * The monitor's own charge along a journey: a device beside the ventilator, with a battery of its own.
 * <p>Full at departure; it runs down on legs without external power, faster in the cold, and stands still on legs with it, where the
 * monitor is plugged in. Leaves out: charging on the way (the cautious side), the age of that battery, of which nothing is known (the
 * plan says so), and what the crew switches off.
 */
public final class MonitorPower {
    /** Share of the charge that a cell gives in the cold, as for the packs of ventilators; from memory: 0.5 to 0.6 at -20, 0.7 to 0.8 at -10, 0.85 to 0.90 at 0 Cel. */
    private static final double[] AT_CEL = {-20, -10, 0, 20}, GIVES = {0.55, 0.75, 0.87, 1};

    private MonitorPower() { }

    /** How much longer the same charge would last at 20 Cel than on this leg; 1 where its temperature is not given. */
    static double coldTimes(Leg leg) {
        double t = leg.temperatureCel().orElse(20);
        if (t <= AT_CEL[0]) return 1 / GIVES[0];
        for (int i = 1; i < AT_CEL.length; i++) {
            if (t < AT_CEL[i]) return 1 / (GIVES[i - 1] + (GIVES[i] - GIVES[i - 1]) * (t - AT_CEL[i - 1]) / (AT_CEL[i] - AT_CEL[i - 1]));
        }
        return 1;
    }

    /** A stretch in which the monitor is dark, s from departure. */
    record Dark(double fromS, double untilS) { }

    /** @param legStartS start of each leg and, last, the end of the journey; the last leg goes on after it */
    static List<Dark> dark(Transport t, double[] legStartS) {
        List<Dark> dark = new ArrayList<>();
        double leftS = t.monitor().batteryHours() * 3600;
        if (leftS <= 0) return dark;
        for (int i = 0; i < t.legs().size(); i++) {
            if (external(t, t.legs().get(i))) continue;
            double endS = i + 1 < t.legs().size() ? legStartS[i + 1] : Double.POSITIVE_INFINITY;
            double lengthS = endS - legStartS[i], times = coldTimes(t.legs().get(i));
            if (lengthS * times > leftS) dark.add(new Dark(legStartS[i] + leftS / times, endS));
            leftS = Math.max(0, leftS - lengthS * times);
        }
        return dark;
    }

    /** When it ends before the journey does, at medians; minutes from departure. */
    public static OptionalDouble endsMin(Transport t) {
        double[] startS = new double[t.legs().size() + 1];
        for (int i = 0; i < t.legs().size(); i++) startS[i + 1] = startS[i] + t.legs().get(i).takesMin() * 60;
        return dark(t, startS).stream().mapToDouble(Dark::fromS).filter(s -> s < startS[startS.length - 1]).map(s -> s / 60).findFirst();
    }

    /** What a plan says where it ends, or may end, before the journey does. */
    public static Optional<String> remark(Transport t) {
        double hours = t.monitor().batteryHours();
        if (hours <= 0) return Optional.empty();
        OptionalDouble endsMin = endsMin(t);
        if (endsMin.isPresent()) {
            double journeyMin = t.legs().stream().mapToDouble(Leg::takesMin).sum();
            return Optional.of("The monitor's own battery (%s h) ends after %s min, %s min before the journey does: from then on it shows and says nothing.".formatted(number(hours), number(Math.floor(endsMin.getAsDouble())),
                    number(Math.ceil(journeyMin - endsMin.getAsDouble()))));
        }
        double worstMin = t.legs().stream().filter(l -> !external(t, l)).mapToDouble(Leg::atWorstMin).sum();
        double takenMin = t.legs().stream().filter(l -> !external(t, l)).mapToDouble(l -> l.atWorstMin() * coldTimes(l)).sum();
        if (takenMin <= hours * 60) return Optional.empty();
        return Optional.of("The monitor's own battery (%s h) may end before the journey does: at worst %s min of it are without external power%s.".formatted(number(hours), number(Math.ceil(worstMin)),
                takenMin > worstMin + 1 ? ", and the cold shortens it" : ""));
    }

    /** What was taken for granted; empty where its power is not followed. */
    public static Optional<String> assumed(Transport t) {
        if (t.monitor().sensors().isEmpty()) return Optional.empty();
        return Optional.of(t.monitor().batteryHours() <= 0 ? "monitor: its sheet says no battery, so its power is not followed"
                : "monitor: its own battery is full at departure, lasts %s h at 20 Cel and less in the cold, and stands still on legs with external power; its age is not known, and an old one ends sooner".formatted(number(t.monitor().batteryHours())));
    }

    private static boolean external(Transport t, Leg leg) {
        return leg.power().flatMap(name -> t.power().stream().filter(p -> p.name().equals(name)).findFirst()).map(p -> p.mains()).orElse(false);
    }

    private static String number(double v) { return v == Math.rint(v) ? String.format(Locale.ROOT, "%.0f", v) : String.format(Locale.ROOT, "%.1f", v); }
}
