package leeway.core.alarm;

import java.util.List;
import java.util.stream.IntStream;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.kit.Ventilator;
import leeway.core.run.Claims;
import leeway.core.run.Draw;
import leeway.core.run.Knob;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * The alarm systems of ventilator and monitor: from a crossed limit to a sound that somebody hears.
 * <p>Crossing (as the device knows it, so after the sensor's delay), for so many breaths and so long (condition delay):
 * alarm condition; after the generation delay: the signal; while the audio is paused no sound; then the sound is heard at
 * its first repetition that gets through the noise. Leaves out: loudness, direction, and a crew that looks at the screen;
 * and the reset of a latching signal (IEC 60601-1-8): nobody gives it, so such a signal stands until its device can no longer speak of
 * it, and its condition is not heard a second time.
 * <p>A pause of the audio ends by itself after at most {@value #LONGEST_PAUSE_S} s (design rule of this kit, no source).
 */
public final class Speaking implements Part {
    public static final double LONGEST_PAUSE_S = 120;
    /** Events to the sink: {@code FIRST_EVENT + 4 × limit + what}. */
    public static final int FIRST_EVENT = 10_000;
    /** The signal is generated; the event's value is the generation delay, so the alarm condition began that much earlier. */
    public static final int SIGNAL = 1;
    /** The sound is heard for the first time. */
    public static final int HEARD = 2;
    /** The condition, and with it the signal, is over. */
    public static final int OVER = 3;
    /**
     * Time between repetitions of a sound by priority, s. IEC 60601-1-8 allows 2.5 to 15 (high), 2.5 to 30 (medium), more than 15
     * (low), from memory; the data sheet of a tone chip made for that standard (SLASES7A, 2019) offers 2.55 to 3.80, 2.60 to 4.00 and
     * 16. Here the middle of what is allowed, slower than that chip: in noise the sound is heard later, the cautious side.
     */
    private static final double[] REPEATS_S = {8, 15, 30};
    private static final int IDLE = 0;
    private static final int CROSSED = 1;
    private static final int SIGNALLED = 2;
    private static final int HEARD_BY_CREW = 3;
    // state of a limit
    private static final int STATE = 0;
    private static final int SINCE_S = 1;
    private static final int BREATHS = 2;
    private static final int READY_S = 3;
    private static final int EACH = 4;

    private final List<AlarmLimit> limits;
    private final AlarmLimit[] rows;
    private final AlarmLimit[] wide;
    private final Sensing sensing;
    private final Crossing crossing;
    /** Uniform draw that decides after how many repetitions a condition is heard. */
    private final double[] ear;
    private final double[] hearAfterS;
    /** Limits that a pressure crosses within a breath. */
    private final int[] atOnce;
    private int pausedUntilS;
    private int state;
    private int busy;

    /** @param gas how the ventilator takes its gas: one that stopped for want of it still speaks */
    public Speaking(List<AlarmLimit> limits, Sensing sensing, Expected expected, Ventilator.Gas gas, Draw draw) {
        this.limits = List.copyOf(limits);
        this.rows = limits.toArray(new AlarmLimit[0]);
        this.wide = limits.stream().map(AlarmLimit::leftWide).toArray(AlarmLimit[]::new);
        this.sensing = sensing;
        this.crossing = new Crossing(sensing, expected, gas);
        this.ear = new double[rows.length];
        this.hearAfterS = new double[rows.length];
        this.atOnce = IntStream.range(0, rows.length)
                .filter(i -> rows[i].condition() == AlarmCondition.AIRWAY_PRESSURE_HIGH && rows[i].high().isPresent() && rows[i].conditionBreaths() <= 1).toArray();
        for (int i = 0; i < rows.length; i++) ear[i] = draw.uniform("heard: " + rows[i].condition().words() + " of " + rows[i].from().words());
    }

    /** From one burst of a sound to the next, s. */
    public static double repeatS(Priority priority) { return REPEATS_S[priority.ordinal()]; }

    public List<AlarmLimit> limits() { return limits; }

    /** The sensors whose numbers it judges. */
    public Sensing sensing() { return sensing; }

    /** Which limit an event of this part is about; -1 for an event of another part. */
    public static int limitOf(int event) {
        return event < FIRST_EVENT ? -1 : (event - FIRST_EVENT) / 4;
    }

    /** What an event of this part says. */
    public static int whatOf(int event) {
        return (event - FIRST_EVENT) % 4;
    }

    @Override
    public void claim(Claims claims) {
        state = claims.state(EACH * rows.length);
        busy = claims.state(1);
        pausedUntilS = claims.state(1);
        crossing.claim(claims);
        claims.reads(Knob.AUDIO_PAUSED, Knob.HEARD, Knob.LIMITS_WIDE, Knob.SILENCED, Knob.MONITOR_ON, Knob.VENTILATOR_ON, Knob.STANDBY, Knob.MAINS);
    }

    @Override
    public void begin(Now n) {
        for (int i = 0; i < rows.length; i++) rest(n, i);
        n.y[busy] = 0;
        n.y[pausedUntilS] = Double.NaN;
        crossing.begin(n);
    }

    @Override
    public void retune(Now n) {
        if (!n.on(Knob.AUDIO_PAUSED)) n.y[pausedUntilS] = Double.NaN;
        else if (Double.isNaN(n.y[pausedUntilS])) n.y[pausedUntilS] = n.tS + LONGEST_PAUSE_S;
        for (int i = 0; i < rows.length; i++) {
            double chance = n.get(Knob.HEARD, rows[i].priority().ordinal());
            hearAfterS[i] = afterS(chance, ear[i], REPEATS_S[rows[i].priority().ordinal()]);
        }
    }

    /** Time from the first sound to the first one that is heard: repetitions are independent tries of this chance. */
    static double afterS(double chance, double uniform, double repeatS) {
        if (chance >= 1) return 0;
        if (chance <= 0) return Double.POSITIVE_INFINITY;
        double tries = Math.ceil(StrictMath.log(1 - uniform) / StrictMath.log(1 - chance) - 1e-12);
        return (Math.max(1, tries) - 1) * repeatS;
    }

    /** Whether some limit is crossed or signalled and not yet heard: something may still be heard without anything new. */
    public boolean pending(Now n) {
        if (n.y[busy] == 0) return false;
        for (int i = 0; i < rows.length; i++) {
            double s = n.y[state + EACH * i + STATE];
            if (s == CROSSED || s == SIGNALLED && hearAfterS[i] < Double.POSITIVE_INFINITY) return true;
        }
        return false;
    }

    /** Whether a limit that is not crossed now could speak if it were. */
    boolean mayYetSpeak(Now n, int i) { return n.y[state + EACH * i + STATE] == IDLE && speaks(n, i); }

    /** How long ago a device saw a breath, s. */
    double sinceBreathS(Now n, From from) { return crossing.sinceBreathS(n, from); }

    Crossing crossing() { return crossing; }

    boolean inStandby(Now n) { return n.on(Knob.STANDBY); }

    private void rest(Now n, int i) {
        int at = state + EACH * i;
        if (n.y[at + STATE] == CROSSED || n.y[at + STATE] == SIGNALLED) n.y[busy]--;
        n.y[at + STATE] = IDLE;
        n.y[at + SINCE_S] = Double.NaN;
        n.y[at + BREATHS] = 0;
        n.y[at + READY_S] = Double.POSITIVE_INFINITY;
    }

    @Override
    public double nextS(Now n, double latestS) {
        double next = Double.POSITIVE_INFINITY;
        if (n.y[busy] == 0) return next;
        for (int i = 0; i < rows.length; i++) {
            int at = state + EACH * i;
            double s = n.y[at + STATE];
            if (s == CROSSED) {
                next = Math.min(next, n.y[at + READY_S]);
            } else if (s == SIGNALLED) {
                next = Math.min(next, audibleS(n, at, i));
            }
        }
        return next;
    }

    /** When a signalled condition is first heard: not before a pause of the audio is over, which it is after its longest time at the latest. */
    private double audibleS(Now n, int at, int i) {
        double untilS = n.y[pausedUntilS], heardS = n.y[at + SINCE_S] + hearAfterS[i];
        return Double.isNaN(untilS) ? heardS : Math.max(untilS, heardS);
    }

    @Override
    public void pass(Now n, double dtS) {
        for (int i : atOnce) {
            if (sensing.highestSoFar(n, rows[i].from()) < rows[i].high().getAsDouble()) continue;
            if (n.y[state + EACH * i + STATE] == IDLE && !n.on(Knob.LIMITS_WIDE) && speaks(n, i)) cross(n, i, n.tS + dtS);
        }
    }

    @Override
    public void hit(Now n, Script script, Sink out) {
        for (int i = 0; i < rows.length; i++) {
            int at = state + EACH * i;
            if (n.y[at + STATE] == CROSSED && n.y[at + READY_S] <= n.tS) {
                n.y[at + STATE] = SIGNALLED;
                n.y[at + SINCE_S] = n.tS;
                out.event(n.tS, FIRST_EVENT + 4 * i + SIGNAL, rows[i].generationDelayS());
            }
            if (n.y[at + STATE] == SIGNALLED && audibleS(n, at, i) <= n.tS) {
                n.y[at + STATE] = HEARD_BY_CREW;
                n.y[busy]--;
                out.event(n.tS, FIRST_EVENT + 4 * i + HEARD, 0);
            }
        }
    }

    @Override
    public void row(Now n, Script script, Sink out) {
        crossing.row(n);
        for (int i = 0; i < rows.length; i++) {
            int at = state + EACH * i;
            boolean crosses = crossing.crosses(n, n.on(Knob.LIMITS_WIDE) ? wide[i] : rows[i]) && speaks(n, i);
            if (crosses) {
                if (n.y[at + STATE] == IDLE) cross(n, i, n.tS);
                n.y[at + BREATHS]++;
                if (n.y[at + STATE] == CROSSED && n.y[at + READY_S] == Double.POSITIVE_INFINITY && n.y[at + BREATHS] >= rows[i].conditionBreaths()) {
                    ready(n, i);
                }
            } else if (n.y[at + STATE] == CROSSED || n.y[at + STATE] >= SIGNALLED && !(rows[i].latching() && speaks(n, i))) {
                if (n.y[at + STATE] >= SIGNALLED) out.event(n.tS, FIRST_EVENT + 4 * i + OVER, 0);
                rest(n, i);
            }
        }
    }

    private void cross(Now n, int i, double atS) {
        int at = state + EACH * i;
        n.y[at + STATE] = CROSSED;
        n.y[busy]++;
        n.y[at + SINCE_S] = atS + sensing.lateS(rows[i].from(), Crossing.sensorOf(rows[i].condition()));
        n.y[at + BREATHS] = 0;
        if (rows[i].conditionBreaths() <= 1) ready(n, i);
    }

    /** The signal comes when the condition delay has run since the device knew of the crossing, and the generation delay after that. */
    private void ready(Now n, int i) {
        int at = state + EACH * i;
        n.y[at + READY_S] = Math.max(n.tS, n.y[at + SINCE_S] + rows[i].conditionDelayS()) + rows[i].generationDelayS();
    }

    /** Whether the device can speak of this at all now. */
    private boolean speaks(Now n, int i) {
        AlarmLimit limit = rows[i];
        if (n.p[Knob.SILENCED.slot(limit.condition().ordinal())] >= 0.5) return false;
        if (limit.from() == From.MONITOR) return n.on(Knob.MONITOR_ON);
        // a device that stopped speaks of nothing but that, by a reserve of its own; in standby of nothing but standby
        if (limit.condition() == AlarmCondition.VENTILATOR_FAULT) return true;
        if (crossing.dead(n)) return false;
        return n.on(Knob.STANDBY) == (limit.condition() == AlarmCondition.STANDBY_REMINDER) || ofSupply(limit.condition());
    }

    private static boolean ofSupply(AlarmCondition condition) {
        return switch (condition) {
            case GAS_SUPPLY_LOW, GAS_SUPPLY_FAILED, BATTERY_LOW, BATTERY_NEARLY_EMPTY, EXTERNAL_POWER_LOST -> true;
            default -> false;
        };
    }
}
