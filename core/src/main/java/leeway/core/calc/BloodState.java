package leeway.core.calc;

import java.util.ArrayList;
import java.util.List;
import leeway.core.gas.AcidBase;
import leeway.core.gas.OxygenDissociation;
import leeway.core.quantity.Kind;

/** pH, carbon dioxide, temperature and base excess, as the calcs on the dissociation curve share them. */
final class BloodState {
    /** Haemoglobin by which base excess turns into pH where pH is not given, g/dL. Common practice, no source. */
    private static final double USUAL_HB = 15;

    private BloodState() { }

    static List<Key> keys(Key... first) {
        List<Key> keys = new ArrayList<>(List.of(first));
        keys.add(Key.may("ph", Kind.NUMBER, 6.5, 8.0, "of the blood; 7.40, or from pco2 and base-excess where those are given"));
        keys.add(Key.may("pco2", Kind.GAS_TENSION, 1, 250, "40 mmHg", "carbon dioxide tension; acts through the pH"));
        keys.add(Key.may("temperature", Kind.TEMPERATURE, 20, 43, "37 Cel", "of the blood"));
        keys.add(Key.may("base-excess", Kind.CONCENTRATION, -30, 30, "0 mmol/L", "metabolic state; sets the pH where that is not given"));
        return keys;
    }

    static double ph(Given g, Answer a, double saturation) {
        if (g.said("ph")) {
            if (g.said("base-excess") || g.said("pco2")) a.step("The pH is given, so carbon dioxide and base excess have no further part in the curve.");
            return g.number("ph");
        }
        if (!g.said("pco2") && !g.said("base-excess")) {
            a.step("pH taken as 7.40.");
            return 7.4;
        }
        double ph = AcidBase.phOf(g.number("pco2"), g.number("base-excess"), USUAL_HB, saturation);
        a.step("pH at %s mmHg and a base excess of %s mmol/L, haemoglobin taken as 150 g/L: %s.", Show.number(g.number("pco2")), Show.number(g.number("base-excess")), Show.digits(ph, 3));
        return ph;
    }

    static double saturation(Given g, Answer a, double po2) {
        double ph = ph(g, a, 1), t = g.number("temperature");
        double standard = OxygenDissociation.standardOf(po2, ph, t, OxygenDissociation.ADULT_P50_MMHG), s = OxygenDissociation.standardSaturation(standard);
        a.step("%s mmHg at pH %s and %s Cel is as full as %s mmHg at pH 7.40 and 37 Cel.", Show.number(po2), Show.digits(ph, 3), Show.number(t), Show.number(standard));
        a.step("Saturation: 1 ÷ (23400 ÷ (P³ + 150·P) + 1) with P = %s mmHg = %s.", Show.number(standard), Show.percent(s));
        return s;
    }

    static final String SOURCE = "Severinghaus, J Appl Physiol 1979;46:599, ±0.55 % of its table; adult haemoglobin";
}
