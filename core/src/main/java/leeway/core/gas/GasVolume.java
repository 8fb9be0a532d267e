package leeway.core.gas;

/**
 * A volume of gas at given conditions, taken to other conditions: the dry gas keeps its amount, the vapour does not.
 * <p>Leaves out real-gas effects, which are under 0.1 % near one atmosphere.
 */
public final class GasVolume {
    /** Water vapour in the lung at 37 °C, mmHg. Physiology's convention; 47.07 by the formula below. */
    public static final double BODY_WATER_MMHG = 47;
    /** Body temperature of BTPS, Cel. By definition. */
    public static final double BODY_CEL = 37;
    /** BTPS litres times dry mmHg over this give STPD litres: 760·310.15/273.15 (the 863 of the textbooks). */
    public static final double STPD_DIVISOR = 760 * 310.15 / 273.15;
    private static final double KELVIN = 273.15;

    private GasVolume() {
    }

    /** Named conditions: ambient dry, ambient saturated, body saturated, standard (0 °C, 760 mmHg) dry. */
    public enum Condition { ATPD, ATPS, BTPS, STPD }

    /** A gas's temperature, total pressure and vapour pressure. */
    public record State(double temperatureCel, double pressureMmHg, double waterMmHg) {
        public State {
            if (!(temperatureCel > -KELVIN)) throw new IllegalArgumentException("temperature (" + temperatureCel + " Cel) must lie above absolute zero");
            if (!(pressureMmHg > waterMmHg && waterMmHg >= 0)) throw new IllegalArgumentException("pressure (" + pressureMmHg + " mmHg) must exceed the vapour's (" + waterMmHg + " mmHg)");
        }
    }

    /** The state that a condition means where the surroundings have this temperature, pressure and relative humidity (used by none but the ambient ones). */
    public static State state(Condition condition, double ambientCel, double ambientMmHg) {
        return switch (condition) {
            case ATPD -> new State(ambientCel, ambientMmHg, 0);
            case ATPS -> new State(ambientCel, ambientMmHg, waterMmHg(ambientCel));
            case BTPS -> new State(BODY_CEL, ambientMmHg, BODY_WATER_MMHG);
            case STPD -> new State(0, 760, 0);
        };
    }

    /** What one volume at {@code from} becomes at {@code to}: (P−w)/(P'−w')·T'/T. */
    public static double factor(State from, State to) {
        return (from.pressureMmHg - from.waterMmHg) / (to.pressureMmHg - to.waterMmHg) * (to.temperatureCel + KELVIN) / (from.temperatureCel + KELVIN);
    }

    /** Saturated vapour pressure over water at −20 to 100 °C, mmHg: 6.1121·e^((18.678−t/234.5)·t/(257.14+t)) hPa. Buck, J Appl Meteorol 1981;20:1527, as revised in Buck Research, CR-1A user's manual 1996, appendix 1. */
    public static double waterMmHg(double temperatureCel) {
        double t = temperatureCel;
        return Barometer.mmHg(6.1121 * StrictMath.exp((18.678 - t / 234.5) * t / (257.14 + t)));
    }

    /** The growth of a free moist gas at 37 °C between two barometric pressures, mmHg: (P1−47)/(P2−47). */
    public static double expansion(double fromMmHg, double toMmHg) {
        return (fromMmHg - BODY_WATER_MMHG) / (toMmHg - BODY_WATER_MMHG);
    }
}
