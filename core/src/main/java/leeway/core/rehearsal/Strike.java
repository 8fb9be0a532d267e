package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import leeway.core.alarm.Sensing;
import leeway.core.gas.Barometer;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.rehearsal.Effect.FromJourney;
import leeway.core.rehearsal.Effect.Where;
import leeway.core.run.Change;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;

/** A fault or a remedy as changes of a script: effects with a time, a leg and a kit. */
final class Strike {
    private Strike() { }

    /** What a script is to carry from this time on. */
    static List<Change> changes(List<Effect> effects, double atS, KitFacts kit, Script script) {
        List<Change> changes = new ArrayList<>();
        for (Effect e : effects) {
            if (!e.only().stream().allMatch(n -> n.met(kit))) continue;
            double fromS = atS + e.afterS();
            for (int copy : copies(e, kit)) {
                Change change = new Change(fromS, fromS + e.forS(), e.rampS(), e.knob(), copy, e.how(), onDevice(e, value(e, kit.leg()), kit));
                changes.add(change);
                if (e.knob() == Knob.SEDATION) changes.addAll(held(change, script));
            }
        }
        return changes;
    }

    /** The same again wherever the journey sets the knob anew: sedation that wears off in steps must not wake whom a fault put to sleep. */
    private static List<Change> held(Change change, Script script) {
        List<Change> again = new ArrayList<>();
        for (Change step : script.layers()) {
            if (step.knob() != change.knob() || step.copy() != change.copy() || step.atS() <= change.atS() || step.atS() >= change.untilS()) continue;
            double rampS = Math.max(0, change.atS() + change.rampS() - step.atS());
            again.add(new Change(step.atS(), change.untilS(), rampS, change.knob(), change.copy(), change.how(), change.value()));
        }
        return again;
    }

    /** When the last effect is in full force; s from the strike. */
    static double settledS(List<Effect> effects) {
        double settled = 0;
        for (Effect e : effects) settled = Math.max(settled, e.afterS() + (Double.isInfinite(e.forS()) ? e.rampS() : e.forS()));
        return settled;
    }

    private static double value(Effect e, Leg leg) {
        if (e.from() == FromJourney.AIRCRAFT_ALTITUDE && leg.aircraftAltitudeM().isPresent()) return Barometer.pressureMmHg(leg.aircraftAltitudeM().get());
        return e.value();
    }

    /**
     * A setting that is turned to a value, and a rate that is turned by a factor, stand at the nearest that the device has. 0 is a setting that
     * is lost or off and stays, as do other factors: they are what a device gives, not what is set on it.
     */
    private static double onDevice(Effect e, double value, KitFacts kit) {
        Setting setting = SETTINGS.get(e.knob());
        Range range = setting == null ? null : kit.transport().ventilator().ranges().get(setting);
        if (range == null || value == 0) return value;
        if (e.how() == How.SET) return range.nearest(value);
        double set = kit.settings().get(setting, Double.NaN);
        return e.how() == How.TIMES && setting == Setting.RATE && set > 0 ? range.nearest(set * value) / set : value;
    }

    /** The settings that a fault or a remedy can turn. */
    private static final Map<Knob, Setting> SETTINGS = Map.ofEntries(Map.entry(Knob.TIDAL_VOLUME_SET, Setting.TIDAL_VOLUME), Map.entry(Knob.RATE_SET, Setting.RATE),
            Map.entry(Knob.INSPIRATORY_TIME_SET, Setting.INSPIRATORY_TIME), Map.entry(Knob.PAUSE_SET, Setting.PAUSE), Map.entry(Knob.INSPIRATORY_PRESSURE_SET, Setting.INSPIRATORY_PRESSURE),
            Map.entry(Knob.SUPPORT_SET, Setting.SUPPORT_PRESSURE), Map.entry(Knob.PEEP_SET, Setting.PEEP), Map.entry(Knob.FIO2_SET, Setting.FIO2), Map.entry(Knob.RISE_SET, Setting.RISE_TIME),
            Map.entry(Knob.PRESSURE_LIMIT_SET, Setting.PRESSURE_LIMIT), Map.entry(Knob.CYCLE_OFF_SET, Setting.CYCLE_OFF), Map.entry(Knob.BIAS_FLOW_SET, Setting.BIAS_FLOW));

    private static List<Integer> copies(Effect e, KitFacts kit) {
        Where where = e.on().where();
        Transport t = kit.transport();
        List<Integer> copies = new ArrayList<>();
        switch (where) {
            case ONLY -> copies.add(0);
            case ALL -> {
                for (int k = 0; k < e.knob().copies; k++) copies.add(k);
            }
            case STORE_IN_USE, STORES_OF_LEG -> {
                for (String name : kit.leg().oxygen()) {
                    copies.add(t.oxygen().indexOf(t.store(name)));
                    if (where == Where.STORE_IN_USE) break;
                }
            }
            case SENSOR -> copies.add(Sensing.copy(e.on().device().orElseThrow(), e.on().sensor().orElseThrow()));
            case CONDITION -> copies.add(e.on().condition().orElseThrow().ordinal());
        }
        return copies;
    }
}
