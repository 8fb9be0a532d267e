package leeway.core.body;

/** Small symmetric positive matrices: root, solution, inverse. Plain loops, in order of index, so that every machine gets the same bits. */
final class Cholesky {
    private Cholesky() {
    }

    /** The lower triangle L with L·Lᵀ = a. */
    static double[][] root(double[][] a) {
        int n = a.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) sum -= l[i][k] * l[j][k];
                if (i == j && !(sum > 0)) throw new IllegalArgumentException("not positive in row " + i + ": " + sum);
                l[i][j] = i == j ? Math.sqrt(sum) : sum / l[j][j];
            }
        }
        return l;
    }

    /** x of a·x = b, for the root of a. */
    static double[] solve(double[][] root, double[] b) {
        int n = b.length;
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) x[i] -= root[i][k] * x[k];
            x[i] /= root[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) x[i] -= root[k][i] * x[k];
            x[i] /= root[i][i];
        }
        return x;
    }

    /** The inverse of a, for the root of a; exactly symmetric. */
    static double[][] inverse(double[][] root) {
        int n = root.length;
        double[][] inverse = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] e = new double[n];
            e[i] = 1;
            inverse[i] = solve(root, e);
        }
        for (int i = 0; i < n; i++) for (int k = 0; k < i; k++) inverse[i][k] = inverse[k][i] = 0.5 * (inverse[i][k] + inverse[k][i]);
        return inverse;
    }
}
