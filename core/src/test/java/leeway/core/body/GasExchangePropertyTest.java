package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import leeway.core.run.Change;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.transport.PatientEntry.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** No gas is lost or made, whatever happens. */
class GasExchangePropertyTest {
    private static final double HOURS = 3600;

    @Test
    void gasIsConservedInRandomScripts() {
        for (long seed = 1; seed <= 25; seed++) conserved(seed, 0.5 * HOURS, 12);
    }

    @Test
    void gasIsConservedOverEightHours() {
        conserved(20_261_125, 8 * HOURS, 60);
    }

    @Test
    @Tag("long")
    void gasIsConservedInAThousandScriptsOfEightHours() {
        for (long seed = 1000; seed < 2000; seed++) conserved(seed, 8 * HOURS, 60);
    }

    private static void conserved(long seed, double endS, int changes) {
        var random = new SplittableRandom(seed);
        PatientModel patient = switch (random.nextInt(4)) {
            case 0 -> Apnoea.healthy(Sex.FEMALE, 0.4, 64, 6.5);
            case 1 -> Apnoea.healthy(Sex.MALE, 5, 107, 18);
            default -> Sample.of(random.nextDouble(600, 2500), random.nextDouble(0, 0.4), random.nextInt(2) * random.nextDouble(0, 0.3), random.nextDouble(0, 0.3), random.nextDouble(60, 180),
                    random.nextDouble(150, 300), 0.8, random.nextDouble(3, 8), random.nextDouble(8, 16));
        };
        if (seed % 5 == 0) patient = patient.with(PatientModel.Change.NONE.spread(random.nextDouble(0.2, 2)));
        boolean small = !patient.adult();
        Run run = new Run(patient, small ? 7.5 * patient.weightKg() : random.nextDouble(350, 600), small ? 28 : random.nextDouble(10, 25), 5, random.nextDouble(0.3, 1));
        for (int i = 0; i < changes; i++) run.script.add(anything(random, endS, patient));
        double[] start = new double[3];
        for (int gas = 0; gas < 3; gas++) start[gas] = run.gas.held(run.now, gas);
        run.to(endS);
        for (int gas = 0; gas < 3; gas++) {
            double through = Math.max(1000, endS / 60 * 300);
            assertThat((run.gas.held(run.now, gas) - start[gas]) / through).as("seed %s, gas %s, of what passed", seed, gas).isCloseTo(0, within(1e-9));
        }
        for (double[] row : run.rows) {
            assertThat(row[3]).as("seed %s at %s s", seed, row[0]).isBetween(0.0, 1.0);
            assertThat(row[1]).as("PaCO2, seed %s at %s s", seed, row[0]).isBetween(0.5, 600.0);
            assertThat(row[9]).isBetween(0.0, 800.0);
        }
    }

    private static Change anything(SplittableRandom random, double endS, PatientModel patient) {
        double atS = random.nextDouble(0, endS), untilS = atS + random.nextDouble(5, 240), q = patient.cardiacOutputLPerMin();
        return switch (random.nextInt(16)) {
            case 0 -> Change.during(atS, untilS, Knob.FIO2_SET, How.SET, random.nextDouble(0.21, 1));
            case 1 -> new Change(atS, endS, random.nextDouble(60, 900), Knob.BAROMETER, 0, How.SET, random.nextDouble(520, 770));
            case 2 -> Change.during(atS, untilS, Knob.AIRWAY_CLOSED, How.SET, 1);
            case 3 -> Change.during(atS, untilS, Knob.VENTILATOR_ON, How.SET, 0);
            case 4 -> Change.during(atS, untilS, Knob.SHUNT, How.PLUS, random.nextDouble(-0.2, 0.3));
            case 5 -> Change.during(atS, untilS, Knob.CARDIAC_OUTPUT, How.SET, q * random.nextDouble(0.2, 2));
            case 6 -> Change.during(atS, untilS, Knob.VENTILATED_SHARE, How.SET, random.nextDouble(0.3, 0.9));
            case 7 -> Change.during(atS, untilS, Knob.REBREATHED, How.SET, random.nextDouble(0, 0.6));
            case 8 -> Change.during(atS, untilS, Knob.ALVEOLAR_DEAD_SPACE, How.SET, random.nextDouble(0, 0.8));
            case 9 -> Change.during(atS, untilS, Knob.APPARATUS_DEAD_SPACE, How.PLUS, random.nextDouble(0, patient.adult() ? 150 : 15));
            case 10 -> Change.during(atS, untilS, Knob.OPEN_AT_PATIENT, How.SET, 1);
            case 11 -> Change.during(atS, untilS, Knob.APNOEA_GAS, How.SET, random.nextInt(3));
            case 12 -> Change.during(atS, untilS, Knob.TEMPERATURE, How.SET, random.nextDouble(34, 41));
            case 13 -> Change.during(atS, untilS, Knob.OXYGEN_UPTAKE, How.TIMES, random.nextDouble(0.7, 2));
            case 14 -> Change.during(atS, untilS, Knob.PEEP_SET, How.SET, random.nextDouble(0, 15));
            default -> Change.during(atS, untilS, Knob.OESOPHAGUS, How.SET, 1);
        };
    }
}
