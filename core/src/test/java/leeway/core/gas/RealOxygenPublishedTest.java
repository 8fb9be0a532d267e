package leeway.core.gas;

import java.util.ArrayList;
import java.util.List;
import leeway.Check;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class RealOxygenPublishedTest {
    private static final String SW = "Span & Wagner, Int. J. Thermophys. 24 (2003) 41, table III";
    private static final String REF = "Schmidt & Wagner, Fluid Phase Equilib. 19 (1985) 175, check point of open property data";
    private static final String YOUNG = "Younglove, J. Phys. Chem. Ref. Data 11 Suppl. 1 (1982), app. K; older equation, hence the width";
    private static final String EQ = "32-term equation, Schmidt & Wagner 1985, solved by bisection in the test; 0.3 % is what we promise";
    private static final String BY_EQ = "Span & Wagner 2003, worked by an independent program; last digit printed";
    private static final String HOSPITAL = "hospital transfer guidance; water volume from memory, nominal contents are rounded (1.5 %)";
    private static final String TEXT = "transfer equipment text; water volume from memory, nominal contents are rounded (1.5 %)";

    static final List<Check> ROWS = rows();

    private static List<Check> rows() {
        List<Check> rows = new ArrayList<>();
        rows.add(Check.lookedUp("oxygen pressure, 700 K, 200 kg/m³", 41.051, 0.0005, "MPa", SW,
                () -> RealOxygen.at(700 - 273.15).pressureBar(200 / 31.999) / 10));
        rows.add(Check.lookedUp("the oracle's own check point, 170.0391 K, 12.267 mol/L", 7781.961, 0.0005, "kPa", REF,
                () -> ReferenceOxygen.pressureKPa(170.0391, 12.267)));
        rows.add(Check.lookedUp("oxygen density, 250 K, 8 MPa", 4.274, 0.0085, "mol/L", YOUNG, () -> density(250, 80)));
        rows.add(Check.lookedUp("oxygen density, 320 K, 0.2 MPa", 0.07523, 0.00004, "mol/L", YOUNG, () -> density(320, 2)));
        rows.add(Check.lookedUp("oxygen density, 400 K, 1 MPa", 0.3006, 0.0003, "mol/L", YOUNG, () -> density(400, 10)));
        rows.add(Check.lookedUp("oxygen density, 205 K, 10 MPa", 8.092, 0.024, "mol/L", YOUNG, () -> density(205, 100)));
        rows.add(Check.lookedUp("oxygen density, 190 K, 5 MPa", 3.914, 0.0117, "mol/L", YOUNG, () -> density(190, 50)));
        double[][] z = { { 50, 15, .96558 }, { 100, 20, .94691 }, { 150, 0, .90436 }, { 200, 15, .93102 }, { 200, -20, .85616 },
            { 300, 40, 1.00315 }, { 70, 10, .95033 }, { 137, 15, .93139 }, { 300, -20, .91254 }, { 1.01325, 15, .99921 } };
        for (double[] row : z) {
            rows.add(Check.computed("compressibility of oxygen, %s bar absolute, %s °C".formatted(row[0], row[1]), row[2], 0.000005, "1", BY_EQ,
                    () -> RealOxygen.at(row[1]).z(row[0])));
        }
        for (double bar : new double[] { 50, 100, 150, 200, 300 }) {
            for (double cel : new double[] { -20, 0, 15, 40 }) {
                double reference = ReferenceOxygen.densityMolPerL(cel + 273.15, (bar + 1.01325) * 100)
                        / ReferenceOxygen.densityMolPerL(288.15, 101.325);
                rows.add(Check.computed("contents of 1 L, %s bar gauge, %s °C".formatted(bar, cel), Math.round(reference * 100) / 100.0,
                        0.003 * reference, "L free", EQ, () -> RealOxygen.freeGasL(1, bar, cel)));
            }
        }
        double[][] contents = { { .8, 200, 15, 170.3, 169.5, 161.5, 158.7 }, { 2, 200, 15, 425.8, 423.8, 403.8, 396.8 },
            { 2, 185, 5, 416.9, 414.8, 394.2, 380.4 }, { 2, 200, -20, 527.0, 524.7, 501.9, 451.6 }, { 2, 200, 40, 377.5, 375.7, 357.4, 365.1 },
            { 2, 300, 15, 610.7, 608.7, 588.8, 594.2 }, { 10, 200, 15, 2128.8, 2118.8, 2019.2, 1983.8 },
            { 10, 50, 20, 510.9, 501.0, 403.3, 494.9 }, { 50, 200, 15, 10643.8, 10593.8, 10096.2, 9919.2 } };
        for (double[] c : contents) {
            String vessel = "%s L, %s bar, %s °C: ".formatted(c[0], c[1], c[2]);
            rows.add(Check.computed(vessel + "contents", c[3], 0.051, "L free", BY_EQ, () -> RealOxygen.freeGasL(c[0], c[1], c[2])));
            rows.add(Check.computed(vessel + "usable to 0", c[4], 0.051, "L free", BY_EQ, () -> RealOxygen.usableL(c[0], c[1], c[2], 0)));
            rows.add(Check.computed(vessel + "usable to 10 bar", c[5], 0.051, "L free", BY_EQ, () -> RealOxygen.usableL(c[0], c[1], c[2], 10)));
            rows.add(Check.computed(vessel + "as an ideal gas", c[6], 0.051, "L", BY_EQ, () -> RealOxygen.idealGasL(c[0], c[1], c[2])));
        }
        rows.add(Check.lookedUp("trade multiplier for 200 bar at 15 °C, 1/Z", 1.07, 0.005, "1",
                "gas supplier's public explanation of compressibility", () -> 1 / RealOxygen.at(15).z(200)));
        rows.add(Check.lookedUp("nominal contents of a UK size E, 4.68 L at 137 bar", 680, 10.2, "L", HOSPITAL, () -> RealOxygen.freeGasL(4.68, 137, 15)));
        rows.add(Check.lookedUp("nominal contents of a UK size F, 9.4 L at 137 bar", 1360, 20.4, "L", TEXT, () -> RealOxygen.freeGasL(9.4, 137, 15)));
        rows.add(Check.lookedUp("nominal contents of a UK size D, 2.32 L at 137 bar", 340, 5.1, "L", TEXT, () -> RealOxygen.freeGasL(2.32, 137, 15)));
        double[][] gauge = { { 15, -20, 161.4 }, { 15, 0, 183.5 }, { 15, 5, 189.0 }, { 15, 40, 227.3 }, { 15, 60, 249.0 }, { 45, 15, 172.9 } };
        for (double[] g : gauge) {
            rows.add(Check.computed("gauge of 200 bar at %s °C, carried to %s °C".formatted(g[0], g[1]), g[2], 0.051, "bar", BY_EQ,
                    () -> RealOxygen.gaugeAtBar(200, g[0], g[1])));
        }
        rows.add(Check.lookedUp("gas from 1 L of liquid oxygen (1141.2 kg/m³), 21.1 °C, 1 atm", 860.6, 0.86, "L",
                "clinical algorithm collection; 0.1 %, the liquid's density is rounded",
                () -> 1141.2 / (RealOxygen.at(21.1).densityMolPerL(1.01325) * 31.9988)));
        rows.add(Check.computed("density of free gas, 15 °C, 1013.25 hPa", 1.3544, 0.00005, "kg/m³", BY_EQ,
                () -> RealOxygen.FREE_GAS_MOL_PER_L * 31.9988));
        return rows;
    }

    private static double density(double kelvin, double bar) {
        return RealOxygen.at(kelvin - 273.15).densityMolPerL(bar);
    }

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }
}
