package leeway.core.supply;

import leeway.core.kit.Battery;
import leeway.core.kit.Ventilator;

/**
 * Load and charge: what a ventilator takes and what a pack gives.
 * <p>Usable energy = nominal × health × share at this temperature × (charge shown − cut-off). Health multiplies two clocks, the
 * shelf's (root of time) and the cycles'. Leaves out: the loss at high current, self-discharge during the journey, the
 * warming of a pack at work (the share at the temperature around it is cautious).
 */
public final class Charge {
    /** Pneumatic power of 1 cmH2O at 1 L/min: 98.0665 Pa × 1e-3 m³ / 60 s, W; exact by definition. */
    public static final double W_PER_CMH2O_L_PER_MIN = 98.0665e-3 / 60;

    private Charge() { }

    /** Share of the nominal capacity that is left, 0 to 1. */
    public static double health(Battery battery, double ageYears, int cycles) {
        double shelf = 1 - battery.fadeShelfPerYear() * Math.sqrt(Math.max(0, ageYears));
        double worn = 1 - battery.fadePerCycle() * cycles;
        return Math.max(0, shelf) * Math.max(0, worn);
    }

    /** Share of the capacity that is available at this temperature, between the sheet's points on a straight line, beyond them the outer one's. */
    public static double shareAt(Battery battery, double temperatureCel) {
        var points = battery.temperature();
        if (points.isEmpty()) return 1;
        if (temperatureCel <= points.get(0).temperatureCel()) return points.get(0).share();
        for (int i = 1; i < points.size(); i++) {
            Battery.Point right = points.get(i);
            if (temperatureCel <= right.temperatureCel()) {
                Battery.Point left = points.get(i - 1);
                return left.share() + (right.share() - left.share()) * (temperatureCel - left.temperatureCel()) / (right.temperatureCel() - left.temperatureCel());
            }
        }
        return points.get(points.size() - 1).share();
    }

    /** What the pack holds when full at 25 °C, at its age, Wh. */
    public static double capacityWh(Battery battery, double ageYears, int cycles) {
        return battery.nominalWh() * health(battery, ageYears, cycles);
    }

    /** What it gives at this temperature from the charge that it shows down to its cut-off, Wh. */
    public static double usableWh(Battery battery, double charge, double ageYears, int cycles, double temperatureCel) {
        return capacityWh(battery, ageYears, cycles) * shareAt(battery, temperatureCel) * Math.max(0, charge - battery.cutOff());
    }

    /** Electrical load of a ventilator at work, W: a blower gives all gas at the peak pressure, bias flow and leak at PEEP. */
    public static double loadW(Ventilator.Load load, LegNeed need) {
        double pneumatic = W_PER_CMH2O_L_PER_MIN * (need.minuteVolumeLPerMin() * need.peakCmH2O() + (need.biasFlowLPerMin() + need.leakLPerMin()) * need.peepCmH2O());
        return load.steadyW() + (load.blowerIdleW() > 0 ? pneumatic / load.blowerEfficiency() : 0);
    }

    /** What an outside source puts into the pack beside the load, W; 0 where it is too cold or too warm to charge. */
    public static double chargingW(Battery battery, Ventilator.Load load, double loadW, double temperatureCel) {
        if (temperatureCel < battery.chargesFromCel() || temperatureCel > battery.chargesToCel()) return 0;
        return Math.max(0, Math.min(battery.chargeW(), load.chargerW() - loadW));
    }
}
