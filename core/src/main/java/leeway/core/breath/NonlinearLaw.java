package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.run.Column;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * The law of a breath through lungs that are not linear: curved, opening and closing, flow-limited, of two parts, leaking
 * into the pleura. Integrated from switch to switch by {@link DormandPrince} with error control; switches are found on its
 * continuous output. Leaves out inertia, gravity, and gas that dissolves.
 * <p>One step errs by at most {@value #TOLERANCE} of the volume that 10 cmH2O move. Each pass begins afresh from the state, so a
 * branch is the same run whoever computed it before.
 */
final class NonlinearLaw extends Law implements DormandPrince.Field {
    static final double TOLERANCE = 1e-6;
    /** The same for a step of the series. */
    private static final double SERIES_TOLERANCE = 1e-9;
    /** A driving pressure below this counts as none where it changes sign. */
    private static final double NO_DRIVE_CMH2O = 1e-7;
    private static final double ROUNDING_ML_S = 1e-4;
    private static final double LARGEST_LEAD = 0.1;
    private static final double LONGEST_STEP_S = 0.25;
    /** Steps ahead by which a slope at rest is told, s. */
    private static final double A_MOMENT_S = 1e-4;
    /** Gauss–Legendre, nodes from 0 to 1 and weights: three points for a step of the integrator, five for the longer ones of the series. */
    private static final double[] NODES3 = {0.5 - 0.5 * Math.sqrt(0.6), 0.5, 0.5 + 0.5 * Math.sqrt(0.6)}, WEIGHTS3 = {5 / 18.0, 4 / 9.0, 5 / 18.0},
            NODES5 = {0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332},
            WEIGHTS5 = {0.118463442528095, 0.239314335249683, 0.284444444444444, 0.239314335249683, 0.118463442528095};
    private static final int PRESSED = 0, GIVEN = 1, LEAKING = 2, SOFT = 3;
    private static final int FLOW_IS = 0, PRESSURE_IS = 1, VOLUME_IS = 2;

    private final LungState s;
    private final Recruitment recruitment;
    private final FlowLimit limit;
    private final boolean opens;
    private final DormandPrince solver = new DormandPrince(this, 6);
    private final VolumeSeries series;
    /** The one of the two that goes on in this pass. */
    private Steps path = solver;
    private final double[] start = new double[6], now = new double[6], ahead = new double[6], slope = new double[6], alone = new double[1], allowed = new double[6];
    // where in the integrated state: the second volume, the open shares, gas in the pleura, pressure of the circuit; -1: not integrated
    private int size, second, open1, open2, gas, circuit;
    // the drive
    private int drive;
    private boolean inward;
    private double p0, pg, valve, q0, qg, leaks;
    // coefficients: common path, branches
    private double common, k2, r1, r2, out1, out2;
    // of the state last worked out: flows in, airway pressure
    private double flow, flow1, flow2, paw, pleuralFlow;
    private double startFlow, startPaw;
    // flow and airway pressure at the end of each kept step
    private double[] flows = new double[64], pressures = new double[64];
    private boolean simple;

    NonlinearLaw(Tuned tuned, Lungs lungs) {
        super(tuned);
        s = new LungState(tuned, lungs);
        recruitment = lungs.recruitment();
        limit = lungs.limit();
        opens = recruitment.share() > 0;
        series = new VolumeSeries(s, limit);
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
        work(0, start);
        begin();
        startPaw = paw;
        startFlow = drive == PRESSED && flow > 0 != inward && Math.abs(flow) < ROUNDING_ML_S ? 0 : flow;
    }

    private void begin() {
        if (simple && drive == PRESSED) {
            path = series;
            series.begin(start[0], fixedGas, p0 + m0, pg + mg, inward, inward ? common + r1 : common + out1 + valve, k2, r1, SERIES_TOLERANCE * 10 / t.wholeElastance);
            return;
        }
        if (simple && drive == GIVEN) {
            path = series;
            series.beginGiven(start[0], q0, qg);
            return;
        }
        path = solver;
        double quick = 0.1 * (t.k1In + 1e-4) / t.wholeElastance;
        solver.begin(start, circuit >= 0 ? size + 1 : size, Math.max(1e-4, Math.min(0.05, quick)), LONGEST_STEP_S, allowed);
    }

    private double fixedSecond, fixedOpen1, fixedOpen2, fixedGas;

    private void loadState(double[] y) {
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
    private void work(double time, double[] y) {
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

    /** What of a flow goes past the leak into the lung: q + L sqrt(paw(q)) = given, paw rising with q. */
    private double past(double given, double back, double k) {
        double top = back + (k + k2 * Math.abs(given)) * given;
        if (top <= 0) return given;
        double low = given - leaks * Math.sqrt(top), high = given, q = high;
        for (int i = 0; i < 60; i++) {
            double p = back + (k + k2 * Math.abs(q)) * q, root = Math.sqrt(Math.max(0, p)), miss = q + leaks * root - given;
            if (miss > 0) high = q;
            else low = q;
            double next = p > 0 ? q - miss / (1 + leaks * (k + 2 * k2 * Math.abs(q)) / (2 * root)) : 0.5 * (low + high);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.abs(next - q) <= 1e-13 * (1 + Math.abs(q))) return next;
            q = next;
        }
        return q;
    }

    @Override
    public void slopes(double time, double[] y, double[] dy) {
        work(time, y);
        dy[0] = flow1 / s.moving - pleuralFlow;
        if (second >= 0) dy[second] = flow2 / s.moving;
        if (open1 >= 0) dy[open1] = recruitment.rate(y[open1], s.opening1(y[0]));
        if (open2 >= 0) dy[open2] = recruitment.rate(y[open2], s.opening2(y[second]));
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

    // ---- looking ahead ----

    private int reach(double time) {
        while (path.reachedS() < time || path.steps() == 0) advance();
        return path.stepAt(time);
    }

    private void advance() {
        path.step();
        int k = path.steps() - 1;     // the integrator's last look was at the end of the step that it kept
        if (path == series && drive == PRESSED) {
            flow = series.reachedFlow();
            paw = p0 + pg * series.reachedS() - (inward ? 0 : valve * flow);
        } else if (path == series) {
            workAt(k, path.endOf(k));
        }
        if (k == flows.length) {
            flows = java.util.Arrays.copyOf(flows, 2 * k);
            pressures = java.util.Arrays.copyOf(pressures, 2 * k);
        }
        flows[k] = flow;
        pressures[k] = paw;
    }

    private void workAt(int step, double time) {
        if (path == series && drive == PRESSED) {
            now[0] = series.volumeAt(step, time);
            flow = series.flowAt(step, time);
            flow1 = flow;
            flow2 = 0;
            paw = inward ? p0 + pg * time : p0 + pg * time - valve * flow;
            return;
        }
        path.at(step, time, now);
        work(time, now);
    }

    private double value(int what, int step, double time) {
        workAt(step, time);
        return what == FLOW_IS ? flow : what == PRESSURE_IS ? paw : gainedIn(now);
    }

    private double gainedIn(double[] y) {
        double all = y[0] - start[0];
        if (second >= 0) all += y[second] - start[second];
        all *= s.moving;
        return gas >= 0 ? all + s.moving * (y[gas] - start[gas]) : all;
    }

    /** The first time, later than 0 and not later than {@code within}, at which a value has crossed a level; infinity for never. */
    private double crossing(int what, double level, int way, double within) {
        double gap = (what == FLOW_IS ? startFlow : what == PRESSURE_IS ? startPaw : 0) - level;
        for (int k = 0;; k++) {
            if (k >= path.steps()) {
                if (path.reachedS() >= within) return Double.POSITIVE_INFINITY;
                advance();
            }
            double from = path.startOf(k), end = path.endOf(k);
            if (k == 0 && Math.abs(gap) < 1e-12 * (1 + Math.abs(level))) gap = Math.copySign(1e-300, value(what, 0, 0.1 * end) - level);
            double next = (what == FLOW_IS ? flows[k] : what == PRESSURE_IS ? pressures[k] : value(what, k, end)) - level;
            if (gap < 0 ? next >= 0 && way >= 0 : gap > 0 && next <= 0 && way <= 0) {
                double found = search(what, level, k, from, end, gap, next);
                return found <= within ? found : Double.POSITIVE_INFINITY;
            }
            gap = next;
        }
    }

    /** Bracketed search within a step; answers the far side. */
    private double search(int what, double level, int step, double low, double high, double lowGap, double highGap) {
        double a = lowGap, b = highGap;
        for (int i = 0; i < 80 && high - low > 1e-14 * (1 + high); i++) {
            double x = low - a * (high - low) / (b - a), edge = 1e-4 * (high - low);
            if (!(x > low + edge)) x = low + edge;
            if (!(x < high - edge)) x = high - edge;
            if ((i & 3) == 3) x = 0.5 * (low + high);
            double gap = value(what, step, x) - level;
            if (gap < 0 == lowGap < 0 && gap != 0) {
                low = x;
                a = gap;
            } else {
                high = x;
                b = gap;
                if (gap == 0) break;
            }
        }
        return high;
    }

    @Override
    double startFlow() {
        return startFlow;
    }

    @Override
    boolean isGiven() {
        return drive == GIVEN;
    }

    @Override
    boolean falling() {
        if (drive == GIVEN) return qg <= 0;
        reach(0);
        return flows[0] <= startFlow;
    }

    @Override
    double turns(double within) {
        if (drive == GIVEN || falling()) return Double.POSITIVE_INFINITY;
        double last = startFlow;
        for (int k = 0;; k++) {
            if (k >= path.steps()) {
                if (path.reachedS() >= within) return Double.POSITIVE_INFINITY;
                advance();
            }
            if (flows[k] < last) return path.endOf(k);
            last = flows[k];
        }
    }

    @Override
    double timeTo(double level, double within) {
        if (drive == GIVEN) {
            double x = (level - q0) / qg;
            return x >= 0 ? x : Double.POSITIVE_INFINITY;
        }
        if (drive == PRESSED && (inward ? level < 0 : level > 0)) return Double.POSITIVE_INFINITY;       // another law by then
        return crossing(FLOW_IS, level, 0, within);
    }

    @Override
    double timeToPressure(double level, double left) {
        if (t.open) return Double.POSITIVE_INFINITY;
        if (pawGiven) return super.timeToPressure(level, left);
        return startPaw >= level - TINY_CMH2O ? 0 : crossing(PRESSURE_IS, level, 1, left);
    }

    @Override
    double timeToVolume(double wanted, double left) {
        return wanted <= 0 ? 0 : crossing(VOLUME_IS, wanted, 1, left);
    }

    @Override
    boolean inPieces() {
        return false;
    }

    @Override
    double topOfDecelerating() {
        return Double.NaN;
    }

    @Override
    double pressureAt(double dt) {
        return value(PRESSURE_IS, reach(dt), dt);
    }

    @Override
    void sample(double dt, double[] four) {
        workAt(reach(dt), dt);
        four[0] = t.open && !pawGiven ? 0 : paw;
        four[1] = flow;
        four[2] = now[0] + (second >= 0 ? now[second] : fixedSecond);
        four[3] = m0 + mg * dt;
        if (s.w2 == 0 || four.length < WITH_LUNGS) return;
        loadState(now);
        four[4] = now[0];
        four[5] = second >= 0 ? now[second] : fixedSecond;
        four[6] = s.alveoli1 - four[3];
        four[7] = s.alveoli2 - four[3];
    }

    // ---- moving ----

    @Override
    void over(double dt) {
        airwayS = 0;
        alveolarS = 0;
        pleuralS = 0;
        work = 0;
        elastic = 0;
        resistive = 0;
        muscle = 0;
        leakRootS = 0;
        boolean free = t.open && !pawGiven;
        int last = reach(dt);
        startPressure = free ? 0 : startPaw;
        highPressure = startPressure;
        lowPressure = startPressure;
        if (path == series && drive == PRESSED && limit.none() && leaks == 0) closed(last, dt, free);
        else quadrature(last, dt, free);
        workAt(last, dt);
        if (path == series && drive == PRESSED) s.one(now[0], fixedGas);
        endFlow = startFlow * flow < 0 && Math.abs(flow) < ROUNDING_ML_S ? 0 : flow;      // a pass ends at a reversal, not beyond it
        endPressure = free ? 0 : paw;
        highPressure = Math.max(highPressure, endPressure);
        lowPressure = Math.min(lowPressure, endPressure);
        double m1 = m0 + mg * dt;
        endAlveolar = s.meanAlveolar() - m1;
        endPleural = s.meanPleural() - m1;
        gained = gainedIn(now);
        endMuscle = m1;
        muscleS = (m0 + 0.5 * mg * dt) * dt;
        highFlow = Math.max(startFlow, endFlow);
        lowFlow = Math.min(startFlow, endFlow);
    }

    /** One volume under a pressure: what the series knows of volume and flow gives all integrals. */
    private void closed(int last, double dt, boolean free) {
        double volumeS = 0, square = 0;
        for (int k = 0; k <= last; k++) {
            double width = Math.min(dt, path.endOf(k)) - path.startOf(k);
            volumeS += series.volumeS(k, width);
            square += series.squareS(k, width);
            double end = free ? 0 : p0 + pg * (path.startOf(k) + width) - (inward ? 0 : valve * (k < last ? flows[k] : series.flowAt(k, dt)));
            highPressure = Math.max(highPressure, end);
            lowPressure = Math.min(lowPressure, end);
        }
        double end = series.volumeAt(last, dt), dv = (end - start[0]) * s.moving, half = 0.5 * dt * dt;
        double pressS = p0 * dt + pg * half, muscles = m0 * dt + mg * half, timeFlow = s.moving * (dt * end - volumeS);      // integral of t F
        double lost = (inward ? 0 : valve) * square, given = p0 * dv + pg * timeFlow;
        airwayS = free ? 0 : pressS - (inward ? 0 : valve * dv);
        alveolarS = pressS - (inward ? common + r1 : common + out1 + valve) * dv - (inward ? k2 : -k2) * square;
        pleuralS = s.wall() * (volumeS + fixedGas * dt) + t.offset * dt - muscles;
        muscle = m0 * dv + mg * timeFlow;
        work = free ? 0 : given - lost;
        elastic = s.moving * s.energy(start[0], end, fixedGas);
        resistive = given + muscle - elastic - lost;
    }

    private void quadrature(int last, double dt, boolean free) {
        double[] nodes = path == series ? NODES5 : NODES3, weights = path == series ? WEIGHTS5 : WEIGHTS3;
        for (int k = 0; k <= last; k++) {
            double from = path.startOf(k), width = Math.min(dt, path.endOf(k)) - from;
            if (!(width > 0)) continue;
            for (int i = 0; i < nodes.length; i++) sum(k, from + width * nodes[i], width * weights[i], free);
        }
    }

    private void sum(int step, double time, double weight, boolean free) {
        workAt(step, time);
        if (path == series && drive == PRESSED) s.one(now[0], fixedGas);
        double m = m0 + mg * time, alveoli = s.meanAlveolar() - m, airway = free ? 0 : paw;
        airwayS += weight * airway;
        alveolarS += weight * alveoli;
        pleuralS += weight * (s.meanPleural() - m);
        muscle += weight * m * flow;
        if (leaks > 0) leakRootS += weight * Math.sqrt(Math.max(0, airway));
        boolean both = s.w2 > 0 && !s.blocked;
        elastic += weight * (s.alveoli1 * flow1 + (both ? s.alveoli2 * flow2 : 0));
        resistive += weight * lost(airway, m, both);
        if (!pawGiven && !free) work += weight * airway * flow;
        highPressure = Math.max(highPressure, airway);
        lowPressure = Math.min(lowPressure, airway);
    }

    /** What resistance takes at this moment, cmH2O.mL/s: in the common path and, inwards, in each branch by its own law. */
    private double lost(double airway, double m, boolean both) {
        double path = (common + k2 * Math.abs(flow)) * flow, node = airway - path;
        double first = flow1 >= 0 ? r1 * flow1 * flow1 : (node - s.alveoli1 + m) * flow1;
        return path * flow + first + (!both ? 0 : flow2 >= 0 ? r2 * flow2 * flow2 : (node - s.alveoli2 + m) * flow2);
    }

    @Override
    void store(double[] y) {
        y[at + FIRST] = now[0];
        if (second >= 0) y[at + SECOND] = now[second];
        if (open1 >= 0) y[at + FIRST_OPEN] = now[open1];
        if (opens) y[at + SECOND_OPEN] = open2 >= 0 ? now[open2] : s.blocked ? y[at + SECOND_OPEN] : y[at + FIRST_OPEN];
        if (gas >= 0) y[at + PLEURA] = now[gas];
        y[at + VOLUME] = y[at + FIRST] + y[at + SECOND];
    }

    // ---- at rest ----

    @Override
    void rest(double[] y) {
        y[at + FIRST_OPEN] = recruitment.reference();
        y[at + SECOND_OPEN] = recruitment.reference();
        y[at + FIRST] = 0;
        y[at + SECOND] = 0;
        double less = s.volumeAbove(y, at, t.peep);
        y[at + FIRST] = -(s.blocked ? 1 : s.w1) * less;
        y[at + SECOND] = s.blocked ? 0 : -s.w2 * less;
        y[at + VOLUME] = y[at + FIRST] + y[at + SECOND];
    }

    @Override
    double settledMl() {
        return size == 1 ? 1e-4 : 1e-3;
    }

    @Override
    double recoil(double[] y) {
        s.at(y, at);
        return s.meanAlveolar();
    }

    @Override
    double lungRecoil(double[] y) {
        s.at(y, at);
        return s.meanLung();
    }

    @Override
    double trapped(double[] y) {
        s.at(y, at);
        return s.meanAlveolar() <= t.peep ? 0 : Math.max(0, s.volumeAbove(y, at, t.peep) * s.moving);
    }

    @Override
    double shuntAdded(double[] y) {
        return !opens ? 0 : s.w1 * recruitment.shuntAdded(y[at + FIRST_OPEN]) + s.w2 * recruitment.shuntAdded(y[at + SECOND_OPEN]);
    }

    // ---- the row ----

    @Override
    void rowBegins(double[] y) {
        y[at + FIRST_START] = y[at + FIRST];
        y[at + SECOND_START] = y[at + SECOND];
        inflationEnds(y);
    }

    @Override
    void inflationEnds(double[] y) {
        y[at + FIRST_FULL] = y[at + FIRST];
        y[at + SECOND_FULL] = y[at + SECOND];
        if (s.w2 == 0) return;
        s.at(y, at);
        y[at + FIRST_PLATEAU] = s.alveoli1;
        y[at + SECOND_PLATEAU] = s.alveoli2;
    }

    private boolean hastened;
    private int noted;
    private final double[] before = new double[4];

    @Override
    void hasten(boolean now) {
        hastened = now;
    }

    @Override
    boolean volumeIsAll() {
        return size == 1;
    }

    /** What closes slowly is led to where three rows point (Aitken); the breaths after settle it. What opens is followed: led too far, it would stay open. */
    private void lead(double[] y) {
        noted = (noted + 1) % 4;
        for (int i = 0; i < 2; i++) {
            int slot = at + FIRST_OPEN + i;
            double now = y[slot], older = before[i], old = before[2 + i], first = old - older, second = now - old;
            if (noted == 3 && second < -1e-9 && first < 0 && second / first < 0.999) {
                double jump = second * second / (first - second);
                y[slot] = Math.max(0, now + Math.max(-LARGEST_LEAD, jump));
            }
            before[i] = old;
            before[2 + i] = now;
        }
    }

    @Override
    void row(Now n) {
        double[] y = n.y;
        if (hastened && opens) lead(y);
        if (opens) {
            n.set(Column.OPEN_SHARE, s.w1 * y[at + FIRST_OPEN] + s.w2 * y[at + SECOND_OPEN]);
            n.set(Column.SHUNT_ADDED, shuntAdded(y));
        }
        if (s.w2 > 0) {
            n.set(Column.FIRST_TIDAL_ML, y[at + FIRST_FULL] - y[at + FIRST_START]);
            n.set(Column.SECOND_TIDAL_ML, y[at + SECOND_FULL] - y[at + SECOND_START]);
            n.set(Column.FIRST_END_ML, y[at + FIRST]);
            n.set(Column.SECOND_END_ML, y[at + SECOND]);
            n.set(Column.FIRST_PLATEAU_CMH2O, y[at + FIRST_PLATEAU]);
            n.set(Column.SECOND_PLATEAU_CMH2O, y[at + SECOND_PLATEAU]);
            s.at(y, at);
            n.set(Column.FIRST_PEEP_CMH2O, s.alveoli1);
            n.set(Column.SECOND_PEEP_CMH2O, s.alveoli2);
        }
        if (t.pleuralLeak > 0 || y[at + PLEURA] > 0) n.set(Column.PLEURAL_GAS_ML, y[at + PLEURA]);
    }
}
