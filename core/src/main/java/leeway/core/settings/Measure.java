package leeway.core.settings;

import java.util.Arrays;
import java.util.Optional;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Unit;

/** What a strategy may aim at; judged in the steady state. */
public enum Measure {
    PLATEAU("plateau pressure", Kind.AIRWAY_PRESSURE, 1),
    DRIVING("driving pressure", Kind.AIRWAY_PRESSURE, 1),
    PEAK("peak pressure", Kind.AIRWAY_PRESSURE, 2),
    AUTO_PEEP("auto-PEEP", Kind.AIRWAY_PRESSURE, 1),
    MECHANICAL_POWER("mechanical power", Kind.BREATHING_POWER, 1),
    VOLUME_PER_WEIGHT("tidal volume per body weight", Kind.VOLUME_PER_MASS, 0.25),
    PACO2("PaCO2", Kind.GAS_TENSION, 2),
    PH("pH", Kind.NUMBER, 0.02),
    PAO2("PaO2", Kind.GAS_TENSION, 4),
    SATURATION("saturation", Kind.FRACTION, 0.01);

    private final String words;
    private final Kind kind;
    private final double matters;

    Measure(String words, Kind kind, double matters) {
        this.words = words;
        this.kind = kind;
        this.matters = matters;
    }

    public String words() { return words; }

    public Kind kind() { return kind; }

    public Unit unit() { return kind.internal(); }

    /** The difference that matters to a clinician, in its unit: what makes misses of different measures comparable. Common practice, no source. */
    public double matters() { return matters; }

    public static Optional<Measure> ofWords(String words) { return Arrays.stream(values()).filter(m -> m.words.equals(words)).findFirst(); }
}
