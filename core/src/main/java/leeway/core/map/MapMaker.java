package leeway.core.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import leeway.core.journey.LegState;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Mode;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.map.OperatingMap.Axis;
import leeway.core.map.OperatingMap.Chosen;
import leeway.core.map.OperatingMap.Limit;
import leeway.core.map.OperatingMap.Line;
import leeway.core.map.OperatingMap.Turn;
import leeway.core.run.Stopped;
import leeway.core.start.Start;
import leeway.core.supply.OxygenDraw;
import leeway.core.supply.Supply;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * Works out an operating map: the full steady model at every point of a grid.
 * <p>Leaves out what the steady state leaves out (time: a short journey does not reach it), and what changes when one knob
 * makes a crew turn another: PEEP, oxygen and inspiratory time stand as chosen, the last never longer than half of a breath.
 */
public final class MapMaker {
    /** Points a side. */
    public static final int POINTS = 60;
    /** Points a side for a patient who breathes, whose steady state is the mean of a simulated stretch. */
    public static final int POINTS_BREATHING = 20;
    /** Steps in which the end of a turn is looked for between two points. */
    private static final int BISECTIONS = 12;
    private final Start start;
    private final Ventilated v;
    private final Transport transport;
    private final Settings base;
    private final double kg;
    private final List<Bound> bounds;
    private final Axis x;
    private final Axis y;
    private final Steady standing;

    private MapMaker(Start start, Transport transport, int points) {
        this.start = start;
        this.v = start.ventilated();
        this.transport = transport;
        this.base = start.settings();
        this.kg = v.patient().predictedKg();
        this.bounds = Bounds.of(start, transport.policy(), base);
        this.x = Axes.x(start, points);
        this.y = Axes.y(start, points);
        this.standing = Steady.of(v, base, start.barometerHPa());
    }

    /** With the usual number of points. */
    public static OperatingMap of(Start start, Transport transport) { return of(start, transport, () -> false); }

    /** The same, stopped with {@link Stopped} soon after it is told to be unwanted. */
    public static OperatingMap of(Start start, Transport transport, BooleanSupplier unwanted) {
        boolean breathing = start.ventilated().effort(start.settings()).present() || start.settings().mode().map(m -> !m.hasRate()).orElse(false);
        return new MapMaker(start, transport, breathing ? POINTS_BREATHING : POINTS).make(unwanted);
    }

    public static OperatingMap of(Start start, Transport transport, int points) { return new MapMaker(start, transport, points).make(() -> false); }

    private OperatingMap make(BooleanSupplier unwanted) {
        int nx = x.values().length;
        int ny = y.values().length;
        double[][][] values = new double[bounds.size()][ny][nx];
        double[][] signed = new double[ny][nx];
        double[][] draw = new double[ny][nx];
        double[][] paco2 = new double[ny][nx];
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                if (unwanted.getAsBoolean()) throw new Stopped(0);
                Steady s = at(x.values()[i], y.values()[j]);
                double least = 1;
                for (int k = 0; k < values.length; k++) {
                    double value = bounds.get(k).what().of(s, kg);
                    values[k][j][i] = value;
                    if (!Double.isNaN(value)) least = Math.min(least, bounds.get(k).room(value));
                }
                signed[j][i] = least;
                paco2[j][i] = s.gases().paco2MmHg();
                draw[j][i] = draw(s);
            }
        }
        List<Limit> limits = new ArrayList<>();
        for (int k = 0; k < values.length; k++) {
            Bound b = bounds.get(k);
            limits.add(new Limit(b.name(), b.unit(), b.limit(), b.upper(), b.full(), values[k]));
        }
        return new OperatingMap(transport.title(), x, y, limits, Lines.of(start, transport, paco2, draw), signed, chosen(), held(), Depth.little(start, transport),
                Sensitivity.of(start, transport));
    }

    private Steady at(double xValue, double yValue) {
        Settings s = turned(xValue, yValue);
        return Steady.later(v, s, start.barometerHPa(), s.get(Setting.FIO2, 0.21), standing);
    }

    /** The settings with the two knobs turned; an inspiratory time that no longer fits gives way. */
    private Settings turned(double xValue, double yValue) {
        Settings s = base.with(x.setting(), xValue).with(y.setting(), yValue);
        if (y.setting() != Setting.RATE) return s;
        double half = 30 / yValue;
        double ti = s.get(Setting.INSPIRATORY_TIME, half);
        if (ti > half) s = s.with(Setting.INSPIRATORY_TIME, half);
        if (s.get(Setting.PAUSE, 0) > Math.min(ti, half) / 2) s = s.with(Setting.PAUSE, Math.min(ti, half) / 2);
        return s;
    }

    private double draw(Steady s) {
        Leg first = transport.legs().get(0);
        Optional<Store> store = first.oxygen().stream().findFirst().map(transport::store);
        return OxygenDraw.litresPerMin(transport.ventilator(), s.need(), store);
    }

    private double room(double xValue, double yValue) {
        Steady s = at(xValue, yValue);
        double least = 1;
        for (Bound b : bounds) {
            double value = b.what().of(s, kg);
            if (!Double.isNaN(value)) least = Math.min(least, b.room(value));
        }
        return least;
    }

    private String nearest(double xValue, double yValue) {
        Steady s = at(xValue, yValue);
        String name = "";
        double least = Double.POSITIVE_INFINITY;
        for (Bound b : bounds) {
            double value = b.what().of(s, kg);
            if (Double.isNaN(value) || b.room(value) >= least) continue;
            least = b.room(value);
            name = b.name();
        }
        return name;
    }

    private Chosen chosen() {
        double cx = base.get(x.setting(), Double.NaN);
        double cy = base.get(y.setting(), Double.NaN);
        double room = room(cx, cy);
        List<String> beyond = new ArrayList<>();
        Steady s = at(cx, cy);
        for (Bound b : bounds) if (b.room(b.what().of(s, kg)) < 0) beyond.add(b.name());
        Optional<Turn> turnX = room <= 0 ? Optional.empty() : Optional.of(turn(x, cx, value -> room(value, cy), value -> nearest(value, cy)));
        Optional<Turn> turnY = room <= 0 ? Optional.empty() : Optional.of(turn(y, cy, value -> room(cx, value), value -> nearest(cx, value)));
        return new Chosen(cx, cy, Math.max(0, Math.min(1, room)), nearest(cx, cy), beyond, turnX, turnY);
    }

    private interface Along { double room(double value); }

    private interface Named { String limit(double value); }

    private static Turn turn(Axis axis, double chosen, Along along, Named named) {
        double[] v = axis.values();
        double from = v[0];
        String endsFrom = "";
        double inside = chosen;
        for (int i = v.length - 1; i >= 0; i--) {
            if (v[i] >= chosen) continue;
            if (along.room(v[i]) > 0) {
                inside = v[i];
                continue;
            }
            from = end(inside, v[i], along);
            endsFrom = named.limit(from);
            break;
        }
        double to = v[v.length - 1];
        String endsTo = "";
        inside = chosen;
        for (double value : v) {
            if (value <= chosen) continue;
            if (along.room(value) > 0) {
                inside = value;
                continue;
            }
            to = end(inside, value, along);
            endsTo = named.limit(to);
            break;
        }
        return new Turn(from, endsFrom, to, endsTo);
    }

    /** The last value with room between one that has and one that has none. */
    private static double end(double inside, double beyond, Along along) {
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = 0.5 * (inside + beyond);
            if (along.room(middle) > 0) inside = middle; else beyond = middle;
        }
        return inside;
    }

    private List<String> held() {
        List<String> held = new ArrayList<>();
        if (y.setting() == Setting.RATE) held.add("Inspiratory time stays as set and gives way where it would take more than half of the breath.");
        if (v.effort(base).present()) held.add("Own effort is as declared at the chosen point; elsewhere it is what carbon dioxide and oxygen make of it there, unless the file says drive: fixed.");
        held.add("Everything else stays as set; what the map shows is the steady state of the first leg, which a short journey does not reach.");
        if (base.mode().map(m -> m.control() == Mode.Control.VOLUME_TARGETED_PRESSURE).orElse(false)) held.add("The pressure is the one that reaches the volume.");
        return held;
    }

    /** Axis ends that the device has. */
    static double[] within(Optional<Range> range, double from, double to, double chosen, int points) {
        double low = Math.min(chosen, range.map(r -> Math.max(r.min(), from)).orElse(from));
        double high = Math.max(chosen, range.map(r -> Math.min(r.max(), to)).orElse(to));
        if (!(high > low)) {
            low = 0.8 * chosen;
            high = 1.2 * chosen + 1e-3;
        }
        double[] values = new double[points];
        for (int i = 0; i < points; i++) values[i] = low + (high - low) * i / (points - 1);
        return values;
    }

    static List<LegState> legs(Transport t, Ventilated v, Settings s) { return LegState.of(t, v, s); }

    static double usableL(Transport t, Ventilated v, Settings s) {
        return Supply.of(t, legs(t, v, s).stream().map(LegState::need).toList(), Optional.empty(), 1, 2).oxygen().usableL();
    }
}
