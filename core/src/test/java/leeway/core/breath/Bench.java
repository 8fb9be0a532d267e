package leeway.core.breath;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import leeway.core.lung.Tube;
import leeway.core.run.Column;
import leeway.core.run.Flux;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/** A patient on a ventilator, for tests: the adult of the worked examples, and a run that keeps its rows. */
final class Bench {
    /** A moderately ill adult with a 7.5 mm tube, a filter, a valve and a circuit. */
    static final Mechanics ADULT = Mechanics.linear(11, 34).withTube(new Tube(7.5, 30).rohrer()).withFilterAndCircuit(1.5, 3, 1.5);
    static final BreathSettings VOLUME = BreathSettings.volume(369, 20, 1, 0.2, 8);
    static final BreathSettings PRESSURE = BreathSettings.pressure(14, 20, 1, 0.15, 8);

    private Bench() { }

    static double of(double[] row, Column column) {
        return row[column.ordinal()];
    }

    /** The rows that are complete by the end, under a script that the caller may change. */
    static List<double[]> rows(Mechanics m, BreathSettings s, DeviceLimits device, double endS, Consumer<Script> change) {
        Loop loop = new Loop(new Breath(m, device));
        Script script = Breath.base(new Script(), m, s);
        change.accept(script);
        Now now = loop.begin(script);
        List<double[]> rows = new ArrayList<>();
        loop.to(endS, now, script, new Sink() {
            @Override public void row(Now n) {
                rows.add(n.row.clone());
            }
        });
        return rows;
    }

    static List<double[]> rows(Mechanics m, BreathSettings s, double endS, Consumer<Script> change) {
        return rows(m, s, DeviceLimits.strong(), endS, change);
    }

    /** The first complete row that begins at or after a time. */
    static double[] rowFrom(List<double[]> rows, double atS) {
        return rows.stream().filter(r -> of(r, Column.AT_S) >= atS - 1e-9).findFirst().orElseThrow();
    }

    /** Adds the flux of every pass and checks it: gas is neither made nor lost, whatever happens. */
    static final class Balance implements leeway.core.run.Part {
        double worst;
        double lung;

        @Override public void claim(leeway.core.run.Claims claims) { }
        @Override public void begin(Now n) {
            lung = n.y[Slot.VOLUME];
        }
        @Override public double nextS(Now n, double latestS) {
            return Double.POSITIVE_INFINITY;
        }
        @Override public void pass(Now n, double dtS) {
            double in = n.get(Flux.IN_ML), out = n.get(Flux.OUT_ML), leak = n.get(Flux.CUFF_LEAK_ML), change = n.get(Flux.LUNG_ML);
            for (double x : n.flux) if (Double.isNaN(x) || Double.isInfinite(x)) throw new AssertionError("flux at " + n.tS);
            for (double x : n.level) if (Double.isNaN(x) || Double.isInfinite(x)) throw new AssertionError("level at " + n.tS);
            if (in < 0 || out < 0 || leak < 0 || in > 0 && out > 0) throw new AssertionError("in %s, out %s, leak %s at %s s".formatted(in, out, leak, n.tS));
            if (!n.on(leeway.core.run.Knob.OESOPHAGUS)) worst = Math.max(worst, Math.abs((n.y[Slot.VOLUME] - lung) * n.get(leeway.core.run.Knob.VENTILATED_SHARE) - change));
            lung = n.y[Slot.VOLUME];
            if (n.on(leeway.core.run.Knob.OESOPHAGUS)) return;
            worst = Math.max(worst, Math.abs(in - out - leak - change));
            if (worst > 1e-6) throw new AssertionError("in %s, out %s, leak %s, lung %s, over %s s, flow now %s at %s s".formatted(in, out, leak, change, dtS, n.get(leeway.core.run.Level.FLOW_ML_S), n.tS));
        }
    }
}
