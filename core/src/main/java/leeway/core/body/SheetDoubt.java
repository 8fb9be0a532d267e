package leeway.core.body;

import leeway.core.kit.Band;
import leeway.core.kit.Illness;

/**
 * The unknowns of a patient's gas exchange as the illness's sheet knows them, each as a standard normal number: 0 is the
 * sheet's median, ±1.96 its band (lognormal for factors, split normal for shares). Base excess alone stands in mmol/L, for
 * a blood gas measures it and the sheet's word then counts for nothing.
 * <p>Leaves out that the doubts go together before anything was measured.
 */
final class SheetDoubt {
    static final double Z975 = 1.959963984540054;
    /** A measured cardiac output, 95 % of the readings within this share; as in {@link Doubt}. */
    private static final double MEASURED = 0.12;
    /** Numbers further out than this change nothing more: the search stays on firm ground. */
    private static final double FURTHEST = 8;
    private static final double MOST_SHUNT = 0.85, MOST_LOW = 0.5, MOST_EXCESS = 29;
    /** A sheet that says a share or a factor to the digit is doubted by this much, up and down. Common practice, no source. */
    private static final double LEAST_UP = 0.03, LEAST_DOWN = 0.02, LEAST_FACTOR = 0.1;

    final PatientModel patient;
    private final Illness illness;
    private final boolean measuredOutput;
    private final double dead;

    /** @param tidalMl of the breath under which the gas was taken: a measured dead space is shared out at it */
    SheetDoubt(PatientModel patient, Illness illness, boolean measuredOutput, double tidalMl) {
        this.patient = patient;
        this.illness = illness;
        this.measuredOutput = measuredOutput;
        dead = patient.alveolarDeadSpaceAt(tidalMl);
    }

    double uptake(double[] z) { return factor(z[Unknown.OXYGEN_UPTAKE.ordinal()], illness.oxygenUptakeTimes(), LEAST_FACTOR); }

    double quotient(double[] z) { return factor(z[Unknown.QUOTIENT.ordinal()], illness.respiratoryQuotient(), 0.01); }

    double output(double[] z) {
        return factor(z[Unknown.CARDIAC_OUTPUT.ordinal()], measuredOutput ? new Band(1, 1 / (1 + MEASURED), 1 + MEASURED) : illness.cardiacOutputTimes(), 0.01);
    }

    double dead(double[] z) { return share(z[Unknown.DEAD_SPACE.ordinal()], dead, illness.alveolarDeadSpace(), MOST_SHUNT); }

    double shunt(double[] z) { return share(z[Unknown.SHUNT.ordinal()], patient.shunt(), illness.shunt(), MOST_SHUNT); }

    double low(double[] z) {
        return patient.lowVentilationShare() == 0 ? 0 : share(z[Unknown.LOW_VENTILATION.ordinal()], patient.lowVentilationShare(), illness.lowVentilationShare(), MOST_LOW);
    }

    /** What makes the patient at {@code z} out of the patient at {@code from}. */
    PatientModel.Change change(double[] z, double[] from) {
        double vo2 = uptake(z) / uptake(from), vco2 = vo2 * quotient(z) / quotient(from);
        double excess = Math.max(-MOST_EXCESS, Math.min(MOST_EXCESS, z[Unknown.BASE_EXCESS.ordinal()]));
        return PatientModel.Change.NONE.metabolism(vo2, vco2).alveolarDeadSpace(dead(z)).deadSpace(0).shunt(shunt(z)).low(low(z))
                .cardiacOutput(output(z) / output(from)).baseExcess(excess);
    }

    private static double factor(double any, Band b, double least) {
        double z = Math.max(-FURTHEST, Math.min(FURTHEST, any));
        double up = Math.max(least, StrictMath.log(b.high() / b.central())), down = Math.max(least, b.low() > 0 ? StrictMath.log(b.central() / b.low()) : least);
        return StrictMath.exp(z / Z975 * (z > 0 ? up : down));
    }

    private static double share(double z, double median, Band band, double most) {
        double up = Math.max(LEAST_UP, band.high() - band.central()), down = Math.max(LEAST_DOWN, Math.min(median, band.central() - band.low()));
        return Math.max(0, Math.min(most, median + z / Z975 * (z > 0 ? up : down)));
    }
}
