package leeway.core.supply;

import static leeway.core.supply.Kits.leg;
import static leeway.core.supply.Kits.pure;

import java.util.List;
import java.util.Optional;
import leeway.Check;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

class JourneyPublishedTest {
    private static final String DEFINITION = "lognormal by its median and 95th percentile";
    private static final String FENTON = "moments of a sum of lognormals, worked by an independent program";
    private static final String SIMULATED = "simulation of 8 000 000 journeys; three standard errors of our 200 000";
    private static final double[] MEDIAN = { 12, 45, 50 };
    private static final double[] SIGMA = { sigma(12, 25), sigma(45, 80), sigma(50, 75) };

    private static double sigma(double median, double worst) { return StrictMath.log(worst / median) / Route.Z95; }

    private static LognormalSum minutes() { return LognormalSum.of(new double[] { 1, 1, 1 }, MEDIAN, SIGMA); }

    private static LognormalSum litres() { return LognormalSum.of(new double[] { 6, 8, 5 }, MEDIAN, SIGMA); }

    private static SupplyResult.Needed drawn(double a, double b, double c) {
        var store = Kits.cylinder("o", 50, 200, 15, 4, 0, Kits.EXACT);
        var t = Kits.transport(List.of(store), leg("one", 12, 25, "o"), leg("two", 45, 80, "o"), leg("three", 50, 75, "o"));
        return Supply.of(t, List.of(pure(a), pure(b), pure(c)), Optional.empty(), 1, 200_000).oxygen().neededL();
    }

    private static LognormalSum published() {
        return LognormalSum.of(new double[] { 1, 1 }, new double[] { 110, 100 }, new double[] { 0.25, 0.15 });
    }

    static final List<Check> ROWS = List.of(
        Check.computed("sigma of a leg of 45, at worst 80 min", 0.34980, 0.000005, "1", DEFINITION, () -> SIGMA[1]),
        Check.computed("sigma of a leg of 12, at worst 25 min", 0.44622, 0.000005, "1", DEFINITION, () -> SIGMA[0]),
        Check.computed("mean of a leg of 45, at worst 80 min", 47.839, 0.0005, "min", DEFINITION,
                () -> LognormalSum.of(new double[] { 1 }, new double[] { 45 }, new double[] { SIGMA[1] }).mean()),
        Check.computed("99th percentile of a leg of 45, at worst 80 min", 101.54, 0.005, "min", DEFINITION,
                () -> LognormalSum.of(new double[] { 1 }, new double[] { 45 }, new double[] { SIGMA[1] }).quantile(0.99)),
        Check.computed("99th percentile of a leg of 12, at worst 25 min", 33.89, 0.005, "min", DEFINITION,
                () -> LognormalSum.of(new double[] { 1 }, new double[] { 12 }, new double[] { SIGMA[0] }).quantile(0.99)),
        Check.computed("sum of lognormals of medians 110 and 100, sigmas 0.25 and 0.15: mu", 5.35747, 0.00005, "1", FENTON, () -> published().mu()),
        Check.computed("the same: sigma", 0.15108, 0.000005, "1", FENTON, () -> published().sigma()),
        Check.lookedUp("the same, from print: mu", 5.35765, 0.0005, "1", "R package vignette on lognormal sums, by another approximation (Lo), hence the width",
                () -> published().mu()),
        Check.computed("three legs 12/25, 45/80, 50/75 min: mean", 112.638, 0.0005, "min", FENTON, () -> minutes().mean()),
        Check.computed("three legs: standard deviation", 22.428, 0.0005, "min", FENTON, () -> minutes().sd()),
        Check.computed("three legs: median by moments", 110.47, 0.005, "min", FENTON, () -> minutes().quantile(0.5)),
        Check.computed("three legs: 95th percentile by moments", 152.79, 0.005, "min", FENTON, () -> minutes().quantile(0.95)),
        Check.computed("three legs: 99th percentile by moments", 174.77, 0.005, "min", FENTON, () -> minutes().quantile(0.99)),
        Check.computed("three legs at 1 L/min: median by draws", 110.28, 0.18, "L", SIMULATED, () -> drawn(1, 1, 1).p50()),
        Check.computed("three legs at 1 L/min: 95th percentile by draws", 152.92, 0.46, "L", SIMULATED, () -> drawn(1, 1, 1).p95()),
        Check.computed("three legs at 1 L/min: 99th percentile by draws", 176.14, 0.9, "L", SIMULATED, () -> drawn(1, 1, 1).p99()),
        Check.computed("three legs at 6, 8, 5 L/min: mean", 720.0, 0.05, "L", FENTON, () -> litres().mean()),
        Check.computed("three legs at 6, 8, 5 L/min: median by draws", 700.7, 1.5, "L", SIMULATED, () -> drawn(6, 8, 5).p50()),
        Check.computed("three legs at 6, 8, 5 L/min: 95th percentile by draws", 1005.1, 3.5, "L", SIMULATED, () -> drawn(6, 8, 5).p95()),
        Check.computed("three legs at 6, 8, 5 L/min: 99th percentile by draws", 1180.4, 7, "L", SIMULATED, () -> drawn(6, 8, 5).p99()),
        Check.computed("standard uncertainty of a class 2.5 gauge of 315 bar, read to 5 bar", 4.98, 0.005, "bar", "JCGM 100: rectangle a/√3, triangle a/√6",
                () -> Chances.Reading.standardBar(Kits.USUAL)));

    @ParameterizedTest(name = "{0}") @FieldSource("ROWS")
    void agreesWithPrint(Check row) { row.holds(); }
}
