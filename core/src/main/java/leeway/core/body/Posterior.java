package leeway.core.body;

import leeway.core.run.Draw;

/**
 * What is known of a patient's gas exchange after a blood gas: the most probable values and how they vary together.
 * <p>Laplace's approximation: near the most probable values, in the sheet's own scales, the doubt is taken as normal, with
 * the curvature of prior and measurement together. Two measured tensions fix two combinations of the unknowns; what they leave
 * open stays as wide as the sheet had it, and what they tie together (more dead space, then less metabolism) stays tied in
 * every draw. Where the curves bend away, a draw is led back to the gas that its straight line foresaw (two Newton steps of
 * least length). Leaves out that the doubt is not quite normal far from the middle; the test holds it against a random walk.
 */
public final class Posterior {
    /** The gas of a patient less the measured one, in its errors. */
    interface Misses {
        double[] of(double[] z);
    }

    private static final int LED_BACK = 2;
    /** Variance of base excess in the metric of the way back, (mmol/L)²: it is free to follow. */
    private static final double FREE = 25;

    private final SheetDoubt sheet;
    private final double[] mode, missed;
    private final double[][] covariance, root, slopes, back;
    private final Misses misses;

    /** @param slopes of the misses along the unknowns, at the mode */
    Posterior(SheetDoubt sheet, double[] mode, double[][] covariance, Misses misses, double[][] slopes) {
        this.sheet = sheet;
        this.mode = mode.clone();
        this.covariance = covariance;
        this.misses = misses;
        this.slopes = slopes;
        root = Cholesky.root(covariance);
        missed = misses.of(mode);
        int rows = missed.length, n = mode.length;
        double[][] square = new double[rows][rows];
        for (int i = 0; i < rows; i++) {
            square[i][i] = 1e-9;
            for (int k = 0; k < rows; k++) for (int u = 0; u < n; u++) square[i][k] += slopes[i][u] * metric(u) * slopes[k][u];
        }
        double[][] inverse = Cholesky.inverse(Cholesky.root(square));
        back = new double[n][rows];
        for (int u = 0; u < n; u++) for (int k = 0; k < rows; k++) for (int i = 0; i < rows; i++) back[u][k] += metric(u) * slopes[i][u] * inverse[i][k];
    }

    private double metric(int unknown) {
        return unknown == Unknown.BASE_EXCESS.ordinal() ? FREE : 1;
    }

    /** The same point, led back to the gas that the straight line from the mode foresees there. */
    private double[] ledBack(double[] drawn) {
        double[] foreseen = missed.clone(), z = drawn;
        for (int i = 0; i < foreseen.length; i++) for (int u = 0; u < z.length; u++) foreseen[i] += slopes[i][u] * (drawn[u] - mode[u]);
        double off = Double.POSITIVE_INFINITY;
        for (int step = 0; step <= LED_BACK; step++) {
            double[] r = misses.of(z);
            double now = 0;
            for (int i = 0; i < r.length; i++) now += Math.abs(r[i] -= foreseen[i]);
            if (!(now < off)) return drawn;   // no better: the point stays where it was drawn
            off = now;
            drawn = z;
            if (step == LED_BACK) break;
            z = z.clone();
            for (int u = 0; u < z.length; u++) for (int i = 0; i < r.length; i++) z[u] -= back[u][i] * r[i];
        }
        return drawn;
    }

    /** What changes the most probable patient into the patient of this draw. Draw 0 changes nothing. */
    public PatientModel.Change draw(Draw draw) {
        double[] e = new double[mode.length], z = mode.clone();
        for (Unknown u : Unknown.values()) e[u.ordinal()] = draw.normal("patient " + u.words());
        for (int i = 0; i < z.length; i++) for (int k = 0; k <= i; k++) z[i] += root[i][k] * e[k];
        return sheet.change(draw.draw() == 0 ? mode : ledBack(z), mode);
    }

    /** What changes the most probable patient into one at an end of the band of one unknown, 19 of 20 lying within; the others go where they most probably are then. */
    public PatientModel.Change end(Unknown unknown, boolean high) {
        return sheet.change(ledBack(at(unknown.ordinal(), (high ? 1 : -1) * SheetDoubt.Z975)), mode);
    }

    /** Doubt left of the sheet's, 0 to 1: 1 where the blood gas says nothing of this unknown. Of base excess the standard deviation, mmol/L. */
    public double left(Unknown unknown) {
        return Math.sqrt(covariance[unknown.ordinal()][unknown.ordinal()]);
    }

    /** How two unknowns go together, −1 to 1. */
    public double correlation(Unknown a, Unknown b) {
        return covariance[a.ordinal()][b.ordinal()] / (left(a) * left(b));
    }

    double[] at(int unknown, double deviations) {
        double[] z = mode.clone();
        double sd = Math.sqrt(covariance[unknown][unknown]);
        for (int k = 0; k < z.length; k++) z[k] += covariance[k][unknown] / sd * deviations;
        return z;
    }

    double[] mode() { return mode.clone(); }

    /** Standard deviation of anything that has this slope along the unknowns. */
    double deviation(double[] slope) {
        double sum = 0;
        for (int i = 0; i < slope.length; i++) for (int k = 0; k < slope.length; k++) sum += slope[i] * covariance[i][k] * slope[k];
        return Math.sqrt(Math.max(0, sum));
    }
}
