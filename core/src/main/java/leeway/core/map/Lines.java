package leeway.core.map;

import java.util.ArrayList;
import java.util.List;
import leeway.core.map.OperatingMap.Line;
import leeway.core.start.Start;
import leeway.core.transport.Transport;

/** Lines of a map along which nothing breaks: equal PaCO2, equal draw, equal minutes of supply. */
final class Lines {
    private static final double[] PACO2 = {30, 35, 40, 45, 50, 60, 70, 80};
    private static final double[] DRAW = {0.5, 1, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30};
    private static final double[] MINUTES = {15, 30, 45, 60, 90, 120, 180, 240, 360, 480, 720, 1440};

    private Lines() { }

    static List<Line> of(Start start, Transport transport, double[][] paco2, double[][] draw) {
        List<Line> lines = new ArrayList<>();
        if (start.ventilated().patient().living()) lines.add(new Line("PaCO2", "mmHg", PACO2, paco2));
        if (most(draw) <= 0) return lines;
        lines.add(new Line("oxygen draw", "L/min", DRAW, draw));
        double usableL = MapMaker.usableL(transport, start.ventilated(), start.settings());
        if (usableL > 0) {
            double[][] minutes = new double[draw.length][draw[0].length];
            for (int j = 0; j < draw.length; j++) for (int i = 0; i < draw[j].length; i++) minutes[j][i] = draw[j][i] > 0 ? usableL / draw[j][i] : Double.NaN;
            lines.add(new Line("minutes of supply", "min", MINUTES, minutes));
        }
        return lines;
    }

    private static double most(double[][] grid) {
        double most = 0;
        for (double[] row : grid) for (double v : row) most = Math.max(most, v);
        return most;
    }
}
