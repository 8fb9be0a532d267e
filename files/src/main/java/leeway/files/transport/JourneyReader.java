package leeway.files.transport;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.transport.Event;
import leeway.core.transport.KitAlone;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Sedation;
import leeway.core.transport.WhatIf;
import leeway.files.keys.Section;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.SettingsKeys;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Place;

/** Legs, events and what-ifs. */
final class JourneyReader {
    /** 95th percentile over median of a leg where the file names only the median. */
    static final double AT_WORST_TIMES = 1.5;
    /** How long all legs together may take at their medians, min: two weeks, so that every breath of a journey can be held at once. */
    private static final double LONGEST_JOURNEY_MIN = 14 * 24 * 60;
    private static final double USUAL_TEMPERATURE_CEL = 20;
    private static final int USUAL_CREW = 2;
    /** Of a nebuliser at the high pressure outlet: common practice, no source: 6 to 8 L/min. */
    private static final double NEBULISER_L_PER_MIN = 8;
    /** Of a suction ejector while open: 20 to 40 L/min, from memory. */
    private static final double SUCTION_L_PER_MIN = 30;

    private JourneyReader() { }

    static List<Leg> legs(List<Section> sections, Names oxygenNames, List<PowerStore> power, Names powerNames, boolean needsPower, Catalogue catalogue, Complaints c, Assumed assumed) {
        List<Leg> out = new ArrayList<>();
        double togetherMin = 0;
        for (Section s : sections) {
            leg(s, oxygenNames, power, powerNames, needsPower, catalogue, c, assumed).ifPresent(out::add);
            double takesMin = s.number("takes", 0), beforeMin = togetherMin;
            togetherMin += takesMin;
            if (togetherMin > LONGEST_JOURNEY_MIN && beforeMin <= LONGEST_JOURNEY_MIN) c.add(s.at("takes"), "with this leg the journey takes more than two weeks", "All legs together take two weeks at most.");
        }
        return out;
    }

    private static Optional<Leg> leg(Section s, Names oxygenNames, List<PowerStore> power, Names powerNames, boolean needsPower, Catalogue catalogue, Complaints c, Assumed assumed) {
        String name = s.text("leg", "");
        OptionalDouble takes = s.number("takes");
        double atWorst = s.number("at worst", takes.orElse(0) * AT_WORST_TIMES);
        if (takes.isPresent() && s.has("at worst") && atWorst < takes.getAsDouble()) {
            c.add(s.at("at worst"), "\"at worst\" is shorter than \"takes\"", "It is the 95th percentile of the duration, \"takes\" is its median.");
        }
        if (!s.written("at worst")) assumed.add("at worst: 1.5 × takes", name);
        List<String> oxygen = oxygen(s, oxygenNames, name, c, assumed);
        Optional<String> powered = power(s, power, powerNames, needsPower, name, c, assumed);
        boolean cabin = s.written("cabin altitude");
        double altitude = cabin ? s.number("cabin altitude", 0) : s.number("altitude", 0);
        if (cabin && s.number("altitude").isPresent() && s.number("cabin altitude").isPresent() && s.number("altitude").getAsDouble() < altitude) {
            c.add(s.at("cabin altitude"), "the cabin lies higher than the aircraft", "With \"cabin altitude\", \"altitude\" is the aircraft's.");
        }
        boolean altitudeNamed = cabin || s.written("altitude");
        if (!altitudeNamed) assumed.add("altitude: 0 m", name);
        if (altitude > 0 && !s.written("climb")) assumed.add("climb: at once", name);
        if (s.written("climb") && !altitudeNamed) c.add(s.atKey("climb"), "a \"climb\" without an altitude", "Add \"altitude: 3000 ft\" or \"cabin altitude: 6500 ft\".");
        if (s.has("climb") && takes.isPresent() && s.number("climb").getAsDouble() > takes.getAsDouble()) c.add(s.at("climb"), "the climb is longer than the leg takes", "Look at both times.");
        if (!s.written("temperature")) assumed.add("temperature around the kit: 20 Cel", name);
        if (!s.written("crew")) assumed.add("crew: 2", name);
        if (!s.written("noise")) assumed.add("noise: quiet", name);
        s.text("noise").filter(n -> !catalogue.has("noise", n)).ifPresent(n -> catalogue.missing("noise", n, s.at("noise"), c));
        Optional<Leg.Diversion> diversion = s.section("diversion").filter(d -> d.has("chance") && d.has("adds"))
                .map(d -> new Leg.Diversion(d.number("chance").orElseThrow(), d.number("adds").orElseThrow()));
        if (takes.isEmpty()) return Optional.empty();
        return Optional.of(new Leg(name, takes.getAsDouble(), atWorst, oxygen, powered, altitude, !cabin, s.number("climb", 0),
                OptionalDouble.of(s.number("temperature", USUAL_TEMPERATURE_CEL)), s.text("noise"), diversion, s.whole("crew", USUAL_CREW),
                s.yes("waiting", false), s.yes("charging", true), cabin && s.number("altitude").isPresent() ? Optional.of(s.number("altitude").getAsDouble()) : Optional.empty(), SedationText.of(s, c)));
    }

    /**
     * Names of stores.
     *
     * @param whole false where some store could not be read: a name that is missing then is no mistake of its own
     */
    record Names(List<String> all, boolean whole) {
        Names { all = all.stream().distinct().toList(); }
    }

    private static List<String> oxygen(Section s, Names stores, String leg, Complaints c, Assumed assumed) {
        List<String> names = stores.all();
        if (!s.written("oxygen")) {
            if (names.size() == 1) {
                assumed.add("oxygen: " + names.get(0) + ", the only store", leg);
                return names;
            }
            if (!names.isEmpty()) c.add(s.at(), "this leg does not say where its oxygen comes from", "Add \"oxygen: %s\", or a list.".formatted(names.get(0)));
            return List.of();
        }
        List<String> wanted = s.texts("oxygen");
        Set<String> seen = new LinkedHashSet<>();
        for (int i = 0; i < wanted.size(); i++) {
            exists(wanted.get(i), stores, "oxygen", s.atItem("oxygen", i), c);
            if (!seen.add(wanted.get(i))) c.add(s.atItem("oxygen", i), "the store %s stands twice in this leg".formatted(Complaints.echo(wanted.get(i))), "Keep one of them.");
        }
        return List.copyOf(seen);
    }

    private static void exists(String wanted, Names stores, String of, Place at, Complaints c) {
        List<String> names = stores.all();
        if (names.contains(wanted) || !stores.whole()) return;
        c.add(at, "there is no store of %s called %s".formatted(of, Complaints.echo(wanted)), names.isEmpty() ? "The file has none." : "The file has " + shown(names) + ".", () -> Nearest.of(wanted, names));
    }

    private static String shown(List<String> names) {
        List<String> some = names.subList(0, Math.min(6, names.size())).stream().map(n -> "\"" + n + "\"").toList();
        return String.join(", ", some) + (names.size() > some.size() ? " and others" : "");
    }

    private static Optional<String> power(Section s, List<PowerStore> power, Names names, boolean needsPower, String leg, Complaints c, Assumed assumed) {
        if (s.written("power")) {
            s.text("power").ifPresent(p -> exists(p, names, "power", s.at("power"), c));
            return s.text("power");
        }
        Optional<String> first = power.stream().filter(p -> !p.mains()).map(PowerStore::name).findFirst();
        if (needsPower && first.isPresent()) assumed.add("power: " + first.get(), leg);
        return needsPower ? first : Optional.empty();
    }

    static List<Event> events(List<Section> sections, Names oxygenNames, Settings prescribed, Optional<Ventilator> ventilator, double longestMin, Complaints c, Assumed assumed) {
        List<Event> out = new ArrayList<>();
        for (Section s : sections) {
            boolean set = s.written("set");
            boolean change = s.written("change over");
            boolean use = s.written("use");
            boolean sedated = s.written("sedation");
            int acts = (set ? 1 : 0) + (change ? 1 : 0) + (use ? 1 : 0) + (sedated ? 1 : 0);
            if (acts == 0) c.add(s.at(), "an event has neither \"set\" nor \"change over\" nor \"use\" nor \"sedation\"", "Add for example \"set: {fio2: 100 %}\".");
            if (acts > 1) c.add(s.atKey(sedated ? "sedation" : use ? "use" : "change over"), "an event is one of \"set\", \"change over\", \"use\" and \"sedation\", not two", "Write two events.");
            Optional<Sedation> sedation = SedationText.of(s, c);
            if (s.written("flow") && !use) c.add(s.atKey("flow"), "\"flow\" belongs to \"use\"", "Take it out.");
            if (use && !s.written("for")) c.add(s.at("use"), "\"use\" does not say for how long", "Add for example \"for: 10 min\".");
            within(s, longestMin, c);
            s.text("change over").ifPresent(name -> exists(name, oxygenNames, "oxygen", s.at("change over"), c));
            if (change && s.written("for")) c.add(s.atKey("for"), "\"for\" belongs to \"set\"", "A change over lasts until the next one.");
            Optional<Section> values = s.section("set");
            if (values.isPresent() && values.get().node().entries().isEmpty()) c.add(values.get().at(), "\"set\" sets nothing", "Write for example {fio2: 100 %}.");
            Settings settings = values.map(v -> SettingsKeys.of(v, prescribed, c)).orElse(Settings.NONE);
            if (s.number("at").isPresent()) out.add(new Event(s.number("at").getAsDouble(), settings, s.number("for"), s.text("change over"), use(s, ventilator, assumed), sedation));
        }
        return out;
    }

    /** What a nebuliser or suction takes: the file's flow, the ventilator's, or the usual one. */
    private static Optional<Event.Use> use(Section s, Optional<Ventilator> ventilator, Assumed assumed) {
        Optional<String> what = s.text("use");
        if (what.isEmpty()) return Optional.empty();
        boolean nebuliser = what.get().equals("nebuliser");
        OptionalDouble own = ventilator.map(v -> nebuliser ? v.gas().nebuliserLPerMin() : v.gas().suctionLPerMin()).orElse(OptionalDouble.empty());
        double usual = nebuliser ? NEBULISER_L_PER_MIN : SUCTION_L_PER_MIN;
        if (!s.written("flow")) assumed.add("%s takes %s L/min, %s".formatted(what.get(), PatientReader.trim(own.orElse(usual)), own.isPresent() ? "by the ventilator's sheet" : "as is usual"));
        return Optional.of(new Event.Use(what.get(), s.number("flow", own.orElse(usual))));
    }

    /** The kit's way home. */
    static List<KitAlone.Back> back(List<Section> sections, Names powerNames, Complaints c) {
        List<KitAlone.Back> out = new ArrayList<>();
        for (Section s : sections) {
            s.text("power").ifPresent(p -> exists(p, powerNames, "power", s.at("power"), c));
            if (s.number("takes").isEmpty()) continue;
            out.add(new KitAlone.Back(s.text("leg", ""), s.number("takes").getAsDouble(), s.number("temperature"), s.text("power"), s.text("ventilator", "off").equals("standby")));
        }
        return out;
    }

    private static void within(Section s, double longestMin, Complaints c) {
        if (longestMin > 0 && s.number("at").isPresent() && s.number("at").getAsDouble() > longestMin) {
            c.add(s.at("at"), "this is after the end of the journey", "At worst it takes %s min.".formatted(PatientReader.trim(Math.round(longestMin))));
        }
    }

    static List<WhatIf> whatIf(List<Section> sections, Catalogue catalogue, double longestMin, Complaints c) {
        List<WhatIf> out = new ArrayList<>();
        for (Section s : sections) {
            boolean fault = s.written("fault");
            boolean apnoea = s.written("apnoea");
            if (fault == apnoea) c.add(fault ? s.atKey("apnoea") : s.at(), fault ? "a what if is a \"fault\" or an \"apnoea\", not both" : "a what if has neither \"fault\" nor \"apnoea\"",
                    fault ? "Write two." : "Add for example \"fault: disconnection at the patient\".");
            within(s, longestMin, c);
            s.text("fault").filter(f -> !catalogue.has("fault", f)).ifPresent(f -> catalogue.missing("fault", f, s.at("fault"), c));
            Optional<WhatIf.Apnoea> which = s.text("apnoea").map(a -> WhatIf.Apnoea.valueOf(a.replaceFirst("^(airway |open to )", "").toUpperCase(Locale.ROOT)));
            if (s.number("at").isPresent()) out.add(new WhatIf(s.number("at").getAsDouble(), s.text("fault"), which, s.number("for")));
        }
        return out;
    }
}
