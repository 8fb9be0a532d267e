package leeway.core.supply;

import java.util.Arrays;

/**
 * Quantiles of a sample, linear between the two nearest ranks (type 7 of Hyndman and Fan, Am. Stat. 1996;50:361).
 * Values are counted into narrow boxes; only the boxes that hold a wanted rank are sorted.
 */
final class Quantiles {
    private static final int MOST_BOXES = 4096;
    /** Fewer values are sorted at once. */
    private static final int FEW = 512;

    private Quantiles() { }

    /** The quantile p, 0 to 1, of the first {@code n} values. */
    static double of(double[] values, int n, double p) { return of(values, n, new double[] { p })[0]; }

    /** The same of several. The values stay as they are. */
    static double[] of(double[] values, int n, double... p) {
        double[] ranks = new double[p.length];
        for (int i = 0; i < p.length; i++) ranks[i] = p[i] * (n - 1);
        return at(values, n, ranks);
    }

    /** The value of a rank, 0 for the lowest, among the first {@code n}. */
    static double ranked(double[] values, int n, int rank) { return at(values, n, new double[] { rank })[0]; }

    private static double[] at(double[] values, int n, double[] ranks) {
        if (n < 1) throw new IllegalArgumentException("no values");
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            low = Math.min(low, values[i]);
            high = Math.max(high, values[i]);
        }
        double[] q = new double[ranks.length];
        int boxes = Math.min(MOST_BOXES, n / 2);
        double perBox = boxes / (high - low);
        if (n <= FEW || !(perBox > 0 && perBox < Double.POSITIVE_INFINITY)) {
            double[] sorted = Arrays.copyOf(values, n);
            Arrays.sort(sorted);
            for (int i = 0; i < ranks.length; i++) q[i] = between(sorted, 0, ranks[i]);
            return q;
        }
        int[] upTo = new int[boxes + 1]; // values in all boxes before this one
        for (int i = 0; i < n; i++) upTo[box(values[i], low, perBox, boxes) + 1]++;
        for (int b = 0; b < boxes; b++) upTo[b + 1] += upTo[b];
        boolean[] wanted = new boolean[boxes];
        int[] from = new int[ranks.length];
        int[] to = new int[ranks.length];
        int most = 0;
        for (int i = 0; i < ranks.length; i++) {
            int rank = (int) ranks[i];
            from[i] = holding(upTo, rank);
            to[i] = holding(upTo, Math.min(n - 1, rank + 1));
            wanted[from[i]] = true; // what lies between the two is empty
            wanted[to[i]] = true;
        }
        for (int b = 0; b < boxes; b++) if (wanted[b]) most += upTo[b + 1] - upTo[b];
        double[] inside = new double[most];
        int k = 0;
        for (int i = 0; i < n; i++) if (wanted[box(values[i], low, perBox, boxes)]) inside[k++] = values[i];
        Arrays.sort(inside);
        for (int i = 0; i < ranks.length; i++) {
            int before = upTo[from[i]];
            int kept = 0;
            for (int b = 0; b < from[i]; b++) if (wanted[b]) kept += upTo[b + 1] - upTo[b];
            q[i] = between(inside, before - kept, ranks[i]);
        }
        return q;
    }

    private static int box(double value, double low, double perBox, int boxes) { return Math.min(boxes - 1, (int) ((value - low) * perBox)); }

    private static int holding(int[] upTo, int rank) {
        int found = Arrays.binarySearch(upTo, rank + 1);
        int b = found >= 0 ? found : -found - 1; // the first with at least rank + 1 values before it
        while (upTo[b - 1] > rank) b--;
        return b - 1;
    }

    private static double between(double[] sorted, int before, double rank) {
        int i = (int) Math.floor(rank) - before;
        double part = rank - Math.floor(rank);
        return part == 0 || sorted[i] == sorted[i + 1] ? sorted[i] : sorted[i] + part * (sorted[i + 1] - sorted[i]);
    }
}
