package leeway.core.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leeway.core.gas.AcidBase;
import leeway.core.gas.AlveolarGas;
import leeway.core.gas.OxygenDissociation;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.transport.PatientEntry.BloodGas;

/**
 * The patient in whom this blood gas was most probably taken, and how sure that is.
 * <p>Base excess follows from pH, PaCO2 and haemoglobin. Metabolism, alveolar dead space and venous admixture (shunt, and the
 * poorly ventilated share with it) are sought together: the most probable values, given the bands of the illness's sheet and
 * the errors of the analyser (maximum a posteriori, Gauss-Newton). Two measurements cannot fix three values: the prior decides
 * what they leave open, and the bands that come out say so.
 * <p>Leaves out: other causes of hypoxaemia (a low cardiac output), and all that changed since the sample was drawn.
 */
public final class BloodGasFit {
    /** Errors of sample and analyser, one standard deviation: PaCO2 in mmHg, PaO2 as a share. Common practice, no source. */
    private static final double CO2_ERROR_MMHG = 1, O2_ERROR = 0.03;
    /** Below this time under the settings the gas is no steady state, and its carbon dioxide says less, min. Physiology of the stores; common practice. */
    private static final double SETTLED_MIN = 20, UNSETTLED_ERROR_MMHG = 4;
    private static final double Z975 = 1.959963984540054;
    /** A value further from the sheet's median than this many standard deviations is worth a word; beyond the second the gas does not belong to this patient. */
    private static final double UNUSUAL = 2.5, IMPOSSIBLE = 6, FURTHEST = 8;

    private BloodGasFit() {
    }

    /** What came of it. */
    public sealed interface Result {
        /**
         * The patient fitted.
         *
         * @param shunt             with the band that 19 of 20 such patients lie in
         * @param vco2MlPerMin      the same
         * @param deadSpaceMl       physiological, all of it, at the tidal volume of the gas
         * @param missedCo2MmHg     fitted less measured
         * @param missedO2MmHg      the same; NaN where PaO2 was not measured
         * @param said              what changed, a sentence each
         */
        record Fitted(PatientModel patient, Band shunt, Band vco2MlPerMin, Band deadSpaceMl, double missedCo2MmHg, double missedO2MmHg, List<String> said) implements Result {
            public Fitted { said = List.copyOf(said); }
        }

        /** No living patient under these settings has such a gas; why. */
        record Impossible(String why) implements Result { }
    }

    /** Fits a patient to a gas that was taken at this barometric pressure. */
    public static Result fit(PatientModel prior, Illness illness, BloodGas gas, double barometerMmHg) {
        if (!prior.living()) return new Result.Impossible("a test lung has no blood");
        Ventilation set = ventilation(prior, gas, barometerMmHg);
        double hb = prior.haemoglobinGPerDl(), saturation = gas.pao2MmHg().isPresent()
                ? OxygenDissociation.saturation(gas.pao2MmHg().getAsDouble(), gas.ph(), prior.temperatureCel(), prior.p50MmHg()) : 0.95;
        double excess = AcidBase.baseExcessMmolL(gas.ph(), gas.paco2MmHg(), hb, saturation);
        if (!(excess > -30 && excess < 30)) return new Result.Impossible(text("pH %.2f with a PaCO2 of %.0f mmHg would be a base excess of %.0f mmol/L", gas.ph(), gas.paco2MmHg(), excess));
        if (gas.pao2MmHg().isPresent()) {
            double most = AlveolarGas.oxygenMmHg(gas.fio2(), barometerMmHg, gas.paco2MmHg(), 0.8), pao2 = gas.pao2MmHg().getAsDouble();
            if (pao2 > most * 1.03) return new Result.Impossible(text("a PaO2 of %.0f mmHg is more than the %.0f mmHg that %.0f %% oxygen leaves in the alveoli at a PaCO2 of %.0f mmHg", pao2, most, 100 * gas.fio2(), gas.paco2MmHg()));
        }
        Problem problem = new Problem(prior.with(PatientModel.Change.NONE.baseExcess(excess)), illness, gas, set);
        double[] z = problem.solve();
        for (int i = 0; i < 3; i++) {
            if (Math.abs(z[i]) > IMPOSSIBLE) return new Result.Impossible(problem.impossible(z, i));
        }
        PatientModel fitted = problem.patient(z);
        SteadyGases at = SteadyGases.of(fitted, set);
        if (!at.sustainable()) return new Result.Impossible("lungs and heart that give this gas could not meet the body's need for oxygen");
        double missedCo2 = at.paco2MmHg() - gas.paco2MmHg(), missedO2 = gas.pao2MmHg().isPresent() ? at.pao2MmHg() - gas.pao2MmHg().getAsDouble() : Double.NaN;
        if (Math.abs(missedCo2) > 4 * problem.co2Error) return new Result.Impossible(problem.impossible(z, 1));
        if (gas.pao2MmHg().isPresent() && Math.abs(missedO2) > 5 * O2_ERROR * gas.pao2MmHg().getAsDouble())
            return new Result.Impossible(text("no shunt explains a PaO2 of %.0f mmHg here; the nearest is %.0f mmHg", gas.pao2MmHg().getAsDouble(), at.pao2MmHg()));
        return problem.fitted(fitted, z, at, missedCo2, missedO2, excess);
    }

    /** The ventilation under which the gas was taken; where only the minute volume is known, in breaths of 7 mL/kg. */
    static Ventilation ventilation(PatientModel patient, BloodGas gas, double barometerMmHg) {
        double tidal = gas.tidalVolumeMl().orElse(7 * patient.predictedKg());
        double rate;
        if (gas.minuteVolumeLPerMin().isPresent() && gas.tidalVolumeMl().isEmpty() && gas.ratePerMin().isPresent()) {
            rate = gas.ratePerMin().getAsDouble();
            tidal = 1000 * gas.minuteVolumeLPerMin().getAsDouble() / rate;
        } else if (gas.ratePerMin().isPresent()) {
            rate = gas.ratePerMin().getAsDouble();
        } else {
            rate = 1000 * gas.minuteVolumeLPerMin().orElseThrow(() -> new IllegalArgumentException("a blood gas needs tidal volume and rate, or the minute volume")) / tidal;
        }
        double mean = gas.peepCmH2O().orElse(5) + 0.35 * tidal / patient.complianceMlPerCmH2O();
        return new Ventilation(tidal, rate, gas.fio2(), barometerMmHg, mean);
    }

    /** Three standard normal numbers, of metabolism, dead space and admixture, with the prior in them. */
    private static final class Problem {
        private final PatientModel prior;
        private final Illness illness;
        private final BloodGas gas;
        private final Ventilation set;
        private final double co2Error, deadPrior, shuntPrior;
        private final double[][] covariance = new double[3][3];

        Problem(PatientModel prior, Illness illness, BloodGas gas, Ventilation set) {
            this.prior = prior;
            this.illness = illness;
            this.gas = gas;
            this.set = set;
            co2Error = gas.afterMin() < SETTLED_MIN ? UNSETTLED_ERROR_MMHG : CO2_ERROR_MMHG;
            deadPrior = prior.alveolarDeadSpaceAt(set.tidalMl());
            shuntPrior = prior.shunt();
        }

        private double metabolism(double any) {
            double z = Math.max(-FURTHEST, Math.min(FURTHEST, any));
            Band b = illness.oxygenUptakeTimes();
            double up = Math.max(0.1, StrictMath.log(b.high() / b.central())), down = Math.max(0.1, StrictMath.log(b.central() / b.low()));
            return StrictMath.exp(z / Z975 * (z > 0 ? up : down));
        }

        private static double share(double z, double median, Band band) {
            double up = Math.max(0.03, band.high() - band.central()), down = Math.max(0.02, Math.min(median, band.central() - band.low()));
            return Math.max(0, Math.min(0.85, median + z / Z975 * (z > 0 ? up : down)));
        }

        double dead(double z) {
            return share(z, deadPrior, illness.alveolarDeadSpace());
        }

        double shunt(double z) {
            return share(z, shuntPrior, illness.shunt());
        }

        PatientModel patient(double[] z) {
            double s = shunt(z[2]), m = metabolism(z[0]);
            double low = shuntPrior > 0 ? Math.min(0.5, prior.lowVentilationShare() * Math.min(2, s / shuntPrior)) : prior.lowVentilationShare();
            return prior.with(PatientModel.Change.NONE.metabolism(m, m).alveolarDeadSpace(dead(z[1])).deadSpace(0).shunt(s).low(low));
        }

        private double[] residuals(double[] z) {
            SteadyGases g = SteadyGases.of(patient(z), set);
            double o2 = gas.pao2MmHg().isPresent() ? StrictMath.log(g.pao2MmHg() / gas.pao2MmHg().getAsDouble()) / O2_ERROR : 0;
            return new double[] {(g.paco2MmHg() - gas.paco2MmHg()) / co2Error, o2, z[0], z[1], z[2]};
        }

        private static double sum(double[] r) {
            double sum = 0;
            for (double v : r) sum += v * v;
            return sum;
        }

        /** Gauss-Newton with halved steps; at most 60. */
        double[] solve() {
            double[] z = {0, 0, 0}, r = residuals(z);
            for (int step = 0; step < 60; step++) {
                double[][] j = slopes(z, r);
                double[] d = new double[3];
                double[][] a = normal(j);
                double[] b = new double[3];
                for (int i = 0; i < 3; i++) for (int k = 0; k < 5; k++) b[i] -= j[k][i] * r[k];
                solve(a, b, d);
                double t = 1, longest = Math.max(Math.abs(d[0]), Math.max(Math.abs(d[1]), Math.abs(d[2])));
                if (longest > 2) t = 2 / longest;
                double[] next = null, nr = null;
                for (int half = 0; half < 12; half++, t *= 0.5) {
                    next = new double[] {z[0] + t * d[0], z[1] + t * d[1], z[2] + t * d[2]};
                    nr = residuals(next);
                    if (sum(nr) < sum(r) + 1e-12) break;
                }
                double moved = Math.abs(next[0] - z[0]) + Math.abs(next[1] - z[1]) + Math.abs(next[2] - z[2]);
                if (sum(nr) > sum(r)) break;
                z = next;
                r = nr;
                if (moved < 1e-6) break;
            }
            double[][] a = normal(slopes(z, r));
            for (int i = 0; i < 3; i++) {
                double[] e = new double[3], column = new double[3];
                e[i] = 1;
                solve(a, e, column);
                for (int k = 0; k < 3; k++) covariance[k][i] = column[k];
            }
            return z;
        }

        private double[][] slopes(double[] z, double[] r) {
            double[][] j = new double[5][3];
            for (int i = 0; i < 3; i++) {
                double[] up = z.clone();
                up[i] += 1e-4;
                double[] ru = residuals(up);
                for (int k = 0; k < 5; k++) j[k][i] = (ru[k] - r[k]) / 1e-4;
            }
            return j;
        }

        private static double[][] normal(double[][] j) {
            double[][] a = new double[3][3];
            for (int i = 0; i < 3; i++) for (int k = 0; k < 3; k++) for (double[] row : j) a[i][k] += row[i] * row[k];
            return a;
        }

        /** Solves a 3 × 3 system by Cramer's rule; the matrix is the identity plus squares, so it is never singular. */
        private static void solve(double[][] a, double[] b, double[] x) {
            double det = det(a);
            for (int i = 0; i < 3; i++) {
                double[][] m = {a[0].clone(), a[1].clone(), a[2].clone()};
                for (int k = 0; k < 3; k++) m[k][i] = b[k];
                x[i] = det(m) / det;
            }
        }

        private static double det(double[][] m) {
            return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
        }

        String impossible(double[] z, int which) {
            return switch (which) {
                case 0, 1 -> z[0] + z[1] < 0
                        ? text("a PaCO2 of %.0f mmHg at %.1f L/min would need hardly any metabolism or dead space", gas.paco2MmHg(), set.tidalMl() * set.ratePerMin() / 1000)
                        : text("a PaCO2 of %.0f mmHg at %.1f L/min would need a dead space or a metabolism far beyond this illness", gas.paco2MmHg(), set.tidalMl() * set.ratePerMin() / 1000);
                default -> text("the PaO2 would need a shunt of %.0f %%, far from this illness", 100 * shunt(z[2]));
            };
        }

        Result fitted(PatientModel patient, double[] z, SteadyGases at, double missedCo2, double missedO2, double excess) {
            double[] sd = new double[3];
            for (int i = 0; i < 3; i++) sd[i] = Math.sqrt(covariance[i][i]) * Z975;
            Band shunt = band(shunt(z[2]), shunt(z[2] - sd[2]), shunt(z[2] + sd[2]));
            Band vco2 = band(patient.vco2MlPerMin(), prior.vco2MlPerMin() * metabolism(z[0] - sd[0]), prior.vco2MlPerMin() * metabolism(z[0] + sd[0]));
            // what blood and expired gas show as dead space includes what shunt does to PaCO2; the band is that of the alveolar part
            double rest = set.tidalMl() - SeriesDeadSpace.effectiveMl(set.tidalMl(), patient.seriesDeadSpaceMl());
            Band dead = band(at.deadSpaceMl(), at.deadSpaceMl() - rest * (dead(z[1]) - dead(z[1] - sd[1])), at.deadSpaceMl() + rest * (dead(z[1] + sd[1]) - dead(z[1])));
            List<String> said = new ArrayList<>();
            said.add(text("fitted to the blood gas: shunt %.0f %% (%.0f to %.0f) where the sheet has %.0f %%, dead space %.0f mL (%.0f to %.0f), carbon dioxide production %.0f mL/min (%.0f to %.0f), base excess %.0f mmol/L",
                    100 * shunt.central(), 100 * shunt.low(), 100 * shunt.high(), 100 * shuntPrior, dead.central(), dead.low(), dead.high(), vco2.central(), vco2.low(), vco2.high(), excess));
            if (gas.afterMin() < SETTLED_MIN) said.add(text("the blood gas was taken %.0f min after the settings, before carbon dioxide had settled: it counts for less", gas.afterMin()));
            if (gas.pao2MmHg().isEmpty()) said.add("without a PaO2 the shunt is the sheet's");
            String[] what = {"metabolism", "dead space", "shunt"};
            for (int i = 0; i < 3; i++) if (Math.abs(z[i]) > UNUSUAL) said.add(text("the fitted %s is unusual for this illness: check the blood gas and its settings", what[i]));
            return new Result.Fitted(patient, shunt, vco2, dead, missedCo2, missedO2, said);
        }

        private static Band band(double central, double low, double high) {
            return new Band(central, Math.min(central, low), Math.max(central, high));
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
