package leeway.core.body;

import leeway.core.gas.Exp;
import leeway.core.run.Claims;
import leeway.core.run.Column;
import leeway.core.run.Knob;
import leeway.core.run.Level;
import leeway.core.run.Now;
import leeway.core.run.Part;
import leeway.core.run.Script;
import leeway.core.run.Sink;

/**
 * The patient's own answer to carbon dioxide and oxygen: by how much the drive to breathe differs from that of the start.
 * <p>Linear in arterial PCO2 and in saturation, a slow central and a fast peripheral part, about the patient's own start: who
 * breathes at 55 mmHg before the journey is at rest there. Effort as the file declares it is that of the start; of a patient whom
 * nothing helps (free flow, CPAP) it is that of rest with ordinary gases, and the start is where it settles. Two thirds of
 * a change goes into depth, a third into rate, as powers (common practice, no source: carbon dioxide deepens before it quickens). Below the apnoeic threshold a sedated patient stops; an awake one
 * keeps breathing. Leaves out that hypoxia steepens the answer to carbon dioxide, that it fades within minutes of hypoxia,
 * the answer to acidosis, pain and fear, and the blunted answer of those who have retained carbon dioxide for long.
 * <p>Knob {@code DRIVE} scales it; 0 switches it off. Reads the row of the gas exchange, so it stands after it in the loop.
 */
public final class Drive implements Part {
    /** Central sensitivity, L/min per mmHg of PCO2 under plenty of oxygen. Pedersen, Fatemian, Robbins, J Physiol 1999;521:273, abstract: 2.00 +- 0.32. */
    static final double CARBON_DIOXIDE_L_PER_MIN_PER_MMHG = 2.0;
    /** Acute answer to hypoxia, L/min per percent of saturation. Sarton, Anesthesiology 1996;85:295, abstract: 0.69 +- 0.20, awake without pain. */
    static final double SATURATION_L_PER_MIN_PER_PERCENT = 0.69;
    /** Minute volume of the resting adults to whom these slopes belong, L/min; common practice, no source. With it breathing stops 3.5 mmHg below the start; measured asleep on oxygen 3.8 +- 0.8 (J Appl Physiol, PMC2980383). */
    static final double RESTING_L_PER_MIN = 7;
    /** Share of the answer to carbon dioxide that is fast, and the time constants of the two, s. From memory (after Bellville 1979). */
    private static final double FAST_SHARE = 0.25, FAST_S = 12, SLOW_S = 120;
    /** Least and most of the drive over that of the start; the most: common practice, no source. */
    private static final double MOST = 5;
    /** An awake patient's drive does not fall below this share ("wakefulness drive", Fink 1961; the share from memory), from {@link #ASLEEP_FROM} on it does. */
    private static final double AWAKE_LEAST = 0.5;
    /** From this sedation on a low carbon dioxide can end the drive. From memory, as the share. */
    public static final double ASLEEP_FROM = 0.3;
    private static final int LAST_S = 0, FAST = 1, SLOW = 2, OXYGEN = 3, COUNT = 4;

    /** Gases of a healthy adult at rest, about which the effort of one whom nothing helps answers. Textbooks, from memory. */
    public static final double RESTING_PACO2_MMHG = 40, RESTING_SAO2 = 0.97;

    private final double startPaco2, startSao2, firstPaco2, firstSao2;
    private int at;

    /** Of a patient who starts with these gases. */
    public Drive(double startPaco2MmHg, double startSao2) { this(startPaco2MmHg, startSao2, startPaco2MmHg, startSao2); }

    /** Of a patient whose effort is as declared at the first two of these gases, and who starts with the others. */
    public Drive(double declaredAtPaco2MmHg, double declaredAtSao2, double firstPaco2MmHg, double firstSao2) {
        startPaco2 = declaredAtPaco2MmHg;
        startSao2 = declaredAtSao2;
        firstPaco2 = firstPaco2MmHg;
        this.firstSao2 = firstSao2;
    }

    @Override
    public void claim(Claims claims) {
        at = claims.state(COUNT);
    }

    @Override
    public void begin(Now n) {
        n.y[at + LAST_S] = n.tS;
        n.y[at + FAST] = firstPaco2;
        n.y[at + SLOW] = firstPaco2;
        n.y[at + OXYGEN] = firstSao2;
        if (n.get(Knob.DRIVE) > 0) tell(n, settled(firstPaco2 - startPaco2, startSao2 - firstSao2, n.get(Knob.DRIVE), n.get(Knob.SEDATION)));
    }

    private static void tell(Now n, double times) {
        double rate = rateTimes(times);
        n.level[Level.DRIVE_DEPTH.ordinal()] = rate * rate - 1;
        n.level[Level.DRIVE_RATE.ordinal()] = rate - 1;
    }

    @Override
    public double nextS(Now n, double latestS) {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public void pass(Now n, double dtS) { }

    @Override
    public void row(Now n, Script script, Sink out) {
        double paco2 = n.get(Column.PACO2_MMHG), sao2 = n.get(Column.SAO2), share = n.get(Knob.DRIVE);
        if (Double.isNaN(paco2) || Double.isNaN(sao2)) return;
        double[] y = n.y;
        double dtS = n.tS - y[at + LAST_S], fast = 1 - Exp.exp(-dtS / FAST_S);
        y[at + LAST_S] = n.tS;
        y[at + FAST] += fast * (paco2 - y[at + FAST]);
        y[at + OXYGEN] += fast * (sao2 - y[at + OXYGEN]);
        y[at + SLOW] += (1 - Exp.exp(-dtS / SLOW_S)) * (paco2 - y[at + SLOW]);
        double times = share > 0 ? times(y[at + FAST] - startPaco2, y[at + SLOW] - startPaco2, startSao2 - y[at + OXYGEN], share, n.get(Knob.SEDATION)) : 1;
        tell(n, times);
    }

    /** Depth of a breath over that of the start, at a drive over that of the start. */
    public static double depthTimes(double times) {
        double rate = rateTimes(times);
        return rate * rate;
    }

    /** Breaths a minute over those of the start. */
    public static double rateTimes(double times) { return times == 1 ? 1 : StrictMath.cbrt(times); }

    /**
     * Drive over that of the start when gases that differ from those of the start have stood for long.
     *
     * @param paco2MoreMmHg above the start
     * @param sao2Less      saturation below the start, 0 to 1
     * @param share         of the published answer, as knob {@code DRIVE}
     * @param sedation      as knob {@code SEDATION}
     */
    public static double settled(double paco2MoreMmHg, double sao2Less, double share, double sedation) {
        return share > 0 ? times(paco2MoreMmHg, paco2MoreMmHg, sao2Less, share, sedation) : 1;
    }

    /** Drive over that of the start, 0 for none. */
    static double times(double fastMmHg, double slowMmHg, double fallOfSaturation, double share, double sedation) {
        double more = CARBON_DIOXIDE_L_PER_MIN_PER_MMHG * (FAST_SHARE * fastMmHg + (1 - FAST_SHARE) * slowMmHg) + SATURATION_L_PER_MIN_PER_PERCENT * 100 * fallOfSaturation;
        double least = sedation < ASLEEP_FROM ? AWAKE_LEAST : 0;
        return Math.max(least, Math.min(MOST, 1 + share * more / RESTING_L_PER_MIN));
    }
}
