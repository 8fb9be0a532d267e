package leeway.files.sheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** A ventilator. */
public final class VentilatorKind implements SheetKind<Ventilator> {
    private static final Table GAS = Table.sourced("gas",
            Key.must("inlets", Form.list(Form.choice("inlet", "high pressure", "flowmeter"), 2), "How oxygen may be connected."),
            Key.may("entrained fio2", Form.of(Kind.FRACTION, 0.21, 1, "50 %"), "FiO2 of its air mixture, where it entrains."),
            Key.may("blender", Form.yesNo(), "Whether it blends between its air mixture and pure oxygen.").otherwise("yes"),
            Key.must("drive gas", Form.of(Kind.FLOW, 0, 60, "1 L/min"), "Gas that drives it and never reaches the patient, free gas."),
            Key.must("drive share", Form.of(Kind.FRACTION, 0, 1, "5 %"), "The same as a share of minute volume."),
            Key.must("purge", Form.of(Kind.FLOW, 0, 60, "0.5 L/min"), "Steady loss of its mixing valve while it ventilates."),
            Key.must("standby", Form.of(Kind.FLOW, 0, 60, "0.1 L/min"), "Drawn in standby."),
            Key.must("start-up check", Form.of(Kind.STORE_VOLUME, 0, 200, "5 L"), "Drawn by its start-up check, free gas."),
            Key.must("inlet from", Form.of(Kind.STORE_PRESSURE, 0, 20, "2.7 bar"), "Below this supply pressure it stops, or goes on with air."),
            Key.must("inlet to", Form.of(Kind.STORE_PRESSURE, 0, 20, "6 bar"), "The most supply pressure it may have."),
            Key.must("stops without gas", Form.yesNo(), "Whether ventilation stops when the gas does."),
            Key.must("volumes", Form.choice("basis of volumes", AirwayKind.upper(Ventilator.VolumeBasis.values())), "Conditions at which it states volumes."),
            Key.must("altitude", Form.choice("behaviour at altitude", AirwayKind.words(Ventilator.Altitude.values())), "Whether it keeps the volume or the mass flow as pressure falls."),
            Key.must("fio2 error", Form.of(Kind.FRACTION, 0, 0.3, "5 %"), "Half-width of the delivered FiO2's error, in points of FiO2."),
            Key.may("nebuliser", Form.of(Kind.FLOW, 0.5, 60, "8 L/min"), "What its nebuliser takes while it runs, free gas."),
            Key.may("reservoir", Form.of(Kind.VOLUME, 0, 2000, "50 mL"), "Of free flow: what fills with it between breaths, the open piece, a mask, a bag.").otherwise("0 mL"),
            Key.may("suction ejector", Form.of(Kind.FLOW, 0.5, 100, "30 L/min"), "What its suction ejector takes while it is open, free gas."));
    private static final Table LOAD = Table.sourced("power",
            Key.must("base", Form.of(Kind.POWER, 0, 500, "6 W"), "Controller, valves, sensors."),
            Key.must("display", Form.of(Kind.POWER, 0, 100, "4 W"), "Screen at full brightness."),
            Key.must("blower idle", Form.of(Kind.POWER, 0, 300, "5 W"), "Turbine turning without load; 0 W without one."),
            Key.must("blower efficiency", Form.of(Kind.FRACTION, 0.01, 1, "30 %"), "Pneumatic over electrical power beyond idle; 100 % without a blower."),
            Key.must("standby", Form.of(Kind.POWER, 0, 500, "5 W"), "In standby."),
            Key.must("alarm", Form.of(Kind.POWER, 0, 100, "1 W"), "More while an alarm sounds."),
            Key.must("charger", Form.of(Kind.POWER, 0, 2000, "90 W"), "What an outside source gives in all, load and charging together."),
            Key.may("heating", Form.of(Kind.POWER, 0, 500, "20 W"), "Heated humidifier, hose or sensor.").otherwise("0 W"));
    private static final Table TABLE = Table.sourced("ventilator",
            Key.must("drive", Form.choice("drive", AirwayKind.words(Ventilator.Drive.values())), "How it moves gas."),
            Key.may("modes", Form.list(SettingsKeys.MODE, Mode.values().length), "Ventilation patterns it has, by code; a hand bag has none.").otherwise("none"),
            Key.may("ranges", Form.section(VentilatorKind::ranges), "What it lets one set; what is absent cannot be set on it.").otherwise("nothing"),
            Key.may("defaults", Form.section(VentilatorKind::defaults), "What it stands at when nothing is set.").otherwise("nothing"),
            Key.may("called", Form.section(() -> called()), "What this device calls a setting or a mode.").otherwise("as here"),
            Key.must("largest flow", Form.of(Kind.FLOW, 1, 400, "120 L/min"), "The largest inspiratory flow it gives."),
            Key.must("largest pressure", Form.of(Kind.AIRWAY_PRESSURE, 5, 150, "60 cmH2O"), "The largest airway pressure it gives."),
            Key.must("response", Form.of(Kind.TIME, 0, 2, "50 ms"), "Time constant of its valve or blower."),
            Key.must("expiratory resistance", Form.of(Kind.RESISTANCE, 0, 100, "2 cmH2O.s/L"), "Of its expiratory valve."),
            Key.must("compensates circuit", Form.yesNo(), "Whether the set volume is what reaches the patient."),
            Key.must("compensates leak", Form.yesNo(), "Whether it adds what leaks."),
            Key.must("decelerating flow", Form.yesNo(), "Whether volume control ends with less flow than it begins."),
            Key.must("gas", Form.section(GAS), "What it draws and how."),
            Key.may("power", Form.section(LOAD), "What it takes from battery or socket.").otherwise("needs none"),
            Key.may("battery", Form.name("battery", "example pack"), "Its own pack.").otherwise("has none"),
            Key.may("sensors", Form.section(Sensors.TABLE), "What it measures, and how well.").otherwise("nothing"),
            Key.may("alarms", Form.section(Alarms.TABLE), "Of what it warns.").otherwise("nothing"),
            Key.may("apnoea backup after", Form.of(Kind.TIME, 2, 120, "20 s"), "After how long without a breath it ventilates by itself.").otherwise("never"),
            Key.must("mass", Form.of(Kind.MASS, 0.1, 60, "6 kg"), "With its pack."));

    private static Table ranges() {
        List<Key> keys = new ArrayList<>();
        for (Setting s : Setting.values()) {
            keys.add(Key.may(s.words(), Form.section(() -> range(s)), "Range of " + s.words() + "."));
        }
        return new Table("ranges", true, keys, List.of());
    }

    private static Table range(Setting s) {
        Form step = Form.of(s.kind(), 0, s == Setting.TIDAL_VOLUME ? 1000 : 100);
        return Table.sourced("the range of " + s.words(), Key.must("from", SettingsKeys.form(s), "The least."), Key.must("to", SettingsKeys.form(s), "The most."),
                Key.may("step", step, "In steps of.").otherwise("continuous"));
    }

    private static Table defaults() {
        List<Key> keys = new ArrayList<>();
        for (Setting s : Setting.values()) keys.add(Key.may(s.words(), SettingsKeys.form(s), "Where " + s.words() + " stands when nothing is set."));
        return new Table("defaults", true, keys, List.of());
    }

    private static Table called() {
        List<Key> keys = new ArrayList<>();
        for (Setting s : Setting.values()) keys.add(Key.may(s.words(), Form.text(40, "Vt"), "Its name on the device."));
        for (Mode m : Mode.values()) keys.add(Key.may(m.code(), Form.text(40, "volume control"), "Its name on the device."));
        return new Table("called", true, keys, List.of());
    }

    @Override public String word() { return "ventilator"; }

    @Override public String plural() { return "ventilators"; }

    @Override public Table table() { return TABLE; }

    @Override public Ventilator record(String name, Section s, Complaints complaints) {
        String source = SheetKind.source(s);
        Map<Setting, Range> ranges = s.section("ranges").map(r -> ranges(r, complaints)).orElse(Map.of());
        return new Ventilator(name, Ventilator.Drive.valueOf(s.text("drive").orElseThrow().toUpperCase(Locale.ROOT).replace(' ', '_')),
                s.texts("modes").stream().map(c -> Mode.ofCode(c).orElseThrow()).toList(), ranges, defaults(s.section("defaults"), ranges, complaints),
                s.section("called").map(VentilatorKind::called).orElse(Map.of()), must(s, "largest flow"), must(s, "largest pressure"), must(s, "response"),
                must(s, "expiratory resistance"), s.yes("compensates circuit", false), s.yes("compensates leak", false), s.yes("decelerating flow", false),
                gas(s.section("gas").orElseThrow(), complaints), s.section("power").map(VentilatorKind::load), s.text("battery"),
                s.section("sensors").map(Sensors::of).orElse(List.of()), s.section("alarms").map(a -> Alarms.of(a, source, complaints)).orElse(List.of()),
                s.number("apnoea backup after"), must(s, "mass"), source);
    }

    private static double must(Section s, String key) { return s.number(key).orElseThrow(); }

    private static Map<Setting, Range> ranges(Section s, Complaints complaints) {
        Map<Setting, Range> out = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            s.section(setting.words()).ifPresent(r -> {
                double from = must(r, "from");
                double to = must(r, "to");
                if (from > to) {
                    complaints.add(r.at("from"), "the range of %s begins above its end".formatted(setting.words()), "Swap \"from\" and \"to\".");
                } else {
                    out.put(setting, new Range(from, to, r.number("step", 0)));
                }
            });
        }
        return out;
    }

    private static Settings defaults(Optional<Section> s, Map<Setting, Range> ranges, Complaints complaints) {
        Map<Setting, Double> values = new EnumMap<>(Setting.class);
        if (s.isEmpty()) return new Settings(Optional.empty(), values);
        for (Setting setting : Setting.values()) {
            OptionalDouble v = s.get().number(setting.words());
            if (v.isEmpty()) continue;
            values.put(setting, v.getAsDouble());
            Range range = ranges.get(setting);
            if (range != null && !range.holds(v.getAsDouble())) complaints.add(s.get().at(setting.words()), "the default of %s lies outside its own range".formatted(setting.words()), "");
        }
        return new Settings(Optional.empty(), values);
    }

    private static Map<String, String> called(Section s) {
        Map<String, String> out = new LinkedHashMap<>();
        s.values().forEach(v -> out.put(v.key().name(), (String) v.value()));
        return out;
    }

    private static Ventilator.Gas gas(Section g, Complaints complaints) {
        if (must(g, "inlet from") > must(g, "inlet to")) complaints.add(g.at("inlet from"), "the inlet's range begins above its end", "Swap \"inlet from\" and \"inlet to\".");
        List<Ventilator.Inlet> inlets = g.texts("inlets").stream().map(i -> Ventilator.Inlet.valueOf(i.toUpperCase(Locale.ROOT).replace(' ', '_'))).toList();
        return new Ventilator.Gas(inlets, g.number("entrained fio2"), g.yes("blender", true), must(g, "drive gas"), must(g, "drive share"), must(g, "purge"),
                must(g, "standby"), must(g, "start-up check"), must(g, "inlet from"), must(g, "inlet to"), g.yes("stops without gas", true),
                Ventilator.VolumeBasis.valueOf(g.text("volumes").orElseThrow()),
                Ventilator.Altitude.valueOf(g.text("altitude").orElseThrow().toUpperCase(Locale.ROOT).replace(' ', '_')), must(g, "fio2 error"), g.number("nebuliser"), g.number("suction ejector"), g.number("reservoir", 0));
    }

    private static Ventilator.Load load(Section p) {
        return new Ventilator.Load(must(p, "base"), must(p, "display"), must(p, "blower idle"), must(p, "blower efficiency"), must(p, "standby"), must(p, "alarm"), must(p, "charger"), p.number("heating", 0));
    }
}
