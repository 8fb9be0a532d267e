package leeway.core.breath;

/**
 * The terms of the power series of a motion F' = force - (lung' + wall) V' - square F^2', V' = F, in which x' u (1 - u) = u' with
 * u = V and a constant: the volume's depth x on a logistic curve. Written out, for as loops they took twice as long.
 * <p>In the units of {@link VolumeSeries}: the share u of the curve for volume, so that the start's flow is u'.
 */
final class MotionTerms {
    /** The last order. */
    static final int ORDER = 12;
    private static final double PER2 = 1.0 / 2, PER3 = 1.0 / 3, PER4 = 1.0 / 4, PER5 = 1.0 / 5, PER6 = 1.0 / 6, PER7 = 1.0 / 7, PER8 = 1.0 / 8, PER9 = 1.0 / 9, PER10 = 1.0 / 10, PER11 = 1.0 / 11, PER12 = 1.0 / 12;

    private MotionTerms() { }

    /**
     * Writes those of the volume into c and those of the flow's square into q, from index o.
     *
     * @param v      volume at the start
     * @param f0     flow at the start
     * @param force  slope of what drives, as a slope of flow; lung, wall and square: what holds back, likewise
     * @param odd    1 - 2 u over u (1 - u) at the start; 0 where the lung is straight
     * @param perA   1 over u (1 - u); 0 likewise
     */
    static void write(double[] c, double[] q, int o, double v, double f0, double force, double lung, double wall, double square, double odd, double perA) {
        // of each order: u, F; k and b: what of x' u (1 - u) and of F^2 is known before; x: n times the depth's; a: of u (1 - u) over its first
        double u1 = f0, f1 = force - (lung + wall) * u1, x1 = u1, a1 = odd * u1;
        double u2 = f1 * PER2, k2 = x1 * a1,
                b2 = f1 * f1, f2 = -lung * (u2 - PER2 * k2) - wall * u2 - square * b2,
                x2 = 2 * u2 - k2, a2 = odd * u2 - perA * (u1 * u1);
        double u3 = f2 * PER3, k3 = x1 * a2 + x2 * a1,
                b3 = 2 * f1 * f2, f3 = -lung * (u3 - PER3 * k3) - wall * u3 - square * b3,
                x3 = 3 * u3 - k3, a3 = odd * u3 - perA * (2 * u1 * u2);
        double u4 = f3 * PER4, k4 = x1 * a3 + x2 * a2 + x3 * a1,
                b4 = 2 * f1 * f3 + f2 * f2, f4 = -lung * (u4 - PER4 * k4) - wall * u4 - square * b4,
                x4 = 4 * u4 - k4, a4 = odd * u4 - perA * (2 * u1 * u3 + u2 * u2);
        double u5 = f4 * PER5, k5 = x1 * a4 + x2 * a3 + x3 * a2 + x4 * a1,
                b5 = 2 * (f1 * f4 + f2 * f3), f5 = -lung * (u5 - PER5 * k5) - wall * u5 - square * b5,
                x5 = 5 * u5 - k5, a5 = odd * u5 - perA * (2 * (u1 * u4 + u2 * u3));
        double u6 = f5 * PER6, k6 = x1 * a5 + x2 * a4 + x3 * a3 + x4 * a2 + x5 * a1,
                b6 = 2 * (f1 * f5 + f2 * f4) + f3 * f3, f6 = -lung * (u6 - PER6 * k6) - wall * u6 - square * b6,
                x6 = 6 * u6 - k6, a6 = odd * u6 - perA * (2 * (u1 * u5 + u2 * u4) + u3 * u3);
        double u7 = f6 * PER7, k7 = x1 * a6 + x2 * a5 + x3 * a4 + x4 * a3 + x5 * a2 + x6 * a1,
                b7 = 2 * (f1 * f6 + f2 * f5 + f3 * f4), f7 = -lung * (u7 - PER7 * k7) - wall * u7 - square * b7,
                x7 = 7 * u7 - k7, a7 = odd * u7 - perA * (2 * (u1 * u6 + u2 * u5 + u3 * u4));
        double u8 = f7 * PER8, k8 = x1 * a7 + x2 * a6 + x3 * a5 + x4 * a4 + x5 * a3 + x6 * a2 + x7 * a1,
                b8 = 2 * (f1 * f7 + f2 * f6 + f3 * f5) + f4 * f4, f8 = -lung * (u8 - PER8 * k8) - wall * u8 - square * b8,
                x8 = 8 * u8 - k8, a8 = odd * u8 - perA * (2 * (u1 * u7 + u2 * u6 + u3 * u5) + u4 * u4);
        double u9 = f8 * PER9, k9 = x1 * a8 + x2 * a7 + x3 * a6 + x4 * a5 + x5 * a4 + x6 * a3 + x7 * a2 + x8 * a1,
                b9 = 2 * (f1 * f8 + f2 * f7 + f3 * f6 + f4 * f5), f9 = -lung * (u9 - PER9 * k9) - wall * u9 - square * b9,
                x9 = 9 * u9 - k9, a9 = odd * u9 - perA * (2 * (u1 * u8 + u2 * u7 + u3 * u6 + u4 * u5));
        double u10 = f9 * PER10, k10 = x1 * a9 + x2 * a8 + x3 * a7 + x4 * a6 + x5 * a5 + x6 * a4 + x7 * a3 + x8 * a2 + x9 * a1,
                b10 = 2 * (f1 * f9 + f2 * f8 + f3 * f7 + f4 * f6) + f5 * f5, f10 = -lung * (u10 - PER10 * k10) - wall * u10 - square * b10,
                x10 = 10 * u10 - k10, a10 = odd * u10 - perA * (2 * (u1 * u9 + u2 * u8 + u3 * u7 + u4 * u6) + u5 * u5);
        double u11 = f10 * PER11, k11 = x1 * a10 + x2 * a9 + x3 * a8 + x4 * a7 + x5 * a6 + x6 * a5 + x7 * a4 + x8 * a3 + x9 * a2 + x10 * a1,
                b11 = 2 * (f1 * f10 + f2 * f9 + f3 * f8 + f4 * f7 + f5 * f6), f11 = -lung * (u11 - PER11 * k11) - wall * u11 - square * b11;
        c[o] = v;
        c[o + 1] = u1;
        c[o + 2] = u2;
        c[o + 3] = u3;
        c[o + 4] = u4;
        c[o + 5] = u5;
        c[o + 6] = u6;
        c[o + 7] = u7;
        c[o + 8] = u8;
        c[o + 9] = u9;
        c[o + 10] = u10;
        c[o + 11] = u11;
        c[o + 12] = f11 * PER12;
        q[o] = f0 * f0;
        q[o + 1] = 2 * f0 * f1;
        q[o + 2] = b2 + 2 * f0 * f2;
        q[o + 3] = b3 + 2 * f0 * f3;
        q[o + 4] = b4 + 2 * f0 * f4;
        q[o + 5] = b5 + 2 * f0 * f5;
        q[o + 6] = b6 + 2 * f0 * f6;
        q[o + 7] = b7 + 2 * f0 * f7;
        q[o + 8] = b8 + 2 * f0 * f8;
        q[o + 9] = b9 + 2 * f0 * f9;
        q[o + 10] = b10 + 2 * f0 * f10;
        q[o + 11] = b11 + 2 * f0 * f11;
        q[o + 12] = 0;
    }
}
