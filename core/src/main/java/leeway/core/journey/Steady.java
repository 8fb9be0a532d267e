package leeway.core.journey;

import leeway.core.body.Drive;
import leeway.core.body.PatientModel;
import leeway.core.body.SteadyGases;
import leeway.core.body.Ventilation;
import leeway.core.breath.Breath;
import leeway.core.breath.BreathNumbers;
import leeway.core.breath.BreathSettings;
import leeway.core.breath.FreeFlow;
import leeway.core.breath.SteadyBreath;
import leeway.core.gas.Barometer;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Script;
import leeway.core.run.Sink;
import leeway.core.supply.LegNeed;

/**
 * Where breath and gases settle under settings that do not change.
 * <p>Of a passive patient it is the breath that repeats itself; of a breathing one the mean of {@value #AVERAGED_S} s after
 * {@value #SETTLING_S} s. Leaves out the road to it. At the start a patient's effort is as declared, and of one whom nothing helps
 * (free flow, CPAP) where it settles about ordinary gases; of another state of the same patient ({@link #later}) it is what carbon dioxide and oxygen make of it, as far as they differ from those of the start.
 *
 * @param fio2 what is really inspired
 */
public record Steady(Settings settings, BreathSettings breathSettings, BreathNumbers breath, SteadyGases gases, double barometerHPa, double fio2) {
    private static final double SETTLING_S = 60;
    private static final double AVERAGED_S = 60;
    private static final double MOST_SHUNT = 0.9;
    /** Two drives that differ by less are the same; a hundredth of the resting drive is 0.04 mmHg of carbon dioxide. */
    private static final double SAME_DRIVE = 0.01;
    private static final int MOST_TRIES = 9;

    /** With the FiO2 that is set. */
    public static Steady of(Ventilated v, Settings settings, double barometerHPa) {
        return of(v, settings, barometerHPa, settings.get(Setting.FIO2, 0.21));
    }

    /** With the FiO2 that the device really gives. */
    public static Steady of(Ventilated v, Settings settings, double barometerHPa, double fio2) {
        Steady plain = plain(v, settings, barometerHPa, fio2);
        return v.unhelped(settings) && answers(v, settings) || v.ventilator().alone() ? settled(v, settings, barometerHPa, fio2, plain, Drive.RESTING_PACO2_MMHG, Drive.RESTING_SAO2) : plain;
    }

    /** With the effort as declared. */
    private static Steady plain(Ventilated v, Settings settings, double barometerHPa, double fio2) {
        if (v.ventilator().alone()) return unaided(v, settings, barometerHPa, 1);
        BreathSettings set = v.breathSettings(settings, barometerHPa);
        BreathNumbers breath = v.irregular(settings, set) || !set.mode().hasRate() ? averaged(v, set, settings, 1) : SteadyBreath.of(v.mechanics(), set, v.device());
        return new Steady(settings, set, breath, gases(v, breath, barometerHPa, fio2), barometerHPa, fio2);
    }

    /**
     * Where a patient who started in one state settles in another: the drive at which effort, breath and gases agree. Without an
     * effort, or where it does not answer to the gases, the same as {@link #of}. A sleeper who would cross the threshold of
     * apnoea again and again stands at the middle of it.
     */
    public static Steady later(Ventilated v, Settings settings, double barometerHPa, double fio2, Steady start) {
        if (v.ventilator().alone() || !answers(v, settings)) return of(v, settings, barometerHPa, fio2);
        boolean resting = v.unhelped(start.settings);
        return settled(v, settings, barometerHPa, fio2, plain(v, settings, barometerHPa, fio2), resting ? Drive.RESTING_PACO2_MMHG : start.gases.paco2MmHg(), resting ? Drive.RESTING_SAO2 : start.gases.sao2());
    }

    /** The fixed point, from the state of the declared effort, which belongs to these gases. */
    private static Steady settled(Ventilated v, Settings settings, double barometerHPa, double fio2, Steady plain, double paco2MmHg, double sao2) {
        if (!v.patient().living() || v.breather().driveShare() == 0) return plain;
        double first = plain.drive(v, paco2MmHg, sao2);
        if (Math.abs(first - 1) < SAME_DRIVE) return plain;
        // more drive lowers what the gases ask for, so the answer lies between what was tried and what was asked
        double low = Math.min(1, first), high = Math.max(1, first);
        Steady at = plain;
        for (int i = 0; i < MOST_TRIES && high - low > SAME_DRIVE; i++) {
            double times = 0.5 * (low + high);
            if (v.ventilator().alone()) {
                at = unaided(v, settings, barometerHPa, times);
            } else {
                BreathNumbers breath = averaged(v, plain.breathSettings, settings, times);
                at = new Steady(settings, plain.breathSettings, breath, gases(v, breath, barometerHPa, fio2), barometerHPa, fio2);
            }
            if (at.drive(v, paco2MmHg, sao2) > times) low = times;
            else high = times;
        }
        return at;
    }

    /** The patient's effort in this state: as declared, of one whom nothing helps as these gases drive it. */
    public Effort effort(Ventilated v) {
        Effort declared = v.effort(settings);
        return v.unhelped(settings) && v.patient().living() ? declared.driven(drive(v, Drive.RESTING_PACO2_MMHG, Drive.RESTING_SAO2)) : declared;
    }

    /** Whether this patient's effort answers to the gases. */
    static boolean answers(Ventilated v, Settings settings) { return v.patient().living() && v.breather().driveShare() > 0 && v.effort(settings).present(); }

    /** The drive, over that of the start, that these gases ask for. */
    private double drive(Ventilated v, double paco2MmHg, double sao2) {
        return Drive.settled(gases.paco2MmHg() - paco2MmHg, sao2 - gases.sao2(), v.breather().driveShare(), v.breather().sedation());
    }

    /** The gases of a breath under another FiO2 or barometric pressure. */
    public static SteadyGases gases(Ventilated v, BreathNumbers breath, double barometerHPa, double fio2) {
        return SteadyGases.of(patient(v, breath), ventilation(breath, barometerHPa, fio2));
    }

    /** The patient whose lung stands as open as this breath leaves it. */
    static PatientModel patient(Ventilated v, BreathNumbers breath) {
        PatientModel p = v.patient();
        return breath.shuntAdded() == 0 || !p.living() ? p
                : p.with(PatientModel.Change.NONE.shunt(Math.max(0, Math.min(MOST_SHUNT, p.shunt() + breath.shuntAdded()))));
    }

    /** What of a breath reaches the lung. */
    static Ventilation ventilation(BreathNumbers breath, double barometerHPa, double fio2) {
        double inspired = Math.min(breath.inspiredMl(), breath.expiredMl() + 0.5 * Math.max(0, breath.inspiredMl() - breath.expiredMl()));
        return new Ventilation(inspired, breath.ratePerMin(), fio2, Barometer.mmHg(barometerHPa), breath.meanCmH2O());
    }

    /** What the supply has to bring: patient, leak, bias flow. */
    public LegNeed need() {
        double leak = Math.max(0, breath.inspiredAtVentilatorMl() - breath.expiredMl()) * breath.ratePerMin() / 1000;
        return new LegNeed(breath.minuteVolumeLPerMin(), leak, breathSettings.biasFlowLPerMin(), breath.ratePerMin(), Math.max(0.21, settings.mode().isEmpty() && !settings.has(Setting.FIO2) ? fio2 : settings.get(Setting.FIO2, 0.21)),
                breath.peakCmH2O(), breathSettings.peepCmH2O(), barometerHPa);
    }

    /** Of the haemoglobin that can carry oxygen; absent ({@code NaN}) for a test lung. */
    public double spo2() { return gases.sao2(); }

    /**
     * Of a patient who breathes alone from oxygen that flows past: its share follows from the breaths. Of one who does not
     * breathe, as if they had breathed at rest until then.
     */
    private static Steady unaided(Ventilated v, Settings settings, double barometerHPa, double drive) {
        BreathSettings set = v.breathSettings(settings, barometerHPa);
        FreeFlow flow = v.freeFlow();
        Loop loop = new Loop(new Breath(v.mechanics(), v.device()), flow);
        Script script = v.base(Breath.base(new Script(), v.mechanics(), set), settings).base(Knob.BAROMETER, Barometer.mmHg(barometerHPa));
        (v.nobodyBreathes(settings) ? v.resting() : v.effort(settings)).driven(drive).base(script);
        Now now = loop.begin(script);
        loop.to(SETTLING_S, now, script, Sink.NONE);
        double fresh = flow.freshMl(now), inspired = flow.inspiredMl(now);
        Mean mean = new Mean();
        loop.to(SETTLING_S + AVERAGED_S, now, script, mean);
        BreathNumbers breath = mean.numbers();
        double fio2 = flow.fio2(flow.freshMl(now) - fresh, flow.inspiredMl(now) - inspired);
        return new Steady(settings, set, breath, gases(v, breath, barometerHPa, fio2), barometerHPa, fio2);
    }

    private static BreathNumbers averaged(Ventilated v, BreathSettings set, Settings settings, double drive) {
        Loop loop = new Loop(new Breath(v.mechanics(), v.device()));
        Script script = Breath.base(new Script(), v.mechanics(), set);
        v.base(script, settings);
        if (drive != 1) v.effort(settings).driven(drive).base(script);
        Now now = loop.begin(script);
        loop.to(SETTLING_S, now, script, Sink.NONE);
        Mean mean = new Mean();
        loop.to(SETTLING_S + AVERAGED_S, now, script, mean);
        return mean.numbers();
    }

    /** Means of the rows of breaths, by breath; pressures that are highest by their highest. */
    private static final class Mean implements Sink {
        private final double[] sum = new double[Column.values().length];
        private double peak;
        private double fromS = Double.NaN;
        private double toS;
        private int breaths;
        private double pressureS;

        @Override public void row(Now n) {
            if (Double.isNaN(fromS)) fromS = n.get(Column.AT_S);
            toS = n.get(Column.END_S);
            pressureS += n.get(Column.MEAN_CMH2O) * (toS - n.get(Column.AT_S));
            if (n.get(Column.KIND) == 0) return;
            breaths++;
            peak = Math.max(peak, n.get(Column.PEAK_CMH2O));
            for (Column c : Column.values()) sum[c.ordinal()] += Double.isNaN(n.get(c)) ? 0 : n.get(c);
        }

        private double mean(Column c) { return breaths == 0 ? 0 : sum[c.ordinal()] / breaths; }

        BreathNumbers numbers() {
            double spanS = toS - fromS, rate = 60 * breaths / spanS;
            return new BreathNumbers(mean(Column.INSPIRED_ML), mean(Column.EXPIRED_ML), mean(Column.INSPIRED_AT_VENTILATOR_ML), rate, mean(Column.INSPIRATORY_TIME_S),
                    mean(Column.EXPIRATORY_TIME_S), peak, mean(Column.PLATEAU_CMH2O), mean(Column.DRIVING_CMH2O), mean(Column.PEEP_CMH2O), mean(Column.AUTO_PEEP_CMH2O),
                    mean(Column.TRAPPED_ML), pressureS / spanS, mean(Column.TRANSPULMONARY_CMH2O), mean(Column.PEAK_FLOW_L_MIN), mean(Column.PEAK_EXPIRATORY_FLOW_L_MIN),
                    mean(Column.ENERGY_J), mean(Column.ENERGY_J) * rate, mean(Column.TARGET_CMH2O), sum[Column.PRESSURE_LIMITED.ordinal()] > 0.5 * breaths,
                    sum[Column.VOLUME_NOT_REACHED.ordinal()] > 0.5 * breaths, mean(Column.SHUNT_ADDED));
        }
    }
}
