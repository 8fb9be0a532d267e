package leeway.core.body;

import java.util.Optional;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.lung.LungDoubt;
import leeway.core.lung.Lungs;
import leeway.core.run.Draw;
import leeway.core.transport.PatientEntry;

/**
 * One of the patients that a file could mean: each uncertain value drawn from the band of the illness's sheet.
 * <p>Draw 0 is the patient of all medians. A value that the file gives is drawn in a narrow band of its own. After a fit to a
 * blood gas, gas exchange is drawn from what the gas left open, together. Leaves out that the sheet's doubts go together (a
 * stiff lung usually has more shunt).
 */
public final class Doubt {
    /** Measured values, 95 % of the readings within this share. Common practice, no source. */
    private static final double MEASURED = 0.12;
    /** The 0.975 quantile of the standard normal. */
    private static final double Z975 = 1.959963984540054;

    private Doubt() {
    }

    /** The patient of this draw, whom no blood gas was fitted to. */
    public static PatientModel draw(PatientModel median, PatientEntry entry, Illness illness, Draw draw) {
        return draw(median, entry, illness, Optional.empty(), draw);
    }

    /** The patient of this draw. */
    public static PatientModel draw(PatientModel median, PatientEntry entry, Illness illness, Optional<Posterior> known, Draw draw) {
        if (draw.draw() == 0 || !median.living()) return median;
        boolean ownCompliance = entry.lungs().complianceMlPerCmH2O().isPresent();
        boolean ownResistance = entry.lungs().resistanceCmH2OSPerL().isPresent() || entry.lungs().resistanceWithTubeCmH2OSPerL().isPresent();
        return median.with((known.isPresent() ? known.get().draw(draw) : exchange(median, entry, illness, draw))
                .mechanics(times(draw, "compliance", illness.complianceTimes(), ownCompliance), times(draw, "resistance", illness.resistanceTimes(), ownResistance))
                .lungVolume(times(draw, "lung volume", illness.lungVolumeTimes(), false)));
    }

    /** These lungs in this draw: each of their numbers that is known as a band, drawn from it. */
    public static Lungs draw(Lungs lungs, Draw draw) {
        Lungs drawn = lungs;
        if (draw.draw() > 0) for (LungDoubt d : lungs.doubts()) drawn = d.value().with(drawn, d.at(lungs, draw.normal("patient " + d.value().words())));
        return drawn;
    }

    private static PatientModel.Change exchange(PatientModel median, PatientEntry entry, Illness illness, Draw draw) {
        double vo2 = times(draw, "oxygen uptake", illness.oxygenUptakeTimes(), false), quotient = times(draw, "respiratory quotient", illness.respiratoryQuotient(), false);
        double shunt = entry.lungs().shunt().isPresent() ? median.shunt() * times(draw, "shunt", illness.shunt(), true) : median.shunt() + off(draw, "shunt", illness.shunt());
        PatientModel.Change change = PatientModel.Change.NONE;
        if (median.measuredDeadSpaceMl().isPresent()) change = change.deadSpace(median.measuredDeadSpaceMl().getAsDouble() * times(draw, "dead space", Band.of(1), true));
        if (median.spread() > 0) change = change.spread(Math.max(0, Math.min(2.5, median.spread() + off(draw, "spread", illness.spread()))));
        return change.metabolism(vo2, vo2 * quotient)
                .cardiacOutput(times(draw, "cardiac output", illness.cardiacOutputTimes(), entry.cardiacOutputLPerMin().isPresent()))
                .baseExcess(Math.max(-29, Math.min(29, median.baseExcessMmolL() + off(draw, "base excess", illness.baseExcessMmolL()))))
                .low(median.lowVentilationShare() == 0 ? 0 : clip(median.lowVentilationShare() + off(draw, "low ventilation", illness.lowVentilationShare()), 0.9))
                .alveolarDeadSpace(clip(median.alveolarDeadSpace() + off(draw, "alveolar dead space", illness.alveolarDeadSpace()), 0.9))
                .shunt(clip(shunt, 0.9));
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
