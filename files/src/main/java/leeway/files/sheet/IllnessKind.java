package leeway.files.sheet;

import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.quantity.Kind;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** How an illness changes lungs, metabolism and circulation. */
public final class IllnessKind implements SheetKind<Illness> {
    private static final Table TABLE = Table.sourced("illness",
            factor("compliance", 0.02, 5, "Compliance of the respiratory system over that of a healthy ventilated patient of that age and size."),
            factor("resistance", 0.1, 30, "Resistance of lungs and airways over healthy, without tube and filter."),
            factor("expiratory resistance", 0.1, 20, "Expiratory over inspiratory resistance."),
            share("shunt", "Share of the cardiac output that passes no ventilated lung."),
            share("low ventilation", "Share of perfusion to poorly ventilated lung."),
            Key.may("spread", Form.band(Kind.NUMBER, 0, 2.5, "0.8"), "Of ventilation over perfusion in the rest, as the standard deviation of the natural logarithm: 0.3 to 0.6 healthy, 1 and more ill.").otherwise("0"),
            share("alveolar dead space", "Share of alveolar ventilation that meets no blood."),
            factor("lung volume", 0.1, 5, "Functional residual capacity over healthy."),
            share("chest wall", "The chest wall's share of elastance."),
            factor("oxygen uptake", 0, 5, "Oxygen uptake over resting uptake under ventilation."),
            Key.may("respiratory quotient", Form.band(Kind.NUMBER, 0.6, 1.3, "0.8"), "Carbon dioxide made over oxygen taken up.").otherwise("0.8"),
            factor("cardiac output", 0.05, 5, "Cardiac output over normal."),
            factor("haemoglobin", 0.1, 3, "Haemoglobin over normal for the age."),
            Key.may("base excess", Form.band(Kind.CONCENTRATION, -40, 40, "-4 mmol/L"), "Metabolic state.").otherwise("0 mmol/L"),
            Key.may("temperature", Form.of(Kind.TEMPERATURE, 25, 43, "38 Cel"), "Usual body temperature.").otherwise("37 Cel"),
            Key.may("strategy", Form.name("strategy", "lung protective"), "The strategy that suits it, where the file names none.").otherwise("by age"),
            Key.may("group", Form.text(40, "adult"), "The group of patients it belongs to.").otherwise("any"),
            Key.may("test lung", Form.yesNo(), "No metabolism and no blood.").otherwise("no"),
            LungKeys.CURVE, LungKeys.RECRUITMENT, LungKeys.FLOW_LIMIT, LungKeys.SLOW_PART, LungKeys.LEFT_LUNG);

    private static Key factor(String name, double least, double most, String meaning) {
        return Key.may(name, Form.band(Kind.FRACTION, least, most, "80 %"), meaning).otherwise("100 %");
    }

    private static Key share(String name, String meaning) {
        return Key.must(name, Form.band(Kind.FRACTION, 0, 0.95, "10 %"), meaning);
    }

    @Override public String word() { return "illness"; }

    @Override public String plural() { return "illnesses"; }

    @Override public Table table() { return TABLE; }

    @Override public Illness record(String name, Section s, Complaints complaints) {
        return new Illness(name, band(s, "compliance", 1), band(s, "resistance", 1), band(s, "expiratory resistance", 1), must(s, "shunt"),
                must(s, "low ventilation"), must(s, "alveolar dead space"), band(s, "lung volume", 1), must(s, "chest wall"),
                band(s, "oxygen uptake", 1), band(s, "respiratory quotient", 0.8), band(s, "cardiac output", 1), band(s, "haemoglobin", 1),
                band(s, "base excess", 0), s.number("temperature", 37), s.text("strategy"), s.text("group", "any"), s.yes("test lung", false),
                s.text("plain", ""), SheetKind.source(s), band(s, "spread", 0), LungKeys.lungs(s, complaints));
    }

    private static Band must(Section s, String key) { return s.as(key, Band.class).orElseThrow(); }

    private static Band band(Section s, String key, double otherwise) { return s.as(key, Band.class).orElse(Band.of(otherwise)); }
}
