package leeway.core.alarm;

import java.util.Arrays;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.run.Column;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * Whether any limit may still be crossed if what the devices show goes on as it went since the last look. For ending a run early,
 * so the answer is cautious: what still comes ({@link Onward}) is taken twice as far, from the value nearest to the limit, and what later legs
 * and planned acts do to the journey without a fault comes on top, twice as well.
 * <p>Leaves out: a limit that noise alone would cross, and what later legs do to conditions that have no limit of their own. Holds one run.
 */
public final class Outlook {
    private static final int SIGNALS = Signal.values().length;
    /** What decides conditions without a limit of their own may still move by this share. Common practice, no source. */
    private static final double STEADY_SHARE = 0.01;
    private static final Signal[] DECIDING = {Signal.PEAK, Signal.INSPIRED_ML, Signal.EXPIRED_ML, Signal.RATE};
    /** A device that saw no breath for so long counts its apnoea; s. */
    private static final double STILL_S = 15;

    private final Speaking speaking;
    /** After what both devices show: what each saw come out of what it gave, and the share of the set volume that the ventilator gave. */
    private static final int OUT = 2 * SIGNALS;
    private static final int GIVEN = OUT + From.values().length;
    private static final int VALUES = GIVEN + 1;
    private final double[] sum = new double[VALUES];
    private final double[] high = new double[VALUES];
    private final double[] low = new double[VALUES];
    private final double[] before = new double[VALUES];
    private final double[] mean = new double[VALUES];
    private final double[] movedBefore = new double[VALUES];
    private final double[] trueSum = new double[SIGNALS];
    private final double[] trueBefore = new double[SIGNALS];
    private final double[] trueMean = new double[SIGNALS];
    private final double[] trueMovedBefore = new double[SIGNALS];
    private final Ahead.Swings ahead;
    private int rows;
    private int breaths;

    /** @param ahead what the journey without a fault still brings */
    public Outlook(Speaking speaking, Ahead.Swings ahead) {
        this.speaking = speaking;
        this.ahead = ahead;
        Arrays.fill(mean, Double.NaN);
        Arrays.fill(before, Double.NaN);
        Arrays.fill(trueBefore, Double.NaN);
        Arrays.fill(trueMean, Double.NaN);
        forget();
    }

    private void forget() {
        rows = 0;
        breaths = 0;
        Arrays.fill(sum, 0);
        Arrays.fill(trueSum, 0);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        Arrays.fill(low, Double.POSITIVE_INFINITY);
    }

    /** Takes in what is shown at the end of a row. */
    public void row(Now n) {
        rows++;
        for (int s = 0; s < SIGNALS; s++) trueSum[s] += truth(n, SIGNAL[s]);
        for (From from : DEVICES) {
            for (int s = 0; s < SIGNALS; s++) {
                int i = from.ordinal() * SIGNALS + s;
                take(i, speaking.sensing().unrounded(n, from, SIGNAL[s]));
            }
        }
        if (!(n.get(Column.KIND) >= 0.5)) return;
        breaths++;
        take(GIVEN, Crossing.givenShare(n));
        for (From from : DEVICES) take(OUT + from.ordinal(), speaking.sensing().shown(n, from, Signal.EXPIRED_ML) / speaking.sensing().shown(n, from, Signal.INSPIRED_ML));
    }

    private void take(int i, double v) {
        sum[i] += v;
        if (v > high[i]) high[i] = v;
        if (v < low[i]) low[i] = v;
    }

    /** What a signal stands for, {@code NaN} where it is not kept apart from what is shown. */
    private static double truth(Now n, Signal signal) {
        return switch (signal) {
            case PEAK -> n.get(Column.PEAK_CMH2O);
            case END_PRESSURE, LOWEST, RATE -> Double.NaN;
            case INSPIRED_ML -> n.get(Column.INSPIRED_ML);
            case EXPIRED_ML -> n.get(Column.EXPIRED_ML);
            case MINUTE_L -> n.get(Column.EXPIRED_ML) * 0.06 / Math.max(1e-3, n.get(Column.END_S) - n.get(Column.AT_S));
            case ETCO2_MMHG -> n.get(Column.ETCO2_MMHG);
            case INSPIRED_CO2_MMHG -> n.get(Column.INSPIRED_CO2_MMHG);
            case FIO2 -> n.get(Column.FIO2);
            case SPO2 -> n.get(Column.SAO2);
            case SUPPLY_BAR -> n.get(Level.INLET_BAR);
            case CHARGE -> n.get(Level.CHARGE);
        };
    }

    private static final From[] DEVICES = From.values();
    private static final Signal[] SIGNAL = Signal.values();

    /**
     * A look: true where nothing is crossed for so many times the time since the last one. The first is never quiet.
     *
     * @param changes whether the script still changes
     */
    public boolean quiet(Now n, double times, boolean changes) {
        for (int i = 0; i < mean.length; i++) {
            movedBefore[i] = mean[i] - before[i];
            before[i] = mean[i];
            mean[i] = sum[i] / (i >= OUT ? breaths : rows);
        }
        for (int s = 0; s < SIGNALS; s++) {
            trueMovedBefore[s] = trueMean[s] - trueBefore[s];
            trueBefore[s] = trueMean[s];
            trueMean[s] = trueSum[s] / rows;
        }
        boolean quiet = !speaking.pending(n);
        for (int i = 0; quiet && i < speaking.limits().size(); i++) {
            if (speaking.mayYetSpeak(n, i)) quiet = staysQuiet(n, speaking.limits().get(i), times, changes);
        }
        forget();
        return quiet;
    }

    private boolean staysQuiet(Now n, AlarmLimit limit, double times, boolean changes) {
        int device = limit.from().ordinal() * SIGNALS;
        if (limit.condition() == AlarmCondition.APNOEA) return speaking.sinceBreathS(n, limit.from()) <= STILL_S;
        if (limit.condition() == AlarmCondition.STANDBY_REMINDER) return !speaking.inStandby(n);
        Signal signal = Crossing.signalOf(limit.condition());
        if (signal == null) return decidedOtherwise(limit, device, times);
        int i = device + signal.ordinal();
        if (Double.isNaN(mean[i])) return true;      // not shown, not judged
        double far = 2 * drift(i, times);
        // a store goes on the way it goes until the script changes
        boolean store = signal == Signal.CHARGE || signal == Signal.SUPPLY_BAR, rises = store && mean[i] >= before[i];
        double up = changes ? 2 * ahead.up(i, n.tS) : 0, down = changes ? 2 * ahead.down(i, n.tS) : 0;
        boolean under = limit.high().isEmpty() || shown(limit, signal, high[i] + far + up) < limit.high().getAsDouble();
        return under && (limit.low().isEmpty() || shown(limit, signal, low[i] - (rises ? 0 : far) - down) >= limit.low().getAsDouble());
    }

    /** Conditions without a limit of their own. That power and gas last, who looks knows by other means. */
    private boolean decidedOtherwise(AlarmLimit limit, int device, double times) {
        int in = device + Signal.INSPIRED_ML.ordinal(), peak = device + Signal.PEAK.ordinal(), out = OUT + limit.from().ordinal();
        return switch (limit.condition()) {
            case VENTILATOR_FAULT, EXTERNAL_POWER_LOST, CO2_LINE_BLOCKED -> true;
            case VOLUME_NOT_REACHED -> Double.isNaN(mean[GIVEN]) ? steady(device, times) : least(GIVEN, times) >= Crossing.SHORT_SHARE;
            case OBSTRUCTION -> least(in, times) >= speaking.crossing().blockedBelowMl() || steady(device, times);
            case DISCONNECTION -> least(out, times) >= Crossing.LOST_SHARE && least(peak, times) >= speaking.crossing().lostBelowCmH2O() || steady(device, times);
            case LEAK_HIGH -> limit.high().isEmpty() || least(out, times) > 1 - limit.high().getAsDouble() || steady(device, times);
            default -> steady(device, times);
        };
    }

    private double least(int i, double times) { return low[i] - 2 * drift(i, times); }

    private boolean steady(int device, double times) {
        for (Signal s : DECIDING) if (drift(device + s.ordinal(), times) > STEADY_SHARE * Math.abs(mean[device + s.ordinal()])) return false;
        return true;
    }

    private double shown(AlarmLimit limit, Signal signal, double value) { return speaking.sensing().rounded(limit.from(), signal, value); }

    private double drift(int i, double times) {
        double moved = Onward.still(mean[i] - before[i], movedBefore[i], times);
        if (i < OUT) {
            // what is shown comes late; what it stands for may have moved already
            int s = i % SIGNALS;
            double truly = Onward.still(trueMean[s] - trueBefore[s], trueMovedBefore[s], times);
            if (truly > moved) moved = truly;
        }
        return Double.isNaN(moved) ? Double.isNaN(mean[i]) ? 0 : Double.POSITIVE_INFINITY : moved;
    }
}
