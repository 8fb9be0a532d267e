package leeway.core.rehearsal;

import leeway.core.kit.Mode;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Sensor.Place;
import leeway.core.kit.Settings;
import leeway.core.transport.Leg;
import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/** The kit as it stands on one leg: what {@link Need} asks about. */
public record KitFacts(Transport transport, Settings settings, Leg leg) {
    /** Children's kits and doses end about here; common practice, no source. */
    private static final double CHILD_BELOW_YEARS = 12;

    Mode.Control control() {
        Mode.Control control = settings.mode().map(Mode::control).orElse(Mode.Control.SUPPORT);
        // a mode that seeks a volume by pressure answers a stiff lung with more pressure, as volume control does
        return control == Mode.Control.VOLUME_TARGETED_PRESSURE ? Mode.Control.VOLUME : control;
    }

    boolean child() {
        return transport.patient().ageYears().orElse(40) < CHILD_BELOW_YEARS;
    }

    boolean uses(Store.Type type) {
        return leg.oxygen().stream().anyMatch(name -> transport.store(name).type() == type);
    }

    int cylinders() {
        return leg.oxygen().stream().map(transport::store).filter(s -> s.type() == Store.Type.CYLINDER).mapToInt(Store::count).sum();
    }

    boolean usesFlowmeter() {
        return leg.oxygen().stream().map(transport::store).anyMatch(s -> !s.inlet().highPressure());
    }

    boolean hasBattery() {
        return transport.ventilator().battery().isPresent() || transport.power().stream().anyMatch(p -> p.battery().isPresent());
    }

    boolean externalPower() {
        return leg.power().flatMap(name -> transport.power().stream().filter(p -> p.name().equals(name)).findFirst()).map(p -> p.mains()).orElse(false);
    }

    boolean sensor(Measured measured, Place place) {
        return transport.ventilator().sensors().stream().anyMatch(s -> s.measured() == measured && s.place() == place)
                || transport.monitor().sensors().stream().anyMatch(s -> s.measured() == measured && s.place() == place);
    }

    boolean ventilatorHas(Measured measured) {
        return transport.ventilator().sensors().stream().anyMatch(s -> s.measured() == measured);
    }

    boolean breathes() {
        return transport.patient().lungs().effort().map(e -> e != Effort.NONE).orElse(false) && !transport.patient().paralysed();
    }
}
