package leeway.core.journey;

import leeway.core.run.Knob;
import leeway.core.run.Script;
import leeway.core.transport.PatientEntry;

/**
 * What weakens, disturbs or drives a patient's own breathing, as numbers.
 *
 * @param sedation          share of the effort that it takes away at departure
 * @param driveShare        share of the published answer to carbon dioxide and oxygen; 0: effort is fixed
 * @param heartSwingLPerMin flow that each heart beat makes at the airway
 */
public record Breather(double sedation, double driveShare, double coughsPerMin, double hiccupsPerMin, double heartRatePerMin, double heartSwingLPerMin) {
    /** Heart beats a minute where nobody says; common practice, no source. */
    private static final double USUAL_HEART_RATE = 85;

    static Breather of(PatientEntry entry) {
        PatientEntry.Breathing b = entry.breathing();
        boolean still = entry.paralysed();
        return new Breather(b.sedated().share(), b.drivenByGases() ? 1 : 0, still ? 0 : b.coughsPerMin(), still ? 0 : b.hiccupsPerMin(), b.heartRatePerMin().orElse(USUAL_HEART_RATE),
                b.heartSwingLPerMin());
    }

    /** Whether any of it makes breaths differ from each other. */
    boolean stirs() { return coughsPerMin > 0 || hiccupsPerMin > 0 || heartSwingLPerMin > 0; }

    void base(Script script) {
        script.base(Knob.SEDATION, sedation).base(Knob.DRIVE, driveShare).base(Knob.COUGH, coughsPerMin).base(Knob.HICCUP, hiccupsPerMin)
                .base(Knob.HEART_RATE, heartRatePerMin).base(Knob.HEART_SWING, heartSwingLPerMin);
    }
}
