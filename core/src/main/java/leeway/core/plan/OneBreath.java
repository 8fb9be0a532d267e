package leeway.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.rehearsal.LungRow;
import leeway.core.run.Column;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * One breath of the settled patient, sampled for a drawing: every switch exactly, and evenly in between. The patient is the
 * run's: effort as sedation leaves it, coughs, what else moves the gas; of several breaths it is the first.
 */
final class OneBreath implements Sink {
    private static final double STEP_S = 0.01;
    /** Long enough for the slowest breath and its samples. */
    private static final double MOST_S = 12;

    private final Breath part;
    private final List<double[]> samples = new ArrayList<>();
    private final double[] eight = new double[8];
    private double[] row;

    private OneBreath(Breath part) { this.part = part; }

    /** Empty where nobody breathes. */
    static Optional<Plan.Breath> of(Ventilated v, Settings settings, Steady start) {
        BreathSettings set = start.breathSettings();
        Breath part = new Breath(v.mechanics(), v.device());
        Loop loop = new Loop(part);
        Script script = v.base(Breath.base(new Script(), v.mechanics(), set), settings);
        start.effort(v).base(script);
        Now n = loop.begin(script);
        OneBreath sink = new OneBreath(part);
        loop.to(MOST_S, n, script, sink);
        return sink.row == null ? Optional.empty() : Optional.of(sink.breath(set, LungRow.names(v.mechanics().lungs())));
    }

    @Override public void stretch(Now n, double toS) {
        if (row != null) return;
        for (double t = n.tS; t < toS; t += STEP_S) take(n, t);
        take(n, toS);
    }

    private void take(Now n, double tS) {
        part.sample(tS - n.tS, eight);
        samples.add(new double[] {tS, eight[0], eight[1], eight[2], eight[4], eight[5]});
    }

    @Override public void row(Now n) {
        if (row == null && n.get(Column.KIND) != 0) row = n.row.clone();
        else if (row == null) samples.clear();
    }

    @Override public boolean enough() { return row != null; }

    private static double[] above(List<double[]> samples, int what) {
        double lowest = samples.stream().mapToDouble(s -> s[what]).min().orElse(0);
        return samples.stream().mapToDouble(s -> s[what] - lowest).toArray();
    }

    private Plan.Breath breath(BreathSettings set, Optional<LungRow.Names> two) {
        double fromS = row[Column.AT_S.ordinal()];
        List<double[]> of = samples.stream().filter(s -> s[0] >= fromS - 1e-9 && s[0] <= row[Column.END_S.ordinal()] + 1e-9).toList();
        double lowest = of.stream().mapToDouble(s -> s[3]).min().orElse(0);
        int n = of.size();
        double[] t = new double[n];
        double[] p = new double[n];
        double[] f = new double[n];
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
            double[] s = of.get(i);
            t[i] = s[0] - fromS;
            p[i] = s[1];
            f[i] = s[2] * 0.06;
            v[i] = s[3] - lowest;
        }
        return new Plan.Breath(t, p, f, v, row[Column.INSPIRATORY_TIME_S.ordinal()], set.peepCmH2O(), Expected.known(row[Column.PLATEAU_CMH2O.ordinal()]),
                two.map(names -> new Plan.TwoLungs(names.first(), names.second(), above(of, 4), above(of, 5))));
    }
}
