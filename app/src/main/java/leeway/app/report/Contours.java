package leeway.app.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Marching squares over a grid of rows of y and columns of x: lines of one level, and the area at or above it.
 * <p>Crossings are drawn straight between two points of the grid; a saddle is split by its mean. Where a value is not a
 * number there is neither line nor area.
 */
final class Contours {
    private final double[] xs;
    private final double[] ys;
    private final double[][] values;
    private final double level;
    private final Map<Integer, int[]> next = new HashMap<>();
    private final Map<Integer, double[]> points = new HashMap<>();

    private Contours(double[] xs, double[] ys, double[][] values, double level) {
        this.xs = xs;
        this.ys = ys;
        this.values = values;
        this.level = level;
        for (int j = 0; j + 1 < ys.length; j++) for (int i = 0; i + 1 < xs.length; i++) cell(i, j);
    }

    /** A run of points; closed where the last is the first. */
    record Chain(double[] x, double[] y) {
        int size() { return x.length; }
    }

    /** All lines along which the value is the level. */
    static List<Chain> lines(double[] xs, double[] ys, double[][] values, double level) { return new Contours(xs, ys, values, level).chains(); }

    /** Closed rings whose inside, by the even-odd rule, is where the value is the level or more; along the edge of the grid they follow the edge. */
    static List<Chain> area(double[] xs, double[] ys, double[][] values, double level) {
        int nx = xs.length;
        int ny = ys.length;
        double[] px = new double[nx + 2];
        double[] py = new double[ny + 2];
        for (int i = 0; i < nx + 2; i++) px[i] = xs[Math.max(0, Math.min(nx - 1, i - 1))];
        for (int j = 0; j < ny + 2; j++) py[j] = ys[Math.max(0, Math.min(ny - 1, j - 1))];
        double[][] pv = new double[ny + 2][nx + 2];
        for (int j = 0; j < ny + 2; j++) {
            for (int i = 0; i < nx + 2; i++) {
                boolean rim = i == 0 || j == 0 || i == nx + 1 || j == ny + 1;
                double v = rim ? level - 1 : values[j - 1][i - 1];
                pv[j][i] = Double.isNaN(v) ? level - 1 : v;
            }
        }
        return new Contours(px, py, pv, level).chains();
    }

    private void cell(int i, int j) {
        double a = values[j][i];
        double b = values[j][i + 1];
        double c = values[j + 1][i + 1];
        double d = values[j + 1][i];
        if (Double.isNaN(a + b + c + d)) return;
        int bottom = edge(i, j, 0);
        int right = edge(i + 1, j, 1);
        int top = edge(i, j + 1, 0);
        int left = edge(i, j, 1);
        int inside = (a >= level ? 1 : 0) | (b >= level ? 2 : 0) | (c >= level ? 4 : 0) | (d >= level ? 8 : 0);
        boolean high = (a + b + c + d) / 4 >= level;
        switch (inside) {
            case 1, 14 -> join(left, bottom);
            case 2, 13 -> join(bottom, right);
            case 4, 11 -> join(right, top);
            case 8, 7 -> join(top, left);
            case 3, 12 -> join(left, right);
            case 6, 9 -> join(bottom, top);
            case 5 -> {
                join(left, high ? top : bottom);
                join(right, high ? bottom : top);
            }
            case 10 -> {
                join(left, high ? bottom : top);
                join(right, high ? top : bottom);
            }
            default -> { }
        }
    }

    /** The edge from this point of the grid to the right (0) or upward (1), with its crossing. */
    private int edge(int i, int j, int way) {
        int id = 2 * (j * xs.length + i) + way;
        int i2 = way == 0 ? i + 1 : i;
        int j2 = way == 0 ? j : j + 1;
        if (i2 >= xs.length || j2 >= ys.length || points.containsKey(id)) return id;
        double p = values[j][i];
        double q = values[j2][i2];
        if (p >= level == q >= level || Double.isNaN(p + q)) return id;
        double t = Math.max(0, Math.min(1, (level - p) / (q - p)));
        points.put(id, new double[] {xs[i] + t * (xs[i2] - xs[i]), ys[j] + t * (ys[j2] - ys[j])});
        return id;
    }

    private void join(int a, int b) {
        link(a, b);
        link(b, a);
    }

    private void link(int from, int to) {
        int[] n = next.computeIfAbsent(from, k -> new int[] {-1, -1});
        n[n[0] < 0 ? 0 : 1] = to;
    }

    private List<Chain> chains() {
        List<Chain> chains = new ArrayList<>();
        List<Integer> starts = new ArrayList<>(next.keySet());
        starts.sort((a, b) -> {
            int openA = next.get(a)[1] < 0 ? 0 : 1;
            int openB = next.get(b)[1] < 0 ? 0 : 1;
            return openA != openB ? openA - openB : a - b;
        });
        for (int start : starts) {
            if (!next.containsKey(start)) continue;
            List<double[]> run = new ArrayList<>();
            int at = start;
            int from = -1;
            while (at >= 0 && next.containsKey(at)) {
                run.add(points.get(at));
                int[] n = next.remove(at);
                int to = n[0] == from ? n[1] : n[0];
                from = at;
                at = to;
            }
            if (at == start && run.size() > 2) run.add(run.get(0));
            if (run.size() > 1) chains.add(new Chain(run.stream().mapToDouble(p -> p[0]).toArray(), run.stream().mapToDouble(p -> p[1]).toArray()));
        }
        return chains;
    }
}
