package leeway.files.sheet;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Kit;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** What a service can carry. */
public final class KitKind implements SheetKind<Kit> {
    private static final Table ITEM = Table.of("an item",
            Key.must("name", Form.text(40, "small"), "What it is called."),
            Key.must("cylinder", CylinderSize.form(), "Water capacity, or a size with its country."),
            Key.must("pressure", Form.of(Kind.STORE_PRESSURE, 1, 350, "200 bar"), "Gauge pressure when full."),
            Key.must("mass", Form.of(Kind.MASS, 0.1, 300, "4 kg"), "Of one, full, with its valve."),
            Key.may("count", Form.whole(0, 50), "How many there are to choose from.").otherwise("1"),
            Key.may("as", Form.name("store", "portable"), "The store of the transport file in whose place it goes.").otherwise("any cylinder that is carried"));
    private static final Table PACK = Table.of("a pack",
            Key.must("name", Form.text(40, "spare"), "What it is called."),
            Key.must("battery", Form.name("battery", "example spare"), "A sheet."),
            Key.may("mass", Form.of(Kind.MASS, 0.01, 100, "0.5 kg"), "Of one.").otherwise("by its sheet"),
            Key.may("count", Form.whole(0, 50), "How many there are to choose from.").otherwise("1"));
    private static final Table TABLE = Table.sourced("kit",
            Key.must("items", Form.list(Form.section(ITEM), 12), "Cylinders to choose from, at most 12 kinds."),
            Key.may("packs", Form.list(Form.section(PACK), 12), "Charged spare packs to choose from; they follow the ventilator's own.").otherwise("none").also("batteries"));

    @Override public String word() { return "kit"; }

    @Override public String plural() { return "kits"; }

    @Override public Table table() { return TABLE; }

    @Override public Kit record(String name, Section s, Complaints complaints) {
        List<Kit.Item> items = s.sections("items").stream().map(KitKind::item).toList();
        s.sections("items").forEach(i -> rated(i, complaints));
        List<Kit.Pack> packs = s.sections("packs").stream()
                .map(p -> new Kit.Pack(p.text("name").orElseThrow(), p.text("battery").orElseThrow(), Optional.empty(), p.number("mass"), p.whole("count", 1))).toList();
        return new Kit(name, items, packs, SheetKind.source(s));
    }

    private static void rated(Section i, Complaints complaints) {
        CylinderSize size = i.as("cylinder", CylinderSize.class).orElseThrow();
        double bar = i.number("pressure").orElseThrow();
        if (bar > size.ratingBar() * 1.05) {
            complaints.add(i.at("pressure"), "the pressure lies above what a cylinder of this size is filled to", "That is %.0f bar at 15 Cel; write its water capacity if it is made for more.".formatted(size.ratingBar()));
        }
    }

    private static Kit.Item item(Section i) {
        OptionalDouble mass = i.number("mass");
        return new Kit.Item(i.text("name").orElseThrow(), i.as("cylinder", CylinderSize.class).orElseThrow().waterL(), i.number("pressure").orElseThrow(),
                mass.orElseThrow(), i.whole("count", 1), i.text("as"));
    }
}
