package leeway.core.plan;

import static leeway.core.plan.Expected.known;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.AlarmLimits;
import leeway.core.body.SteadyGases;
import leeway.core.breath.BreathNumbers;
import leeway.core.gas.Barometer;
import leeway.core.gas.TwoColours;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.LegState;
import leeway.core.journey.OwnBreathing;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.map.Depth;
import leeway.core.plan.Plan.AtLeg;
import leeway.core.plan.Plan.LegTime;
import leeway.core.plan.Plan.Moment;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.MonitorPower;
import leeway.core.rehearsal.Nominal;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.start.Start;
import leeway.core.supply.Supply;
import leeway.core.supply.SupplyResult;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;

/** Works out the plan of a transport: patient, settings, steady states, the journey at medians, alarm limits, supply, rehearsals, verdict. */
public final class PlanMaker {
    private PlanMaker() { }

    /**
     * Rehearses all faults once; whoever has threads may begin at once and share the work, the answer stays that of
     * {@link Rehearse#all}. The answer is asked for when the rest of the plan is done.
     */
    public interface Rehearser { Supplier<List<Rehearsal>> begin(Rehearse faults); }

    /** The plan; the same transport, library and seed give the same plan everywhere. */
    public static Plan plan(Transport t, Library library, long seed) { return plan(t, library, seed, faults -> faults::central); }

    /** The same, with rehearsals by somebody else. */
    public static Plan plan(Transport t, Library library, long seed, Rehearser rehearser) { return plan(t, library, seed, rehearser, () -> false); }

    /** The same; stops with {@link leeway.core.run.Stopped} soon after it is told to be unwanted. */
    public static Plan plan(Transport t, Library library, long seed, Rehearser rehearser, BooleanSupplier unwanted) {
        Ventilated v = Ventilated.of(t);
        Set<String> assumed = new LinkedHashSet<>(t.assumed());
        assumed.addAll(v.patient().assumed());
        assumed.addAll(v.assumed());
        Start start = Start.of(t, v, library::strategy, unwanted);
        start.picked().ifPresent(assumed::add);
        Settings settings = start.settings();

        List<LegState> states = LegState.of(t, v, settings);
        Steady first = states.get(0).steady();
        Voyage voyage = Journeys.of(t, settings, library.noises(), draw -> JourneyRun.of(t, v, settings, states, draw)).until(unwanted);
        Nominal medians = Nominal.of(voyage);
        Rehearse faults = Rehearse.of(voyage, medians, library.faults());
        Supplier<List<Rehearsal>> rehearsing = rehearser.begin(faults);
        SupplyResult supply = Supply.of(t, states.stream().map(LegState::need).toList(), t.kit().flatMap(library::kit), library.ventilators(), seed, Supply.DRAWS, unwanted);
        assumed.addAll(supply.assumed());
        List<AlarmLimit> limits = AlarmLimits.of(t.ventilator(), t.monitor(), settings, Journeys.expected(first, t), t.alarms());
        Course course = Course.of(medians);
        List<Moment> gases = course.moments();
        Bands bands = Bands.of(t, v, settings, first.barometerHPa(), first.fio2(), seed, unwanted);
        List<Rehearsal> rehearsals = rehearsing.get();

        List<LegTime> legs = new ArrayList<>();
        List<AtLeg> byLeg = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            LegState s = states.get(i);
            legs.add(new LegTime(s.leg().name(), s.fromMin(), s.toMin(), s.leg().atWorstMin()));
            byLeg.add(new AtLeg(s.leg().name(), course.atEndOf(i)));
        }
        boolean nobody = v.nobodyBreathes(settings);
        if (v.ventilator().alone()) assumed.add(nobody ? "nobody breathes from departure on; until then the patient is taken to have breathed at rest from the same flow"
                : "free flow of " + Words.n(states.get(0).draw().oxygenLPerMin(), 1) + " L/min: " + Words.n(100 * first.fio2(), 0) + " % oxygen is breathed at rest, the rest is air drawn in beside it; deeper breaths draw in more");
        Verdict verdict = new Judge(t, start.solved(), nobody ? Optional.empty() : Depth.little(start, t), states, course, supply, rehearsals, nobody).verdict().with(v.gasNotUsed());
        assumed.addAll(t.unused());
        MonitorPower.assumed(t).ifPresent(assumed::add);
        for (int i = 1; i < states.size(); i++) {
            Leg before = t.legs().get(i - 1), leg = t.legs().get(i);
            if (leg.altitudeM() < before.altitudeM() && leg.climbMin() == 0) {
                assumed.add("descent: in the first " + Words.n(JourneyRun.rampS(before, leg, leg.takesMin() * 60) / 60, 0) + " min: a cabin's usual 300 ft/min, at most half of the leg (" + leg.name() + ")");
            }
        }
        assumed.add("the expected is a passive patient's where the file names no effort; legs, patient and stores stand at their medians unless a band is named");
        return new Plan(t.title(), seed, t.sourceHash(), verdict, List.copyOf(assumed), WhoAndWhat.of(t, v), start.solved().suggested(), Optional.of(nobody ? Expected.NOTHING : expected(first, t)),
                nobody ? Optional.empty() : Optional.of(bands), byLeg, legs, limits, supply, rehearsals, gases, new Later<>(() -> CourseBands.around(gases, t, v, settings, seed)),
                OneBreath.of(v, settings, first), Turnaround.of(t, left(supply)), Cautions.of(t, v.patient().temperatureCel(), m -> Barometer.mmHg(Barometer.pressureHPa(m))),
                OwnBreathing.of(v, settings, first), MonitorPower.endsMin(t), endsMin(supply, faults));
    }

    /** When gas or charge ends by itself, min from departure; looked for only where the stores may not last at their medians. */
    private static OptionalDouble endsMin(SupplyResult supply, Rehearse faults) {
        if (supply.reasons().isEmpty()) return OptionalDouble.empty();
        OptionalDouble endS = faults.suppliesEndS();
        return endS.isPresent() ? OptionalDouble.of(endS.getAsDouble() / 60) : OptionalDouble.empty();
    }

    /** A steady state in the words of the plan. */
    static Expected expected(Steady s, Transport t) {
        BreathNumbers b = s.breath();
        SteadyGases g = s.gases();
        return new Expected(known(b.expiredMl()), known(b.peakCmH2O()), known(b.plateauCmH2O()), known(b.drivingCmH2O()), known(b.autoPeepCmH2O()), known(b.meanCmH2O()),
                known(b.mechanicalPowerJPerMin()), known(b.minuteVolumeLPerMin()), known(g.paco2MmHg()), known(g.etco2MmHg()), known(g.pao2MmHg()), known(TwoColours.shows(s.spo2(), t.patient().carboxyhaemoglobin(), t.patient().methaemoglobin())), known(g.ph()));
    }

    /** What the turnaround says about stores: what they are expected to hold, and so what to change. */
    private static List<String> left(SupplyResult supply) {
        List<String> steps = new ArrayList<>();
        for (SupplyResult.Series s : supply.oxygen().series()) {
            var points = s.points();
            double full = points.get(0).p50();
            double end = points.get(points.size() - 1).p50();
            if (full <= 0) continue;
            String of = "about " + Words.n(end, 0) + " of " + Words.n(full, 0) + " L";
            steps.add(end < 0.5 * full ? "Change " + s.name() + ": " + of + " are left." : "Read " + s.name() + ": " + of + " are expected; change it below half.");
        }
        return steps;
    }
}
