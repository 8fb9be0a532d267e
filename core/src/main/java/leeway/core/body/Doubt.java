package leeway.core.body;

import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.run.Draw;
import leeway.core.transport.PatientEntry;

/**
 * One of the patients that a file could mean: each uncertain value drawn from the band of the illness's sheet.
 * <p>Draw 0 is the patient of all medians. A value that the file gives is drawn in a narrow band of its own. Leaves out that
 * the doubts go together (a stiff lung usually has more shunt).
 */
public final class Doubt {
    /** Measured values, 95 % of the readings within this share. Common practice, no source. */
    private static final double MEASURED = 0.12;
    /** What a blood gas leaves of the sheet's doubt about metabolism, dead space and shunt. Invented, after what the fit to one gas leaves. */
    private static final double FITTED = 0.45;
    /** The 0.975 quantile of the standard normal. */
    private static final double Z975 = 1.959963984540054;

    private Doubt() {
    }

    /** The patient of this draw. */
    public static PatientModel draw(PatientModel median, PatientEntry entry, Illness illness, Draw draw) {
        if (draw.draw() == 0 || !median.living()) return median;
        boolean ownCompliance = entry.lungs().complianceMlPerCmH2O().isPresent();
        boolean ownResistance = entry.lungs().resistanceCmH2OSPerL().isPresent() || entry.lungs().resistanceWithTubeCmH2OSPerL().isPresent();
        double known = entry.bloodGas().isPresent() ? FITTED : 1;
        double vo2 = StrictMath.pow(times(draw, "oxygen uptake", illness.oxygenUptakeTimes(), false), known);
        double quotient = StrictMath.pow(times(draw, "respiratory quotient", illness.respiratoryQuotient(), false), known);
        PatientModel.Change c = PatientModel.Change.NONE
                .mechanics(times(draw, "compliance", illness.complianceTimes(), ownCompliance), times(draw, "resistance", illness.resistanceTimes(), ownResistance))
                .lungVolume(times(draw, "lung volume", illness.lungVolumeTimes(), false))
                .metabolism(vo2, vo2 * quotient)
                .cardiacOutput(times(draw, "cardiac output", illness.cardiacOutputTimes(), entry.cardiacOutputLPerMin().isPresent()))
                .baseExcess(Math.max(-29, Math.min(29, median.baseExcessMmolL() + known * off(draw, "base excess", illness.baseExcessMmolL()))))
                .low(median.lowVentilationShare() == 0 ? 0 : clip(median.lowVentilationShare() + known * off(draw, "low ventilation", illness.lowVentilationShare()), 0.9))
                .alveolarDeadSpace(clip(median.alveolarDeadSpace() + known * off(draw, "alveolar dead space", illness.alveolarDeadSpace()), 0.9));
        double shunt = entry.lungs().shunt().isPresent() && entry.bloodGas().isEmpty()
                ? median.shunt() * times(draw, "shunt", illness.shunt(), true) : median.shunt() + known * off(draw, "shunt", illness.shunt());
        return median.with(c.shunt(clip(shunt, 0.9)));
    }

    /** A factor on the median, lognormal on either side. */
    static double times(Draw draw, String name, Band band, boolean measured) {
        double z = draw.normal("patient " + name) / Z975;
        if (measured) return StrictMath.exp(z * StrictMath.log(1 + MEASURED));
        if (!(band.low() > 0)) return 1;
        return StrictMath.exp(z * (z > 0 ? StrictMath.log(band.high() / band.central()) : StrictMath.log(band.central() / band.low())));
    }

    /** How far from the median of the sheet, normal on either side. */
    static double off(Draw draw, String name, Band band) {
        double z = draw.normal("patient " + name) / Z975;
        return z * (z > 0 ? band.high() - band.central() : band.central() - band.low());
    }

    private static double clip(double share, double most) {
        return Math.max(0, Math.min(most, share));
    }
}
