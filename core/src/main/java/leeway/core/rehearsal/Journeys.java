package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.AlarmLimits;
import leeway.core.alarm.Expected;
import leeway.core.alarm.Noise;
import leeway.core.alarm.Sensing;
import leeway.core.alarm.Speaking;
import leeway.core.gas.TwoColours;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.Steady;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.kit.Settings;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.run.Change;
import leeway.core.run.Draw;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.supply.SupplyPart;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;

/**
 * Journeys as stages of rehearsals: the run of the journey, with sensors, alarms and noise added.
 * <p>Limits are set once, from what is expected at medians, as a crew sets them before leaving; a draw's patient may differ.
 */
public final class Journeys {
    private Journeys() { }

    /** @param noises by the names that legs use; a leg whose noise is not among them is quiet */
    public static Voyage of(Transport t, Settings settings, Map<String, Noise> noises) {
        return of(t, settings, noises, draw -> JourneyRun.of(t, settings, draw));
    }

    /** The same with journeys that somebody else makes (of a patient fitted to a blood gas, say). */
    public static Voyage of(Transport t, Settings settings, Map<String, Noise> noises, Function<Draw, JourneyRun> runs) {
        JourneyRun median = runs.apply(new Draw(0, 0));
        Expected expected = expected(median.legs().get(0).steady(), t);
        List<AlarmLimit> limits = AlarmLimits.of(t.ventilator(), t.monitor(), settings, expected, t.alarms());
        return draw -> stage(runs.apply(draw), limits, expected, noises, draw);
    }

    /** What limits are set for: the steady state of the first leg, as the devices show it. */
    public static Expected expected(Steady s, Transport t) {
        var b = s.breath();
        return new Expected(b.peakCmH2O(), b.plateauCmH2O(), b.expiredMl(), b.minuteVolumeLPerMin(), s.gases().etco2MmHg(), TwoColours.shows(s.gases().sao2(), t.patient().carboxyhaemoglobin(), t.patient().methaemoglobin()), b.ratePerMin());
    }

    /** Cardiac output at the start over the usual one; a measured output is taken as usual. */
    private static double outputShare(Transport t) { return t.patient().cardiacOutputLPerMin().isPresent() ? 1 : t.illness().cardiacOutputTimes().central(); }

    private static Stage stage(JourneyRun run, List<AlarmLimit> limits, Expected expected, Map<String, Noise> noises, Draw draw) {
        Transport t = run.transport();
        Sensing sensing = new Sensing(t.ventilator(), t.monitor(), t.patient(), outputShare(t), expected, draw);
        Speaking speaking = new Speaking(limits, sensing, expected, t.ventilator().gas(), draw);
        List<Part> parts = new ArrayList<>(run.parts());
        parts.add(sensing);
        parts.add(speaking);
        Script script = run.script().copy();
        for (int i = 0; i < t.legs().size(); i++) {
            Leg leg = t.legs().get(i);
            Noise noise = leg.noise().map(noises::get).orElse(null);
            if (noise == null) continue;
            double untilS = i + 1 < t.legs().size() ? run.legStartS()[i + 1] : Double.POSITIVE_INFINITY;
            for (Priority p : Priority.values()) {
                script.add(new Change(run.legStartS()[i], untilS, 0, Knob.HEARD, p.ordinal(), How.SET, noise.heard(p)));
            }
        }
        for (MonitorPower.Dark d : MonitorPower.dark(t, run.legStartS())) script.add(Change.during(d.fromS(), d.untilS(), Knob.MONITOR_ON, How.SET, 0));
        Supplies supplies = run.parts().stream().filter(SupplyPart.class::isInstance).map(p -> (Supplies) new Held((SupplyPart) p)).findFirst().orElse(Supplies.UNKNOWN);
        return new Stage(new Loop(parts), script, speaking, t, run.settings(), run.legStartS(), draw, supplies, run.ventilated().patient().predictedKg());
    }

    /** What the supply part of a run holds; on a leg with external power, the pack that would take over. */
    private record Held(SupplyPart part) implements Supplies {
        @Override public double oxygenL(Now n, int leg) { return part.oxygenL(n, leg); }

        @Override public double inUseL(Now n) { return part.storeInUse(n) < 0 ? Double.NaN : part.levelL(n, part.storeInUse(n)); }

        @Override public double charge(Now n, int leg) {
            double own = part.chargeWhOfLeg(n, leg);
            return Double.isNaN(own) && part.packs() > 0 ? part.chargeWh(n, 0) : own;
        }
    }
}
