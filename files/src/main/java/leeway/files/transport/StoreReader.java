package leeway.files.transport;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import leeway.core.kit.Battery;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Ventilator;
import leeway.core.supply.CylinderSizes;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.files.keys.Section;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.CylinderSize;
import leeway.files.sheet.Kinds;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Place;

/** Stores of oxygen and of power. */
final class StoreReader {
    static final double USUAL_READ_AT_CEL = 20;
    private static final double GAUGE_CLASS = 2.5;
    private static final double GAUGE_SPAN_BAR = 315;
    private static final double GAUGE_READ_TO_BAR = 5;
    /** What a flowmeter is opened to where a file does not say, L/min: a hand bag's usual flow. */
    private static final double USUAL_FLOWMETER_L_PER_MIN = 15;
    private static final double USUAL_CYCLES_PER_YEAR = 100;
    static final String OWN_PACK = "internal";

    private static final List<String> KINDS = List.of("cylinder", "wall", "liquid", "concentrator");

    private StoreReader() { }

    static List<Store> oxygen(List<Section> sections, Optional<Ventilator> ventilator, OptionalDouble firstLegCel, Complaints c, Assumed assumed) {
        unique(sections, "oxygen", c);
        List<Store> out = new ArrayList<>();
        for (Section s : sections) store(s, ventilator, firstLegCel, c, assumed).ifPresent(out::add);
        return out;
    }

    private static void unique(List<Section> sections, String of, Complaints c) {
        Map<String, Place> seen = new TreeMap<>();
        for (Section s : sections) {
            Optional<String> name = s.text("name");
            if (name.isEmpty()) continue;
            Place first = seen.putIfAbsent(name.get(), s.at("name"));
            if (first != null) c.add(s.at("name"), "two stores of %s are called %s".formatted(of, Complaints.echo(name.get())), "The first stands on line %d; give this one another name.".formatted(first.line()));
        }
    }

    private static Optional<Store> store(Section s, Optional<Ventilator> ventilator, OptionalDouble firstLegCel, Complaints c, Assumed assumed) {
        List<String> kinds = KINDS.stream().filter(s::written).toList();
        if (kinds.size() != 1) {
            String named = s.text("name").map(n -> "the store " + Complaints.echo(n)).orElse("this store");
            c.add(kinds.isEmpty() ? s.at() : s.atKey(kinds.get(1)), kinds.isEmpty() ? named + " does not say what it is" : named + " is two things at once",
                    "It has one of \"cylinder: 2 L\", \"wall: yes\", \"liquid: 20 L\", \"concentrator: 5 L/min\".");
            return Optional.empty();
        }
        String kind = kinds.get(0);
        boolean cylinder = kind.equals("cylinder");
        if (kind.equals("wall") && s.has("wall") && !s.yes("wall", true)) c.add(s.at("wall"), "a store with \"wall: no\" is nothing", "Say what it is, or take it out.");
        if (cylinder && !s.written("pressure")) c.add(s.at(), "a cylinder has no \"pressure\" here", "Add what the gauge shows, for example \"pressure: 185 bar\".");
        for (String key : List.of("pressure", "rating", "read at", "residual", "gauge")) {
            if (!cylinder && s.written(key)) c.add(s.atKey(key), "\"%s\" belongs to a cylinder; this is a store of another kind".formatted(key), "Take it out.");
        }
        if (kind.equals("wall") && s.written("count")) c.add(s.atKey("count"), "a wall outlet has no \"count\"", "Take it out: it has no end.");
        Optional<CylinderSize> size = cylinder ? s.as("cylinder", CylinderSize.class) : Optional.empty();
        String name = s.text("name", "");
        OptionalDouble readAt = s.number("read at");
        double residual = s.number("residual", 0);
        if (cylinder) {
            if (!s.written("read at")) {
                readAt = OptionalDouble.of(Math.max(USUAL_READ_AT_CEL, firstLegCel.orElse(USUAL_READ_AT_CEL)));
                assumed.add("gauge read at " + PatientReader.trim(readAt.getAsDouble()) + " Cel, the warmer of 20 Cel and the first leg", name);
            }
            if (!s.written("residual")) {
                residual = ventilator.map(v -> v.gas().minimumInletBar()).orElse(0.0);
                assumed.add("residual pressure " + PatientReader.trim(residual) + " bar, what the ventilator's inlet needs", name);
            }
            double p = s.number("pressure", residual);
            if (s.has("pressure") && s.written("residual") && p < residual) c.add(s.at("residual"), "the residual pressure lies above the pressure", "Such a cylinder gives nothing.");
        }
        Store.Gauge gauge = gauge(s.section("gauge"), cylinder, name, assumed, s, c);
        if (cylinder && size.isPresent() && s.has("pressure")) rated(s, size.get(), readAt.orElse(USUAL_READ_AT_CEL), gauge, name, c, assumed);
        Store.Inlet inlet = inlet(s, kind, ventilator, name, assumed);
        ventilator.ifPresent(v -> fits(s, kind, inlet, v, c));
        Store.Type type = switch (kind) {
            case "cylinder" -> Store.Type.CYLINDER;
            case "wall" -> Store.Type.WALL;
            case "liquid" -> Store.Type.LIQUID;
            default -> Store.Type.CONCENTRATOR;
        };
        return Optional.of(new Store(name, type, size.map(CylinderSize::written), size.map(z -> OptionalDouble.of(z.waterL())).orElse(OptionalDouble.empty()),
                s.number("pressure"), readAt, s.number("liquid"), s.number("concentrator"), s.whole("count", 1), residual,
                gauge, s.number("mass"), inlet));
    }

    /** A pressure that, brought to 15 Cel, lies above what the cylinder is made for by more than its gauge may err. */
    private static void rated(Section s, CylinderSize size, double readAtCel, Store.Gauge gauge, String name, Complaints c, Assumed assumed) {
        double shown = s.number("pressure").orElseThrow();
        double rating = s.number("rating", size.ratingBar());
        double settled = RealOxygen.gaugeAtBar(shown, readAtCel, RealOxygen.FREE_GAS_CEL);
        double mayErr = gauge.accuracyClass() / 100 * gauge.spanBar() + gauge.readToBar();
        if (settled > rating + mayErr) {
            String why = s.written("rating") ? "" : " as " + size.written();
            c.add(s.at("pressure"), "the pressure lies above the cylinder's rating%s: %.0f bar at 15 Cel, rated %.0f bar".formatted(why, settled, rating),
                    s.written("rating") ? "Look at unit and digits." : "Look at unit and digits; if it is made for more, add for example \"rating: %.0f bar\".".formatted(Math.ceil(settled / 50) * 50));
        } else if (!s.written("rating") && size.ratingBar() > CylinderSizes.USUAL_BAR && settled > CylinderSizes.USUAL_BAR + mayErr) {
            assumed.add("a cylinder made for more than the usual 200 bar, for it shows more", name);
        }
    }

    private static Store.Inlet inlet(Section s, String kind, Optional<Ventilator> ventilator, String name, Assumed assumed) {
        Optional<TransportKeys.Inlet> written = s.as("inlet", TransportKeys.Inlet.class);
        if (written.isPresent()) return new Store.Inlet(written.get().highPressure(), written.get().highPressure() ? OptionalDouble.empty() : OptionalDouble.of(written.get().flowLPerMin()));
        if (kind.equals("concentrator")) return new Store.Inlet(false, s.number("concentrator"));
        boolean high = ventilator.map(v -> v.gas().inlets().contains(Ventilator.Inlet.HIGH_PRESSURE)).orElse(true);
        if (!high && !s.written("inlet")) assumed.add("connected by a flowmeter at 15 L/min, for the ventilator has no high pressure inlet", name);
        return new Store.Inlet(high, high ? OptionalDouble.empty() : OptionalDouble.of(USUAL_FLOWMETER_L_PER_MIN));
    }

    /** A connection that this ventilator does not have. */
    private static void fits(Section s, String kind, Store.Inlet inlet, Ventilator v, Complaints c) {
        Ventilator.Inlet needed = inlet.highPressure() ? Ventilator.Inlet.HIGH_PRESSURE : Ventilator.Inlet.FLOWMETER;
        if (v.gas().inlets().contains(needed)) return;
        String has = v.gas().inlets().stream().map(i -> i == Ventilator.Inlet.HIGH_PRESSURE ? "high pressure" : "a flowmeter").reduce((a, b) -> a + " and " + b).orElse("nothing");
        if (s.written("inlet")) {
            c.add(s.at("inlet"), "the ventilator \"%s\" cannot be connected so".formatted(v.name()), "It takes " + has + ".");
        } else if (kind.equals("concentrator")) {
            c.add(s.atKey("concentrator"), "the ventilator \"%s\" cannot be connected to a concentrator".formatted(v.name()), "It takes " + has + ".");
        }
    }

    private static Store.Gauge gauge(Optional<Section> g, boolean cylinder, String name, Assumed assumed, Section s, Complaints c) {
        if (g.isEmpty()) {
            if (cylinder && !s.written("gauge")) assumed.add("gauge of class 2.5 with a span of 315 bar, read to 5 bar", name);
            return new Store.Gauge(GAUGE_CLASS, GAUGE_SPAN_BAR, GAUGE_READ_TO_BAR);
        }
        double span = g.get().number("span", GAUGE_SPAN_BAR);
        if (s.has("pressure") && s.number("pressure").getAsDouble() > span * 1.05) {
            c.add(s.at("pressure"), "the pressure lies beyond the span of its gauge", "The span is %s bar.".formatted(PatientReader.trim(span)));
        }
        for (String key : List.of("class", "span", "read to")) {
            if (!g.get().written(key)) assumed.add("gauge: " + g.get().table().key(key).orElseThrow().name() + " " + g.get().table().key(key).orElseThrow().otherwise().orElseThrow(), name);
        }
        return new Store.Gauge(g.get().number("class", GAUGE_CLASS), span, g.get().number("read to", GAUGE_READ_TO_BAR));
    }

    /**
     * Stores of power, with the ventilator's own pack where the file leaves it open.
     *
     * @param ownPackAt       where the ventilator's sheet names its pack
     * @param legsLeaveItOpen whether some leg names no power, or the own pack
     */
    static List<PowerStore> power(List<Section> sections, Optional<Ventilator> ventilator, Place ownPackAt, boolean legsLeaveItOpen, Catalogue catalogue, Complaints c, Assumed assumed) {
        unique(sections, "power", c);
        List<PowerStore> out = new ArrayList<>();
        for (int i = 0; i < sections.size(); i++) {
            follows(sections.get(i), i == 0 ? Optional.empty() : Optional.of(sections.get(i - 1)), c);
            power(sections.get(i), catalogue, c, assumed).ifPresent(out::add);
        }
        boolean noBattery = out.stream().allMatch(PowerStore::mains);
        boolean free = out.stream().noneMatch(p -> p.name().equals(OWN_PACK));
        if ((sections.isEmpty() || noBattery && free && legsLeaveItOpen) && ventilator.isPresent() && ventilator.get().load().isPresent() && ventilator.get().battery().isPresent()) {
            Optional<Battery> own = catalogue.find(Kinds.BATTERY, ventilator.get().battery().get(), ownPackAt, c);
            out.add(new PowerStore(OWN_PACK, false, own, 1, 1, (int) USUAL_CYCLES_PER_YEAR));
            assumed.add("power: the ventilator's own pack, full, one year old, 100 cycles");
        }
        return out;
    }

    /** A second battery stands right after the one that it follows. */
    private static void follows(Section s, Optional<Section> before, Complaints c) {
        Optional<String> after = s.text("after");
        if (after.isEmpty()) return;
        boolean fits = before.isPresent() && before.get().written("battery") && before.get().text("name").filter(after.get()::equals).isPresent();
        if (!fits) c.add(s.at("after"), "the battery %s does not stand right before this one".formatted(Complaints.echo(after.get())), "A second battery follows the one in the line above it.");
    }

    private static Optional<PowerStore> power(Section s, Catalogue catalogue, Complaints c, Assumed assumed) {
        boolean battery = s.written("battery");
        boolean mains = s.written("mains");
        if (battery == mains) {
            c.add(battery ? s.atKey("mains") : s.at(), battery ? "a store of power is a battery or mains, not both" : "this store of power does not say what it is",
                    "It has \"battery: example pack\" or \"mains: yes\".");
            return Optional.empty();
        }
        if (mains && s.has("mains") && !s.yes("mains", true)) c.add(s.at("mains"), "a store with \"mains: no\" is nothing", "Name its battery, or take it out.");
        for (String key : List.of("charge", "age", "cycles", "after")) {
            if (mains && s.written(key)) c.add(s.atKey(key), "\"%s\" belongs to a battery".formatted(key), "Take it out.");
        }
        String name = s.text("name", "");
        Optional<Battery> sheet = s.text("battery").flatMap(b -> catalogue.find(Kinds.BATTERY, b, s.at("battery"), c));
        double age = s.number("age", 1);
        if (battery) {
            if (!s.written("charge")) assumed.add("battery full", name);
            if (!s.written("age")) assumed.add("battery one year old", name);
            if (!s.written("cycles")) assumed.add("100 cycles of the battery for each year of its age", name);
        }
        return Optional.of(new PowerStore(name, mains, sheet, s.number("charge", 1), age, s.whole("cycles", (int) Math.round(USUAL_CYCLES_PER_YEAR * age)), s.text("after")));
    }
}
