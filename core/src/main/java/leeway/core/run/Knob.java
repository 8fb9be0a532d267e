package leeway.core.run;

/**
 * Everything that a leg, an event, a fault or a remedy can change: one table, one line each.
 * <p>A knob has a unit, the bounds to which it is clipped after all changes, and the value it has when nobody sets it
 * ({@code NaN}: it must be given before the run). Indexed knobs ({@link #copies} above 1) have one slot per store or
 * sensor; {@link #slot(int)} says where. Values of patient and settings are absolute (a resistance of 11, times 4 in
 * bronchospasm), so that changes read as a clinician says them.
 * <p>Bounds keep the arithmetic safe and refuse the impossible; they are not clinical limits (common practice, no source).
 */
public enum Knob {
    // the patient's mechanics
    RESISTANCE("cmH2O.s/L", 0.1, 2000, Double.NaN, 1, "airways and lungs, both directions, without tube and filter"),
    EXPIRATORY_RESISTANCE("cmH2O.s/L", 0, 2000, 0, 1, "what the airways add in expiration only"),
    COMPLIANCE("mL/cmH2O", 0.05, 1000, Double.NaN, 1, "static, respiratory system, lung and chest wall together"),
    CHEST_WALL("1", 0, 0.95, 0.35, 1, "share of the chest wall in the elastance; physiology 1.5: 0.3 to 0.4 normal, from memory"),
    VENTILATED_SHARE("1", 0.02, 1, 1, 1, "share of the lung that the tube reaches; about 0.5 with the tube in one bronchus"),
    TRAPPED_GAS("mL", 0, 20_000, 0, 1, "gas outside the lung that takes its room, as in pneumothorax"),
    PLEURAL_LEAK("L/min at 20 cmH2O", 0, 500, 0, 1, "hole from the first lung into its pleura, open one way; lungs that are not linear"),
    // airway and filter
    TUBE_RESISTANCE("1", 0, 1000, 1, 1, "factor on the tube's pressure drop: kink, bite, secretions"),
    FILTER_RESISTANCE("cmH2O.s/L", 0, 2000, 0, 1, "filter at the patient, both directions"),
    AIRWAY_CLOSED("1", 0, 1, 0, 1, "1: nothing passes the airway"),
    OESOPHAGUS("1", 0, 1, 0, 1, "1: gas moves, but not in the lungs"),
    LEAK_AIRWAY("L/min at 20 cmH2O", 0, 500, 0, 1, "orifice past the cuff or beside an uncuffed tube"),
    // circuit
    OPEN_AT_PATIENT("1", 0, 1, 0, 1, "1: circuit off at the patient, the airway open to the room"),
    OPEN_AT_VENTILATOR("1", 0, 1, 0, 1, "1: circuit off at the ventilator, the airway open to the room through the circuit"),
    LEAK_CIRCUIT("L/min at 20 cmH2O", 0, 500, 0, 1, "orifice at the Y-piece"),
    CIRCUIT_COMPLIANCE("mL/cmH2O", 0, 10, 0, 1, "compressible volume of the circuit and give of its wall"),
    VALVE_RESISTANCE("cmH2O.s/L", 0, 2000, 0, 1, "expiratory valve and limb"),
    VALVE_STUCK_CLOSED("1", 0, 1, 0, 1, "share of the expiratory valve's opening that is lost; 1: nothing gets out"),
    VALVE_STUCK_OPEN("L/min at 20 cmH2O", 0, 500, 0, 1, "what the valve lets out in inspiration, as an orifice; PEEP is lost too"),
    // settings
    MODE("1", 0, 63, 0, 1, "ordinal of the mode, leeway.core.kit.Mode"),
    TIDAL_VOLUME_SET("mL", 0.5, 5000, Double.NaN, 1, "set or target volume"),
    RATE_SET("/min", 0, 200, Double.NaN, 1, "set rate, of mandatory breaths"),
    INSPIRATORY_TIME_SET("s", 0.1, 20, Double.NaN, 1, "with the pause in it"),
    PAUSE_SET("s", 0, 10, 0, 1, "end-inspiratory pause"),
    INSPIRATORY_PRESSURE_SET("cmH2O", 0, 100, 0, 1, "above PEEP"),
    SUPPORT_SET("cmH2O", 0, 100, 0, 1, "support pressure above PEEP"),
    RISE_SET("s", 0, 3, 0, 1, "rise time to the set pressure"),
    PEEP_SET("cmH2O", 0, 50, 0, 1, "positive end-expiratory pressure"),
    FIO2_SET("1", 0, 1, 0.21, 1, "set fraction of oxygen"),
    PRESSURE_LIMIT_SET("cmH2O", 1, 150, 60, 1, "absolute; held there, the volume may fall short"),
    FLOW_TRIGGER_SET("L/min", 0, 60, 0, 1, "0: no flow trigger"),
    PRESSURE_TRIGGER_SET("cmH2O", 0, 30, 0, 1, "below PEEP; 0: no pressure trigger"),
    CYCLE_OFF_SET("1", 0, 1, 0.25, 1, "share of the peak flow at which support ends"),
    BIAS_FLOW_SET("L/min", 0, 100, 0, 1, "continuous flow through the circuit"),
    FLOW_END_SET("1", 0, 1, 1, 1, "volume control: flow at the end over flow at the start; 1 constant, below 1 decelerating"),
    BACKUP_AFTER_SET("s", 0, 120, 0, 1, "apnoea time until backup breaths begin; 0: no backup"),
    CYCLE_AFTER_SET("s", 0, 10, 0, 1, "support ends at the latest after this; 0: after the device's own longest time"),
    SIGH_EVERY_SET("s", 0, 3600, 0, 1, "a sigh after each such time; 0: no sighs"),
    SIGH_PRESSURE_SET("cmH2O", 5, 100, 30, 1, "absolute pressure of a sigh"),
    // gas
    SOURCE_OXYGEN("1", 0, 1, 0.995, 1, "oxygen in what the oxygen outlet gives; 0.21 with the hose on air"),
    SHUNT("1", 0, 0.95, 0, 1, "share of the cardiac output that meets no gas"),
    ALVEOLAR_DEAD_SPACE("1", 0, 0.95, 0, 1, "share of the alveolar ventilation that meets no blood"),
    APPARATUS_DEAD_SPACE("mL", 0, 2000, 0, 1, "filter, mount, tube"),
    REBREATHED("1", 0, 1, 0, 1, "share of the inspired volume that is gas expired before"),
    BAROMETER("mmHg", 50, 900, 760, 1, "ambient pressure"),
    APNOEA_GAS("1", 0, 2, 1, 1, "at the open airway without ventilation: 0 closed, 1 air, 2 oxygen"),
    // blood and metabolism
    CARDIAC_OUTPUT("L/min", 0, 30, Double.NaN, 1, "left ventricle"),
    OXYGEN_UPTAKE("mL/min", 0, 5000, Double.NaN, 1, "STPD"),
    CO2_PRODUCTION("mL/min", 0, 5000, Double.NaN, 1, "STPD"),
    TEMPERATURE("Cel", 20, 44, 37, 1, "of the body"),
    HAEMOGLOBIN("g/L", 10, 260, Double.NaN, 1, "of the blood"),
    BASE_EXCESS("mmol/L", -40, 40, 0, 1, "of the blood"),
    // effort
    EFFORT("cmH2O", 0, 150, 0, 1, "largest muscle pressure of a breath"),
    EFFORT_RATE("/min", 0, 150, 0, 1, "breaths that the patient's drive begins"),
    EFFORT_TIME("s", 0.05, 5, 0.9, 1, "from the start of an effort to its peak; physiology 2.2: 0.8 to 1.0, from memory"),
    SEDATION("1", 0, 1, 0, 1, "0: none; 1: no effort at all"),
    COUGH("/min", 0, 60, 0, 1, "coughs"),
    HICCUP("/min", 0, 60, 0, 1, "hiccups: short, strong efforts"),
    DRIVE("1", 0, 1, 1, 1, "share of the published answer to carbon dioxide and oxygen that the patient's drive gives; 0: effort is fixed"),
    FALSE_TRIGGERS("/min", 0, 200, 0, 1, "breaths that nobody asked for, whatever the trigger: a fault of the trigger itself"),
    // what a trigger can take for an effort: the largest inward flow at the airway that it makes
    HEART_SWING("L/min", 0, 60, 0, 1, "flow that each heart beat makes at the airway"),
    HEART_RATE("/min", 10, 300, 80, 1, "heart beats"),
    WATER_SWING("L/min", 0, 60, 0, 1, "flow that water in the tube makes as it swings"),
    VIBRATION("L/min", 0, 60, 0, 1, "flow that shaking makes in the circuit"),
    LEAK_SEEN("1", 0, 1, 0, 1, "share of the leak at PEEP that the flow trigger takes for the patient's flow; 0: compensated"),
    // supply, per store k
    STORE_OPEN("1", 0, 1, 1, 16, "1: the store is connected and open"),
    INLET("1", 0, 3, 0, 16, "how the store feeds the ventilator, leeway.core.supply"),
    EXTRA_DRAIN("L/min", 0, 500, 0, 16, "lost from the store besides the ventilator's draw"),
    // power
    MAINS("1", 0, 1, 0, 1, "1: external power is there"),
    CHARGING("1", 0, 1, 1, 1, "1: external power charges the battery"),
    BATTERY("1", 0, 1, 1, 8, "1: the battery gives current"),
    DRAINED("1", 0, 1, 0, 1, "share of the pack's charge that is gone before it is used"),
    SOAKED("1", 0, 1, 0, 16, "1: the store has taken on the temperature of the leg; until then that of its reading"),
    // devices
    VENTILATOR_ON("1", 0, 1, 1, 1, "0: the ventilator gives no breath"),
    STANDBY("1", 0, 1, 0, 1, "1: on, and not ventilating"),
    MONITOR_ON("1", 0, 1, 1, 1, "0: the monitor shows and says nothing"),
    // sensors, per sensor k
    SENSOR_GAIN("1", 0, 100, 1, 32, "shown over true"),
    SENSOR_BIAS("own unit", -1e4, 1e4, 0, 32, "added to what is shown"),
    SENSOR_FROZEN("1", 0, 1, 0, 32, "1: shows its last value"),
    // alarms and people
    AUDIO_PAUSED("1", 0, 1, 0, 1, "1: the sound is paused"),
    LIMITS_WIDE("1", 0, 1, 0, 1, "1: limits left at their widest"),
    HEARD("1", 0, 1, 1, 3, "chance that one repetition of an alarm sound is heard, per priority: high, medium, low"),
    SILENCED("1", 0, 1, 0, 32, "1: this alarm condition is off, per condition");

    /** All slots of all knobs: the length of {@link Now#p}. */
    public static final int SLOTS;

    static {
        int next = 0;
        for (Knob knob : values()) {
            knob.slot = next;
            next += knob.copies;
        }
        SLOTS = next;
    }

    public final String unit;
    public final double low;
    public final double high;
    /** In force where nobody sets it; {@code NaN}: must be given. */
    public final double neutral;
    public final int copies;
    public final String meaning;
    private int slot;

    Knob(String unit, double low, double high, double neutral, int copies, String meaning) {
        this.unit = unit;
        this.low = low;
        this.high = high;
        this.neutral = neutral;
        this.copies = copies;
        this.meaning = meaning;
    }

    /** Where its (first) value stands in {@link Now#p}. */
    public int slot() {
        return slot;
    }

    /** Where the value of copy {@code k} stands in {@link Now#p}; k counts from 0. */
    public int slot(int k) {
        if (k < 0 || k >= copies) throw new IndexOutOfBoundsException("%s has copies 0 to %d, not %d".formatted(this, copies - 1, k));
        return slot + k;
    }
}
