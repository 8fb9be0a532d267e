package leeway.speed;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import leeway.core.gas.RealOxygen;
import leeway.core.kit.Battery;
import leeway.core.kit.Policy;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.supply.LegNeed;
import leeway.core.supply.Odds;
import leeway.core.transport.Leg;
import leeway.core.transport.PowerStore;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import org.hipparchus.random.RandomDataGenerator;
import org.hipparchus.stat.descriptive.rank.Percentile;
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
 * 100 000 journeys of four legs over three cylinders of certain contents and a pack of uncertain charge: the p50, p95 and p99 of
 * the need and the chances of running dry. Ours against a general-purpose library's default generator and its percentile.
 * Run: {@code java -jar speed/target/speed.jar JourneyBench}. Both answers are compared in {@link #agree}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 7, time = 1)
@Fork(value = 1, jvmArgsAppend = "-XX:+UseSerialGC")
public class JourneyBench {
    private static final int JOURNEYS = 100_000;
    private static final double[] MEDIAN = { 12, 45, 50, 20 };
    private static final double[] WORST = { 25, 80, 75, 35 };
    private static final double[] DRAW = { 6, 8, 5, 6 };
    private static final int[][] ORDER = { { 0 }, { 1, 0 }, { 0 }, { 2, 0 } };
    private static final double[] LITRES = { 480, 700, 200 };
    private static final double LOAD_W = 18;
    private static final double PACK_WH = 81;
    private static final double PACK_SD_WH = 4.5;

    private Transport transport;
    private List<LegNeed> needs;

    @Setup
    public void agree() {
        transport = transport();
        needs = java.util.Arrays.stream(DRAW).mapToObj(q -> new LegNeed(q, 0, 0, 15, 1, 0, 0, 1013.25)).toList();
        Odds ours = ours();
        Odds theirs = hipparchus();
        near(ours.neededL().p50(), theirs.neededL().p50(), 0.01 * ours.neededL().p50());
        near(ours.neededL().p95(), theirs.neededL().p95(), 0.01 * ours.neededL().p95());
        near(ours.neededL().p99(), theirs.neededL().p99(), 0.02 * ours.neededL().p99());
        near(ours.emptyChance(), theirs.emptyChance(), 4 * Math.sqrt(2 * ours.emptyChance() / JOURNEYS));
        near(ours.flatChance(), theirs.flatChance(), 4 * Math.sqrt(2 * ours.flatChance() / JOURNEYS) + 1e-4);
    }

    private static void near(double a, double b, double within) {
        if (!(Math.abs(a - b) <= within)) throw new IllegalStateException(a + " and " + b + " differ by more than " + within);
    }

    @Benchmark
    public Odds ours() { return Odds.of(transport, needs, 1, JOURNEYS); }

    @Benchmark
    public Odds hipparchus() {
        var random = new RandomDataGenerator(1);
        double[] need = new double[JOURNEYS];
        double[] left = new double[3];
        double[] sigma = new double[4];
        for (int l = 0; l < 4; l++) sigma[l] = Math.log(WORST[l] / MEDIAN[l]) / 1.6448536269514722;
        int dry = 0;
        int flat = 0;
        for (int d = 0; d < JOURNEYS; d++) {
            double wh = Math.min(PACK_WH, PACK_WH + PACK_SD_WH * random.nextNormal(0, 1));
            for (int s = 0; s < 3; s++) left[s] = LITRES[s];
            boolean isDry = false;
            boolean isFlat = false;
            for (int l = 0; l < 4; l++) {
                double minutes = MEDIAN[l] * Math.exp(sigma[l] * random.nextNormal(0, 1));
                double litres = DRAW[l] * minutes;
                need[d] += litres;
                for (int s : ORDER[l]) {
                    double gives = Math.min(left[s], litres);
                    left[s] -= gives;
                    litres -= gives;
                }
                isDry |= litres > 1e-9;
                double takes = LOAD_W * minutes / 60;
                isFlat |= takes > wh;
                wh = Math.max(0, wh - takes);
            }
            if (isDry) dry++;
            if (isFlat) flat++;
        }
        var percentile = new Percentile();
        percentile.setData(need);
        return new Odds(new leeway.core.supply.SupplyResult.Needed(percentile.evaluate(50), percentile.evaluate(95), percentile.evaluate(99)),
                (double) dry / JOURNEYS, (double) flat / JOURNEYS);
    }

    private static Transport transport() {
        var gas = new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), false, 0, 0, 0, 0, 0, 2.7, 6, false, Ventilator.VolumeBasis.FREE,
                Ventilator.Altitude.COMPENSATED, 0.05);
        var load = new Ventilator.Load(LOAD_W, 0, 0, 1, 4, 0, 60);
        var ventilator = new Ventilator("bench", Ventilator.Drive.TURBINE, List.of(), Map.of(), Settings.NONE, Map.of(), 120, 60, 0.02, 2, true, true, false, gas, Optional.of(load),
                Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 5, "invented");
        var pack = new Battery("pack", PACK_WH / 0.9, 3, 0, 0, List.of(), 0.1, PACK_SD_WH / (PACK_WH / 0.9), 40, 0, 45, 0.7, "invented");
        Store[] stores = new Store[3];
        for (int s = 0; s < 3; s++) {
            double water = LITRES[s] / RealOxygen.usableL(1, 200, 15, 0);
            stores[s] = new Store("s" + s, Store.Type.CYLINDER, Optional.empty(), OptionalDouble.of(water), OptionalDouble.of(200), OptionalDouble.of(15),
                    OptionalDouble.empty(), OptionalDouble.empty(), 1, 0, new Store.Gauge(0, 315, 0), OptionalDouble.empty(), new Store.Inlet(true, OptionalDouble.empty()));
        }
        Leg[] legs = new Leg[4];
        for (int l = 0; l < 4; l++) {
            List<String> from = java.util.Arrays.stream(ORDER[l]).mapToObj(s -> "s" + s).toList();
            legs[l] = new Leg("leg " + l, MEDIAN[l], WORST[l], from, Optional.of("own"), 0, false, 0, OptionalDouble.empty(), Optional.empty(), Optional.empty(), 2, false, true, Optional.empty());
        }
        return new Transport("bench", null, null, null, ventilator, null, null, null, "", Settings.NONE, List.of(stores),
                List.of(new PowerStore("own", false, Optional.of(pack), 1, 0, 0)), List.of(legs), List.of(), List.of(),
                new Policy("bench", 0.01, 0.01, 0, 0, false, Optional.empty(), null, null, "invented"), Map.of(), 0, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
    }
}
