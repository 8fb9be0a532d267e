package leeway.core.body;

/** What pressure in the chest does to the output of the heart. A coarse rule, declared and removable. */
public final class Coupling {
    /** Pleural pressure above its resting value from which the output falls, cmH2O, and by how much of it per cmH2O. Invented, after the 10 to 20 % that PEEP of 15 cmH2O usually costs (from memory). */
    private static final double FROM_CMH2O = 3, PER_CMH2O = 0.03, LEAST = 0.3;

    private Coupling() {
    }

    /** Factor on the cardiac output at a mean alveolar pressure, of which the chest wall takes its share. */
    public static double outputTimes(double meanAlveolarCmH2O, double chestWallShare) {
        double pleural = meanAlveolarCmH2O * chestWallShare;
        return pleural <= FROM_CMH2O ? 1 : Math.max(LEAST, 1 - PER_CMH2O * (pleural - FROM_CMH2O));
    }
}
