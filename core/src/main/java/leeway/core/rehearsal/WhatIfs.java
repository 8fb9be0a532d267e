package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.journey.JourneyRun;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.transport.Transport;
import leeway.core.transport.WhatIf;

/** The faults and thought experiments of a file, each at its own moment and for its own time. */
public final class WhatIfs {
    private WhatIfs() { }

    /** In the order of the file; a fault that the sheets do not know cannot be in a file that was read. */
    public static List<Rehearsal> of(Voyage voyage, Transport t, List<Fault> known) {
        List<Rehearsal> rows = new ArrayList<>();
        for (WhatIf what : t.whatIf()) {
            double forS = what.forS().orElse(Double.POSITIVE_INFINITY);
            Optional<Fault> fault = what.fault().isPresent() ? known.stream().filter(f -> f.name().equals(what.fault().get())).findFirst().map(f -> lasting(f, forS))
                    : what.apnoea().map(a -> apnoea(a, forS));
            fault.ifPresent(f -> rows.addAll(Rehearse.of(voyage, List.of(f), known, OptionalDouble.of(what.atMin() * 60)).central()));
        }
        return List.copyOf(rows);
    }

    /** The same fault, over by itself after this time. */
    private static Fault lasting(Fault f, double forS) {
        if (Double.isInfinite(forS)) return f;
        List<Effect> shorter = f.effects().stream().map(e -> e.afterS() >= forS ? e
                : new Effect(e.knob(), e.on(), e.how(), e.value(), e.from(), e.afterS(), e.rampS(), Math.min(e.forS(), forS - e.afterS()), e.only())).toList();
        return new Fault(f.name(), f.group(), f.firstSign(), f.priority(), f.needs(), shorter, f.remedy(), f.remedyEnds(), f.with(), f.crew(), f.steps(), f.source());
    }

    /** Nobody and nothing ventilates, and the airway is as the file says. */
    private static Fault apnoea(WhatIf.Apnoea apnoea, double forS) {
        List<Effect> effects = new ArrayList<>(List.of(during(Knob.VENTILATOR_ON, 0, forS), during(Knob.EFFORT, 0, forS)));
        switch (apnoea) {
            case CLOSED -> {
                // the breath under way goes out first, as in JourneyRun
                effects.add(during(Knob.APNOEA_GAS, 0, forS));
                double afterS = JourneyRun.LAST_EXPIRATION_S;
                if (forS > afterS) effects.add(new Effect(Knob.AIRWAY_CLOSED, Effect.On.ONLY, How.SET, 1, Effect.FromJourney.NOTHING, afterS, 0, forS - afterS, List.of()));
            }
            case AIR, OXYGEN -> {
                effects.add(during(Knob.OPEN_AT_PATIENT, 1, forS));
                effects.add(during(Knob.APNOEA_GAS, apnoea == WhatIf.Apnoea.OXYGEN ? 2 : 1, forS));
            }
        }
        String name = "apnoea, airway " + switch (apnoea) {
            case CLOSED -> "closed";
            case AIR -> "open to air";
            case OXYGEN -> "open to oxygen";
        };
        return new Fault(name, Fault.Group.PEOPLE, "No breath.", Priority.HIGH, List.of(), effects, List.of(), true, Optional.empty(),
                new CrewTime(20, 60, "common practice, no source"), List.of("Ventilate: by hand with oxygen, then by the device."), "the transport file");
    }

    private static Effect during(Knob knob, double value, double forS) {
        return new Effect(knob, Effect.On.ONLY, How.SET, value, Effect.FromJourney.NOTHING, 0, 0, forS, List.of());
    }
}
