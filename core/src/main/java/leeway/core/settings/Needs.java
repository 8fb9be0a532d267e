package leeway.core.settings;

import java.util.EnumSet;
import java.util.Set;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;

/** Which settings a mode has (ISO 19223 patterns), and which of them it cannot do without. */
final class Needs {
    private Needs() { }

    /** Without these the mode is not defined. */
    static Set<Setting> essential(Mode mode) {
        EnumSet<Setting> s = EnumSet.of(Setting.PEEP, Setting.FIO2);
        if (mode.hasRate()) {
            s.add(Setting.RATE);
            s.add(Setting.INSPIRATORY_TIME);
        }
        switch (mode.control()) {
            case VOLUME, VOLUME_TARGETED_PRESSURE -> s.add(Setting.TIDAL_VOLUME);
            case PRESSURE -> s.add(Setting.INSPIRATORY_PRESSURE);
            case SUPPORT -> { }
        }
        if (mode.supported()) s.add(Setting.SUPPORT_PRESSURE);
        return s;
    }

    /** These belong to the mode where the device has them. */
    static Set<Setting> optional(Mode mode) {
        EnumSet<Setting> s = EnumSet.of(Setting.PRESSURE_LIMIT, Setting.BIAS_FLOW, Setting.SIGH_EVERY, Setting.SIGH_PRESSURE);
        if (mode.control() == Mode.Control.VOLUME) s.add(Setting.PAUSE);
        if (mode.control() != Mode.Control.VOLUME || mode.supported()) s.add(Setting.RISE_TIME);
        if (mode.sequence() != Mode.Sequence.MANDATORY) {
            s.add(Setting.FLOW_TRIGGER);
            s.add(Setting.PRESSURE_TRIGGER);
        }
        if (mode.supported()) {
            s.add(Setting.CYCLE_OFF);
            s.add(Setting.CYCLE_AFTER);
        }
        return s;
    }
}
