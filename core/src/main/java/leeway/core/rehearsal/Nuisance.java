package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import leeway.core.alarm.AlarmLimit;
import leeway.core.rehearsal.Rehearse.Drawn;

/** An alarm that is heard without any fault, an hour, as the mean of the draws. */
public record Nuisance(AlarmLimit limit, double perHour) {
    /** Those that were heard at all, the most frequent first. */
    public static List<Nuisance> of(List<AlarmLimit> limits, List<Drawn> draws) {
        List<Nuisance> all = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            double sum = 0;
            for (Drawn d : draws) sum += d.heardPerHour()[i];
            if (sum > 0) all.add(new Nuisance(limits.get(i), sum / draws.size()));
        }
        all.sort((a, b) -> Double.compare(b.perHour, a.perHour));
        return List.copyOf(all);
    }
}
