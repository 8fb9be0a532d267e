package leeway.core.alarm;

import leeway.core.kit.Sensor.Measured;

/** What a device shows once a breath (or every 2 s without one), and which sensor it needs for it. */
public enum Signal {
    /** Highest airway pressure of the breath, cmH2O. */
    PEAK(Measured.AIRWAY_PRESSURE),
    /** Airway pressure at the end of expiration, cmH2O. */
    END_PRESSURE(Measured.AIRWAY_PRESSURE),
    /** Lowest airway pressure of the breath, cmH2O. */
    LOWEST(Measured.AIRWAY_PRESSURE),
    INSPIRED_ML(Measured.INSPIRED_VOLUME),
    EXPIRED_ML(Measured.EXPIRED_VOLUME),
    /** Expired, smoothed over the sensor's averaging time. */
    MINUTE_L(Measured.EXPIRED_VOLUME),
    /** Of all breaths that the pressure or flow sensor tells apart, smoothed over {@value Sensing#RATE_SMOOTHING_S} s. */
    RATE(Measured.AIRWAY_PRESSURE),
    ETCO2_MMHG(Measured.END_TIDAL_CO2),
    INSPIRED_CO2_MMHG(Measured.INSPIRED_CO2),
    FIO2(Measured.INSPIRED_OXYGEN),
    SPO2(Measured.SATURATION),
    SUPPLY_BAR(Measured.SUPPLY_PRESSURE),
    CHARGE(Measured.CHARGE);

    private final Measured sensor;

    Signal(Measured sensor) {
        this.sensor = sensor;
    }

    /** Whether it is shown in the steps of its sensor; smoothed ones are not. */
    boolean inSteps() { return this != MINUTE_L && this != RATE && this != FIO2; }

    /** The sensor without which a device does not have this signal. */
    public Measured sensor() { return sensor; }
}
