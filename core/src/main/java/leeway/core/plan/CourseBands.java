package leeway.core.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import leeway.core.gas.TwoColours;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.plan.Plan.Moment;
import leeway.core.plan.Plan.Span;
import leeway.core.run.Column;
import leeway.core.run.Draw;
import leeway.core.run.Loop;
import leeway.core.run.Now;
import leeway.core.run.Sink;
import leeway.core.transport.Transport;

/**
 * Within what the gases along the journey lie in 9 of 10 patients that the file could mean: the journey run again for each
 * of {@value #DRAWS}, at the same settings, legs and stores.
 * <p>Leaves out what sensors add: the band of the oximeter is that of the arterial saturation.
 */
final class CourseBands {
    /** Journeys: the ends are then the second and third patient from the edge. */
    static final int DRAWS = 40;

    private CourseBands() { }

    /** The same moments, each with its band. */
    static List<Moment> around(List<Moment> mid, Transport t, Ventilated v, Settings settings, long seed) {
        if (mid.isEmpty() || !v.patient().living()) return mid;
        double[][] o2 = new double[mid.size()][DRAWS], co2 = new double[mid.size()][DRAWS], saturation = new double[mid.size()][DRAWS];
        for (int d = 0; d < DRAWS; d++) run(d, mid, JourneyRun.of(t, v.drawn(t.patient(), t.illness(), new Draw(seed, d + 1)), settings, new Draw(seed, 0)), o2, co2, saturation);
        List<Moment> moments = new ArrayList<>();
        for (int i = 0; i < mid.size(); i++) {
            Moment m = mid.get(i);
            moments.add(new Moment(m.atMin(), m.pao2MmHg(), m.paco2MmHg(), m.spo2(), Optional.of(new Span(low(o2[i]), high(o2[i]), low(co2[i]), high(co2[i]), low(saturation[i]), high(saturation[i])))));
        }
        return moments;
    }

    private static void run(int d, List<Moment> mid, JourneyRun journey, double[][] o2, double[][] co2, double[][] saturation) {
        Loop loop = new Loop(journey.parts());
        Now now = loop.begin(journey.script());
        int[] next = {0};
        double[] last = {Double.NaN, Double.NaN, Double.NaN};
        loop.to(journey.endS(), now, journey.script().copy(), new Sink() {
            @Override public void row(Now n) {
                last[0] = n.get(Column.PAO2_MMHG);
                last[1] = n.get(Column.PACO2_MMHG);
                last[2] = TwoColours.shows(n.get(Column.SAO2), journey.transport().patient().carboxyhaemoglobin(), journey.transport().patient().methaemoglobin());
                while (next[0] < mid.size() && n.get(Column.END_S) >= mid.get(next[0]).atMin() * 60 - 1e-6) keep(next[0]++);
            }

            private void keep(int i) {
                o2[i][d] = last[0];
                co2[i][d] = last[1];
                saturation[i][d] = last[2];
            }
        });
        for (int i = next[0]; i < mid.size(); i++) {   // the last breath of this patient ends a little earlier
            o2[i][d] = last[0];
            co2[i][d] = last[1];
            saturation[i][d] = last[2];
        }
    }

    private static double low(double[] values) { return quantile(values, 0.05); }

    private static double high(double[] values) { return quantile(values, 0.95); }

    private static double quantile(double[] values, double p) {
        Arrays.sort(values);
        double at = p * (values.length - 1);
        int low = (int) at;
        return values[low] + (at - low) * (values[Math.min(low + 1, values.length - 1)] - values[low]);
    }
}
