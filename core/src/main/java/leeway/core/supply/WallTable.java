package leeway.core.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import leeway.core.gas.RealOxygen;

/**
 * Minutes by gauge reading and draw for one kind of cylinder, to hang on the wall. Whole minutes, rounded down.
 * <p>At the temperature that it names; gas that is colder shows less and holds the same, so the table then errs to the short side.
 *
 * @param of       the cylinder in words: "2 L at 20 °C"
 * @param gaugeBar  rows, from the fullest
 * @param drawLPerMin columns
 * @param minutes   by row and column
 */
public record WallTable(String of, double residualBar, List<Double> gaugeBar, List<Double> drawLPerMin, List<List<Integer>> minutes) {
    private static final double[] USUAL_DRAWS = { 2, 4, 6, 8, 10, 12, 15 };

    public WallTable {
        gaugeBar = List.copyOf(gaugeBar);
        drawLPerMin = List.copyOf(drawLPerMin);
        minutes = minutes.stream().map(List::copyOf).toList();
    }

    /** Rows every 25 bar up to the reading (at least 200 bar) and the reading itself; columns the usual draws and the one given. */
    public static WallTable of(double waterL, double temperatureCel, double residualBar, double readBar, double drawLPerMin) {
        return of("%s L at %s °C".formatted(plain(waterL), plain(temperatureCel)), bar -> RealOxygen.usableL(waterL, bar, temperatureCel, residualBar), residualBar, readBar, drawLPerMin);
    }

    /** The same by the trade's factor, litres per bar. */
    public static WallTable ofFactor(double litresPerBar, double residualBar, double readBar, double drawLPerMin) {
        return of("a cylinder of %s L/bar".formatted(plain(litresPerBar)), bar -> litresPerBar * (bar - residualBar), residualBar, readBar, drawLPerMin);
    }

    private static WallTable of(String what, DoubleUnaryOperator usableL, double residualBar, double readBar, double drawLPerMin) {
        TreeSet<Double> rows = new TreeSet<>();
        for (double bar = 25; bar <= Math.max(200, readBar); bar += 25) if (bar > residualBar) rows.add(bar);
        rows.add(readBar);
        TreeSet<Double> columns = new TreeSet<>();
        Arrays.stream(USUAL_DRAWS).forEach(columns::add);
        columns.add(Math.rint(drawLPerMin * 10) / 10 > 0 ? Math.rint(drawLPerMin * 10) / 10 : drawLPerMin);
        List<List<Integer>> minutes = new ArrayList<>();
        for (double bar : rows.descendingSet()) {
            double litres = Math.max(0, usableL.applyAsDouble(bar));
            minutes.add(columns.stream().map(q -> (int) Math.min(99_999, Math.floor(litres / q + 1e-9))).toList());
        }
        return new WallTable(what, residualBar, List.copyOf(rows.descendingSet()), List.copyOf(columns), minutes);
    }

    /** As text, a line a row, under 80 columns. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(Locale.ROOT, "Minutes, %s, down to %s bar:", of, plain(residualBar)));
        StringBuilder head = new StringBuilder("  psi   bar |");
        for (double q : drawLPerMin) head.append(String.format(Locale.ROOT, "%7s", plain(q)));
        lines.add(head + " L/min");
        for (int i = 0; i < gaugeBar.size(); i++) {
            StringBuilder row = new StringBuilder(String.format(Locale.ROOT, "%5.0f %5s |", psi(gaugeBar.get(i)), plain(gaugeBar.get(i))));
            for (int m : minutes.get(i)) row.append(String.format(Locale.ROOT, "%7d", m));
            lines.add(row.toString());
        }
        return lines;
    }

    /** The same reading in psi: 1 bar is 14.5038 psi. */
    public static double psi(double bar) { return Math.rint(bar / 0.0689475729); }

    /** A number as the table shows it: a decimal only where it has one. */
    public static String plain(double value) {
        double tenths = Math.rint(value * 10) / 10;
        return tenths == Math.rint(tenths) ? Long.toString((long) tenths) : String.format(Locale.ROOT, "%.1f", tenths);
    }
}
