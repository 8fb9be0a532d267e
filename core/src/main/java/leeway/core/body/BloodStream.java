package leeway.core.body;

import static leeway.core.body.GasSlot.*;

import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;

/**
 * Blood on its way round: arteries, three tissues with their stores of carbon dioxide, veins. Plug and mixing in a row of
 * tanks, so that a slow circulation also delays. First order in time, exactly conservative.
 * <p>Leaves out: oxygen bound in muscle, nitrogen in blood and tissue, fat and bone, which take hours.
 */
final class BloodStream {
    /**
     * Stores beside their blood, mL/mmHg per kg of lean weight, shares of the output and of the carbon dioxide made: rich in
     * vessels, organs, muscle. Sum 1.02 after Farhi & Rahn, J Appl Physiol 1955 (looked up in a copy); the split reproduces
     * the published rise in anaesthetised apnoea, and was worked out for it beforehand.
     */
    static final double[] STORE = {0.12, 0.26, 0.64}, FLOW = {0.50, 0.36, 0.14}, MADE_SHARE = {0.50, 0.30, 0.20};
    /** Shares of the blood volume: to the place of an arterial sample in two, then the rest of the arteries; veins in three. A quarter is arterial; from memory. */
    private static final double[] ARTERY_SHARE = {0.05, 0.05, 0.15};
    private static final double VEIN_SHARE = 0.25;

    private final double[] arteryDl = new double[3], store = new double[3];
    private final double veinDl;

    BloodStream(PatientModel patient) {
        double lean = patient.weightKg() <= patient.predictedKg() ? patient.weightKg() : patient.predictedKg() + (patient.weightKg() - patient.predictedKg()) / 3;
        for (int i = 0; i < 3; i++) {
            arteryDl[i] = ARTERY_SHARE[i] * patient.bloodVolumeMl() / 100;
            store[i] = STORE[i] * lean;
        }
        veinDl = VEIN_SHARE * patient.bloodVolumeMl() / 100;
    }

    /** The longest step that the arteries bear, s, at an output in dL/s. */
    double longestS(double dlPerS) {
        return arteryDl[2] / dlPerS;
    }

    /** Contents as in the steady state; tissue stores by the blood that leaves them. */
    void begin(double[] y, int at, Blood blood, BloodPoint point, SteadyGases steady) {
        SteadyGases.Start s = steady.start();
        for (int k = 0; k < 3; k++) {
            y[at + ARTERY + 2 * k] = s.arterialO2();
            y[at + ARTERY + 2 * k + 1] = s.arterialCo2();
            y[at + VEIN + 2 * k] = s.venousO2();
            y[at + VEIN + 2 * k + 1] = s.venousCo2();
        }
        double difference = s.venousCo2() - s.arterialCo2();
        for (int i = 0; i < 3; i++) {
            point.ofContents(blood, s.venousO2(), s.arterialCo2() + difference * MADE_SHARE[i] / FLOW[i]);
            y[at + TISSUE + i] = store[i] * point.pco2MmHg;
            y[at + WARM + 2 * (WARM_TISSUE + i)] = point.u;
            y[at + WARM + 2 * (WARM_TISSUE + i) + 1] = point.h;
        }
    }

    /**
     * Tissues and veins over one step; the arteries give what stands in their last tank. The last vein then holds what comes to the lung.
     *
     * @param dl   blood that passes, dL
     * @param need oxygen that the tissues would use, and carbon dioxide that they make, mL
     */
    void tissues(double[] y, int at, Blood blood, BloodPoint point, double dl, double need, double made) {
        double o2 = y[at + ARTERY + 4], co2 = y[at + ARTERY + 5];
        double used = Math.min(need, SteadyGases.LARGEST_EXTRACTION * dl * o2);
        double leftO2 = dl > 0 ? o2 - used / dl : o2, leftCo2 = 0;
        for (int i = 0; i < 3; i++) {
            double q = dl * FLOW[i], held = y[at + TISSUE + i] + made * MADE_SHARE[i];
            if (q > 0) {
                int warm = at + WARM + 2 * (WARM_TISSUE + i);
                point.u = y[warm];
                point.h = y[warm + 1];
                point.ofTissue(blood, leftO2, store[i], q, held + q * co2);
                y[warm] = point.u;
                y[warm + 1] = point.h;
                leftCo2 += FLOW[i] * point.carbonDioxideMlPerDl;
                held += q * (co2 - point.carbonDioxideMlPerDl);
            }
            y[at + TISSUE + i] = held;
        }
        y[at + USED] += used;
        y[at + MADE] += made;
        if (!(dl > 0)) return;
        for (int k = 0; k < 3; k++) {
            leftO2 = mix(y, at + VEIN + 2 * k, veinDl, dl, leftO2);
            leftCo2 = mix(y, at + VEIN + 2 * k + 1, veinDl, dl, leftCo2);
        }
    }

    private static double mix(double[] y, int slot, double tankDl, double dl, double in) {
        return y[slot] = (tankDl * y[slot] + dl * in) / (tankDl + dl);
    }

    /** Blood of these contents comes from the lung; the last artery loses what the tissues got in this step. */
    void arteries(double[] y, int at, double dl, double o2, double co2) {
        double beforeO2 = y[at + ARTERY + 4], beforeCo2 = y[at + ARTERY + 5];
        for (int k = 0; k < 2; k++) {
            o2 = mix(y, at + ARTERY + 2 * k, arteryDl[k], dl, o2);
            co2 = mix(y, at + ARTERY + 2 * k + 1, arteryDl[k], dl, co2);
        }
        y[at + ARTERY + 4] = beforeO2 + dl / arteryDl[2] * (o2 - beforeO2);
        y[at + ARTERY + 5] = beforeCo2 + dl / arteryDl[2] * (co2 - beforeCo2);
    }

    /** Oxygen (0) or carbon dioxide (1) in blood and tissue, mL. */
    double held(double[] y, int at, int gas) {
        double sum = 0;
        for (int k = 0; k < 3; k++) sum += arteryDl[k] * y[at + ARTERY + 2 * k + gas] + veinDl * y[at + VEIN + 2 * k + gas];
        if (gas == 1) for (int i = 0; i < 3; i++) sum += y[at + TISSUE + i];
        return sum;
    }
}
