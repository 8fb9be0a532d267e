package leeway.core.plan;

import java.util.Optional;
import leeway.core.kit.Airway;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.PatientEntry.Sex;

/**
 * Whether a tracheal tube lies about as deep as its patient's windpipe is long.
 * <p>Grown: from the mouth to the division of the windpipe men have 11.413 + 0.072·height, women 13.555 + 0.056·height, cm
 * (Gómez et al., Rev Colomb Anestesiol 2016;44:228, 516 adults; abstract looked up), and the tube stands 3 cm above it. A
 * child's depth is 3 cm for each millimetre of inner diameter (common practice, no source). Leaves out tubes through the nose, and how the
 * head is held: a bent neck moves the tip 15 mm down, a stretched one 8.5 mm up (Hartrey & Kestin, Anaesthesia 1995;50:682, means of 20, abstract).
 */
final class TubeDepth {
    private static final double ABOVE_CM = 3, NEAR_CM = 1;
    /** Above the usual depth by more than this the cuff comes near the cords, cm. Common practice, no source. */
    private static final double SHALLOW_CM = 4, CHILD_CM = 1.5;
    private static final double GROWN_CM = 150;

    private TubeDepth() { }

    static Optional<String> caution(PatientEntry p, Airway airway) {
        if (p.airwayDepthCm().isEmpty() || airway.type() != Airway.Type.TRACHEAL_TUBE) return Optional.empty();
        double depth = p.airwayDepthCm().getAsDouble();
        String at = "The tube lies at " + Words.n(depth, 1) + " cm";
        if (p.heightCm().isEmpty() || p.heightCm().getAsDouble() < GROWN_CM) {
            return child(at, depth, 3 * airway.innerDiameterMm());
        }
        double height = p.heightCm().getAsDouble();
        double carina = p.sex() == Sex.MALE ? 11.413 + 0.072 * height : 13.555 + 0.056 * height;
        String source = " (height and sex, Rev. Colomb. Anestesiol. 44 (2016) 228).";
        String usual = "about " + Words.n(carina - ABOVE_CM, 0) + " cm are usual" + source;
        if (depth >= carina) return Optional.of(at + ": the windpipe is expected to divide at " + Words.n(carina, 0) + " cm, so its tip is likely in one bronchus. Listen on both sides and see to it before leaving; " + usual);
        if (depth > carina - NEAR_CM - 0.5) return Optional.of(at + ", close to where the windpipe divides, at about " + Words.n(carina, 0) + " cm: a bent neck may push it into one bronchus. Listen on both sides; " + usual);
        if (depth < carina - ABOVE_CM - SHALLOW_CM) return Optional.of(at + ", shallow: the cuff may lie at the cords and the tube slip out; " + usual);
        return Optional.empty();
    }

    private static Optional<String> child(String at, double depth, double usual) {
        String words = "about " + Words.n(usual, 1) + " cm, three for each millimetre inside, are usual (common practice, no source).";
        if (depth > usual + CHILD_CM) return Optional.of(at + ", deep for its size: its tip may lie in one bronchus. Listen on both sides; " + words);
        if (depth < usual - CHILD_CM) return Optional.of(at + ", shallow for its size: it may slip out; " + words);
        return Optional.empty();
    }
}
