package leeway.core.body;

import java.util.List;

/**
 * What lying otherwise than flat does to the gas left in the lung (functional residual capacity): a factor on the supine volume.
 * <p>Lumb & Nunn, Anesth Analg 1991;73:422 (abstract looked up): 13 healthy awake men have 806 mL (SD 293) more sitting than
 * supine, 350 mL more prone or on a side. Sitting over supine is taken as 1 / {@link LungVolume#SUPINE}, prone and side as
 * 350/806 of that gain. Leaves out what position does to mechanics, shunt and circulation, and that sedated and heavy patients
 * may gain less.
 */
public final class Posture {
    /** The words of a transport file. */
    public static final List<String> WORDS = List.of("flat", "supine", "head up", "semi-recumbent", "sitting", "head down", "prone", "left side", "right side");
    private static final double SITTING_GAIN = 1 / LungVolume.SUPINE - 1, SIDE_GAIN = SITTING_GAIN * 350 / 806;
    /** Head up by 20 to 30 degrees and half sitting by 45: a third and half of the way to sitting. Common practice, no source. */
    private static final double HEAD_UP_SHARE = 1.0 / 3, SEMI_SHARE = 0.5;
    /** Head down: the belly on the diaphragm takes about a tenth. From memory. */
    private static final double HEAD_DOWN = 0.9;

    private Posture() {
    }

    /** The factor of a position on the supine lung volume. */
    public static double lungVolumeTimes(String position) {
        return switch (position) {
            case "flat", "supine" -> 1;
            case "head up" -> 1 + HEAD_UP_SHARE * SITTING_GAIN;
            case "semi-recumbent" -> 1 + SEMI_SHARE * SITTING_GAIN;
            case "sitting" -> 1 + SITTING_GAIN;
            case "prone", "left side", "right side" -> 1 + SIDE_GAIN;
            case "head down" -> HEAD_DOWN;
            default -> throw new IllegalArgumentException("position \"" + position + "\" is none of " + WORDS);
        };
    }
}
