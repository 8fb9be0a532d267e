package leeway.core.settings;

import leeway.core.kit.Range;
import leeway.core.kit.Setting;

/** What any device could have; a rule outside it is a slip of units. Wider than any sheet; common practice, no source. */
final class Possible {
    private Possible() { }

    static Range of(Setting setting) {
        return switch (setting) {
            case TIDAL_VOLUME -> new Range(1, 3000, 0);
            case RATE -> new Range(1, 150, 0);
            case INSPIRATORY_TIME -> new Range(0.1, 10, 0);
            case PAUSE -> new Range(0, 5, 0);
            case INSPIRATORY_PRESSURE -> new Range(1, 80, 0);
            case SUPPORT_PRESSURE -> new Range(0, 80, 0);
            case PEEP -> new Range(0, 40, 0);
            case FIO2 -> new Range(0.21, 1, 0);
            case RISE_TIME -> new Range(0, 3, 0);
            case FLOW_TRIGGER -> new Range(0.1, 30, 0);
            case PRESSURE_TRIGGER -> new Range(0.1, 20, 0);
            case CYCLE_OFF -> new Range(0.01, 0.9, 0);
            case PRESSURE_LIMIT -> new Range(5, 120, 0);
            case BIAS_FLOW -> new Range(0, 60, 0);
            case CYCLE_AFTER -> new Range(0.3, 10, 0);
            case SIGH_EVERY -> new Range(10, 3600, 0);
            case SIGH_PRESSURE -> new Range(10, 60, 0);
        };
    }
}
