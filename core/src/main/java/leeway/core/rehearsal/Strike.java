package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.List;
import leeway.core.alarm.Sensing;
import leeway.core.gas.Barometer;
import leeway.core.rehearsal.Effect.FromJourney;
import leeway.core.rehearsal.Effect.Where;
import leeway.core.run.Change;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;

/** A fault or a remedy as changes of a script: effects with a time, a leg and a kit. */
final class Strike {
    private Strike() { }

    static List<Change> changes(List<Effect> effects, double atS, KitFacts kit) {
        List<Change> changes = new ArrayList<>();
        for (Effect e : effects) {
            if (!e.only().stream().allMatch(n -> n.met(kit))) continue;
            double fromS = atS + e.afterS();
            for (int copy : copies(e, kit)) {
                changes.add(new Change(fromS, fromS + e.forS(), e.rampS(), e.knob(), copy, e.how(), value(e, kit.leg())));
            }
        }
        return changes;
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
