package leeway.core.breath;

/**
 * The published bedside formulas of mechanical power. Leaves out the patient's own muscles; PEEP's share is inside by
 * definition, against a contested view. The engine's own energy is the integral of pressure over volume and needs none of these.
 */
public final class MechanicalPower {
    /** J per L.cmH2O, rounded as the formulas print it (98.0665e-3 exactly). */
    private static final double J = 0.098;

    private MechanicalPower() { }

    /** Volume control: 0.098 RR VT (Ppeak - (Pplat - PEEP) / 2), J/min. Gattinoni, Intensive Care Med 2016;42:1567. */
    public static double volumeJPerMin(double ratePerMin, double tidalVolumeMl, double peakCmH2O, double plateauCmH2O, double peepCmH2O) {
        return J * ratePerMin * tidalVolumeMl / 1000 * (peakCmH2O - (plateauCmH2O - peepCmH2O) / 2);
    }

    /** Volume control from elastance and resistance, constant flow without pause: 0.098 RR VT (VT E/2 + F R + PEEP), the long form of the same paper. */
    public static double volumeLongJPerMin(double ratePerMin, double tidalVolumeMl, double elastanceCmH2OPerL, double resistanceCmH2OSPerL, double inspiratoryTimeS, double peepCmH2O) {
        double vt = tidalVolumeMl / 1000, ie = inspiratoryTimeS / (60 / ratePerMin - inspiratoryTimeS);
        return J * ratePerMin * (vt * vt * (elastanceCmH2OPerL / 2 + ratePerMin * (1 + ie) / (60 * ie) * resistanceCmH2OSPerL) + vt * peepCmH2O);
    }

    /** Volume control without a pause: VE (Ppeak + PEEP + F/6) / 20, J/min. Giosa, Intensive Care Med Exp 2019;7:61. */
    public static double volumeWithoutPauseJPerMin(double minuteVolumeLPerMin, double peakCmH2O, double peepCmH2O, double flowLPerMin) {
        return minuteVolumeLPerMin * (peakCmH2O + peepCmH2O + flowLPerMin / 6) / 20;
    }

    /** Pressure control, square pressure: 0.098 RR VT (dP + PEEP), J/min. Becher, Intensive Care Med 2019;45:1321. Overstates with a slow rise. */
    public static double pressureJPerMin(double ratePerMin, double tidalVolumeMl, double abovePeepCmH2O, double peepCmH2O) {
        return J * ratePerMin * tidalVolumeMl / 1000 * (abovePeepCmH2O + peepCmH2O);
    }
}
