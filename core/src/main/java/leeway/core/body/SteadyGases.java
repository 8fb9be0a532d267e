package leeway.core.body;

import java.util.Arrays;
import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;
import leeway.core.gas.GasVolume;

/**
 * Where the gases settle under a ventilation that does not change: mass balance of oxygen, carbon dioxide and nitrogen, the
 * real dissociation curves, series and alveolar dead space, shunt, one poorly ventilated compartment and, where the patient
 * has it, a spread of ventilation over perfusion.
 * <p>Leaves out: the road to it (carbon dioxide takes half an hour and more), and the waves within a breath.
 * Where the body asks for more oxygen than lung and heart can bring, uptake is cut to what they can, and {@code sustainable} is false.
 * <p>Of a test lung every tension is {@code NaN}: it has none, and {@code living} says so.
 *
 * @param etco2MmHg          mixed alveolar gas at the mouth's end of an expiration
 * @param palvO2MmHg         in the well ventilated lung; the mean by ventilation where it has a spread
 * @param deadSpaceMl        physiological, all of it: VT − 863·VCO2/(rate·PaCO2)
 * @param sustainable        false: uptake had to be cut, this patient gets worse
 */
public record SteadyGases(double paco2MmHg, double etco2MmHg, double palvO2MmHg, double pao2MmHg, double sao2, double ph, double bicarbonateMmolL,
        double mixedVenousSaturation, double mixedExpiredCo2MmHg, double deadSpaceMl, double cardiacOutputLPerMin, double vo2MlPerMin, double vco2MlPerMin,
        boolean sustainable, boolean living, Start start) {

    /** Largest share of the arterial oxygen that tissues can take. The need is no longer met from 0.6 to 0.7 on; from memory. */
    static final double LARGEST_EXTRACTION = 0.75;

    /**
     * The same state as gas exchange in time starts from: contents in mL/dL, tensions of each of {@link Compartments} in mmHg, shares of expired gas.
     */
    record Start(double arterialO2, double arterialCo2, double venousO2, double venousCo2, double[] partO2MmHg, double[] partCo2MmHg, double expiredO2, double expiredCo2) { }

    public static SteadyGases of(PatientModel patient, Ventilation ventilation) {
        return of(patient, ventilation, new Compartments(patient));
    }

    static SteadyGases of(PatientModel patient, Ventilation ventilation, Compartments parts) {
        if (!patient.living()) {
            double none = Double.NaN;
            return new SteadyGases(none, none, none, none, none, none, none, none, none, none, 0, 0, 0, true, false,
                    new Start(0, 0, 0, 0, new double[0], new double[0], ventilation.fio2(), 0));
        }
        Solver solver = new Solver(patient, ventilation, parts);
        SteadyGases full = solver.at(1);
        if (full != null) return full;
        double low = 0, high = 1;
        SteadyGases best = null;
        for (int i = 0; i < 20; i++) {
            double mid = 0.5 * (low + high);
            SteadyGases tried = solver.at(mid);
            if (tried != null) {
                best = tried;
                low = mid;
            } else {
                high = mid;
            }
        }
        return best != null ? best : solver.nothing();
    }

    /** One patient and ventilation; the share of the oxygen need that is met is the argument. */
    private static final class Solver {
        private final PatientModel patient;
        private final Ventilation ventilation;
        private final Blood blood;
        private final Compartments parts;
        private final BloodPoint[] part;
        private final BloodPoint main, artery = new BloodPoint();
        private final double dry, perMl, series, dead, output, bloodDl;
        // a minute's gas, mL STPD: fresh and rebreathed, to the perfused lung and to the alveolar dead space
        private final double freshAll, backAll, freshMain, backMain;

        Solver(PatientModel patient, Ventilation ventilation, Compartments parts) {
            this.patient = patient;
            this.ventilation = ventilation;
            blood = patient.blood();
            this.parts = parts;
            part = new BloodPoint[parts.count];
            for (int k = 0; k < part.length; k++) part[k] = new BloodPoint();
            main = part[0];
            dry = ventilation.barometerMmHg() - GasVolume.BODY_WATER_MMHG;
            perMl = dry / GasVolume.STPD_DIVISOR;
            double vt = ventilation.tidalMl(), f = ventilation.ratePerMin();
            series = SeriesDeadSpace.effectiveMl(vt, patient.seriesDeadSpaceMl());
            dead = patient.alveolarDeadSpaceAt(vt);
            freshAll = f * (vt - series) * perMl;
            backAll = f * series * perMl;
            double toDead = f * dead * vt * perMl, freshDead = Math.min(toDead, freshAll);
            freshMain = freshAll - freshDead;
            backMain = backAll - (toDead - freshDead);
            output = patient.cardiacOutputLPerMin() * patient.outputTimes(ventilation.meanAlveolarCmH2O());
            bloodDl = output * 10;
        }

        /** The steady state when this share of the need is met; null where that cannot be. */
        SteadyGases at(double share) {
            double vo2 = share * patient.vo2MlPerMin(), vco2 = share * patient.vco2MlPerMin(), fio2 = ventilation.fio2();
            double out = freshAll - vo2 + vco2;
            double shares = freshMain + backMain - vo2 + vco2;
            if (!(out > 0 && shares > 0)) return null;
            double expiredO2 = (freshAll * fio2 - vo2) / out, expiredCo2 = vco2 / out;
            if (!(expiredO2 > 0 && expiredCo2 < 0.5)) return null;
            double inO2 = freshMain * fio2 + backMain * expiredO2, inCo2 = backMain * expiredCo2, in = freshMain + backMain;
            double q = bloodDl * (1 - patient.shunt());
            // as if all perfused lung were alike
            double po2 = (inO2 - vo2) / shares * dry, pco2 = (inCo2 + vco2) / shares * dry;
            if (!(po2 > 0.5 && pco2 > 0.1 && pco2 < 400)) return null;
            main.ofTensions(blood, po2, pco2);
            double venousO2 = main.oxygenMlPerDl - vo2 / q, venousCo2 = main.carbonDioxideMlPerDl + vco2 / q;
            double capillaryO2 = main.oxygenMlPerDl, capillaryCo2 = main.carbonDioxideMlPerDl;
            double[] partO2 = new double[part.length], partCo2 = new double[part.length];
            Arrays.fill(partO2, po2);
            Arrays.fill(partCo2, pco2);
            double alveolarO2 = main.po2MmHg;
            if (parts.perfusion[0] < 1) {
                for (int k = 1; k < part.length; k++) {
                    part[k].u = k == 1 ? main.u - 0.5 : main.u;
                    part[k].h = main.h;
                }
                venousO2 = Math.max(0.05, venousO2);
                // Broyden: slopes by differences once, then bent by each step; taken afresh where a step did not help
                double step = 1e-4, g1 = 0, g2 = 0, j11 = 0, j12 = 0, j21 = 0, j22 = 0;
                boolean settled = false, known = false;
                g1 = take(inO2, inCo2, in, q, venousO2, venousCo2) - vo2;
                g2 = lastCo2 + vco2;
                for (int tried = 0; tried < 40 && !settled; tried++) {
                    if (!known) {
                        double a1 = take(inO2, inCo2, in, q, venousO2 + step, venousCo2) - vo2, a2 = lastCo2 + vco2;
                        double b1 = take(inO2, inCo2, in, q, venousO2, venousCo2 + step) - vo2, b2 = lastCo2 + vco2;
                        j11 = (a1 - g1) / step;
                        j21 = (a2 - g2) / step;
                        j12 = (b1 - g1) / step;
                        j22 = (b2 - g2) / step;
                        known = true;
                    }
                    double det = j11 * j22 - j12 * j21;
                    double dO2 = Math.max(-3, Math.min(3, -(g1 * j22 - g2 * j12) / det)), dCo2 = Math.max(-6, Math.min(6, -(j11 * g2 - j21 * g1) / det));
                    double next = venousO2 + dO2;
                    if (next < 0.01) next = 0.5 * (venousO2 + 0.01);
                    dO2 = next - venousO2;
                    settled = Math.abs(dO2) < 1e-8 && Math.abs(dCo2) < 1e-7;
                    venousO2 = next;
                    venousCo2 += dCo2;
                    double n1 = take(inO2, inCo2, in, q, venousO2, venousCo2) - vo2, n2 = lastCo2 + vco2;
                    double length = dO2 * dO2 + dCo2 * dCo2;
                    known = Math.abs(n1) + Math.abs(n2) < 0.3 * (Math.abs(g1) + Math.abs(g2)) && length > 0;
                    if (known) {
                        double e1 = (n1 - g1 - j11 * dO2 - j12 * dCo2) / length, e2 = (n2 - g2 - j21 * dO2 - j22 * dCo2) / length;
                        j11 += e1 * dO2;
                        j12 += e1 * dCo2;
                        j21 += e2 * dO2;
                        j22 += e2 * dCo2;
                    }
                    g1 = n1;
                    g2 = n2;
                }
                if (!settled) return null;
                capillaryO2 = capillaryCo2 = alveolarO2 = 0;
                double air = 0;
                for (int k = 0; k < part.length; k++) {
                    if (!(parts.perfusion[k] > 0)) continue;
                    capillaryO2 += parts.perfusion[k] * part[k].oxygenMlPerDl;
                    capillaryCo2 += parts.perfusion[k] * part[k].carbonDioxideMlPerDl;
                    partO2[k] = part[k].po2MmHg;
                    partCo2[k] = part[k].pco2MmHg;
                    if (k == 1) continue;
                    alveolarO2 += parts.ventilation[k] * partO2[k];
                    air += parts.ventilation[k];
                }
                alveolarO2 /= air;
            }
            double s = patient.shunt();
            double arterialO2 = (1 - s) * capillaryO2 + s * venousO2, arterialCo2 = (1 - s) * capillaryCo2 + s * venousCo2;
            if (vo2 > LARGEST_EXTRACTION * bloodDl * arterialO2 || venousO2 <= 0) return null;
            artery.u = main.u;
            artery.h = main.h;
            artery.ofContents(blood, arterialO2, arterialCo2);
            double pao2 = artery.po2MmHg, paco2 = artery.pco2MmHg, sao2 = artery.saturation, ph = artery.ph(), bicarbonate = artery.bicarbonateMmolL;
            artery.ofContents(blood, venousO2, venousCo2);
            double vt = ventilation.tidalMl(), f = ventilation.ratePerMin();
            double mixedExpired = vco2 / (f * vt * perMl - vo2 + vco2) * dry;
            return new SteadyGases(paco2, expiredCo2 * dry, alveolarO2, pao2, sao2, ph, bicarbonate, artery.saturation, mixedExpired,
                    vt - GasVolume.STPD_DIVISOR * vco2 / (f * paco2), output, vo2, vco2, share == 1, true,
                    new Start(arterialO2, arterialCo2, venousO2, venousCo2, partO2, partCo2, expiredO2, expiredCo2));
        }

        private double lastCo2;

        /** Oxygen that all compartments give to this venous blood in a minute; carbon dioxide, counted the same way, in {@code lastCo2}. */
        private double take(double inO2, double inCo2, double in, double q, double venousO2, double venousCo2) {
            double o2 = 0, co2 = 0;
            for (int k = 0; k < part.length; k++) {
                double dl = q * parts.perfusion[k], air = parts.ventilation[k];
                if (!(dl > 0)) continue;
                part[k].ofExchange(blood, air * inO2, air * inCo2, air * in, dl, venousO2, venousCo2, dry);
                o2 += dl * (part[k].oxygenMlPerDl - venousO2);
                co2 += dl * (part[k].carbonDioxideMlPerDl - venousCo2);
            }
            lastCo2 = co2;
            return o2;
        }

        /** No ventilation to speak of: blood as it would be with hardly any oxygen; a start for time, not a state to live in. */
        SteadyGases nothing() {
            artery.ofTensions(blood, 15, 120);
            double o2 = artery.oxygenMlPerDl, co2 = artery.carbonDioxideMlPerDl;
            double[] partO2 = new double[part.length], partCo2 = new double[part.length];
            Arrays.fill(partO2, 15);
            Arrays.fill(partCo2, 120);
            return new SteadyGases(120, 0, 15, 15, artery.saturation, artery.ph(), artery.bicarbonateMmolL, artery.saturation, 0, ventilation.tidalMl(), output, 0, 0, false, true,
                    new Start(o2, co2, o2, co2, partO2, partCo2, 15 / dry, 120 / dry));
        }
    }
}
