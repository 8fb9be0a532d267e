package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Lungs;
import leeway.core.run.Now;

/**
 * The law of a breath through lungs that are not linear: curved, opening and closing, flow-limited, of two parts, leaking
 * into the pleura. One volume under a given pressure or flow is followed by {@link VolumeSeries}, all else is integrated from
 * switch to switch by {@link DormandPrince} with error control; switches are found on what either keeps of its way. Leaves out
 * inertia, gravity, and gas that dissolves.
 * <p>Each pass begins afresh from the state, so a branch is the same run whoever computed it before.
 */
final class NonlinearLaw extends LungFlows {
    /** A step of the series errs by about this share of the volume that 10 cmH2O move. */
    private static final double SERIES_TOLERANCE = 1e-9;
    private static final double ROUNDING_ML_S = 1e-4;
    private static final double LONGEST_STEP_S = 0.25;
    /** Gauss–Legendre, nodes from 0 to 1 and weights: three points for a step of the integrator, five for the longer ones of the series. */
    private static final double[] NODES3 = {0.5 - 0.5 * Math.sqrt(0.6), 0.5, 0.5 + 0.5 * Math.sqrt(0.6)}, WEIGHTS3 = {5 / 18.0, 4 / 9.0, 5 / 18.0},
            NODES5 = {0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332},
            WEIGHTS5 = {0.118463442528095, 0.239314335249683, 0.284444444444444, 0.239314335249683, 0.118463442528095};
    private static final int FLOW_IS = 0, PRESSURE_IS = 1, VOLUME_IS = 2;

    private final DormandPrince solver = new DormandPrince(this, 6);
    private final VolumeSeries series;
    private final LungRow row;
    /** The one of the two that goes on in this pass. */
    private Steps path = solver;
    private final double[] now = new double[6];
    private double startFlow, startPaw;
    // flow and airway pressure at the end of each kept step
    private double[] flows = new double[64], pressures = new double[64];

    NonlinearLaw(Tuned tuned, Lungs lungs) {
        super(tuned, lungs);
        series = new VolumeSeries(s, limit);
        row = new LungRow(s, recruitment);
    }

    @Override
    void prepare(Now n) {
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
        root.begin(low, high, lowGap, highGap);
        for (int i = 0; i < 80 && root.wide(1e-14); i++) if (root.took(value(what, step, root.next()) - level)) break;
        return root.high;
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
        return row.shuntAdded(y, at);
    }

    // ---- the row ----

    @Override
    void rowBegins(double[] y) {
        row.begins(y, at);
    }

    @Override
    void inflationEnds(double[] y) {
        row.inflationEnds(y, at);
    }

    @Override
    void hasten(boolean now) {
        row.hastened = now;
    }

    @Override
    boolean volumeIsAll() {
        return size == 1;
    }

    @Override
    void row(Now n) {
        row.write(n, at, t.pleuralLeak > 0);
    }
}
