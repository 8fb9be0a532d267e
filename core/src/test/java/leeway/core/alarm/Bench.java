package leeway.core.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.kit.AlarmCondition;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.kit.Sensor;
import leeway.core.kit.Sensor.Measured;
import leeway.core.kit.Sensor.Place;
import leeway.core.kit.Ventilator;
import leeway.core.run.Change;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/** Real breaths of a test lung under two invented devices, and a saturation that follows a line; what is heard, and when. */
final class Bench {
    static final double PEAK = 22;
    static final Expected EXPECTED = new Expected(PEAK, 17, 420, 6.3, 40, 0.96, 15);
    static final Ventilator.Gas GAS = new Ventilator.Gas(List.of(), OptionalDouble.empty(), true, 0, 0, 0, 0, 0, 2.7, 6, false,
            Ventilator.VolumeBasis.BTPS, Ventilator.Altitude.COMPENSATED, 0.05);

    /** What was heard. */
    record Heard(AlarmCondition condition, From from, double atS) { }

    final List<AlarmLimit> limits = new ArrayList<>();
    final List<Sensor> ventilator = new ArrayList<>(List.of(sensor(Measured.AIRWAY_PRESSURE, Place.PATIENT, 0.02, 0),
            sensor(Measured.INSPIRED_VOLUME, Place.VENTILATOR, 0.02, 0), sensor(Measured.EXPIRED_VOLUME, Place.PATIENT, 0.02, 30)));
    final List<Sensor> monitor = new ArrayList<>(List.of(sensor(Measured.SATURATION, Place.FINGER, 20, 8)));
    private final Script script = Breath.base(new Script(), Mechanics.linear(10, 45), BreathSettings.volume(420, 15, 1.3, 0.2, 5));
    Oximeter.Light light = Oximeter.Light.USUAL;
    /** Saturation as a function of time. */
    java.util.function.DoubleUnaryOperator saturation = t -> 0.96;

    Bench() {
        script.base(Knob.CARDIAC_OUTPUT, 5);
    }

    static Sensor sensor(Measured measured, Place place, double delayS, double averageS) {
        return new Sensor(measured, place, delayS, 0, averageS, 0, 0, 0, OptionalDouble.empty(), 0, 0);
    }

    Bench limit(AlarmCondition condition, From from, double low, double high, int breaths, double delayS, double generationS) {
        limits.add(new AlarmLimit(condition, from, Double.isNaN(low) ? OptionalDouble.empty() : OptionalDouble.of(low),
                Double.isNaN(high) ? OptionalDouble.empty() : OptionalDouble.of(high), delayS, breaths, generationS, Priority.HIGH, false, "for the test"));
        return this;
    }

    Bench change(Change change) {
        script.add(change);
        return this;
    }

    /** Everything heard until the end. */
    List<Heard> heard(double endS, Draw draw) {
        List<Heard> heard = new ArrayList<>();
        run(endS, draw, new Sink() {
            @Override public void event(double tS, int what, double value) {
                if (what >= Speaking.FIRST_EVENT && Speaking.whatOf(what) == Speaking.HEARD) {
                    AlarmLimit l = limits.get(Speaking.limitOf(what));
                    heard.add(new Heard(l.condition(), l.from(), tS));
                }
            }
        });
        return heard;
    }

    void run(double endS, Draw draw, Sink sink) {
        Sensing sensing = new Sensing(Map.of(From.VENTILATOR, ventilator, From.MONITOR, monitor), light, EXPECTED, draw);
        Loop loop = new Loop(new Breath(Mechanics.linear(10, 45), DeviceLimits.strong()), new Line(), sensing, new Speaking(limits, sensing, EXPECTED, GAS, draw));
        Script own = script.copy();
        Now n = loop.begin(own);
        loop.to(endS, n, own, sink);
    }

    double firstS(AlarmCondition condition, double endS) {
        return heard(endS, new Draw(1, 0)).stream().filter(h -> h.condition() == condition).mapToDouble(Heard::atS).findFirst().orElse(Double.POSITIVE_INFINITY);
    }

    /** Blood whose saturation is given. */
    private final class Line implements Part {
        @Override public void claim(Claims claims) { }

        @Override public void begin(Now n) { }

        @Override public double nextS(Now n, double latestS) { return Double.POSITIVE_INFINITY; }

        @Override public void pass(Now n, double dtS) { }

        @Override public void row(Now n, Script s, Sink out) { n.set(Column.SAO2, saturation.applyAsDouble(n.tS)); }
    }
}
