package leeway.core.body;

/**
 * Airways and apparatus between mouth and alveoli: a front of gas that moves in and out and mixes as it goes.
 * <p>Three mixed tanks in a row, each exact for any volume: above about 1.5 times its volume a breath passes it as a plug
 * would, and a breath smaller than the dead space still moves some fresh gas, as breaths do (Nunn & Hill, J Appl Physiol
 * 1960;15:383, abstract). Leaves out diffusion without flow and the heart's stirring.
 */
final class SeriesDeadSpace {
    static final int TANKS = 3;

    private SeriesDeadSpace() {
    }

    /** The shares of Poisson's law with mean {@code volume} over a tank's volume: 0, 1 and 2 tanks further. */
    static double weight(int steps, double lambda, double none) {
        return steps == 0 ? none : steps == 1 ? none * lambda : none * lambda * lambda * 0.5;
    }

    /**
     * The volume of once expired gas that a breath of this size brings back into the lung, mL, in the periodic state: the
     * effective dead space. Goes from the whole volume for large breaths to less than the breath for small ones.
     */
    static double effectiveMl(double tidalMl, double volumeMl) {
        if (volumeMl <= 0 || tidalMl <= 0) return 0;
        double lambda = TANKS * tidalMl / volumeMl;
        if (lambda > 40) return volumeMl;
        double none = StrictMath.exp(-lambda), one = none * lambda, two = one * lambda * 0.5;
        // one breath in, fresh gas 0, expired gas 1: tanks 0 (mouth) to 2 (lung) are linear in what they were
        double a = 1, b = 1, c = 1, back = 0;
        for (int i = 0; i < 500; i++) {
            double a1 = none * a, b1 = none * b + one * a, c1 = none * c + one * b + two * a;
            back = a + b + c - a1 - b1 - c1;
            double c2 = none * c1 + (1 - none), b2 = none * b1 + one * c1 + (1 - none - one), a2 = none * a1 + one * b1 + two * c1 + (1 - none - one - two);
            double moved = Math.abs(a2 - a) + Math.abs(b2 - b) + Math.abs(c2 - c);
            a = a2;
            b = b2;
            c = c2;
            if (moved < 1e-12) break;
        }
        return back * volumeMl / TANKS;
    }
}
