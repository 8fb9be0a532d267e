package leeway.core.run;

/**
 * What flowed during one pass: written by the breath part, read by the parts after it in the same pass, then set to 0.
 * <p>All are integrals over the pass, so they may be summed. At the airway a pass never holds both inspiration and
 * expiration: of {@link #IN_ML} and {@link #OUT_ML} at most one is above 0. Volumes are BTPS.
 */
public enum Flux {
    /** Into the patient at the airway opening (the Y side of filter and tube), whatever its origin. */
    IN_ML,
    /** The part of {@link #IN_ML} that is room air: circuit off, or drawn past a device that gives nothing. */
    IN_ROOM_ML,
    /** Out of the patient at the airway opening. */
    OUT_ML,
    /** Past the cuff to the room: it went through the tube or came from the lung, but not back through the tube. */
    CUFF_LEAK_ML,
    /** Change of the lung volume: IN - OUT - CUFF_LEAK. In the oesophagus: of the stomach; the lung has 0 then. */
    LUNG_ML,
    /** Out of the circuit's leak to the room. */
    CIRCUIT_LEAK_ML,
    /** Delivered by the ventilator for breaths: patient, compression, leaks and what an open circuit spills; no bias flow. */
    DELIVERED_ML,
    /** The part of {@link #DELIVERED_ML} that an open circuit spilled to the room. */
    SPILLED_ML,
    /** Bias flow. */
    BIAS_ML,
    /** Out through the expiratory valve, without bias flow. */
    VALVE_ML,
    /** Integral of the airway pressure at the Y-piece, cmH2O.s. */
    PAW_CMH2O_S,
    /** Integral of the mean alveolar pressure, cmH2O.s. */
    PALV_CMH2O_S,
    /** Integral of the pleural pressure above its resting value, cmH2O.s. */
    PPL_CMH2O_S,
    /** Work of the ventilator on the patient: integral of the airway pressure over the volume at the airway, cmH2O.mL. */
    WORK_CMH2O_ML,
    /** Work of the muscles: integral of their pressure over the lung volume, cmH2O.mL. */
    MUSCLE_CMH2O_ML
}
