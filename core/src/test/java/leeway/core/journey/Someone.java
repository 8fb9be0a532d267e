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
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.PatientEntry;

/** Invented patients and devices for the tests of this room. */
final class Someone {
    private Someone() { }

    static final Circuit CIRCUIT = new Circuit("circuit", 1, 1.5, 2, 2, 10, 800, 0, "invented");
    static final Filter FILTER = new Filter("filter", 40, 2, "invented");
    static final Airway TUBE = new Airway("tube", Airway.Type.TRACHEAL_TUBE, 7.5, 30, 2, 0.9, 14, true, 0, "invented");
    static final Illness HEALTHY = illness(1, 1, 0.04, 0.1);
    static final Illness ILL = illness(0.6, 1.6, 0.2, 0.25);

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

    static Ventilated on(Illness illness, PatientEntry.Effort effort) {
        return Ventilated.of(woman(effort), illness, TUBE, FILTER, CIRCUIT, ventilator(Ventilator.Altitude.COMPENSATED));
    }

    static Settings volume(double tidalVolumeMl, double ratePerMin, double fio2) {
        return new Settings(Optional.of(Mode.AC_VC), Map.of(Setting.TIDAL_VOLUME, tidalVolumeMl, Setting.RATE, ratePerMin, Setting.INSPIRATORY_TIME, 1.0,
                Setting.PEEP, 5.0, Setting.FIO2, fio2));
    }
}
