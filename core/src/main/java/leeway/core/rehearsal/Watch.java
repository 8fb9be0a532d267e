package leeway.core.rehearsal;

import java.util.Arrays;
import leeway.core.alarm.Ahead;
import leeway.core.alarm.Onward;
import leeway.core.alarm.Outlook;
import leeway.core.alarm.Speaking;
import leeway.core.rehearsal.Harm.Measure;
import leeway.core.run.Column;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Watches a branch for the first harm and the first alarm that is heard; has enough when both are known, or nothing more can come.
 * <p>Harm is looked for at the end of each breath (every 2 s without one); a threshold that lies between two breaths is
 * crossed on the straight line between them. Allocates nothing while it watches.
 */
final class Watch implements Sink {
    private static final Measure[] MEASURES = Measure.values();
    private static final int NO_VENTILATION = Measure.NO_VENTILATION.ordinal();
    /** Rows in a row that must move away from harm before a remedy counts as having worked. */
    private static final int CALM_ROWS = 4;
    /** Share of the way from threshold to start beyond which a measure is no longer near harm. */
    private static final double CLEAR = 0.8;
    /** Without a breath for longer than this nothing is calm; s. */
    private static final double STILL_S = 15;
    private static final double ROUNDING = 1e-7;
    /** An alarm that would have spoken without the fault by this long after is not the fault's; s. */
    private static final double SAME_S = 5;

    /** A patient in trouble answers height and settings more than a well one; so many times. Common practice, no source. */
    private static final double LATER_TIMES = 1.5;

    /** Measures are compared over this long, s. */
    private static final double COMPARED_S = 60;
    /** Largest change until the end of the search, in each measure's unit, that counts as none where little room was left at the start; in the order of the measures. */
    private static final double[] AT_REST = {0.003, 0.5, 0.005, 0.5, 0.5, Double.POSITIVE_INFINITY, 0.1, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    /** Share of the room at the start that must be left at the end of the search, if all goes straight on. */
    private static final double LEFT = 0.3;

    /** After harm without help, an alarm is still waited for so long, so that the row can say how late it is; s. */
    private static final double LATE_S = 180;

    private final Thresholds limits;
    private final double[] nominalS;
    private final double[] startRoom;
    private final double[] now = new double[MEASURES.length];
    private final double[] room = new double[MEASURES.length];
    private final double[] lastRoom = new double[MEASURES.length];
    private double lastS;
    private double calmFromS = Double.POSITIVE_INFINITY;
    private int calm;
    private int large;
    private double leastLargeMl;
    private Speaking speaking;
    private double restsFromS = Double.POSITIVE_INFINITY;
    private double searchEndS;
    private double comparedS;
    private final double[] compared = new double[MEASURES.length];
    private final double[] movedBefore = new double[MEASURES.length];
    private final double[] sum = new double[MEASURES.length];
    /** Sum of the room, and the least of it, since the last look; the least before that. */
    private final double[] roomSum = new double[MEASURES.length];
    private final double[] leastNow = new double[MEASURES.length];
    private final double[] leastBefore = new double[MEASURES.length];
    private int summed;
    private boolean atRest;
    private Outlook outlook;
    private Drain drain;
    private Pace pace;
    /** Of a branch without help; null on others. */
    private Course course;
    private final double[] least = new double[MEASURES.length];
    private Script script;
    private Ahead.Swings ahead;

    /** The measure that came nearest to harm as a share of its room at the start, its value there and that share. */
    Measure nearest;
    double nearestValue;
    double nearestShare = 1;
    Measure harm;
    double harmS = Double.POSITIVE_INFINITY;
    int alarm = -1;
    double alarmS = Double.POSITIVE_INFINITY;

    /** @param nominalS when each limit would next be heard without the fault; infinite for never */
    Watch(Thresholds limits, Now start, double[] nominalS) {
        this(limits, start, nominalS, null);
    }

    private Watch(Thresholds limits, Now start, double[] nominalS, double[] startRoom) {
        this.limits = limits;
        this.nominalS = nominalS;
        lastS = start.tS;
        measure(start);
        rooms();
        keep();
        this.startRoom = startRoom == null ? room.clone() : startRoom;
        Arrays.fill(least, Double.POSITIVE_INFINITY);
    }

    /** For a branch on which the remedy is given; from {@code calmFromS} on it may end as soon as all moves away from harm. */
    Watch remedied(Now branch, double calmFromS) {
        Watch w = new Watch(limits, branch, nominalS, startRoom);
        w.calmFromS = calmFromS;
        return w;
    }

    /** For the branch without help. From this time on, a branch in which nothing moves any more, as far as the end of the search, is at its end. */
    Watch restingFrom(double fromS, double endS, Speaking alarms, Drain stores, Pace taken, Script changes, Ahead.Swings journey) {
        outlook = new Outlook(alarms, journey);
        course = new Course(MEASURES.length);
        course.add(lastS, room);
        drain = stores;
        pace = taken;
        script = changes;
        ahead = journey;
        restsFromS = fromS;
        searchEndS = endS;
        speaking = alarms;
        comparedS = fromS;
        Arrays.fill(compared, Double.NaN);
        Arrays.fill(movedBefore, Double.NaN);
        Arrays.fill(leastNow, Double.POSITIVE_INFINITY);
        Arrays.fill(leastBefore, Double.POSITIVE_INFINITY);
        return this;
    }

    /**
     * Means of a minute, straight on at their pace unless they settle ({@link Onward}); means, for a patient who breathes or fights swings for
     * ever: the swing comes off the room once more, and what later legs bring must fit into what is left.
     */
    private void compare(Now n) {
        for (int i = 0; i < now.length; i++) {
            sum[i] += now[i];
            roomSum[i] += room[i];
            if (room[i] < leastNow[i]) leastNow[i] = room[i];
        }
        summed++;
        outlook.row(n);
        pace.row(n);
        if (n.tS < comparedS + COMPARED_S) return;
        double times = Math.max(0, searchEndS - n.tS) / (n.tS - comparedS);
        boolean changes = script.nextS(n.tS) < searchEndS;
        boolean quiet = outlook.quiet(n, times, changes), lasts = pace.lasts(n) && (drain == null || drain.lasts(n, searchEndS));
        boolean rests = now[NO_VENTILATION] <= STILL_S && lasts && (quiet || alarm >= 0 && !speaking.pending(n));
        for (int i = 0; i < now.length; i++) {
            double mean = sum[i] / summed;
            double nearest = Math.min(leastNow[i], leastBefore[i]);
            double moved = mean - compared[i];
            double change = Onward.still(moved, movedBefore[i], times) + swing(roomSum[i] / summed, nearest);
            boolean clear = (nearest - change >= LEFT * startRoom[i] || change <= Math.min(AT_REST[i], nearest)) && (!changes || nearest - change >= later(i, n.tS));
            if (!Double.isNaN(now[i]) && i != NO_VENTILATION && !clear) rests = false;
            compared[i] = mean;
            movedBefore[i] = moved;
            sum[i] = 0;
            roomSum[i] = 0;
            leastBefore[i] = leastNow[i];
            leastNow[i] = Double.POSITIVE_INFINITY;
        }
        atRest = rests;
        comparedS = n.tS;
        summed = 0;
    }

    /** How far the nearest lies from the mean; none for a measure without a limit. */
    private static double swing(double mean, double nearest) { return nearest < mean && mean < Double.POSITIVE_INFINITY ? mean - nearest : 0; }

    /** What the rest of the journey does to a measure where there is no fault, and half as much again. */
    private double later(int measure, double tS) {
        return FOLLOWED[measure] < 0 ? 0 : LATER_TIMES * Math.max(ahead.up(FOLLOWED[measure], tS), ahead.down(FOLLOWED[measure], tS));
    }

    private static final int[] FOLLOWED = new int[MEASURES.length];

    static {
        for (Measure m : MEASURES) {
            FOLLOWED[m.ordinal()] = switch (m) {
                case SATURATION -> Ahead.of(Column.SAO2);
                case PACO2 -> Ahead.of(Column.PACO2_MMHG);
                case PH -> Ahead.of(Column.PH);
                case AIRWAY_PRESSURE -> Ahead.of(Column.PLATEAU_CMH2O);
                case TRANSPULMONARY_PRESSURE -> Ahead.of(Column.TRANSPULMONARY_CMH2O);
                case CIRCULATION -> Ahead.of(Column.CARDIAC_OUTPUT_L_MIN);
                case VOLUME, NO_VENTILATION, SUPPLY -> -1;
            };
        }
    }

    private static final int VOLUME = Measure.VOLUME.ordinal();
    /** Room in volume while too few breaths in a row are too large; mL. */
    private static final double STILL_ROOM_ML = 1;

    /** The smallest of the breaths in a row that are too large, once they are enough; before that no breath counts as larger than the limit. */
    private double volumeMl(Now n) {
        double ml = n.get(Column.INSPIRED_ML);
        if (!(n.get(Column.KIND) >= 0.5)) return limits.volumeMl() - Math.max(STILL_ROOM_ML, limits.volumeMl() - ml);
        leastLargeMl = large > 0 ? Math.min(leastLargeMl, ml) : ml;
        large = ml > limits.volumeMl() ? large + 1 : 0;
        return large >= limits.volumeBreaths() ? leastLargeMl : Math.min(ml, limits.volumeMl() - STILL_ROOM_ML);
    }

    private void measure(Now n) {
        Arrays.fill(now, Double.NaN);
        now[Measure.SATURATION.ordinal()] = n.get(Column.SAO2);
        now[Measure.PACO2.ordinal()] = n.get(Column.PACO2_MMHG);
        now[Measure.PH.ordinal()] = n.get(Column.PH);
        now[Measure.AIRWAY_PRESSURE.ordinal()] = n.get(Column.PLATEAU_CMH2O);
        now[Measure.TRANSPULMONARY_PRESSURE.ordinal()] = n.get(Column.TRANSPULMONARY_CMH2O);
        now[Measure.CIRCULATION.ordinal()] = n.get(Column.CARDIAC_OUTPUT_L_MIN);
        if (limits.volumeMl() < Double.POSITIVE_INFINITY) now[VOLUME] = volumeMl(n);
        now[NO_VENTILATION] = n.tS - n.get(Level.LAST_BREATH_S);
    }

    /** How far each measure is from harm, in its own unit; below 0 beyond it; {@code NaN} for one that this run does not have. */
    private void rooms() {
        Arrays.fill(room, Double.NaN);
        room[Measure.SATURATION.ordinal()] = now[Measure.SATURATION.ordinal()] - limits.saturation();
        room[Measure.PACO2.ordinal()] = Math.min(limits.paco2HighMmHg() - now[Measure.PACO2.ordinal()], now[Measure.PACO2.ordinal()] - limits.paco2LowMmHg());
        room[Measure.PH.ordinal()] = Math.min(now[Measure.PH.ordinal()] - limits.phLow(), limits.phHigh() - now[Measure.PH.ordinal()]);
        room[Measure.AIRWAY_PRESSURE.ordinal()] = limits.alveolarCmH2O() - now[Measure.AIRWAY_PRESSURE.ordinal()];
        room[Measure.TRANSPULMONARY_PRESSURE.ordinal()] = limits.transpulmonaryCmH2O() - now[Measure.TRANSPULMONARY_PRESSURE.ordinal()];
        room[Measure.CIRCULATION.ordinal()] = now[Measure.CIRCULATION.ordinal()] - limits.outputLPerMin();
        room[VOLUME] = limits.volumeMl() - now[VOLUME];
        room[NO_VENTILATION] = limits.noVentilationS() - now[NO_VENTILATION];
    }

    private void keep() {
        for (int i = 0; i < room.length; i++) lastRoom[i] = room[i];
    }

    @Override
    public void row(Now n) {
        measure(n);
        rooms();
        boolean calmer = n.tS >= calmFromS && now[NO_VENTILATION] <= STILL_S;
        for (int i = 0; i < room.length; i++) {
            if (room[i] < 0) {
                double before = lastRoom[i];
                double atS = lastS + (before > 0 ? before / (before - room[i]) : 0) * (n.tS - lastS);
                if (atS < harmS) {
                    harmS = atS;
                    harm = MEASURES[i];
                }
            }
            if (i != NO_VENTILATION && i != VOLUME && startRoom[i] > 0 && room[i] < nearestShare * startRoom[i]) {
                nearestShare = room[i] / startRoom[i];
                nearest = MEASURES[i];
                nearestValue = now[i];
            }
            if (room[i] < least[i]) least[i] = room[i];
            if (i != NO_VENTILATION && i != VOLUME && room[i] < lastRoom[i] - ROUNDING && room[i] < CLEAR * startRoom[i]) calmer = false;
        }
        calm = calmer ? calm + 1 : 0;
        if (course != null) course.add(n.tS, room);
        if (n.tS >= restsFromS) compare(n);
        keep();
        lastS = n.tS;
    }

    @Override
    public void event(double tS, int what, double value) {
        if (alarm >= 0 || what < Speaking.FIRST_EVENT || Speaking.whatOf(what) != Speaking.HEARD) return;
        int limit = Speaking.limitOf(what);
        if (tS >= nominalS[limit] - SAME_S) return;
        alarm = limit;
        alarmS = tS;
    }

    @Override
    public boolean enough() {
        if (harm != null) return speaking == null || alarm >= 0 || lastS > harmS + LATE_S;
        return calm >= CALM_ROWS || atRest;
    }

    /** Whether some measure has come clearly nearer to harm than it was at the start. */
    boolean nearer() {
        for (int i = 0; i < room.length; i++) if (room[i] < CLEAR * startRoom[i]) return true;
        return false;
    }

    /** The least room of a measure so far, in its unit; infinite before the first row. */
    double leastRoom(Measure measure) { return least[measure.ordinal()]; }

    /** How far each measure was from harm so far, on a branch without help. */
    Course course() { return course; }

    /** The value that the harm crossed, in its measure's unit. */
    double threshold() {
        return switch (harm) {
            case SATURATION -> limits.saturation();
            case PACO2 -> now[Measure.PACO2.ordinal()] > limits.paco2HighMmHg() ? limits.paco2HighMmHg() : limits.paco2LowMmHg();
            case PH -> now[Measure.PH.ordinal()] < limits.phLow() ? limits.phLow() : limits.phHigh();
            case AIRWAY_PRESSURE -> limits.alveolarCmH2O();
            case TRANSPULMONARY_PRESSURE -> limits.transpulmonaryCmH2O();
            case CIRCULATION -> limits.outputLPerMin();
            case NO_VENTILATION -> limits.noVentilationS();
            case VOLUME -> limits.volumeMl();
            case SUPPLY -> throw new AssertionError(harm + " is not watched here");
        };
    }
}
