package leeway.core.kit;

import java.util.Arrays;
import java.util.Optional;

/** A ventilation pattern by its ISO 19223:2019 code, with a plain name beside it. */
public enum Mode {
    AC_VC("A/C-VC", "assist and control, by volume", Control.VOLUME, Sequence.ASSIST_CONTROL, false),
    AC_PC("A/C-PC", "assist and control, by pressure", Control.PRESSURE, Sequence.ASSIST_CONTROL, false),
    AC_VTPC("A/C-vtPC", "assist and control, pressure that seeks a volume", Control.VOLUME_TARGETED_PRESSURE, Sequence.ASSIST_CONTROL, false),
    CMV_VC("CMV-VC", "mandatory only, by volume", Control.VOLUME, Sequence.MANDATORY, false),
    CMV_PC("CMV-PC", "mandatory only, by pressure", Control.PRESSURE, Sequence.MANDATORY, false),
    SIMV_VC_PS("SIMV-VC\\PS", "intermittent mandatory by volume, support between", Control.VOLUME, Sequence.INTERMITTENT_MANDATORY, true),
    SIMV_PC_PS("SIMV-PC\\PS", "intermittent mandatory by pressure, support between", Control.PRESSURE, Sequence.INTERMITTENT_MANDATORY, true),
    CSV_PS("CSV-PS", "pressure support", Control.SUPPORT, Sequence.SPONTANEOUS, true),
    CPAP("CPAP", "continuous positive airway pressure, support of 0", Control.SUPPORT, Sequence.SPONTANEOUS, false),
    /** Two levels of pressure by the clock, with unrestricted breathing on both; its code is from memory. */
    BILEVEL("IMV-PC", "two pressure levels, free breathing on both", Control.PRESSURE, Sequence.INTERMITTENT_MANDATORY, false);

    /** What an inflation of the set kind holds to. */
    public enum Control { VOLUME, PRESSURE, VOLUME_TARGETED_PRESSURE, SUPPORT }

    /** Who may start breaths, and of which kind. */
    public enum Sequence { ASSIST_CONTROL, MANDATORY, INTERMITTENT_MANDATORY, SPONTANEOUS }

    /** What one inflation holds to; {@code UNAIDED} is support of 0. */
    public enum Inflation { NONE, VOLUME, PRESSURE, TARGETED, SUPPORT, UNAIDED }

    private final String code;
    private final String plain;
    private final Control control;
    private final Sequence sequence;
    private final boolean supported;

    Mode(String code, String plain, Control control, Sequence sequence, boolean supported) {
        this.code = code;
        this.plain = plain;
        this.control = control;
        this.sequence = sequence;
        this.supported = supported;
    }

    public String code() { return code; }

    public String plain() { return plain; }

    public Control control() { return control; }

    public Sequence sequence() { return sequence; }

    /** True where breaths between or instead of the mandatory ones are pressure supported. */
    public boolean supported() { return supported; }

    /** True where the mode has a set rate. */
    public boolean hasRate() { return sequence != Sequence.SPONTANEOUS; }

    /** True where the patient can start breaths. */
    public boolean triggered() { return sequence != Sequence.MANDATORY; }

    /** The kind of the inflations that the clock starts; {@code NONE} without a clock. */
    public Inflation mandatory() {
        if (sequence == Sequence.SPONTANEOUS) return Inflation.NONE;
        return switch (control) {
            case VOLUME -> Inflation.VOLUME;
            case PRESSURE -> Inflation.PRESSURE;
            case VOLUME_TARGETED_PRESSURE -> Inflation.TARGETED;
            case SUPPORT -> Inflation.SUPPORT;
        };
    }

    /** The kind of the breaths that the patient starts (between mandatory ones, where there are such). */
    public Inflation between() {
        return switch (sequence) {
            case MANDATORY -> Inflation.NONE;
            case ASSIST_CONTROL -> mandatory();
            case INTERMITTENT_MANDATORY, SPONTANEOUS -> supported ? Inflation.SUPPORT : Inflation.UNAIDED;
        };
    }

    public static Optional<Mode> ofCode(String code) {
        return Arrays.stream(values()).filter(m -> m.code.equals(code)).findFirst();
    }
}
