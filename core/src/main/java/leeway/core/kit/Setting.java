package leeway.core.kit;

import java.util.Arrays;
import java.util.Optional;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;

/** Something one can set on a ventilator, with the key of the transport file and the unit it is held in. */
public enum Setting {
    TIDAL_VOLUME("tidal volume", Kind.VOLUME),
    RATE("rate", Kind.RATE),
    /** The pause is part of it. */
    INSPIRATORY_TIME("inspiratory time", Kind.TIME),
    PAUSE("pause", Kind.TIME),
    INSPIRATORY_PRESSURE("inspiratory pressure above PEEP", Kind.AIRWAY_PRESSURE),
    SUPPORT_PRESSURE("support pressure above PEEP", Kind.AIRWAY_PRESSURE),
    PEEP("peep", Kind.AIRWAY_PRESSURE),
    /** 0 to 1. */
    FIO2("fio2", Kind.FRACTION),
    RISE_TIME("rise time", Kind.TIME),
    FLOW_TRIGGER("flow trigger", Kind.FLOW),
    /** How far below PEEP, as a positive number. */
    PRESSURE_TRIGGER("pressure trigger", Kind.AIRWAY_PRESSURE),
    /** Share of the peak flow at which support ends, 0 to 1. */
    CYCLE_OFF("cycle off", Kind.FRACTION),
    /** Absolute, above ambient. */
    PRESSURE_LIMIT("pressure limit", Kind.AIRWAY_PRESSURE),
    BIAS_FLOW("bias flow", Kind.FLOW),
    /** Support ends at the latest after this. */
    CYCLE_AFTER("cycle off after", Kind.TIME),
    SIGH_EVERY("sigh every", Kind.TIME),
    /** Absolute, above ambient. */
    SIGH_PRESSURE("sigh pressure absolute", Kind.AIRWAY_PRESSURE);

    private final String words;
    private final Kind kind;

    Setting(String words, Kind kind) {
        this.words = words;
        this.kind = kind;
    }

    /** The key in a file. */
    public String words() { return words; }

    /** As a sentence has it: "PEEP", "FiO2", and every other as its key. */
    public String said() {
        return switch (this) {
            case PEEP -> "PEEP";
            case FIO2 -> "FiO2";
            default -> words;
        };
    }

    public Kind kind() { return kind; }

    /** The unit in which its value is held. */
    public Unit unit() { return kind.internal(); }

    public static Optional<Setting> ofWords(String words) {
        return Arrays.stream(values()).filter(s -> s.words.equals(words)).findFirst();
    }
}
