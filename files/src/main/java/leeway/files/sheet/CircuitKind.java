package leeway.files.sheet;

import leeway.core.kit.Circuit;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** A breathing circuit. */
public final class CircuitKind implements SheetKind<Circuit> {
    private static final Table TABLE = Table.sourced("circuit",
            Key.must("limbs", Form.whole(1, 2), "1 with a valve at the patient, 2 with the expiratory valve at the ventilator."),
            Key.must("compliance", Form.of(Kind.COMPLIANCE, 0, 10, "1.2 mL/cmH2O"), "How much gas it takes up."),
            Key.must("inspiratory resistance", Form.of(Kind.RESISTANCE, 0, 100, "2 cmH2O.s/L"), "One way in."),
            Key.must("expiratory resistance", Form.of(Kind.RESISTANCE, 0, 100, "3 cmH2O.s/L"), "One way out, valve included."),
            Key.must("dead space", Form.of(Kind.VOLUME, 0, 500, "10 mL"), "Between valve or Y-piece and filter, rebreathed."),
            Key.must("volume", Form.of(Kind.VOLUME, 0, 5000, "500 mL"), "Gas inside."),
            Key.may("leak", Form.of(Kind.FLOW, 0, 60, "0.5 L/min"), "The leak it usually has, at 20 cmH2O.").otherwise("none"));

    @Override public String word() { return "circuit"; }

    @Override public String plural() { return "circuits"; }

    @Override public Table table() { return TABLE; }

    @Override public Circuit record(String name, Section s, Complaints complaints) {
        return new Circuit(name, s.whole("limbs").orElseThrow(), s.number("compliance").orElseThrow(), s.number("inspiratory resistance").orElseThrow(),
                s.number("expiratory resistance").orElseThrow(), s.number("dead space").orElseThrow(), s.number("volume").orElseThrow(),
                Leak.mlPerSPerSqrtCmH2O(s.number("leak", 0)), SheetKind.source(s));
    }
}
