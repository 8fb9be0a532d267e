package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.kit.Mode;
import leeway.core.lung.Effort;
import leeway.core.run.Column;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * The ventilator's decisions: which inflation, when it ends, what the next row says. Knows no physics of flow.
 */
final class Ventilator {
    private static final double J_PER_CMH2O_ML = 98.0665e-6;
    /** Share of the period before a mandatory breath is due in which a trigger starts it; common practice, no source. */
    private static final double WINDOW = 0.3;
    /** A volume below this share of what was set counts as not reached, volume control and target; common practice, no source. */
    private static final double SHORT_OF_SET = 0.95, SHORT_OF_TARGET = 0.9;
    private static final double LEAST_LUNG_ML = 1;
    /** A sigh is held this long: 3 s once a minute at 30 cmH2O (protocol of a trial; Mauri, Trials 2018;19, article s13063-018-2828-8). */
    static final double SIGH_S = 3;
    /** Two inflations with less than this share of a mean inspiratory time between them count as one effort doubled; Thille 2006. */
    private static final double SHORT_EXPIRATION = 0.5;
    /** Share that the newest breath has in the mean inspiratory time. Common practice, no source. */
    private static final double NEWEST = 0.125;
    private static final int NO_ANSWER = 0, BEGAN_IN_INFLATION = 1, ANSWER_GIVEN = 2;

    private final Tuned t;
    private final Law law;
    private final Muscles muscles;
    private final Triggering triggering;
    int at;

    Ventilator(Tuned tuned, Law law, Muscles muscles, Triggering triggering) {
        t = tuned;
        this.law = law;
        this.muscles = muscles;
        this.triggering = triggering;
    }

    private static final Mode.Inflation[] KINDS = Mode.Inflation.values();

    Mode.Inflation kind(double[] y) {
        return KINDS[(int) y[at + KIND]];
    }

    void hit(Now n, int what) {
        double[] y = n.y;
        switch (what) {
            case Breath.PHASE_ENDS -> phaseEnds(n);
            case Breath.LIMIT_MET -> {
                y[at + LIMITED] = 1;
                enter(n, LIMIT);
            }
            case Breath.VOLUME_MET -> enter(n, PAUSE);
            case Breath.FLOW_MET -> enter(n, FULL);
            case Breath.AIM_MET -> enter(n, HOLD);
            case Breath.CYCLE -> inflationEnds(n);
            case Breath.TRIGGER -> triggering.take(n);
            case Breath.PULSE -> {
                if (triggering.pulsed(n)) triggering.take(n);
            }
            case Breath.ANSWER -> answer(n);
            case Breath.DUE_NOW -> mandatory(n, 0);
            case Breath.BACKUP_NOW -> {
                y[at + BACKUP] = 1;
                inflate(n, t.mode.mandatory() == Mode.Inflation.NONE ? Mode.Inflation.PRESSURE : t.mode.mandatory(), 3);
            }
            case Breath.EFFORT_BEGINS -> effortBegins(n, Muscles.BREATH);
            case Breath.COUGH_BEGINS -> effortBegins(n, Muscles.COUGH);
            case Breath.HICCUP_BEGINS -> effortBegins(n, Muscles.HICCUP);
            case Breath.EFFORT_KNOT -> knot(n);
            case Breath.FALSE_NOW -> {
                y[at + FALSE_NEXT] = n.tS + t.falsePeriod;
                if (t.ventilating && t.mode.triggered() && y[at + PHASE] == EXHALE && !t.open) start(n, 2);
            }
            case Breath.IDLE -> {
                closeRow(n);
                openRow(n, 0, 0);
            }
            default -> { }      // reversal, piece: the next stretch has another law
        }
    }

    private void phaseEnds(Now n) {
        double[] y = n.y;
        int phase = (int) y[at + PHASE];
        if (phase == RISE && n.tS < y[at + BREATH_AT] + lasts(y) - 1e-9) enter(n, HOLD);
        else if (phase == FLOW && t.flowTime < t.inspiratory) enter(n, PAUSE);
        else inflationEnds(n);
    }

    /** How long the running inflation lasts at the most. */
    double lasts(double[] y) {
        if (y[at + SIGHING] > 0) return SIGH_S;
        Mode.Inflation kind = kind(y);
        return kind == Mode.Inflation.SUPPORT || kind == Mode.Inflation.UNAIDED ? t.longestSupport : t.inspiratory;
    }

    private void enter(Now n, int phase) {
        n.y[at + PHASE] = phase;
        n.y[at + PHASE_AT] = n.tS;
        n.level[Level.PHASE.ordinal()] = phase == EXHALE ? 0 : phase == PAUSE ? 2 : 1;
    }

    private void inflationEnds(Now n) {
        double[] y = n.y;
        y[at + PLATEAU] = law.recoil(y);
        y[at + TRANSPULMONARY] = law.lungRecoil(y);
        y[at + INSPIRED_FOR] = n.tS - y[at + BREATH_AT];
        cycled(y);
        law.inflationEnds(y);
        Mode.Inflation kind = kind(y);
        double got = y[at + IN];
        if (kind == Mode.Inflation.VOLUME && got < SHORT_OF_SET * t.volumeSet) y[at + SHORT] = 1;
        if (kind == Mode.Inflation.TARGETED) {
            if (got < SHORT_OF_TARGET * t.volumeSet) y[at + SHORT] = 1;
            // Newton on the breath: volume per pressure above where the lung stood; stable with trapped gas, which a plain ratio is not
            double now = y[at + TARGET], drive = y[at + AIM] - y[at + START_PEEP];
            double wanted = got > 0 && drive > 0 ? now + (t.volumeSet - got) * drive / got : now + t.targetStep;
            double next = Math.max(now - t.targetStep, Math.min(now + t.targetStep, wanted));
            y[at + TARGET] = Math.max(0, Math.min(next, t.limit - t.peep));
        }
        enter(n, EXHALE);
    }

    /** Judges the end of an inflation that the patient started against the effort. */
    private void cycled(double[] y) {
        double lasted = y[at + INSPIRED_FOR], mean = y[at + MEAN_INSPIRED_FOR];
        if (y[at + SIGHING] > 0) return;
        y[at + MEAN_INSPIRED_FOR] = mean > 0 ? mean + NEWEST * (lasted - mean) : lasted;
        if (y[at + STARTED_BY] != 1) return;
        boolean acts = y[at + KNOT] >= 0 && y[at + ANSWERED] == ANSWER_GIVEN && y[at + EFFORT_KIND] == Muscles.BREATH;
        if (acts && y[at + KNOT] < Effort.peak()) flag(y, Asynchrony.EARLY);
        if (!acts && y[at + KNOT] < 0) flag(y, Asynchrony.LATE);
    }

    private void flag(double[] y, Asynchrony what) {
        y[at + FLAGS] = (int) y[at + FLAGS] | what.bit();
    }

    // ---- starting ----

    private void answer(Now n) {
        n.y[at + PENDING] = Double.POSITIVE_INFINITY;
        if (n.y[at + PHASE] != EXHALE || !t.ventilating || t.open) return;
        start(n, Double.isNaN(n.y[at + DUE_DELAY]) ? 2 : 1);      // gas that flows in without an effort triggers too
    }

    private void start(Now n, int by) {
        double[] y = n.y;
        y[at + BACKUP] = 0;
        if ((t.mode.sequence() == Mode.Sequence.INTERMITTENT_MANDATORY && t.mode.supported()) && n.tS >= y[at + DUE] - WINDOW * t.period || t.mode.between() == t.mode.mandatory()) mandatory(n, by);
        else inflate(n, t.mode.between(), by);
        if (y[at + KNOT] >= 0 && by == 1) y[at + ANSWERED] = ANSWER_GIVEN;
    }

    private void mandatory(Now n, int by) {
        double[] y = n.y;
        if ((t.mode.sequence() == Mode.Sequence.INTERMITTENT_MANDATORY && t.mode.supported()) && by > 0) y[at + DUE] += t.period;
        else y[at + DUE] = n.tS + t.period;
        inflate(n, t.mode.mandatory(), by);
    }

    private void inflate(Now n, Mode.Inflation kind, int by) {
        double[] y = n.y;
        boolean again = by == 1 && y[at + ANSWERED] == ANSWER_GIVEN;
        boolean soon = y[at + STARTED_BY] == 1 && y[at + ROW_KIND] > 0 && n.tS - y[at + ROW_AT] - y[at + INSPIRED_FOR] < SHORT_EXPIRATION * y[at + MEAN_INSPIRED_FOR];
        boolean runs = y[at + KNOT] >= 0 && y[at + EFFORT_KIND] != Muscles.COUGH, starts = runs && y[at + ANSWERED] == NO_ANSWER;
        // what the effort has done so far belongs to the breath that it starts
        double work = starts ? y[at + EFFORT_WORK] : 0, pressureTime = starts ? y[at + EFFORT_PRESSURE_TIME] : 0;
        y[at + MUSCLE] = Math.max(0, y[at + MUSCLE] - work);
        y[at + PRESSURE_TIME] = Math.max(0, y[at + PRESSURE_TIME] - pressureTime);
        closeRow(n);
        boolean set = kind == t.mode.mandatory() || by == 3;
        openRow(n, set ? 1 : 2, by);
        y[at + MUSCLE] = work;
        y[at + PRESSURE_TIME] = pressureTime;
        if (starts) y[at + P01] = y[at + EFFORT_P01];
        if (by == 2) flag(y, Asynchrony.FALSE);
        if (again || soon && (by == 1 || by == 2)) flag(y, Asynchrony.DOUBLE);
        y[at + SIGHING] = n.tS >= y[at + SIGH_NEXT] && t.sighEvery > 0 ? 1 : 0;
        if (y[at + SIGHING] > 0) {
            y[at + SIGH_NEXT] = n.tS + t.sighEvery;
            y[at + DUE] += SIGH_S - t.inspiratory;
            kind = Mode.Inflation.PRESSURE;
        } else if (t.sighEvery > 0 && y[at + SIGH_NEXT] == Double.POSITIVE_INFINITY) {
            y[at + SIGH_NEXT] = n.tS + t.sighEvery;
        }
        y[at + TRIGGER_DELAY] = by == 1 ? y[at + DUE_DELAY] : Double.NaN;
        y[at + BREATH_AT] = n.tS;
        y[at + LAST_START] = n.tS;
        y[at + PENDING] = Double.POSITIVE_INFINITY;
        y[at + KIND] = kind.ordinal();
        y[at + PEAK_SEEN] = 0;
        n.level[Level.BREATH_AT_S.ordinal()] = n.tS;
        double above = switch (kind) {
            case PRESSURE -> t.pressureSet;
            case TARGETED -> y[at + TARGET];
            case SUPPORT -> t.support;
            default -> 0;
        };
        if (y[at + SIGHING] > 0) above = Math.max(0, t.sighPressure - t.peep);
        y[at + AIM] = Math.min(t.peep + above, Math.max(t.limit, t.peep));
        if (t.peep + above > t.limit) y[at + LIMITED] = 1;
        enter(n, kind == Mode.Inflation.VOLUME ? FLOW : t.rise > 0 && above > 0 ? RISE : HOLD);
    }

    // ---- effort ----

    private void effortBegins(Now n, int kind) {
        double[] y = n.y;
        if (!muscles.begins(n, kind)) return;
        boolean alone = kind != Muscles.COUGH && (!t.ventilating || t.open && !t.mode.hasRate());
        if (alone) {
            closeRow(n);
            openRow(n, 2, 1);
            y[at + BREATH_AT] = n.tS;
            y[at + LAST_START] = n.tS;
            n.level[Level.BREATH_AT_S.ordinal()] = n.tS;
        }
        if (kind == Muscles.COUGH) y[at + COUGHED]++;
        else y[at + P01] = y[at + EFFORT_P01];
        y[at + ANSWERED] = alone || kind == Muscles.COUGH ? ANSWER_GIVEN : y[at + PHASE] != EXHALE ? BEGAN_IN_INFLATION : NO_ANSWER;
    }

    private void knot(Now n) {
        double[] y = n.y;
        double next = y[at + KNOT] + 1;
        if (next == Effort.peak() && (!t.ventilating || t.open) && y[at + PHASE] == EXHALE) {
            y[at + PLATEAU] = law.recoil(y);
            y[at + TRANSPULMONARY] = law.lungRecoil(y) + y[at + EFFORT_HEIGHT];
            y[at + INSPIRED_FOR] = n.tS - y[at + ROW_AT];
            law.inflationEnds(y);
        }
        if (next < Effort.STRETCHES) {
            y[at + KNOT] = next;
            return;
        }
        y[at + KNOT] = -1;
        if (y[at + ANSWERED] == NO_ANSWER) {
            y[at + MISSED]++;
            flag(y, Asynchrony.INEFFECTIVE);
        }
    }

    // ---- the row ----

    private void openRow(Now n, int kind, int by) {
        double[] y = n.y;
        for (int i = SUMS_FROM; i <= SUMS_TO; i++) y[at + i] = 0;
        for (int i = ELASTIC; i <= LIFTED; i++) y[at + i] = 0;
        y[at + LUNG_IN] = 0;
        y[at + IN] = kind == 0 ? 0 : y[at + BEFORE];
        y[at + DELIVERED] = kind == 0 || !t.ventilating || t.open ? 0 : y[at + BEFORE];
        y[at + BEFORE] = 0;
        y[at + ROW_OPEN] = 1;
        y[at + ROW_KIND] = kind;
        y[at + STARTED_BY] = by;
        y[at + ROW_AT] = n.tS;
        double pel = law.recoil(y);
        y[at + START_PEEP] = pel;
        y[at + PLATEAU] = pel;
        y[at + TRANSPULMONARY] = law.lungRecoil(y);
        y[at + HIGHEST] = n.level[Level.PAW_CMH2O.ordinal()];
        y[at + TRIGGER_DELAY] = Double.NaN;
        y[at + P01] = Double.NaN;
        y[at + SIGHING] = 0;
        law.rowBegins(y);
    }

    private void closeRow(Now n) {
        double[] y = n.y;
        if (y[at + ROW_OPEN] == 0) return;
        double span = n.tS - y[at + ROW_AT], total = law.recoil(y), start = y[at + START_PEEP];
        int kind = (int) y[at + ROW_KIND];
        n.rowEnds = true;
        n.set(Column.AT_S, y[at + ROW_AT]);
        n.set(Column.END_S, n.tS);
        n.set(Column.KIND, kind);
        n.set(Column.STARTED_BY, y[at + STARTED_BY]);
        n.set(Column.INSPIRED_ML, y[at + IN]);
        n.set(Column.EXPIRED_ML, y[at + OUT]);
        n.set(Column.INSPIRED_AT_VENTILATOR_ML, y[at + DELIVERED]);
        n.set(Column.EXPIRED_AT_VENTILATOR_ML, y[at + VALVE]);
        n.set(Column.CUFF_LEAK_ML, y[at + CUFF]);
        n.set(Column.CIRCUIT_LEAK_ML, y[at + CIRCUIT]);
        n.set(Column.PEAK_CMH2O, y[at + HIGHEST]);
        n.set(Column.PLATEAU_CMH2O, kind == 0 ? Double.NaN : y[at + PLATEAU]);
        n.set(Column.PEEP_CMH2O, total);
        n.set(Column.AUTO_PEEP_CMH2O, Math.max(0, total - t.peep));
        n.set(Column.DRIVING_CMH2O, kind == 0 ? Double.NaN : y[at + PLATEAU] - start);
        n.set(Column.MEAN_CMH2O, span > 0 ? y[at + PAW] / span : n.get(Level.PAW_CMH2O));
        n.set(Column.TRAPPED_ML, law.trapped(y));
        n.set(Column.TRANSPULMONARY_CMH2O, kind == 0 ? Double.NaN : y[at + TRANSPULMONARY]);
        n.set(Column.PEAK_FLOW_L_MIN, y[at + FASTEST_IN] * 0.06);
        n.set(Column.PEAK_EXPIRATORY_FLOW_L_MIN, y[at + FASTEST_OUT] * 0.06);
        n.set(Column.INSPIRATORY_TIME_S, y[at + INSPIRED_FOR]);
        n.set(Column.EXPIRATORY_TIME_S, span - y[at + INSPIRED_FOR]);
        energy(n, start);
        n.set(Column.PRESSURE_LIMITED, y[at + LIMITED]);
        n.set(Column.VOLUME_NOT_REACHED, y[at + SHORT]);
        n.set(Column.TARGET_CMH2O, kind == 0 || kind(y) == Mode.Inflation.VOLUME ? Double.NaN : y[at + AIM] - t.peep);
        n.set(Column.MISSED_EFFORTS, y[at + MISSED]);
        n.set(Column.TRIGGER_DELAY_S, y[at + TRIGGER_DELAY]);
        n.set(Column.PRESSURE_TIME_CMH2O_S, y[at + PRESSURE_TIME]);
        n.set(Column.P01_CMH2O, y[at + P01]);
        n.set(Column.ASYNCHRONY, y[at + FLAGS]);
        n.set(Column.SIGH, kind == 0 ? 0 : y[at + SIGHING]);
        n.set(Column.COUGHS, y[at + COUGHED]);
        law.row(n);
        if (y[at + LUNG_IN] > LEAST_LUNG_ML) n.level[Level.LAST_BREATH_S.ordinal()] = y[at + ROW_AT] + y[at + INSPIRED_FOR];
    }

    private void energy(Now n, double start) {
        double[] y = n.y;
        double lifted = start * y[at + LIFTED];
        n.set(Column.ENERGY_J, y[at + WORK] * J_PER_CMH2O_ML);
        n.set(Column.ENERGY_RESISTIVE_J, y[at + RESISTIVE] * J_PER_CMH2O_ML);
        n.set(Column.ENERGY_PEEP_J, lifted * J_PER_CMH2O_ML);
        n.set(Column.ENERGY_ELASTIC_J, (y[at + ELASTIC] - lifted) * J_PER_CMH2O_ML);
        n.set(Column.ENERGY_MUSCLE_J, y[at + SHARED] * J_PER_CMH2O_ML);
        n.set(Column.MUSCLE_J, y[at + MUSCLE] * J_PER_CMH2O_ML);
    }

    /** Adds a pass to the running row. */
    void sum(double[] y, int phase, double in, double out, double delivered, double valve, double cuff, double circuit, double paw, double work,
            double resistive, double muscle, double dt, double highest, double highFlow, double lowFlow, boolean inward, double lung, double muscleS) {
        boolean inspires = phase != EXHALE, aided = Slot.inflating(phase);
        boolean alone = !inspires && (!t.ventilating || t.open);
        if (inspires || alone) y[at + IN] += in;
        else if (lung > 0) y[at + BEFORE] += in;
        y[at + OUT] += out;
        y[at + DELIVERED] += inspires ? delivered : 0;
        y[at + VALVE] += valve;
        y[at + CUFF] += cuff;
        y[at + CIRCUIT] += circuit;
        y[at + PAW] += paw;
        if (inspires && inward) {
            y[at + WORK] += work;
            y[at + RESISTIVE] += resistive;
            y[at + ELASTIC] += law.elastic;
            y[at + SHARED] += muscle;
            y[at + LIFTED] += law.gained;
        }
        if (inward) y[at + LUNG_IN] += Math.max(0, lung);
        if (muscleS > 0) {
            double did = Math.max(0, muscle);
            y[at + MUSCLE] += did;
            y[at + PRESSURE_TIME] += muscleS;
            y[at + EFFORT_WORK] += did;
            y[at + EFFORT_PRESSURE_TIME] += muscleS;
        }
        if (dt > 0) {
            y[at + HIGHEST] = Math.max(y[at + HIGHEST], highest);
            y[at + FASTEST_IN] = Math.max(y[at + FASTEST_IN], highFlow);
            y[at + FASTEST_OUT] = Math.max(y[at + FASTEST_OUT], -lowFlow);
            if (aided) y[at + PEAK_SEEN] = Math.max(y[at + PEAK_SEEN], highFlow + (in - Math.max(0, lung) + circuit) / dt);
        }
    }

    /** What the ventilator gave in a pass, without bias flow, mL. */
    double delivered(int phase, double in, double circuitLeak, double squeezed, double dt, double sinceBreath) {
        if (!t.ventilating) return 0;
        if (t.open) {
            return switch (phase) {
                case FLOW -> {
                    double start = Math.min(t.largestFlow, 2 * t.volumeSet / t.flowTime / (1 + t.flowEnd)), slope = -start * (1 - t.flowEnd) / t.flowTime;
                    yield (start + slope * (sinceBreath + 0.5 * dt)) * dt;
                }
                case RISE, HOLD, FULL -> t.largestFlow * dt;
                default -> 0;
            };
        }
        return phase == PAUSE ? 0 : in + circuitLeak + Math.max(0, squeezed);
    }
}
