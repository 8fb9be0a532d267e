package leeway.core.body;

import leeway.core.gas.Exp;

/** Gas in motion between mouth and lung, on the state of {@link GasSlot}. Exactly conservative: what is not delivered stays. */
final class Airspace {
    /** Three gases, as moved by the last call. */
    final double[] moved = new double[3];
    private final double[] weight = new double[SeriesDeadSpace.TANKS];

    /**
     * A volume goes in at the mouth; {@code moved} is what the lung receives.
     *
     * @param inlet amounts that enter, three gases
     */
    void in(double[] y, int tanks, double volumeMl, double deadMl, double[] inlet) {
        push(y, tanks, tanks + 6, volumeMl, deadMl, inlet, 3);
    }

    /** A volume comes out of the lung; {@code moved} is what leaves at the mouth. */
    void out(double[] y, int tanks, double volumeMl, double deadMl, double[] fromLung) {
        push(y, tanks + 6, tanks, volumeMl, deadMl, fromLung, -3);
    }

    /** Three mixed tanks in a row, exact: tank k ends with Poisson's shares of what stood in it and before it, and of what came in. */
    private void push(double[] y, int first, int last, double volumeMl, double deadMl, double[] entering, int step) {
        double sum = entering[0] + entering[1] + entering[2];
        double lambda = deadMl > 0 ? SeriesDeadSpace.TANKS * volumeMl / deadMl : 1e9;
        double none = lambda > 40 ? 0 : Exp.exp(-lambda);
        for (int i = 0; i < weight.length; i++) weight[i] = SeriesDeadSpace.weight(i, lambda > 40 ? 0 : lambda, none);
        double capacity = 0;
        for (int k = 0; k < 9; k++) capacity += y[Math.min(first, last) + k];
        double perTank = capacity / SeriesDeadSpace.TANKS;
        for (int gas = 0; gas < 3; gas++) {
            double share = sum > 0 ? entering[gas] / sum : 0;
            double a = y[first + gas], b = y[first + step + gas], c = y[last + gas];
            double a1 = weight[0] * a + (1 - weight[0]) * share * perTank;
            double b1 = weight[0] * b + weight[1] * a + (1 - weight[0] - weight[1]) * share * perTank;
            double c1 = weight[0] * c + weight[1] * b + weight[2] * a + (1 - weight[0] - weight[1] - weight[2]) * share * perTank;
            y[first + gas] = a1;
            y[first + step + gas] = b1;
            y[last + gas] = c1;
            moved[gas] = entering[gas] + (a - a1) + (b - b1) + (c - c1);
        }
    }
}
