package leeway.core.alarm;

import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Ventilator;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;

/**
 * Whether what a device shows crosses a limit, condition by condition. Judged once a breath (or every 2 s without one), from
 * shown values only; what a device knows of itself (its power, its standby, its own failure) is known to it at once.
 */
final class Crossing {
    /** Pressure reaches less than this share of the expected peak, or less comes back than this share of what went in: disconnection. Common practice, no source. */
    static final double LOST_SHARE = 0.25;
    /** Less goes in than this share of the expected volume, at a pressure as high as expected: obstruction. Common practice, no source. */
    private static final double BLOCKED_SHARE = 0.3;
    /** What a device gave counts as short of what was set under this share. Common practice, no source. */
    static final double SHORT_SHARE = 0.95;
    /** A CO2 trace that stays under this is no breath; mmHg. Common practice, no source. */
    private static final double NO_CO2_MMHG = 5;

    private final Sensing sensing;
    private final Expected expected;
    private final Ventilator.Gas gas;
    private int seenS;
    private int hadMains;
    private int standbyS;

    Crossing(Sensing sensing, Expected expected, Ventilator.Gas gas) {
        this.sensing = sensing;
        this.expected = expected;
        this.gas = gas;
    }

    /** Whether the ventilator has failed or lost its power; one that lacks only gas is alive and speaks. */
    boolean dead(Now n) {
        if (n.level[Level.POWERLESS.ordinal()] >= 0.5) return true;
        boolean starved = gas.stopsWithoutGas() && n.level[Level.INLET_BAR.ordinal()] < gas.minimumInletBar();
        return !n.on(Knob.VENTILATOR_ON) && !starved;
    }

    void claim(Claims claims) {
        seenS = claims.state(2);
        hadMains = claims.state(1);
        standbyS = claims.state(1);
        claims.reads(Knob.PRESSURE_LIMIT_SET, Knob.RATE_SET, Knob.MAINS);
    }

    void begin(Now n) {
        n.y[seenS] = n.tS;
        n.y[seenS + 1] = n.tS;
        n.y[hadMains] = n.get(Knob.MAINS);
        n.y[standbyS] = Double.NaN;
    }

    /** Keeps the clocks: last breath seen by each device, standby since when, whether there ever was external power. */
    void row(Now n) {
        if (n.on(Knob.MAINS)) n.y[hadMains] = 1;
        if (!n.on(Knob.STANDBY)) {
            n.y[standbyS] = Double.NaN;
        } else if (Double.isNaN(n.y[standbyS])) {
            n.y[standbyS] = n.tS;
        }
        if (n.get(Column.KIND) >= 0.5) n.y[seenS] = n.tS;
        if (n.on(Knob.STANDBY)) n.y[seenS] = n.tS;
        if (!n.on(Knob.MONITOR_ON) || sensing.shown(n, From.MONITOR, Signal.ETCO2_MMHG) >= NO_CO2_MMHG) n.y[seenS + 1] = n.tS;
    }

    /** The sensor that a condition is judged by. */
    static Measured sensorOf(AlarmCondition condition) {
        return switch (condition) {
            case AIRWAY_PRESSURE_HIGH, AIRWAY_PRESSURE_LOW, CONTINUING_AIRWAY_PRESSURE_HIGH, OBSTRUCTION, DISCONNECTION, RATE_HIGH, APNOEA, PEEP_LOW,
                    PEEP_HIGH, VENTILATOR_FAULT, STANDBY_REMINDER, EXTERNAL_POWER_LOST -> Measured.AIRWAY_PRESSURE;
            case EXPIRED_TIDAL_VOLUME_LOW, EXPIRED_TIDAL_VOLUME_HIGH, EXPIRED_MINUTE_VOLUME_LOW, EXPIRED_MINUTE_VOLUME_HIGH, LEAK_HIGH -> Measured.EXPIRED_VOLUME;
            case VOLUME_NOT_REACHED -> Measured.INSPIRED_VOLUME;
            case END_TIDAL_CO2_LOW, END_TIDAL_CO2_HIGH, CO2_LINE_BLOCKED -> Measured.END_TIDAL_CO2;
            case INSPIRED_CO2_HIGH -> Measured.INSPIRED_CO2;
            case OXYGEN_LOW, OXYGEN_HIGH -> Measured.INSPIRED_OXYGEN;
            case GAS_SUPPLY_LOW, GAS_SUPPLY_FAILED -> Measured.SUPPLY_PRESSURE;
            case BATTERY_LOW, BATTERY_NEARLY_EMPTY -> Measured.CHARGE;
            case SATURATION_LOW, PULSE_LOST -> Measured.SATURATION;
        };
    }

    double sinceBreathS(Now n, From from) { return n.tS - n.y[seenS + from.ordinal()]; }

    /** What is shown and held against the limits of a condition; null where no limit, or more than one value, decides. */
    static Signal signalOf(AlarmCondition condition) {
        return switch (condition) {
            case AIRWAY_PRESSURE_HIGH, AIRWAY_PRESSURE_LOW -> Signal.PEAK;
            case CONTINUING_AIRWAY_PRESSURE_HIGH -> Signal.LOWEST;
            case EXPIRED_TIDAL_VOLUME_LOW, EXPIRED_TIDAL_VOLUME_HIGH -> Signal.EXPIRED_ML;
            case EXPIRED_MINUTE_VOLUME_LOW, EXPIRED_MINUTE_VOLUME_HIGH -> Signal.MINUTE_L;
            case RATE_HIGH -> Signal.RATE;
            case PEEP_LOW, PEEP_HIGH -> Signal.END_PRESSURE;
            case END_TIDAL_CO2_LOW, END_TIDAL_CO2_HIGH -> Signal.ETCO2_MMHG;
            case INSPIRED_CO2_HIGH -> Signal.INSPIRED_CO2_MMHG;
            case OXYGEN_LOW, OXYGEN_HIGH -> Signal.FIO2;
            case GAS_SUPPLY_LOW, GAS_SUPPLY_FAILED -> Signal.SUPPLY_BAR;
            case BATTERY_LOW, BATTERY_NEARLY_EMPTY -> Signal.CHARGE;
            case SATURATION_LOW -> Signal.SPO2;
            case OBSTRUCTION, DISCONNECTION, APNOEA, VOLUME_NOT_REACHED, CO2_LINE_BLOCKED, EXTERNAL_POWER_LOST, LEAK_HIGH, VENTILATOR_FAULT, STANDBY_REMINDER, PULSE_LOST -> null;
        };
    }

    boolean crosses(Now n, AlarmLimit limit) {
        From from = limit.from();
        boolean breath = n.get(Column.KIND) >= 0.5;
        return switch (limit.condition()) {
            case AIRWAY_PRESSURE_HIGH -> over(n, limit, Signal.PEAK);
            case AIRWAY_PRESSURE_LOW -> (breath || n.get(Knob.RATE_SET) > 0) && under(n, limit, Signal.PEAK);
            case CONTINUING_AIRWAY_PRESSURE_HIGH -> over(n, limit, Signal.LOWEST);
            case OBSTRUCTION -> obstructed(n, from, breath);
            case DISCONNECTION -> disconnected(n, from, breath);
            case EXPIRED_TIDAL_VOLUME_LOW -> breath && under(n, limit, Signal.EXPIRED_ML);
            case EXPIRED_TIDAL_VOLUME_HIGH -> breath && over(n, limit, Signal.EXPIRED_ML);
            case EXPIRED_MINUTE_VOLUME_LOW -> under(n, limit, Signal.MINUTE_L);
            case EXPIRED_MINUTE_VOLUME_HIGH -> over(n, limit, Signal.MINUTE_L);
            case RATE_HIGH -> over(n, limit, Signal.RATE);
            case APNOEA -> apnoea(n, from, limit.high());
            case VOLUME_NOT_REACHED -> breath && n.get(Column.VOLUME_NOT_REACHED) >= 0.5 && heldBack(n);
            case PEEP_LOW -> under(n, limit, Signal.END_PRESSURE);
            case PEEP_HIGH -> over(n, limit, Signal.END_PRESSURE);
            case END_TIDAL_CO2_LOW -> under(n, limit, Signal.ETCO2_MMHG);
            case END_TIDAL_CO2_HIGH -> over(n, limit, Signal.ETCO2_MMHG);
            case INSPIRED_CO2_HIGH -> over(n, limit, Signal.INSPIRED_CO2_MMHG);
            case CO2_LINE_BLOCKED -> sensing.has(from, Measured.END_TIDAL_CO2) && n.get(Knob.SENSOR_FROZEN, Sensing.copy(from, Measured.END_TIDAL_CO2)) >= 0.5;
            case OXYGEN_LOW -> under(n, limit, Signal.FIO2);
            case OXYGEN_HIGH -> over(n, limit, Signal.FIO2);
            case GAS_SUPPLY_LOW, GAS_SUPPLY_FAILED -> under(n, limit, Signal.SUPPLY_BAR);
            case BATTERY_LOW, BATTERY_NEARLY_EMPTY -> !n.on(Knob.MAINS) && under(n, limit, Signal.CHARGE);
            case EXTERNAL_POWER_LOST -> n.y[hadMains] >= 0.5 && !n.on(Knob.MAINS);
            case LEAK_HIGH -> leaks(n, limit);
            case SATURATION_LOW -> under(n, limit, Signal.SPO2);
            case PULSE_LOST -> sensing.pulseLost(n, from);
            case VENTILATOR_FAULT -> dead(n);
            case STANDBY_REMINDER -> limit.high().isPresent() && n.tS - n.y[standbyS] >= limit.high().getAsDouble();
        };
    }

    private boolean over(Now n, AlarmLimit limit, Signal signal) {
        return limit.high().isPresent() && sensing.shown(n, limit.from(), signal) >= limit.high().getAsDouble();
    }

    private boolean under(Now n, AlarmLimit limit, Signal signal) {
        return limit.low().isPresent() && sensing.shown(n, limit.from(), signal) < limit.low().getAsDouble();
    }

    private boolean apnoea(Now n, From from, OptionalDouble afterS) {
        if (from == From.MONITOR && !sensing.has(from, Measured.END_TIDAL_CO2)) return false;
        return afterS.isPresent() && n.tS - n.y[seenS + from.ordinal()] >= afterS.getAsDouble();
    }

    private boolean disconnected(Now n, From from, boolean breath) {
        if (!breath) return false;
        double in = sensing.shown(n, from, Signal.INSPIRED_ML);
        double out = sensing.shown(n, from, Signal.EXPIRED_ML);
        if (in > 0 && out < LOST_SHARE * in && !holdsPressure(n, from)) return true;
        return sensing.shown(n, from, Signal.PEAK) < lostBelowCmH2O();
    }

    /** A breath that does not reach this pressure went nowhere. */
    double lostBelowCmH2O() { return LOST_SHARE * (Double.isNaN(expected.peakCmH2O()) ? 20 : expected.peakCmH2O()); }

    /** A smaller breath may mean that the way is shut; none where no volume is expected. */
    double blockedBelowMl() { return Double.isNaN(expected.tidalVolumeMl()) ? Double.NEGATIVE_INFINITY : BLOCKED_SHARE * expected.tidalVolumeMl(); }

    /** Whether pressure stays up between breaths, more than half of the way from PEEP to the peak: nothing is open there, something is shut. Common practice, no source. */
    private boolean holdsPressure(Now n, From from) {
        double peepCmH2O = n.get(Knob.PEEP_SET), swing = sensing.shown(n, from, Signal.PEAK) - peepCmH2O;
        return swing > 2 && sensing.shown(n, from, Signal.END_PRESSURE) - peepCmH2O > 0.5 * swing;
    }

    private boolean obstructed(Now n, From from, boolean breath) {
        if (!breath) return false;
        double in = sensing.shown(n, from, Signal.INSPIRED_ML);
        double peak = sensing.shown(n, from, Signal.PEAK);
        double high = Math.min(n.get(Knob.PRESSURE_LIMIT_SET) - 1, Double.isNaN(expected.peakCmH2O()) ? 20 : 0.8 * expected.peakCmH2O());
        return in < blockedBelowMl() && peak >= high;
    }

    /** Whether the device itself gave less than was set; what it gave and a leak or an open circuit took, it takes for given. */
    private static boolean heldBack(Now n) { return givenShare(n) < SHORT_SHARE; }

    /** What the device itself gave of the set volume, without what the circuit swallowed; {@code NaN} where none is set. */
    static double givenShare(Now n) {
        double squeezed = n.get(Knob.CIRCUIT_COMPLIANCE) * Math.max(0, n.get(Column.PEAK_CMH2O) - n.get(Column.PEEP_CMH2O));
        double set = n.get(Knob.TIDAL_VOLUME_SET);
        return set > 0 ? (n.get(Column.INSPIRED_AT_VENTILATOR_ML) - squeezed) / set : Double.NaN;
    }

    private boolean leaks(Now n, AlarmLimit limit) {
        double in = sensing.shown(n, limit.from(), Signal.INSPIRED_ML);
        double out = sensing.shown(n, limit.from(), Signal.EXPIRED_ML);
        return limit.high().isPresent() && in > 0 && 1 - out / in >= limit.high().getAsDouble();
    }
}
