package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import leeway.core.run.Knob;
import org.junit.jupiter.api.Test;

/** Gas exchange in time: at rest where the steady state is, conservative, and moving as it should. */
class GasExchangeTest {

    @Test
    void nothingMovesFromTheSteadyState() {
        for (PatientModel patient : new PatientModel[] {Sample.ideal(), Sample.of(1500, 0.2, 0.15, 0.2, 110, 230, 0.8, 6, 12)}) {
            Run run = new Run(patient, 450, 15, 5, 0.5);
            run.to(3600);
            for (double[] row : run.rows) {
                assertThat(row[1]).as("PaCO2 at %s s", row[0]).isCloseTo(run.steady.paco2MmHg(), within(0.15));
                assertThat(row[3]).as("SaO2 at %s s", row[0]).isCloseTo(run.steady.sao2(), within(0.001));
                assertThat(row[2] / run.steady.pao2MmHg()).as("PaO2 at %s s", row[0]).isCloseTo(1, within(0.005));
            }
            assertThat(run.last()[5]).isCloseTo(run.steady.etco2MmHg(), within(0.3));
        }
    }
}
