package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
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
 * The operating map of 60 × 60 points on the full steady model, and the search for starting settings. Goal: under 150 ms a map.
 * <p>Run: {@code java -jar speed/target/speed.jar MapBenchmark}. Before anything is timed the room at the chosen settings
 * must agree with the grid around it.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class MapBenchmark {
    private static final String JOURNEY = """
            transport: map
            patient: {sex: female, height: 170 cm, illness: moderate pneumonia}
            ventilator: example pneumatic
            settings: {fio2: 60 %, peep: 8 cmH2O}
            oxygen:
              - {name: one, cylinder: 10 L, pressure: 200 bar}
            legs:
              - {leg: road, takes: 45 min, oxygen: one}
            """;
    private Transport transport;
    private Catalogue catalogue;
    private Start start;

    @Setup
    public void read() {
        catalogue = Catalogue.builtIn();
        transport = TransportReader.read("map.yaml", JOURNEY, catalogue).good().orElseThrow();
        start = settings();
        OperatingMap map = map();
        double highest = 0;
        for (double[] row : map.room()) for (double room : row) highest = Math.max(highest, room);
        if (!(map.chosen().room() > 0 && map.chosen().room() <= highest + 0.2)) throw new IllegalStateException("room " + map.chosen().room() + ", highest of the grid " + highest);
    }

    @Benchmark
    public OperatingMap map() { return MapMaker.of(start, transport, 60); }

    @Benchmark
    public Start settings() { return Start.of(transport, Ventilated.of(transport), n -> catalogue.read(Kinds.STRATEGY, n).good().orElseThrow()); }
}
