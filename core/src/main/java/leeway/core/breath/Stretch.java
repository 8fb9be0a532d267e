package leeway.core.breath;

import leeway.core.lung.Exponentials;

/**
 * Flow over one stretch in which everything that drives it is linear in time.
 * <p>With a resistance that grows with flow, pressure = elastic + k1 F + k2 F |F|, and a driving pressure linear in time,
 * differentiation leaves no volume: (A + B F) F' = C - D F. Its solution gives time as an explicit function of flow,
 * <pre>t(F) = -[ (A + B F8) ln(w / w0) + B (w - w0) ] / D,   F8 = C / D,  w = F - F8,</pre>
 * so a switch at a given flow (reversal, trigger, cycling-off) needs no search, and flow at a given time is one monotone
 * equation, A' x + B w0 (1 - e^-x) = D t with w = w0 e^-x, which Halley's step solves from the safe side. Constant flow into a
 * leaking or compressible circuit takes the same form with other A, B, C, D. A + B F must stay positive over the stretch.
 * <p>mL, s, mL/s.
 */
final class Stretch {
    private static final double TINY = 1e-300;
    private static final int ITERATIONS = 60;
    private boolean given, inward;
    private double f0, slope;               // given: F = f0 + slope t
    private double a, b, c, perD, d, f8, w0, a8, rate;      // free; perD = 1 / d, rate = d / a
    private double passed, left;                    // of the last pass: its length, the w at its end
    /** After {@link #over}: flow at the end, integrals of F, F^2 and of the volume gained. */
    double flow, volume, square, volumeTime;

    /** Flow is given, linear in time. */
    void given(double startFlow, double flowSlope) {
        given = true;
        f0 = startFlow;
        slope = flowSlope;
    }

    /** Flow obeys (A + B F) F' = C - D F as long as it keeps its direction. */
    void free(boolean inward, double aa, double bb, double cc, double dd, double startFlow) {
        given = false;
        this.inward = inward;
        a = aa;
        b = bb;
        d = dd;
        perD = 1 / dd;
        rate = dd / aa;
        drive(cc, startFlow);
    }

    private void drive(double cc, double startFlow) {
        c = cc;
        f0 = startFlow;
        f8 = cc * perD;
        w0 = startFlow - f8;
        a8 = a + b * f8;
    }

    /** Goes on after one that is worked out to its end, driven by a slope that is larger by this; a given flow goes on as it did. */
    void after(Stretch before, double moreSlope) {
        given = before.given;
        if (given) {
            f0 = before.flow;
            slope = before.slope;
            return;
        }
        inward = before.inward;
        a = before.a;
        b = before.b;
        d = before.d;
        perD = before.perD;
        rate = before.rate;
        drive(before.c + moreSlope, before.flow);
    }

    /** Worked out to its end, its flow has turned there. */
    boolean turned() {
        return !given && (inward ? flow < 0 : flow > 0);
    }

    /** A flow of the other direction: another law by then. */
    boolean neverAt(double target) {
        return !given && (inward ? target < 0 : target > 0);
    }

    boolean isGiven() {
        return given;
    }

    double startFlow() {
        return f0;
    }

    /** How fast a given flow changes, mL/s per s. */
    double slope() {
        return slope;
    }

    /** True where flow falls (or rests) from here. */
    boolean falling() {
        return given ? slope <= 0 : w0 >= 0;
    }

    /** When flow reaches this value, counted from the start of the stretch; infinity for never, or for surely later than {@code within}. */
    double timeTo(double target, double within) {
        if (given) {
            double t = (target - f0) / slope;
            return t >= 0 ? t : Double.POSITIVE_INFINITY;    // NaN too: a constant flow at the target stays there
        }
        if (neverAt(target)) return Double.POSITIVE_INFINITY;
        double w = target - f8;
        if (Math.abs(w0) < TINY || !(w * w0 > 0) || Math.abs(w) >= Math.abs(w0)) return Double.POSITIVE_INFINITY;
        // at the fastest, at the least resistance on the way: spares the logarithm where that is too late already
        double least = Math.min(a + b * f0, a + b * target);
        if (Math.abs(target - f0) * least > within * d * Math.abs(w0)) return Double.POSITIVE_INFINITY;
        return Math.max(0, -(a8 * Exponentials.log(w / w0) + b * (w - w0)) * perD);
    }

    /** Flow at a time after the start. */
    double flowAt(double t) {
        if (given) return f0 + slope * t;
        return f8 + w0 * Decay.of(phase(t));
    }

    /** Volume gained at a time after the start, when the flow then is known. */
    double volumeAt(double t, double flowThen) {
        if (given) return (f0 + 0.5 * slope * t) * t;
        return (c * t - (a + 0.5 * b * (flowThen + f0)) * (flowThen - f0)) * perD;
    }

    /** x with w = w0 e^-x at time t. */
    private double phase(double t) {
        if (b == 0 || t == 0) return rate * t;      // without a tube
        double target = d * t, bw = b * w0, x = target / (a8 + bw);
        if (bw == 0) return x;
        if (a8 > 0) {
            double late = (target - bw) / a8;
            x = bw > 0 ? Math.max(x, late) : Math.min(x, late);
        }
        for (int i = 0; i < ITERATIONS; i++) {
            double e = Decay.of(x), slope = a8 + bw * e, bend = bw * e / slope, step = (a8 * x + bw * (1 - e) - target) / slope;
            // Halley's step where the curve bends little over it: what is left is then of its third power
            if (Math.abs(step * bend) < 1) step /= 1 + 0.5 * step * bend;
            x -= step;
            if (Math.abs(step) <= 1e-15 * (1 + Math.abs(x)) || Math.abs(step * step * step) * (bend * bend + Math.abs(bend)) < 1e-17) return x;
        }
        return x;
    }

    /** Works out flow and integrals over a time from the start of the stretch. */
    void over(double t) {
        passed = t;
        if (given) {
            double t2 = t * t;
            flow = f0 + slope * t;
            volume = (f0 + 0.5 * slope * t) * t;
            square = f0 * f0 * t + f0 * slope * t2 + slope * slope * t2 * t / 3;
            volumeTime = (0.5 * f0 + slope * t / 6) * t2;
            return;
        }
        double w = w0 * Decay.of(phase(t));
        left = w;
        flow = f8 + w;
        volume = volumeAt(t, flow);
        double d1 = w - w0, d2 = d1 * (w + w0);
        square = f8 * f8 * t - (2 * f8 * a8 * d1 + (a8 + 2 * f8 * b) * 0.5 * d2) * perD;
        if (b != 0) square -= b * d1 * (w * w + w * w0 + w0 * w0) * (1 / 3.0) * perD;
        volumeTime = (0.5 * c * t * t - a * (volume - f0 * t) - 0.5 * b * (square - f0 * f0 * t)) * perD;
    }

    /** Integral of F^3 over the same time. */
    double cube() {
        double t = passed;
        if (given) {
            double t2 = t * t;
            return f0 * f0 * f0 * t + 1.5 * f0 * f0 * slope * t2 + f0 * slope * slope * t2 * t + 0.25 * slope * slope * slope * t2 * t2;
        }
        double w = left, d1 = w - w0, d2 = d1 * (w + w0), d3 = d1 * (w * w + w * w0 + w0 * w0), d4 = d2 * (w * w + w0 * w0);
        return f8 * f8 * f8 * t - (3 * f8 * f8 * a8 * d1 + (3 * f8 * a8 + 3 * f8 * f8 * b) * d2 / 2 + (a8 + 3 * f8 * b) * d3 / 3 + b * d4 / 4) * perD;
    }
}
