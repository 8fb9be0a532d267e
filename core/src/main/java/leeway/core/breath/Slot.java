package leeway.core.breath;

/** Where the breath keeps its state, counted from the offset that it claimed. Times are absolute, s. */
final class Slot {
    /** Volume of the whole lung as if all of it were ventilated, mL above relaxation: the ventilated share of it moves. */
    static final int VOLUME = 0;
    static final int PHASE = 1, PHASE_AT = 2, BREATH_AT = 3, DUE = 4, LAST_START = 5, PENDING = 6, FALSE_NEXT = 7;
    static final int EFFORT_AT = 8, EFFORT_NEXT = 9, COUGH_NEXT = 10, HICCUP_NEXT = 11, SIGH_NEXT = 12;
    /** Those above from {@link #PHASE_AT} to here are times. */
    static final int TIMES_END = 12;
    static final int EFFORT_HEIGHT = 13, EFFORT_RISE = 14, KNOT = 15, ANSWERED = 16;
    static final int KIND = 17, STARTED_BY = 18, TARGET = 19, AIM = 20, PEAK_SEEN = 21, BACKUP = 22, ROW_OPEN = 23, ROW_KIND = 24;
    // sums of the running row
    static final int IN = 25, OUT = 26, DELIVERED = 27, VALVE = 28, CUFF = 29, CIRCUIT = 30, PAW = 31, WORK = 32, RESISTIVE = 33, MUSCLE = 34;
    static final int HIGHEST = 35, FASTEST_IN = 36, FASTEST_OUT = 37, LIMITED = 38, SHORT = 39, MISSED = 40, TRIGGER_DELAY = 41;
    static final int PRESSURE_TIME = 42, P01 = 43, FLAGS = 44, COUGHED = 45;
    static final int PLATEAU = 46, TRANSPULMONARY = 47, INSPIRED_FOR = 48, START_PEEP = 49, BEFORE = 50, LUNG_IN = 51, ROW_AT = 52, DUE_DELAY = 53;
    /** Of the running effort: 0 a breath, 1 a cough, 2 a hiccup; what it has done so far; how its breath before it went. */
    static final int EFFORT_KIND = 54, EFFORT_WORK = 55, EFFORT_PRESSURE_TIME = 56, EFFORT_P01 = 57, MEAN_INSPIRED_FOR = 58, SIGHING = 59;
    // lungs that are not linear: volume and open share of each compartment, gas in the pleura; volumes at the row's start and at the end of inflation
    static final int FIRST = 60, SECOND = 61, FIRST_OPEN = 62, SECOND_OPEN = 63, PLEURA = 64, FIRST_START = 65, SECOND_START = 66, FIRST_FULL = 67, SECOND_FULL = 68;
    // energy of the running inflation, each share by its own integral: in the lung's recoil, by the muscles meanwhile; the volume that it lifted
    static final int ELASTIC = 69, SHARED = 70, LIFTED = 71;
    /** Alveolar pressure of each of two lungs at the end of the inflation, muscles left out. */
    static final int FIRST_PLATEAU = 72, SECOND_PLATEAU = 73;
    static final int COUNT = 74;
    static final int SUMS_FROM = IN, SUMS_TO = INSPIRED_FOR;

    // phases
    static final int EXHALE = 0, FLOW = 1, LIMIT = 2, PAUSE = 3, RISE = 4, HOLD = 5, FULL = 6;

    private Slot() { }

    static boolean inflating(int phase) {
        return phase != EXHALE && phase != PAUSE;
    }
}
