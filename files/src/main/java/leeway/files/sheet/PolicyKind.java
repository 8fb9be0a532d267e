package leeway.files.sheet;

import java.util.Optional;
import leeway.core.kit.Policy;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** What a service tolerates and when harm begins. */
public final class PolicyKind implements SheetKind<Policy> {
    /** One or two minutes of breaths; common practice, no source. */
    private static final int VOLUME_BREATHS = 30;
    private static final Table HARM = Table.sourced("harm",
            saturation("saturation", "Arterial saturation below this."),
            saturation("low start", "Where the start lies under this, the fall counts instead."),
            Key.must("fall", Form.of(Kind.FRACTION, 0, 0.5, "4 %"), "How far below such a start."),
            tension("paco2", "PaCO2 above this …"),
            tension("paco2 rise", "… and above the start plus this."),
            tension("head injury paco2 low", "With a head injury, PaCO2 below this."),
            tension("head injury paco2 high", "With a head injury, PaCO2 above this."),
            Key.must("ph low", Form.number(6.5, 7.4), "pH below this."),
            Key.must("ph high", Form.number(7.4, 8), "pH above this."),
            pressure("alveolar pressure", "End-inspiratory alveolar pressure above this."),
            Key.may("transpulmonary pressure", Form.of(Kind.AIRWAY_PRESSURE, 0, 120, "25 cmH2O"), "End-inspiratory transpulmonary pressure above this.").otherwise("not judged"),
            Key.must("circulation", Form.of(Kind.FRACTION, 0, 1, "50 %"), "Cardiac output below this share of the start."),
            Key.must("no ventilation", Form.of(Kind.TIME, 1, 3600, "300 s"), "No ventilation at all for this long."),
            Key.may("volume", Form.of(Kind.VOLUME_PER_MASS, 1, 100, "12 mL/kg"), "Inspired volume of predicted weight above this, breath after breath.").otherwise("not judged"),
            Key.may("volume breaths", Form.whole(1, 10_000), "So many breaths in a row.").otherwise("30"),
            Key.must("looked for during", Form.of(Kind.JOURNEY_TIME, 1, 600, "30 min"), "How long after the fault harm is looked for."));
    private static final Table TARGETS = Table.sourced("targets",
            pressure("plateau", "Plateau above this is a remark."),
            pressure("driving pressure", "Driving pressure above this is a remark."),
            Key.must("ph low", Form.number(6.5, 7.4), "Expected pH below this is a remark."),
            Key.must("ph high", Form.number(7.4, 8), "Expected pH above this is a remark."),
            tension("paco2 low", "Expected PaCO2 below this is a remark."),
            tension("paco2 high", "Expected PaCO2 above this is a remark."),
            saturation("saturation low", "Expected saturation below this is a remark."),
            pressure("auto-PEEP", "Expected auto-PEEP above this is a remark."),
            Key.must("mechanical power", Form.of(Kind.BREATHING_POWER, 0, 200), "Mechanical power above this is a remark."));
    private static final Table TABLE = Table.sourced("policy",
            Key.must("oxygen risk", Form.of(Kind.FRACTION, 0, 1, "1 %"), "Tolerated chance that oxygen runs out."),
            Key.must("power risk", Form.of(Kind.FRACTION, 0, 1, "1 %"), "Tolerated chance that charge runs out."),
            Key.must("reserve", Form.of(Kind.JOURNEY_TIME, 0, 1440, "20 min"), "Oxygen that must be left at the far end, in minutes of the last draw."),
            Key.must("power reserve", Form.of(Kind.JOURNEY_TIME, 0, 1440, "20 min"), "Charge that must be left at the far end, in minutes of the last load."),
            Key.must("survive one loss", Form.yesNo(), "Whether the journey must hold without its largest store."),
            Key.may("uncovered allowed", Form.whole(0, 1000), "How many uncovered faults are tolerated before the plan does not hold.").otherwise("they are remarks"),
            Key.must("harm", Form.section(HARM), "When harm begins; the first that is crossed counts."),
            Key.must("targets", Form.section(TARGETS), "Where expected values become a remark."));

    private static Key saturation(String name, String meaning) { return Key.must(name, Form.of(Kind.FRACTION, 0.3, 1, "85 %"), meaning); }

    private static Key tension(String name, String meaning) { return Key.must(name, Form.of(Kind.GAS_TENSION, 0, 200, "75 mmHg"), meaning); }

    private static Key pressure(String name, String meaning) { return Key.must(name, Form.of(Kind.AIRWAY_PRESSURE, 0, 120, "30 cmH2O"), meaning); }

    @Override public String word() { return "policy"; }

    @Override public String plural() { return "policies"; }

    @Override public Table table() { return TABLE; }

    @Override public Policy record(String name, Section s, Complaints complaints) {
        Section h = s.section("harm").orElseThrow();
        Section t = s.section("targets").orElseThrow();
        Policy.Harm harm = new Policy.Harm(must(h, "saturation"), must(h, "low start"), must(h, "fall"), must(h, "paco2"), must(h, "paco2 rise"),
                must(h, "head injury paco2 low"), must(h, "head injury paco2 high"), must(h, "ph low"), must(h, "ph high"), must(h, "alveolar pressure"),
                h.number("transpulmonary pressure", Double.POSITIVE_INFINITY), must(h, "circulation"), must(h, "no ventilation"), must(h, "looked for during"),
                h.number("volume", Double.POSITIVE_INFINITY), h.whole("volume breaths").orElse(VOLUME_BREATHS));
        Policy.Targets targets = new Policy.Targets(must(t, "plateau"), must(t, "driving pressure"), must(t, "ph low"), must(t, "ph high"),
                must(t, "paco2 low"), must(t, "paco2 high"), must(t, "saturation low"), must(t, "auto-PEEP"), must(t, "mechanical power"));
        Optional<Integer> uncovered = s.whole("uncovered allowed").isPresent() ? Optional.of(s.whole("uncovered allowed").getAsInt()) : Optional.empty();
        return new Policy(name, must(s, "oxygen risk"), must(s, "power risk"), must(s, "reserve"), must(s, "power reserve"), s.yes("survive one loss", false),
                uncovered, harm, targets, SheetKind.source(s));
    }

    private static double must(Section s, String key) { return s.number(key).orElseThrow(); }
}
