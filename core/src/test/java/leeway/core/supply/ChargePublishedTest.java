package leeway.core.supply;

import java.util.List;
import leeway.Check;
import leeway.core.kit.Battery;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class ChargePublishedTest {
    private static final String WORKED = "worked by an independent program; half of the last digit";
    /** 90 Wh; a fifth is lost in the first year on the shelf charger; 0.94 at 12 °C, 0.75 at −10 °C. */
    static final Battery PACK = new Battery("pack", 90, 3, 0.2, 0.0005, List.of(new Battery.Point(-10, 0.75), new Battery.Point(12, 0.94), new Battery.Point(25, 1)),
            0.1, 0.05, 35, 0, 45, 0.7, "invented");

    static final List<Check> ROWS = List.of(
        Check.computed("pneumatic power of 20 cmH2O at 10 L/min", 0.3269, 0.0002, "W", "p × flow", () -> 20 * 10 * Charge.W_PER_CMH2O_L_PER_MIN),
        Check.lookedUp("capacity left after a year on the shelf at 25 °C, full", 80, 2, "%", "battery table widely printed; two points of its reading",
                () -> 100 * Charge.health(PACK, 1, 0)),
        Check.computed("90 Wh pack, health 0.80, 12 °C, 90 % shown, cut-off 10 %", 54.1, 0.05, "Wh", WORKED, () -> Charge.usableWh(PACK, 0.9, 1, 0, 12)),
        Check.computed("the same at 18 W", 3.0, 0.05, "h", WORKED, () -> Charge.usableWh(PACK, 0.9, 1, 0, 12) / 18),
        Check.computed("the same at −10 °C", 2.4, 0.05, "h", WORKED, () -> Charge.usableWh(PACK, 0.9, 1, 0, -10) / 18),
        Check.computed("new and full at 25 °C", 81, 0.5, "Wh", WORKED, () -> Charge.usableWh(PACK, 1, 0, 0, 25)));

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }
}
