package leeway.files.transport;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.core.body.Posture;
import leeway.core.kit.AlarmCondition;
import leeway.core.quantity.Kind;
import leeway.core.run.Knob;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Table;
import leeway.files.sheet.LungKeys;
import leeway.files.sheet.Alarms;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.CylinderSize;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SettingsKeys;

/**
 * Every key of the transport file. Bounds are what no patient, device or journey goes beyond; they are wide on purpose
 * (common practice, no source) and catch slips of unit and digit, not bad choices.
 */
public final class TransportKeys {
    static final int MOST_LEGS = 100;
    /** As many as the engine follows at once. */
    private static final int MOST_STORES = Knob.STORE_OPEN.copies, MOST_POWER = Knob.BATTERY.copies;
    private static final int MOST_EVENTS = 200;
    /** How long a journey's part may take, min: a week. */
    private static final double LONGEST_MIN = 7 * 24 * 60;

    static final List<String> POSITIONS = Posture.WORDS;

    static final List<String> USES = List.of("nebuliser", "suction");

    private static final Table LUNGS = Table.of("lungs",
            Key.may("compliance", Form.of(Kind.COMPLIANCE, 0.1, 300), "Static compliance of the respiratory system.").otherwise("by the illness"),
            Key.may("resistance", Form.of(Kind.RESISTANCE, 0.5, 400), "Of lungs and airways, without tube and filter.").otherwise("by the illness"),
            Key.may("resistance with tube", Form.of(Kind.RESISTANCE, 1, 500, "18 cmH2O.s/L"), "As taken from a ventilator, tube included."),
            Key.may("effort", Form.choice("effort", "none", "weak", "normal", "strong"), "Own effort to breathe.").otherwise("by the illness").also("drive", "breathing"),
            Key.may("shunt", Form.of(Kind.FRACTION, 0, 0.9, "18 %"), "Share of the cardiac output that passes no ventilated lung.").otherwise("by the illness"),
            Key.may("dead space", Form.of(Kind.VOLUME, 1, 1000, "160 mL"), "All of it as measured: airways, tube, filter, alveolar.").otherwise("the sum of its parts"),
            Key.may("spread", Form.number(0, 2.5, "0.8"), "Of ventilation over perfusion, as the standard deviation of the natural logarithm: 0.3 to 0.6 healthy, 1 and more ill; takes the place of the poorly ventilated compartment.")
                    .otherwise("by the illness").also("log sd", "v/q spread", "scatter"),
            LungKeys.CURVE, LungKeys.RECRUITMENT, LungKeys.FLOW_LIMIT, LungKeys.SLOW_PART, LungKeys.LEFT_LUNG);

    private static final Table BLOOD_GAS = Table.of("the blood gas",
            Key.must("ph", Form.number(6.5, 7.9, "7.31"), "pH at 37 Cel."),
            Key.must("paco2", Form.of(Kind.GAS_TENSION, 5, 250, "52 mmHg"), "Arterial carbon dioxide tension.").also("pco2", "co2"),
            Key.may("pao2", Form.of(Kind.GAS_TENSION, 10, 760, "74 mmHg"), "Arterial oxygen tension.").also("po2"),
            Key.must("fio2", Form.of(Kind.FRACTION, 0.21, 1), "Share of oxygen that was breathed in."),
            Key.may("tidal volume", Form.of(Kind.VOLUME, 2, 3000), "That was given then.").also("vt"),
            Key.may("rate", Form.of(Kind.RATE, 1, 150), "That was given then.").also("respiratory rate", "frequency"),
            Key.may("minute volume", Form.of(Kind.FLOW, 0.05, 60, "7 L/min"), "Instead of tidal volume and rate."),
            Key.may("peep", Form.of(Kind.AIRWAY_PRESSURE, 0, 50), "That was given then.").otherwise("0 cmH2O"),
            Key.may("after", Form.of(Kind.JOURNEY_TIME, 0, 1440, "30 min"), "How long these settings had been in force.").otherwise("30 min"));

    private static final Table PATIENT = Table.of("patient",
            Key.may("sex", Form.choice("sex", "female", "male"), "As the formulas of body size know it; adults need it.").also("gender"),
            Key.may("height", Form.of(Kind.HEIGHT, 20, 250), "Adults need it.").also("length", "size"),
            Key.may("height estimated", Form.yesNo(), "Whether nobody measured.").otherwise("no"),
            Key.may("weight", Form.of(Kind.MASS, 0.3, 400), "As measured.").also("mass", "body weight"),
            Key.may("age", Form.of(Kind.AGE, 0, 120), "In years, months or days; without it the patient is an adult.").otherwise("adult"),
            Key.may("illness", Form.name("illness", "moderate pneumonia"), "A sheet: lungs, shunt, metabolism, circulation.").otherwise("healthy lungs").also("diagnosis", "disease", "condition"),
            Key.may("airway", Form.name("airway", "tracheal tube 7.5 mm"), "A sheet.").otherwise("a tracheal tube by age").also("tube"),
            Key.may("airway depth", Form.of(Kind.LENGTH, 3, 40), "How far the tube lies in at the teeth; too deep or too shallow is a caution of the plan.").also("tube depth", "depth"),
            Key.may("cuff", Form.choice("filling of the cuff", "air", "saline", "none"), "What fills the cuff."),
            Key.may("lungs", Form.section(LUNGS), "Measured values, which outrank the illness."),
            Key.may("shunt", Form.of(Kind.FRACTION, 0, 0.9, "18 %"), "As under lungs."),
            Key.may("dead space", Form.of(Kind.VOLUME, 1, 1000, "160 mL"), "As under lungs."),
            Key.may("temperature", Form.of(Kind.TEMPERATURE, 25, 43, "37.8 Cel"), "Body temperature.").otherwise("by the illness").also("body temperature"),
            Key.may("haemoglobin", Form.of(Kind.HAEMOGLOBIN, 20, 260), "Concentration in blood.").otherwise("by age and illness").also("hemoglobin", "hb"),
            Key.may("carboxyhaemoglobin", Form.of(Kind.FRACTION, 0, 0.7, "5 %"), "Share of the haemoglobin that carries carbon monoxide.").otherwise("0 %").also("cohb", "carboxyhemoglobin"),
            Key.may("methaemoglobin", Form.of(Kind.FRACTION, 0, 0.7, "2 %"), "Share of the haemoglobin that is methaemoglobin.").otherwise("0 %").also("methb", "methemoglobin"),
            Key.may("position", Form.choice("position", POSITIONS), "How the patient lies: lung volume and chest wall follow.").otherwise("flat"),
            Key.may("paralysed", Form.yesNo(), "Whether a relaxant works.").otherwise("no").also("paralyzed", "relaxed"),
            Key.may("chest drain", Form.yesNo(), "Whether one lies.").otherwise("no"),
            Key.may("sedation", SedationText.FORM, "Takes 20, 45 or 75 %, or so much, of the own effort and of its answer to the gases.").otherwise("none").also("sedated"),
            Key.may(SedationText.HALF_KEY, SedationText.HALF, "After this time half of it has worn off, after twice this three quarters.").otherwise("it does not wear off").also("half-time", "half time", "wears off"),
            Key.may("drive", Form.choice("drive", "follows gases", "fixed"), "Whether own effort answers to carbon dioxide and oxygen.").otherwise("follows gases").also("respiratory drive"),
            Key.may("coughs", Form.of(Kind.RATE, 0, 60, "4 /min"), "How often the patient coughs.").otherwise("0 /min").also("cough"),
            Key.may("hiccups", Form.of(Kind.RATE, 0, 60, "20 /min"), "How often the patient hiccups.").otherwise("0 /min").also("hiccup"),
            Key.may("heart rate", Form.of(Kind.RATE, 10, 300, "85 /min"), "Heart beats, which a trigger may take for efforts.").otherwise("85 /min").also("pulse"),
            Key.may("heart swing", Form.of(Kind.FLOW, 0, 60, "4 L/min"), "Flow that each heart beat makes at the airway.").otherwise("0 L/min").also("cardiac oscillation"),
            Key.may("cardiac output", Form.of(Kind.FLOW, 0.05, 25, "5 L/min"), "As measured.").otherwise("by size and illness"),
            Key.may("pressure lowers output", Form.yesNo(), "Whether pressure in the chest lowers the cardiac output; a coarse rule that can be switched off.").otherwise("yes"),
            Key.may("blood gas", Form.section(BLOOD_GAS), "A blood gas with the settings it was taken under: the model is fitted to it.").also("abg", "bga"));

    private static final Table GAUGE = Table.of("the gauge",
            Key.may("class", Form.number(0.1, 10, "2.5"), "Permissible error in percent of the span (EN 837-1).").otherwise("2.5"),
            Key.may("span", Form.of(Kind.STORE_PRESSURE, 10, 600, "315 bar"), "Full scale.").otherwise("315 bar"),
            Key.may("read to", Form.of(Kind.STORE_PRESSURE, 0, 50, "5 bar"), "Half-width of the reading.").otherwise("5 bar"));

    private static final Table STORE = Table.of("a store of oxygen",
            Key.must("name", Form.text(40, "portable"), "By which legs name it."),
            Key.may("cylinder", CylinderSize.form(), "A cylinder: its water capacity, or a size with its country.").also("bottle", "tank", "size", "volume"),
            Key.may("wall", Form.yesNo(), "A wall outlet or a main, without end."),
            Key.may("liquid", Form.of(Kind.STORE_VOLUME, 0.1, 5000, "20 L"), "Liquid oxygen."),
            Key.may("concentrator", Form.of(Kind.FLOW, 0.1, 60, "5 L/min"), "The most that a concentrator gives."),
            Key.may("pressure", Form.of(Kind.STORE_PRESSURE, 0, 350), "Of a cylinder: gauge pressure as read."),
            Key.may("rating", Form.of(Kind.STORE_PRESSURE, 10, 350, "200 bar"), "Gauge pressure at 15 Cel to which such a cylinder may be filled.").otherwise("by its size").also("working pressure", "rated"),
            Key.may("read at", Form.of(Kind.TEMPERATURE, -60, 70), "Temperature of the gas when the gauge was read.").otherwise("the warmer of 20 Cel and the first leg"),
            Key.may("count", Form.whole(1, 50), "How many of the same.").otherwise("1").also("number", "quantity"),
            Key.may("residual", Form.of(Kind.STORE_PRESSURE, 0, 60, "10 bar"), "Gauge pressure that stays inside.").otherwise("what the ventilator's inlet needs"),
            Key.may("gauge", Form.section(GAUGE), "How well the pressure is known.").otherwise("class 2.5 of 315 bar, read to 5 bar"),
            Key.may("mass", Form.of(Kind.MASS, 0.1, 3000, "4 kg"), "Of one, filled.").also("weight"),
            Key.may("inlet", inlet(), "How it is connected.").otherwise("high pressure where the ventilator has it"))
            .wrong("flow", "a store has no flow", "Write \"inlet: flowmeter 10 L/min\", or \"concentrator: 5 L/min\".");

    private static final Table POWER = Table.of("a store of power",
            Key.must("name", Form.text(40, "internal"), "By which legs name it."),
            Key.may("battery", Form.name("battery", "example pack"), "A sheet."),
            Key.may("mains", Form.yesNo(), "A socket, without end.").also("socket", "external"),
            Key.may("charge", Form.of(Kind.FRACTION, 0, 1, "90 %"), "Of a battery: as shown.").otherwise("100 %").also("level"),
            Key.may("age", Form.of(Kind.AGE, 0, 40, "3 years"), "Of a battery.").otherwise("1 year"),
            Key.may("cycles", Form.whole(0, 10_000, "200"), "Full cycles that a battery has done.").otherwise("100 for each year of age"),
            Key.may("after", Form.name("store", "internal"), "Of a second battery: the one before it in the list, which it follows when that is empty.").also("follows", "instead of"));

    private static final Table DIVERSION = Table.of("the diversion",
            Key.must("chance", Form.of(Kind.FRACTION, 0, 1, "5 %"), "How likely it is."),
            Key.must("adds", Form.of(Kind.JOURNEY_TIME, 0.1, LONGEST_MIN, "40 min"), "What it adds."));

    private static final Table LEG = Table.of("a leg",
            Key.must("leg", Form.text(60, "road to the strip"), "What it is called.").also("name"),
            Key.must("takes", Form.of(Kind.JOURNEY_TIME, 0.1, LONGEST_MIN), "The median of its duration.").also("duration", "time", "lasts", "median"),
            Key.may("at worst", Form.of(Kind.JOURNEY_TIME, 0.1, LONGEST_MIN, "25 min"), "The 95th percentile of its duration; the same as takes means certain.").otherwise("1.5 × takes").also("worst", "max", "longest"),
            Key.may("oxygen", Form.oneOrMany(Form.name("store", "portable"), MOST_STORES), "A store or a list, used in that order.").otherwise("the only store").also("from"),
            Key.may("power", Form.name("store", "internal"), "A store of power.").otherwise("the first battery"),
            Key.may("altitude", Form.of(Kind.ALTITUDE, -430, 15_000, "3000 ft"), "Of ground or unpressurised cabin; with a cabin altitude, of the aircraft.").otherwise("0 m"),
            Key.may("cabin altitude", Form.of(Kind.ALTITUDE, -430, 5_000), "In a pressurised cabin."),
            Key.may("climb", Form.of(Kind.JOURNEY_TIME, 0, 240, "10 min"), "Over how long the altitude is reached.").otherwise("at once"),
            Key.may("temperature", Form.of(Kind.TEMPERATURE, -60, 60), "Around the kit.").otherwise("20 Cel"),
            Key.may("noise", Form.name("noise", "road"), "A sheet: how likely an alarm is heard.").otherwise("quiet"),
            Key.may("diversion", Form.section(DIVERSION), "A detour that may come.").otherwise("none"),
            Key.may("crew", Form.whole(1, 20), "How many go along.").otherwise("2"),
            Key.may("waiting", Form.yesNo(), "Standing still, perhaps in standby.").otherwise("no"),
            Key.may("charging", Form.yesNo(), "Whether mains also charges the battery.").otherwise("yes"),
            Key.may("sedation", SedationText.FORM, "From the start of the leg on, in place of what was given before.").otherwise("as before").also("sedated"),
            Key.may(SedationText.HALF_KEY, SedationText.HALF, "After this time half of it has worn off.").otherwise("it does not wear off").also("half-time", "half time", "wears off"));

    private static final Table EVENT = Table.of("an event",
            Key.must("at", Form.of(Kind.JOURNEY_TIME, 0, LONGEST_MIN), "From the start of the journey."),
            Key.may("set", Form.section(SettingsKeys::table), "What is set."),
            Key.may("change over", Form.name("store", "portable"), "The store that is taken from then on."),
            Key.may("use", Form.choice("use of oxygen", USES), "What is driven with oxygen beside the ventilator."),
            Key.may("sedation", SedationText.FORM, "What is given then, in place of what was given before.").also("sedated", "sedate"),
            Key.may(SedationText.HALF_KEY, SedationText.HALF, "With sedation: after this time half of it has worn off.").otherwise("it does not wear off").also("half-time", "half time", "wears off"),
            Key.may("flow", Form.of(Kind.FLOW, 0.5, 100, "8 L/min"), "With use: what it takes, free gas.").otherwise("by the ventilator's sheet, else nebuliser 8 L/min, suction 30 L/min"),
            Key.may("for", Form.of(Kind.TIME, 1, 86_400, "90 s"), "For how long; then as before.").otherwise("to the end"));

    private static final Table BACK = Table.of("a stretch of the way home",
            Key.must("leg", Form.text(60, "road home"), "What it is called.").also("name"),
            Key.must("takes", Form.of(Kind.JOURNEY_TIME, 0.1, LONGEST_MIN, "60 min"), "How long it takes.").also("duration", "time"),
            Key.may("ventilator", Form.choice("state of the ventilator", "off", "standby"), "Truly off, or switched on and standing by.").otherwise("off"),
            Key.may("power", Form.name("store", "vehicle"), "A store of power.").otherwise("the first battery"),
            Key.may("temperature", Form.of(Kind.TEMPERATURE, -60, 60), "Around the kit.").otherwise("20 Cel"));

    private static final Table WHAT_IF = Table.of("a what if",
            Key.must("at", Form.of(Kind.JOURNEY_TIME, 0, LONGEST_MIN), "From the start of the journey."),
            Key.may("fault", Form.name("fault", "disconnection at the patient"), "A sheet."),
            Key.may("apnoea", Form.choice("apnoea", "airway closed", "open to air", "open to oxygen"), "Nobody breathes."),
            Key.may("for", Form.of(Kind.TIME, 1, 86_400, "40 s"), "For how long.").otherwise("to the end"));

    private static final Table DELAYS = Table.of("delays",
            Key.must("correlation", Form.number(0, 1, "0.3"), "How much one late leg makes the others late."));

    public static final Table TRANSPORT = Table.of("the transport",
            Key.may("transport", Form.text(120, "Night transfer, Holm clinic to Westhaven"), "A title.").otherwise("the file's name").also("title", "name"),
            Key.must("patient", Form.section(PATIENT), "Who is carried."),
            Key.must("ventilator", Form.name("ventilator", "example pneumatic"), "A sheet.").also("device ventilator"),
            Key.may("circuit", Form.name("circuit", "single limb adult"), "A sheet.").otherwise("by age"),
            Key.may("filter", Form.name("filter", "adult HME filter"), "A sheet, or none.").otherwise("by age").also("hme"),
            Key.may("monitor", Form.name("monitor", "example transport monitor"), "A sheet, or none: what is measured apart from the ventilator.").otherwise("example transport monitor"),
            Key.may("strategy", Form.name("strategy", "lung protective"), "A sheet, or by illness: what suggests the settings that the file leaves open.").otherwise("by illness"),
            Key.may("settings", Form.section(SettingsKeys::table), "Prescribed; the rest is suggested by the strategy."),
            Key.must("oxygen", Form.list(Form.section(STORE), MOST_STORES), "Stores of oxygen.").also("stores", "cylinders"),
            Key.may("power", Form.list(Form.section(POWER), MOST_POWER), "Stores of power.").otherwise("the ventilator's own pack, full, one year old"),
            Key.must("legs", Form.list(Form.section(LEG), MOST_LEGS), "The stretches of the journey.").also("journey", "stages", "route"),
            Key.may("events", Form.list(Form.section(EVENT), MOST_EVENTS), "Planned acts."),
            Key.may("what if", Form.list(Form.section(WHAT_IF), MOST_EVENTS), "Faults and thought experiments; plan and card leave them out.").also("whatif", "what-if", "faults"),
            Key.may("policy", Form.nameOrSection("policy", "default", Catalogue.inlineTable(Kinds.POLICY, "default")), "A sheet: risk, reserve, harm; or {like: default, reserve: 30 min}.").otherwise("default"),
            Key.may("kit", Form.name("kit", "island service"), "A sheet of what can be carried."),
            Key.may("device", Form.text(60, "LW-0042"), "Serial number, from the ledger.").notYetUsed(),
            Key.may("standby", Form.of(Kind.JOURNEY_TIME, 0, LONGEST_MIN, "20 min"), "How long the ventilator stands by, switched on, after gauges and charge were read and before departure.").otherwise("0 min"),
            Key.may("return", Form.list(Form.section(BACK), MOST_LEGS), "The kit's way home without the patient.").also("way home", "way back"),
            Key.may("delays", Form.section(DELAYS), "How the legs' delays hang together.").otherwise("independent"),
            Key.may("alarms", Form.section(TransportKeys::alarms), "Alarm limits and delays that the file changes, by condition."));

    private TransportKeys() { }

    private static Table alarms() {
        List<Key> keys = new ArrayList<>();
        for (AlarmCondition c : AlarmCondition.values()) {
            keys.add(Key.may(c.words(), Form.section(() -> alarm(c)), "Changes at " + c.words() + "."));
        }
        return new Table("alarms", false, keys, List.of());
    }

    private static Table alarm(AlarmCondition c) {
        List<Key> one = new ArrayList<>();
        Optional<Kind> kind = Alarms.limitKind(c);
        kind.ifPresent(k -> {
            double most = k == Kind.FRACTION ? 1 : k == Kind.FLOW ? 200 : k == Kind.VOLUME ? 5000 : 600;
            one.add(Key.may("low", Form.of(k, 0, most), "The lower limit.").also("lower", "min"));
            one.add(Key.may("high", Form.of(k, 0, most), "The upper limit.").also("upper", "max"));
        });
        one.add(Key.may("delay", Form.of(Kind.TIME, 0, 600, "10 s"), "From crossing to the alarm condition."));
        one.add(Key.may("off", Form.yesNo(), "Whether the alarm is off.").otherwise("no"));
        return new Table("the alarm " + c.words(), false, one, List.of());
    }

    /** How a store is connected. */
    record Inlet(boolean highPressure, double flowLPerMin) { }

    private static Form inlet() {
        return Form.written("high pressure, or for example \"flowmeter 10 L/min\"", "high pressure", "^\\s*(high pressure|flowmeter\\s+\\d+(\\.\\d*)?\\s*(L/min|l/min))\\s*$", InletText::parse);
    }
}
