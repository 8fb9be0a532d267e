package leeway.core.breath;

/**
 * A ventilation pattern, by its ISO 19223 code.
 * <p>{@code vt} in a code is a pressure-controlled inflation that finds its pressure for a target volume. The order is
 * fixed: {@code Knob.MODE} holds the ordinal.
 */
public enum Mode {
    AC_VC("A/C-VC", "assist/control, volume", true, true, Kind.VOLUME, Kind.VOLUME),
    AC_PC("A/C-PC", "assist/control, pressure", true, true, Kind.PRESSURE, Kind.PRESSURE),
    AC_VTPC("A/C-vtPC", "assist/control, volume-targeted pressure", true, true, Kind.TARGETED, Kind.TARGETED),
    CMV_VC("CMV-VC", "controlled, volume", true, false, Kind.VOLUME, Kind.NONE),
    CMV_PC("CMV-PC", "controlled, pressure", true, false, Kind.PRESSURE, Kind.NONE),
    SIMV_VC_PS("SIMV-VC\\PS", "intermittent mandatory volume, with support", true, true, Kind.VOLUME, Kind.SUPPORT),
    SIMV_PC_PS("SIMV-PC\\PS", "intermittent mandatory pressure, with support", true, true, Kind.PRESSURE, Kind.SUPPORT),
    CSV_PS("CSV-PS", "spontaneous, pressure support", false, true, Kind.NONE, Kind.SUPPORT),
    CPAP("CPAP", "spontaneous, continuous pressure", false, true, Kind.NONE, Kind.UNAIDED),
    /** Two levels of pressure by the clock, with unrestricted breathing on both. */
    BILEVEL("IMV-PC", "two pressure levels, free breathing on both", true, true, Kind.PRESSURE, Kind.UNAIDED);

    /** What an inflation controls. */
    public enum Kind { NONE, VOLUME, PRESSURE, TARGETED, SUPPORT, UNAIDED }

    private static final Mode[] ALL = values();

    public final String code;
    public final String plainName;
    /** The clock starts breaths at the set rate. */
    public final boolean timed;
    /** The patient can start breaths. */
    public final boolean triggered;
    public final Kind mandatory;
    /** What a breath between the mandatory ones (in assist/control: every breath that the patient starts) is. */
    public final Kind between;

    Mode(String code, String plainName, boolean timed, boolean triggered, Kind mandatory, Kind between) {
        this.code = code;
        this.plainName = plainName;
        this.timed = timed;
        this.triggered = triggered;
        this.mandatory = mandatory;
        this.between = between;
    }

    static Mode of(double knob) {
        return ALL[(int) Math.min(ALL.length - 1, Math.max(0, knob))];
    }

    /** Mandatory breaths among supported ones. */
    public boolean intermittent() {
        return this == SIMV_VC_PS || this == SIMV_PC_PS;
    }
}
