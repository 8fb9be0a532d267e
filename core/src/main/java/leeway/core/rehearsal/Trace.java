package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import leeway.core.alarm.AlarmLimit;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.alarm.Sensing;
import leeway.core.alarm.Signal;
import leeway.core.alarm.Speaking;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * What is true and what each device shows while a fault lasts, breath by breath, at medians: a rehearsal to look at.
 * <p>Times are seconds from the fault; rows before it have negative ones. Leaves out: what the crew does, unless a moment
 * for the remedy is given; then the fault's remedy acts from that moment on.
 *
 * @param fault   that strikes
 * @param atS     when, from departure
 * @param rows    one a breath, or every 2 s without one
 * @param said    what the alarm systems did, in order
 */
public record Trace(Fault fault, String leg, double atS, OptionalDouble remedyS, List<Row> rows, List<Said> said) {
    public Trace {
        rows = List.copyOf(rows);
        said = List.copyOf(said);
    }

    /** One breath. What is shown is {@code NaN} where the device has no such sensor, or is off; what is true where the model does not know it. */
    public record Row(double tS, double sao2, double paco2MmHg, double expiredMl, double peakCmH2O, Shown ventilator, Shown monitor) { }

    /** What one device shows. */
    public record Shown(double spo2, double etco2MmHg, double expiredMl, double peakCmH2O) { }

    /** An alarm: its signal begins, it is heard, it is over. */
    public record Said(double tS, AlarmLimit limit, What what) { }

    /** What an alarm did. */
    public enum What { SIGNAL, HEARD, OVER }

    /**
     * @param known   faults that may strike together with this one, as its sheet says
     * @param remedyS seconds after the fault at which the crew acts; absent: never
     * @param beforeS how long before the fault the rows begin
     * @param forS    how long after it they end
     */
    public static Trace of(Stage stage, Fault fault, List<Fault> known, double atS, OptionalDouble remedyS, double beforeS, double forS) {
        int leg = 0;
        while (leg < stage.legs() - 1 && stage.legEndS(leg) <= atS) leg++;
        KitFacts kit = stage.facts(leg);
        List<Effect> effects = new ArrayList<>(fault.effects());
        fault.with().flatMap(name -> known.stream().filter(f -> f.name().equals(name)).findFirst()).ifPresent(f -> effects.addAll(f.effects()));
        List<Change> changes = Strike.changes(effects, atS, kit, stage.script());
        Script script = stage.script().copy();
        changes.forEach(script::add);
        if (remedyS.isPresent()) {
            double fromS = atS + remedyS.getAsDouble();
            if (fault.remedyEnds()) for (Change c : changes) if (c.untilS() > fromS) script.end(c, Math.max(fromS, c.atS()));
            for (Change c : Strike.changes(fault.remedy(), fromS, kit, stage.script())) script.add(c);
        }
        Now n = stage.loop().begin(script);
        Recorder recorder = new Recorder(stage.speaking(), atS, Math.max(0, atS - beforeS));
        stage.loop().to(atS + forS, n, script, recorder);
        return new Trace(fault, stage.transport().legs().get(leg).name(), atS, remedyS, recorder.rows, recorder.said);
    }

    private static final class Recorder implements Sink {
        private final Speaking speaking;
        private final double atS;
        private final double fromS;
        private final List<Row> rows = new ArrayList<>();
        private final List<Said> said = new ArrayList<>();

        Recorder(Speaking speaking, double atS, double fromS) {
            this.speaking = speaking;
            this.atS = atS;
            this.fromS = fromS;
        }

        @Override public void row(Now n) {
            if (n.tS < fromS) return;
            rows.add(new Row(n.tS - atS, n.get(Column.SAO2), n.get(Column.PACO2_MMHG), n.get(Column.EXPIRED_ML), n.get(Column.PEAK_CMH2O), shown(n, From.VENTILATOR), shown(n, From.MONITOR)));
        }

        private Shown shown(Now n, From from) {
            Sensing s = speaking.sensing();
            return new Shown(s.shown(n, from, Signal.SPO2), s.shown(n, from, Signal.ETCO2_MMHG), s.shown(n, from, Signal.EXPIRED_ML), s.shown(n, from, Signal.PEAK));
        }

        @Override public void event(double tS, int what, double value) {
            if (tS < fromS || what < Speaking.FIRST_EVENT) return;
            What happened = Arrays.asList(What.values()).get(Speaking.whatOf(what) - 1);
            said.add(new Said(tS - atS, speaking.limits().get(Speaking.limitOf(what)), happened));
        }
    }
}
