package leeway.core.breath;

import static leeway.Check.computed;
import static leeway.Check.fromMemory;
import static leeway.Check.lookedUp;

import java.util.List;
import leeway.Check;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Oxygen that flows past an open airway: what of it is breathed, beside print. */
class FreeFlowPublishedTest {
    private static final String RESERVOIR = "textbook example of a low flow system: 50 + 100 mL of oxygen and 350 mL of air of 20 %: 220 of 500 mL";
    private static final String WETTSTEIN = "Wettstein, Respir Care 2005;50:604 (abstract): pharynx of 10 healthy people, mean; SD 0.04 to 0.15";
    private static final String MASK = "lecture handout on oxygen therapy: simple mask 35 to 50 %, least 5 L/min";
    private static final DeviceLimits ANY = DeviceLimits.strong();

    static final List<Check> ROWS = List.of(
            computed("6 L/min, 50 mL of reservoir, 500 mL in 1 s out of 3 s", 44, 0.5, "%", RESERVOIR, () -> square(500)),
            fromMemory("the same, 250 mL in 1 s", 68, 0.5, "%", "the same example, shallow breaths", () -> square(250)),
            lookedUp("nasal flow of 1 L/min, breathing at rest", 0.26, 0.04, "1", WETTSTEIN, () -> breathed(1, 1, 7, 15)),
            lookedUp("nasal flow of 6 L/min, breathing at rest", 0.54, 0.15, "1", WETTSTEIN, () -> breathed(6, 1, 7, 15)),
            lookedUp("nasal flow of 1 L/min, breathing fast", 0.24, 0.04, "1", WETTSTEIN + "; how fast is not in the abstract: 25 /min, 700 mL here", () -> breathed(1, 1, 10, 25)),
            lookedUp("nasal flow of 6 L/min, breathing fast", 0.45, 0.15, "1", WETTSTEIN, () -> breathed(6, 1, 10, 25)),
            lookedUp("simple mask, 5 L/min", 0.35, 0.10, "1", MASK, () -> breathed(5, 0.5, 7, 15)),
            lookedUp("simple mask, 10 L/min", 0.50, 0.10, "1", MASK, () -> breathed(10, 0.5, 7, 15)));

    /** Out in 1.5 s, half a second of rest, in at a constant flow in 1 s; percent of oxygen with air of 20 %. */
    private static double square(double tidalMl) {
        Reservoir r = new Reservoir(50);
        r.pass(-tidalMl / 1.5, 1.5, 100);
        r.pass(0, 0.5, 100);
        double fresh = r.pass(tidalMl, 1, 100);
        return 100 * (fresh + 0.2 * (tidalMl - fresh)) / tidalMl;
    }

    /** A healthy adult without a tube. */
    private static double breathed(double lPerMin, double caught, double effortCmH2O, double ratePerMin) {
        FreeFlow flow = new FreeFlow(50, caught);
        Mechanics healthy = Mechanics.linear(3, 90);
        Loop loop = new Loop(new Breath(healthy, ANY), flow);
        Script script = Breath.base(new Script(), healthy, BreathSettings.support(0, 0.1, 0, 0.25)).base(Knob.VENTILATOR_ON, 0).base(Knob.BIAS_FLOW_SET, lPerMin)
                .base(Knob.EFFORT, effortCmH2O).base(Knob.EFFORT_RATE, ratePerMin).base(Knob.EFFORT_TIME, 0.27 * 60 / ratePerMin);
        Now n = loop.begin(script);
        loop.to(30, n, script, Sink.NONE);
        double fresh = flow.freshMl(n), all = flow.inspiredMl(n);
        loop.to(90, n, script, Sink.NONE);
        return flow.fio2(flow.freshMl(n) - fresh, flow.inspiredMl(n) - all);
    }

    @ParameterizedTest(name = "{0}")
    @FieldSource("ROWS")
    void agreesWithPrint(Check row) {
        row.holds();
    }
}
