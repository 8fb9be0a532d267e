package leeway.core.supply;

import java.util.function.DoubleUnaryOperator;
import leeway.core.run.Normal;

/**
 * A smooth function of the standard normal variate, drawn by its probability many times: tabulated once, then a cubic in each
 * cell. Cells halve with every octave towards 0 and 1, as the quantile bends there. Within 1e-7 of the function (a test).
 */
final class Bend {
    /** Cells in an octave of the smaller of u and 1 − u, as a power of two. */
    private static final int BITS = 5;
    private static final int PER_OCTAVE = 1 << BITS;
    /** Beyond 2^-30 from 0 or 1 the function itself is asked. */
    private static final int OCTAVES = 29;
    private static final int CELLS = OCTAVES * PER_OCTAVE;
    private static final int SHIFT = 52 - BITS;
    private static final long REST = (1L << SHIFT) - 1;
    private static final long ALL = (1L << 52) - 1;
    private static final double PER_REST = 1.0 / (1L << SHIFT);
    private static final int FIRST = (int) (Double.doubleToRawLongBits(Math.scalb(0.5, -OCTAVES)) >>> SHIFT);

    /** At each node the quantile, and how it rises with u: dz/du = 1/φ(z) = √(2π) exp(z²/2). */
    private static final double[] Z = new double[CELLS + 1];
    private static final double[] PER_U = new double[CELLS + 1];

    static {
        for (int i = 0; i <= CELLS; i++) {
            Z[i] = Normal.quantile(from(i));
            PER_U[i] = Math.sqrt(2 * Math.PI) * StrictMath.exp(Z[i] * Z[i] / 2);
        }
    }

    /** Four coefficients a cell; the half below 0.5, then the half above. */
    private final double[] cubic = new double[2 * CELLS * 4];
    private final DoubleUnaryOperator f;

    /** The function of z and its derivative by z. */
    Bend(DoubleUnaryOperator f, DoubleUnaryOperator derivative) {
        this.f = f;
        for (int half = 0; half < 2; half++) {
            int sign = half == 0 ? 1 : -1;
            double a = f.applyAsDouble(sign * Z[0]);
            double slope = sign * derivative.applyAsDouble(sign * Z[0]) * PER_U[0];
            for (int i = 0; i < CELLS; i++) {
                double b = f.applyAsDouble(sign * Z[i + 1]);
                double next = sign * derivative.applyAsDouble(sign * Z[i + 1]) * PER_U[i + 1];
                double width = from(i + 1) - from(i);
                double rise = b - a;
                int at = (half * CELLS + i) * 4;
                cubic[at] = a;
                cubic[at + 1] = slope * width;
                cubic[at + 2] = 3 * rise - (2 * slope + next) * width;
                cubic[at + 3] = (slope + next) * width - 2 * rise;
                a = b;
                slope = next;
            }
        }
    }

    /** Where a cell begins. */
    private static double from(int cell) { return Double.longBitsToDouble((long) (FIRST + cell) << SHIFT); }

    /** The function at the normal quantile of u = (bits + 0.5)/2^52, the bits of {@link leeway.core.run.Draw#bits}. */
    double at(long drawn) {
        int half = (int) (drawn >>> 51);
        double v = ((drawn ^ -(long) half & ALL) + 0.5) * 0x1.0p-52; // u, or 1 − u above one half
        long bits = Double.doubleToRawLongBits(v);
        int cell = (int) (bits >>> SHIFT) - FIRST;
        if (cell < 0) return f.applyAsDouble(Normal.quantile((drawn + 0.5) * 0x1.0p-52));
        double t = (bits & REST) * PER_REST;
        int at = (half * CELLS + cell) * 4;
        return cubic[at] + t * (cubic[at + 1] + t * (cubic[at + 2] + t * cubic[at + 3]));
    }
}
