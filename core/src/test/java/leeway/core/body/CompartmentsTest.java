package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A spread of ventilation over perfusion: its arithmetic, and what it does to blood. */
class CompartmentsTest {
    private static final PatientModel EVEN = Sample.of(2000, 0.02, 0, 0, 120, 240, 0.8, 5.5, 14);

    private static PatientModel spread(double logDeviation) {
        return EVEN.with(PatientModel.Change.NONE.spread(logDeviation));
    }

    private static SteadyGases at(PatientModel p, double fio2) {
        return SteadyGases.of(p, new Ventilation(500, 13, fio2, 760, 0));
    }

    @Test
    void pointsAndWeightsHaveTheMomentsOfANormal() {
        for (int n : new int[] {7, 10, 60}) {
            double[] x = new double[n], w = new double[n];
            Compartments.hermite(x, w);
            double[] moment = new double[7];
            double e = 0;
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < moment.length; k++) moment[k] += w[i] * Math.pow(x[i], k);
                e += w[i] * Math.exp(0.8 * x[i]);
            }
            assertThat(moment).containsExactly(new double[] {1, 0, 1, 0, 3, 0, 15}, within(1e-9));
            assertThat(e).as("mean of a lognormal").isCloseTo(Math.exp(0.32), within(1e-6));
        }
    }

    @Test
    void sharesSumToOneWithAndWithoutASpread() {
        for (PatientModel p : new PatientModel[] {EVEN, spread(0.4), spread(2), EVEN.with(PatientModel.Change.NONE.low(0.2).spread(1))}) {
            Compartments parts = new Compartments(p);
            double air = 0, blood = 0;
            for (int k = 0; k < parts.count; k++) {
                air += parts.ventilation[k];
                blood += parts.perfusion[k];
            }
            assertThat(air).isCloseTo(1, within(1e-12));
            assertThat(blood).isCloseTo(1, within(1e-12));
        }
        assertThat(new Compartments(EVEN).count).isEqualTo(2);
        assertThat(new Compartments(EVEN).extra).isZero();
    }

    @Test
    void tenCompartmentsComeCloseToSixty() {
        double[] x = new double[60], w = new double[60];
        Compartments.hermite(x, w);
        for (double spread : new double[] {0.4, 0.8, 1.2, 1.6, 2}) {
            for (double fio2 : new double[] {0.21, 0.4, 0.7}) {
                PatientModel p = spread(spread);
                Ventilation v = new Ventilation(500, 13, fio2, 760, 0);
                SteadyGases ours = SteadyGases.of(p, v), sixty = SteadyGases.of(p, v, new Compartments(p, x, w));
                assertThat(ours.pao2MmHg()).as("PaO2 at spread %s, FiO2 %s", spread, fio2).isCloseTo(sixty.pao2MmHg(), within(Math.max(2, (spread < 2 ? 0.05 : 0.1) * sixty.pao2MmHg())));
                assertThat(ours.paco2MmHg()).isCloseTo(sixty.paco2MmHg(), within(0.5));
            }
        }
    }

    @Test
    void aWiderSpreadHindersBothGasesAndOxygenMore() {
        double lastO2 = 1e9, lastCo2 = 0;
        for (double s : new double[] {0, 0.4, 0.8, 1.2, 1.6}) {
            SteadyGases g = at(spread(s), 0.21);
            assertThat(g.pao2MmHg()).isLessThan(lastO2);
            assertThat(g.paco2MmHg()).isGreaterThan(lastCo2);
            lastO2 = g.pao2MmHg();
            lastCo2 = g.paco2MmHg();
        }
        // textbook: the healthy spread alone makes the usual difference between alveoli and blood, 5 to 15 mmHg (from memory)
        SteadyGases healthy = at(spread(0.4), 0.21);
        assertThat(healthy.palvO2MmHg() - healthy.pao2MmHg()).isBetween(4.0, 16.0);
    }

    @Test
    void unlikeShuntItYieldsToOxygen() {
        PatientModel scattered = spread(1.3), shunted = EVEN.with(PatientModel.Change.NONE.shunt(0.28));
        assertThat(at(scattered, 0.3).pao2MmHg()).as("both are badly off at 30 %").isBetween(40.0, 90.0);
        assertThat(at(shunted, 0.3).pao2MmHg()).isBetween(40.0, 90.0);
        assertThat(at(scattered, 0.95).pao2MmHg()).isGreaterThan(2.5 * at(shunted, 0.95).pao2MmHg());
    }

    @Test
    void searchesHardlyEverFallBack() {
        for (double s : new double[] {0.5, 1, 2}) {
            Run run = new Run(spread(s), 500, 13, 5, 0.5).to(1200);
            double breaths = run.rows.size();
            assertThat(run.gas.evaluations() / breaths).as("evaluations a breath at %s", s).isLessThan(70);
        }
    }
}
