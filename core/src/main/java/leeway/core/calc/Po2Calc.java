package leeway.core.calc;

import java.util.List;
import leeway.core.gas.OxygenDissociation;
import leeway.core.quantity.Kind;

/** Tension at a saturation. */
final class Po2Calc implements Calc {
    @Override public String name() { return "po2"; }

    @Override public String plain() { return "Oxygen tension at which haemoglobin has a saturation"; }

    @Override public List<Key> keys() { return BloodState.keys(Key.must("saturation", Kind.FRACTION, 0.001, 0.9999, "of haemoglobin")); }

    @Override public String example() { return "--saturation \"90 %\""; }

    @Override public CalcResult of(Given g) {
        Answer a = new Answer(this);
        double s = g.number("saturation"), ph = BloodState.ph(g, a, s), t = g.number("temperature");
        double standard = OxygenDissociation.standardTensionMmHg(s), po2 = OxygenDissociation.tensionMmHg(standard, ph, t, OxygenDissociation.ADULT_P50_MMHG);
        return a.step("At pH 7.40 and 37 Cel: P³ + 150·P = 23400 × S ÷ (1 − S) with S = %s gives %s mmHg.", Show.percent(s), Show.number(standard))
                .step("At pH %s and %s Cel: %s mmHg.", Show.digits(ph, 3), Show.number(t), Show.number(po2)).key("po2MmHg", po2, "mmHg").from(BloodState.SOURCE);
    }
}
