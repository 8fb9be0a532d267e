package leeway.core.gas;

/**
 * The oracle: the reference equation of state of oxygen with 32 terms. R. Schmidt and W. Wagner, Fluid Phase Equilib. 19 (1985)
 * 175–200; tables in R. B. Stewart, R. T. Jacobsen, W. Wagner, J. Phys. Chem. Ref. Data 20 (1991) 917; density within 0.1 %.
 * Its check point, 170.0391 K and 12.267 mol/L giving 7781.961 kPa, stands in {@link RealOxygenPublishedTest}. Solved by plain bisection.
 */
final class ReferenceOxygen {
    private static final double TC = 154.581;
    private static final double RHOC = 13.63;
    private static final double R = 8.31434;
    private static final double[] N = {
        0.3983768749, -1.846157454, 0.4183473197, 0.02370620711, 0.09771730573, 0.03017891294, 0.02273353212, 0.01357254086, -0.04052698943,
        5.454628515e-4, 5.113182277e-4, 2.953466883e-7, -8.687645072e-5,
        -0.2127082589, 0.08735941958, 0.127550919, -0.09067701064, -0.03540084206, -0.03623278059, 0.0132769929, -3.254111865e-4,
        -0.008313582932, 0.002124570559, -8.325206232e-4,
        -2.626173276e-5, 0.002599581482, 0.009984649663, 0.002199923153, -0.02591350486, -0.1259630848, 0.1478355637, -0.01011251078 };
    private static final int[] D = { 1, 1, 1, 2, 2, 2, 3, 3, 3, 6, 7, 7, 8, 1, 1, 2, 2, 3, 3, 5, 6, 7, 8, 10, 2, 3, 3, 4, 4, 5, 5, 5 };
    private static final double[] T = { 0, 1.5, 2.5, -.5, 1.5, 2, 0, 1, 2.5, 0, 2, 5, 2, 5, 6, 3.5, 5.5, 3, 7, 6, 8.5, 4, 6.5, 5.5,
        22, 11, 18, 11, 23, 17, 18, 23 };

    static double pressureKPa(double kelvin, double molPerL) {
        double delta = molPerL / RHOC;
        double tau = TC / kelvin;
        double z = 1;
        for (int i = 0; i < N.length; i++) {
            int c = i < 13 ? 0 : i < 24 ? 2 : 4;
            double decay = c == 0 ? 1 : Math.exp(-Math.pow(delta, c));
            double cut = c == 0 ? 0 : c * Math.pow(delta, c);
            z += N[i] * Math.pow(delta, D[i]) * Math.pow(tau, T[i]) * decay * (D[i] - cut);
        }
        return z * molPerL * R * kelvin;
    }

    static double densityMolPerL(double kelvin, double kPa) {
        double low = 0;
        double high = 30;
        for (int i = 0; i < 200; i++) {
            double mid = (low + high) / 2;
            if (pressureKPa(kelvin, mid) < kPa) low = mid; else high = mid;
        }
        return (low + high) / 2;
    }

    static double z(double kelvin, double kPa) {
        return kPa / (densityMolPerL(kelvin, kPa) * R * kelvin);
    }

    private ReferenceOxygen() { }
}
