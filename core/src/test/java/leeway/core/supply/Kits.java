package leeway.core.supply;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.kit.Battery;
import leeway.core.kit.Policy;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/** Ventilators, stores and needs for the tests of this room. */
final class Kits {
    static final Store.Gauge EXACT = new Store.Gauge(0, 315, 0);
    static final Store.Gauge USUAL = new Store.Gauge(2.5, 315, 5);
    static final Store.Inlet HIGH = new Store.Inlet(true, OptionalDouble.empty());

    static Ventilator turbine(Ventilator.VolumeBasis basis) {
        return ventilator("turbine", Ventilator.Drive.TURBINE, gas(OptionalDouble.empty(), false, 0, false, basis));
    }

    static Ventilator pneumatic(Ventilator.VolumeBasis basis, double mixture, boolean blender, double driveLPerMin) {
        return ventilator("pneumatic", Ventilator.Drive.PNEUMATIC, gas(OptionalDouble.of(mixture), blender, driveLPerMin, true, basis));
    }

    static Ventilator.Gas gas(OptionalDouble mixture, boolean blender, double driveLPerMin, boolean stops, Ventilator.VolumeBasis basis) {
        return new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE, Ventilator.Inlet.FLOWMETER), mixture, blender, driveLPerMin, 0, 0, 0, 0, 2.7, 6,
                stops, basis, Ventilator.Altitude.COMPENSATED, 0.05);
    }

    static Ventilator ventilator(String name, Ventilator.Drive drive, Ventilator.Gas gas) {
        return ventilator(name, drive, gas, Optional.of(new Ventilator.Load(5, 3, 5, 0.1, 4, 1, 60)));
    }

    static Ventilator ventilator(String name, Ventilator.Drive drive, Ventilator.Gas gas, Optional<Ventilator.Load> load) {
        return new Ventilator(name, drive, List.of(), Map.of(), Settings.NONE, Map.of(), 120, 60, 0.02, 3, true, true, false, gas, load,
                Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 5, "invented");
    }

    static LegNeed need(double minuteVolumeLPerMin, double fio2) {
        return new LegNeed(minuteVolumeLPerMin, 0, 0, 15, fio2, 22, 5, 1013.25);
    }

    static Store cylinder(String name, double waterL, double bar, double cel, int count, double residual, Store.Gauge gauge) {
        return new Store(name, Store.Type.CYLINDER, Optional.of(waterL + " L"), OptionalDouble.of(waterL), OptionalDouble.of(bar), OptionalDouble.of(cel),
                OptionalDouble.empty(), OptionalDouble.empty(), count, residual, gauge, OptionalDouble.empty(), HIGH);
    }

    static Store concentrator(String name, double flowLPerMin) {
        return new Store(name, Store.Type.CONCENTRATOR, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
                OptionalDouble.empty(), OptionalDouble.of(flowLPerMin), 1, 0, EXACT, OptionalDouble.empty(), new Store.Inlet(false, OptionalDouble.empty()));
    }

    static Store wall(String name) {
        return new Store(name, Store.Type.WALL, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
                OptionalDouble.empty(), OptionalDouble.empty(), 1, 0, EXACT, OptionalDouble.empty(), HIGH);
    }

    static final Policy POLICY = new Policy("test", 0.01, 0.01, 30, 30, false, Optional.empty(), null, null, "invented");

    static Leg leg(String name, double takes, double worst, String... oxygen) {
        return new Leg(name, takes, worst, List.of(oxygen), Optional.empty(), 0, false, 0, OptionalDouble.empty(), Optional.empty(), Optional.empty(), 2, false, true, Optional.empty());
    }

    static Leg on(Leg leg, String power, double temperatureCel) {
        return new Leg(leg.name(), leg.takesMin(), leg.atWorstMin(), leg.oxygen(), Optional.of(power), leg.altitudeM(), false, 0, OptionalDouble.of(temperatureCel), leg.noise(),
                leg.diversion(), leg.crew(), leg.waiting(), leg.charging(), Optional.empty());
    }

    static Leg waiting(Leg leg) {
        return new Leg(leg.name(), leg.takesMin(), leg.atWorstMin(), leg.oxygen(), leg.power(), leg.altitudeM(), false, 0, leg.temperatureCel(), leg.noise(),
                leg.diversion(), leg.crew(), true, leg.charging(), Optional.empty());
    }

    static Leg diverted(Leg leg, double chance, double adds) {
        return new Leg(leg.name(), leg.takesMin(), leg.atWorstMin(), leg.oxygen(), leg.power(), leg.altitudeM(), false, 0, leg.temperatureCel(), leg.noise(),
                Optional.of(new Leg.Diversion(chance, adds)), leg.crew(), leg.waiting(), leg.charging(), Optional.empty());
    }

    static Transport transport(Ventilator v, List<Store> oxygen, List<PowerStore> power, List<Event> events, double correlation, Policy policy, Leg... legs) {
        return new Transport("test", null, null, null, v, null, null, null, "by illness", Settings.NONE, oxygen, power, List.of(legs), events, List.of(), policy,
                Map.of(), correlation, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
    }

    static Transport transport(List<Store> oxygen, Leg... legs) {
        return transport(turbine(Ventilator.VolumeBasis.FREE), oxygen, List.of(), List.of(), 0, POLICY, legs);
    }

    static final Battery PACK = new Battery("pack", 90, 3, 0.2, 0.0005, List.of(new Battery.Point(-20, 0.55), new Battery.Point(0, 0.87), new Battery.Point(25, 1)),
            0.1, 0.05, 40, 0, 45, 0.7, "invented");

    static PowerStore pack(String name, double charge, double age) { return new PowerStore(name, false, Optional.of(PACK), charge, age, 0); }

    static PowerStore mains(String name) { return new PowerStore(name, true, Optional.empty(), 0, 0, 0); }

    /** A need that draws exactly this much of pure oxygen. */
    static LegNeed pure(double lPerMin) { return need(lPerMin, 1); }

    private Kits() { }
}
