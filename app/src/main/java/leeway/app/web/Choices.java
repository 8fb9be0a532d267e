package leeway.app.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;

/** What a class can choose from: the fault, and those of this kit that begin most like it. */
final class Choices {
    static final int MOST = 5;

    private Choices() { }

    /**
     * In the order of their names in the file, which tells nothing and is the same in every language.
     *
     * @param hands counted for each, in that order
     */
    static List<FaultPage.Choice> of(Plan plan, String fault, List<Integer> hands) {
        Optional<Rehearsal> right = plan.rehearsals().stream().filter(r -> r.fault().name().equals(fault)).findFirst();
        List<String> names = new ArrayList<>(List.of(fault));
        right.ifPresent(r -> plan.rehearsals().stream().filter(o -> o.leg().isPresent() && !o.fault().name().equals(fault)).sorted(Comparator.<Rehearsal>comparingDouble(o -> unlike(r, o)).thenComparing(o -> o.fault().name()))
                .limit(MOST - 1L).forEach(o -> names.add(o.fault().name())));
        names.sort(Comparator.naturalOrder());
        int all = 0;
        for (int i = 0; i < names.size(); i++) all += i < hands.size() ? hands.get(i) : 0;
        List<FaultPage.Choice> out = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            int h = i < hands.size() ? hands.get(i) : 0;
            out.add(new FaultPage.Choice(names.get(i), h, all == 0 ? 0 : Math.round(100f * h / all), names.get(i).equals(fault)));
        }
        return out;
    }

    /** Another first alarm counts most, then another part of the kit or the patient, then how much later or sooner the alarm and the harm come. */
    private static double unlike(Rehearsal a, Rehearsal b) {
        double alarm = first(a).equals(first(b)) ? 0 : 4;
        double group = a.fault().group() == b.fault().group() ? 0 : 2;
        double harm = a.harm().isPresent() == b.harm().isPresent() ? 0 : 2;
        double apart = a.alarm().isPresent() && b.alarm().isPresent() ? Math.abs(Math.log((a.alarm().get().afterS() + 1) / (b.alarm().get().afterS() + 1))) : 0;
        return alarm + group + harm + Math.min(1, apart);
    }

    private static String first(Rehearsal r) { return r.alarm().or(r::lateAlarm).map(s -> s.condition().words() + s.from()).orElse(""); }
}
