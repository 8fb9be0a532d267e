package leeway.core.breath;

import static leeway.core.breath.Bench.of;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.lung.Tube;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import org.junit.jupiter.api.Test;

/** Lungs that are integrated, against the exact case where they are linear after all, and against what each part must do. */
class NonlinearTest {
    /** Linear, but not known to be: a limit that is never met. */
    private static final Lungs NEVER_LIMITED = Lungs.LINEAR.withLimit(new FlowLimit(1e-4, 30));
    /** Linear, of two parts that are alike. */
    private static final Lungs TWO_ALIKE = Lungs.LINEAR.withSlow(0.4, 1);

    static void alike(Mechanics m, BreathSettings s, Consumer<Script> change, double share) {
        for (Lungs lungs : new Lungs[] {NEVER_LIMITED, TWO_ALIKE}) {
            List<double[]> exact = Bench.rows(m, s, 24, change), ours = Bench.rows(m.withLungs(lungs), s, 24, change);
            assertThat(ours).hasSameSizeAs(exact);
            for (int i = 0; i < exact.size(); i++) {
                double tidal = of(exact.get(i), Column.INSPIRED_ML) + 1, pressure = of(exact.get(i), Column.PEAK_CMH2O) + 1;
                for (Column c : new Column[] {Column.AT_S, Column.INSPIRED_ML, Column.EXPIRED_ML, Column.PEAK_CMH2O, Column.PLATEAU_CMH2O, Column.PEEP_CMH2O, Column.MEAN_CMH2O,
                    Column.TRAPPED_ML, Column.ENERGY_J, Column.ENERGY_RESISTIVE_J, Column.MUSCLE_J, Column.INSPIRATORY_TIME_S, Column.TRANSPULMONARY_CMH2O}) {
                    double a = of(exact.get(i), c), b = of(ours.get(i), c);
                    if (Double.isNaN(a)) continue;
                    double scale = c.name().endsWith("_ML") ? tidal : c.name().endsWith("CMH2O") ? pressure : 1;
                    assertThat(b).as("%s of row %d, %s, %s", c, i, s.mode(), lungs).isCloseTo(a, within(share * scale));
                }
            }
        }
    }

    /** Efforts and clock that do not go together make a rhythm of many breaths, and a run may begin anywhere in it. */
    private static void alikeInTheMean(Mechanics m, BreathSettings s, Consumer<Script> change, double share) {
        for (Lungs lungs : new Lungs[] {NEVER_LIMITED, TWO_ALIKE}) {
            List<double[]> exact = Bench.rows(m, s, 1800, change), ours = Bench.rows(m.withLungs(lungs), s, 1800, change);
            for (Column c : new Column[] {Column.INSPIRED_ML, Column.EXPIRED_ML, Column.PEAK_CMH2O, Column.PLATEAU_CMH2O, Column.PEEP_CMH2O, Column.MEAN_CMH2O, Column.MUSCLE_J}) {
                double a = exact.stream().mapToDouble(r -> of(r, c)).average().orElseThrow(), b = ours.stream().mapToDouble(r -> of(r, c)).average().orElseThrow();
                assertThat(b).as("mean %s, %s, %s", c, s.mode(), lungs).isCloseTo(a, within(share * Math.abs(a)));
            }
        }
    }

    @Test
    void aLinearLungThatIsIntegratedBreathesAsTheExactOne() {
        Mechanics m = Bench.ADULT;
        Consumer<Script> nothing = s -> { };
        alike(m, Bench.VOLUME, nothing, 2e-5);
        alike(m, Bench.PRESSURE, nothing, 2e-5);
        alike(m, BreathSettings.targeted(400, 18, 1, 0.1, 6), nothing, 2e-5);
        alike(m, Bench.VOLUME.withLimit(22), nothing, 2e-5);
        alike(m, BreathSettings.volume(450, 15, 1.4, 0.2, 5).withFlowEnd(0.4), nothing, 2e-3);
    }

    @Test
    void soItDoesUnderAnEffort() {
        Consumer<Script> effort = s -> s.base(Knob.EFFORT, 7).base(Knob.EFFORT_RATE, 17).base(Knob.EFFORT_TIME, 0.9);
        alike(Bench.ADULT, BreathSettings.support(9, 0.1, 5, 0.3), effort, 2e-4);
        alikeInTheMean(Bench.ADULT, Bench.VOLUME, effort, 2e-3);
        alike(Bench.ADULT, BreathSettings.pressure(12, 12, 1, 0.15, 5).withTriggers(0, 2), effort, 2e-4);
    }

    @Test
    void theSteadyBreathIsWhereTheRunArrives() {
        Mechanics m = Mechanics.linear(12, 25).withChestWall(0.25).withLungs(LungKindTest.OPENING);
        for (double peep : new double[] {0, 5, 12}) {
            BreathSettings s = BreathSettings.volume(400, 20, 1, 0.2, peep);
            List<double[]> rows = Bench.rows(m, BreathSettings.volume(400, 20, 1, 0.2, 9), 3000, c -> c.add(leeway.core.run.Change.at(60, Knob.PEEP_SET, leeway.core.run.How.SET, peep)));
            double[] end = rows.get(rows.size() - 1);
            BreathNumbers steady = SteadyBreath.of(m, s, DeviceLimits.strong());
            // within the band that opening and closing leave between them: nothing moves there
            assertThat(of(end, Column.PLATEAU_CMH2O)).as("plateau at PEEP %s", peep).isCloseTo(steady.plateauCmH2O(), within(0.1));
            assertThat(of(end, Column.SHUNT_ADDED)).as("shunt at PEEP %s", peep).isCloseTo(steady.shuntAdded(), within(0.005));
        }
    }

    @Test
    void soItDoesBesideALeakAndWithTheCircuitOff() {
        alike(Bench.ADULT.withLeaks(6, 3), Bench.PRESSURE, s -> { }, 2e-3);
        alike(Bench.ADULT, Bench.VOLUME, s -> s.base(Knob.OPEN_AT_PATIENT, 1), 2e-5);
        alike(Bench.ADULT, Bench.VOLUME, s -> s.base(Knob.AIRWAY_CLOSED, 1), 2e-5);
    }
}
