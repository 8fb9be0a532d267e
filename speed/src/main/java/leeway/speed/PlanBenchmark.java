package leeway.speed;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import leeway.core.alarm.Noise;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Kit;
import leeway.core.kit.Settings;
import leeway.core.plan.Library;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.settings.Strategy;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The night transfer on one thread: the plan without rehearsals, all faults rehearsed once with rescue-by, and both. Goals: all
 * faults under 150 ms; the plan at most ten times a floor of 6 ms (3 h of breaths, 10 000 journeys of stores) plus the rehearsals.
 * <p>Run from the root: {@code java -jar speed/target/speed.jar PlanBenchmark}. Before anything is timed, rehearsals that stop
 * where nothing moves any more must agree with those that run to the end of their search.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class PlanBenchmark {
    private Transport transport;
    private Settings settings;
    private Sheets sheets;

    private record Sheets(Catalogue catalogue, List<Fault> faults, Map<String, Noise> noises) implements Library {
        @Override public Strategy strategy(String name) { return catalogue.read(Kinds.STRATEGY, name).good().orElseThrow(); }

        @Override public Optional<Kit> kit(String name) { return catalogue.read(Kinds.KIT, name).good(); }
    }

    @Setup
    public void read() {
        Catalogue catalogue = Catalogue.builtIn();
        transport = TransportReader.read(Path.of("examples/night-transfer.yaml"), catalogue).good().orElseThrow();
        List<Fault> faults = new ArrayList<>();
        for (String name : catalogue.names(Kinds.FAULT.word())) faults.add(catalogue.read(Kinds.FAULT, name).good().orElseThrow());
        Map<String, Noise> noises = new TreeMap<>();
        for (String name : catalogue.names(Kinds.NOISE.word())) noises.put(name, catalogue.read(Kinds.NOISE, name).good().orElseThrow());
        sheets = new Sheets(catalogue, List.copyOf(faults), noises);
        settings = Start.of(transport, Ventilated.of(transport), sheets::strategy).settings();
        List<String> quick = said(rehearse().central()), thorough = said(rehearse().thoroughly().central());
        if (!quick.equals(thorough)) throw new IllegalStateException("rehearsals that stop early say something else");
    }

    private static List<String> said(List<Rehearsal> rows) { return rows.stream().map(r -> r.fault().name() + r.coverage() + r.alarm() + r.harm() + r.rescueByS()).toList(); }

    private Rehearse rehearse() { return Rehearse.of(Journeys.of(transport, settings, sheets.noises()), sheets.faults(), sheets.faults(), java.util.OptionalDouble.empty()); }

    @Benchmark
    public List<Rehearsal> allFaults() { return rehearse().central(); }

    @Benchmark
    public Plan planWithoutRehearsals() { return PlanMaker.plan(transport, sheets, 1, faults -> List::of); }

    @Benchmark
    public Plan plan() { return PlanMaker.plan(transport, sheets, 1); }
}
