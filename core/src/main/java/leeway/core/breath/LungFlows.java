package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * What drives lungs that are not linear, and which flows follow from it: the common path of tube and filter, one or two branches
 * behind it, what a limit lets out, what goes past a leak. The right-hand side of what {@link NonlinearLaw} follows.
 */
abstract class LungFlows extends Law implements DormandPrince.Field {
    /** One step of the integrator errs by at most this share of the volume that 10 cmH2O move. */
    static final double TOLERANCE = 1e-6;
    /** A driving pressure below this counts as none where it changes sign. */
    private static final double NO_DRIVE_CMH2O = 1e-7;
    /** Steps ahead by which a slope at rest is told, s. */
    private static final double A_MOMENT_S = 1e-4;
    static final int PRESSED = 0, GIVEN = 1, LEAKING = 2, SOFT = 3;

    final LungState s;
    final Recruitment recruitment;
    final FlowLimit limit;
    final boolean opens;
    private final OpeningRate rate1, rate2;
    final double[] start = new double[6], allowed = new double[6];
    private final double[] ahead = new double[6], slope = new double[6], alone = new double[1];
    // where in the integrated state: the second volume, the open shares, gas in the pleura, pressure of the circuit; -1: not integrated
    int size, second, open1, open2, gas, circuit;
    double fixedSecond, fixedOpen1, fixedOpen2, fixedGas;
    // the drive
    int drive;
    boolean inward;
    double p0, pg, valve, q0, qg, leaks;
    // coefficients: common path, branches
    double common, k2, r1, r2, out1, out2;
    // of the state last worked out: flows in, airway pressure
    double flow, flow1, flow2, paw;
    private double pleuralFlow;
    /** One volume and nothing else. */
    boolean simple;

    LungFlows(Tuned tuned, Lungs lungs) {
        super(tuned);
        s = new LungState(tuned, lungs);
        recruitment = lungs.recruitment();
        limit = lungs.limit();
        opens = recruitment.share() > 0;
        rate1 = new OpeningRate(recruitment);
        rate2 = new OpeningRate(recruitment);
    }

    @Override
    void retuned() {
        s.retuned();
        common = Math.max(0, t.k1In - t.airways);
        k2 = t.k2;
        // t.airways stands for the reached share; of two lungs apart each has its own
        double whole = Math.max(1e-6, t.airways) * (s.lungs.apart() ? t.share : 1), times = s.lungs.secondTimes();
        r1 = whole * (s.w1 + s.w2 / times) / s.w1;
        r2 = s.w2 > 0 ? r1 * s.w1 * times / s.w2 : r1;
        double extra = t.airways > 0 ? (t.k1Out - t.k1In) / t.airways : 0;
        out1 = r1 * (1 + extra);
        out2 = r2 * (1 + extra);
        leaks = t.allLeaks();
        double scale = TOLERANCE * 10 / t.wholeElastance;
        int n = 1;
        second = s.w2 > 0 ? n++ : -1;
        open1 = opens ? n++ : -1;
        open2 = opens && s.w2 > 0 && !s.blocked ? n++ : -1;
        gas = t.pleuralLeak > 0 ? n++ : -1;
        size = n;
        simple = n == 1 && s.w2 == 0;
        for (int i = 0; i < n; i++) allowed[i] = i == open1 || i == open2 ? TOLERANCE : scale;
    }

    // ---- what drives ----

    @Override
    void prepare(Now n) {
        double[] y = n.y;
        start[0] = size == 1 ? y[at + VOLUME] : y[at + FIRST];      // of one volume and nothing else, whoever seeks the steady state may move it
        if (second >= 0) start[second] = y[at + SECOND];
        if (open1 >= 0) start[open1] = y[at + FIRST_OPEN];
        if (open2 >= 0) start[open2] = y[at + SECOND_OPEN];
        if (gas >= 0) start[gas] = y[at + PLEURA];
        fixedSecond = y[at + SECOND];
        fixedOpen1 = y[at + FIRST_OPEN];
        fixedOpen2 = y[at + SECOND_OPEN];
        fixedGas = y[at + PLEURA];
        circuit = -1;
        v = y[at + VOLUME];
        loadState(start);
        super.prepare(n);
    }

    void loadState(double[] y) {
        s.at(y[0], second >= 0 ? y[second] : fixedSecond, open1 >= 0 ? y[open1] : fixedOpen1, open2 >= 0 ? y[open2] : fixedOpen2, gas >= 0 ? y[gas] : fixedGas);
    }

    @Override
    boolean passesBends() {
        return false;
    }

    @Override
    double alveolar() {
        return s.meanAlveolar() - m0;
    }

    @Override
    void still() {
        drive = GIVEN;
        q0 = 0;
        qg = 0;
    }

    @Override
    void pressure(double p, double g, double valveResistance, boolean in, boolean out) {
        p0 = p;
        pg = g;
        valve = valveResistance;
        loadState(start);
        double d = p - atRest(m0);
        boolean turns = Math.abs(d) <= NO_DRIVE_CMH2O + 8 * lastDigitS * Math.abs(g + mg);
        if (turns) {
            still();
            slopes(0, start, slope);
            double before = atRestOf(start);
            for (int i = 0; i < size; i++) ahead[i] = start[i] + A_MOMENT_S * slope[i];
            d = g + mg - (atRestOf(ahead) - before) / A_MOMENT_S;
        }
        if (d > 0 && in || d < 0 && out) {
            drive = PRESSED;
            inward = d > 0;
        } else {
            still();
        }
    }

    private double atRestOf(double[] y) {
        loadState(y);
        return atRest(m0);
    }

    @Override
    void pushed(Now n, double q, double g) {
        q0 = q;
        qg = g;
        if (!t.compensated && t.give > 0) {
            drive = SOFT;
            circuit = size;
            start[size] = n.level[Level.PAW_CMH2O.ordinal()];
            allowed[size] = 10 * TOLERANCE;
        } else {
            drive = leaks > 0 ? LEAKING : GIVEN;
        }
    }

    @Override
    void leaking(double q) {
        q0 = q;
        qg = 0;
        drive = LEAKING;
    }

    // ---- the equations ----

    /** Alveolar pressure as the common path sees it without flow: gas may still move from one lung to the other. */
    private double atRest(double muscles) {
        if (s.w2 == 0 || s.blocked) return s.alveoli1 - muscles;
        double a = s.alveoli1, b = s.alveoli2, g1 = 1 / (a > b ? out1 : r1), g2 = 1 / (b > a ? out2 : r2);
        return (g1 * a + g2 * b) / (g1 + g2) - muscles;
    }

    /** Works out flows and airway pressure of a state. */
    void work(double time, double[] y) {
        if (simple && drive == PRESSED) {
            pressed(time, y[0]);
            return;
        }
        loadState(y);
        double m = m0 + mg * time, a1 = s.alveoli1 - m, a2 = s.alveoli2 - m;
        double most1 = limit.none() ? Double.POSITIVE_INFINITY : limit.mostMlPerS(s.lung1, r1);
        pleuralFlow = gas >= 0 && s.lung1 > 0 ? t.pleuralLeak * Math.sqrt(s.lung1) : 0;
        boolean both = s.w2 > 0 && !s.blocked;
        if (!both) {
            one(time, y, a1, most1);
            return;
        }
        double most2 = limit.none() ? Double.POSITIVE_INFINITY : limit.mostMlPerS(s.lung2, r2);
        boolean leaves1 = drive == PRESSED && !inward || drive == LEAKING && q0 == 0, leaves2 = leaves1, limited1 = false, limited2 = false;
        for (int round = 0; round < 6; round++) {
            double g1 = limited1 ? 0 : 1 / (leaves1 ? out1 : r1), g2 = limited2 ? 0 : 1 / (leaves2 ? out2 : r2), g = g1 + g2;
            double given = (limited1 ? most1 : 0) + (limited2 ? most2 : 0);
            double node;
            if (g > 0) {
                double back = (g1 * a1 + g2 * a2 + given) / g;
                total(time, y, back, 1 / g);
                node = back + flow / g;
            } else {
                flow = -given;
                // all of it limited: the airway pressure is the drive's, or what lies behind the common path
                behindAll(time, y);
                node = Double.NEGATIVE_INFINITY;
            }
            flow1 = limited1 ? -most1 : g1 * (node - a1);
            flow2 = limited2 ? -most2 : g2 * (node - a2);
            boolean l1 = node < a1, l2 = node < a2;
            boolean m1 = l1 && (limited1 ? (a1 - node) / out1 >= most1 : -flow1 > most1), m2 = l2 && (limited2 ? (a2 - node) / out2 >= most2 : -flow2 > most2);
            if (l1 == leaves1 && l2 == leaves2 && m1 == limited1 && m2 == limited2) break;
            leaves1 = l1;
            leaves2 = l2;
            limited1 = m1;
            limited2 = m2;
        }
        atTheY(time);
    }

    /** One volume under a given pressure: what most of the time is. */
    private void pressed(double time, double volume) {
        s.one(volume, fixedGas);
        double d = p0 + pg * time - s.alveoli1 + m0 + mg * time, k = inward ? common + r1 : common + out1 + valve;
        double under = inward ? k * k + 4 * k2 * d : k * k - 4 * k2 * d;
        flow = under > 0 ? 2 * d / (k + Math.sqrt(under)) : 2 * d / k;
        if (flow < 0 && !limit.none()) flow = Math.max(flow, -limit.mostMlPerS(s.lung1, r1));
        flow1 = flow;
        paw = inward ? p0 + pg * time : p0 + pg * time - valve * flow;
    }

    private void atTheY(double time) {
        if (drive == GIVEN && pawGiven) paw = pawA + pawG * time;
        if (drive == PRESSED && !inward) paw -= valve * flow;       // the Y-piece lies before the valve
    }

    /** Airway pressure where the flow is limited in all of the lung. */
    private void behindAll(double time, double[] y) {
        if (drive == PRESSED) paw = p0 + pg * time;
        else if (drive == SOFT) paw = y[circuit];
        else paw = leaks > 0 ? square((q0 + qg * time - flow) / leaks) : 0;
    }

    /** One lung behind the common path. */
    private void one(double time, double[] y, double alveoli, double most) {
        boolean leaves = drive == PRESSED ? !inward : drive == SOFT ? y[circuit] < alveoli : drive == LEAKING && q0 == 0;
        total(time, y, alveoli, leaves ? out1 : r1);
        if (drive != PRESSED && flow < 0 != leaves && flow != 0) total(time, y, alveoli, flow < 0 ? out1 : r1);
        if (flow < -most) {
            flow = -most;
            behindAll(time, y);
        }
        flow1 = flow;
        flow2 = 0;
        atTheY(time);
    }

    private static double square(double x) {
        return x * x;
    }

    /** Flow through the common path and airway pressure, where the lungs stand behind one pressure and one resistance. */
    private void total(double time, double[] y, double back, double behind) {
        double q = q0 + qg * time;
        switch (drive) {
            case PRESSED -> {
                paw = p0 + pg * time;
                double d = paw - back, k = behind + common + (inward ? 0 : valve);
                double under = inward ? k * k + 4 * k2 * d : k * k - 4 * k2 * d;
                flow = 2 * d / (k + Math.sqrt(Math.max(0, under)));
            }
            case SOFT -> {
                paw = y[circuit];
                double d = paw - back, k = behind + common;
                flow = 2 * d / (k + Math.sqrt(k * k + 4 * k2 * Math.abs(d)));
            }
            case LEAKING -> {
                flow = past(q, back, behind + common);
                paw = back + (behind + common + k2 * Math.abs(flow)) * flow;
            }
            default -> {
                flow = q;
                paw = back + (behind + common + k2 * Math.abs(flow)) * flow;
            }
        }
    }

    /**
     * What of a flow goes past the leak into the lung: q + L sqrt(paw(q)) = given, paw = back + (k + k2 |q|) q rising with q.
     * Squared it is a quadratic on either side of q = 0; the side is that of given^2 - L^2 back, the root the one nearer to 0.
     */
    private double past(double given, double back, double k) {
        if (back + (k + k2 * Math.abs(given)) * given <= 0) return given;
        double l2 = leaks * leaks, c = given * given - l2 * back, a = c >= 0 ? 1 - l2 * k2 : 1 + l2 * k2, b = 2 * given + l2 * k;
        return 2 * c / (b + Math.sqrt(Math.max(0, b * b - 4 * a * c)));
    }

    @Override
    public void slopes(double time, double[] y, double[] dy) {
        work(time, y);
        dy[0] = flow1 / s.moving - pleuralFlow;
        if (second >= 0) dy[second] = flow2 / s.moving;
        if (open1 >= 0) dy[open1] = rate1.at(y[open1], s.opening1(y[0]));
        if (open2 >= 0) dy[open2] = rate2.at(y[open2], s.opening2(y[second]));
        if (gas >= 0) dy[gas] = pleuralFlow;
        if (circuit >= 0) dy[circuit] = (q0 + qg * time - flow - leaks * Math.sqrt(Math.max(0, y[circuit]))) / t.give;
    }

    @Override
    public double slope(double time, double y) {
        if (simple && drive == PRESSED) {
            pressed(time, y);
            return flow / s.moving;
        }
        alone[0] = y;
        slopes(time, alone, slope);
        return slope[0];
    }
}
