package leeway.core.breath;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import leeway.core.kit.Mode;
import leeway.core.lung.FlowLimit;
import leeway.core.lung.Lungs;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every mode on every kind of lung, through every fault of the lung, without a stuck breath or a number that is none. */
class AllCombinationsTest {
    private static final Map<String, Lungs> KINDS = new LinkedHashMap<>();

    static {
        KINDS.put("linear", Lungs.LINEAR);
        KINDS.put("curved", Lungs.LINEAR.withCurve(8, 6));
        KINDS.put("opening", LungKindTest.OPENING);
        KINDS.put("flow-limited", LungKindTest.LIMITED);
        KINDS.put("apart", LungKindTest.APART);
        KINDS.put("slow part", Lungs.LINEAR.withSlow(0.4, 6));
        KINDS.put("all at once", LungKindTest.OPENING.withLimit(new FlowLimit(1.5, 1)).withLeft(0.45));
    }

    static Stream<Arguments> combinations() {
        List<Arguments> all = new ArrayList<>();
        for (Mode mode : Mode.values()) for (String kind : KINDS.keySet()) all.add(Arguments.of(mode, kind));
        return all.stream();
    }

    @ParameterizedTest(name = "{0} on {1} lungs")
    @MethodSource("combinations")
    void goesOn(Mode mode, String kind) {
        run(mode, KINDS.get(kind), 420);
    }

    @ParameterizedTest(name = "8 h of {0} on {1} lungs")
    @MethodSource("combinations")
    @Tag("long")
    void goesOnForEightHours(Mode mode, String kind) {
        run(mode, KINDS.get(kind), 8 * 3600);
    }

    static Stream<String> kinds() { return KINDS.keySet().stream(); }

    @ParameterizedTest(name = "free flow on {0} lungs")
    @MethodSource("kinds")
    void freeFlowGoesOn(String kind) {
        run(Mode.CPAP, KINDS.get(kind), 420, true);
    }

    @ParameterizedTest(name = "8 h of free flow on {0} lungs")
    @MethodSource("kinds")
    @Tag("long")
    void freeFlowGoesOnForEightHours(String kind) {
        run(Mode.CPAP, KINDS.get(kind), 8 * 3600, true);
    }

    private static void run(Mode mode, Lungs lungs, double endS) { run(mode, lungs, endS, false); }

    private static void run(Mode mode, Lungs lungs, double endS, boolean freeFlow) {
        Mechanics m = Bench.ADULT.withLungs(lungs).withLeaks(1, 1);
        BreathSettings s = new BreathSettings(mode, 380, 16, 1.1, 0.1, 14, 9, 0.1, 8, 0.4, 45, 2, 0, 0.25, 0, 20, 0.6);
        Breath breath = new Breath(m, DeviceLimits.strong());
        Loop loop = freeFlow ? new Loop(breath, new FreeFlow(50, 1)) : new Loop(breath);
        Script script = Breath.base(new Script(), m, s).base(Knob.EFFORT, 6).base(Knob.EFFORT_RATE, 18).base(Knob.EFFORT_TIME, 0.9);
        if (freeFlow) script.base(Knob.VENTILATOR_ON, 0).base(Knob.BIAS_FLOW_SET, 8);
        // each tenth of the run has a trouble of its own
        double tenth = endS / 10;
        fault(script, 1, tenth, Knob.SEDATION, How.SET, 1);
        fault(script, 2, tenth, Knob.RESISTANCE, How.TIMES, 6);
        fault(script, 3, tenth, Knob.COMPLIANCE, How.TIMES, 0.4);
        fault(script, 4, tenth, Knob.VENTILATED_SHARE, How.SET, 0.5);
        fault(script, 5, tenth, Knob.PLEURAL_LEAK, How.SET, 2);
        fault(script, 6, tenth, Knob.PEEP_SET, How.SET, 0);
        fault(script, 7, tenth, Knob.AIRWAY_CLOSED, How.SET, 1);
        fault(script, 8, tenth, Knob.OPEN_AT_PATIENT, How.SET, 1);
        fault(script, 8.5, tenth, Knob.FALSE_TRIGGERS, How.SET, 40);
        fault(script, 9, tenth, Knob.EFFORT, How.SET, 25);
        Now now = loop.begin(script);
        double[] seen = {0, 0, 0};
        loop.to(endS, now, script, new Sink() {
            @Override public void row(Now n) {
                seen[0]++;
                double at = n.get(Column.AT_S), end = n.get(Column.END_S);
                for (Column c : new Column[] {Column.INSPIRED_ML, Column.EXPIRED_ML, Column.PEAK_CMH2O, Column.PEEP_CMH2O, Column.MEAN_CMH2O, Column.ENERGY_J, Column.TRAPPED_ML}) {
                    assertThat(n.get(c)).as("%s at %s s", c, at).isFinite();
                }
                assertThat(end - at).as("row at %s s", at).isBetween(0.0, 61.0);
                assertThat(n.get(Column.PEAK_CMH2O)).as("peak at %s s", at).isBetween(-60.0, 120.0);
                seen[1] = end;
            }
        });
        for (int i = 0; i < now.y.length; i++) if (i != Slot.TRIGGER_DELAY && i != Slot.DUE_DELAY && i != Slot.P01) assertThat(now.y[i]).as("state %s", i).isNotNaN();
        for (double x : now.level) assertThat(x).isFinite();
        assertThat(now.tS).isGreaterThanOrEqualTo(endS);
        assertThat(seen[0]).as("rows").isGreaterThan(endS / 60);
    }

    private static void fault(Script script, double part, double tenth, Knob knob, How how, double value) {
        script.add(Change.during(part * tenth, (part + 0.8) * tenth, knob, how, value));
    }
}
