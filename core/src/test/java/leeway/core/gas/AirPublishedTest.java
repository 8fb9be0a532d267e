package leeway.core.gas;

import static leeway.Check.computed;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Barometer, volumes at their conditions, blending: figures from print. */
class AirPublishedTest {
    private static final String ISO = "ISO 2533:1975 formula";
    private static final String TABLE = "standard atmosphere conversion table (constants of ISO 2533 below 11 km)";
    private static final String SPIROMETRY = "spirometry factor table";
    private static final double FT = 0.3048;

    static final List<Check> ROWS = List.of(
            lookedUp("barometer at -1000 ft", 1050.41, 0.01, "hPa", TABLE, () -> Barometer.pressureHPa(-1000 * FT)),
            lookedUp("barometer at -1000 ft", 787.87, 0.01, "mmHg", TABLE, () -> Barometer.pressureMmHg(-1000 * FT)),
            lookedUp("barometer at -500 ft", 1031.69, 0.01, "hPa", TABLE, () -> Barometer.pressureHPa(-500 * FT)),
            lookedUp("barometer at -500 ft", 773.83, 0.01, "mmHg", TABLE, () -> Barometer.pressureMmHg(-500 * FT)),
            computed("barometer at 4000 ft", 875.11, 0.05, "hPa", ISO, () -> Barometer.pressureHPa(4000 * FT)),
            computed("barometer at 6500 ft", 796.81, 0.05, "hPa", ISO, () -> Barometer.pressureHPa(6500 * FT)),
            computed("barometer at 8000 ft", 752.62, 0.05, "hPa", ISO, () -> Barometer.pressureHPa(8000 * FT)),
            computed("barometer at 8000 ft", 564.5, 0.05, "mmHg", ISO, () -> Barometer.pressureMmHg(8000 * FT)),
            computed("barometer at 10 000 ft, geopotential (geometric is 696.95)", 696.82, 0.01, "hPa", ISO, () -> Barometer.pressureHPa(10_000 * FT)),
            computed("barometer at 2000 m", 794.95, 0.05, "hPa", ISO, () -> Barometer.pressureHPa(2000)),
            computed("barometer at 5000 m", 540.20, 0.05, "hPa", ISO, () -> Barometer.pressureHPa(5000)),
            lookedUp("barometer at 11 000 m, tropopause", 226.32, 0.01, "hPa", "layer table, standard atmosphere 1976", () -> Barometer.pressureHPa(11_000)),
            computed("altitude of 752.62 hPa", 2438.4, 0.5, "m", ISO, () -> Barometer.altitudeM(752.62)),
            lookedUp("ATPS to BTPS at 20 Cel, 760 mmHg", 1.102, 0.0005, "", SPIROMETRY, () -> factor(GasVolume.Condition.ATPS, GasVolume.Condition.BTPS, 20)),
            lookedUp("ATPS to BTPS at 22 Cel, 760 mmHg", 1.091, 0.0005, "", SPIROMETRY, () -> factor(GasVolume.Condition.ATPS, GasVolume.Condition.BTPS, 22)),
            lookedUp("BTPS to STPD at 760 mmHg", 0.82618, 0.0003, "", "physiology text; water 47 mmHg", () -> factor(GasVolume.Condition.BTPS, GasVolume.Condition.STPD, 20)),
            lookedUp("100 L/min at 21.1 Cel, 1013.25 hPa, dry, at 960 hPa, 28 Cel, half saturated", 110.19, 0.05, "L/min", "test-equipment explainer",
                    () -> 100 * GasVolume.factor(new GasVolume.State(21.1, Barometer.mmHg(1013.25), 0),
                            new GasVolume.State(28, Barometer.mmHg(960), 0.5 * GasVolume.waterMmHg(28)))),
            computed("500 mL ATPD of 20 Cel at 1013.25 hPa, as BTPS", 563.9, 0.3, "mL", "gas law, water 62.8 hPa",
                    () -> 500 * GasVolume.factor(GasVolume.state(GasVolume.Condition.ATPD, 20, Barometer.mmHg(1013.25)),
                            GasVolume.state(GasVolume.Condition.BTPS, 20, Barometer.mmHg(1013.25)))),
            computed("closed moist gas at 37 Cel, sea level to 8000 ft", 1.378, 0.003, "", "(1013.25-62.8)/(752.62-62.8)",
                    () -> GasVolume.expansion(Barometer.mmHg(1013.25), Barometer.pressureMmHg(8000 * FT))),
            lookedUp("air to oxygen at 28 %", 10.286, 0.001, "", "respiratory care text (rounded there)", () -> Blend.airToOxygen(0.28, 1)),
            computed("air to oxygen at 40 %", 3.158, 0.001, "", "respiratory care text (rounded there)", () -> Blend.airToOxygen(0.4, 1)),
            lookedUp("air to oxygen at 50 %", 1.724, 0.001, "", "respiratory care text (rounded there)", () -> Blend.airToOxygen(0.5, 1)),
            computed("air to oxygen at 60 %", 1.026, 0.001, "", "respiratory care text (rounded there)", () -> Blend.airToOxygen(0.6, 1)),
            computed("oxygen in 10 L/min at 60 %", 4.937, 0.0005, "L/min", "mass balance", () -> Blend.oxygenFlow(10, 0.6, 1)),
            computed("oxygen in 10 L/min at 40 %", 2.405, 0.0005, "L/min", "mass balance", () -> Blend.oxygenFlow(10, 0.4, 1)),
            computed("oxygen in 8 L/min at 100 %", 8.0, 1e-9, "L/min", "mass balance", () -> Blend.oxygenFlow(8, 1, 1)),
            computed("fraction that 5 L/min of oxygen makes in 10 L/min", 0.605, 0.0005, "", "mass balance", () -> Blend.fractionFromFlow(5, 10, 1)));

    private static double factor(GasVolume.Condition from, GasVolume.Condition to, double cel) {
        return GasVolume.factor(GasVolume.state(from, cel, 760), GasVolume.state(to, cel, 760));
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
