package leeway.core.gas;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Oxygen and carbon dioxide in blood, acid and base: figures from print. */
class BloodPublishedTest {
    private static final String TABLE = "Severinghaus, J Appl Physiol 1979;46:599, table; the equation is good to 0.55 %";
    private static final String EQUATION = "Severinghaus 1979, equations 1 to 4";
    private static final String DOUGLAS = "Douglas, Jones & Reed, J Appl Physiol 1988;65:473";
    private static final String VAN_SLYKE = "Lang & Zander, Clin Chem Lab Med 2002;40:404";

    static final List<Check> ROWS = List.of(
            fromMemory("saturation at 10 mmHg", 9.58, 0.6, "%", TABLE, () -> saturation(10)),
            fromMemory("saturation at 26.86 mmHg", 50, 0.2, "%", TABLE, () -> saturation(26.86)),
            fromMemory("saturation at 30 mmHg", 57.54, 0.6, "%", TABLE, () -> saturation(30)),
            fromMemory("saturation at 40 mmHg", 74.69, 0.6, "%", TABLE, () -> saturation(40)),
            fromMemory("saturation at 60 mmHg", 90.85, 0.6, "%", TABLE, () -> saturation(60)),
            fromMemory("saturation at 100 mmHg", 97.49, 0.6, "%", TABLE, () -> saturation(100)),
            fromMemory("saturation at 20 mmHg", 32.12, 0.6, "%", TABLE, () -> saturation(20)),
            fromMemory("saturation at 50 mmHg", 85.08, 0.6, "%", TABLE, () -> saturation(50)),
            fromMemory("saturation at 70 mmHg", 94.06, 0.6, "%", TABLE, () -> saturation(70)),
            fromMemory("saturation at 80 mmHg", 95.84, 0.6, "%", TABLE, () -> saturation(80)),
            fromMemory("saturation at 90 mmHg", 96.88, 0.6, "%", TABLE, () -> saturation(90)),
            fromMemory("saturation at 120 mmHg", 98.21, 0.6, "%", TABLE, () -> saturation(120)),
            fromMemory("saturation at 150 mmHg", 98.77, 0.6, "%", TABLE, () -> saturation(150)),
            computed("saturation at 40 mmHg by the equation", 74.95, 0.005, "%", EQUATION, () -> saturation(40)),
            computed("saturation at 100 mmHg by the equation", 97.75, 0.005, "%", EQUATION, () -> saturation(100)),
            computed("tension of 90 %", 58.66, 0.1, "mmHg", EQUATION, () -> OxygenDissociation.po2MmHg(0.9, 7.4, 37, 26.86)),
            computed("tension of 95 %", 75.7, 0.05, "mmHg", EQUATION, () -> OxygenDissociation.po2MmHg(0.95, 7.4, 37, 26.86)),
            computed("growth of 26.6 mmHg from 37 to 38 Cel at held saturation", 1.073, 0.005, "", EQUATION,
                    () -> OxygenDissociation.tensionMmHg(26.6, 7.4, 38, 26.86) / OxygenDissociation.tensionMmHg(26.6, 7.4, 37, 26.86)),
            computed("half-saturation tension at pH 7.2", 34.1, 0.5, "mmHg", EQUATION, () -> OxygenDissociation.po2MmHg(0.5, 7.2, 37, 26.86)),
            computed("oxygen content: Hb 15, 97.5 %, 100 mmHg", 19.9, 0.1, "mL/dL", "textbook (20)", () -> OxygenContent.mlPerDl(15, 0.975, 100, 0)),
            computed("mixed venous oxygen content: Hb 15, 75 %, 40 mmHg", 15.2, 0.1, "mL/dL", "textbook (15)", () -> OxygenContent.mlPerDl(15, 0.75, 40, 0)),
            lookedUp("oxygen content of arteries: Hb 15, 98 %, 13 kPa", 20.73, 0.8, "mL/dL", "clinical text on cardiac output, normal values; it counts 1.39 mL/g, we 1.34: 3.6 % less", () -> OxygenContent.mlPerDl(15, 0.98, 97.5, 0)),
            lookedUp("oxygen content of mixed venous blood: Hb 15, 75 %, 5.3 kPa", 15.76, 0.6, "mL/dL", "the same, 1.39 mL/g there", () -> OxygenContent.mlPerDl(15, 0.75, 39.8, 0)),
            lookedUp("arterial less mixed venous oxygen content", 4.97, 0.25, "mL/dL", "the same; 20.73 − 15.76, 1.39 mL/g there", () -> OxygenContent.mlPerDl(15, 0.98, 97.5, 0) - OxygenContent.mlPerDl(15, 0.75, 39.8, 0)),
            fromMemory("oxygen delivery: 20 mL/dL, 5 L/min", 1000, 5, "mL/min", "textbook", () -> OxygenContent.deliveryMlPerMin(20, 5)),
            computed("carbon dioxide content: 40 mmHg, pH 7.40, Hb 15, 97.5 %", 46.7, 0.1, "mL/dL", DOUGLAS, () -> CarbonDioxideContent.mlPerDl(40, 7.40, 15, 0.975, 37)),
            fromMemory("the same, textbook figure", 48, 2, "mL/dL", "textbook", () -> CarbonDioxideContent.mlPerDl(40, 7.40, 15, 0.975, 37)),
            computed("venous less arterial carbon dioxide: 46 mmHg, pH 7.37, 75 % against the former", 4.4, 0.1, "mL/dL", DOUGLAS,
                    () -> CarbonDioxideContent.mlPerDl(46, 7.37, 15, 0.75, 37) - CarbonDioxideContent.mlPerDl(40, 7.40, 15, 0.975, 37)),
            fromMemory("Haldane effect: blood without oxygen less full blood, both at 40 mmHg and base excess 0", 6, 1, "mL/dL", "textbook (about 6)", () -> empty(40) - full(40)),
            computed("pH at 80 mmHg, base excess 0, Hb 15, in vitro", 7.20, 0.02, "", VAN_SLYKE, () -> AcidBase.phOf(80, 0, 15, 1)),
            computed("base excess at pH 7.40, 40 mmHg, Hb 15", 0.0, 0.1, "mmol/L", VAN_SLYKE, () -> AcidBase.baseExcessMmolL(7.40, 40, 15, 1)),
            fromMemory("bicarbonate at pH 7.40, 40 mmHg", 24.4, 0.3, "mmol/L", "textbook (24.4; 24.0 to 24.4 by choice of constants)", () -> AcidBase.bicarbonateMmolL(7.40, 40)),
            fromMemory("fall of pH by a rise of PaCO2 from 40 to 50 mmHg, acute", 0.08, 0.02, "", "bedside rule, in the body; ours is blood in a glass",
                    () -> 7.4 - AcidBase.phOf(50, 0, 15, 1)),
            computed("Kelman's curve less ours, largest from 30 to 150 mmHg", 0, 1.2, "%", "Kelman, J Appl Physiol 1966;21:1375", BloodPublishedTest::kelmanOff));

    private static double saturation(double po2) {
        return 100 * OxygenDissociation.saturation(po2, 7.4, 37, 26.86);
    }

    private static double full(double pco2) {
        return CarbonDioxideContent.mlPerDl(pco2, AcidBase.phOf(pco2, 0, 15, 1), 15, 1, 37);
    }

    private static double empty(double pco2) {
        return CarbonDioxideContent.mlPerDl(pco2, AcidBase.phOf(pco2, 0, 15, 0), 15, 0, 37);
    }

    private static double kelmanOff() {
        double most = 0;
        for (double x = 30; x <= 150; x += 1) {
            double up = x * (-8532.2289 + x * (2121.4010 + x * (-67.073989 + x)));
            double down = 935960.87 + x * (-31346.258 + x * (2396.1674 + x * (-67.104406 + x)));
            double off = 100 * up / down - saturation(x);
            if (Math.abs(off) > Math.abs(most)) most = off;
        }
        return most;
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
