package leeway.core.kit;

import java.util.Arrays;
import java.util.Optional;

/** A condition that a device may announce, in the words of IEC 60601-1-8 and of the trade. */
public enum AlarmCondition {
    AIRWAY_PRESSURE_HIGH("airway pressure high", "cmH2O"), AIRWAY_PRESSURE_LOW("airway pressure low", "cmH2O"),
    CONTINUING_AIRWAY_PRESSURE_HIGH("continuing airway pressure high", "cmH2O"), OBSTRUCTION("obstruction", ""), DISCONNECTION("disconnection", ""),
    EXPIRED_TIDAL_VOLUME_LOW("expired tidal volume low", "mL"), EXPIRED_TIDAL_VOLUME_HIGH("expired tidal volume high", "mL"),
    EXPIRED_MINUTE_VOLUME_LOW("expired minute volume low", "L/min"), EXPIRED_MINUTE_VOLUME_HIGH("expired minute volume high", "L/min"),
    RATE_HIGH("rate high", "/min"), APNOEA("apnoea", "s"), VOLUME_NOT_REACHED("volume not reached", "mL"), PEEP_LOW("PEEP low", "cmH2O"),
    PEEP_HIGH("PEEP high", "cmH2O"), END_TIDAL_CO2_LOW("end-tidal CO2 low", "mmHg"), END_TIDAL_CO2_HIGH("end-tidal CO2 high", "mmHg"),
    INSPIRED_CO2_HIGH("inspired CO2 high", "mmHg"), CO2_LINE_BLOCKED("CO2 line blocked", ""), OXYGEN_LOW("oxygen concentration low", "1"),
    OXYGEN_HIGH("oxygen concentration high", "1"), GAS_SUPPLY_LOW("gas supply low", "bar"), GAS_SUPPLY_FAILED("gas supply failed", "bar"),
    BATTERY_LOW("battery low", "1"), BATTERY_NEARLY_EMPTY("battery nearly empty", "1"), EXTERNAL_POWER_LOST("external power lost", ""),
    LEAK_HIGH("leak high", "1"), SATURATION_LOW("saturation low", "1"), VENTILATOR_FAULT("ventilator fault", ""), STANDBY_REMINDER("standby reminder", "s"),
    /** Beyond the list of the standards' examples: an oximeter that finds no pulse says so. */
    PULSE_LOST("saturation signal lost", "");

    private final String words;
    private final String unit;

    AlarmCondition(String words, String unit) {
        this.words = words;
        this.unit = unit;
    }

    public String words() { return words; }

    /** Unit of its limit, as printed; empty where it has none. */
    public String unit() { return unit; }

    public static Optional<AlarmCondition> ofWords(String words) {
        return Arrays.stream(values()).filter(c -> c.words.equals(words)).findFirst();
    }
}
