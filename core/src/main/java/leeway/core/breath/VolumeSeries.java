package leeway.core.breath;

import java.util.Arrays;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Sigmoid;

/**
 * Volume and flow of one compartment with a curve of its own, under a pressure that goes straight or a flow that is given: each
 * step is the power series of the motion about its start.
 * <p>The equations k F + k2 F |F| = p + g t - lung(V) - wall V and V' = F are differentiated term by term: products become sums
 * over the terms that are known (Moore, Interval Analysis, 1966, ch. 11; from memory). The logarithm of the curve has x' u (1 - u)
 * = u'. The step ends where the last terms say that what is left out reaches the error allowed (Jorba and Zou, Exp Math
 * 2005;14:99), and at every kink: where the curve goes straight, where a limit of flow sets in or ends, where flow is largest or
 * least. So between the ends of a step flow is monotone. What lies behind a turn of the flow is another law's and only finite.
 * <p>mL, s, mL/s, cmH2O.
 */
final class VolumeSeries extends Steps {
    private static final int ORDER = MotionTerms.ORDER, TERMS = ORDER + 1;
    private static final double LONGEST_S = 4, GIVEN_S = 0.25, LEAST_S = 1e-11;
    /** A share of the curve so near its kink that the direction tells on which side it goes on. */
    private static final double AT_KINK = 1e-9;
    /** A flow under this has no direction, and one that changes by less does not turn, mL/s. */
    private static final double NO_FLOW_ML_S = 1e-7;
    private static final int VOLUME = 0, BEND = 1, LIMIT = 2;
    private static final double[] PER = new double[TERMS + 1], TIMES = new double[TERMS + 1];

    static {
        for (int i = 1; i <= TERMS; i++) {
            PER[i] = 1.0 / i;
            TIMES[i] = i;
        }
    }

    private final LungState s;
    private final FlowLimit flowLimit;
    private final Illinois root = new Illinois();
    /** Terms of the volume and of the flow's square about the start of each step. */
    private double[] terms = new double[16 * TERMS], squares = new double[16 * TERMS];
    private boolean given, inward, limited;
    private double p, g, k, k2, airways, gas, unit, perUnit, perMoving, logAllowed, givenSlope;
    /** Where it stands: volume, flow, the flow that the pressure alone would drive, the most that gets out. */
    private double v, flow, free, most;
    private int base;
    private double aim;

    VolumeSeries(LungState state, FlowLimit limit) {
        s = state;
        flowLimit = limit;
    }

    /**
     * Begins at time 0 under a pressure with the muscles', p + g t.
     *
     * @param airways resistance that a limit of flow counts in
     * @param allowed error of a step, mL
     */
    void begin(double volume, double gasMl, double p, double g, boolean inward, double k, double k2, double airways, double allowed) {
        beginSteps();
        given = false;
        v = volume;
        gas = gasMl;
        this.p = p;
        this.g = g;
        this.inward = inward;
        this.k = k;
        this.k2 = inward ? k2 : -k2;
        this.airways = airways;
        unit = s.perVolume();
        perUnit = 1 / unit;
        perMoving = 1 / s.moving;
        logAllowed = log2(allowed * unit);
        look(0, v);
        limited = free < -most;
        flow = limited ? -most : free;
    }

    /** Begins at time 0 under a flow that is given, linear in time. */
    void beginGiven(double volume, double startFlow, double slope) {
        beginSteps();
        given = true;
        v = volume;
        flow = startFlow;
        givenSlope = slope;
        unit = 1;
        perUnit = 1;
        perMoving = 1 / s.moving;
    }

    /** Flow at the end of the last step. */
    double reachedFlow() {
        return flow;
    }

    /** Works out what a state would do: free flow, and the most that gets out. */
    private void look(double time, double volume) {
        s.one(volume, gas);
        double d = p + g * time - s.alveoli1;
        if (d > 0 == inward) {
            double root = Math.sqrt(k * k + 4 * k2 * d);
            free = 2 * d / (k + root);
        } else {
            free = d / k;       // behind the turn
        }
        most = inward || flowLimit.none() ? Double.POSITIVE_INFINITY : flowLimit.mostMlPerS(s.lung1, airways);
    }

    @Override
    void step() {
        base = steps() * TERMS;
        if (base + TERMS > terms.length) {
            terms = Arrays.copyOf(terms, 2 * terms.length);
            squares = Arrays.copyOf(squares, 2 * squares.length);
        }
        if (given) {
            Arrays.fill(terms, base, base + TERMS, 0);
            terms[base] = v;
            terms[base + 1] = flow * perMoving;
            terms[base + 2] = 0.5 * givenSlope * perMoving;
            v = value(VOLUME, GIVEN_S);
            flow += givenSlope * GIVEN_S;
            stepped(GIVEN_S);
            return;
        }
        double share = s.curved ? s.share(v) : 0, direct = share + (flow > 0 ? AT_KINK : -AT_KINK);
        boolean bent = s.curved && Sigmoid.bends(direct);
        expand(bent, share);
        double h = length(), end = value(VOLUME, h), bend = value(BEND, h);
        if (terms[base + 2] * bend < 0 && Math.abs(bend) * h > NO_FLOW_ML_S) {
            h = root(BEND, h);
            end = value(VOLUME, h);
        }
        if (s.curved) {
            double then = s.share(end);
            if (bent ? !Sigmoid.bends(then) : flow > 0 ? direct < 0.5 && Sigmoid.bends(then) : direct > 0.5 && Sigmoid.bends(then)) {
                aim = s.volumeOf(Sigmoid.kink(bent ? then > 0.5 : direct > 0.5));
                h = root(VOLUME, h);
                end = value(VOLUME, h);
            }
        }
        if (h < LEAST_S) {
            h = LEAST_S;
            end = value(VOLUME, h);
        }
        look(t + h, end);
        boolean then = free < -most;
        if (then != limited) {
            h = Math.max(LEAST_S, root(LIMIT, h));
            end = value(VOLUME, h);
            look(t + h, end);
            limited = then;
        }
        v = end;
        flow = limited ? -most : free;
        stepped(h);
    }

    /**
     * The terms of the volume about where it stands, of n = 0, 1, ...: V, and F of the order before over n. All volumes are counted
     * in {@link #unit}, in which the curve's share is V and a constant, so that little stands between one term and the next.
     */
    private void expand(boolean bent, double share) {
        boolean turned = inward ? flow < -NO_FLOW_ML_S : flow > NO_FLOW_ML_S;
        double bow = turned ? 0 : k2, perF = 1 / (k + 2 * bow * flow), scaled = unit * perMoving, perA = bent ? 1 / (share * (1 - share)) : 0, odd = (1 - 2 * share) * perA;
        double perRecoil = scaled * (limited ? most > 0 ? flowLimit.perRecoil(airways) : 0 : perF);
        double ofLung = perRecoil * (bent ? s.width() * perA : s.stiffness() / unit), ofWall = limited ? 0 : perMoving * perF * s.wall(), ofSquare = limited ? 0 : bow * perF / scaled;
        MotionTerms.write(terms, squares, base, v * unit, flow * scaled, limited ? 0 : g * scaled * perF, ofLung, ofWall, ofSquare, odd, perA);
    }

    /** How far the series may be trusted: where either of its last terms reaches the error allowed. */
    private double length() {
        double last = (logAllowed - log2(terms[base + ORDER])) * PER[ORDER], before = (logAllowed - log2(terms[base + ORDER - 1])) * PER[ORDER - 1], log = Math.min(last, before);
        return log > 2 ? LONGEST_S : power2(log);
    }

    /** Of a size, to 0.09: straight between the powers of 2, which is enough for the length of a step. */
    private static double log2(double x) {
        return (Double.doubleToRawLongBits(x) & Long.MAX_VALUE) * 0x1p-52 - 1023;
    }

    /** The same the other way, from -1022 to 1023. */
    private static double power2(double log) {
        return Double.longBitsToDouble((long) ((Math.max(-1000, log) + 1023) * 0x1p52));
    }

    private double value(int what, double h) {
        if (what == BEND) {
            double sum = 0;
            for (int n = ORDER; n >= 2; n--) sum = sum * h + TIMES[n] * TIMES[n - 1] * terms[base + n];
            return sum * perUnit * s.moving;
        }
        double sum = 0;
        for (int n = ORDER; n >= 0; n--) sum = sum * h + terms[base + n];
        sum *= perUnit;
        if (what == VOLUME) return sum;
        look(t + h, sum);
        return free + most;
    }

    /** Where the running step's value is what is aimed at, its two ends lying on either side. */
    private double root(int what, double h) {
        double to = what == VOLUME ? aim : 0, below = value(what, 0) - to, above = value(what, h) - to;
        if (what == LIMIT && below < 0 == above < 0) return LEAST_S;       // it changed at the very start
        root.begin(0, h, below, above);
        for (int i = 0; i < 60 && root.wide(1e-15); i++) if (root.took(value(what, root.next()) - to)) break;
        return root.high;
    }

    @Override
    void at(int step, double time, double[] into) {
        into[0] = volumeAt(step, time);
    }

    double volumeAt(int step, double time) {
        double h = time - startOf(step), sum = 0;
        int o = step * TERMS;
        for (int n = ORDER; n >= 0; n--) sum = sum * h + terms[o + n];
        return sum * perUnit;
    }

    /** Integral of the volume over a time from the start of a step, mL.s. */
    double volumeS(int step, double h) {
        return perUnit * integral(terms, step * TERMS, h);
    }

    /** Integral of the flow's square over a time from the start of a step, not under a flow that is given. */
    double squareS(int step, double h) {
        double perFlow = perUnit * s.moving;
        return perFlow * perFlow * integral(squares, step * TERMS, h);
    }

    private static double integral(double[] of, int o, double h) {
        double sum = 0;
        for (int n = ORDER; n >= 0; n--) sum = sum * h + of[o + n] * PER[n + 1];
        return sum * h;
    }

    double flowAt(int step, double time) {
        double h = time - startOf(step), sum = 0;
        int o = step * TERMS;
        for (int n = ORDER; n >= 1; n--) sum = sum * h + TIMES[n] * terms[o + n];
        return sum * perUnit * s.moving;
    }
}
