package leeway.files.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.File;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import leeway.core.alarm.Noise;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Kit;
import leeway.core.kit.Settings;
import leeway.core.plan.Library;
import leeway.core.plan.PlanMaker;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.run.Stopped;
import leeway.core.settings.Strategy;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What may end before its end: a rehearsal in which nothing can come any more, and an answer for which nobody waits. */
class EarlyStopTest {
    private static Transport example(String name) {
        Path root = Path.of("").toAbsolutePath();
        while (!root.resolve("examples").toFile().isDirectory()) root = root.getParent();
        return TransportReader.read(root.resolve("examples").resolve(name), Nights.CATALOGUE).good().orElseThrow();
    }

    @ParameterizedTest @ValueSource(strings = {"hand-bag-across-town.yaml", "head-injury-by-road.yaml", "one-small-cylinder.yaml"})
    void whatEndsEarlySaysWhatItSaysWhenRunToTheEnd(String name) { same(name); }

    static Stream<String> examples() {
        Path root = Path.of("").toAbsolutePath();
        while (!root.resolve("examples").toFile().isDirectory()) root = root.getParent();
        return Arrays.stream(root.resolve("examples").toFile().listFiles()).map(File::getName).filter(n -> n.endsWith(".yaml")).sorted();
    }

    @Tag("long") @ParameterizedTest @MethodSource("examples")
    void whatEndsEarlySaysWhatItSaysWhenRunToTheEndOnEveryExample(String name) { same(name); }

    @ParameterizedTest @ValueSource(ints = {45, 55, 90})
    void aLeakThatTakesMoreThanTwiceTheGasIsFollowedToItsEnd(int bar) {
        // without a fault the gas lasts for more than twice the search; with one of these the device stops for want of it, after 14 to 27 min
        Transport t = Nights.read(Nights.SHORT.replace("A/C-VC", "A/C-PC").replace("cylinder: 10 L, pressure: 200 bar, read at: 15 Cel, count: 2",
                "cylinder: 5 L, pressure: %d bar, read at: 15 Cel".formatted(bar)));
        List<Fault> leaks = Stream.of("leak in the circuit", "cuff leak", "patient valve stuck open").map(n -> Nights.fault(Nights.CATALOGUE, n)).toList();
        Rehearse early = Rehearse.of(Journeys.of(t, Nights.settings(t), Nights.NOISES), leaks, Nights.FAULTS, OptionalDouble.empty());
        assertThat(rows(early)).isEqualTo(rows(early.thoroughly()));
        assertThat(early.central()).as("at %d bar", bar).anyMatch(r -> r.harm().isPresent());
    }

    private static void same(String name) {
        Transport t = example(name);
        Ventilated v = Ventilated.of(t);
        Settings settings = Nights.settings(t);
        Rehearse early = Rehearse.of(Journeys.of(t, settings, Nights.NOISES, draw -> JourneyRun.of(t, v, settings, draw)), Nights.FAULTS, Nights.FAULTS, OptionalDouble.empty());
        Map<String, List<Rehearsal.ByLeg>> thorough = rows(early.thoroughly());
        Map<String, List<Rehearsal.ByLeg>> quick = rows(early);
        thorough.forEach((fault, legs) -> assertThat(quick.get(fault)).as(fault).isEqualTo(legs));
        assertThat(quick.keySet()).isEqualTo(thorough.keySet());
    }

    private static Map<String, List<Rehearsal.ByLeg>> rows(Rehearse rehearse) {
        Map<String, List<Rehearsal.ByLeg>> rows = new TreeMap<>();
        for (Rehearsal r : rehearse.central()) rows.put(r.fault().name(), r.byLeg());
        return rows;
    }

    @Test void whatNobodyWaitsForStopsWhereverItIs() {
        Transport t = Nights.read(Nights.SHORT);
        Library library = new Library() {
            @Override public Strategy strategy(String name) { return Nights.CATALOGUE.read(Kinds.STRATEGY, name).good().orElseThrow(); }

            @Override public Optional<Kit> kit(String name) { return Optional.empty(); }

            @Override public List<Fault> faults() { return Nights.FAULTS.subList(0, 3); }

            @Override public Map<String, Noise> noises() { return Nights.NOISES; }
        };
        int[] looks = {0};
        PlanMaker.plan(t, library, 1, faults -> List::of, () -> ++looks[0] < 0);
        assertThat(looks[0]).as("looks of a plan without rehearsals").isGreaterThan(300);
        for (int after : new int[] {1, 20, looks[0] / 2, looks[0] - 1}) {
            int[] asked = {0};
            assertThatThrownBy(() -> PlanMaker.plan(t, library, 1, faults -> List::of, () -> ++asked[0] >= after)).isInstanceOf(Stopped.class);
            assertThat(asked[0]).isEqualTo(after);
        }
        assertThatThrownBy(() -> Start.of(t, Ventilated.of(t), library::strategy, () -> true)).isInstanceOf(Stopped.class);
        assertThatThrownBy(() -> Breathing.of(t, Nights.settings(t), Nights.NOISES, Nights.FAULTS).until(() -> true).rows(3600, row -> { })).isInstanceOf(Stopped.class);
    }
}
