package leeway.core.rehearsal;

import java.util.Arrays;

/**
 * How far each measure was from harm along a branch, row by row, straight between rows. For a first guess of what a later or an
 * earlier remedy leads to; nothing is decided by it.
 */
final class Course {
    private final int measures;
    private double[] rows;
    private int size;

    /** @param measures kept a row */
    Course(int measures) {
        this.measures = measures;
        rows = new double[64 * (measures + 1)];
    }

    void add(double tS, double[] room) {
        int at = size++ * (measures + 1);
        if (at == rows.length) rows = Arrays.copyOf(rows, 2 * at);
        rows[at] = tS;
        for (int m = 0; m < measures; m++) rows[at + 1 + m] = room[m];
    }

    private double tS(int row) { return rows[row * (measures + 1)]; }

    private double room(int row, int measure) { return rows[row * (measures + 1) + 1 + measure]; }

    /** The last time at which a measure still has this room, s; {@code NaN} where it never has, or has at the end. */
    double fallsToS(int measure, double room) {
        int i = size - 1;
        while (i >= 0 && !(room(i, measure) >= room)) i--;
        if (i < 0 || i == size - 1) return Double.NaN;
        return tS(i) + (room(i, measure) - room) / (room(i, measure) - room(i + 1, measure)) * (tS(i + 1) - tS(i));
    }
}
