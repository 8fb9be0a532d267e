package leeway.core.breath;

/** Where the breath keeps its state, counted from the offset that it claimed. Times are absolute, s. */
final class Slot {
    /** Volume of the whole lung as if all of it were ventilated, mL above relaxation: the ventilated share of it moves. */
    static final int VOLUME = 0;
    static final int PHASE = 1, PHASE_AT = 2, BREATH_AT = 3, DUE = 4, LAST_START = 5, PENDING = 6, FALSE_NEXT = 7;
    static final int EFFORT_AT = 8, EFFORT_NEXT = 9;
    /** Those above from {@link #PHASE_AT} to here are times. */
    static final int TIMES_END = 9;
    static final int EFFORT_HEIGHT = 10, EFFORT_RISE = 11, KNOT = 12, ANSWERED = 13;
    static final int KIND = 14, STARTED_BY = 15, TARGET = 16, AIM = 17, PEAK_SEEN = 18, BACKUP = 19, ROW_OPEN = 20, ROW_KIND = 21;
    // sums of the running row
    static final int IN = 22, OUT = 23, DELIVERED = 24, VALVE = 25, CUFF = 26, CIRCUIT = 27, PAW = 28, WORK = 29, RESISTIVE = 30, MUSCLE = 31;
    static final int HIGHEST = 32, FASTEST_IN = 33, FASTEST_OUT = 34, LIMITED = 35, SHORT = 36, MISSED = 37, TRIGGER_DELAY = 38;
    static final int PLATEAU = 39, TRANSPULMONARY = 40, INSPIRED_FOR = 41, START_PEEP = 42, BEFORE = 43, LUNG_IN = 44, ROW_AT = 45, DUE_DELAY = 46;
    static final int COUNT = 47;
    static final int SUMS_FROM = IN, SUMS_TO = INSPIRED_FOR;

    // phases
    static final int EXHALE = 0, FLOW = 1, LIMIT = 2, PAUSE = 3, RISE = 4, HOLD = 5, FULL = 6;

    private Slot() { }

    static boolean inflating(int phase) {
        return phase != EXHALE && phase != PAUSE;
    }
}
