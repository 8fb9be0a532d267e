package leeway.core.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.Check;
import leeway.core.calc.Calcs;
import leeway.core.calc.CalcResult;
import leeway.core.calc.Outcome;
import leeway.core.calc.Sheets;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Ventilator.VolumeBasis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class CylinderCalcPublishedTest {
    private static final String FORMULA = "respiratory-care duration formula and table of factors; the example computed";
    private static final Sheets SHEETS = new Sheets() {
        @Override public Optional<Object> find(String kind, String name) {
            return kind.equals("ventilator") && name.equals("turbine") ? Optional.of(Kits.turbine(VolumeBasis.BTPS)) : Optional.empty();
        }

        @Override public List<String> names(String kind) { return List.of("turbine"); }
    };

    private static Outcome run(String calc, String... keysAndValues) {
        Map<String, String> given = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) given.put(keysAndValues[i], keysAndValues[i + 1]);
        return Calcs.run(calc, given, SHEETS);
    }

    private static CalcResult done(String calc, String... keysAndValues) {
        Outcome outcome = run(calc, keysAndValues);
        assertThat(outcome).as("%s", outcome).isInstanceOf(Outcome.Done.class);
        return ((Outcome.Done) outcome).result();
    }

    private static double lasts(String factor, String pressure, String residual, String flow) {
        return done("duration", "factor", factor, "pressure", pressure, "residual", residual, "flow", flow).value();
    }

    static final List<Check> ROWS = List.of(
        Check.computed("endurance: 0.28 L/psi, 2000 psi, residual 200 psi, 10 L/min", 50.4, 0.05, "min", FORMULA, () -> lasts("0.28 L/psi", "2000 psi", "200 psi", "10 L/min")),
        Check.lookedUp("endurance: 0.28 L/psi, 1000 psi, 2 L/min", 140, 0.1, "min", "respiratory therapy study set", () -> lasts("0.28 L/psi", "1000 psi", "0 psi", "2 L/min")),
        Check.lookedUp("endurance: 0.16 L/psi, 2000 psi, residual 200 psi, 0.5 L/min", 576, 0.1, "min", "home-oxygen worked example", () -> lasts("0.16 L/psi", "2000 psi", "200 psi", "0.5 L/min")),
        Check.lookedUp("endurance: 0.28 L/psi, 1900 psi, 4 L/min", 133, 0.5, "min", "respiratory board review question", () -> lasts("0.28 L/psi", "1900 psi", "0 psi", "4 L/min")),
        Check.lookedUp("endurance: 3.14 L/psi, 600 psi, 4 L/min", 471, 0.5, "min", "respiratory care test bank", () -> lasts("3.14 L/psi", "600 psi", "0 psi", "4 L/min")),
        Check.computed("endurance: 2.41 L/psi, 1200 psi, residual 200 psi, 12 L/min", 200.8, 0.05, "min", FORMULA, () -> lasts("2.41 L/psi", "1200 psi", "200 psi", "12 L/min")),
        Check.computed("calc cylinder, 10 L, 200 bar, 15 °C, residual 10 bar: usable", 2019.2, 0.05, "L", "Span & Wagner 2003, worked by an independent program",
                () -> done("cylinder", "water", "10 L", "pressure", "200 bar", "temperature", "15 Cel", "residual", "10 bar").keys().get("usableL")),
        Check.computed("calc gauge, 200 bar at 15 °C to −20 °C", 161.4, 0.05, "bar", "Span & Wagner 2003, worked by an independent program",
                () -> done("gauge", "pressure", "200 bar", "temperature", "15 Cel", "to", "-20 Cel").value()),
        Check.lookedUp("80 lb of liquid oxygen at 3 L/min, 8 h a day (2.5 lb/L)", 19, 0.5, "days", "respiratory care question bank, 860 L/L; ours has 842.6 at 15 °C",
                () -> 80 / 2.5 * Route.FREE_PER_LIQUID_L / (3 * 60 * 8)));

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }

    @Test
    void theDurationByWaterHangsATableOnTheWall() {
        CalcResult result = done("duration", "water", "2 L", "pressure", "185 bar", "temperature", "15 Cel", "residual", "10 bar", "flow", "5 L/min");
        assertThat(result.working()).contains("Minutes, 2 L at 15 °C, down to 10 bar:", "  psi   bar |      2      4      5      6      8     10     12     15 L/min");
        assertThat(result.working()).allSatisfy(line -> assertThat(line.length()).isLessThan(110));
        assertThat(result.value()).isCloseTo(RealOxygen.usableL(2, 185, 15, 10) / 5, within(0.001));
    }

    @Test
    void whatCannotBeIsSaidWithTheWayOut() {
        assertThat(run("duration", "pressure", "185 bar", "flow", "5 L/min").toString()).contains("water capacity or its factor");
        assertThat(run("duration", "water", "2 L", "pressure", "185 bar", "flow", "0 L/min").toString()).contains("a flow of 0 lasts for ever");
        assertThat(run("duration", "water", "2 L", "pressure", "20 bar", "residual", "30 bar", "flow", "1 L/min").toString()).contains("30 bar are to stay");
        assertThat(run("cylinder", "water", "2 L", "pressure", "185").toString()).contains("has no unit");
        assertThat(run("cylinder", "water", "2 L", "pressure", "900 bar").toString()).contains("0 bar").contains("350 bar");
        assertThat(run("draw", "ventilator", "turbin", "minute-volume", "8 L/min").toString()).contains("turbine");
    }

    @Test
    void theDrawOfATurbineIsTheMassBalanceOfItsVolume() {
        CalcResult result = done("draw", "ventilator", "turbine", "minute-volume", "7.1 L/min", "fio2", "60 %", "altitude", "6500 ft");
        assertThat(result.value()).isCloseTo(2.359, within(0.001));
        assertThat(result.working()).anyMatch(line -> line.contains("counts the oxygen of the air"));
    }
}
