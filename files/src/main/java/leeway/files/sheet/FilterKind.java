package leeway.files.sheet;

import leeway.core.kit.Filter;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** A filter between circuit and airway. */
public final class FilterKind implements SheetKind<Filter> {
    private static final Table TABLE = Table.sourced("filter",
            Key.must("dead space", Form.of(Kind.VOLUME, 0, 300, "50 mL"), "Gas inside, rebreathed."),
            Key.must("resistance", Form.of(Kind.RESISTANCE, 0, 100, "2 cmH2O.s/L"), "New and dry, at 0.5 L/s for adults."));

    @Override public String word() { return "filter"; }

    @Override public String plural() { return "filters"; }

    @Override public Table table() { return TABLE; }

    @Override public Filter record(String name, Section s, Complaints complaints) {
        return new Filter(name, s.number("dead space").orElseThrow(), s.number("resistance").orElseThrow(), SheetKind.source(s));
    }
}
