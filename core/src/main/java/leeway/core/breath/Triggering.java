package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * When an expiration meets the trigger: by the flow or pressure of an effort, by a leak that the device does not compensate,
 * or by a disturbance that rides on them - heart beat, water in the tube, vibration.
 * <p>A disturbance is a pulse on a clock of its own, as large at the airway as its knob says; a pulse counts where flow and
 * pulse together reach the threshold, so a less sensitive trigger cures it. To a pressure trigger the pulse is the pressure
 * that drives such a flow through airway and tube. Leaves out the gas that the pulses move, and their shape.
 */
final class Triggering {
    /** Water swings about once a second, vibration counts as ten pulses a second; common practice, no source. */
    static final double WATER_S = 1, VIBRATION_S = 0.1;

    private final Tuned t;
    private final Law law;
    int at;

    Triggering(Tuned tuned, Law law) {
        t = tuned;
        this.law = law;
    }

    /** When the patient's own flow or pressure, with the leak that is taken for it, meets the trigger; not before {@code ready}. */
    double met(double now, double ready, double within) {
        if (t.flowTrigger > 0) {
            double seen = law.startFlow(), threshold = t.flowTrigger - t.leakSeen;
            return Math.max(seen >= threshold ? now : now + law.timeTo(threshold, within), ready);
        }
        if (!(t.pressureTrigger > 0)) return Double.POSITIVE_INFINITY;
        double below = t.peep - t.pressureTrigger, pel = law.alveolar();
        if (pel <= below) return Math.max(now, ready);
        return law.mg > 0 && law.startFlow() >= 0 ? Math.max(now + (pel - below) / law.mg, ready) : Double.POSITIVE_INFINITY;
    }

    /** The next pulse that may meet it; infinity without disturbance. */
    double pulse(double now, double ready, double within) {
        double next = Double.POSITIVE_INFINITY;
        for (int i = 0; i < t.swing.length; i++) {
            if (!(t.swing[i] > 0)) continue;
            double from = Math.max(now, ready), lowest = t.flowTrigger - t.leakSeen - t.swing[i];
            if (t.flowTrigger > 0 && law.startFlow() < lowest) from = Math.max(from, now + law.timeTo(lowest, within));
            if (from < Double.POSITIVE_INFINITY) next = Math.min(next, (Math.floor(from / t.swingPeriod[i] + 1e-9) + 1) * t.swingPeriod[i]);
        }
        return next;
    }

    /** Whether a pulse of this moment meets the trigger. */
    boolean pulsed(Now n) {
        for (int i = 0; i < t.swing.length; i++) {
            if (!(t.swing[i] > 0) || Math.abs(Math.rint(n.tS / t.swingPeriod[i]) * t.swingPeriod[i] - n.tS) > 1e-6) continue;
            if (t.flowTrigger > 0 ? n.get(Level.FLOW_ML_S) + t.leakSeen + t.swing[i] >= t.flowTrigger : n.get(Level.PALV_CMH2O) - t.swingPressure[i] <= t.peep - t.pressureTrigger) return true;
        }
        return false;
    }

    /** The trigger is met: the inflation comes after the device's delay. */
    void take(Now n) {
        double[] y = n.y;
        if (y[at + PENDING] < Double.POSITIVE_INFINITY) return;
        y[at + PENDING] = n.tS + t.delay;
        y[at + DUE_DELAY] = y[at + KNOT] >= 0 && y[at + EFFORT_KIND] != Muscles.COUGH ? n.tS + t.delay - y[at + EFFORT_AT] : Double.NaN;
    }
}
