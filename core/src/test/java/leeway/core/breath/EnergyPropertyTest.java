package leeway.core.breath;

import static leeway.core.breath.Bench.of;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import leeway.core.kit.Mode;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What ventilator and muscles put into an inflation is what recoil, resistance and the lift from PEEP take: each by its own integral. */
class EnergyPropertyTest {
    private static final double J = 98.0665e-6;
    private static final List<Lungs> KINDS = List.of(Lungs.LINEAR, Lungs.LINEAR.withCurve(8, 6), LungKindTest.OPENING, LungKindTest.LIMITED, LungKindTest.APART,
            Lungs.LINEAR.withSlow(0.4, 6), LungKindTest.OPENING.withLimit(new FlowLimit(1.5, 1)).withLeft(0.45));

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {3, 7, 20_261_126})
    void sharesMakeTheWhole(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int breaths = 0;
        for (int i = 0; i < 40; i++) {
            Mode mode = Mode.values()[random.nextInt(Mode.values().length)];
            Lungs lungs = KINDS.get(random.nextInt(KINDS.size()));
            Mechanics m = Bench.ADULT.withLungs(lungs).withLeaks(random.nextInt(2) * random.nextDouble(0, 6), 0);
            double rate = random.nextDouble(10, 24);
            BreathSettings s = new BreathSettings(mode, random.nextDouble(250, 600), rate, random.nextDouble(0.7, 1.3), 0.1, random.nextDouble(5, 20), random.nextDouble(4, 14),
                    random.nextDouble(0.05, 0.3), random.nextDouble(0, 12), 0.4, 45, 2, 0, 0.25, 0, 20, 1);
            double effort = random.nextDouble(0, 12);
            for (double[] r : Bench.rows(m, s, 30, k -> k.base(Knob.EFFORT, effort).base(Knob.EFFORT_RATE, rate + 3).base(Knob.EFFORT_TIME, 0.8))) {
                if (of(r, Column.KIND) == 0) continue;
                breaths++;
                double put = of(r, Column.ENERGY_J) + of(r, Column.ENERGY_MUSCLE_J);
                double taken = of(r, Column.ENERGY_ELASTIC_J) + of(r, Column.ENERGY_RESISTIVE_J) + of(r, Column.ENERGY_PEEP_J);
                assertThat(taken).as("%s on %s at %s s", mode, lungs, of(r, Column.AT_S)).isCloseTo(put, within(1e-6 * (1 + Math.abs(put))));
                assertThat(of(r, Column.ENERGY_RESISTIVE_J)).as("resistance only takes").isGreaterThanOrEqualTo(-1e-12);
            }
        }
        assertThat(breaths).isGreaterThan(150);
    }

    /** The dumb twin: pressure times flow, recoil times flow, drop times flow, summed over a thousand samples a stretch. */
    @Test
    void eachShareIsWhatItsSamplesSumUpTo() {
        Mechanics m = Bench.ADULT;
        BreathSettings s = BreathSettings.support(10, 0.15, 6, 0.25);
        Breath breath = new Breath(m, DeviceLimits.strong());
        Loop loop = new Loop(breath);
        Script script = Breath.base(new Script(), m, s).base(Knob.EFFORT, 7).base(Knob.EFFORT_RATE, 18).base(Knob.EFFORT_TIME, 0.9);
        double k1 = (m.resistanceCmH2OSPerL() + m.filterCmH2OSPerL() + m.tube().k1CmH2OSPerL()) / 1000, k2 = m.tube().k2CmH2OS2PerL2() / 1e6;
        double[] sums = new double[4];
        List<double[]> pairs = new ArrayList<>();
        Sink sink = new Sink() {
            @Override public void stretch(Now n, double toS) {
                if (n.get(Level.PHASE) == 0) return;
                int pieces = 1000;
                double step = (toS - n.tS) / pieces;
                double[] four = new double[4];
                for (int i = 0; i < pieces; i++) {
                    breath.sample((i + 0.5) * step, four);
                    if (four[1] <= 0) continue;
                    double dv = four[1] * step * J;
                    sums[0] += four[0] * dv;
                    sums[1] += four[2] / m.complianceMlPerCmH2O() * dv;
                    sums[2] += (k1 + k2 * four[1]) * four[1] * dv;
                    sums[3] += four[3] * dv;
                }
            }

            @Override public void row(Now n) {
                pairs.add(new double[] {n.get(Column.ENERGY_J), sums[0], n.get(Column.ENERGY_ELASTIC_J) + n.get(Column.ENERGY_PEEP_J), sums[1], n.get(Column.ENERGY_RESISTIVE_J), sums[2],
                    n.get(Column.ENERGY_MUSCLE_J), sums[3]});
                java.util.Arrays.fill(sums, 0);
            }
        };
        loop.to(20, loop.begin(script), script, sink);
        assertThat(pairs).hasSizeGreaterThan(4);
        for (double[] p : pairs.subList(1, pairs.size())) {
            for (int i = 0; i < 8; i += 2) assertThat(p[i]).as("share %s", i / 2).isCloseTo(p[i + 1], within(2e-5 * (1 + Math.abs(p[i]))));
        }
    }
}
