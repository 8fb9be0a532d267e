package leeway.core.alarm;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import leeway.core.alarm.AlarmLimit.From;
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

/**
 * The sensors of ventilator and monitor: what is shown, never what is true. Leaves out: drift with temperature, motion,
 * the trace within a breath (a device is judged by the numbers it makes of a breath), and carboxyhaemoglobin.
 * <p>shown = gain × true + bias + noise, late by the sensor's delay and lag, rounded to its resolution. Noise and bias are
 * drawn by (seed, draw, sensor, breath); draw 0 has neither. A frozen sensor shows its last value. A sensor on the circuit's side
 * of an open connection, or behind a closed airway, sees what passes it: nothing.
 * <p>The oximeter shows the mean of the arterial saturation over its averaging time, as late as its delay; the delay
 * grows as the output falls (transit time is volume over flow; at most {@value #SLOWEST}-fold, common practice, no source).
 */
public final class Sensing implements Part {
    static final double RATE_SMOOTHING_S = 10;
    private static final double SLOWEST = 4;
    /** Saturations kept: 96 rows of 1 s and more reach back beyond four times the longest delay that a sheet may have. */
    private static final int KEPT = 96;
    private static final int SIGNALS = Signal.values().length;
    /** First sensor copy of the monitor in {@link Knob#SENSOR_GAIN}; the ventilator's begin at 0. */
    private static final int MONITOR_COPY = 16;

    private final Sensor[][] sensors = new Sensor[2][Measured.values().length];
    private final double[][] bias = new double[2][Measured.values().length];
    private final Expected expected;
    private final Draw draw;
    private int shown;
    private int highest;
    private int lowest;
    private int rows;
    private int kept;
    private int startOutput;

    public Sensing(Ventilator ventilator, Monitor monitor, Expected expected, Draw draw) {
        this(Map.of(From.VENTILATOR, ventilator.sensors(), From.MONITOR, monitor.sensors()), expected, draw);
    }

    Sensing(Map<From, List<Sensor>> devices, Expected expected, Draw draw) {
        for (From from : From.values()) {
            for (Sensor sensor : devices.getOrDefault(from, List.of())) {
                int m = sensor.measured().ordinal();
                sensors[from.ordinal()][m] = sensor;
                bias[from.ordinal()][m] = sensor.biasBand() * (2 * draw.uniform("bias of " + from.words() + " " + sensor.measured().words()) - 1);
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

    /** The highest airway pressure that the device has seen in the running breath. */
    double highestSoFar(Now n, From from) {
        return n.y[highest + from.ordinal()];
    }

    /** How late a device knows what its sensor saw, s. */
    double lateS(From from, Measured measured) {
        Sensor sensor = sensors[from.ordinal()][measured.ordinal()];
        return sensor == null || measured == Measured.SATURATION ? 0 : sensor.delayS() + sensor.lagS();
    }

    /** The step in which a device shows a signal; 0 for none. */
    double resolution(From from, Signal signal) {
        Sensor sensor = sensors[from.ordinal()][signal.sensor().ordinal()];
        return sensor == null ? 0 : sensor.resolution();
    }

    boolean has(From from, Measured measured) {
        return sensors[from.ordinal()][measured.ordinal()] != null;
    }

    @Override
    public void claim(Claims claims) {
        shown = claims.state(2 * SIGNALS);
        highest = claims.state(2);
        lowest = claims.state(2);
        rows = claims.state(1);
        kept = claims.state(2 * KEPT);
        startOutput = claims.state(1);
        claims.reads(Knob.SENSOR_GAIN, Knob.SENSOR_BIAS, Knob.SENSOR_FROZEN, Knob.MONITOR_ON, Knob.CARDIAC_OUTPUT);
    }

    @Override
    public void begin(Now n) {
        Arrays.fill(n.y, shown, shown + 2 * SIGNALS, Double.NaN);
        Arrays.fill(n.y, kept, kept + 2 * KEPT, Double.NaN);
        n.y[rows] = 0;
        n.y[startOutput] = n.get(Knob.CARDIAC_OUTPUT);
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
        if (has(from, signal.sensor())) n.y[shown + from.ordinal() * SIGNALS + signal.ordinal()] = value;
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
        return value * n.p[Knob.SENSOR_GAIN.slot(copy)] + n.p[Knob.SENSOR_BIAS.slot(copy)] + bias[d][m];
    }

    @Override
    public void row(Now n, Script script, Sink out) {
        double count = ++n.y[rows];
        double endS = n.get(Column.END_S);
        double lengthS = Math.max(1e-3, endS - n.get(Column.AT_S));
        keep(n, endS, n.get(Column.SAO2));
        for (int d = 0; d < 2; d++) {
            boolean on = d == From.VENTILATOR.ordinal() ? n.level[Level.POWERLESS.ordinal()] < 0.5 : n.on(Knob.MONITOR_ON);
            if (!on) {
                Arrays.fill(n.y, shown + d * SIGNALS, shown + (d + 1) * SIGNALS, Double.NaN);
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
        double noise = noise(sensor, d, Measured.AIRWAY_PRESSURE.ordinal(), count);
        int base = shown + d * SIGNALS;
        // highest and lowest have gain and bias in them already
        n.y[base + Signal.PEAK.ordinal()] = stepped(sensor, n.y[highest + d] + noise);
        n.y[base + Signal.LOWEST.ordinal()] = stepped(sensor, n.y[lowest + d] + noise);
        double end = n.level[(sensor.place() == Place.VENTILATOR ? Level.PVENT_CMH2O : Level.PAW_CMH2O).ordinal()];
        n.y[base + Signal.END_PRESSURE.ordinal()] = stepped(sensor, altered(n, d, Measured.AIRWAY_PRESSURE.ordinal(), copy, end) + noise);
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
            double value = altered(n, d, m, d * MONITOR_COPY + m, n.get(Column.FIO2)) + noise(cell, d, m, count);
            smooth(n, d, Signal.FIO2, value, lengthS, cell.lagS());
        }
        Sensor oximeter = sensors[d][Measured.SATURATION.ordinal()];
        if (oximeter != null) {
            double late = oximeter.delayS() * Math.min(SLOWEST, Math.max(1, n.y[startOutput] / Math.max(1e-3, n.get(Knob.CARDIAC_OUTPUT))));
            double mean = meanSaturation(n, endS - late - oximeter.averageS(), endS - late);
            if (!Double.isNaN(mean)) show(n, d, Signal.SPO2, mean, count);
        }
    }

    private void show(Now n, int d, Signal signal, double value, double count) {
        int m = signal.sensor().ordinal();
        Sensor sensor = sensors[d][m];
        int copy = d * MONITOR_COPY + m;
        if (sensor == null || n.p[Knob.SENSOR_FROZEN.slot(copy)] >= 0.5) return;
        double v = altered(n, d, m, copy, value) + noise(sensor, d, m, count);
        if (m == Measured.SATURATION.ordinal() || m == Measured.CHARGE.ordinal()) v = Math.min(1, v);
        n.y[shown + d * SIGNALS + signal.ordinal()] = stepped(sensor, Math.max(0, v));
    }

    private void smooth(Now n, int d, Signal signal, double value, double lengthS, double timeS) {
        int at = shown + d * SIGNALS + signal.ordinal();
        double before = n.y[at];
        n.y[at] = Double.isNaN(before) || timeS <= 0 ? value : before + (value - before) * (1 - StrictMath.exp(-lengthS / timeS));
    }

    private static double stepped(Sensor sensor, double value) {
        return sensor.resolution() > 0 ? Math.rint(value / sensor.resolution()) * sensor.resolution() : value;
    }

    private double noise(Sensor sensor, int d, int m, double count) {
        return draw.draw() == 0 || sensor.noiseSd() == 0 ? 0 : sensor.noiseSd() * Chance.normal(draw, d * MONITOR_COPY + m, (long) count);
    }

    private void keep(Now n, double tS, double saturation) {
        int slot = kept + 2 * ((int) n.y[rows] % KEPT);
        n.y[slot] = tS;
        n.y[slot + 1] = saturation;
    }

    /** Mean of the kept saturations, straight between them, from a time to a time; the oldest known reaches back for ever. */
    private double meanSaturation(Now n, double fromS, double toS) {
        int newest = (int) n.y[rows] % KEPT;
        double sum = 0;
        double coveredS = 0;
        double laterS = Double.NaN;
        double later = Double.NaN;
        for (int k = 0; k < KEPT; k++) {
            int slot = kept + 2 * ((newest - k + KEPT) % KEPT);
            double atS = n.y[slot];
            double value = n.y[slot + 1];
            if (Double.isNaN(atS) || Double.isNaN(value)) break;
            if (!Double.isNaN(laterS)) {
                double a = Math.max(fromS, atS);
                double b = Math.min(toS, laterS);
                if (b > a) {
                    double slope = laterS > atS ? (later - value) / (laterS - atS) : 0;
                    sum += (b - a) * (value + slope * ((a + b) / 2 - atS));
                    coveredS += b - a;
                }
            }
            laterS = atS;
            later = value;
            if (atS <= fromS) break;
        }
        if (Double.isNaN(later)) return Double.NaN;
        double spanS = toS - fromS;
        if (spanS <= 0) return later;
        return (sum + Math.max(0, spanS - coveredS) * later) / spanS;
    }
}
