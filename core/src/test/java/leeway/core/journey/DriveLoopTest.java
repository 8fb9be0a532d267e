package leeway.core.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.gas.Barometer;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.kit.Ventilator;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.transport.Event;
import leeway.core.transport.Leg;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Sedation;
import leeway.core.transport.Transport;
import org.junit.jupiter.api.Test;

/** Carbon dioxide and oxygen drive the effort that moves them: where that settles, the steady state and the run agree. */
class DriveLoopTest {
    private static final double SEA = Barometer.SEA_LEVEL_HPA;
    private static final Settings SUPPORT = new Settings(Optional.of(Mode.CSV_PS), Map.of(Setting.SUPPORT_PRESSURE, 8.0, Setting.PEEP, 5.0, Setting.FIO2, 0.3));

    private static Transport longFlight() {
        Transport t = Someone.journey(Someone.ventilator(Ventilator.Altitude.COMPENSATED), List.of());
        Leg ground = t.legs().get(0), air = t.legs().get(1);
        Leg high = new Leg("flight", 90, 90, air.oxygen(), Optional.empty(), 3000, true, 5, OptionalDouble.empty(), Optional.empty(), Optional.empty(), 2, false, true, Optional.empty());
        return new Transport(t.title(), Someone.woman(PatientEntry.Effort.NORMAL), t.illness(), t.airway(), t.ventilator(), t.circuit(), t.filter(), t.monitor(), t.strategy(), t.prescribed(),
                t.oxygen(), t.power(), List.of(ground, high), t.events(), t.whatIf(), t.policy(), t.alarms(), 0, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
    }

    @Test
    void anAwakePatientBreathesMoreInThinAirAndTheSteadyStateSaysWhatTheRunComesTo() {
        Transport t = longFlight();
        Ventilated v = Ventilated.of(t);
        Steady ground = LegState.of(t, v, SUPPORT).get(0).steady(), high = LegState.of(t, v, SUPPORT).get(1).steady();
        assertThat(high.gases().sao2()).as("lack of oxygen").isLessThan(ground.gases().sao2() - 0.02);
        assertThat(high.breath().minuteVolumeLPerMin()).as("is answered").isGreaterThan(1.015 * ground.breath().minuteVolumeLPerMin());
        assertThat(high.gases().paco2MmHg()).as("at the cost of carbon dioxide").isLessThan(ground.gases().paco2MmHg() - 0.4);
        JourneyRun run = JourneyRun.of(t, v, SUPPORT, new Draw(0, 0));
        Loop loop = new Loop(run.parts());
        Now n = loop.begin(run.script());
        loop.to(run.endS() - 300, n, run.script().copy(), Sink.NONE);
        List<double[]> rows = new ArrayList<>();
        loop.to(run.endS(), n, run.script().copy(), new Sink() {
            @Override public void row(Now now) { rows.add(now.row.clone()); }
        });
        double expired = rows.stream().mapToDouble(r -> r[Column.EXPIRED_ML.ordinal()]).sum() / 1000 / (rows.get(rows.size() - 1)[Column.END_S.ordinal()] - rows.get(0)[Column.AT_S.ordinal()]) * 60;
        assertThat(high.breath().minuteVolumeLPerMin()).isCloseTo(expired, within(0.04 * expired));
        assertThat(high.gases().paco2MmHg()).isCloseTo(rows.get(rows.size() - 1)[Column.PACO2_MMHG.ordinal()], within(1.0));
        assertThat(high.gases().sao2()).isCloseTo(rows.get(rows.size() - 1)[Column.SAO2.ordinal()], within(0.006));
    }

    @Test
    void lessSupportIsMadeUpForByThePatientAsFarAsTheDriveGoes() {
        Ventilated v = Someone.on(Someone.HEALTHY, PatientEntry.Effort.NORMAL);
        Settings less = SUPPORT.with(Setting.SUPPORT_PRESSURE, 2);
        Steady start = Steady.of(v, SUPPORT, SEA), plain = Steady.of(v, less, SEA), closed = Steady.later(v, less, SEA, 0.3, start);
        assertThat(plain.gases().paco2MmHg()).isGreaterThan(start.gases().paco2MmHg() + 4);
        assertThat(closed.gases().paco2MmHg()).isBetween(start.gases().paco2MmHg() + 0.2, plain.gases().paco2MmHg() - 2);
        assertThat(closed.breath().minuteVolumeLPerMin()).isBetween(plain.breath().minuteVolumeLPerMin(), start.breath().minuteVolumeLPerMin() + 0.2);
    }

    @Test
    void whereNothingDiffersOrNothingAnswersNothingChanges() {
        Ventilated v = Someone.on(Someone.HEALTHY, PatientEntry.Effort.NORMAL), passive = Someone.on(Someone.HEALTHY, PatientEntry.Effort.NONE);
        Steady start = Steady.of(v, SUPPORT, SEA), still = Steady.of(passive, Someone.volume(420, 14, 0.4), SEA);
        assertThat(Steady.later(v, SUPPORT, SEA, 0.3, start).breath()).isEqualTo(start.breath());
        assertThat(Steady.later(passive, Someone.volume(420, 10, 0.4), SEA, 0.4, still).breath()).isEqualTo(Steady.of(passive, Someone.volume(420, 10, 0.4), SEA).breath());
    }

    @Test
    void sedationWearsOffAndAnEventLiesOverWhatWasGivenBefore() {
        Transport t = longFlight();
        PatientEntry p = Someone.woman(PatientEntry.Effort.NORMAL);
        PatientEntry sedated = new PatientEntry(p.sex(), p.heightCm(), false, p.weightKg(), p.ageYears(), p.airwayDepthCm(), p.cuff(), p.lungs(), p.temperatureCel(), p.haemoglobinGPerL(),
                p.position(), false, false, p.cardiacOutputLPerMin(), p.bloodGas(), 0, 0, true,
                new PatientEntry.Breathing(new Sedation(0.8, OptionalDouble.of(20)), true, 0, 0, OptionalDouble.empty(), 0));
        Event deeper = new Event(30, Settings.NONE, OptionalDouble.of(600), Optional.empty(), Optional.empty(), Optional.of(new Sedation(0.9, OptionalDouble.empty())));
        Transport with = new Transport(t.title(), sedated, t.illness(), t.airway(), t.ventilator(), t.circuit(), t.filter(), t.monitor(), t.strategy(), t.prescribed(), t.oxygen(), t.power(),
                t.legs(), List.of(deeper), t.whatIf(), t.policy(), t.alarms(), 0, Optional.empty(), Optional.empty(), List.of(), List.of(), "");
        Script script = JourneyRun.of(with, SUPPORT, new Draw(0, 0)).script();
        double[] at = new double[6];
        double[] minutes = {0.1, 20, 35, 41, 60, 99};
        for (int i = 0; i < at.length; i++) {
            double[] knobs = new double[Knob.SLOTS];
            script.copy().fold(minutes[i] * 60, knobs);
            at[i] = knobs[Knob.SEDATION.slot()];
        }
        assertThat(at[0]).isCloseTo(0.8, within(0.03));
        assertThat(at[1]).as("half of it after its half-time").isCloseTo(0.4, within(0.015));
        assertThat(at[2]).as("the event").isEqualTo(0.9);
        assertThat(at[3]).as("after it what is left of the first").isCloseTo(0.8 * Math.pow(2, -41 / 20.0), within(0.01));
        assertThat(at[4]).isCloseTo(0.1, within(0.005));
        assertThat(at[5]).isCloseTo(0.8 * Math.pow(2, -99 / 20.0), within(0.002));
    }
}
