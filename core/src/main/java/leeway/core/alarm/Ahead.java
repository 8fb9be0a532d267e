package leeway.core.alarm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * How far each value still goes up and down on the journey without a fault: what later legs and planned acts bring. A branch that is
 * to end early takes the same swing for its own, on top of where it stands.
 * <p>Kept by the minute, so a swing is told from the mean of the last minute. Leaves out: that a patient in trouble may answer
 * the same change of height or settings more than a well one does; who asks takes it twice.
 */
public final class Ahead {
    /** What is followed beside what the devices show, in this order. */
    private static final Column[] TRUTH = {Column.SAO2, Column.PACO2_MMHG, Column.PH, Column.PLATEAU_CMH2O, Column.TRANSPULMONARY_CMH2O, Column.CARDIAC_OUTPUT_L_MIN};
    private static final Signal[] SIGNALS = Signal.values();
    private static final From[] DEVICES = From.values();
    private static final int SHOWN = DEVICES.length * SIGNALS.length;
    private static final int VALUES = SHOWN + TRUTH.length;
    private static final double MINUTE_S = 60;

    private final Sensing sensing;
    private final List<Minute> minutes = new ArrayList<>();

    private static final class Minute {
        final double[] sum = new double[VALUES];
        final double[] high = new double[VALUES];
        final double[] low = new double[VALUES];
        final int[] rows = new int[VALUES];

        Minute() {
            Arrays.fill(high, Double.NEGATIVE_INFINITY);
            Arrays.fill(low, Double.POSITIVE_INFINITY);
        }

        void add(int i, double v) {
            if (Double.isNaN(v)) return;
            rows[i]++;
            sum[i] += v;
            if (v > high[i]) high[i] = v;
            if (v < low[i]) low[i] = v;
        }

        double mean(int i) { return rows[i] == 0 ? Double.NaN : sum[i] / rows[i]; }
    }

    public Ahead(Sensing sensing) { this.sensing = sensing; }

    /** Where a value stands among all; for {@link #up} and {@link #down}. */
    static int of(From from, Signal signal) { return from.ordinal() * SIGNALS.length + signal.ordinal(); }

    /** Where a true value stands among all; -1 for one that is not followed. */
    public static int of(Column column) {
        int i = Arrays.asList(TRUTH).indexOf(column);
        return i < 0 ? -1 : SHOWN + i;
    }

    /** Takes in a row of the journey without a fault. */
    public void row(Now n) {
        int minute = (int) (n.tS / MINUTE_S);
        while (minutes.size() <= minute) minutes.add(new Minute());
        Minute m = minutes.get(minute);
        for (From from : DEVICES) for (Signal s : SIGNALS) m.add(of(from, s), sensing.shown(n, from, s));
        for (int i = 0; i < TRUTH.length; i++) m.add(SHOWN + i, n.get(TRUTH[i]));
    }

    /** What is still to come up to a time, minute by minute. */
    public Swings until(double untilS) {
        int last = Math.min(minutes.size() - 1, (int) (untilS / MINUTE_S));
        double[][] high = new double[last + 2][];
        double[][] low = new double[last + 2][];
        high[last + 1] = new Minute().high;
        low[last + 1] = new Minute().low;
        for (int m = last; m >= 0; m--) {
            high[m] = high[m + 1].clone();
            low[m] = low[m + 1].clone();
            for (int i = 0; i < VALUES; i++) {
                high[m][i] = Math.max(high[m][i], minutes.get(m).high[i]);
                low[m][i] = Math.min(low[m][i], minutes.get(m).low[i]);
            }
        }
        return new Swings(high, low);
    }

    /** The highest and lowest that each value still reaches from a minute on. */
    public final class Swings {
        private final double[][] high;
        private final double[][] low;

        private Swings(double[][] high, double[][] low) {
            this.high = high;
            this.low = low;
        }

        /** How far a value still rises above where it stands at a time; 0 where it does not or is not shown. */
        public double up(int i, double tS) {
            int m = minute(tS);
            double mean = minutes.get(Math.max(0, m - 1)).mean(i);
            return Double.isNaN(mean) || Double.isInfinite(high[m][i]) ? 0 : Math.max(0, high[m][i] - mean);
        }

        /** How far it still falls. */
        public double down(int i, double tS) {
            int m = minute(tS);
            double mean = minutes.get(Math.max(0, m - 1)).mean(i);
            return Double.isNaN(mean) || Double.isInfinite(low[m][i]) ? 0 : Math.max(0, mean - low[m][i]);
        }

        private int minute(double tS) { return Math.min(high.length - 1, (int) (tS / MINUTE_S)); }
    }
}
