package leeway.core.calc;

import static leeway.Check.fromMemory;

import java.util.List;
import leeway.Check;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The iso-shunt diagram, read through the calc. */
class CalcPublishedTest {
    private static final String DIAGRAM = "iso-shunt diagram, Benatar, Hewlett & Nunn, Br J Anaesth 1973;45:711; Hb 14, difference 5, value from an independent program, tolerance the reading of a diagram";

    static final List<Check> ROWS = List.of(
            fromMemory("arterial oxygen at 100 %, shunt 30 %", 104, 15, "mmHg", DIAGRAM, () -> po2("100 %", "30 %")),
            fromMemory("arterial oxygen at 60 %, shunt 50 %", 43, 6, "mmHg", DIAGRAM, () -> po2("60 %", "50 %")),
            fromMemory("arterial oxygen on air, shunt 5 %", 88, 6, "mmHg", DIAGRAM, () -> po2("21 %", "5 %")),
            fromMemory("gain from 60 % to 100 % at a shunt of 50 %: nearly none", 4, 4, "mmHg", DIAGRAM, () -> po2("100 %", "50 %") - po2("60 %", "50 %")));

    private static double po2(String fio2, String shunt) {
        return CalcsTest.done("shunt-po2", CalcsTest.arguments("--fio2 '" + fio2 + "' --shunt '" + shunt + "'")).value();
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
