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
    /** Readings worked out at once. */
    private static final int BLOCK = 256;
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

    /** The same of many at once, to the last bit. */
    void usable(double[] gaugeBar, double[] temperatureCel, int n, double[] out) {
        double[] x = new double[BLOCK], tm = new double[BLOCK], tmNext = new double[BLOCK];
        double[][] tn = new double[NT][BLOCK];
        for (int from = 0; from < n; from += BLOCK) block(gaugeBar, temperatureCel, from, Math.min(BLOCK, n - from), x, tm, tmNext, tn, out);
    }

    private void block(double[] gaugeBar, double[] temperatureCel, int from, int n, double[] x, double[] tm, double[] tmNext, double[][] tn, double[] out) {
        double[] y = tn[1];
        for (int i = 0; i < n; i++) {
            double p = highBar > lowBar ? (2 * gaugeBar[from + i] - lowBar - highBar) / (highBar - lowBar) : 0;
            double t = halfCel > 0 ? (temperatureCel[from + i] - midCel) / halfCel : 0;
            x[i] = Math.max(-1, Math.min(1, p));
            y[i] = Math.max(-1, Math.min(1, t));
            tm[i] = 1;
            tmNext[i] = x[i];
            tn[0][i] = 1;
            out[from + i] = 0;
        }
        for (int k = 2; k < NT; k++) follow(tn[k], y, tn[k - 1], tn[k - 2], n);
        for (int m = 0; m < NP; m++) {
            add(m * NT, tn, tm, from, n, out);
            for (int i = 0; i < n; i++) {
                double next = 2 * x[i] * tmNext[i] - tm[i];
                tm[i] = tmNext[i];
                tmNext[i] = next;
            }
        }
        for (int i = 0; i < n; i++) out[from + i] = Math.max(0, out[from + i]);
    }

    private static void follow(double[] next, double[] x, double[] last, double[] beforeLast, int n) {
        for (int i = 0; i < n; i++) next[i] = 2 * x[i] * last[i] - beforeLast[i];
    }

    private void add(int at, double[][] tn, double[] tm, int from, int n, double[] out) {
        double c0 = c[at], c1 = c[at + 1], c2 = c[at + 2], c3 = c[at + 3], c4 = c[at + 4];
        double[] t0 = tn[0], t1 = tn[1], t2 = tn[2], t3 = tn[3], t4 = tn[4];
        for (int i = 0; i < n; i++) out[from + i] += (c0 * t0[i] + c1 * t1[i] + c2 * t2[i] + c3 * t3[i] + c4 * t4[i]) * tm[i];
    }

    private static double node(int k, int n) { return StrictMath.cos(StrictMath.PI * (k + 0.5) / n); }

    private static double weight(int m, int k, int n) { return StrictMath.cos(StrictMath.PI * m * (k + 0.5) / n); }
}
