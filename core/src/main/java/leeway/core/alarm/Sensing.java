package leeway.core.alarm;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.alarm.Oximeter.Light;
import leeway.core.gas.Exp;
import leeway.core.kit.Monitor;
import leeway.core.kit.Sensor;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Sensor.Place;
import leeway.core.kit.Ventilator;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Flux;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.PatientEntry;

/**
 * The sensors of ventilator and monitor: what is shown, never what is true. Leaves out: drift with temperature, motion,
 * and the trace within a breath (a device is judged by the numbers it makes of a breath).
 * <p>shown = gain × true + bias + drift + noise, late by the sensor's delay and lag, rounded to its resolution. Noise and bias are
 * drawn by (seed, draw, sensor, breath); draw 0 has neither. Drift is that of the sheet times the hours since departure; between
 * none and twice as much, drawn, and as the sheet says in draw 0. A frozen sensor shows its last value. A sensor on the circuit's side
 * of an open connection, or behind a closed airway, sees what passes it: nothing.
 * <p>What the probe of the oximeter sees is {@link Oximeter}'s.
 */
public final class Sensing implements Part {
    static final double RATE_SMOOTHING_S = 10;
    private static final int SIGNALS = Signal.values().length;
    /** First sensor copy of the monitor in {@link Knob#SENSOR_GAIN}; the ventilator's begin at 0. */
    private static final int MONITOR_COPY = 16;

    private final Sensor[][] sensors = new Sensor[2][Measured.values().length];
    private final double[][] bias = new double[2][Measured.values().length];
    private final Expected expected;
    private final Draw draw;
    private int shown;
    private int unrounded;
    private int highest;
    private int lowest;
    private int rows;
    private final double[][] drift = new double[2][Measured.values().length];
    private final Oximeter oximeter;

    /** @param outputShare cardiac output at the start over what is usual for this patient */
    public Sensing(Ventilator ventilator, Monitor monitor, PatientEntry patient, double outputShare, Expected expected, Draw draw) {
        this(Map.of(From.VENTILATOR, ventilator.sensors(), From.MONITOR, monitor.sensors()), new Light(patient.carboxyhaemoglobin(), patient.methaemoglobin(), outputShare), expected, draw);
    }

    Sensing(Map<From, List<Sensor>> devices, Light light, Expected expected, Draw draw) {
        oximeter = new Oximeter(light);
        for (From from : From.values()) {
            for (Sensor sensor : devices.getOrDefault(from, List.of())) {
                int m = sensor.measured().ordinal();
                sensors[from.ordinal()][m] = sensor;
                bias[from.ordinal()][m] = sensor.biasBand() * (2 * draw.uniform("bias of " + from.words() + " " + sensor.measured().words()) - 1);
                double times = draw.draw() == 0 ? 1 : 2 * draw.uniform("drift of " + from.words() + " " + sensor.measured().words());
                drift[from.ordinal()][m] = sensor.driftPerHour() * times / 3600;
            }
        }
        this.expected = expected;
        this.draw = draw;
    }

    /** Which copy of {@link Knob#SENSOR_GAIN}, {@code SENSOR_BIAS} and {@code SENSOR_FROZEN} belongs to a sensor. */
    public static int copy(From from, Measured measured) {
        return measured.ordinal() + (from == From.MONITOR ? MONITOR_COPY : 0);
    }

    /** What a device shows; {@code NaN} where it has no such sensor, or is off. */
    public double shown(Now n, From from, Signal signal) {
        return n.y[shown + from.ordinal() * SIGNALS + signal.ordinal()];
    }

    /** What a device shows, before it is rounded to its step. */
    double unrounded(Now n, From from, Signal signal) {
        return n.y[(rounds(from, signal) ? unrounded : shown) + from.ordinal() * SIGNALS + signal.ordinal()];
    }

    /** As a device would show it. */
    double rounded(From from, Signal signal, double value) {
        return rounds(from, signal) ? stepped(sensors[from.ordinal()][signal.sensor().ordinal()], value) : value;
    }

    private boolean rounds(From from, Signal signal) { return signal.inSteps() && sensors[from.ordinal()][signal.sensor().ordinal()] != null; }

    /** The highest airway pressure that the device has seen in the running breath. */
    double highestSoFar(Now n, From from) {
        return n.y[highest + from.ordinal()];
    }

    /** How late a device knows what its sensor saw, s. */
    double lateS(From from, Measured measured) {
        Sensor sensor = sensors[from.ordinal()][measured.ordinal()];
        return sensor == null || measured == Measured.SATURATION ? 0 : sensor.delayS() + sensor.lagS();
    }

    /** Whether a device has an oximeter whose pulse is too weak to read. */
    boolean pulseLost(Now n, From from) {
        Sensor probe = sensors[from.ordinal()][Measured.SATURATION.ordinal()];
        return probe != null && oximeter.lost(n, probe);
    }

    boolean has(From from, Measured measured) {
        return sensors[from.ordinal()][measured.ordinal()] != null;
    }

    @Override
    public void claim(Claims claims) {
        shown = claims.state(2 * SIGNALS);
        unrounded = claims.state(2 * SIGNALS);
        highest = claims.state(2);
        lowest = claims.state(2);
        rows = claims.state(1);
        oximeter.claim(claims);
        claims.reads(Knob.SENSOR_GAIN, Knob.SENSOR_BIAS, Knob.SENSOR_FROZEN, Knob.MONITOR_ON);
    }

    @Override
    public void begin(Now n) {
        Arrays.fill(n.y, shown, shown + 2 * SIGNALS, Double.NaN);
        Arrays.fill(n.y, unrounded, unrounded + 2 * SIGNALS, Double.NaN);
        n.y[rows] = 0;
        oximeter.begin(n);
        for (From from : From.values()) {
            forget(n, from.ordinal());
            // what was expected stands on the screens before the first breath
            put(n, from, Signal.MINUTE_L, expected.minuteVolumeLPerMin());
            put(n, from, Signal.RATE, expected.ratePerMin());
            put(n, from, Signal.SPO2, expected.spo2());
            put(n, from, Signal.FIO2, n.get(Knob.FIO2_SET));
            put(n, from, Signal.ETCO2_MMHG, expected.etco2MmHg());
        }
    }

    private void put(Now n, From from, Signal signal, double value) {
        if (!has(from, signal.sensor())) return;
        n.y[shown + from.ordinal() * SIGNALS + signal.ordinal()] = value;
        n.y[unrounded + from.ordinal() * SIGNALS + signal.ordinal()] = value;
    }

    private void forget(Now n, int device) {
        n.y[highest + device] = Double.NEGATIVE_INFINITY;
        n.y[lowest + device] = Double.POSITIVE_INFINITY;
    }

    @Override
    public double nextS(Now n, double latestS) {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public void pass(Now n, double dtS) {
        for (int d = 0; d < 2; d++) {
            Sensor sensor = sensors[d][Measured.AIRWAY_PRESSURE.ordinal()];
            if (sensor == null) continue;
            double high = n.level[Level.PAW_HIGH_CMH2O.ordinal()];
            double low = n.level[Level.PAW_LOW_CMH2O.ordinal()];
            if (sensor.place() == Place.VENTILATOR) {
                double own = n.level[Level.PVENT_CMH2O.ordinal()];
                high = Math.max(high, own);
                low = Math.min(low, own);
            }
            int copy = d * MONITOR_COPY + Measured.AIRWAY_PRESSURE.ordinal();
            if (n.p[Knob.SENSOR_FROZEN.slot(copy)] >= 0.5) continue;
            n.y[highest + d] = Math.max(n.y[highest + d], altered(n, d, Measured.AIRWAY_PRESSURE.ordinal(), copy, high));
            n.y[lowest + d] = Math.min(n.y[lowest + d], altered(n, d, Measured.AIRWAY_PRESSURE.ordinal(), copy, low));
        }
    }

    private double altered(Now n, int d, int m, int copy, double value) {
        return value * n.p[Knob.SENSOR_GAIN.slot(copy)] + n.p[Knob.SENSOR_BIAS.slot(copy)] + bias[d][m] + drift[d][m] * n.tS;
    }

    @Override
    public void row(Now n, Script script, Sink out) {
        double count = ++n.y[rows];
        double endS = n.get(Column.END_S);
        double lengthS = Math.max(1e-3, endS - n.get(Column.AT_S));
        oximeter.keep(n, endS, n.get(Column.SAO2));
        for (int d = 0; d < 2; d++) {
            boolean on = d == From.VENTILATOR.ordinal() ? n.level[Level.POWERLESS.ordinal()] < 0.5 : n.on(Knob.MONITOR_ON);
            if (!on) {
                Arrays.fill(n.y, shown + d * SIGNALS, shown + (d + 1) * SIGNALS, Double.NaN);
                Arrays.fill(n.y, unrounded + d * SIGNALS, unrounded + (d + 1) * SIGNALS, Double.NaN);
            } else {
                pressures(n, d, count);
                volumes(n, d, count, lengthS);
                gases(n, d, count, lengthS, endS);
                show(n, d, Signal.SUPPLY_BAR, n.level[Level.INLET_BAR.ordinal()], count);
                show(n, d, Signal.CHARGE, n.level[Level.CHARGE.ordinal()], count);
            }
            forget(n, d);
        }
        double spo2 = shown(n, From.MONITOR, Signal.SPO2);
        n.set(Column.SPO2, Double.isNaN(spo2) ? shown(n, From.VENTILATOR, Signal.SPO2) : spo2);
    }

    private void pressures(Now n, int d, double count) {
        Sensor sensor = sensors[d][Measured.AIRWAY_PRESSURE.ordinal()];
        if (sensor == null) return;
        int copy = d * MONITOR_COPY + Measured.AIRWAY_PRESSURE.ordinal();
        if (n.p[Knob.SENSOR_FROZEN.slot(copy)] >= 0.5) return;
        double noise = noise(n, sensor, d, Measured.AIRWAY_PRESSURE.ordinal(), count);
        // highest and lowest have gain and bias in them already
        put(n, d, Signal.PEAK, sensor, n.y[highest + d] + noise);
        put(n, d, Signal.LOWEST, sensor, n.y[lowest + d] + noise);
        double end = n.level[(sensor.place() == Place.VENTILATOR ? Level.PVENT_CMH2O : Level.PAW_CMH2O).ordinal()];
        put(n, d, Signal.END_PRESSURE, sensor, altered(n, d, Measured.AIRWAY_PRESSURE.ordinal(), copy, end) + noise);
    }

    private void put(Now n, int d, Signal signal, Sensor sensor, double value) {
        int i = d * SIGNALS + signal.ordinal();
        n.y[unrounded + i] = value;
        n.y[shown + i] = stepped(sensor, value);
    }

    private void volumes(Now n, int d, double count, double lengthS) {
        boolean breath = n.get(Column.KIND) >= 0.5;
        boolean off = n.on(Knob.OPEN_AT_PATIENT) || n.on(Knob.OPEN_AT_VENTILATOR);
        Sensor in = sensors[d][Measured.INSPIRED_VOLUME.ordinal()];
        if (in != null) {
            boolean own = in.place() == Place.VENTILATOR;
            show(n, d, Signal.INSPIRED_ML, breath ? n.get(own ? Column.INSPIRED_AT_VENTILATOR_ML : Column.INSPIRED_ML) : 0, count);
        }
        Sensor ex = sensors[d][Measured.EXPIRED_VOLUME.ordinal()];
        if (ex != null) {
            boolean own = ex.place() == Place.VENTILATOR;
            show(n, d, Signal.EXPIRED_ML, off ? 0 : n.get(own ? Column.EXPIRED_AT_VENTILATOR_ML : Column.EXPIRED_ML), count);
            double each = n.y[shown + d * SIGNALS + Signal.EXPIRED_ML.ordinal()];
            smooth(n, d, Signal.MINUTE_L, each * 0.06 / lengthS, lengthS, ex.averageS());
        }
        if (in != null || ex != null || sensors[d][Measured.AIRWAY_PRESSURE.ordinal()] != null) {
            smooth(n, d, Signal.RATE, breath ? 60 / lengthS : 0, lengthS, RATE_SMOOTHING_S);
        }
    }

    private void gases(Now n, int d, double count, double lengthS, double endS) {
        boolean off = n.on(Knob.OPEN_AT_PATIENT) || n.on(Knob.OPEN_AT_VENTILATOR);
        // gas reaches the sampling place only if a fair part of a breath comes out there: a fifth of the expected one
        double expired = n.get(Column.EXPIRED_ML);
        boolean passes = !off && expired >= 0.2 * (Double.isNaN(expected.tidalVolumeMl()) ? 100 : expected.tidalVolumeMl());
        show(n, d, Signal.ETCO2_MMHG, passes ? n.get(Column.ETCO2_MMHG) : 0, count);
        show(n, d, Signal.INSPIRED_CO2_MMHG, passes ? n.get(Column.INSPIRED_CO2_MMHG) : 0, count);
        Sensor cell = sensors[d][Measured.INSPIRED_OXYGEN.ordinal()];
        if (cell != null && !Double.isNaN(n.get(Column.FIO2)) && n.p[Knob.SENSOR_FROZEN.slot(d * MONITOR_COPY + Measured.INSPIRED_OXYGEN.ordinal())] < 0.5) {
            int m = Measured.INSPIRED_OXYGEN.ordinal();
            double value = altered(n, d, m, d * MONITOR_COPY + m, n.get(Column.FIO2)) + noise(n, cell, d, m, count);
            smooth(n, d, Signal.FIO2, value, lengthS, cell.lagS());
        }
        Sensor probe = sensors[d][Measured.SATURATION.ordinal()];
        if (probe == null) return;
        if (oximeter.lost(n, probe)) {
            n.y[shown + d * SIGNALS + Signal.SPO2.ordinal()] = Double.NaN;
            n.y[unrounded + d * SIGNALS + Signal.SPO2.ordinal()] = Double.NaN;
            return;
        }
        double seen = oximeter.seen(n, probe, endS);
        if (!Double.isNaN(seen)) show(n, d, Signal.SPO2, seen, count);
    }

    private void show(Now n, int d, Signal signal, double value, double count) {
        int m = signal.sensor().ordinal();
        Sensor sensor = sensors[d][m];
        int copy = d * MONITOR_COPY + m;
        if (sensor == null || n.p[Knob.SENSOR_FROZEN.slot(copy)] >= 0.5) return;
        double v = altered(n, d, m, copy, value) + noise(n, sensor, d, m, count);
        if (m == Measured.SATURATION.ordinal() || m == Measured.CHARGE.ordinal()) v = Math.min(1, v);
        put(n, d, signal, sensor, Math.max(0, v));
    }

    private void smooth(Now n, int d, Signal signal, double value, double lengthS, double timeS) {
        int at = shown + d * SIGNALS + signal.ordinal();
        double before = n.y[at];
        n.y[at] = Double.isNaN(before) || timeS <= 0 ? value : before + (value - before) * (1 - Exp.exp(-lengthS / timeS));
    }

    private static double stepped(Sensor sensor, double value) {
        return sensor.resolution() > 0 ? Math.rint(value / sensor.resolution()) * sensor.resolution() : value;
    }

    private double noise(Now now, Sensor sensor, int d, int m, double count) {
        if (draw.draw() == 0 || sensor.noiseSd() == 0) return 0;
        double sd = sensor.noiseSd() * (sensor.measured() == Measured.SATURATION ? oximeter.noiseTimes(now) : 1);
        return sd * Chance.normal(draw, d * MONITOR_COPY + m, (long) count);
    }
}
