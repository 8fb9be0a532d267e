package leeway.core.calc;

import java.util.List;
import leeway.core.body.Metabolism;
import leeway.core.quantity.Kind;

/** Oxygen used and carbon dioxide made. */
final class MetabolismCalc implements Calc {
    @Override public String name() { return "metabolism"; }

    @Override public String plain() { return "Oxygen used and carbon dioxide made at rest"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("weight", Kind.MASS, 0.5, 400, "of the body"), Key.may("age", Kind.AGE, 0, 120, "where not given: a child to 25 kg, above whichever of child and adult uses more"),
                Key.may("temperature", Kind.TEMPERATURE, 25, 43, "37 Cel", "of the body"));
    }

    @Override public String example() { return "--weight \"70 kg\""; }

    @Override public CalcResult of(Given g) {
        double kg = g.number("weight"), t = g.number("temperature"), heat = Metabolism.temperatureTimes(t);
        boolean child = g.has("age") ? g.number("age") < 18 && kg <= 50 : kg <= Metabolism.CHILD_KG || Metabolism.ventilatedVo2MlPerMin(kg, false) > Metabolism.adultVo2MlPerMin(kg);
        Answer a = new Answer(this);
        double vo2, vco2;
        String source;
        if (child) {
            vo2 = Metabolism.ventilatedVo2MlPerMin(kg, false);
            boolean measured = kg >= 3.6 && kg <= Metabolism.CHILD_KG;
            vco2 = measured ? Metabolism.childVco2MlPerMin(kg) : vo2 * (kg < 3.6 ? Metabolism.childVco2MlPerMin(3.6) / Metabolism.childVo2MlPerMin(3.6) : Metabolism.RESPIRATORY_QUOTIENT);
            if (measured) {
                a.step("Oxygen: 5.0 × %s + 19.8 = %s mL/min, anaesthetised child.", Show.number(kg), Show.number(vo2)).step("Carbon dioxide: 4.8 × %s + 6.4 = %s mL/min.", Show.number(kg), Show.number(vco2));
            } else if (kg < 3.6) {
                a.step("Below 3.6 kg in proportion to weight from there: oxygen %s mL/min, carbon dioxide %s mL/min.", Show.number(vo2), Show.number(vco2));
            } else {
                a.step("Between a child of 25 kg and an adult of 50 kg, sedated: oxygen %s mL/min; carbon dioxide 0.8 of it, %s mL/min.", Show.number(vo2), Show.number(vco2));
            }
            source = "Lindahl, Br J Anaesth 1989;62:70, 3.6 to 25 kg";
        } else {
            vo2 = Metabolism.adultVo2MlPerMin(kg);
            vco2 = vo2 * Metabolism.RESPIRATORY_QUOTIENT;
            a.step("Oxygen: 10 × %s^0.75 = %s mL/min, awake at rest; sedated and ventilated about 0.85 of it.", Show.number(kg), Show.number(vo2))
                    .step("Carbon dioxide: 0.8 × %s = %s mL/min.", Show.number(vo2), Show.number(vco2));
            source = "Brody 1945, Kleiber; from memory";
        }
        if (t != 37) a.step("At %s Cel × 1.10^(%s − 37) = %s.", Show.number(t), Show.number(t), Show.number(heat));
        return a.key("vo2MlPerMin", vo2 * heat, "mL/min").key("vco2MlPerMin", vco2 * heat, "mL/min").from(source);
    }
}
