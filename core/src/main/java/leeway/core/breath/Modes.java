package leeway.core.breath;

/**
 * The modes of a small linear network of capacities and conductances, and what they make of a stretch of time.
 * <p>c_i x_i' = -(G x)_i + f_i + h_i t with G symmetric. Scaled by the roots of the capacities the matrix is symmetric too,
 * so its modes exist, are real and orthogonal whatever the time constants, coinciding ones included (Jacobi's rotations).
 * A time constant without end (gas that can go nowhere) is a mode of eigenvalue 0 and needs no case of its own.
 */
final class Modes {
    private static final int SWEEPS = 30;
    private final int size;
    private final double[] root;        // sqrt(c)
    private final double[] rate;        // eigenvalues, 1/s
    private final double[] turn;        // orthogonal, column k is mode k

    /** @param conductance row by row, mL/s per cmH2O; @param capacity mL/cmH2O */
    Modes(double[] conductance, double[] capacity) {
        size = capacity.length;
        root = new double[size];
        for (int i = 0; i < size; i++) root[i] = Math.sqrt(capacity[i]);
        double[] s = new double[size * size];
        for (int i = 0; i < size; i++) for (int j = 0; j < size; j++) s[i * size + j] = conductance[i * size + j] / (root[i] * root[j]);
        turn = new double[size * size];
        for (int i = 0; i < size; i++) turn[i * size + i] = 1;
        for (int sweep = 0; sweep < SWEEPS && rotate(s) > 0; sweep++) { }
        rate = new double[size];
        double most = 0;
        for (int k = 0; k < size; k++) most = Math.max(most, rate[k] = s[k * size + k]);
        for (int k = 0; k < size; k++) if (rate[k] < 1e-13 * most) rate[k] = 0;
    }

    private double rotate(double[] s) {
        double off = 0;
        for (int p = 0; p < size; p++) {
            for (int q = p + 1; q < size; q++) {
                double apq = s[p * size + q];
                if (Math.abs(apq) <= 1e-18 * (Math.abs(s[p * size + p]) + Math.abs(s[q * size + q]))) continue;
                off += Math.abs(apq);
                double theta = (s[q * size + q] - s[p * size + p]) / (2 * apq);
                double t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1)), c = 1 / Math.sqrt(t * t + 1), n = t * c;
                for (int k = 0; k < size; k++) {
                    double a = s[k * size + p], b = s[k * size + q];
                    s[k * size + p] = c * a - n * b;
                    s[k * size + q] = n * a + c * b;
                }
                for (int k = 0; k < size; k++) {
                    double a = s[p * size + k], b = s[q * size + k];
                    s[p * size + k] = c * a - n * b;
                    s[q * size + k] = n * a + c * b;
                    a = turn[k * size + p];
                    b = turn[k * size + q];
                    turn[k * size + p] = c * a - n * b;
                    turn[k * size + q] = n * a + c * b;
                }
            }
        }
        return off;
    }

    /** What a stretch of this length makes of any start: x1 = M x0 + b, and the integral of the first x likewise. */
    Step over(double t, double[] source, double[] ramp) {
        Step step = new Step(size);
        for (int k = 0; k < size; k++) {
            double r = rate[k], e = StrictMath.exp(-r * t), f1 = first(r, t), f2 = second(r, t), f3 = third(r, t), in = 0, up = 0;
            for (int j = 0; j < size; j++) {
                double q = turn[j * size + k];
                in += q * source[j] / root[j];
                up += q * ramp[j] / root[j];
            }
            for (int i = 0; i < size; i++) {
                double q = turn[i * size + k] / root[i];
                step.b[i] += q * (f1 * in + f2 * up);
                if (i == 0) step.area += q * (f2 * in + f3 * up);
                for (int j = 0; j < size; j++) {
                    double w = q * turn[j * size + k] * root[j];
                    step.m[i * size + j] += w * e;
                    if (i == 0) step.areas[j] += w * f1;
                }
            }
        }
        return step;
    }

    /** Integral of e^-rt. */
    static double first(double r, double t) {
        return r * t < 1e-12 ? t : -StrictMath.expm1(-r * t) / r;
    }

    /** Integral of {@link #first}. */
    static double second(double r, double t) {
        double x = r * t;
        return x < 1e-3 ? t * t * (1 / 2.0 - x * (1 / 6.0 - x * (1 / 24.0 - x / 120))) : (t - first(r, t)) / r;
    }

    /** Integral of {@link #second}. */
    static double third(double r, double t) {
        double x = r * t;
        return x < 1e-2 ? t * t * t * (1 / 6.0 - x * (1 / 24.0 - x * (1 / 120.0 - x * (1 / 720.0 - x / 5040)))) : (t * t / 2 - second(r, t)) / r;
    }

    /** A stretch of known length, ready to be taken from any start. */
    static final class Step {
        final double[] m;
        final double[] b;
        final double[] areas;
        double area;

        private Step(int size) {
            m = new double[size * size];
            b = new double[size];
            areas = new double[size];
        }

        /** Moves three pressures; answers the integral of the first over the stretch. */
        double take3(double[] x) {
            double x0 = x[0], x1 = x[1], x2 = x[2];
            x[0] = m[0] * x0 + m[1] * x1 + m[2] * x2 + b[0];
            x[1] = m[3] * x0 + m[4] * x1 + m[5] * x2 + b[1];
            x[2] = m[6] * x0 + m[7] * x1 + m[8] * x2 + b[2];
            return areas[0] * x0 + areas[1] * x1 + areas[2] * x2 + area;
        }

        /** Moves the second and third of three pressures, of a network of two. */
        void take2(double[] x) {
            double x1 = x[1], x2 = x[2];
            x[1] = m[0] * x1 + m[1] * x2 + b[0];
            x[2] = m[2] * x1 + m[3] * x2 + b[1];
        }
    }
}
