package leeway.core.expression;

import java.util.List;

/**
 * A table of a sheet: a value for each stretch of an amount. Below the first row its first value holds, above the last its last.
 *
 * @param of       what it is looked up by
 * @param gives    what it gives
 * @param between  whether values between two rows are drawn straight; otherwise a row holds from its {@code from} up to the next
 */
public record Table(String name, Type of, Type gives, boolean between, List<Row> rows, String source) {
    /** The most rows a table may have. */
    public static final int MOST_ROWS = 200;

    /** From this amount on, this value; both in coherent SI units. */
    public record Row(double from, double value) { }

    public Table {
        rows = List.copyOf(rows);
        if (rows.isEmpty() || rows.size() > MOST_ROWS) throw new IllegalArgumentException("table %s has %d rows".formatted(name, rows.size()));
        for (int i = 1; i < rows.size(); i++) if (!(rows.get(i).from() > rows.get(i - 1).from())) throw new IllegalArgumentException("table %s must rise".formatted(name));
    }

    double at(double x) {
        int i = 0;
        double slack = 1e-9 * Math.abs(x);
        while (i + 1 < rows.size() && rows.get(i + 1).from() <= x + slack) i++;
        Row low = rows.get(i);
        if (!between || i + 1 == rows.size() || x <= low.from()) return low.value();
        Row high = rows.get(i + 1);
        return low.value() + (high.value() - low.value()) * (x - low.from()) / (high.from() - low.from());
    }
}
