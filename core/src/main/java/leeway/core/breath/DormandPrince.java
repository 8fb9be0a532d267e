package leeway.core.breath;

import java.util.Arrays;

/**
 * An adaptive integrator with error control and continuous output: Dormand–Prince 5(4), its steps kept so that any moment
 * between start and end can be asked for afterwards. Allocates nothing once its arrays have grown.
 * <p>Coefficients: Dormand and Prince, J Comput Appl Math 1980;6:19; continuous output of order 4 after Hairer, Nørsett and
 * Wanner, Solving Ordinary Differential Equations I, II.6 (from memory; the tests hold both against a general-purpose
 * library). The step follows the fourth root of the error, which plain arithmetic can take, instead of the fifth.
 */
final class DormandPrince extends Steps {
    /** The right-hand side: slopes of a state at a time. */
    interface Field {
        void slopes(double t, double[] y, double[] dy);

        /** The slope of a state of one number. */
        double slope(double t, double y);
    }

    /** A right-hand side of several numbers that never is one of one. */
    interface Fields extends Field {
        @Override default double slope(double t, double y) {
            double[] dy = new double[1];
            slopes(t, new double[] {y}, dy);
            return dy[0];
        }
    }

    private static final double C2 = 1 / 5.0, C3 = 3 / 10.0, C4 = 4 / 5.0, C5 = 8 / 9.0;
    private static final double A21 = 1 / 5.0, A31 = 3 / 40.0, A32 = 9 / 40.0, A41 = 44 / 45.0, A42 = -56 / 15.0, A43 = 32 / 9.0,
            A51 = 19372 / 6561.0, A52 = -25360 / 2187.0, A53 = 64448 / 6561.0, A54 = -212 / 729.0,
            A61 = 9017 / 3168.0, A62 = -355 / 33.0, A63 = 46732 / 5247.0, A64 = 49 / 176.0, A65 = -5103 / 18656.0,
            A71 = 35 / 384.0, A73 = 500 / 1113.0, A74 = 125 / 192.0, A75 = -2187 / 6784.0, A76 = 11 / 84.0;
    private static final double E1 = 71 / 57600.0, E3 = -71 / 16695.0, E4 = 71 / 1920.0, E5 = -17253 / 339200.0, E6 = 22 / 525.0, E7 = -1 / 40.0;
    private static final double D1 = -12715105075.0 / 11282082432.0, D3 = 87487479700.0 / 32700410799.0, D4 = -10690763975.0 / 1880347072.0,
            D5 = 701980252875.0 / 199316789632.0, D6 = -1453857185.0 / 822651844.0, D7 = 69997945.0 / 29380423.0;
    private static final double SAFETY = 0.9, SLOWEST = 0.2, FASTEST = 5, LEAST_STEP_S = 1e-12;

    private final Field field;
    private final int room;
    private final double[] k1, k2, k3, k4, k5, k6, k7, stage, y, next;
    private int size;
    private double[] coefficients;
    private double h, longest;
    private double[] allowed;
    /** Steps that were tried, ever; evaluations are six times as many. */
    long tried;

    DormandPrince(Field field, int room) {
        this.field = field;
        this.room = room;
        k1 = new double[room];
        k2 = new double[room];
        k3 = new double[room];
        k4 = new double[room];
        k5 = new double[room];
        k6 = new double[room];
        k7 = new double[room];
        stage = new double[room];
        y = new double[room];
        next = new double[room];
        coefficients = new double[64 * 5 * room];
    }

    /** Begins at time 0. {@code allowed} is the error that one step may make in each component; kept, not copied. */
    void begin(double[] start, int size, double firstStepS, double longestStepS, double[] allowed) {
        this.size = size;
        this.allowed = allowed;
        longest = longestStepS;
        beginSteps();
        h = firstStepS;
        for (int i = 0; i < size; i++) y[i] = start[i];
        field.slopes(0, y, k1);
    }

    @Override
    void step() {
        if (size == 1) {
            stepOfOne();
            return;
        }
        int n = size;
        for (;;) {
            tried++;
            double s = h;
            for (int i = 0; i < n; i++) stage[i] = y[i] + s * (A21 * k1[i]);
            field.slopes(t + C2 * s, stage, k2);
            for (int i = 0; i < n; i++) stage[i] = y[i] + s * (A31 * k1[i] + A32 * k2[i]);
            field.slopes(t + C3 * s, stage, k3);
            for (int i = 0; i < n; i++) stage[i] = y[i] + s * (A41 * k1[i] + A42 * k2[i] + A43 * k3[i]);
            field.slopes(t + C4 * s, stage, k4);
            for (int i = 0; i < n; i++) stage[i] = y[i] + s * (A51 * k1[i] + A52 * k2[i] + A53 * k3[i] + A54 * k4[i]);
            field.slopes(t + C5 * s, stage, k5);
            for (int i = 0; i < n; i++) stage[i] = y[i] + s * (A61 * k1[i] + A62 * k2[i] + A63 * k3[i] + A64 * k4[i] + A65 * k5[i]);
            field.slopes(t + s, stage, k6);
            for (int i = 0; i < n; i++) next[i] = y[i] + s * (A71 * k1[i] + A73 * k3[i] + A74 * k4[i] + A75 * k5[i] + A76 * k6[i]);
            field.slopes(t + s, next, k7);
            double error = 0;
            for (int i = 0; i < n; i++) {
                double e = s * (E1 * k1[i] + E3 * k3[i] + E4 * k4[i] + E5 * k5[i] + E6 * k6[i] + E7 * k7[i]) / allowed[i];
                error = Math.max(error, Math.abs(e));
            }
            if (good(error, s)) {
                keep(s);
                return;
            }
        }
    }

    /** The same with a state of one number, without arrays. */
    private void stepOfOne() {
        double y0 = y[0], f1 = k1[0], most = allowed[0];
        for (;;) {
            tried++;
            double s = h;
            double f2 = field.slope(t + C2 * s, y0 + s * (A21 * f1));
            double f3 = field.slope(t + C3 * s, y0 + s * (A31 * f1 + A32 * f2));
            double f4 = field.slope(t + C4 * s, y0 + s * (A41 * f1 + A42 * f2 + A43 * f3));
            double f5 = field.slope(t + C5 * s, y0 + s * (A51 * f1 + A52 * f2 + A53 * f3 + A54 * f4));
            double f6 = field.slope(t + s, y0 + s * (A61 * f1 + A62 * f2 + A63 * f3 + A64 * f4 + A65 * f5));
            double y1 = y0 + s * (A71 * f1 + A73 * f3 + A74 * f4 + A75 * f5 + A76 * f6), f7 = field.slope(t + s, y1);
            double error = Math.abs(s * (E1 * f1 + E3 * f3 + E4 * f4 + E5 * f5 + E6 * f6 + E7 * f7)) / most;
            if (good(error, s)) {
                int at = room();
                double change = y1 - y0, bend = s * f1 - change;
                coefficients[at] = y0;
                coefficients[at + 1] = change;
                coefficients[at + 2] = bend;
                coefficients[at + 3] = change - s * f7 - bend;
                coefficients[at + 4] = s * (D1 * f1 + D3 * f3 + D4 * f4 + D5 * f5 + D6 * f6 + D7 * f7);
                y[0] = y1;
                k1[0] = f7;
                stepped(s);
                return;
            }
        }
    }

    /** Whether a step is good enough to keep; chooses the next one's length. */
    private boolean good(double error, double s) {
        double e = error == error ? error : 1e9;
        double factor = e < 1e-9 ? FASTEST : Math.max(SLOWEST, Math.min(FASTEST, SAFETY / Math.sqrt(Math.sqrt(e))));
        boolean keep = e <= 1 || s <= LEAST_STEP_S;
        h = keep ? Math.min(longest, Math.max(LEAST_STEP_S, s * factor)) : Math.max(LEAST_STEP_S, s * Math.min(SAFETY, factor));
        return keep;
    }

    /** Where the next step's coefficients go. */
    private int room() {
        int at = steps() * 5 * room;
        if (at == coefficients.length) coefficients = Arrays.copyOf(coefficients, 2 * at);
        return at;
    }

    private void keep(double s) {
        int at = room();
        for (int i = 0; i < size; i++, at += 5) {
            double change = next[i] - y[i], bend = s * k1[i] - change;
            coefficients[at] = y[i];
            coefficients[at + 1] = change;
            coefficients[at + 2] = bend;
            coefficients[at + 3] = change - s * k7[i] - bend;
            coefficients[at + 4] = s * (D1 * k1[i] + D3 * k3[i] + D4 * k4[i] + D5 * k5[i] + D6 * k6[i] + D7 * k7[i]);
            y[i] = next[i];
            k1[i] = k7[i];
        }
        stepped(s);
    }

    @Override
    void at(int step, double time, double[] into) {
        double x = (time - startOf(step)) / (endOf(step) - startOf(step)), y1 = 1 - x;
        int at = step * 5 * room;
        for (int i = 0; i < size; i++, at += 5) {
            into[i] = coefficients[at] + x * (coefficients[at + 1] + y1 * (coefficients[at + 2] + x * (coefficients[at + 3] + y1 * coefficients[at + 4])));
        }
    }
}
