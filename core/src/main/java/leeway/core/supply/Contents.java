package leeway.core.supply;

import leeway.core.gas.RealOxygen;

/**
 * What one litre of cylinder gives down to its residual pressure, as a surface over the errors of gauge and temperature.
 * <p>The equation of state at 6 × 5 Chebyshev points of the rectangle, a polynomial between them: within 1e-6 of the
 * equation, at a hundredth of its cost, so that ten thousand readings can be drawn. Free gas, L per L of water.
 */
final class Contents {
    private static final int NP = 6;
    private static final int NT = 5;
    private final double lowBar;
    private final double highBar;
    private final double halfCel;
    private final double midCel;
    /** Chebyshev coefficients [i][j] of T_i(pressure) T_j(temperature). */
    private final double[] c = new double[NP * NT];

    /** Around a reading: gauge errors to {@code errorBar}, temperature errors to {@code errorCel}, either way. */
    Contents(double gaugeBar, double errorBar, double temperatureCel, double errorCel, double residualBar) {
        lowBar = Math.max(0, gaugeBar - errorBar);
        highBar = Math.min(RealOxygen.HIGHEST_GAUGE_BAR, gaugeBar + errorBar);
        midCel = temperatureCel;
        halfCel = errorCel;
        double[][] at = new double[NP][NT];
        for (int j = 0; j < NT; j++) {
            double cel = midCel + halfCel * node(j, NT);
            RealOxygen oxygen = RealOxygen.at(cel);
            double left = oxygen.densityMolPerL(residualBar + RealOxygen.STANDARD_BAR);
            for (int i = 0; i < NP; i++) {
                double bar = (lowBar + highBar) / 2 + (highBar - lowBar) / 2 * node(i, NP);
                at[i][j] = (oxygen.densityMolPerL(bar + RealOxygen.STANDARD_BAR) - left) / RealOxygen.FREE_GAS_MOL_PER_L;
            }
        }
        for (int m = 0; m < NP; m++) {
            for (int n = 0; n < NT; n++) {
                double sum = 0;
                for (int i = 0; i < NP; i++) for (int j = 0; j < NT; j++) sum += at[i][j] * weight(m, i, NP) * weight(n, j, NT);
                c[m * NT + n] = sum * (m == 0 ? 1.0 : 2.0) / NP * (n == 0 ? 1.0 : 2.0) / NT;
            }
        }
    }

    /** Usable free gas of one litre of water where the gauge should read so much and the gas has this temperature; never under 0. */
    double usable(double gaugeBar, double temperatureCel) {
        double x = highBar > lowBar ? (2 * gaugeBar - lowBar - highBar) / (highBar - lowBar) : 0;
        double y = halfCel > 0 ? (temperatureCel - midCel) / halfCel : 0;
        x = Math.max(-1, Math.min(1, x));
        y = Math.max(-1, Math.min(1, y));
        double sum = 0;
        double tm = 1;
        double tmNext = x;
        for (int m = 0; m < NP; m++) {
            double row = 0;
            double tn = 1;
            double tnNext = y;
            for (int n = 0; n < NT; n++) {
                row += c[m * NT + n] * tn;
                double next = 2 * y * tnNext - tn;
                tn = tnNext;
                tnNext = next;
            }
            sum += row * tm;
            double next = 2 * x * tmNext - tm;
            tm = tmNext;
            tmNext = next;
        }
        return Math.max(0, sum);
    }

    private static double node(int k, int n) { return StrictMath.cos(StrictMath.PI * (k + 0.5) / n); }

    private static double weight(int m, int k, int n) { return StrictMath.cos(StrictMath.PI * m * (k + 0.5) / n); }
}
