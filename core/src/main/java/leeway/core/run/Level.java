package leeway.core.run;

/**
 * Where the breath stands at the moment, readable by every part at any time; written by the breath part at each pass and hit.
 * <p>The extremes hold for the pass just made.
 */
public enum Level {
    /** At the Y-piece, before filter and tube; cmH2O. */
    PAW_CMH2O,
    /** Highest and lowest of it during this pass. */
    PAW_HIGH_CMH2O,
    PAW_LOW_CMH2O,
    /** At the ventilator's own end of the circuit, what its pressure sensor could see; cmH2O. */
    PVENT_CMH2O,
    /** Mean alveolar pressure, weighted by compliance. */
    PALV_CMH2O,
    /** Pleural pressure above its resting value. */
    PPL_CMH2O,
    /** Muscle pressure. */
    PMUS_CMH2O,
    /** Into the patient at the airway opening; mL/s, expiration negative. */
    FLOW_ML_S,
    /** Above the relaxation volume (functional residual capacity at PEEP 0). */
    LUNG_ML,
    /** 0 expiration or idle, 1 inspiration, 2 pause; {@code Double}. */
    PHASE,
    /** When the running breath began (inspiration), s. */
    BREATH_AT_S,
    /** When the last inflation by ventilator or patient ended with any gas into the lung, s; for no-ventilation clocks. */
    LAST_BREATH_S,
    /** By how much carbon dioxide and oxygen change the depth and the rate of the efforts, share more; by the drive part, 0 in a run without one. */
    DRIVE_DEPTH, DRIVE_RATE,
    /** Gauge pressure at the ventilator's oxygen inlet, bar; written by the supply part, 0 in a run without one. */
    INLET_BAR,
    /** Charge of the battery that the ventilator runs on or would run on, share of full as truly left; by the supply part. */
    CHARGE,
    /** 1: the ventilator has neither external power nor charge; by the supply part. */
    POWERLESS,
    /** Oxygen in what is breathed from the room, above that of air, 0 to 1; by free flow, 0 in a run without it. */
    ROOM_OXYGEN,
    /** What lung that closed since the sheet's pressures adds to the shunt (negative: opened); by the breath, 0 for a linear lung. */
    SHUNT_ADDED
}
