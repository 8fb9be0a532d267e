package leeway.speed;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import leeway.core.body.PatientModel;
import leeway.core.body.SteadyGases;
import leeway.core.body.Ventilation;
import leeway.core.transport.PatientEntry.Sex;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The steady gases of one setting, as a map of 60 × 60 asks for. Run: {@code java -jar speed/target/speed.jar SteadyGases}. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SteadyGasesBenchmark {
    /** Share of perfusion to poorly ventilated lung: without it the state is explicit. */
    @Param({"0", "0.12"})
    public double low;
    private PatientModel patient;
    private int next;

    @Setup
    public void patient() {
        patient = new PatientModel(Sex.MALE, 40, true, 175, 70, 70, 40, 8, 0, 0.3, 1500, 0.2, low, 0.15, 110, 60, OptionalDouble.empty(), 240, 192, 6, 4900, 12, 26.86, 0, 37.5, true, List.of());
    }

    @Benchmark
    public double one() {
        int i = next++ % 3600;
        return SteadyGases.of(patient, new Ventilation(300 + 5 * (i % 60), 10 + 0.4 * (i / 60), 0.6, 760, 12)).pao2MmHg();
    }
}
