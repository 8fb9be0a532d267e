package leeway.core.journey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;

/** What kind of lungs a run has, in the words of the plan's assumptions. */
final class LungWords {
    private LungWords() { }

    static String of(Lungs lungs) {
        List<String> parts = new ArrayList<>();
        if (lungs.curved()) parts.add("curved, softest " + number(lungs.inflectionCmH2O()) + " cmH2O above rest");
        Recruitment r = lungs.recruitment();
        if (r.share() > 0) {
            parts.add("that open and close (" + number(100 * r.share()) + " % of them; compliance and shunt as at PEEP " + number(r.atPeepCmH2O()) + " and plateau " + number(r.atPlateauCmH2O())
                    + " cmH2O" + (r.shuntPerShare() > 0 ? ", shunt follows" : ", shunt does not follow") + ")");
        }
        if (!lungs.limit().none()) parts.add("flow-limited in expiration");
        if (lungs.second() > 0) {
            parts.add(lungs.apart() ? "right and left apart (left " + number(100 * lungs.second()) + " %)"
                    : "with a slow part (" + number(100 * lungs.second()) + " %, time constant " + number(lungs.secondTimes()) + " times)");
        }
        return String.join(", ", parts);
    }

    private static String number(double v) { return v == Math.rint(v) ? Long.toString((long) v) : String.format(Locale.ROOT, "%.1f", v); }
}
