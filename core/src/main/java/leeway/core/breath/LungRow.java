package leeway.core.breath;

import static leeway.core.breath.Slot.*;

import leeway.core.lung.Recruitment;
import leeway.core.run.Column;
import leeway.core.run.Now;

/** What lungs of several parts, or lungs that open and close, note of a breath and write into its row. */
final class LungRow {
    private static final double LARGEST_LEAD = 0.1, OPENING_LEAD = 0.5;
    private final LungState s;
    private final Recruitment recruitment;
    private final boolean opens;
    private final double[] before = new double[4];
    private int noted;
    /** The steady state is sought: what closes slowly is led there. */
    boolean hastened;

    LungRow(LungState state, Recruitment recruitment) {
        s = state;
        this.recruitment = recruitment;
        opens = recruitment.share() > 0;
    }

    /** A row begins; until an inflation ends, its start is also its fullest. */
    void begins(double[] y, int at) {
        y[at + FIRST_START] = y[at + FIRST];
        y[at + SECOND_START] = y[at + SECOND];
        inflationEnds(y, at);
    }

    /** What each part held then, and its pressure. */
    void inflationEnds(double[] y, int at) {
        y[at + FIRST_FULL] = y[at + FIRST];
        y[at + SECOND_FULL] = y[at + SECOND];
        if (s.w2 == 0) return;
        s.at(y, at);
        y[at + FIRST_PLATEAU] = s.alveoli1;
        y[at + SECOND_PLATEAU] = s.alveoli2;
    }

    /**
     * What closes or opens slowly is led to where three rows point (Aitken); the breaths after settle it. Opening slows down as it
     * comes near, for less of each breath opens anything, but the first rows after a jump may point too far, and led
     * beyond it would stay open: so it is led half of the way.
     */
    private void lead(double[] y, int at) {
        noted = (noted + 1) % 4;
        for (int i = 0; i < 2; i++) {
            int slot = at + FIRST_OPEN + i;
            double now = y[slot], older = before[i], old = before[2 + i], first = old - older, second = now - old;
            if (noted == 3 && Math.abs(second) > 1e-9 && second / first > 0 && second / first < 0.999) {
                double jump = second * second / (first - second), led = second < 0 ? Math.max(-LARGEST_LEAD, jump) : Math.min(LARGEST_LEAD, OPENING_LEAD * jump);
                y[slot] = Math.max(0, Math.min(1, now + led));
            }
            before[i] = old;
            before[2 + i] = now;
        }
    }

    /** Fills the columns of a row that is complete. */
    void write(Now n, int at, boolean leaksIntoPleura) {
        double[] y = n.y;
        if (hastened && opens) lead(y, at);
        if (opens) {
            n.set(Column.OPEN_SHARE, s.w1 * y[at + FIRST_OPEN] + s.w2 * y[at + SECOND_OPEN]);
            n.set(Column.SHUNT_ADDED, shuntAdded(y, at));
        }
        if (s.w2 > 0) {
            n.set(Column.FIRST_TIDAL_ML, y[at + FIRST_FULL] - y[at + FIRST_START]);
            n.set(Column.SECOND_TIDAL_ML, y[at + SECOND_FULL] - y[at + SECOND_START]);
            n.set(Column.FIRST_END_ML, y[at + FIRST]);
            n.set(Column.SECOND_END_ML, y[at + SECOND]);
            n.set(Column.FIRST_PLATEAU_CMH2O, y[at + FIRST_PLATEAU]);
            n.set(Column.SECOND_PLATEAU_CMH2O, y[at + SECOND_PLATEAU]);
            s.at(y, at);
            n.set(Column.FIRST_PEEP_CMH2O, s.alveoli1);
            n.set(Column.SECOND_PEEP_CMH2O, s.alveoli2);
        }
        if (leaksIntoPleura || y[at + PLEURA] > 0) n.set(Column.PLEURAL_GAS_ML, y[at + PLEURA]);
    }

    /** What closed lung adds to the shunt. */
    double shuntAdded(double[] y, int at) {
        return !opens ? 0 : s.w1 * recruitment.shuntAdded(y[at + FIRST_OPEN]) + s.w2 * recruitment.shuntAdded(y[at + SECOND_OPEN]);
    }
}
