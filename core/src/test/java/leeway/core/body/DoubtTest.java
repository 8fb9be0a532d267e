package leeway.core.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.lung.LungDoubt;
import leeway.core.lung.LungValue;
import leeway.core.lung.Lungs;
import leeway.core.lung.Recruitment;
import leeway.core.run.Draw;
import leeway.core.transport.PatientEntry;
import org.junit.jupiter.api.Test;

/** Draws spread as the sheet's bands say, and draw 0 is the patient of all medians. */
class DoubtTest {
    private static final Illness ILLNESS = new Illness("any", new Band(0.65, 0.45, 0.9), new Band(1.5, 1, 2.5), Band.of(1.1), new Band(0.18, 0.10, 0.28), new Band(0.12, 0.05, 0.22), new Band(0.15, 0.06, 0.28),
            new Band(0.75, 0.55, 0.95), new Band(0.28, 0.2, 0.38), new Band(1.15, 0.95, 1.45), new Band(0.8, 0.75, 0.95), new Band(1.2, 0.9, 1.6), new Band(0.8, 0.6, 1), new Band(-1, -6, 4), 38,
            Optional.empty(), "restrictive", false, "", "invented");
    private static final PatientEntry ENTRY = new PatientEntry(PatientEntry.Sex.MALE, OptionalDouble.of(175), false, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(),
            PatientEntry.Lungs.NONE, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), false, false, OptionalDouble.empty(), Optional.empty());
    private static final PatientModel MEDIAN = Sample.of(1400, 0.18, 0.12, 0.15, 140, 240, 0.8, 6, 12);

    @Test
    void drawZeroIsTheMedian() {
        assertThat(Doubt.draw(MEDIAN, ENTRY, ILLNESS, new Draw(7, 0))).isSameAs(MEDIAN);
    }

    @Test
    void nineteenOfTwentyLieInTheBand() {
        int inside = 0, below = 0, all = 4000;
        for (int i = 1; i <= all; i++) {
            double shunt = Doubt.draw(MEDIAN, ENTRY, ILLNESS, new Draw(7, i)).shunt();
            if (shunt >= 0.10 && shunt <= 0.28) inside++;
            if (shunt < 0.18) below++;
        }
        assertThat(inside / (double) all).isCloseTo(0.95, within(0.012));
        assertThat(below / (double) all).isCloseTo(0.5, within(0.025));
    }

    @Test
    void everyPatientDrawnCanBeWorkedOut() {
        for (int i = 1; i <= 500; i++) {
            SteadyGases gases = SteadyGases.of(Doubt.draw(MEDIAN, ENTRY, ILLNESS, new Draw(1, i)), new Ventilation(420, 20, 0.6, 760, 14));
            assertThat(gases.paco2MmHg()).isBetween(10.0, 150.0);
        }
    }

    @Test
    void whatASheetKnowsOfTheLungsAsABandIsDrawnFromIt() {
        Lungs lungs = Lungs.LINEAR.withCurve(5, 10).withRecruitment(new Recruitment(0.6, 20, 9, 5, 4, 2.3, 60, 0.6, 10, 25))
                .withDoubts(List.of(new LungDoubt(LungValue.RECRUITABLE, 0.25, 0.85), new LungDoubt(LungValue.OPENING, 6, 27), new LungDoubt(LungValue.CLOSING, 2, 18)));
        assertThat(Doubt.draw(lungs, new Draw(7, 0))).isSameAs(lungs);
        int inside = 0, all = 2000;
        for (int i = 1; i <= all; i++) {
            Lungs drawn = Doubt.draw(lungs, new Draw(7, i));
            if (drawn.recruitment().share() >= 0.25 && drawn.recruitment().share() <= 0.85) inside++;
            assertThat(drawn.recruitment().closingCmH2O()).as("what closes lies below what opens").isLessThanOrEqualTo(drawn.recruitment().openingCmH2O());
            assertThat(drawn.inflectionCmH2O()).as("known to the digit").isEqualTo(5);
        }
        assertThat(inside / (double) all).isCloseTo(0.95, within(0.015));
    }
}
