package leeway.core.journey;

import leeway.core.body.Drive;
import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.transport.PatientEntry;

/**
 * The patient's own breathing as numbers: how deep, how often, how long. Leaves out its answer to carbon dioxide and oxygen.
 *
 * @param pressureCmH2O largest muscle pressure; 0 for none
 * @param ratePerMin    efforts a minute
 * @param riseS         from the start of an effort to its peak
 */
public record Effort(double pressureCmH2O, double ratePerMin, double riseS) {
    public static final Effort NONE = new Effort(0, 0, 0.9);
    /** Muscle pressure of a weak, a normal and a strong effort, cmH2O: normal 3 to 8, distress 15 to 25 (Telias 2020 and textbooks; from memory). */
    private static final double WEAK = 3, NORMAL = 6, STRONG = 18;
    /** As the knob has it. */
    private static final double MOST = Knob.EFFORT.high;
    /** Breaths a minute of a resting patient by age in years; the middle of the ranges taught for children (from memory). */
    private static final double[] YEARS = {0, 1, 2, 5, 12, 18}, RATE = {40, 30, 28, 25, 20, 16};
    /** A weak drive is slower, a strong one faster; common practice, no source. */
    private static final double WEAK_RATE_TIMES = 0.8, STRONG_RATE_TIMES = 1.6;
    /** Share of a breath that the effort rises: neural inspiratory time 0.8 to 1.0 s at 16 to 20 a minute (from memory). */
    private static final double RISE_SHARE = 0.27;

    static Effort of(PatientEntry.Effort effort, double ageYears) {
        double usual = usualRatePerMin(ageYears);
        return switch (effort) {
            case NONE -> NONE;
            case WEAK -> at(WEAK, usual * WEAK_RATE_TIMES);
            case NORMAL -> at(NORMAL, usual);
            case STRONG -> at(STRONG, usual * STRONG_RATE_TIMES);
        };
    }

    private static Effort at(double pressure, double rate) { return new Effort(pressure, rate, RISE_SHARE * 60 / rate); }

    /** What a resting patient of this age breathes. */
    static double usualRatePerMin(double ageYears) {
        for (int i = 1; i < YEARS.length; i++) {
            if (ageYears <= YEARS[i]) return RATE[i - 1] + (ageYears - YEARS[i - 1]) / (YEARS[i] - YEARS[i - 1]) * (RATE[i] - RATE[i - 1]);
        }
        return RATE[RATE.length - 1];
    }

    /** The same effort at a drive that differs from that of the start; none where the drive is gone. */
    Effort driven(double times) {
        return !(times > 0) ? NONE : times == 1 ? this : new Effort(Math.min(MOST, pressureCmH2O * Drive.depthTimes(times)), ratePerMin * Drive.rateTimes(times), riseS);
    }

    public boolean present() { return pressureCmH2O > 0 && ratePerMin > 0; }

    /** Writes it as base values of a run. */
    public void base(Script script) {
        script.base(Knob.EFFORT, pressureCmH2O).base(Knob.EFFORT_RATE, ratePerMin).base(Knob.EFFORT_TIME, riseS);
    }
}
