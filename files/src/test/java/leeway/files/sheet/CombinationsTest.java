package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import leeway.core.body.SteadyGases;
import leeway.core.breath.BreathNumbers;
import leeway.core.journey.LegState;
import leeway.core.journey.Steady;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Mode;
import leeway.core.settings.Suggested.Origin;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every ventilator with every illness in every mode: settings come out, numbers are numbers, and what is bad is named. */
class CombinationsTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();
    private static final List<String> ILLNESSES = List.of("healthy lungs", "moderate pneumonia", "severe ARDS", "asthma attack", "COPD exacerbation", "head injury", "after cardiac arrest",
            "blood loss", "pulmonary oedema", "chest injury", "obesity", "bronchiolitis", "newborn respiratory distress", "test lung");

    /** Who, with what fits: circuit, filter, airways. */
    private record Patient(String who, String circuit, String filter, List<String> airways) { }

    private static final Patient WOMAN = new Patient("sex: female, height: 170 cm, age: 58 years", "single limb adult", "adult HME filter",
            List.of("tracheal tube 7.5 mm", "tracheostomy 8.0 mm", "laryngeal mask 4", "face mask adult", "tracheal tube 9.0 mm"));
    private static final Patient MAN = new Patient("sex: male, height: 190 cm", "two limb adult", "none", List.of("tracheal tube 8.0 mm", "face mask adult"));
    private static final Patient CHILD = new Patient("age: 4 years", "single limb child", "child HME filter", List.of("tracheal tube 4.5 mm", "tracheal tube 5.0 mm"));
    private static final Patient BY_WEIGHT = new Patient("weight: 14 kg", "single limb child", "child HME filter", List.of("tracheal tube 4.0 mm"));
    private static final Patient INFANT = new Patient("age: 6 months", "single limb infant", "infant HME filter", List.of("tracheal tube 3.5 mm"));
    private static final Patient NEWBORN = new Patient("age: 10 days, weight: 2500 g", "single limb infant", "infant HME filter", List.of("tracheal tube 3.0 mm", "tracheal tube 2.5 mm"));

    private static boolean fits(Patient p, String illness) {
        boolean adult = p == WOMAN || p == MAN;
        if (illness.equals("bronchiolitis") || illness.equals("newborn respiratory distress")) return !adult;
        return p != INFANT && p != NEWBORN || !illness.equals("COPD exacerbation") && !illness.equals("obesity");
    }

    @ParameterizedTest @ValueSource(strings = {"example pneumatic", "example turbine", "hand bag"})
    void everyIllnessInEveryModeHasSettingsAndWhatIsBadIsNamed(String ventilator) {
        for (String illness : ILLNESSES) {
            for (Mode mode : Mode.values()) hold(ventilator, fits(WOMAN, illness) ? WOMAN : INFANT, 0, illness, Optional.of(mode));
            for (Patient p : List.of(WOMAN, CHILD, BY_WEIGHT, NEWBORN)) if (fits(p, illness)) hold(ventilator, p, 0, illness, Optional.empty());
        }
    }

    @Tag("long")
    @ParameterizedTest @ValueSource(strings = {"example pneumatic", "example turbine", "hand bag"})
    void soDoesEveryPatientThroughEveryAirwayThatFits(String ventilator) {
        List<Optional<Mode>> modes = new ArrayList<>(List.of(Optional.empty()));
        Arrays.stream(Mode.values()).map(Optional::of).forEach(modes::add);
        for (Patient p : List.of(WOMAN, MAN, CHILD, BY_WEIGHT, INFANT, NEWBORN)) {
            for (int a = 0; a < p.airways().size(); a++) for (String illness : ILLNESSES) for (Optional<Mode> mode : modes) if (fits(p, illness)) hold(ventilator, p, a, illness, mode);
        }
    }

    private static void hold(String ventilator, Patient p, int airway, String illness, Optional<Mode> mode) {
        String file = "transport: t\npatient: {%s, illness: %s, airway: %s}\nventilator: %s\ncircuit: %s\nfilter: %s\n%soxygen:\n  - {name: one, cylinder: 10 L, pressure: 200 bar}\nlegs:\n  - {leg: road, takes: 20 min, oxygen: one}\n"
                .formatted(p.who(), illness, p.airways().get(airway), ventilator, p.circuit(), p.filter(), mode.map(m -> "settings: {mode: " + m.code() + "}\n").orElse(""));
        Transport t = TransportReader.read("t.yaml", file, CATALOGUE).good().orElseThrow(() -> new AssertionError(file));
        Start start = Start.of(t, Ventilated.of(t), name -> CATALOGUE.read(Kinds.STRATEGY, name).good().orElseThrow());
        Steady s = LegState.of(t, start.ventilated(), start.settings()).get(0).steady();
        BreathNumbers b = s.breath();
        SteadyGases g = s.gases();
        for (double x : new double[] {b.expiredMl(), b.ratePerMin(), b.peakCmH2O(), b.plateauCmH2O(), b.autoPeepCmH2O(), b.meanCmH2O(), b.mechanicalPowerJPerMin(), s.need().minuteVolumeLPerMin()}) {
            assertThat(Double.isFinite(x)).as(file).isTrue();
        }
        double perKg = b.expiredMl() / start.ventilated().patient().predictedKg();
        boolean bad = !(perKg > 3 && perKg < 12) || b.plateauCmH2O() > 35.5
                || g.living() && !(g.sao2() > 0.85 && g.paco2MmHg() > 25 && g.paco2MmHg() < 90 && g.ph() > 7.15 && g.ph() < 7.60);
        if (bad) assertThat(!start.solved().conflicts().isEmpty() || !g.sustainable() || b.volumeNotReached()).as("named: %s", file).isTrue();
        if (ventilator.equals("hand bag")) {
            assertThat(start.settings().mode()).as(file).isEmpty();
        } else {
            Mode got = start.settings().mode().orElseThrow();
            if (mode.isPresent() && got != mode.get()) {
                assertThat(start.solved().suggested().reasons()).as(file).anyMatch(r -> r.contains(mode.get().code()) && r.contains(got.code()));
                assertThat(start.solved().suggested().asked().mode()).contains(mode.get());
            }
            assertThat(start.solved().suggested().because()).as(file).allMatch(w -> !w.why().isBlank());
            assertThat(start.solved().suggested().because().get(0).origin()).isEqualTo(mode.isPresent() ? Origin.PRESCRIBED : Origin.SUGGESTED);
        }
    }
}
