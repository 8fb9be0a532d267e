package leeway.core.rehearsal;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Predicate;
import leeway.core.kit.Airway;
import leeway.core.kit.Mode;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Sensor.Place;
import leeway.core.kit.Setting;
import leeway.core.transport.PatientEntry.Cuff;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/** What kit, settings, patient or leg must have so that a fault, or one of its effects, can happen. */
public enum Need {
    VENTILATOR("a ventilator", k -> k.transport().ventilator().machine(), "there is no ventilator to fail"),
    VOLUME_CONTROL("volume control", k -> k.control() == Mode.Control.VOLUME, "the mode does not control volume"),
    PRESSURE_CONTROL("pressure control", k -> k.control() == Mode.Control.PRESSURE || k.control() == Mode.Control.SUPPORT, "the mode does not control pressure"),
    SET_RATE("a set rate", k -> k.settings().mode().map(Mode::hasRate).orElse(false), "the mode has no set rate"),
    TRIGGER("a trigger", k -> k.settings().mode().map(m -> m.sequence() != Mode.Sequence.MANDATORY).orElse(false), "the mode takes no breath of the patient's"),
    PEEP("PEEP", k -> k.settings().get(Setting.PEEP, 0) > 0, "no PEEP is set"),
    LESS_THAN_PURE_OXYGEN("less than 100 % oxygen", k -> k.settings().get(Setting.FIO2, 0.21) < 0.995, "100 % oxygen is set anyway"),
    OXYGEN("oxygen above air", k -> k.settings().get(Setting.FIO2, 0.21) > 0.22, "the patient gets air anyway"),
    TUBE("a tracheal tube", k -> k.transport().airway().type() == Airway.Type.TRACHEAL_TUBE, "the airway is no tracheal tube"),
    TUBE_OR_TRACHEOSTOMY("a tube in the trachea", k -> k.transport().airway().type() == Airway.Type.TRACHEAL_TUBE
            || k.transport().airway().type() == Airway.Type.TRACHEOSTOMY, "there is no tube in the trachea"),
    CUFF("a cuff", k -> k.transport().airway().cuffed() && k.transport().patient().cuff().map(c -> c != Cuff.NONE).orElse(true), "the airway has no cuff"),
    FILTER("a filter", k -> !(k.transport().ventilator().alone() && k.transport().airway().type() == Airway.Type.FACE_MASK) && (k.transport().filter().resistanceCmH2OSPerL() > 0
            || k.transport().filter().deadSpaceMl() > 0), "no filter is fitted"),
    SINGLE_LIMB("a single limb", k -> k.transport().circuit().limbs() == 1 && !k.transport().ventilator().alone(), "the circuit has no valve at the patient"),
    CHILD("a child", k -> k.child(), "the patient is no child"),
    ADULT("an adult", k -> !k.child(), "the patient is no adult"),
    GAS_DRIVEN("a gas-driven ventilator", k -> k.transport().ventilator().gas().stopsWithoutGas(), "the ventilator goes on without gas"),
    CYLINDER("a cylinder in use", k -> k.uses(Store.Type.CYLINDER), "no leg draws on a cylinder"),
    SECOND_CYLINDER("a second cylinder", k -> k.cylinders() > 1, "there is only one cylinder, so none is changed"),
    WALL("a wall outlet in use", k -> k.uses(Store.Type.WALL), "no leg uses a wall outlet; a cylinder's coupling takes no air hose"),
    FLOWMETER("a flowmeter inlet in use", k -> k.usesFlowmeter(), "no leg feeds the ventilator through a flowmeter"),
    STORE("oxygen in use", k -> !k.leg().oxygen().isEmpty(), "no leg draws oxygen"),
    BATTERY("a battery", k -> k.transport().ventilator().load().isPresent() && k.hasBattery(), "the ventilator runs without a battery"),
    EXTERNAL_POWER("external power", k -> k.externalPower(), "no leg has external power"),
    MONITOR("a monitor", k -> !k.transport().monitor().sensors().isEmpty(), "there is no monitor apart from the ventilator"),
    CO2_LINE("a carbon dioxide line", k -> k.sensor(Measured.END_TIDAL_CO2, Place.SIDE_STREAM), "no CO2 is sampled through a line"),
    PRESSURE_LINE("a pressure line", k -> k.sensor(Measured.AIRWAY_PRESSURE, Place.PATIENT_LINE), "the ventilator measures pressure inside, without a line"),
    FLOW_SENSOR("a flow sensor at the patient", k -> k.sensor(Measured.EXPIRED_VOLUME, Place.PATIENT), "there is no flow sensor at the patient"),
    OXYGEN_CELL("an oxygen cell", k -> k.ventilatorHas(Measured.INSPIRED_OXYGEN), "the ventilator has no oxygen cell"),
    EFFORT("a patient who breathes", k -> k.breathes(), "the patient makes no effort to breathe"),
    NO_EFFORT("a patient who does not breathe", k -> !k.breathes(), "the patient breathes already"),
    NOT_PARALYSED("a patient who is not paralysed", k -> !k.transport().patient().paralysed(), "the patient is paralysed"),
    ALIVE("metabolism", k -> !k.transport().illness().testLung(), "a test lung has no blood and no metabolism"),
    LUNGS_APART("two lungs apart", k -> apart(k.transport()), "right and left lung are not told apart in this patient"),
    LUNGS_TOGETHER("lungs not apart", k -> !apart(k.transport()), "right and left lung are told apart in this patient"),
    CABIN_PRESSURE("a pressurised cabin", k -> k.leg().altitudeM() > 0 && !k.leg().unpressurised(), "no leg flies with a pressurised cabin"),
    COLD("cold around the cylinders", k -> k.leg().temperatureCel().orElse(20) < 15, "no leg is colder than 15 Cel");

    private final String words;
    private final Predicate<KitFacts> met;
    private final String lacking;

    Need(String words, Predicate<KitFacts> met, String lacking) {
        this.words = words;
        this.met = met;
        this.lacking = lacking;
    }

    private static boolean apart(Transport t) { return t.patient().lungs().kind().over(t.illness().lungs()).apart(); }

    /** As a fault sheet names it. */
    public String words() { return words; }

    public boolean met(KitFacts kit) { return met.test(kit); }

    /** Why a fault that needs it cannot happen: a clause without a full stop. */
    public String lacking() { return lacking; }

    public static Optional<Need> ofWords(String words) {
        return Arrays.stream(values()).filter(n -> n.words.equals(words)).findFirst();
    }
}
