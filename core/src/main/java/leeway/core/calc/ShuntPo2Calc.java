package leeway.core.calc;

import java.util.List;
import leeway.core.gas.AlveolarGas;
import leeway.core.gas.Barometer;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
import leeway.core.quantity.Kind;

/** Arterial oxygen tension that a shunt leaves. */
final class ShuntPo2Calc implements Calc {
    @Override public String name() { return "shunt-po2"; }

    @Override public String plain() { return "Arterial oxygen tension at a shunt: a point of the iso-shunt diagram"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("fio2", Kind.FRACTION, AlveolarCalc.LEAST_FIO2, 1, "inspired oxygen"), Key.must("shunt", Kind.FRACTION, 0, 0.9, "share of the output that meets no gas"),
                Key.may("haemoglobin", Kind.HAEMOGLOBIN, 30, 260, "140 g/L", "of the blood"), Key.may("paco2", Kind.GAS_TENSION, 5, 150, "40 mmHg", "arterial carbon dioxide tension"),
                Key.may("difference", Kind.BLOOD_CONTENT, 0.1, 20, "5 mL/dL", "arterial less mixed venous oxygen content"),
                Key.may("altitude", Kind.ALTITUDE, Barometer.LOWEST_M, Barometer.HIGHEST_M, "0 m", "of the cabin or the ground"));
    }

    @Override public String example() { return "--fio2 \"100 %\" --shunt \"30 %\""; }

    @Override public CalcResult of(Given g) {
        Answer a = new Answer(this);
        double f = g.number("fio2"), s = g.number("shunt"), hb = g.number("haemoglobin") / 10, co2 = g.number("paco2"), mmHg = Ambient.mmHg(g, a);
        double d = g.number("difference");
        double alveolar = AlveolarGas.oxygenMmHg(f, mmHg, co2, 0.8);
        if (alveolar < 5) {
            g.wrong("paco2", "hardly any oxygen would be left in the alveoli", "Check FiO2, PaCO2 and altitude.");
            return null;
        }
        Blood blood = Blood.adult(hb, 0, 37);
        BloodPoint point = new BloodPoint();
        point.ofTensions(blood, alveolar, co2);
        double capillary = point.oxygenMlPerDl, arterial = capillary - d * s / (1 - s);
        if (arterial - d < 0.2) {
            g.wrong("shunt", "at this shunt and difference the venous blood would hold no oxygen", "A smaller shunt or difference, or more haemoglobin.");
            return null;
        }
        double co2Content = point.carbonDioxideMlPerDl;
        // arterial carbon dioxide is given: the content of oxygen is sought at that tension
        double low = 0.5, high = alveolar;
        for (int i = 0; i < 60; i++) {
            double mid = 0.5 * (low + high);
            point.ofTensions(blood, mid, co2);
            if (point.oxygenMlPerDl > arterial) high = mid; else low = mid;
        }
        double pao2 = 0.5 * (low + high);
        return a.step("Alveolar oxygen: %s mmHg, R 0.8.", Show.number(alveolar)).step("Content of blood that left the alveoli: %s mL/dL.", Show.number(capillary))
                .step("Arterial content: %s − %s × %s ÷ (1 − %s) = %s mL/dL.", Show.number(capillary), Show.number(d), Show.number(s), Show.number(s), Show.number(arterial))
                .step("The tension with this content at a PaCO2 of %s mmHg and base excess 0: %s mmHg, saturation %s.", Show.number(co2), Show.number(pao2), Show.percent(point.saturation))
                .key("pao2MmHg", pao2, "mmHg").key("saturation", point.saturation, "").key("palvO2MmHg", alveolar, "mmHg")
                .from("shunt equation, Berggren 1942; diagram Benatar, Hewlett & Nunn, Br J Anaesth 1973;45:711, from memory; " + BloodState.SOURCE);
    }
}
