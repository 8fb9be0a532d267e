package leeway.core.lung;

/**
 * A leak: a hole whose flow grows with the root of the pressure across it. Leaves out cuffs that give way with pressure.
 * <p>Q = Cd A sqrt(2 dP / rho), so a leak is known by its flow at one pressure, here 20 cmH2O.
 */
public final class Orifice {
    /** The pressure at which leaks are stated. */
    public static final double STATED_AT_CMH2O = 20;
    /** Discharge coefficient of a sharp edge; from memory. */
    private static final double DISCHARGE = 0.6;
    private static final double PA_PER_CMH2O = 98.0665;

    private Orifice() { }

    /** Flow in L/min at a pressure, of a leak stated at 20 cmH2O. No flow inwards. */
    public static double flowLPerMin(double statedLPerMin, double pressureCmH2O) {
        return pressureCmH2O <= 0 ? 0 : statedLPerMin * Math.sqrt(pressureCmH2O / STATED_AT_CMH2O);
    }

    /** Flow in L/min through a round hole. */
    public static double holeLPerMin(double diameterMm, double pressureCmH2O) {
        double area = StrictMath.PI * diameterMm * diameterMm * 1e-6 / 4;
        return 60_000 * DISCHARGE * area * Math.sqrt(2 * Math.max(0, pressureCmH2O) * PA_PER_CMH2O / Tube.DENSITY_KG_PER_M3);
    }
}
