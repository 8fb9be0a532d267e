package leeway.core.run;

/**
 * The numbers of one breath (or of a stretch of at most 2 s without one): the row that a sink sees.
 * <p>Each column is filled by one part in {@link Part#row}; a column that no part of this run fills stays {@code NaN},
 * which means absent.
 */
public enum Column {
    // by the breath
    /** Start of inspiration (or of the stretch). */
    AT_S,
    /** End of expiration: when the row is complete. */
    END_S,
    /** 0 no breath, 1 mandatory (an inflation of the set kind, whoever starts it, or backup), 2 supported or unaided. */
    KIND,
    /** 0 by time, 1 by the patient, 2 false (nobody asked for it), 3 backup. */
    STARTED_BY,
    INSPIRED_ML, EXPIRED_ML,
    INSPIRED_AT_VENTILATOR_ML, EXPIRED_AT_VENTILATOR_ML,
    CUFF_LEAK_ML, CIRCUIT_LEAK_ML,
    PEAK_CMH2O,
    /** What an end-inspiratory hold would show: alveolar pressure at end-inspiration, all compartments at rest. */
    PLATEAU_CMH2O,
    /** Total PEEP: alveolar pressure at the end of expiration. */
    PEEP_CMH2O,
    /** Total PEEP less what the valve holds. */
    AUTO_PEEP_CMH2O,
    /** Plateau less total PEEP. */
    DRIVING_CMH2O,
    MEAN_CMH2O,
    /** Lung volume at the end of expiration above what it would be after an endless one. */
    TRAPPED_ML,
    /** Plateau less pleural pressure at that moment. */
    TRANSPULMONARY_CMH2O,
    PEAK_FLOW_L_MIN, PEAK_EXPIRATORY_FLOW_L_MIN,
    INSPIRATORY_TIME_S, EXPIRATORY_TIME_S,
    /**
     * Energy that the ventilator put into the patient in inspiration, PEEP's share included, and what the muscles put in meanwhile;
     * where both went: into recoil above that at the start, into resistance, and into lifting the volume from the pressure at the start.
     */
    ENERGY_J, ENERGY_MUSCLE_J, ENERGY_ELASTIC_J, ENERGY_RESISTIVE_J, ENERGY_PEEP_J,
    /** 1: the pressure limit (or the device's own largest) was reached. */
    PRESSURE_LIMITED,
    /** 1: the set or target volume was not delivered. */
    VOLUME_NOT_REACHED,
    /** Pressure above PEEP that the volume target used. */
    TARGET_CMH2O,
    /** Efforts in this row that started no breath. */
    MISSED_EFFORTS,
    TRIGGER_DELAY_S,
    /** Work of breathing: what the inspiratory muscles did on lung and chest wall, from the start of the effort. */
    MUSCLE_J,
    /** Pressure-time product: muscle pressure over time, from the start of the effort; cmH2O.s. */
    PRESSURE_TIME_CMH2O_S,
    /** What the effort would have drawn from a closed airway in its first 0.1 s; absent without an effort. */
    P01_CMH2O,
    /** Asynchrony, a sum of the bits of {@code leeway.core.breath.Asynchrony}; 0 for none. */
    ASYNCHRONY,
    /** 1: a sigh. */
    SIGH,
    COUGHS,
    /** Of a lung that opens and closes: open share of what can. */
    OPEN_SHARE,
    /** What closed lung adds to the shunt. */
    SHUNT_ADDED,
    /** Of two lungs or compartments: into each in this breath, and what each holds above relaxation at the end. */
    FIRST_TIDAL_ML, SECOND_TIDAL_ML, FIRST_END_ML, SECOND_END_ML,
    /** Of the same: alveolar pressure of each at the end of the inflation and at the end of expiration, muscles left out. */
    FIRST_PLATEAU_CMH2O, SECOND_PLATEAU_CMH2O, FIRST_PEEP_CMH2O, SECOND_PEEP_CMH2O,
    /** Gas in the pleura. */
    PLEURAL_GAS_ML,
    // by the gas exchange
    FIO2, ETCO2_MMHG, INSPIRED_CO2_MMHG, PACO2_MMHG, PAO2_MMHG, SAO2, SPO2, PH, PALVO2_MMHG,
    OXYGEN_UPTAKE_ML, CO2_OUTPUT_ML,
    /** What the heart puts out against the pressure in the chest. */
    CARDIAC_OUTPUT_L_MIN,
    // by the supply
    OXYGEN_DRAW_L_MIN, LOAD_W
}
