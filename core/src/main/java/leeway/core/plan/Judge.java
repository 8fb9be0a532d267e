package leeway.core.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leeway.core.body.SteadyGases;
import leeway.core.breath.BreathNumbers;
import leeway.core.journey.LegState;
import leeway.core.kit.Mode;
import leeway.core.kit.Policy;
import leeway.core.rehearsal.MonitorPower;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.settings.Solved;
import leeway.core.supply.SupplyResult;
import leeway.core.transport.Transport;

/**
 * The verdict: what the policy and the strategy say to what is expected, to supply and to wishes.
 * <p>Beyond a harm threshold of the policy is a reason against; outside its targets, or outside the strategy's, is a remark.
 * A high PaCO2 from the start is judged by its pH (harm from CO2 is a rise above the start), but in head injury by itself.
 */
final class Judge {
    /** Silence that is shorter in all, and that a backup fills, is a remark; min. Common practice, no source. */
    private static final double SHORT_MIN = 1;
    private final Transport t;
    private final Solved solved;
    private final Optional<String> little;
    private final List<LegState> states;
    private final SupplyResult supply;
    private final List<Rehearsal> rehearsals;
    private final boolean nobodyBreathes;
    private final Course course;
    private final List<String> reasons = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private final Set<String> said = new HashSet<>();
    /** Measure and side, to what was said of it: 1 a remark, 2 a reason. */
    private final Map<String, Integer> heaviest = new HashMap<>();
    /** The legs' settled states are judged; now their course is. */
    private boolean onTheWay;

    Judge(Transport t, Solved solved, Optional<String> little, List<LegState> states, Course course, SupplyResult supply, List<Rehearsal> rehearsals, boolean nobodyBreathes) {
        this.course = course;
        this.rehearsals = rehearsals;
        this.nobodyBreathes = nobodyBreathes;
        this.t = t;
        this.solved = solved;
        this.little = little;
        this.states = states;
        this.supply = supply;
    }

    Verdict verdict() {
        reasons.addAll(solved.suggested().reasons());
        reasons.addAll(supply.reasons());
        if (nobodyBreathes) reasons.add("Nobody breathes: free flow brings oxygen to an open airway and ventilates nobody; carbon dioxide rises by 3 to 4 mmHg a minute after a first minute of about 10, and what follows is an apnoea.");
        nobodyTriggers();
        for (int i = 0; i < states.size() && !nobodyBreathes; i++) if (i == 0 || differs(states.get(i), states.get(i - 1))) leg(states.get(i));
        onTheWay = true;
        for (int i = 0; i < states.size() && !nobodyBreathes; i++) comesTo(i);
        uncovered();
        if (!nobodyBreathes) solved.conflicts().forEach(c -> remarks.add(c.sentence()));
        little.ifPresent(remarks::add);
        MonitorPower.remark(t).ifPresent(remarks::add);
        remarks.addAll(solved.suggested().remarks());
        remarks.addAll(supply.remarks());
        if (!t.whatIf().isEmpty()) remarks.add(t.whatIf().size() == 1 ? "The file's what-if is left out of the plan." : "The file's " + t.whatIf().size() + " what-ifs are left out of the plan.");
        return new Verdict(reasons.stream().distinct().toList(), remarks.stream().distinct().toList());
    }

    /** Settings that wait for the patient, and a patient who starts nothing: what is expected is then the apnoea backup's. */
    private void nobodyTriggers() {
        if (nobodyBreathes) return;
        Optional<Mode> waits = solved.suggested().settings().mode().filter(m -> !m.hasRate());
        if (waits.isPresent() && t.ventilator().machine() && !t.patient().paralysed() && t.patient().lungs().effort().isEmpty()) {
            remarks.add("The file names no effort, and " + waits.get().code() + " leaves every breath to the patient: a normal effort is taken.");
        }
        Optional<Silence> found = course.silence(t, solved.suggested().settings());
        if (found.isEmpty()) return;
        Silence s = found.get();
        String mode = t.ventilator().alone() ? "free flow" : Silence.modeAt(t, solved.suggested().settings(), s.fromMin() * 60 + Silence.APNOEA_S).map(Mode::code).orElse("");
        boolean backup = t.ventilator().apnoeaBackupAfterS().isPresent();
        String what = s.byNobody() ? "What comes then is started by a leak, by the heart or by water in the tube, and no apnoea alarm speaks."
                : t.ventilator().alone() ? "Free flow ventilates nobody."
                : backup ? "What is expected here is the apnoea backup's, which comes after " + Words.n(t.ventilator().apnoeaBackupAfterS().getAsDouble(), 0) + " s without a breath and with an alarm."
                : "The " + t.ventilator().name() + " has no apnoea backup.";
        String when = s.whole() ? "Nobody starts a breath in " + mode + ": "
                : "From " + Words.n(s.fromMin(), 0) + " min on nobody starts a breath in " + mode + ", for " + Words.n(s.inAllMin(), s.inAllMin() < 2 ? 1 : 0) + " min in all: ";
        (s.inAllMin() < SHORT_MIN && backup ? remarks : reasons).add(when + s.who() + ". " + what);
    }

    /** Faults that harm before the crew can help: counted by the policy, else a remark. */
    private void uncovered() {
        List<Rehearsal> bad = rehearsals.stream().filter(r -> r.coverage().uncovered()).toList();
        if (bad.isEmpty() || nobodyBreathes) return;
        long harms = rehearsals.stream().filter(r -> r.harm().isPresent()).count();
        List<String> named = bad.stream().limit(3).map(r -> r.fault().name() + " (" + r.coverage().words() + ")").toList();
        String text = bad.size() + " of " + harms + " faults that can harm " + (bad.size() == 1 ? "is" : "are") + " uncovered: "
                + (bad.size() > 3 ? String.join(", ", named) + " and " + (bad.size() - 3) + " more" : Words.list(named)) + ".";
        if (t.policy().uncoveredAllowed().isPresent() && bad.size() > t.policy().uncoveredAllowed().get()) {
            reasons.add(text + " The policy tolerates " + t.policy().uncoveredAllowed().get() + ".");
        } else {
            remarks.add(text);
        }
    }

    private static boolean differs(LegState a, LegState b) { return a.barometerHPa() != b.barometerHPa() || a.steady().fio2() != b.steady().fio2(); }

    private void leg(LegState state) {
        String where = states.size() == 1 ? "" : state.leg().name() + ": ";
        BreathNumbers b = state.steady().breath();
        SteadyGases g = state.steady().gases();
        Policy.Harm harm = t.policy().harm();
        Policy.Targets target = t.policy().targets();
        boolean head = t.illness().group().equals("head injury");

        above(where, "plateau", b.plateauCmH2O(), 0, "cmH2O", harm.alveolarPressureCmH2O(), target.plateauCmH2O());
        above(where, "driving pressure", b.drivingCmH2O(), 0, "cmH2O", Double.POSITIVE_INFINITY, target.drivingCmH2O());
        above(where, "auto-PEEP", b.autoPeepCmH2O(), 1, "cmH2O", Double.POSITIVE_INFINITY, target.autoPeepCmH2O());
        above(where, "mechanical power", b.mechanicalPowerJPerMin(), 1, "J/min", Double.POSITIVE_INFINITY, target.mechanicalPowerJPerMin());
        if (b.volumeNotReached()) remarks.add(where + "the set volume is not reached: " + Words.n(b.expiredMl(), 0) + " mL come out, for the pressure limit or the device's own holds.");
        if (!g.living()) return;
        if (!g.sustainable()) reasons.add(where + "lung and heart cannot bring the oxygen that this body uses on these settings.");
        above(where, "PaCO2", g.paco2MmHg(), 0, "mmHg", head ? harm.headPaco2HighMmHg() : Double.POSITIVE_INFINITY, target.paco2HighMmHg());
        below(where, "PaCO2", g.paco2MmHg(), 0, "mmHg", head ? harm.headPaco2LowMmHg() : Double.NEGATIVE_INFINITY, target.paco2LowMmHg());
        above(where, "pH", g.ph(), 2, "", harm.phHigh(), target.phHigh());
        below(where, "pH", g.ph(), 2, "", harm.phLow(), target.phLow());
        below(where, "saturation", g.sao2() * 100, 0, "%", harm.saO2() * 100, target.saturationLow() * 100);
    }

    /** What the journey at medians comes to with its events: said where it is worse than what the legs' settled states have said. */
    private void comesTo(int leg) {
        Lasting l = course.lasting(leg);
        Policy.Harm harm = t.policy().harm();
        Policy.Targets target = t.policy().targets();
        boolean head = t.illness().group().equals("head injury");
        String where = states.size() == 1 ? "" : states.get(leg).leg().name() + ": ";
        above(where, "plateau", l.plateauCmH2O(), 0, "cmH2O", harm.alveolarPressureCmH2O(), target.plateauCmH2O());
        double start = states.get(0).steady().gases().living() ? states.get(0).steady().gases().paco2MmHg() : Double.NaN;
        double risen = Math.max(harm.paco2MmHg(), start + harm.paco2RiseMmHg());
        above(where, "PaCO2", l.highPaco2MmHg(), 0, "mmHg", head ? harm.headPaco2HighMmHg() : risen, target.paco2HighMmHg());
        below(where, "PaCO2", l.lowPaco2MmHg(), 0, "mmHg", head ? harm.headPaco2LowMmHg() : Double.NEGATIVE_INFINITY, target.paco2LowMmHg());
        above(where, "pH", l.highPh(), 2, "", harm.phHigh(), target.phHigh());
        below(where, "pH", l.lowPh(), 2, "", harm.phLow(), target.phLow());
        below(where, "saturation", l.lowSaO2() * 100, 0, "%", harm.saO2() * 100, target.saturationLow() * 100);
    }

    private void above(String where, String what, double value, int decimals, String unit, double harm, double target) {
        if (!heavier(what + " above", value > harm ? 2 : value > target ? 1 : 0)) return;
        if (value > harm) say(reasons, where, sentence(what, value, decimals, unit, "above", harm, "where harm begins"));
        else if (value > target) say(remarks, where, sentence(what, value, decimals, unit, "above", target, "the policy's limit"));
    }

    private void below(String where, String what, double value, int decimals, String unit, double harm, double target) {
        if (!heavier(what + " below", value < harm ? 2 : value < target ? 1 : 0)) return;
        if (value < harm) say(reasons, where, sentence(what, value, decimals, unit, "below", harm, "where harm begins"));
        else if (value < target) say(remarks, where, sentence(what, value, decimals, unit, "below", target, "the policy's limit"));
    }

    /** While the legs are gone through everything counts; of the journey's course only what weighs more than was said. */
    private boolean heavier(String side, int weight) {
        if (onTheWay && weight <= heaviest.getOrDefault(side, 0)) return false;
        heaviest.merge(side, weight, Math::max);
        return weight > 0;
    }

    /** With the leg where it is first so; the same figures again are not said again. */
    private void say(List<String> to, String where, String text) {
        if (said.add(text)) to.add(where.isEmpty() && !text.startsWith("pH") ? Character.toUpperCase(text.charAt(0)) + text.substring(1) : where + text);
    }

    /** "saturation 89 % is expected, below 90 %, the policy's limit." Of a figure that rounds to its limit nothing finer is known: "is expected just below 90 %". */
    private static String sentence(String what, double value, int decimals, String unit, String side, double limit, String which) {
        int d = Words.n(limit, decimals + 1).endsWith("0") ? decimals : decimals + 1;
        String u = unit.isEmpty() ? "" : " " + unit;
        if (Words.n(value, d).equals(Words.n(limit, d))) return what + " is expected just " + side + " " + Words.n(limit, d) + u + ", " + which + ".";
        return what + " " + Words.n(value, d) + u + " is expected, " + side + " " + Words.n(limit, d) + u + ", " + which + ".";
    }
}
