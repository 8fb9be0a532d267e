package leeway.speed;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
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
 * Oxygen and carbon dioxide tension from both contents: warm Newton against nested bisection on the same curves.
 * <p>Run: {@code java -jar speed/target/speed.jar ContentInversion}. The contents drift as from breath to breath; before
 * anything is timed both must agree within 1e-6 mmHg on every point.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ContentInversionBenchmark {
    private static final int POINTS = 1024;
    private final Blood blood = Blood.adult(12, -2, 37.8);
    private final double[] o2 = new double[POINTS], co2 = new double[POINTS];
    private final BloodPoint newton = new BloodPoint(), bisection = new BloodPoint();
    private int next;

    @Setup
    public void drift() {
        var random = new SplittableRandom(1);
        var point = new BloodPoint();
        double po2 = 80, pco2 = 45;
        for (int i = 0; i < POINTS; i++) {
            po2 = Math.max(30, Math.min(400, po2 * Math.exp(0.02 * random.nextGaussian())));
            pco2 = Math.max(25, Math.min(80, pco2 * Math.exp(0.01 * random.nextGaussian())));
            point.ofTensions(blood, po2, pco2);
            o2[i] = point.oxygenMlPerDl;
            co2[i] = point.carbonDioxideMlPerDl;
            newton.ofContents(blood, o2[i], co2[i]);
            bisection.ofContents(blood, o2[i], co2[i]);
            bisection.again(blood);
            if (Math.abs(newton.po2MmHg - bisection.po2MmHg) > 1e-6 || Math.abs(newton.pco2MmHg - bisection.pco2MmHg) > 1e-6) throw new IllegalStateException("they differ at " + po2 + ", " + pco2);
        }
    }

    @Benchmark
    public double warmNewton() {
        int i = next++ & POINTS - 1;
        newton.ofContents(blood, o2[i], co2[i]);
        return newton.po2MmHg + newton.pco2MmHg;
    }

    /** 55 × 55 steps; the search it follows costs one part in some hundred of it. */
    @Benchmark
    public double nestedBisection() {
        int i = next++ & POINTS - 1;
        bisection.ofContents(blood, o2[i], co2[i]);
        bisection.again(blood);
        return bisection.po2MmHg + bisection.pco2MmHg;
    }
}
