package leeway.core.supply;

import static leeway.core.supply.Kits.need;
import static leeway.core.supply.Kits.pneumatic;
import static leeway.core.supply.Kits.turbine;

import java.util.List;
import leeway.Check;
import leeway.core.gas.Blend;
import leeway.core.kit.Ventilator.VolumeBasis;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class OxygenDrawPublishedTest {
    private static final String BALANCE = "mass balance, air 0.21; half of the last digit";
    private static final String RATIO = "respiratory care text, rounded there; the exact ratio";
    private static final String WORKED = "worked by an independent program; half of the last digit";

    static final List<Check> ROWS = List.of(
        Check.computed("oxygen in 10 L/min at FiO2 0.6", 4.937, 0.0005, "L/min", BALANCE, () -> Blend.oxygenFlow(10, 0.6, 1)),
        Check.computed("oxygen in 10 L/min at FiO2 0.4", 2.405, 0.0005, "L/min", BALANCE, () -> Blend.oxygenFlow(10, 0.4, 1)),
        Check.computed("oxygen in 8 L/min at FiO2 1", 8.000, 0.0005, "L/min", BALANCE, () -> Blend.oxygenFlow(8, 1, 1)),
        Check.lookedUp("air to oxygen, FiO2 0.28", 10.286, 0.001, "1", RATIO, () -> Blend.airToOxygen(0.28, 1)),
        Check.computed("air to oxygen, FiO2 0.4", 3.158, 0.001, "1", RATIO, () -> Blend.airToOxygen(0.4, 1)),
        Check.lookedUp("air to oxygen, FiO2 0.5", 1.724, 0.001, "1", RATIO, () -> Blend.airToOxygen(0.5, 1)),
        Check.computed("air to oxygen, FiO2 0.6", 1.026, 0.001, "1", RATIO, () -> Blend.airToOxygen(0.6, 1)),
        Check.lookedUp("FiO2 with 5 L/min of oxygen in 10 L/min", 0.605, 0.0005, "1", BALANCE, () -> Blend.fractionFromFlow(5, 10, 1)),
        Check.computed("turbine, 7.1 L/min free, FiO2 0.6", 3.505, 0.0005, "L/min", WORKED,
                () -> OxygenDraw.of(turbine(VolumeBasis.FREE), need(7.1, 0.6)).oxygenLPerMin()),
        Check.computed("the same with a bias flow of 3 L/min", 4.986, 0.0005, "L/min", WORKED,
                () -> OxygenDraw.of(turbine(VolumeBasis.FREE), need(7.1, 0.6).withBiasFlowLPerMin(3)).oxygenLPerMin()),
        Check.computed("and a leak of 2 L/min", 5.973, 0.0005, "L/min", WORKED,
                () -> OxygenDraw.of(turbine(VolumeBasis.FREE), need(7.1, 0.6).withBiasFlowLPerMin(3).withLeakLPerMin(2)).oxygenLPerMin()),
        Check.computed("pneumatic with 0.5 L/min of drive gas, FiO2 0.6", 4.005, 0.0005, "L/min", WORKED,
                () -> OxygenDraw.of(pneumatic(VolumeBasis.FREE, 0.5, true, 0.5), need(7.1, 0.6)).oxygenLPerMin()),
        Check.computed("the same at FiO2 1", 7.6, 0.05, "L/min", WORKED,
                () -> OxygenDraw.of(pneumatic(VolumeBasis.FREE, 0.5, true, 0.5), need(7.1, 1)).oxygenLPerMin()),
        Check.computed("turbine at FiO2 1 with bias flow and leak", 12.1, 0.05, "L/min", WORKED,
                () -> OxygenDraw.of(turbine(VolumeBasis.FREE), need(7.1, 1).withBiasFlowLPerMin(3).withLeakLPerMin(2)).oxygenLPerMin()),
        Check.computed("turbine, 7.1 L/min BTPS at 6500 ft (796.8 hPa), FiO2 0.6", 2.359, 0.0005, "L/min", WORKED,
                () -> OxygenDraw.of(turbine(VolumeBasis.BTPS), new LegNeed(7.1, 0, 0, 15, 0.6, 22, 5, 796.8)).oxygenLPerMin()),
        Check.computed("10 L/min BTPS as free gas at sea level", 8.71, 0.01, "L/min", WORKED + ", doubled: it has 62.8 hPa of vapour, we 47 mmHg", () -> 10 * OxygenDraw.freePer(VolumeBasis.BTPS, 1013.25)),
        Check.computed("10 L/min BTPS as free gas at 6500 ft", 6.73, 0.005, "L/min", WORKED, () -> 10 * OxygenDraw.freePer(VolumeBasis.BTPS, 796.8)),
        Check.lookedUp("an hour at 6 L/min, FiO2 0.6, drive 0.5 L/min, doubled, by the rule minute volume × FiO2", 492, 0.5, "L",
                "emergency medicine exam text", () -> 2 * 60 * OxygenDraw.byRuleLPerMin(6, 0.6, 0.5)),
        Check.computed("the same by the mass balance", 415.5, 0.1, "L", BALANCE + "; doubled after rounding to 0.05",
                () -> 2 * 60 * (Blend.oxygenFlow(6, 0.6, 1) + 0.5)),
        Check.lookedUp("a ward transfer at 15 L/min for 30 min, doubled", 900, 0.5, "L", "hospital transfer guidance",
                () -> 2 * 30 * OxygenDraw.HAND_BAG_L_PER_MIN));

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }
}
