package leeway.core.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Range;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.run.Change;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.How;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.PatientEntry.Effort;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** What a clinician expects of oxygen that only flows past. */
class FreeFlowTest {
    private static final Ventilator FLOW = new Ventilator("free flow", Ventilator.Drive.FREE_FLOW, List.of(), Map.of(Setting.BIAS_FLOW, new Range(1, 15, 0)),
            new Settings(Optional.empty(), Map.of(Setting.BIAS_FLOW, 10.0)), Map.of(), 15, 5, 0, 0, false, false, false,
            new Ventilator.Gas(List.of(Ventilator.Inlet.HIGH_PRESSURE), OptionalDouble.empty(), false, 0, 0, 0, 0, 0, 0, 10, false, Ventilator.VolumeBasis.BTPS, Ventilator.Altitude.COMPENSATED,
                    0, OptionalDouble.empty(), OptionalDouble.empty(), 50),
            Optional.empty(), Optional.empty(), List.of(), List.of(), OptionalDouble.empty(), 0.3, "invented");

    private static Settings flow(double lPerMin) { return new Settings(Optional.empty(), Map.of(Setting.BIAS_FLOW, lPerMin)); }

    private static Transport transport(Effort effort) {
        Transport t = Someone.journey(FLOW, List.of());
        return new Transport(t.title(), Someone.woman(effort), Someone.HEALTHY, t.airway(), t.ventilator(), t.circuit(), t.filter(), t.monitor(), t.strategy(), t.prescribed(), t.oxygen(), t.power(),
                List.of(t.legs().get(0)), t.events(), t.whatIf(), t.policy(), t.alarms(), 0, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
    }

    private static List<double[]> rows(Transport t, double lPerMin, double untilS, Change... changes) {
        JourneyRun run = JourneyRun.of(t, flow(lPerMin), new Draw(0, 0));
        Loop loop = new Loop(run.parts());
        Script script = run.script().copy();
        for (Change c : changes) script.add(c);
        Now n = loop.begin(script);
        List<double[]> rows = new ArrayList<>();
        loop.to(untilS, n, script, new Sink() {
            @Override public void row(Now now) { rows.add(now.row.clone()); }
        });
        return rows;
    }

    private static double at(List<double[]> rows, double tS, Column c) {
        double last = Double.NaN;
        for (double[] r : rows) if (r[Column.END_S.ordinal()] <= tS + 1e-9 && !Double.isNaN(r[c.ordinal()])) last = r[c.ordinal()];
        return last;
    }

    @Test
    void whoDoesNotBreatheIsNotVentilatedButKeepsTheirOxygen() {
        List<double[]> rows = rows(transport(Effort.NONE), 10, 480);
        assertThat(rows.stream().mapToDouble(r -> r[Column.INSPIRED_ML.ordinal()]).sum()).isZero();
        assertThat(rows).allSatisfy(r -> assertThat(r[Column.KIND.ordinal()]).isZero());
        double first = at(rows, 60, Column.PACO2_MMHG) - rows.get(0)[Column.PACO2_MMHG.ordinal()];
        double later = (at(rows, 300, Column.PACO2_MMHG) - at(rows, 60, Column.PACO2_MMHG)) / 4;
        // Kobayashi, Masui 1994 (abstract): 9.8 +- 1.9 in the first minute, then 3.4 to 4.4; awake and small bodies differ
        assertThat(first).as("first minute").isBetween(6.0, 13.0);
        assertThat(later).as("mmHg a minute after it").isBetween(2.6, 4.6);
        assertThat(at(rows, 480, Column.SAO2)).as("apnoeic oxygenation").isGreaterThan(0.97);
        List<double[]> air = rows(transport(Effort.NONE), 10, 480, Change.at(0, Knob.SOURCE_OXYGEN, How.SET, 0.21));
        assertThat(at(air, 480, Column.SAO2)).as("with the hose on air").isLessThan(0.8);
    }

    @Test
    void whoBreathesDoesSoAloneAndTheirCarbonDioxideSaysHowMuch() {
        Transport t = transport(Effort.NORMAL);
        Steady s = LegState.of(t, Ventilated.of(t), flow(10)).get(0).steady();
        assertThat(s.breath().expiredMl()).as("6 to 9 mL/kg").isBetween(250.0, 560.0);
        assertThat(s.gases().paco2MmHg()).isBetween(36.0, 50.0);
        assertThat(s.breath().peakCmH2O()).as("nothing pushes").isCloseTo(0, within(0.01));
        List<double[]> rows = rows(t, 10, 540);
        assertThat(at(rows, 540, Column.PACO2_MMHG)).as("the run stays where the steady state says").isCloseTo(s.gases().paco2MmHg(), within(1.5));
        assertThat(at(rows, 540, Column.FIO2)).isCloseTo(s.fio2(), within(0.04));
        assertThat(rows).allSatisfy(r -> assertThat(r[Column.STARTED_BY.ordinal()] == 1 || r[Column.KIND.ordinal()] == 0).isTrue());
        assertThat(at(rows, 540, Column.OXYGEN_DRAW_L_MIN)).as("it flows, breathed or not").isCloseTo(10, within(1e-6));
    }

    @Test
    void whoeverBreathesInFasterThanItFlowsDrawsInAir() {
        Ventilated normal = Ventilated.of(transport(Effort.NORMAL)), strong = Ventilated.of(transport(Effort.STRONG));
        double last = 0;
        for (double lPerMin : new double[] {2, 5, 10, 15}) {
            double fio2 = Steady.of(normal, flow(lPerMin), 1013.25).fio2();
            assertThat(fio2).as("%s L/min", lPerMin).isGreaterThan(last).isBetween(0.21, 0.996);
            assertThat(Steady.of(strong, flow(lPerMin), 1013.25).fio2()).as("deep breaths, %s L/min", lPerMin).isLessThan(fio2);
            last = fio2;
        }
        assertThat(Steady.of(normal, flow(2), 1013.25).fio2()).isLessThan(0.5);
    }

    @Test
    void offTheAirwayOrWithoutGasItIsAir() {
        List<double[]> off = rows(transport(Effort.NORMAL), 10, 300, Change.at(60, Knob.OPEN_AT_PATIENT, How.SET, 1));
        assertThat(at(off, 55, Column.FIO2)).isGreaterThan(0.5);
        assertThat(at(off, 300, Column.FIO2)).isCloseTo(0.21, within(0.002));
        assertThat(at(off, 300, Column.INSPIRED_ML)).as("and breathing goes on").isGreaterThan(200);
    }
}
