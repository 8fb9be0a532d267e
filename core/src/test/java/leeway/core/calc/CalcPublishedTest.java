package leeway.core.calc;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;

import java.util.List;
import leeway.Check;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The iso-shunt diagram, read through the calc. */
class CalcPublishedTest {
    private static final String DIAGRAM = "iso-shunt diagram, Benatar, Hewlett & Nunn, Br J Anaesth 1973;45:711; Hb 14, difference 5, value from an independent program, tolerance the reading of a diagram";

    private static final String KELMAN = "shunt equation with Kelman's curve, J Appl Physiol 1966;21:1375, 1.39 mL/g and 0.003, worked out by a separate program; alveolar 0.8, Hb 14, difference 5. "
            + "Tolerance 8 %: the two published curves lie up to 1.2 % of saturation apart, where the curve is flat that is so much of the tension";

    static final List<Check> ROWS = List.of(
            fromMemory("arterial oxygen at 100 %, shunt 30 %", 104, 15, "mmHg", DIAGRAM, () -> po2("100 %", "30 %")),
            fromMemory("arterial oxygen at 60 %, shunt 50 %", 43, 6, "mmHg", DIAGRAM, () -> po2("60 %", "50 %")),
            fromMemory("arterial oxygen on air, shunt 5 %", 88, 6, "mmHg", DIAGRAM, () -> po2("21 %", "5 %")),
            computed("arterial oxygen at 30 %, shunt 10 %, second curve", 97.3, 7.8, "mmHg", KELMAN, () -> po2("30 %", "10 %")),
            computed("arterial oxygen at 30 %, shunt 20 %, second curve", 70.3, 5.6, "mmHg", KELMAN, () -> po2("30 %", "20 %")),
            computed("arterial oxygen at 30 %, shunt 30 %, second curve", 57.2, 4.6, "mmHg", KELMAN, () -> po2("30 %", "30 %")),
            computed("arterial oxygen at 40 %, shunt 10 %, second curve", 126.1, 10.1, "mmHg", KELMAN, () -> po2("40 %", "10 %")),
            computed("arterial oxygen at 40 %, shunt 20 %, second curve", 78.6, 6.3, "mmHg", KELMAN, () -> po2("40 %", "20 %")),
            computed("arterial oxygen at 40 %, shunt 30 %, second curve", 60.6, 4.8, "mmHg", KELMAN, () -> po2("40 %", "30 %")),
            computed("arterial oxygen at 50 %, shunt 10 %, second curve", 166.9, 13.4, "mmHg", KELMAN, () -> po2("50 %", "10 %")),
            computed("arterial oxygen at 50 %, shunt 20 %, second curve", 89.1, 7.1, "mmHg", KELMAN, () -> po2("50 %", "20 %")),
            computed("arterial oxygen at 50 %, shunt 40 %, second curve", 51.9, 4.2, "mmHg", KELMAN, () -> po2("50 %", "40 %")),
            computed("arterial oxygen at 60 %, shunt 10 %, second curve", 220.6, 17.6, "mmHg", KELMAN, () -> po2("60 %", "10 %")),
            computed("arterial oxygen at 60 %, shunt 20 %, second curve", 104.4, 8.4, "mmHg", KELMAN, () -> po2("60 %", "20 %")),
            computed("arterial oxygen at 60 %, shunt 30 %, second curve", 68.1, 5.4, "mmHg", KELMAN, () -> po2("60 %", "30 %")),
            computed("arterial oxygen at 80 %, shunt 20 %, second curve", 164.7, 13.2, "mmHg", KELMAN, () -> po2("80 %", "20 %")),
            computed("arterial oxygen at 80 %, shunt 30 %, second curve", 80.0, 6.4, "mmHg", KELMAN, () -> po2("80 %", "30 %")),
            computed("arterial oxygen at 100 %, shunt 10 %, second curve", 491.0, 39.3, "mmHg", KELMAN, () -> po2("100 %", "10 %")),
            computed("arterial oxygen at 100 %, shunt 20 %, second curve", 274.3, 21.9, "mmHg", KELMAN, () -> po2("100 %", "20 %")),
            computed("arterial oxygen at 100 %, shunt 40 %, second curve", 63.1, 5.0, "mmHg", KELMAN, () -> po2("100 %", "40 %")),
            computed("arterial oxygen at 21 %, shunt 10 %, second curve", 75.4, 6.0, "mmHg", KELMAN, () -> po2("21 %", "10 %")),
            computed("arterial oxygen at 21 %, shunt 20 %, second curve", 61.8, 4.9, "mmHg", KELMAN, () -> po2("21 %", "20 %")),
            fromMemory("fall of arterial oxygen for each percent of shunt at 100 %, to 20 %", 20, 4, "mmHg/%", "bedside rule: a difference of 20 mmHg between alveoli and blood is 1 % of shunt", () -> (673 - po2("100 %", "20 %")) / 20),
            fromMemory("gain from 60 % to 100 % at a shunt of 50 %: nearly none", 4, 4, "mmHg", DIAGRAM, () -> po2("100 %", "50 %") - po2("60 %", "50 %")),
            computed("dead space, PaCO2 40, mixed expired 20", 0.5, 0.0005, "", "Bohr 1891, Enghoff 1938", () -> CalcsTest.done("dead-space", CalcsTest.arguments("--paco2 '40 mmHg' --mixed-expired-co2 '20 mmHg'")).value()),
            computed("dead space, PaCO2 46, mixed expired 27.6", 0.4, 0.0005, "", "Bohr 1891, Enghoff 1938", () -> CalcsTest.done("dead-space", CalcsTest.arguments("--paco2 '46 mmHg' --mixed-expired-co2 '27.6 mmHg'")).value()),
            computed("rate from 20, PaCO2 52, 360 mL, dead space 190 mL, for 40", 26, 0.05, "/min", "863 law: 20 × 52 / 40", () -> CalcsTest.done("rate-for-co2", CalcsTest.arguments("--paco2 '52 mmHg' --rate '20 /min' --tidal-volume '360 mL' --dead-space '190 mL' --target '40 mmHg'")).value()));

    private static double po2(String fio2, String shunt) {
        return CalcsTest.done("shunt-po2", CalcsTest.arguments("--fio2 '" + fio2 + "' --shunt '" + shunt + "'")).value();
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
