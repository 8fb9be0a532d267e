package leeway.core.calc;

import java.util.List;
import leeway.core.gas.OxygenContent;
import leeway.core.quantity.Kind;

/** Oxygen in blood. */
final class OxygenContentCalc implements Calc {
    @Override public String name() { return "oxygen-content"; }

    @Override public String plain() { return "Oxygen in blood, bound and dissolved"; }

    @Override public List<Key> keys() {
        return BloodState.keys(Key.must("po2", Kind.GAS_TENSION, 0.1, 2000, "oxygen tension"), Key.may("haemoglobin", Kind.HAEMOGLOBIN, 10, 260, "150 g/L", "of the blood"),
                Key.may("saturation", Kind.FRACTION, 0, 1, "measured; from the tension where not given"),
                Key.may("inactive", Kind.FRACTION, 0, 0.7, "0 %", "haemoglobin that binds no oxygen: with carbon monoxide, methaemoglobin"));
    }

    @Override public String example() { return "--po2 \"100 mmHg\" --haemoglobin \"150 g/L\""; }

    @Override public CalcResult of(Given g) {
        Answer a = new Answer(this);
        double po2 = g.number("po2"), hb = g.number("haemoglobin") / 10, inactive = g.number("inactive");
        double s = g.said("saturation") ? g.number("saturation") : BloodState.saturation(g, a, po2);
        double content = OxygenContent.mlPerDl(hb, s, po2, inactive), bound = content - OxygenContent.DISSOLVED_ML_PER_DL_MMHG * po2;
        return a.step("Bound: 1.34 mL/g × %s g/dL × %s%s = %s mL/dL.", Show.number(hb), Show.percent(s), inactive > 0 ? " × (1 − " + Show.percent(inactive) + ")" : "", Show.number(bound))
                .step("Dissolved: 0.0031 mL/dL/mmHg × %s mmHg = %s mL/dL.", Show.number(po2), Show.number(content - bound)).step("Together: %s mL/dL.", Show.number(content))
                .key("mlPerDl", content, "mL/dL").key("saturation", s, "").from("1.34 mL/g (measured 1.34 to 1.39) and 0.0031 mL/dL/mmHg, textbook values, from memory; " + BloodState.SOURCE);
    }
}
