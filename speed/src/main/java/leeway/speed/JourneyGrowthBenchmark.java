package leeway.speed;

import java.util.concurrent.TimeUnit;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.DeviceLimits;
import leeway.core.breath.Mechanics;
import leeway.core.lung.Tube;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Whether the cost of a breath stays the same however long the journey: {@code java -jar speed/target/speed.jar JourneyGrowth}. 7200 breaths are 8 h at 15 a minute. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 2, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 4, time = 400, timeUnit = TimeUnit.MILLISECONDS)
@Fork(1)
public class JourneyGrowthBenchmark {
    @Param({"1000", "7200", "100000"})
    public int breaths;
    private final Mechanics adult = Mechanics.linear(11, 34).withTube(new Tube(7.5, 31).rohrer()).withFilterAndCircuit(1.5, 3, 1.5);
    private final Loop loop = new Loop(new Breath(adult, DeviceLimits.strong()));
    private final Script script = Breath.base(new Script(), adult, BreathSettings.volume(369, 15, 1.2, 0.2, 8));
    private final double[] rows = new double[2];

    @Benchmark
    public double journey() {
        Now now = loop.begin(script);
        loop.to(breaths * 4.0, now, script, new Sink() {
            @Override public void row(Now n) {
                rows[0] += n.row[4];
            }
        });
        return rows[0];
    }
}
