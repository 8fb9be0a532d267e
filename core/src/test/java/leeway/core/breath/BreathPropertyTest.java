package leeway.core.breath;

import static leeway.core.breath.Bench.*;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class BreathPropertyTest {
    private static final DeviceLimits FREE = new DeviceLimits(1000, 200, 0, true, 0.08, 3, 2);

    @Test
    void aLinearBreathDoesNotDependOnPeep() {
        Mechanics m = Mechanics.linear(12, 40).withFilterAndCircuit(2, 3, 0);
        for (BreathSettings s : new BreathSettings[] {VOLUME, PRESSURE}) {
            BreathNumbers a = SteadyBreath.of(m, s.withPeep(0), FREE), b = SteadyBreath.of(m, s.withPeep(12), FREE);
            assertThat(b.expiredMl()).isCloseTo(a.expiredMl(), within(1e-7));
            assertThat(b.peakCmH2O() - 12).isCloseTo(a.peakCmH2O(), within(1e-9));
            assertThat(b.drivingCmH2O()).isCloseTo(a.drivingCmH2O(), within(1e-9));
            assertThat(b.meanCmH2O() - 12).isCloseTo(a.meanCmH2O(), within(1e-9));
        }
    }

    @Test
    void stretchingTimeAndResistanceAlikeChangesNoPressureAndNoVolume() {
        Mechanics m = Mechanics.linear(12, 40), slow = Mechanics.linear(36, 40);
        BreathNumbers a = SteadyBreath.of(m, BreathSettings.pressure(14, 24, 0.9, 0.1, 5), FREE), b = SteadyBreath.of(slow, BreathSettings.pressure(14, 8, 2.7, 0.3, 5), FREE);
        assertThat(b.expiredMl()).isCloseTo(a.expiredMl(), within(1e-8));
        assertThat(b.meanCmH2O()).isCloseTo(a.meanCmH2O(), within(1e-9));
        assertThat(b.energyJ()).isCloseTo(a.energyJ(), within(1e-10));
    }

    @Test
    void theLimitsOfNoResistanceAndOfAnEndlesslySoftLung() {
        BreathNumbers free = SteadyBreath.of(Mechanics.linear(0.1, 40), PRESSURE, FREE);
        assertThat(free.expiredMl()).isCloseTo(40 * 14, within(1e-6));
        BreathNumbers soft = SteadyBreath.of(Mechanics.linear(10, 1000), BreathSettings.volume(400, 4, 1, 0, 0), FREE);
        assertThat(soft.peakCmH2O() - soft.plateauCmH2O()).isCloseTo(10 * 0.4, within(1e-9));
        assertThat(soft.drivingCmH2O()).isCloseTo(0.4, within(1e-9));
    }

    @Test
    void morePeepNeverMeansALowerMeanPressureAndMoreRateNeverLessTrappedGas() {
        double mean = -1, trapped = -1;
        for (int i = 0; i <= 15; i++) {
            double now = SteadyBreath.of(ADULT, VOLUME.withPeep(i), FREE).meanCmH2O();
            assertThat(now).isGreaterThan(mean);
            mean = now;
            double held = SteadyBreath.of(ADULT.withLungs(25, 5, 45), BreathSettings.volume(400, 10 + i, 1, 0, 5), FREE).trappedMl();
            assertThat(held).isGreaterThan(trapped);
            trapped = held;
        }
    }

    @Test
    void inPiecesOrAtOnceTheAnswerIsTheSame() {
        Loop loop = new Loop(new Breath(ADULT, FREE));
        Script script = Breath.base(new Script(), ADULT, VOLUME);
        Now once = loop.begin(script), pieces = once.copy();
        loop.to(31.7, once, script, Sink.NONE);
        for (double t = 0.037; t < 31.7; t += 0.037) loop.to(t, pieces, script, Sink.NONE);
        loop.to(31.7, pieces, script, Sink.NONE);
        assertThat(pieces.y[Slot.VOLUME]).isCloseTo(once.y[Slot.VOLUME], within(1e-8));
    }

    @Test
    void fiftyThousandRandomChangesLeaveNoNaNAndLoseNoGas() {
        storm(50_000, 5);
    }

    @Test
    @Tag("long")
    void aMillionRandomChangesLeaveNoNaNAndLoseNoGas() {
        storm(Integer.getInteger("cases", 1_000_000), 6);
    }

    /** One patient through every mode, fault and setting in random order, a few seconds each. */
    private static void storm(int cases, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Balance balance = new Balance();
        Breath breath = new Breath(ADULT, new DeviceLimits(180, 80, 0.05, random.nextBoolean(), 0.08, 3, 2));
        Loop loop = new Loop(breath, balance);
        Script script = Breath.base(new Script(), ADULT, VOLUME).base(Knob.INSPIRATORY_PRESSURE_SET, 12).base(Knob.SUPPORT_SET, 8);
        Now now = loop.begin(script);
        Knob[] knobs = {Knob.RESISTANCE, Knob.EXPIRATORY_RESISTANCE, Knob.COMPLIANCE, Knob.VENTILATED_SHARE, Knob.TRAPPED_GAS, Knob.TUBE_RESISTANCE, Knob.FILTER_RESISTANCE,
            Knob.AIRWAY_CLOSED, Knob.OESOPHAGUS, Knob.LEAK_AIRWAY, Knob.OPEN_AT_PATIENT, Knob.OPEN_AT_VENTILATOR, Knob.LEAK_CIRCUIT, Knob.VALVE_STUCK_CLOSED, Knob.VALVE_STUCK_OPEN,
            Knob.MODE, Knob.TIDAL_VOLUME_SET, Knob.RATE_SET, Knob.INSPIRATORY_TIME_SET, Knob.PAUSE_SET, Knob.INSPIRATORY_PRESSURE_SET, Knob.SUPPORT_SET, Knob.RISE_SET, Knob.PEEP_SET,
            Knob.PRESSURE_LIMIT_SET, Knob.FLOW_TRIGGER_SET, Knob.PRESSURE_TRIGGER_SET, Knob.CYCLE_OFF_SET, Knob.BACKUP_AFTER_SET, Knob.FLOW_END_SET, Knob.EFFORT, Knob.EFFORT_RATE,
            Knob.SEDATION, Knob.FALSE_TRIGGERS, Knob.VENTILATOR_ON, Knob.STANDBY, Knob.CIRCUIT_COMPLIANCE, Knob.VALVE_RESISTANCE,
            Knob.COUGH, Knob.HICCUP, Knob.HEART_SWING, Knob.WATER_SWING, Knob.VIBRATION, Knob.LEAK_SEEN, Knob.SIGH_EVERY_SET, Knob.SIGH_PRESSURE_SET, Knob.CYCLE_AFTER_SET};
        double[] low = {1, 0, 1, 0.3, 0, 0.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 10, 5, 0.2, 0, 2, 0, 0, 0, 10, 0, 0, 0, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 10, 0};
        double[] high = {80, 40, 120, 1, 2000, 60, 100, 1, 1, 60, 1, 1, 60, 1, 60, 9.99, 1200, 60, 2, 0.5, 40, 30, 0.5, 20, 80, 8, 6, 0.9, 30, 1, 40, 50, 1, 40, 1, 1, 5, 40, 40, 40, 12, 12, 12, 1, 90, 45, 3};
        for (int i = 0; i < cases; i++) {
            int k = random.nextInt(knobs.length);
            double value = random.nextDouble(low[k], high[k]);
            boolean fault = high[k] == 1 && low[k] == 0;
            if (random.nextInt(3) > 0 && (fault || knobs[k].name().startsWith("LEAK") || knobs[k] == Knob.VALVE_STUCK_OPEN || knobs[k] == Knob.TRAPPED_GAS)) value = knobs[k].neutral;
            script.base(knobs[k], value);
            double before = balance.worst;
            try {
                loop.to(now.tS + 1.7, now, script, new Sink() {
                    private int steps;

                    @Override public void stretch(Now n, double toS) {
                        if (++steps > 5000) throw new AssertionError("crawls at " + n.tS + " s to " + toS + ", phase " + n.y[Slot.PHASE]);
                    }
                });
            } catch (IllegalStateException | AssertionError e) {
                throw new AssertionError("seed " + seed + ", case " + i + ": " + e.getMessage() + " " + breath.who() + " after " + knobs[k] + " = " + value + describe(script, knobs), e);
            }
            if (balance.worst > 1e-6 && before <= 1e-6) throw new AssertionError("seed " + seed + ", case " + i + ": gas lost, " + balance.worst + " mL after " + knobs[k] + " = " + value);
            if (now.tS > 1e5) {         // keeps the clock's last digit small, as in a journey
                now.tS = 0;
                now = loop.begin(script);
                balance.worst = 0;
            }
        }
        assertThat(balance.worst).as("mL made or lost over %s s", now.tS).isLessThan(1e-6);
    }

    private static String describe(Script script, Knob[] knobs) {
        StringBuilder all = new StringBuilder();
        for (Knob knob : knobs) all.append(' ').append(knob).append('=').append(script.base(knob));
        return all.toString();
    }
}
