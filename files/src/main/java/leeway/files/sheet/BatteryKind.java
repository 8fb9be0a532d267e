package leeway.files.sheet;

import java.util.List;
import leeway.core.kit.Battery;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** A battery pack. */
public final class BatteryKind implements SheetKind<Battery> {
    private static final Table POINT = Table.of("a temperature's share",
            Key.must("at", Form.of(Kind.TEMPERATURE, -60, 80), "Temperature of the pack."),
            Key.must("share", Form.of(Kind.FRACTION, 0, 1.2, "90 %"), "Share of the capacity that it gives there."));
    private static final Table TABLE = Table.sourced("battery",
            Key.must("energy", Form.of(Kind.ENERGY, 1, 5000), "When new, at 25 Cel."),
            Key.must("life", Form.of(Kind.AGE, 0.1, 30, "3 years"), "After which its maker wants it replaced."),
            Key.must("fade on the shelf", Form.of(Kind.FRACTION, 0, 1, "8 %"), "Share of capacity lost in the first year on the charger; the loss grows with the root of time."),
            Key.must("fade per cycle", Form.of(Kind.FRACTION, 0, 0.1, "0.04 %"), "Share lost in a full cycle."),
            Key.must("temperature", Form.list(Form.section(POINT), 20), "Share available by temperature, coldest first."),
            Key.must("cut off", Form.of(Kind.FRACTION, 0, 0.5, "5 %"), "Charge at which the device stops."),
            Key.must("gauge error", Form.of(Kind.FRACTION, 0, 0.5, "4 %"), "Standard deviation of the shown charge, as a share of full."),
            Key.must("charging power", Form.of(Kind.POWER, 0, 5000), "The most it takes."),
            Key.must("charges from", Form.of(Kind.TEMPERATURE, -60, 60, "0 Cel"), "Colder than this it refuses to charge."),
            Key.must("charges to", Form.of(Kind.TEMPERATURE, 0, 90, "45 Cel"), "Warmer than this it refuses to charge."),
            Key.must("mass", Form.of(Kind.MASS, 0.01, 50, "0.6 kg"), "Of one."));

    @Override public String word() { return "battery"; }

    @Override public String plural() { return "batteries"; }

    @Override public Table table() { return TABLE; }

    @Override public Battery record(String name, Section s, Complaints complaints) {
        List<Section> points = s.sections("temperature");
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).number("at").orElseThrow() <= points.get(i - 1).number("at").orElseThrow()) {
                complaints.add(points.get(i).at(), "temperatures do not rise from line to line", "Write the coldest first.");
            }
        }
        List<Battery.Point> curve = points.stream().map(p -> new Battery.Point(p.number("at").orElseThrow(), p.number("share").orElseThrow())).toList();
        return new Battery(name, s.number("energy").orElseThrow(), s.number("life").orElseThrow(), s.number("fade on the shelf").orElseThrow(),
                s.number("fade per cycle").orElseThrow(), curve, s.number("cut off").orElseThrow(), s.number("gauge error").orElseThrow(),
                s.number("charging power").orElseThrow(), s.number("charges from").orElseThrow(), s.number("charges to").orElseThrow(),
                s.number("mass").orElseThrow(), SheetKind.source(s));
    }
}
