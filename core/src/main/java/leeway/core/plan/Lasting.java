package leeway.core.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import leeway.core.run.Column;

/**
 * The highest and the lowest of a leg of the journey at medians that stand for a minute in all; what is shorter is left out.
 * <p>Absent figures are {@code NaN} and lie beyond no limit.
 */
record Lasting(double plateauCmH2O, double highPaco2MmHg, double lowPaco2MmHg, double highPh, double lowPh, double lowSaO2) {
    private static final double LASTS_S = 60;

    /** @param rows of the leg */
    static Lasting of(List<double[]> rows) {
        return new Lasting(worst(rows, Column.PLATEAU_CMH2O, 1), worst(rows, Column.PACO2_MMHG, 1), worst(rows, Column.PACO2_MMHG, -1), worst(rows, Column.PH, 1), worst(rows, Column.PH, -1),
                worst(rows, Column.SAO2, -1));
    }

    private static double worst(List<double[]> rows, Column c, int way) {
        List<double[]> known = new ArrayList<>();       // value, seconds
        for (double[] r : rows) {
            double value = r[c.ordinal()], s = r[Column.END_S.ordinal()] - r[Column.AT_S.ordinal()];
            if (!Double.isNaN(value)) known.add(new double[] {value, s});
        }
        known.sort(Comparator.comparingDouble(k -> -way * k[0]));
        double seconds = 0;
        for (double[] k : known) if ((seconds += k[1]) >= LASTS_S) return k[0];
        return Double.NaN;
    }
}
