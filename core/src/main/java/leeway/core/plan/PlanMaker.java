package leeway.core.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.AlarmLimits;
import leeway.core.body.SteadyGases;
import leeway.core.breath.BreathNumbers;
import leeway.core.gas.Barometer;
import leeway.core.journey.LegState;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.plan.Plan.AtLeg;
import leeway.core.plan.Plan.LegTime;
import leeway.core.settings.ByIllness;
import leeway.core.settings.Measure;
import leeway.core.settings.Model;
import leeway.core.settings.PatientFacts;
import leeway.core.settings.Solved;
import leeway.core.settings.Solver;
import leeway.core.settings.Strategy;
import leeway.core.supply.Supply;
import leeway.core.supply.SupplyResult;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Transport;

/** Works out the plan of a transport: patient, settings, steady states by leg, alarm limits, supply, verdict. */
public final class PlanMaker {
    private static final double HPA_PER_MMHG = 1.33322;

    private PlanMaker() { }

    /** The plan; the same transport, library and seed give the same plan everywhere. */
    public static Plan plan(Transport t, Library library, long seed) {
        Ventilated v = Ventilated.of(t);
        Set<String> assumed = new LinkedHashSet<>(t.assumed());
        assumed.addAll(v.patient().assumed());
        assumed.addAll(v.assumed());

        double startHPa = Barometer.pressureHPa(t.legs().get(0).altitudeM());
        PatientFacts facts = facts(v, startHPa);
        Solved solved = settings(t, v, facts, library, startHPa, assumed);
        Settings settings = solved.suggested().settings();

        List<LegState> states = LegState.of(t, v, settings);
        Steady first = states.get(0).steady();
        SupplyResult supply = Supply.of(t, states.stream().map(LegState::need).toList(), t.kit().flatMap(library::kit), seed, Supply.DRAWS);
        assumed.addAll(supply.assumed());
        boolean hand = t.ventilator().drive() == Ventilator.Drive.HAND;
        List<AlarmLimit> limits = AlarmLimits.of(t.ventilator(), t.monitor(), settings, basis(first), t.alarms());

        List<LegTime> legs = new ArrayList<>();
        for (LegState s : states) legs.add(new LegTime(s.leg().name(), s.fromMin(), s.toMin(), s.leg().atWorstMin()));
        Verdict verdict = new Judge(t, solved, states, supply).verdict();
        t.unused().forEach(assumed::add);
        return new Plan(t.title(), seed, t.sourceHash(), verdict, List.copyOf(assumed), patient(t, v), solved.suggested(), Optional.of(expected(first)),
                states.stream().map(s -> new AtLeg(s.leg().name(), expected(s.steady()))).toList(), legs, hand ? monitorOnly(limits) : limits, supply, List.of(), Optional.empty(),
                Turnaround.of(t, left(supply)), Cautions.of(t, m -> Barometer.pressureHPa(m) / HPA_PER_MMHG));
    }

    private static List<AlarmLimit> monitorOnly(List<AlarmLimit> limits) { return limits.stream().filter(l -> l.from() == AlarmLimit.From.MONITOR).toList(); }

    private static Solved settings(Transport t, Ventilated v, PatientFacts facts, Library library, double hPa, Set<String> assumed) {
        String name = t.strategy();
        if (name.equals(ByIllness.NAME)) {
            ByIllness.Pick pick = ByIllness.pick(facts, t.illness());
            name = pick.strategy();
            assumed.add(pick.why());
        }
        Strategy strategy = library.strategy(name);
        Model model = settings -> outlook(v, settings, hPa);
        return Solver.solve(facts, t.illness(), t.ventilator(), t.prescribed(), strategy, model);
    }

    /** What settings lead to, as a strategy judges it. */
    private static leeway.core.settings.Outlook outlook(Ventilated v, Settings settings, double hPa) {
        Steady s = Steady.of(v, settings, hPa);
        BreathNumbers b = s.breath();
        SteadyGases g = s.gases();
        double kg = v.patient().predictedKg();
        return (Measure m) -> Expected.known(switch (m) {
            case PLATEAU -> b.plateauCmH2O();
            case DRIVING -> b.drivingCmH2O();
            case PEAK -> b.peakCmH2O();
            case AUTO_PEEP -> b.autoPeepCmH2O();
            case MECHANICAL_POWER -> b.mechanicalPowerJPerMin();
            case VOLUME_PER_WEIGHT -> b.expiredMl() / kg;
            case PACO2 -> g.paco2MmHg();
            case PH -> g.ph();
            case PAO2 -> g.pao2MmHg();
            case SATURATION -> g.sao2();
        });
    }

    private static PatientFacts facts(Ventilated v, double hPa) {
        var p = v.patient();
        var m = v.mechanics();
        double usualMl = 7 * p.predictedKg();
        double alveolarMl = Math.max(0, usualMl - p.seriesDeadSpaceMl()) * p.alveolarDeadSpaceAt(usualMl);
        double flowLPerS = usualMl / 1000;
        double tube = m.tube().k1CmH2OSPerL() + m.tube().k2CmH2OS2PerL2() * flowLPerS;
        double resistance = m.resistanceCmH2OSPerL() + m.expiratoryExtraCmH2OSPerL() + tube + m.filterCmH2OSPerL() + m.valveCmH2OSPerL();
        PatientEntry.Effort effort = v.effort().orElse(PatientEntry.Effort.NONE);
        return new PatientFacts(p.sex(), p.ageYears(), p.heightCm(), p.weightKg(), p.predictedKg(), effort, m.complianceMlPerCmH2O(), resistance,
                p.seriesDeadSpaceMl() + alveolarMl, p.vco2MlPerMin(), p.shunt(), hPa / HPA_PER_MMHG);
    }

    private static leeway.core.alarm.Expected basis(Steady s) {
        return new leeway.core.alarm.Expected(s.breath().peakCmH2O(), s.breath().plateauCmH2O(), s.breath().expiredMl(), s.breath().minuteVolumeLPerMin(),
                s.gases().etco2MmHg(), s.spo2(), s.breath().ratePerMin());
    }

    /** A steady state in the words of the plan. */
    static Expected expected(Steady s) {
        BreathNumbers b = s.breath();
        SteadyGases g = s.gases();
        return new Expected(Expected.known(b.expiredMl()), Expected.known(b.peakCmH2O()), Expected.known(b.plateauCmH2O()), Expected.known(b.drivingCmH2O()),
                Expected.known(b.autoPeepCmH2O()), Expected.known(b.meanCmH2O()), Expected.known(b.mechanicalPowerJPerMin()), Expected.known(b.minuteVolumeLPerMin()),
                Expected.known(g.paco2MmHg()), Expected.known(g.etco2MmHg()), Expected.known(g.pao2MmHg()), Expected.known(s.spo2()), Expected.known(g.ph()));
    }

    private static Plan.Patient patient(Transport t, Ventilated v) {
        PatientEntry e = t.patient();
        var p = v.patient();
        List<String> parts = new ArrayList<>();
        String who = p.adult() ? e.sex() == PatientEntry.Sex.FEMALE ? "woman" : "man" : p.ageYears() < 1 ? "infant" : e.sex() == PatientEntry.Sex.FEMALE ? "girl" : "boy";
        if (t.illness().testLung()) {
            who = "test lung";
        } else if (e.ageYears().isPresent()) {
            who += " of " + age(e.ageYears().getAsDouble());
        }
        parts.add(who);
        e.heightCm().ifPresent(h -> parts.add(Words.n(h, 0) + " cm" + (e.heightEstimated() ? " (estimated)" : "")));
        e.weightKg().ifPresent(w -> parts.add(Words.n(w, w < 10 ? 1 : 0) + " kg"));
        String kit = String.join(", ", List.of(t.ventilator().name(), t.circuit().name(), t.filter().name().equals("none") ? "no filter" : t.filter().name(), t.airway().name(),
                t.monitor().name().equals("none") ? "no monitor" : t.monitor().name()));
        return new Plan.Patient(Expected.known(p.predictedKg()), String.join(", ", parts) + "; " + t.illness().name(), kit);
    }

    private static String age(double years) {
        if (years >= 2) return Words.n(Math.floor(years), 0) + " years";
        double months = years * 12;
        if (months >= 2) return Words.n(Math.floor(months), 0) + " months";
        return Words.n(Math.rint(years * 365.25), 0) + " days";
    }

    /** What the turnaround says about stores: what they are expected to show, and so what to change. */
    private static List<String> left(SupplyResult supply) {
        List<String> steps = new ArrayList<>();
        for (SupplyResult.Series s : supply.oxygen().series()) {
            var points = s.points();
            double start = points.get(0).p50();
            double end = points.get(points.size() - 1).p50();
            if (start <= 0) continue;
            if (end < 0.5 * start) steps.add("Change " + s.name() + ": about " + Words.n(end, 0) + " of " + Words.n(start, 0) + " L left; order one for each that goes out.");
            else steps.add("Read " + s.name() + ": about " + Words.n(end, 0) + " of " + Words.n(start, 0) + " L expected; change it below half.");
        }
        return steps;
    }

    static OptionalDouble setting(Settings s, Setting which) { return s.get(which); }
}
