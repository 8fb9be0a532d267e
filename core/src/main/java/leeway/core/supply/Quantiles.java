package leeway.core.supply;

/** Quantiles of a sample by selection, linear between the two nearest ranks (type 7 of Hyndman and Fan, Am. Stat. 1996;50:361; from memory). */
final class Quantiles {
    private Quantiles() { }

    /** The quantile p, 0 to 1, of the first {@code n} values, which change their order. */
    static double of(double[] values, int n, double p) {
        if (n < 1) throw new IllegalArgumentException("no values");
        double rank = p * (n - 1);
        int below = (int) Math.floor(rank);
        double low = select(values, n, below);
        double part = rank - below;
        if (part == 0 || below + 1 >= n) return low;
        double high = Double.POSITIVE_INFINITY; // the least of those above, all of which now stand to the right
        for (int i = below + 1; i < n; i++) high = Math.min(high, values[i]);
        return low == high ? low : low + part * (high - low);
    }

    /** Puts the k-th smallest (from 0) into place, smaller ones to its left, larger ones to its right (Hoare's selection). */
    private static double select(double[] v, int n, int k) {
        int left = 0;
        int right = n - 1;
        while (left < right) {
            double pivot = median(v[left], v[(left + right) >>> 1], v[right]);
            int i = left;
            int j = right;
            while (i <= j) {
                while (v[i] < pivot) i++;
                while (v[j] > pivot) j--;
                if (i <= j) {
                    double t = v[i];
                    v[i++] = v[j];
                    v[j--] = t;
                }
            }
            if (k <= j) right = j;
            else if (k >= i) left = i;
            else break;
        }
        return v[k];
    }

    private static double median(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }
}
