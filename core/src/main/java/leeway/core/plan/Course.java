package leeway.core.plan;

import static leeway.core.plan.Expected.known;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.kit.Settings;
import leeway.core.plan.Plan.Moment;
import leeway.core.rehearsal.Nominal;
import leeway.core.run.Column;
import leeway.core.transport.Transport;

/** The journey run once at medians, with its events and without what-ifs: the gases along it, and the state at each leg's end. */
final class Course {
    /** A state is the mean of what the breaths of this stretch show, gases as at its end; s. */
    private static final double SPAN_S = 60;
    /** Moments of a picture. */
    private static final int MOMENTS = 400;

    private final List<double[]> rows;
    private final double[] legStartS;

    private Course(List<double[]> rows, double[] legStartS) {
        this.rows = rows;
        this.legStartS = legStartS;
    }

    static Course of(Nominal medians) { return new Course(medians.rows(), medians.legStartS()); }

    /** Whether and how long nobody starts a breath on it. */
    Optional<Silence> silence(Transport t, Settings settings) { return Silence.of(t, settings, rows, legStartS); }

    /** What lasts on a leg. */
    Lasting lasting(int leg) { return Lasting.of(rows.stream().filter(r -> at(r, Column.AT_S) >= legStartS[leg] && at(r, Column.AT_S) < legStartS[leg + 1]).toList()); }

    private static double at(double[] row, Column c) { return row[c.ordinal()]; }

    /** Thinned evenly; empty where no gas is exchanged. */
    List<Moment> moments() {
        List<Moment> moments = new ArrayList<>();
        double step = legStartS[legStartS.length - 1] / MOMENTS;
        double nextS = 0;
        for (double[] r : rows) {
            double tS = at(r, Column.END_S);
            double spo2 = spo2(r);
            if (tS < nextS || Double.isNaN(at(r, Column.PAO2_MMHG)) || Double.isNaN(at(r, Column.PACO2_MMHG)) || Double.isNaN(spo2)) continue;
            moments.add(new Moment(tS / 60, at(r, Column.PAO2_MMHG), at(r, Column.PACO2_MMHG), spo2, Optional.empty()));
            nextS = tS + step;
        }
        return moments;
    }

    private static double spo2(double[] r) { return Double.isNaN(at(r, Column.SPO2)) ? at(r, Column.SAO2) : at(r, Column.SPO2); }

    /** What is expected at the end of a leg; nothing where no breath came. */
    Expected atEndOf(int leg) {
        double endS = legStartS[leg + 1];
        double fromS = Math.max(legStartS[leg], endS - SPAN_S);
        List<double[]> last = rows.stream().filter(r -> at(r, Column.END_S) > fromS && at(r, Column.END_S) <= endS + 1e-6).toList();
        if (last.isEmpty()) last = rows.stream().filter(r -> at(r, Column.END_S) <= endS + 1e-6).reduce((a, b) -> b).map(List::of).orElse(List.of());
        if (last.isEmpty()) return Expected.NOTHING;
        double[] end = last.get(last.size() - 1);
        double spanS = 0;
        double expired = 0;
        double energy = 0;
        double meanS = 0;
        for (double[] r : last) {
            double s = at(r, Column.END_S) - at(r, Column.AT_S);
            spanS += s;
            meanS += s * at(r, Column.MEAN_CMH2O);
            if (at(r, Column.KIND) == 0) continue;
            expired += at(r, Column.EXPIRED_ML);
            energy += at(r, Column.ENERGY_J);
        }
        List<double[]> breaths = last.stream().filter(r -> at(r, Column.KIND) != 0).toList();
        return new Expected(mean(breaths, Column.EXPIRED_ML), highest(breaths), mean(breaths, Column.PLATEAU_CMH2O), mean(breaths, Column.DRIVING_CMH2O), mean(breaths, Column.AUTO_PEEP_CMH2O),
                known(meanS / spanS), known(energy * 60 / spanS), known(expired * 60 / spanS / 1000), known(at(end, Column.PACO2_MMHG)), known(at(end, Column.ETCO2_MMHG)),
                known(at(end, Column.PAO2_MMHG)), known(spo2(end)), known(at(end, Column.PH)));
    }

    private static OptionalDouble mean(List<double[]> breaths, Column c) {
        return breaths.isEmpty() ? OptionalDouble.empty() : known(breaths.stream().mapToDouble(r -> at(r, c)).average().orElseThrow());
    }

    private static OptionalDouble highest(List<double[]> breaths) {
        return breaths.isEmpty() ? OptionalDouble.empty() : known(breaths.stream().mapToDouble(r -> at(r, Column.PEAK_CMH2O)).max().orElseThrow());
    }
}
