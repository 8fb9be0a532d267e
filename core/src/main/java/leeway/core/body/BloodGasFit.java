package leeway.core.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import leeway.core.gas.AcidBase;
import leeway.core.gas.AlveolarGas;
import leeway.core.gas.OxygenDissociation;
import leeway.core.kit.Band;
import leeway.core.kit.Illness;
import leeway.core.transport.PatientEntry.BloodGas;

/**
 * The patient in whom this blood gas was most probably taken, and how sure that is.
 * <p>Oxygen uptake, respiratory quotient, alveolar dead space, shunt, poorly ventilated share, cardiac output and base excess
 * are sought together: the most probable values, given the bands of the illness's sheet and the errors of a blood gas (maximum a
 * posteriori, Gauss-Newton), with the curvature there as their joint doubt ({@link Posterior}). Three measurements cannot fix
 * seven values: the prior decides what they leave open, and the bands that come out say so.
 * <p>Leaves out: errors of the volume and oxygen that were set with the gas (they come back while the same device gives the
 * same), and all that changed since the sample was drawn.
 */
public final class BloodGasFit {
    /**
     * Errors of a blood gas as a word on the next hour, one standard deviation: share of PaCO2, share of PaO2, pH. What
     * sample, analyser and a stable patient's own unrest make together: Thorson et al., Chest 1983;84:14, 29 stable
     * ventilated patients, six samples in 50 min: coefficients of variation 3.0 and 5.1 %; pH within a range of 0.03, which
     * over six samples is 2.53 standard deviations. Hess & Agarwal, J Clin Monit 1992;8:111: medians 2.8 and 3.6 %. Both looked up as abstracts.
     */
    private static final double CO2_ERROR = 0.030, O2_ERROR = 0.051, PH_ERROR = 0.03 / 2.53;
    /** Below this time under the settings the gas is no steady state, and its carbon dioxide says less, min. Physiology of the stores; common practice. */
    private static final double SETTLED_MIN = 20, UNSETTLED_ERROR_MMHG = 4;
    /** A value further from the sheet's median than this many standard deviations is worth a word; all of them together beyond the second, and the gas does not belong to this patient. */
    private static final double UNUSUAL = 2.5, IMPOSSIBLE = 6;
    /** Measured and fitted may lie this many standard deviations apart. */
    private static final double APART = 4;
    /** Two unknowns that go together closer than this are worth a word. */
    private static final double TIED = -0.4;
    private static final double STEP = 1e-4;

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
         * @param posterior         all that is known of the exchange now
         */
        record Fitted(PatientModel patient, Band shunt, Band vco2MlPerMin, Band deadSpaceMl, double missedCo2MmHg, double missedO2MmHg, List<String> said, Posterior posterior) implements Result {
            public Fitted { said = List.copyOf(said); }
        }

        /** No living patient under these settings has such a gas; why. */
        record Impossible(String why) implements Result { }
    }

    /** Fits a patient to a gas that was taken at this barometric pressure. */
    public static Result fit(PatientModel prior, Illness illness, BloodGas gas, double barometerMmHg) {
        return fit(prior, illness, false, gas, barometerMmHg);
    }

    /** The same where the cardiac output may have been measured, and is then doubted less. */
    public static Result fit(PatientModel prior, Illness illness, boolean measuredOutput, BloodGas gas, double barometerMmHg) {
        if (!prior.living()) return new Result.Impossible("a test lung has no blood");
        Ventilation set = ventilation(prior, gas, barometerMmHg);
        double hb = prior.haemoglobinGPerDl(), saturation = gas.pao2MmHg().isPresent()
                ? OxygenDissociation.saturation(gas.pao2MmHg().getAsDouble(), gas.ph(), prior.temperatureCel(), prior.p50MmHg()) : 0.95;
        double excess = AcidBase.baseExcessMmolL(gas.ph(), gas.paco2MmHg(), hb, saturation);
        if (!(excess > -30 && excess < 30)) return new Result.Impossible(text("pH %.2f with a PaCO2 of %.0f mmHg would be a base excess of %.0f mmol/L", gas.ph(), gas.paco2MmHg(), excess));
        if (gas.pao2MmHg().isPresent()) {
            double most = AlveolarGas.oxygenMmHg(gas.fio2(), barometerMmHg, gas.paco2MmHg(), 0.8), pao2 = gas.pao2MmHg().getAsDouble();
            if (most <= 0) return new Result.Impossible(text("a PaCO2 of %.0f mmHg leaves no oxygen in the alveoli at %.0f %%", gas.paco2MmHg(), 100 * gas.fio2()));
            if (pao2 > most * 1.03) return new Result.Impossible(text("a PaO2 of %.0f mmHg is more than the %.0f mmHg that %.0f %% oxygen leaves in the alveoli at a PaCO2 of %.0f mmHg", pao2, most, 100 * gas.fio2(), gas.paco2MmHg()));
        }
        Problem problem = new Problem(new SheetDoubt(prior, illness, measuredOutput, set.tidalMl()), gas, set);
        Posterior posterior = problem.solve(excess);
        double[] z = posterior.mode();
        double far = 0;
        for (int i = 0; i < Unknown.BASE_EXCESS.ordinal(); i++) far += z[i] * z[i];
        if (far > IMPOSSIBLE * IMPOSSIBLE) return new Result.Impossible(problem.impossible(z));
        PatientModel fitted = problem.patient(z);
        SteadyGases at = SteadyGases.of(fitted, set);
        if (!at.sustainable()) return new Result.Impossible("lungs and heart that give this gas could not meet the body's need for oxygen");
        double missedCo2 = at.paco2MmHg() - gas.paco2MmHg(), missedO2 = gas.pao2MmHg().isPresent() ? at.pao2MmHg() - gas.pao2MmHg().getAsDouble() : Double.NaN;
        if (Math.abs(missedCo2) > APART * problem.co2Error) return new Result.Impossible(problem.impossible(z));
        if (gas.pao2MmHg().isPresent() && Math.abs(StrictMath.log(at.pao2MmHg() / gas.pao2MmHg().getAsDouble())) > APART * O2_ERROR)
            return new Result.Impossible(text("no shunt explains a PaO2 of %.0f mmHg here; the nearest is %.0f mmHg", gas.pao2MmHg().getAsDouble(), at.pao2MmHg()));
        return problem.fitted(fitted, posterior, at, missedCo2, missedO2);
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

    /** The search for the most probable values: residuals of the gas in its errors, and of the sheet in its bands. */
    private static final class Problem {
        private static final int COUNT = Unknown.values().length, EXCESS = Unknown.BASE_EXCESS.ordinal(), MEASURED = 3, ROWS = MEASURED + COUNT - 1;
        private final SheetDoubt sheet;
        private final BloodGas gas;
        private final Ventilation set;
        private final double co2Error;

        Problem(SheetDoubt sheet, BloodGas gas, Ventilation set) {
            this.sheet = sheet;
            this.gas = gas;
            this.set = set;
            double settled = CO2_ERROR * gas.paco2MmHg();
            co2Error = gas.afterMin() < SETTLED_MIN ? Math.max(settled, UNSETTLED_ERROR_MMHG) : settled;
        }

        PatientModel patient(double[] z) {
            return sheet.patient.with(sheet.change(z, new double[COUNT]));
        }

        /** The gas alone: PaCO2, PaO2 (0 where nobody measured it), pH, in their errors. */
        private double[] misses(double[] z) {
            SteadyGases g = SteadyGases.of(patient(z), set);
            double[] r = new double[MEASURED];
            r[0] = (g.paco2MmHg() - gas.paco2MmHg()) / co2Error;
            r[1] = gas.pao2MmHg().isPresent() ? StrictMath.log(g.pao2MmHg() / gas.pao2MmHg().getAsDouble()) / O2_ERROR : 0;
            r[2] = (g.ph() - gas.ph()) / PH_ERROR;
            return r;
        }

        private double[] residuals(double[] z) {
            double[] r = Arrays.copyOf(misses(z), ROWS);
            for (int i = 0; i < EXCESS; i++) r[MEASURED + i] = z[i];   // base excess comes last and has no prior
            return r;
        }

        private static double sum(double[] r) {
            double sum = 0;
            for (double v : r) sum += v * v;
            return sum;
        }

        /** Gauss-Newton with halved steps, at most 60; then the curvature. */
        Posterior solve(double excess) {
            double[] z = new double[COUNT];
            z[EXCESS] = excess;
            double[] r = residuals(z);
            double[][] j = slopes(z, r);
            for (int step = 0; step < 60; step++) {
                double[] b = new double[COUNT];
                for (int i = 0; i < COUNT; i++) for (int k = 0; k < ROWS; k++) b[i] -= j[k][i] * r[k];
                double[] d = Cholesky.solve(Cholesky.root(normal(j)), b);
                double longest = 0;
                for (int i = 0; i < EXCESS; i++) longest = Math.max(longest, Math.abs(d[i]));
                double t = longest > 2 ? 2 / longest : 1, moved = 0;
                double[] next = z, nr = r;
                for (int half = 0; half < 12; half++, t *= 0.5) {
                    next = new double[COUNT];
                    for (int i = 0; i < COUNT; i++) next[i] = z[i] + t * d[i];
                    nr = residuals(next);
                    if (sum(nr) < sum(r) + 1e-12) break;
                }
                if (sum(nr) > sum(r)) break;
                for (int i = 0; i < COUNT; i++) moved += Math.abs(next[i] - z[i]);
                z = next;
                r = nr;
                j = slopes(z, r);
                if (moved < 1e-6) break;
            }
            return new Posterior(sheet, z, Cholesky.inverse(Cholesky.root(normal(j))), this::misses, Arrays.copyOf(j, MEASURED));
        }

        private double[][] slopes(double[] z, double[] r) {
            double[][] j = new double[ROWS][COUNT];
            for (int i = 0; i < COUNT; i++) {
                double[] up = z.clone();
                up[i] += STEP;
                double[] ru = residuals(up);
                for (int k = 0; k < ROWS; k++) j[k][i] = (ru[k] - r[k]) / STEP;
            }
            return j;
        }

        private static double[][] normal(double[][] j) {
            double[][] a = new double[COUNT][COUNT];
            for (int i = 0; i < COUNT; i++) for (int k = 0; k < COUNT; k++) for (double[] row : j) a[i][k] += row[i] * row[k];
            return a;
        }

        /** Standard deviation of a figure of the patient under the gas's settings. */
        private double deviation(Posterior posterior, ToDoubleFunction<SteadyGases> figure) {
            double[] mode = posterior.mode(), slope = new double[COUNT];
            double at = figure.applyAsDouble(SteadyGases.of(patient(mode), set));
            for (int i = 0; i < COUNT; i++) {
                double[] up = mode.clone();
                up[i] += STEP;
                slope[i] = (figure.applyAsDouble(SteadyGases.of(patient(up), set)) - at) / STEP;
            }
            return posterior.deviation(slope);
        }

        /** Why no such patient is likely, by what would have to give most. */
        String impossible(double[] z) {
            double co2 = Math.abs(z[0]) + Math.abs(z[1]) + Math.abs(z[2]), o2 = Math.abs(z[3]) + Math.abs(z[4]) + Math.abs(z[5]), minuteL = set.tidalMl() * set.ratePerMin() / 1000;
            if (o2 > co2) return text("the PaO2 of %.0f mmHg would need a shunt of %.0f %%, far from this illness", gas.pao2MmHg().orElse(Double.NaN), 100 * sheet.shunt(z));
            return z[0] + z[2] < 0 ? text("a PaCO2 of %.0f mmHg at %.1f L/min would need hardly any metabolism or dead space", gas.paco2MmHg(), minuteL)
                    : text("a PaCO2 of %.0f mmHg at %.1f L/min would need a dead space or a metabolism far beyond this illness", gas.paco2MmHg(), minuteL);
        }

        Result fitted(PatientModel patient, Posterior posterior, SteadyGases at, double missedCo2, double missedO2) {
            double[] z = posterior.mode();
            int s = Unknown.SHUNT.ordinal();
            Band shunt = band(sheet.shunt(z), sheet.shunt(posterior.at(s, -SheetDoubt.Z975)), sheet.shunt(posterior.at(s, SheetDoubt.Z975)));
            double co2 = StrictMath.exp(SheetDoubt.Z975 * deviation(posterior, g -> StrictMath.log(g.vco2MlPerMin())));
            Band vco2 = band(patient.vco2MlPerMin(), patient.vco2MlPerMin() / co2, patient.vco2MlPerMin() * co2);
            double ml = SheetDoubt.Z975 * deviation(posterior, SteadyGases::deadSpaceMl);
            Band dead = band(at.deadSpaceMl(), Math.max(patient.seriesDeadSpaceMl() * 0.5, at.deadSpaceMl() - ml), Math.min(set.tidalMl(), at.deadSpaceMl() + ml));
            List<String> said = new ArrayList<>();
            said.add(text("fitted to the blood gas: shunt %.0f %% (%.0f to %.0f) where the sheet has %.0f %%, dead space %.0f mL (%.0f to %.0f), carbon dioxide production %.0f mL/min (%.0f to %.0f), base excess %.0f mmol/L",
                    100 * shunt.central(), 100 * shunt.low(), 100 * shunt.high(), 100 * sheet.patient.shunt(), dead.central(), dead.low(), dead.high(), vco2.central(), vco2.low(), vco2.high(), patient.baseExcessMmolL()));
            if (posterior.correlation(Unknown.OXYGEN_UPTAKE, Unknown.DEAD_SPACE) < TIED) said.add("the blood gas ties dead space and carbon dioxide production: the more of one, the less of the other; it cannot tell how much of each");
            if (gas.afterMin() < SETTLED_MIN) said.add(text("the blood gas was taken %.0f min after the settings, before carbon dioxide had settled: it counts for less", gas.afterMin()));
            if (gas.pao2MmHg().isEmpty()) said.add("without a PaO2 the shunt is the sheet's");
            for (Unknown u : List.of(Unknown.OXYGEN_UPTAKE, Unknown.DEAD_SPACE, Unknown.SHUNT))
                if (Math.abs(z[u.ordinal()]) > UNUSUAL) said.add(text("the fitted %s is unusual for this illness: check the blood gas and its settings", u.words()));
            return new Result.Fitted(patient, shunt, vco2, dead, missedCo2, missedO2, said, posterior);
        }

        private static Band band(double central, double low, double high) {
            return new Band(central, Math.min(central, low), Math.max(central, high));
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
