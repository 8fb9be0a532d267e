package leeway.core.calc;

import java.util.List;
import leeway.core.body.DeadSpace;
import leeway.core.gas.AlveolarGas;
import leeway.core.quantity.Kind;

/** Dead space, by age or as measured. */
final class DeadSpaceCalc implements Calc {
    @Override public String name() { return "dead-space"; }

    @Override public String plain() { return "Dead space of the airways by age, or the share of a breath by the Bohr-Enghoff equation"; }

    @Override public List<Key> keys() {
        return List.of(Key.may("age", Kind.AGE, 0, 120, "for the airways"), Key.may("paco2", Kind.GAS_TENSION, 5, 250, "arterial carbon dioxide tension"),
                Key.may("mixed-expired-co2", Kind.GAS_TENSION, 0, 250, "carbon dioxide tension of all expired gas, mixed"), Key.may("tidal-volume", Kind.VOLUME, 2, 3000, "for the volume as well"));
    }

    @Override public String example() { return "--paco2 \"40 mmHg\" --mixed-expired-co2 \"28 mmHg\""; }

    @Override public CalcResult of(Given g) {
        boolean measured = g.has("paco2") || g.has("mixed-expired-co2");
        if (!measured && !g.has("age")) {
            g.wrong("age", "\"dead-space\" needs an age, or paco2 and mixed-expired-co2", "For example --age \"6 years\".");
            return null;
        }
        if (measured && !(g.has("paco2") && g.has("mixed-expired-co2"))) {
            g.wrong(g.has("paco2") ? "mixed-expired-co2" : "paco2", "paco2 and mixed-expired-co2 go together", "Give both.");
            return null;
        }
        Answer a = new Answer(this);
        String source = "";
        if (measured) {
            double co2 = g.number("paco2"), mixed = g.number("mixed-expired-co2");
            if (mixed > co2) {
                g.wrong("mixed-expired-co2", "expired gas of %s mmHg cannot hold more carbon dioxide than blood of %s mmHg".formatted(Show.number(mixed), Show.number(co2)), "It is lower than PaCO2.");
                return null;
            }
            double share = AlveolarGas.deadSpaceShare(co2, mixed);
            a.step("(%s − %s) mmHg ÷ %s mmHg = %s of the breath.", Show.number(co2), Show.number(mixed), Show.number(co2), Show.percent(share)).key("fraction", share, "");
            if (g.has("tidal-volume")) a.step("Of %s mL: %s mL.", Show.number(g.number("tidal-volume")), Show.number(share * g.number("tidal-volume"))).key("deadSpaceMl", share * g.number("tidal-volume"), "mL");
            source = "Bohr 1891, Enghoff 1938";
        }
        if (g.has("age")) {
            double years = g.number("age"), perKg = DeadSpace.anatomicalMlPerKg(years);
            if (years <= 14) a.step("Airways without a tube: 3.28 − 0.56 × ln(1 + %s) = %s mL per kg of ideal weight.", Show.number(years), Show.number(perKg));
            else if (years < 18) a.step("Airways without a tube, in a straight line from 14 years to 2.2 mL/kg at 18 years: %s mL per kg of ideal weight.", Show.number(perKg));
            else a.step("Airways of an adult without a tube: 2.2 mL per kg of ideal weight.");
            a.step("With a tracheal tube 1.03 mL/kg of it remain; tube, filter and circuit come on top.").key("mlPerKg", perKg, "mL/kg");
            source = (source.isEmpty() ? "" : source + "; ") + (years < 18 ? "Numa & Newth, J Appl Physiol 1996;80:1485" : "Radford, J Appl Physiol 1955;7:451, from memory");
        }
        return a.from(source);
    }
}
