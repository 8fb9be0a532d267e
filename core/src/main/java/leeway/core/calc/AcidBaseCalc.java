package leeway.core.calc;

import java.util.List;
import leeway.core.gas.AcidBase;
import leeway.core.quantity.Kind;

/** Base excess and bicarbonate. */
final class AcidBaseCalc implements Calc {
    @Override public String name() { return "acid-base"; }

    @Override public String plain() { return "Base excess and bicarbonate of blood"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("ph", Kind.NUMBER, 6.5, 8.0, "of the blood"), Key.must("pco2", Kind.GAS_TENSION, 1, 250, "carbon dioxide tension"),
                Key.may("haemoglobin", Kind.HAEMOGLOBIN, 10, 260, "150 g/L", "of the blood"), Key.may("saturation", Kind.FRACTION, 0, 1, "100 %", "with oxygen"));
    }

    @Override public String example() { return "--ph 7.31 --pco2 \"52 mmHg\" --haemoglobin \"120 g/L\""; }

    @Override public CalcResult of(Given g) {
        double ph = g.number("ph"), p = g.number("pco2"), hb = g.number("haemoglobin") / 10, s = g.number("saturation");
        double bicarbonate = AcidBase.bicarbonateMmolL(ph, p), excess = AcidBase.baseExcessMmolL(ph, p, hb, s), body = AcidBase.baseExcessMmolL(ph, p, hb / 3, s);
        return new Answer(this).step("Bicarbonate: 0.0304 × %s mmHg × 10^(%s − 6.1) = %s mmol/L.", Show.number(p), Show.digits(ph, 3), Show.number(bicarbonate))
                .step("Base excess of blood: (1 − 0.0143 × %s) × ((%s − 24.26) + (9.5 + 1.63 × %s) × (%s − 7.4)) − 0.2 × %s × (1 − %s) = %s mmol/L.", Show.number(hb), Show.number(bicarbonate),
                        Show.number(hb), Show.digits(ph, 3), Show.number(hb), Show.number(s), Show.number(excess))
                .step("With a third of the haemoglobin, for the body as a whole (standard base excess): %s mmol/L.", Show.number(body))
                .key("baseExcessMmolL", excess, "mmol/L").key("bicarbonateMmolL", bicarbonate, "mmol/L").key("standardBaseExcessMmolL", body, "mmol/L")
                .from("Van Slyke equation as fitted by Lang & Zander, Clin Chem Lab Med 2002;40:404, ±1 mmol/L");
    }
}
