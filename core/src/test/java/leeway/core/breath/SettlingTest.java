package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.run.Column;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Test;

/** The shortcut to the steady breath against its dumb twin: breath after breath until nothing changes. */
class SettlingTest {
    private static final int TWIN_ROWS = 600, LUNG_ROWS = 2000;

    @Test
    void theShortcutEndsWherePatienceEnds() {
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 300; i++) {
            double c = random.nextDouble(3, 120), rate = random.nextDouble(6, 45), period = 60 / rate, ti = period * random.nextDouble(0.2, 0.6), peep = random.nextDouble(0, 15);
            Mechanics m = Bench.ADULT.withLungs(random.nextDouble(3, 60), random.nextDouble(0, 30), c);
            BreathSettings s = switch (i % 3) {
                case 0 -> BreathSettings.volume(random.nextDouble(2, 14) * c, rate, ti, ti * 0.2, peep);
                case 1 -> BreathSettings.pressure(random.nextDouble(2, 25), rate, ti, random.nextDouble(0, 0.3) * ti, peep);
                default -> BreathSettings.volume(random.nextDouble(10, 30) * c, rate, ti, 0, peep).withLimit(random.nextDouble(18, 45));
            };
            BreathNumbers ours = SteadyBreath.of(m, s, DeviceLimits.strong());
            double[] twin = patient(m, s);
            String what = m + " " + s;
            assertThat(ours.expiredMl()).as("expired %s", what).isCloseTo(Bench.of(twin, Column.EXPIRED_ML), within(1e-6));
            assertThat(ours.peepCmH2O()).as("PEEP %s", what).isCloseTo(Bench.of(twin, Column.PEEP_CMH2O), within(1e-6));
            assertThat(ours.peakCmH2O()).as("peak %s", what).isCloseTo(Bench.of(twin, Column.PEAK_CMH2O), within(1e-6));
            assertThat(ours.plateauCmH2O()).as("plateau %s", what).isCloseTo(Bench.of(twin, Column.PLATEAU_CMH2O), within(1e-6));
            assertThat(ours.meanCmH2O()).as("mean %s", what).isCloseTo(Bench.of(twin, Column.MEAN_CMH2O), within(1e-6));
            assertThat(ours.energyJ()).as("energy %s", what).isCloseTo(Bench.of(twin, Column.ENERGY_J), within(1e-7));
            assertThat(ours.drivingCmH2O()).as("driving %s", what).isCloseTo(Bench.of(twin, Column.DRIVING_CMH2O), within(1e-6));
        }
    }

    /**
     * Trapped gas leaves while the pressure still rises: the flow turns in the middle of a rise, and at the turn one of its
     * ends is zero but for rounding. Its sign once decided which resistance counted, so that every other breath was given a
     * mean pressure 0.4 cmH2O too high.
     */
    @Test
    void aTurnOfTheFlowCountsOnce() {
        Mechanics m = Bench.ADULT.withLungs(17.490866129115684, 27.351012759665693, 94.25789933796865);
        BreathSettings s = BreathSettings.pressure(24.335922086843013, 19.278406102444094, 1.814121095312648, 0.5180902567567609, 2.457345735883027);
        Loop loop = new Loop(new Breath(m, DeviceLimits.strong(), false));
        Script script = Breath.base(new Script(), m, s);
        Now now = loop.begin(script);
        List<Double> means = new ArrayList<>();
        loop.to(60, now, script, new Sink() {
            @Override public void row(Now n) {
                means.add(n.get(Column.MEAN_CMH2O));
            }
        });
        for (int i = 8; i < means.size(); i++) assertThat(means.get(i)).as("breath %d", i).isCloseTo(means.get(i - 1), within(1e-3));
    }

    /**
     * What opens is led half of the way that three breaths point: led too far, it would stay open. Waiting takes up to 2000 breaths,
     * for a lung that opens slows down; so the tolerances are those of the settled breath's own end (1e-3 mL from breath to breath).
     */
    @Test
    void aLungThatOpensEndsWherePatienceEnds() {
        SplittableRandom random = new SplittableRandom(12);
        for (int i = 0; i < 12; i++) {
            Recruitment r = new Recruitment(random.nextDouble(0.2, 0.9), random.nextDouble(8, 24), random.nextDouble(4, 9), random.nextDouble(-1, 7), random.nextDouble(3, 4), 2.3, random.nextDouble(30, 60), 0.6,
                    random.nextDouble(4, 10), random.nextDouble(15, 25));
            Lungs lungs = Lungs.LINEAR.withRecruitment(r), kind = i % 2 == 0 ? lungs.withLeft(0.5) : lungs.withCurve(5, 8);
            Mechanics m = Bench.ADULT.withLungs(random.nextDouble(5, 20), 0, random.nextDouble(25, 60)).withLungs(kind);
            double peep = random.nextDouble(0, 14), rate = random.nextDouble(12, 24), ti = random.nextDouble(0.8, 1.2);
            BreathSettings s = i % 3 == 0 ? BreathSettings.pressure(random.nextDouble(8, 20), rate, ti, 0.1, peep) : BreathSettings.volume(random.nextDouble(300, 500), rate, ti, 0, peep);
            BreathNumbers ours = SteadyBreath.of(m, s, DeviceLimits.strong());
            double[] twin = patient(m, s, LUNG_ROWS);
            assertThat(ours.expiredMl()).as("%d expired %s %s", i, m, s).isCloseTo(Bench.of(twin, Column.EXPIRED_ML), within(0.3));
            assertThat(ours.plateauCmH2O()).as("%d plateau %s %s", i, m, s).isCloseTo(Bench.of(twin, Column.PLATEAU_CMH2O), within(0.03));
            assertThat(ours.shuntAdded()).as("%d shunt %s %s", i, m, s).isCloseTo(Bench.of(twin, Column.SHUNT_ADDED), within(3e-3));
        }
    }

    /** Between the pressures that open and close, nothing is asked; everywhere the answer is that of the whole formula. */
    @Test
    void theQuickRateIsTheRate() {
        SplittableRandom random = new SplittableRandom(13);
        for (int lung = 0; lung < 50; lung++) {
            Recruitment r = new Recruitment(0.5, random.nextDouble(5, 25), random.nextDouble(2, 9), random.nextDouble(-2, 5), random.nextDouble(2, 5), 2.3, 60, 0.5, 5, 20);
            OpeningRate quick = new OpeningRate(r);
            double open = random.nextDouble();
            for (int i = 0; i < 4000; i++) {
                open = i % 100 == 0 ? random.nextInt(3) / 2.0 : Math.max(0, Math.min(1, open + random.nextDouble(-6e-4, 6e-4)));
                double pressure = i % 5 == 0 ? r.opensAt(open) + random.nextDouble(-1e-6, 1e-6) : random.nextDouble(-10, 45);
                assertThat(quick.at(open, pressure)).isEqualTo(r.rate(open, pressure));
            }
        }
    }

    private static double[] patient(Mechanics m, BreathSettings s) { return patient(m, s, TWIN_ROWS); }

    private static double[] patient(Mechanics m, BreathSettings s, int rows) {
        Loop loop = new Loop(new Breath(m, DeviceLimits.strong(), false));
        Script script = Breath.base(new Script(), m, s);
        Now now = loop.begin(script);
        double[][] last = new double[1][];
        loop.to(rows * 60 / s.ratePerMin(), now, script, new Sink() {
            @Override public void row(Now n) {
                last[0] = n.row.clone();
            }
        });
        return last[0];
    }
}
