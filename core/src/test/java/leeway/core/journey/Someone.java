package leeway.core.journey;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Airway;
import leeway.core.kit.Band;
import leeway.core.kit.Circuit;
import leeway.core.kit.Filter;
import leeway.core.kit.Illness;
import leeway.core.kit.Mode;
import leeway.core.kit.Monitor;
import leeway.core.kit.Policy;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/** Invented patients and devices for the tests of this room. */
public final class Someone {
    private Someone() { }

    static final Circuit CIRCUIT = new Circuit("circuit", 1, 1.5, 2, 2, 10, 800, 0, "invented");
    static final Filter FILTER = new Filter("filter", 40, 2, "invented");
    static final Airway TUBE = new Airway("tube", Airway.Type.TRACHEAL_TUBE, 7.5, 30, 2, 0.9, 14, true, 0, "invented");
    public static final Illness HEALTHY = illness(1, 1, 0.04, 0.1);
    public static final Illness ILL = illness(0.6, 1.6, 0.2, 0.25);

    static Illness illness(double compliance, double resistance, double shunt, double dead) {
        return new Illness("made up", Band.of(compliance), Band.of(resistance), Band.of(1), Band.of(shunt), Band.of(0), Band.of(dead), Band.of(1), Band.of(0.35), Band.of(1),
                Band.of(0.8), Band.of(1), Band.of(1), Band.of(0), 37, Optional.empty(), "adult", false, "", "invented");
    }

    static PatientEntry woman(PatientEntry.Effort effort) {
        return new PatientEntry(PatientEntry.Sex.FEMALE, OptionalDouble.of(170), false, OptionalDouble.of(65), OptionalDouble.of(50), OptionalDouble.empty(),
                Optional.empty(), new PatientEntry.Lungs(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.ofNullable(effort),
                        OptionalDouble.empty(), OptionalDouble.empty()), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), false, false,
                OptionalDouble.empty(), Optional.empty());
    }

    static Ventilator ventilator(Ventilator.Altitude altitude) {
        return new Ventilator("made up", Ventilator.Drive.TURBINE, List.of(Mode.values()), Map.of(), Settings.NONE, Map.of(), 200, 60, 0.05, 1, true, false, false,
                new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), true, 0, 0, 0, 0, 0, 2.7, 6, false, Ventilator.VolumeBasis.BTPS,
                        altitude, 0.03),
                Optional.empty(), Optional.empty(), List.of(), List.of(), OptionalDouble.of(20), 5, "invented");
    }

    public static Ventilated on(Illness illness, PatientEntry.Effort effort) {
        return Ventilated.of(woman(effort), illness, TUBE, FILTER, CIRCUIT, ventilator(Ventilator.Altitude.COMPENSATED));
    }

    public static Settings volume(double tidalVolumeMl, double ratePerMin, double fio2) {
        return new Settings(Optional.of(Mode.AC_VC), Map.of(Setting.TIDAL_VOLUME, tidalVolumeMl, Setting.RATE, ratePerMin, Setting.INSPIRATORY_TIME, 1.0,
                Setting.PEEP, 5.0, Setting.FIO2, fio2));
    }

    /** Sea level for 10 min, then 2000 m for 20 min after a climb of 5 min; one cylinder of 10 L. */
    static Transport journey(Ventilator ventilator, List<Event> events) {
        Leg ground = new Leg("road", 10, 15, List.of("cylinder"), Optional.empty(), 0, false, 0, OptionalDouble.empty(), Optional.empty(), Optional.empty(), 2,
                false, true, Optional.empty());
        Leg air = new Leg("flight", 20, 30, List.of("cylinder"), Optional.empty(), 2000, true, 5, OptionalDouble.empty(), Optional.empty(), Optional.empty(), 2,
                false, true, Optional.empty());
        Store cylinder = new Store("cylinder", Store.Type.CYLINDER, Optional.of("10 L"), OptionalDouble.of(10), OptionalDouble.of(200), OptionalDouble.of(15),
                OptionalDouble.empty(), OptionalDouble.empty(), 1, 10, new Store.Gauge(2.5, 315, 5), OptionalDouble.empty(), new Store.Inlet(true, OptionalDouble.empty()));
        Policy.Harm harm = new Policy.Harm(0.85, 0.88, 0.04, 75, 20, 30, 50, 7.15, 7.60, 45, 25, 0.5, 300, 30, Double.POSITIVE_INFINITY, 30);
        Policy policy = new Policy("made up", 0.01, 0.01, 30, 30, false, Optional.empty(), harm,
                new Policy.Targets(30, 15, 7.2, 7.5, 30, 60, 0.9, 8, 17), "invented");
        return new Transport("two legs", woman(null), ILL, TUBE, ventilator, CIRCUIT, FILTER, Monitor.NONE, "by illness", Settings.NONE, List.of(cylinder), List.of(),
                List.of(ground, air), events, List.of(), policy, Map.of(), 0, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
    }
}
