package leeway.core.gas;

/**
 * Pressure of the standard atmosphere at an altitude, up to the tropopause.
 * <p>Leaves out weather: a real barometer differs by up to ±40 hPa at sea level (from memory).
 * Altitudes are geopotential, as pressure altitudes in aviation are; a geometric altitude of 10 000 ft differs by 0.13 hPa.
 */
public final class Barometer {
    /** Standard pressure at sea level, hPa. ISO 2533:1975, exact by definition. */
    public static final double SEA_LEVEL_HPA = 1013.25;
    /** Standard temperature at sea level, K. ISO 2533:1975. */
    private static final double SEA_LEVEL_K = 288.15;
    /** Fall of temperature with altitude, K/m. ISO 2533:1975, layer up to 11 km. */
    private static final double LAPSE_K_PER_M = 0.0065;
    /** g0·M/(R·lapse) = 9.80665·0.02896442/(8.31432·0.0065), with the constants of ISO 2533:1975. */
    private static final double EXPONENT = 9.80665 * 0.02896442 / (8.31432 * LAPSE_K_PER_M);
    /** Range of the formula, m. */
    public static final double LOWEST_M = -2000, HIGHEST_M = 11_000;
    /** Pa of a millimetre of mercury, as UCUM has it (133.322, not 133.322387). */
    public static final double PA_PER_MMHG = 133.322;

    private Barometer() {
    }

    /** Pressure at an altitude of −2000 to 11 000 m, hPa: 1013.25·(1 − 0.0065·h/288.15)^5.2559. ISO 2533:1975. */
    public static double pressureHPa(double altitudeM) {
        if (!(altitudeM >= LOWEST_M && altitudeM <= HIGHEST_M)) throw new IllegalArgumentException("altitude (" + altitudeM + " m) must lie between -2000 and 11000 m");
        return SEA_LEVEL_HPA * StrictMath.pow(1 - LAPSE_K_PER_M * altitudeM / SEA_LEVEL_K, EXPONENT);
    }

    /** The same in mmHg. */
    public static double pressureMmHg(double altitudeM) {
        return mmHg(pressureHPa(altitudeM));
    }

    /** The altitude at which the standard atmosphere has this pressure, m. */
    public static double altitudeM(double pressureHPa) {
        double altitudeM = SEA_LEVEL_K / LAPSE_K_PER_M * (1 - StrictMath.pow(pressureHPa / SEA_LEVEL_HPA, 1 / EXPONENT));
        if (!(altitudeM >= LOWEST_M && altitudeM <= HIGHEST_M)) throw new IllegalArgumentException("pressure (" + pressureHPa + " hPa) lies outside the standard atmosphere from -2000 to 11000 m");
        return altitudeM;
    }

    /** Temperature of the standard atmosphere at this altitude, Cel. */
    public static double temperatureCel(double altitudeM) {
        return SEA_LEVEL_K - LAPSE_K_PER_M * altitudeM - 273.15;
    }

    public static double mmHg(double hPa) {
        return hPa * 100 / PA_PER_MMHG;
    }

    public static double hPa(double mmHg) {
        return mmHg * PA_PER_MMHG / 100;
    }
}
