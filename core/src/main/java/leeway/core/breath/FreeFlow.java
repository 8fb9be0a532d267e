package leeway.core.breath;

import leeway.core.gas.Barometer;
import leeway.core.gas.Blend;
import leeway.core.gas.GasVolume;
import leeway.core.gas.RealOxygen;
import leeway.core.run.Claims;
import leeway.core.run.Flux;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * Free flow as a part of the loop: oxygen past an open airway, from which the patient breathes alone. What of a breath is
 * oxygen follows from the flow of the breath, moment by moment ({@link Reservoir}); without a breath what the lung takes up is
 * drawn from it (apnoeic oxygenation).
 * <p>Stands after the breath, whose flow it reads, and before the gas exchange, which reads what it writes
 * ({@link Level#ROOM_OXYGEN}). The flow is knob {@code BIAS_FLOW_SET}, free gas.
 */
public final class FreeFlow implements Part {
    /** Pieces of a pass in each of which the flow counts as constant. */
    private static final int PIECES = 8;
    private static final int HELD = 0, LAST_FLOW = 1, FRESH = 2, INSPIRED = 3, COUNT = 4;
    private final double roomMl, caught;
    private final Reservoir reservoir;
    private double freshMlPerS, source;
    private int at;

    /**
     * @param reservoirMl what fills between breaths
     * @param caughtShare of the flow that comes to the airway at all: 1 of a T-piece on a tube, less of a mask that is not tight
     */
    public FreeFlow(double reservoirMl, double caughtShare) {
        roomMl = reservoirMl;
        caught = caughtShare;
        reservoir = new Reservoir(reservoirMl);
    }

    /** A flow of free gas, L/min, as the mL/s BTPS that are breathed. */
    public static double breathedMlPerS(double lPerMin, double barometerMmHg) {
        double dry = barometerMmHg - GasVolume.BODY_WATER_MMHG, freeK = 273.15 + RealOxygen.FREE_GAS_CEL;
        return lPerMin / 0.06 * Barometer.mmHg(Barometer.SEA_LEVEL_HPA) / dry * 310.15 / freeK;
    }

    @Override
    public void claim(Claims claims) {
        at = claims.state(COUNT);
    }

    @Override
    public void begin(Now n) {
        n.y[at + HELD] = roomMl;
        n.y[at + LAST_FLOW] = n.get(Level.FLOW_ML_S);
        n.level[Level.ROOM_OXYGEN.ordinal()] = still();
    }

    @Override
    public void retune(Now n) {
        boolean off = n.on(Knob.OPEN_AT_PATIENT) || n.on(Knob.OPEN_AT_VENTILATOR);
        freshMlPerS = off ? 0 : caught * breathedMlPerS(n.get(Knob.BIAS_FLOW_SET), n.get(Knob.BAROMETER));
        source = n.get(Knob.SOURCE_OXYGEN);
    }

    private double still() { return freshMlPerS > 0 ? source - Blend.AIR : 0; }

    @Override
    public double nextS(Now n, double latestS) {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public void pass(Now n, double dtS) {
        double[] y = n.y;
        double in = n.get(Flux.IN_ML), out = n.get(Flux.OUT_ML), from = y[at + LAST_FLOW], to = n.get(Level.FLOW_ML_S);
        y[at + LAST_FLOW] = to;
        if (!(dtS > 0)) return;
        double mean = (in - out) / dtS, slope = (to - from) / dtS, step = dtS / PIECES, fresh = 0;
        reservoir.heldMl = y[at + HELD];
        for (int i = 0; i < PIECES; i++) {
            double flow = mean + slope * ((i + 0.5) * step - 0.5 * dtS);
            fresh += reservoir.pass(in > 0 ? Math.max(0, flow) : Math.min(0, flow), step, freshMlPerS);
        }
        y[at + HELD] = reservoir.heldMl;
        fresh = Math.min(fresh, in);
        y[at + FRESH] += fresh;
        y[at + INSPIRED] += in;
        n.level[Level.ROOM_OXYGEN.ordinal()] = in > 0 ? (source - Blend.AIR) * fresh / in : still();
    }

    @Override
    public void hit(Now n, Script script, Sink out) { }

    /** Fresh gas that was breathed since the start, mL. */
    public double freshMl(Now n) { return n.y[at + FRESH]; }

    /** All that was breathed in since the start, mL. */
    public double inspiredMl(Now n) { return n.y[at + INSPIRED]; }

    /** Share of oxygen in what was breathed, where so much of it was fresh. */
    public double fio2(double freshMl, double inspiredMl) { return inspiredMl > 0 ? Blend.AIR + (source - Blend.AIR) * freshMl / inspiredMl : Blend.AIR + still(); }
}
