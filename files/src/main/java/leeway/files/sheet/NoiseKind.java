package leeway.files.sheet;

import leeway.core.alarm.Noise;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** How well alarms are heard on a leg. */
public final class NoiseKind implements SheetKind<Noise> {
    private static final Table HEARD = Table.sourced("heard",
            Key.must("high", Form.of(Kind.FRACTION, 0, 1, "95 %"), "Chance that one burst of a high-priority alarm is heard."),
            Key.must("medium", Form.of(Kind.FRACTION, 0, 1, "90 %"), "The same for medium priority."),
            Key.must("low", Form.of(Kind.FRACTION, 0, 1, "70 %"), "The same for low priority."));
    private static final Table TABLE = Table.sourced("noise", Key.must("heard", Form.section(HEARD), "How likely one repetition of an alarm sound is heard."));

    @Override public String word() { return "noise"; }

    @Override public String plural() { return "noises"; }

    @Override public Table table() { return TABLE; }

    @Override public Noise record(String name, Section s, Complaints complaints) {
        Section h = s.section("heard").orElseThrow();
        return new Noise(name, h.number("high").orElseThrow(), h.number("medium").orElseThrow(), h.number("low").orElseThrow(), SheetKind.source(s));
    }
}
