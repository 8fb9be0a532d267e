package leeway.core.calc;

import java.util.List;
import leeway.core.quantity.Kind;

/** Saturation at a tension. */
final class SaturationCalc implements Calc {
    @Override public String name() { return "saturation"; }

    @Override public String plain() { return "Saturation of haemoglobin at an oxygen tension"; }

    @Override public List<Key> keys() { return BloodState.keys(Key.must("po2", Kind.GAS_TENSION, 0.1, 2000, "oxygen tension")); }

    @Override public String example() { return "--po2 \"60 mmHg\" --ph 7.30"; }

    @Override public CalcResult of(Given g) {
        Answer a = new Answer(this);
        return a.key("saturation", BloodState.saturation(g, a, g.number("po2")), "").from(BloodState.SOURCE);
    }
}
