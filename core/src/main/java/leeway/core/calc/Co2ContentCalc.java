package leeway.core.calc;

import java.util.List;
import leeway.core.gas.CarbonDioxideContent;
import leeway.core.quantity.Kind;

/** Carbon dioxide in blood. */
final class Co2ContentCalc implements Calc {
    @Override public String name() { return "co2-content"; }

    @Override public String plain() { return "Carbon dioxide in blood, in all its forms"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("pco2", Kind.GAS_TENSION, 1, 250, "carbon dioxide tension"), Key.may("ph", Kind.NUMBER, 6.5, 7.8, "7.40", "of the blood"),
                Key.may("haemoglobin", Kind.HAEMOGLOBIN, 10, 260, "150 g/L", "of the blood"), Key.may("saturation", Kind.FRACTION, 0, 1, "97.5 %", "with oxygen"),
                Key.may("temperature", Kind.TEMPERATURE, 20, 43, "37 Cel", "of the blood"));
    }

    @Override public String example() { return "--pco2 \"40 mmHg\" --ph 7.40 --haemoglobin \"150 g/L\" --saturation \"97.5 %\""; }

    @Override public CalcResult of(Given g) {
        double p = g.number("pco2"), ph = g.number("ph"), hb = g.number("haemoglobin") / 10, s = g.number("saturation"), t = g.number("temperature");
        double plasma = CarbonDioxideContent.plasmaMlPerDl(p, ph, t), blood = CarbonDioxideContent.mlPerDl(p, ph, hb, s, t);
        return new Answer(this).step("Plasma: 2.226 × solubility × %s mmHg × (1 + 10^(pH − pK')) at pH %s and %s Cel = %s mL/dL.", Show.number(p), Show.digits(ph, 3), Show.number(t), Show.number(plasma))
                .step("Blood: %s × (1 − 0.0289 × %s ÷ ((3.352 − 0.456 × %s) × (8.142 − %s))) = %s mL/dL.", Show.number(plasma), Show.number(hb), Show.number(s), Show.digits(ph, 3), Show.number(blood))
                .key("mlPerDl", blood, "mL/dL").key("plasmaMlPerDl", plasma, "mL/dL").from("Douglas, Jones & Reed, J Appl Physiol 1988;65:473");
    }
}
