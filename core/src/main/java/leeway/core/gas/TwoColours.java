package leeway.core.gas;

/**
 * What an oximeter of two wavelengths makes of blood that also holds carboxy- or methaemoglobin.
 * <p>Leaves out: dyes, nail varnish, dark skin, and how the error of carboxyhaemoglobin changes at low saturation.
 */
public final class TwoColours {
    /** Towards this the reading is drawn; Barker, Tremper & Hyatt, Anesthesiology 1989;70:112: a plateau of 84 to 86 %, from memory. */
    private static final double METHAEMOGLOBIN_READS = 0.85;
    /** By half a point for each point of methaemoglobin; same source, from memory. */
    private static final double PULL = 0.5;

    private TwoColours() { }

    /**
     * The saturation shown, 0 to 1. Carboxyhaemoglobin counts as oxygenated: the reading is the sum of both (Vegfors & Lennmarken, Br J
     * Anaesth 1991;66:625, over 1 to 30 % of carboxyhaemoglobin).
     *
     * @param functional saturation of the haemoglobin that can carry oxygen, 0 to 1
     * @param carboxy    share of all haemoglobin
     * @param met        share of all haemoglobin
     */
    public static double shows(double functional, double carboxy, double met) {
        if (carboxy + met == 0) return functional;
        double red = (functional * (1 - carboxy - met) + carboxy) / (1 - met);
        double far = METHAEMOGLOBIN_READS - red;
        return red + Math.signum(far) * Math.min(Math.abs(far), PULL * met);
    }
}
