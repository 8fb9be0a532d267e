package leeway.core.breath;

import leeway.core.run.Column;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * The cyclic steady state of a passive patient on a ventilator: the breath that repeats itself, from the same engine that
 * runs the journey.
 * <p>What plan, map and settings take their pressures from.
 */
public final class SteadyBreath {
    private SteadyBreath() { }

    /** The numbers of the breath that repeats itself. Refuses a mode in which nothing starts a breath. */
    public static BreathNumbers of(Mechanics mechanics, BreathSettings settings, DeviceLimits device) {
        if (!settings.mode().hasRate()) throw new IllegalArgumentException(settings.mode().code() + " starts no breath by itself: the patient's effort decides");
        Breath breath = new Breath(mechanics, device, false);
        Loop loop = new Loop(breath);
        Script script = Breath.base(new Script(), mechanics, settings);
        Now now = loop.begin(script);
        breath.settle(loop, now, script);
        Last last = new Last();
        loop.to(now.tS + 60 * 60 / settings.ratePerMin(), now, script, last);
        return numbers(last.row, settings);
    }

    private static final class Last implements Sink {
        private double[] row;

        @Override public void row(Now n) {
            row = n.row.clone();
        }

        @Override public boolean enough() {
            return row != null;
        }
    }

    static BreathNumbers numbers(double[] r, BreathSettings s) {
        double rate = 60 / (at(r, Column.END_S) - at(r, Column.AT_S));
        return new BreathNumbers(at(r, Column.INSPIRED_ML), at(r, Column.EXPIRED_ML), at(r, Column.INSPIRED_AT_VENTILATOR_ML), rate,
                at(r, Column.INSPIRATORY_TIME_S), at(r, Column.EXPIRATORY_TIME_S), at(r, Column.PEAK_CMH2O), at(r, Column.PLATEAU_CMH2O), at(r, Column.DRIVING_CMH2O),
                at(r, Column.PEEP_CMH2O), at(r, Column.AUTO_PEEP_CMH2O), at(r, Column.TRAPPED_ML), at(r, Column.MEAN_CMH2O), at(r, Column.TRANSPULMONARY_CMH2O),
                at(r, Column.PEAK_FLOW_L_MIN), at(r, Column.PEAK_EXPIRATORY_FLOW_L_MIN), at(r, Column.ENERGY_J), at(r, Column.ENERGY_J) * rate,
                at(r, Column.TARGET_CMH2O), at(r, Column.PRESSURE_LIMITED) > 0, at(r, Column.VOLUME_NOT_REACHED) > 0,
                Double.isNaN(at(r, Column.SHUNT_ADDED)) ? 0 : at(r, Column.SHUNT_ADDED));
    }

    private static double at(double[] row, Column column) {
        return row[column.ordinal()];
    }
}
