package leeway.files.sheet;

import java.util.List;
import leeway.core.kit.Monitor;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** What is measured apart from the ventilator. */
public final class MonitorKind implements SheetKind<Monitor> {
    private static final Table TABLE = Table.sourced("monitor",
            Key.may("sensors", Form.section(Sensors.TABLE), "What it measures, and how well.").otherwise("nothing"),
            Key.may("alarms", Form.section(Alarms.TABLE), "Of what it warns.").otherwise("nothing"),
            Key.may("battery lasts", Form.of(Kind.JOURNEY_TIME, 0, 10_000, "4 h"), "How long its own battery lasts from full; where it ends before the journey does, the plan says so and it falls silent.").otherwise("its power is not followed"));

    @Override public String word() { return "monitor"; }

    @Override public String plural() { return "monitors"; }

    @Override public Table table() { return TABLE; }

    @Override public Monitor record(String name, Section s, Complaints complaints) {
        String source = SheetKind.source(s);
        return new Monitor(name, s.section("sensors").map(Sensors::of).orElse(List.of()),
                s.section("alarms").map(a -> Alarms.of(a, source, complaints)).orElse(List.of()), s.number("battery lasts", 0) / 60, source);
    }
}
