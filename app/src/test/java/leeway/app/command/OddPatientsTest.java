package leeway.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Patients at the edge of what a file may say: they have a plan, and the plan says what it did not use. */
class OddPatientsTest {
    private static final String JOURNEY = """
            ventilator: example turbine
            oxygen: [{name: a, cylinder: 2 L, pressure: 185 bar}]
            legs: [{leg: across the yard, takes: 5 min}]
            """;

    @TempDir
    Path folder;

    private Run run(String command, String patient, String... more) throws IOException {
        Path file = folder.resolve("odd.yaml");
        Files.writeString(file, "patient: {" + patient + "}\n" + JOURNEY);
        String[] line = new String[more.length + 2];
        line[0] = command;
        line[1] = file.toString();
        System.arraycopy(more, 0, line, 2, more.length);
        return Run.of(line);
    }

    /** An age of 0 days once ended in a fault of ours. */
    @Test void aPatientOfTheFirstDayHasAPlanAndBreathes() throws IOException {
        for (String newborn : new String[] {"age: 0 days", "age: 0 years, weight: 600 g"}) {
            Run plan = run("plan", newborn);
            assertThat(plan.err()).as(newborn).isEmpty();
            assertThat(plan.exit()).isLessThan(2);
            assertThat(run("breathe", newborn, "--for", "10 s").exit()).isZero();
        }
    }

    /** It stood among what was assumed only, far below "Holds". */
    @Test void aBloodGasThatCannotBeRightIsARemark() throws IOException {
        String said = run("plan", "sex: male, height: 180 cm, blood gas: {ph: 6.6, paco2: 200 mmHg, pao2: 20 mmHg, fio2: 21 %, minute volume: 6 L/min}").out().replaceAll("\\s+", " ");
        assertThat(said).contains("Remarks").contains("- The blood gas cannot be right and was not used: a PaCO2 of 200 mmHg leaves no oxygen in the alveoli at 21 %.");
    }
}
