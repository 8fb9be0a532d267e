package leeway.core.gas;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Alveolar gas, dead space, shunt and rate: figures from print. */
class AlveolarGasPublishedTest {
    static final List<Check> ROWS = List.of(
            computed("alveolar oxygen: air, 760 mmHg, PaCO2 40, R 0.8, full form", 101.8, 0.5, "mmHg", "Nunn, full alveolar equation", () -> AlveolarGas.oxygenMmHg(0.21, 760, 40, 0.8)),
            computed("the same, short form", 99.7, 0.05, "mmHg", "West, short alveolar equation", () -> AlveolarGas.oxygenShortMmHg(0.21, 760, 40, 0.8)),
            computed("alveolar oxygen: 100 %, 760 mmHg, PaCO2 40", 673, 0.5, "mmHg", "exact at F = 1", () -> AlveolarGas.oxygenMmHg(1, 760, 40, 0.8)),
            computed("alveolar oxygen: air, 630 mmHg, PaCO2 40, R 0.8, short form", 72, 1, "mmHg", "textbook, a town at 1600 m", () -> AlveolarGas.oxygenShortMmHg(0.21, 630, 40, 0.8)),
            fromMemory("alveolar oxygen on the highest summit: 253 mmHg, PaCO2 7.5", 35, 2, "mmHg", "West, J Appl Physiol 1983;55:688, measured",
                    () -> AlveolarGas.oxygenMmHg(0.2095, 253, 7.5, 0.85)),
            lookedUp("oxygen at sea level equal to air at 8000 ft", 15.1, 0.2, "%", "Chest 2008, hypoxia altitude simulation",
                    () -> 100 * AlveolarGas.inspiredMmHg(0.2095, Barometer.pressureMmHg(8000 * 0.3048)) / (760 - 47)),
            computed("dead space share: PaCO2 40, mixed expired 28", 0.30, 0.005, "", "Bohr 1891, Enghoff 1938", () -> AlveolarGas.deadSpaceShare(40, 28)),
            computed("ventilation hyperbola: VCO2 200, alveolar ventilation 4.315 L/min", 40, 0.2, "mmHg", "863 law", () -> AlveolarGas.carbonDioxideMmHg(200, 4315)),
            computed("ventilation hyperbola: VCO2 200, 2.158 L/min", 80, 0.2, "mmHg", "863 law: half the ventilation, twice the tension", () -> AlveolarGas.carbonDioxideMmHg(200, 2157.5)),
            computed("ventilation hyperbola: VCO2 200, 8.63 L/min", 20, 0.2, "mmHg", "863 law: twice the ventilation, half the tension", () -> AlveolarGas.carbonDioxideMmHg(200, 8630)),
            computed("rate: PaCO2 60, 12 /min, 500 mL, dead space 150 mL, target 40", 18.0, 0.05, "/min", "863 law", () -> AlveolarGas.rateForTarget(12, 60, 500, 150, 40, 500)),
            computed("shunt: contents 20 capillary, 18 arterial, 14 venous", 1.0 / 3, 1e-3, "", "shunt equation", () -> AlveolarGas.shuntShare(20, 18, 14)));

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
