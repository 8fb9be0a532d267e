package leeway.core.plan;

import java.util.List;
import java.util.Optional;
import leeway.core.body.Drive;
import leeway.core.journey.Sedated;
import leeway.core.kit.Mode;
import leeway.core.kit.Settings;
import leeway.core.run.Column;
import leeway.core.transport.Event;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Transport;

/**
 * How long on the journey at medians nobody starts a breath under settings that wait for the patient, and why.
 * <p>Read off the rows of the run, whatever the cause: no effort, sedation, a drive that too little carbon dioxide leaves, a trigger
 * that is not met. Leaves out faults, what-ifs, and modes with a rate of their own, in which the clock starts breaths.
 *
 * @param fromMin of the first such stretch
 * @param inAllMin of all of them together
 * @param whole   no breath of the journey but for a few is the patient's
 * @param byNobody most breaths meanwhile were started by something else than patient and backup
 */
record Silence(double fromMin, double inAllMin, boolean whole, String who, boolean byNobody) {
    /** A pause in breathing is spoken of from here on, s. Common practice, no source; sleep medicine counts ten seconds in adults (Spriggs, Essentials of Polysomnography 2010, glossary). */
    static final double APNOEA_S = 20;
    /** Share of a journey that counts as all of it. */
    private static final double WHOLE = 0.95;
    /** An effort of which less is left is gone. */
    private static final double GONE = 0.005;
    /** A PaCO2 this much below that of departure takes from the drive; invented, under the 3.5 mmHg at which it ends. */
    private static final double LOWER_MMHG = 1;

    static Optional<Silence> of(Transport t, Settings settings, List<double[]> rows, double[] legStartS) {
        if (!t.ventilator().alone() && !t.ventilator().machine()) return Optional.empty();
        double apnoeaS = t.ventilator().alone() ? APNOEA_S : t.ventilator().apnoeaBackupAfterS().orElse(APNOEA_S), endS = legStartS[legStartS.length - 1];
        double lastS = 0, inAllS = 0, firstS = Double.NaN;
        int missed = 0, none = 0, byNobody = 0, stretchMissed = 0, stretchNone = 0, stretchNobody = 0;
        double paco2 = Double.NaN, stretchPaco2 = Double.NaN;
        for (int i = 0; i <= rows.size(); i++) {
            double[] r = i < rows.size() ? rows.get(i) : null;
            double atS = r == null ? endS : at(r, Column.AT_S);
            boolean breath = r != null && at(r, Column.KIND) != 0;
            if (r == null || breath && at(r, Column.STARTED_BY) == 1 || !waits(t, settings, atS)) {
                if (atS - lastS > apnoeaS) {
                    inAllS += atS - lastS;
                    missed += stretchMissed;
                    none += stretchNone;
                    byNobody += stretchNobody;
                    if (Double.isNaN(firstS)) {
                        firstS = lastS;
                        paco2 = stretchPaco2;
                    }
                }
                lastS = r == null ? endS : at(r, Column.END_S);
                stretchMissed = 0;
                stretchNone = 0;
                stretchNobody = 0;
                stretchPaco2 = Double.NaN;
                continue;
            }
            if (Double.isNaN(stretchPaco2)) stretchPaco2 = at(r, Column.PACO2_MMHG);
            stretchMissed += at(r, Column.MISSED_EFFORTS) > 0 ? (int) at(r, Column.MISSED_EFFORTS) : 0;
            stretchNone++;
            if (breath && at(r, Column.STARTED_BY) == 2) stretchNobody++;
        }
        if (Double.isNaN(firstS)) return Optional.empty();
        return Optional.of(new Silence(firstS / 60, inAllS / 60, inAllS >= WHOLE * endS, who(t, legStartS, firstS + apnoeaS, missed, paco2, at(rows.get(0), Column.PACO2_MMHG)), 2 * byNobody > none));
    }

    private static String who(Transport t, double[] legStartS, double tS, int missed, double paco2MmHg, double startMmHg) {
        if (t.patient().paralysed()) return "the patient is paralysed";
        if (t.patient().lungs().effort().map(e -> e == PatientEntry.Effort.NONE).orElse(false)) return "the patient makes no effort";
        double sedation = Sedated.of(t, legStartS).shareAt(tS);
        if (1 - sedation < GONE) return "sedation takes all of the own effort";
        if (sedation >= Drive.ASLEEP_FROM && t.patient().breathing().drivenByGases() && paco2MmHg < startMmHg - LOWER_MMHG) {
            return "under this sedation a PaCO2 of " + Words.n(paco2MmHg, 0) + " mmHg leaves too little drive to breathe";
        }
        if (missed > 0) return "the efforts are too weak for the trigger";
        return "no effort reaches the ventilator";
    }

    /** Whether what is set at a time leaves every breath to the patient. */
    private static boolean waits(Transport t, Settings settings, double tS) {
        if (t.ventilator().alone()) return true;
        Optional<Mode> mode = modeAt(t, settings, tS);
        return mode.isPresent() && !mode.get().hasRate();
    }

    /** The mode that stands at a time, by the file's events. */
    static Optional<Mode> modeAt(Transport t, Settings settings, double tS) {
        Optional<Mode> mode = settings.mode();
        double fromS = Double.NEGATIVE_INFINITY;
        for (Event e : t.events()) {
            double atS = e.atMin() * 60;
            boolean stands = atS <= tS && (e.forS().isEmpty() || tS < atS + e.forS().getAsDouble());
            if (!stands || e.set().mode().isEmpty() || atS < fromS) continue;
            mode = e.set().mode();
            fromS = atS;
        }
        return mode;
    }

    private static double at(double[] row, Column c) { return row[c.ordinal()]; }
}
