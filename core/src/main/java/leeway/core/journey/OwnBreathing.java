package leeway.core.journey;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.breath.Asynchrony;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathSettings;
import leeway.core.kit.Settings;
import leeway.core.run.Column;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * What the patient's own breathing comes to under settings that do not change: who starts the breaths, what they cost, and
 * how often patient and ventilator miss each other. Means of {@value #AVERAGED_S} s with the effort of the start.
 *
 * @param byPatientPerMin    breaths that an effort started
 * @param byNobodyPerMin     breaths that neither clock nor effort asked for
 * @param missedPerMin       efforts that started nothing
 * @param outOfStepPerMin    breaths doubled, ended too early or too late
 * @param p01CmH2O           absent without an effort, as are work and share
 * @param pressureTimePerMin cmH2O.s a minute
 * @param patientShare       the patient's share of the work above PEEP
 */
public record OwnBreathing(double byPatientPerMin, double byNobodyPerMin, double missedPerMin, double outOfStepPerMin, OptionalDouble p01CmH2O,
                           OptionalDouble workJPerL, OptionalDouble workJPerMin, OptionalDouble pressureTimePerMin, OptionalDouble patientShare) {
    private static final double SETTLING_S = 60;
    private static final double AVERAGED_S = 120;

    /** Absent where every breath is the clock's and nobody stirs. */
    public static Optional<OwnBreathing> of(Ventilated v, Settings settings, Steady start) {
        BreathSettings set = start.breathSettings();
        if (!v.irregular(settings, set)) return Optional.empty();
        Loop loop = new Loop(new Breath(v.mechanics(), v.device()));
        Script script = v.base(Breath.base(new Script(), v.mechanics(), set), settings);
        start.effort(v).base(script);
        Now now = loop.begin(script);
        loop.to(SETTLING_S, now, script, Sink.NONE);
        Sum sum = new Sum();
        loop.to(SETTLING_S + AVERAGED_S, now, script, sum);
        return Optional.of(sum.result());
    }

    private static final class Sum implements Sink {
        private double patient, nobody, missed, outOfStep, work, given, litres, pressureTime, p01, efforts, seconds;

        @Override public void row(Now n) {
            seconds += n.get(Column.END_S) - n.get(Column.AT_S);
            missed += n.get(Column.MISSED_EFFORTS);
            work += n.get(Column.MUSCLE_J);
            pressureTime += n.get(Column.PRESSURE_TIME_CMH2O_S);
            litres += n.get(Column.INSPIRED_ML) / 1000;
            if (!Double.isNaN(n.get(Column.P01_CMH2O))) {
                p01 += n.get(Column.P01_CMH2O);
                efforts++;
            }
            if (n.get(Column.KIND) == 0) return;
            if (n.get(Column.STARTED_BY) == 1) patient++;
            if (n.get(Column.STARTED_BY) == 2) nobody++;
            given += Math.max(0, n.get(Column.ENERGY_J) - n.get(Column.ENERGY_PEEP_J));
            if (Asynchrony.of(n.get(Column.ASYNCHRONY)).stream().anyMatch(a -> a == Asynchrony.DOUBLE || a == Asynchrony.EARLY || a == Asynchrony.LATE)) outOfStep++;
        }

        OwnBreathing result() {
            double perMin = 60 / seconds;
            return new OwnBreathing(patient * perMin, nobody * perMin, missed * perMin, outOfStep * perMin, some(p01 / efforts, efforts > 0), some(work / litres, work > 0 && litres > 0),
                    some(work * perMin, work > 0), some(pressureTime * perMin, pressureTime > 0), some(work / (work + given), work > 0));
        }

        private static OptionalDouble some(double value, boolean known) { return known ? OptionalDouble.of(value) : OptionalDouble.empty(); }
    }
}
