package leeway.core.calc;

import java.util.List;
import leeway.core.gas.AlveolarGas;
import leeway.core.gas.Barometer;
import leeway.core.quantity.Kind;

/** Alveolar oxygen tension. */
final class AlveolarCalc implements Calc {
    /** Dry air holds 20.9 %, and mixtures below air stand for an altitude; less than this nobody breathes. Common practice, no source. */
    static final double LEAST_FIO2 = 0.05;

    @Override public String name() { return "alveolar"; }

    @Override public String plain() { return "Oxygen tension in the alveoli, by the full alveolar gas equation"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("fio2", Kind.FRACTION, LEAST_FIO2, 1, "inspired oxygen"), Key.may("paco2", Kind.GAS_TENSION, 1, 250, "40 mmHg", "arterial carbon dioxide tension"),
                Key.may("altitude", Kind.ALTITUDE, Barometer.LOWEST_M, Barometer.HIGHEST_M, "of the cabin or the ground"),
                Key.may("pressure", Kind.AMBIENT_PRESSURE, 200, 1200, "barometric; instead of an altitude"),
                Key.may("r", Kind.NUMBER, 0.6, 1.3, "0.8", "carbon dioxide made over oxygen used"));
    }

    @Override public String example() { return "--fio2 \"21 %\" --paco2 \"40 mmHg\" --altitude \"8000 ft\""; }

    @Override public CalcResult of(Given g) {
        Answer a = new Answer(this);
        double f = g.number("fio2"), co2 = g.number("paco2"), r = g.number("r"), mmHg = Ambient.mmHg(g, a);
        if (Double.isNaN(mmHg)) return null;
        double inspired = AlveolarGas.inspiredMmHg(f, mmHg), full = AlveolarGas.oxygenMmHg(f, mmHg, co2, r), simple = AlveolarGas.oxygenShortMmHg(f, mmHg, co2, r);
        if (full <= 0) {
            g.wrong("paco2", "with a PaCO2 of %s mmHg no oxygen would be left in the alveoli".formatted(Show.number(co2)), "Nobody lives at these values; check FiO2, PaCO2 and pressure.");
            return null;
        }
        return a.step("Inspired, moist: %s × (%s − 47) mmHg = %s mmHg.", Show.percent(f), Show.number(mmHg), Show.number(inspired))
                .step("Alveolar: %s − %s × (%s + (1 − %s) ÷ %s) = %s mmHg.", Show.number(inspired), Show.number(co2), Show.number(f), Show.number(f), Show.number(r), Show.number(full))
                .step("The short form, inspired − PaCO2 ÷ R, would give %s mmHg.", Show.number(simple))
                .key("palvO2MmHg", full, "mmHg").key("shortFormMmHg", simple, "mmHg").key("inspiredO2MmHg", inspired, "mmHg")
                .from("full alveolar gas equation, Fenn, Rahn & Otis, Am J Physiol 1946;146:637; standard atmosphere ISO 2533:1975");
    }
}
