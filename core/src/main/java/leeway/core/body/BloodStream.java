package leeway.core.body;

import static leeway.core.body.GasSlot.*;

import leeway.core.gas.Blood;
import leeway.core.gas.BloodPoint;

/**
 * Blood on its way round: arteries, three tissues with their stores of carbon dioxide, each with its own veins, the large
 * veins where they meet. Plug and mixing in tanks, so that a slow circulation also delays, and a short road comes back first. First order in time, exactly conservative.
 * <p>Leaves out: oxygen bound in muscle, nitrogen in blood and tissue, fat and bone, which take hours.
 */
final class BloodStream {
    /**
     * Stores beside their blood, mL/mmHg per kg of lean weight, shares of the output and of the carbon dioxide made: rich in
     * vessels, organs, muscle. Sum 1.02 after Farhi & Rahn, J Appl Physiol 1955 (looked up in a copy); the split reproduces
     * the published rise in anaesthetised apnoea, and was worked out for it beforehand.
     */
    static final double[] STORE = {0.12, 0.26, 0.64}, FLOW = {0.50, 0.36, 0.14}, MADE_SHARE = {0.50, 0.30, 0.20};
    /** Shares of the blood volume: from the lung to the place of an arterial sample (6 s at rest; 6 to 8 s to the neck, from memory), the rest of the arteries, the large veins with the right heart (18 % without the heart: ICRP, as restated in BEIR VI, annex; looked up). A quarter is arterial; from memory. */
    private static final double WAY_SHARE = 0.10, ARTERY_SHARE = 0.15, LARGE_VEIN_SHARE = 0.24;
    /** Shares of the blood volume in the small veins and capillaries of each tissue: kidneys, brain, heart 4 %; gut, liver, spleen 17 %; muscle, skin, fat, bone 30 %. After ICRP publication 89, reference adult; from memory. */
    private static final double[] VEIN_SHARE = {0.04, 0.17, 0.30};

    private final double[] store = new double[3];
    private final double[] veinDl = new double[3];
    private final double wayDl, arteryDl, largeVeinDl;

    BloodStream(PatientModel patient) {
        double lean = patient.weightKg() <= patient.predictedKg() ? patient.weightKg() : patient.predictedKg() + (patient.weightKg() - patient.predictedKg()) / 3;
        for (int i = 0; i < 3; i++) store[i] = STORE[i] * lean;
        wayDl = WAY_SHARE * patient.bloodVolumeMl() / 100;
        arteryDl = ARTERY_SHARE * patient.bloodVolumeMl() / 100;
        for (int i = 0; i < 3; i++) veinDl[i] = VEIN_SHARE[i] * patient.bloodVolumeMl() / 100;
        largeVeinDl = LARGE_VEIN_SHARE * patient.bloodVolumeMl() / 100;
    }

    /** The longest step that the arteries bear, s, at an output in dL/s. */
    double longestS(double dlPerS) {
        return arteryDl / dlPerS;
    }

    /** Contents as in the steady state; tissue stores by the blood that leaves them. */
    void begin(double[] y, int at, Blood blood, BloodPoint point, SteadyGases steady) {
        SteadyGases.Start s = steady.start();
        y[at + ARTERY] = y[at + SAMPLE] = s.arterialO2();
        y[at + ARTERY + 1] = y[at + SAMPLE + 1] = s.arterialCo2();
        y[at + PARCELS] = 1;
        y[at + PARCELS + 1] = wayDl;
        y[at + PARCELS + 2] = s.arterialO2();
        y[at + PARCELS + 3] = s.arterialCo2();
        y[at + LARGE_VEIN] = s.venousO2();
        y[at + LARGE_VEIN + 1] = s.venousCo2();
        double difference = s.venousCo2() - s.arterialCo2();
        for (int i = 0; i < 3; i++) {
            double own = s.arterialCo2() + difference * MADE_SHARE[i] / FLOW[i];
            y[at + VEIN + 2 * i] = s.venousO2();
            y[at + VEIN + 2 * i + 1] = own;
            point.ofContents(blood, s.venousO2(), own);
            y[at + TISSUE + i] = store[i] * point.pco2MmHg;
            Warm.begin(y, at + WARM + Warm.EACH * (WARM_TISSUE + i), point);
        }
    }

    /**
     * Tissues and veins over one step; the arteries give what stands in their last tank. The last vein then holds what comes to the lung.
     *
     * @param dl   blood that passes, dL
     * @param need oxygen that the tissues would use, and carbon dioxide that they make, mL
     */
    void tissues(double[] y, int at, Blood blood, BloodPoint point, double dl, double need, double made) {
        double o2 = y[at + ARTERY], co2 = y[at + ARTERY + 1];
        double used = Math.min(need, SteadyGases.LARGEST_EXTRACTION * dl * o2);
        double leftO2 = dl > 0 ? o2 - used / dl : o2, meetO2 = 0, meetCo2 = 0;
        for (int i = 0; i < 3; i++) {
            double q = dl * FLOW[i], held = y[at + TISSUE + i] + made * MADE_SHARE[i];
            if (q > 0) {
                int warm = at + WARM + Warm.EACH * (WARM_TISSUE + i);
                Warm.recall(y, warm, point);
                point.ofTissue(blood, leftO2, store[i], q, held + q * co2);
                Warm.keep(y, warm, point);
                meetO2 += FLOW[i] * mix(y, at + VEIN + 2 * i, veinDl[i], q, leftO2);
                meetCo2 += FLOW[i] * mix(y, at + VEIN + 2 * i + 1, veinDl[i], q, point.carbonDioxideMlPerDl);
                held += q * (co2 - point.carbonDioxideMlPerDl);
            }
            y[at + TISSUE + i] = held;
        }
        y[at + USED] += used;
        y[at + MADE] += made;
        if (!(dl > 0)) return;
        mix(y, at + LARGE_VEIN, largeVeinDl, dl, meetO2);
        mix(y, at + LARGE_VEIN + 1, largeVeinDl, dl, meetCo2);
    }

    private static double mix(double[] y, int slot, double tankDl, double dl, double in) {
        return y[slot] = (tankDl * y[slot] + dl * in) / (tankDl + dl);
    }

    /** Blood of these contents comes from the lung; as much goes on past the place of the sample; the last artery loses what the tissues got in this step. */
    void arteries(double[] y, int at, double dl, double o2, double co2) {
        int first = at + PARCELS + 1, count = (int) y[at + PARCELS];
        if (count == MOST_PARCELS) {   // the two youngest become one
            int a = first + 3 * (count - 2), b = a + 3;
            double both = y[a] + y[b];
            y[a + 1] = (y[a] * y[a + 1] + y[b] * y[b + 1]) / both;
            y[a + 2] = (y[a] * y[a + 2] + y[b] * y[b + 2]) / both;
            y[a] = both;
            count--;
        }
        int young = first + 3 * count++;
        y[young] = dl;
        y[young + 1] = o2;
        y[young + 2] = co2;
        double left = dl, outO2 = 0, outCo2 = 0;
        int gone = 0;
        for (int p = first; left > 0 && gone < count; p += 3) {
            double part = Math.min(left, y[p]);
            outO2 += part * y[p + 1];
            outCo2 += part * y[p + 2];
            left -= part;
            y[p] -= part;
            if (y[p] > 0) break;
            gone++;
        }
        if (gone > 0) {
            for (int k = 0; k < 3 * (count - gone); k++) y[first + k] = y[first + 3 * gone + k];
            count -= gone;
        }
        y[at + PARCELS] = count;
        y[at + SAMPLE] = outO2 / dl;
        y[at + SAMPLE + 1] = outCo2 / dl;
        y[at + ARTERY] += dl / arteryDl * (outO2 / dl - y[at + ARTERY]);
        y[at + ARTERY + 1] += dl / arteryDl * (outCo2 / dl - y[at + ARTERY + 1]);
    }

    /** Oxygen (0) or carbon dioxide (1) in blood and tissue, mL. */
    double held(double[] y, int at, int gas) {
        double sum = arteryDl * y[at + ARTERY + gas];
        sum += largeVeinDl * y[at + LARGE_VEIN + gas];
        for (int k = 0; k < 3; k++) sum += veinDl[k] * y[at + VEIN + 2 * k + gas];
        for (int p = 0; p < (int) y[at + PARCELS]; p++) sum += y[at + PARCELS + 1 + 3 * p] * y[at + PARCELS + 2 + 3 * p + gas];
        if (gas == 1) for (int i = 0; i < 3; i++) sum += y[at + TISSUE + i];
        return sum;
    }
}
