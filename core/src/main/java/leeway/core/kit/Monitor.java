package leeway.core.kit;

import java.util.List;

/** What is measured apart from the ventilator, with limits, delays, power and failure of its own. */
public record Monitor(String name, List<Sensor> sensors, List<AlarmRow> alarms, double batteryHours, String source) {
    public static final Monitor NONE = new Monitor("none", List.of(), List.of(), 0, "nothing fitted");

    public Monitor {
        sensors = List.copyOf(sensors);
        alarms = List.copyOf(alarms);
    }
}
