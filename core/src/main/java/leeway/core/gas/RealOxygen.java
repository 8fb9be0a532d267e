package leeway.core.gas;

/**
 * Oxygen as a real gas on one isotherm: pressure, density and compressibility, and what a cylinder holds.
 * <p>The short equation of state with 12 terms for non-polar fluids: R. Span and W. Wagner, Int. J. Thermophys. 24 (2003)
 * 41–109; coefficients with 14 digits as reused for oxygen by O. Kunz and W. Wagner, J. Chem. Eng. Data 57 (2012) 3032.
 * Residual Helmholtz energy α<sup>r</sup> = Σ n δ<sup>d</sup> τ<sup>t</sup> exp(−δ<sup>c</sup>) with δ = ρ/ρc, τ = Tc/T;
 * Z = 1 + δ ∂α<sup>r</sup>/∂δ; p = Z ρ R T. Within 0.3 % of the 32-term reference equation (Schmidt and Wagner 1985) from
 * −40 to 60 °C and to 300 bar.
 * <p>Leaves out: nitrogen and argon in medical oxygen (under 0.5 % by volume), the stretch of the cylinder wall, and the
 * cooling of gas that leaves fast (contents are those of gas at one temperature).
 * <p>Litres of free gas are dry oxygen at 15 °C and 1013.25 hPa. A gauge reads above an ambient of 1013.25 hPa.
 */
public final class RealOxygen {
    /** Standard atmosphere, bar: exact by definition. */
    public static final double STANDARD_BAR = 1.01325;
    /** Temperature of free gas, °C: the trade's reference for medical gases. */
    public static final double FREE_GAS_CEL = 15;
    /** Coldest gas accepted for a cylinder, °C (200 K): below it the isotherms come near the critical one at 154.6 K. */
    public static final double COLDEST_CEL = -73.15;
    /** Hottest gas accepted for a cylinder, °C: above the 65 °C to which cylinders are designed; from memory. */
    public static final double HOTTEST_CEL = 80;
    /** Highest gauge pressure accepted, bar: a 300 bar cylinder heated to 60 °C stays below 400 bar. */
    public static final double HIGHEST_GAUGE_BAR = 400;

    /** Critical temperature, K, of the short equation: Span and Wagner 2003. */
    private static final double TC_K = 154.595;
    /** Critical density, mol/L, of the short equation: Span and Wagner 2003. */
    private static final double RHOC_MOL_PER_L = 13.63;
    /** Molar gas constant, J/(mol K), as in the short equation: Span and Wagner 2003. */
    private static final double R_J_PER_MOL_K = 8.31451;
    /** No cylinder state is looked for above this density, mol/L: the liquid at its boiling point has 35.7 (1141 kg/m³ at 90.19 K, as widely printed). */
    private static final double DENSEST_MOL_PER_L = 35;
    private static final double KELVIN = 273.15;

    // Span and Wagner 2003; 14-digit coefficients from Kunz and Wagner 2012, table of pure oxygen. n, d, t, c.
    private static final double[] N = {
        0.88878286369701, -2.4879433312148, 0.59750190775886, 0.0096501817061881, 0.071970428712770, 0.00022337443000195,
        0.18558686391474, -0.038129368035760, -0.15352245383006, -0.026726814910919, -0.025675298677127, 0.0095714302123668 };
    private static final int[] D = { 1, 1, 1, 2, 3, 7, 2, 5, 1, 4, 3, 4 };
    private static final double[] T = { 0.25, 1.125, 1.5, 1.375, 0.25, 0.875, 0.625, 1.75, 3.625, 3.625, 14.5, 12 };
    private static final int[] C = { 0, 0, 0, 0, 0, 0, 1, 1, 2, 2, 3, 3 };

    private static final RealOxygen FREE = at(FREE_GAS_CEL);
    /** Density of free gas, mol/L: oxygen at 15 °C and 1013.25 hPa by this equation (1.3544 kg/m³). */
    public static final double FREE_GAS_MOL_PER_L = FREE.densityMolPerL(STANDARD_BAR);

    private final double rtBarLPerMol;
    private final double temperatureK;
    /** n τ^t of this isotherm. */
    private final double[] a;

    private RealOxygen(double temperatureK) {
        this.temperatureK = temperatureK;
        this.rtBarLPerMol = R_J_PER_MOL_K * temperatureK * 0.01; // J/L is kPa; 100 kPa = 1 bar
        this.a = new double[N.length];
        for (int i = 0; i < N.length; i++) a[i] = N[i] * StrictMath.pow(TC_K / temperatureK, T[i]);
    }

    /** The isotherm of this temperature, °C. */
    public static RealOxygen at(double temperatureCel) {
        if (!(temperatureCel > -100 && temperatureCel < 1000)) {
            throw new IllegalArgumentException("oxygen at %s °C is outside of −100 to 1000 °C".formatted(temperatureCel));
        }
        return new RealOxygen(temperatureCel + KELVIN);
    }

    /** Absolute pressure in bar at this density, mol/L. */
    public double pressureBar(double densityMolPerL) {
        return rtBarLPerMol * densityMolPerL * zAtDensity(densityMolPerL);
    }

    /** Compressibility p/(ρRT) at this absolute pressure, bar. */
    public double z(double pressureBarAbsolute) {
        if (pressureBarAbsolute == 0) return 1;
        return pressureBarAbsolute / (rtBarLPerMol * densityMolPerL(pressureBarAbsolute));
    }

    /** Molar density, mol/L, at this absolute pressure, bar: Newton, guarded by bisection. */
    public double densityMolPerL(double pressureBarAbsolute) {
        if (!(pressureBarAbsolute >= 0)) throw new IllegalArgumentException("an absolute pressure of %s bar".formatted(pressureBarAbsolute));
        if (pressureBarAbsolute == 0) return 0;
        double low = 0;
        double high = DENSEST_MOL_PER_L;
        if (pressureBar(high) < pressureBarAbsolute) {
            throw new IllegalArgumentException("%s bar at %s K is denser than a gas".formatted(pressureBarAbsolute, temperatureK));
        }
        double rho = Math.min(pressureBarAbsolute / rtBarLPerMol, high);
        for (int i = 0; i < 100; i++) {
            double miss = pressureBar(rho) - pressureBarAbsolute;
            if (miss > 0) high = rho; else low = rho;
            double next = rho - miss / slopeBarPerMolPerL(rho);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.abs(next - rho) <= 1e-14 * rho) return next;
            rho = next;
        }
        return rho;
    }

    /** Slope of the isotherm, bar per mol/L: RT(1 + 2δα_δ + δ²α_δδ); above zero for every gas above the critical temperature. */
    public double slopeBarPerMolPerL(double densityMolPerL) {
        double delta = densityMolPerL / RHOC_MOL_PER_L;
        double delta2 = delta * delta;
        double delta3 = delta2 * delta;
        double e1 = StrictMath.exp(-delta);
        double e2 = StrictMath.exp(-delta2);
        double e3 = StrictMath.exp(-delta3);
        double first = 0;
        double second = 0;
        for (int i = 0; i < a.length; i++) {
            int c = C[i];
            double cut = c == 0 ? 0 : c * (c == 1 ? delta : c == 2 ? delta2 : delta3);
            double term = a[i] * power(delta, D[i]) * (c == 0 ? 1 : c == 1 ? e1 : c == 2 ? e2 : e3);
            double g = D[i] - cut;
            first += term * g;
            second += term * (g * (g - 1) - c * cut);
        }
        return rtBarLPerMol * (1 + 2 * first + second);
    }

    private double zAtDensity(double densityMolPerL) {
        double delta = densityMolPerL / RHOC_MOL_PER_L;
        double delta2 = delta * delta;
        double delta3 = delta2 * delta;
        double e1 = StrictMath.exp(-delta);
        double e2 = StrictMath.exp(-delta2);
        double e3 = StrictMath.exp(-delta3);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            int c = C[i];
            double cut = c == 0 ? 0 : c * (c == 1 ? delta : c == 2 ? delta2 : delta3);
            sum += a[i] * power(delta, D[i]) * (c == 0 ? 1 : c == 1 ? e1 : c == 2 ? e2 : e3) * (D[i] - cut);
        }
        return 1 + sum;
    }

    private static double power(double x, int n) {
        double p = x;
        for (int i = 1; i < n; i++) p *= x;
        return p;
    }

    /** All oxygen in a vessel of this water capacity, litres of free gas, the last atmosphere included. */
    public static double freeGasL(double waterL, double gaugeBar, double temperatureCel) {
        return waterL * freeGasPerLitre(gaugeBar, temperatureCel);
    }

    /** What flows out of the vessel until its gauge shows {@code residualBar}, litres of free gas; 0 where it shows less already. */
    public static double usableL(double waterL, double gaugeBar, double temperatureCel, double residualBar) {
        return waterL * Math.max(0, freeGasPerLitre(gaugeBar, temperatureCel) - freeGasPerLitre(residualBar, temperatureCel));
    }

    /** What the vessel would hold if oxygen were an ideal gas, litres at 15 °C and 1013.25 hPa: for comparison only. */
    public static double idealGasL(double waterL, double gaugeBar, double temperatureCel) {
        refuse(gaugeBar, temperatureCel);
        return waterL * (gaugeBar + STANDARD_BAR) / STANDARD_BAR * (FREE_GAS_CEL + KELVIN) / (temperatureCel + KELVIN);
    }

    /** Compressibility of the gas in a cylinder whose gauge shows this, at this gas temperature. */
    public static double zAtGauge(double gaugeBar, double temperatureCel) {
        refuse(gaugeBar, temperatureCel);
        return at(temperatureCel).z(gaugeBar + STANDARD_BAR);
    }

    /** What the gauge of the same closed cylinder shows at another gas temperature, bar. */
    public static double gaugeAtBar(double gaugeBar, double temperatureCel, double toCel) {
        refuse(gaugeBar, temperatureCel);
        refuse(0, toCel);
        return at(toCel).pressureBar(at(temperatureCel).densityMolPerL(gaugeBar + STANDARD_BAR)) - STANDARD_BAR;
    }

    /** What the gauge shows while the vessel holds {@code freeGasL} (last atmosphere included) at this gas temperature, bar. */
    public static double gaugeOfContentBar(double waterL, double freeGasL, double temperatureCel) {
        refuse(0, temperatureCel);
        if (!(waterL > 0 && freeGasL >= 0)) throw new IllegalArgumentException("a vessel of %s L with %s L in it".formatted(waterL, freeGasL));
        return at(temperatureCel).pressureBar(freeGasL / waterL * FREE_GAS_MOL_PER_L) - STANDARD_BAR;
    }

    /** Free gas in one litre of vessel, L/L. */
    public static double freeGasPerLitre(double gaugeBar, double temperatureCel) {
        refuse(gaugeBar, temperatureCel);
        return at(temperatureCel).densityMolPerL(gaugeBar + STANDARD_BAR) / FREE_GAS_MOL_PER_L;
    }

    private static void refuse(double gaugeBar, double temperatureCel) {
        if (!(gaugeBar >= 0 && gaugeBar <= HIGHEST_GAUGE_BAR)) {
            throw new IllegalArgumentException("a gauge pressure of %s bar is outside of 0 to %s bar".formatted(gaugeBar, HIGHEST_GAUGE_BAR));
        }
        if (!(temperatureCel >= COLDEST_CEL && temperatureCel <= HOTTEST_CEL)) {
            throw new IllegalArgumentException("a gas temperature of %s °C is outside of %s to %s °C".formatted(temperatureCel, COLDEST_CEL, HOTTEST_CEL));
        }
    }
}
