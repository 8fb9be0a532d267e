package leeway.core.body;

/**
 * How the perfused lung is divided: each compartment has a share of its ventilation and a share of its blood, both summing to 1.
 * <p>The first is the well ventilated lung, the second the poorly ventilated one ({@link PatientModel#LOW_RATIO}). Where the
 * patient has a spread of ventilation over perfusion, the first becomes {@value #NODES} compartments: their ratios of inspired
 * gas to blood are lognormal over the blood flow with the spread as standard deviation of the natural logarithm, after West,
 * Respir Physiol 1969;7:88 (from memory; his are of expired gas); then the ventilation is lognormal too, with the same spread.
 * Healthy 0.3 to 0.6, moderately ill about 1, severely 1.5 to 2 (Gea, Anesthesiology 1991;75:782, abstract: normal 0.3 to 0.6, pneumonia 1.04 breathing and 1.40 ventilated). The
 * points and weights are those of Gauss and Hermite, so that the moments of both are exact. Gas volume is shared out as blood
 * is; a compartment whose blood takes more than its breath brings draws the rest from its neighbours.
 * <p>Leaves out other shapes, and that blood moves away from poorly ventilated lung (hypoxic vasoconstriction).
 */
final class Compartments {
    /** Points of the lognormal; ten of them come within 5 % or 2 mmHg of the PaO2 of sixty, at a spread of 2 within 10 % (CompartmentsTest). */
    static final int NODES = 10;
    private static final double[] POINT = new double[NODES], WEIGHT = new double[NODES];

    static {
        hermite(POINT, WEIGHT);
    }

    final int count;
    final double[] ventilation, perfusion;
    /** Where compartment k keeps its gas and the end of its last search, offsets into {@link GasSlot}. */
    final int[] gas, warm;
    /** State that they need beyond {@link GasSlot#COUNT}. */
    final int extra;

    Compartments(PatientModel patient) {
        this(patient, POINT, WEIGHT);
    }

    Compartments(PatientModel patient, double[] point, double[] weight) {
        double low = patient.lowVentilationShare(), lowAir = patient.lowVentilation(), spread = patient.spread();
        int more = spread > 0 ? point.length - 1 : 0;
        count = 2 + more;
        ventilation = new double[count];
        perfusion = new double[count];
        gas = new int[count];
        warm = new int[count];
        extra = (3 + Warm.EACH) * more;
        gas[0] = GasSlot.MAIN;
        gas[1] = GasSlot.LOW;
        warm[0] = GasSlot.WARM + Warm.EACH * GasSlot.WARM_MAIN;
        warm[1] = GasSlot.WARM + Warm.EACH * GasSlot.WARM_LOW;
        for (int k = 2; k < count; k++) {
            gas[k] = GasSlot.COUNT + 3 * (k - 2);
            warm[k] = GasSlot.COUNT + 3 * more + Warm.EACH * (k - 2);
        }
        ventilation[1] = lowAir;
        perfusion[1] = low;
        if (more == 0) {
            ventilation[0] = 1 - lowAir;
            perfusion[0] = 1 - low;
            return;
        }
        double sum = 0;
        for (int i = 0; i < point.length; i++) sum += weight[i] * StrictMath.exp(spread * point[i]);
        for (int i = 0; i < point.length; i++) {
            int k = i == 0 ? 0 : i + 1;
            perfusion[k] = (1 - low) * weight[i];
            ventilation[k] = (1 - lowAir) * weight[i] * StrictMath.exp(spread * point[i]) / sum;
        }
    }

    /** Points and weights for a standard normal: the zeros of Hermite's polynomial, from the middle outwards. Newton from the zeros' interlacing; the classical algorithm, from memory, held to the moments by a test. */
    static void hermite(double[] point, double[] weight) {
        int n = point.length;
        double[] zero = new double[n];
        for (int i = 0; i < (n + 1) / 2; i++) {
            // the largest first; guesses after Stroud & Secrest
            double z = i == 0 ? StrictMath.sqrt(2 * n + 1) - 1.85575 * StrictMath.pow(2 * n + 1, -1.0 / 6)
                    : i == 1 ? zero[0] - 1.14 * StrictMath.pow(n, 0.426) / zero[0] : i == 2 ? 1.86 * zero[1] - 0.86 * zero[0]
                    : i == 3 ? 1.91 * zero[2] - 0.91 * zero[1] : 2 * zero[i - 1] - zero[i - 2];
            double slope = 0;
            for (int step = 0; step < 100; step++) {
                double p1 = StrictMath.pow(StrictMath.PI, -0.25), p2 = 0;
                for (int j = 0; j < n; j++) {
                    double p3 = p2;
                    p2 = p1;
                    p1 = z * StrictMath.sqrt(2.0 / (j + 1)) * p2 - StrictMath.sqrt((double) j / (j + 1)) * p3;
                }
                slope = StrictMath.sqrt(2.0 * n) * p2;
                double before = z;
                z = before - p1 / slope;
                if (Math.abs(z - before) < 1e-14) break;
            }
            zero[i] = z;
            double w = 2 / (slope * slope) / StrictMath.sqrt(StrictMath.PI), x = StrictMath.sqrt(2) * z;
            int middleOut = (n + 1) / 2 - 1 - i;
            if (n % 2 == 1 && middleOut == 0) {
                point[0] = 0;
                weight[0] = w;
                continue;
            }
            int at = n % 2 == 1 ? 2 * middleOut - 1 : 2 * middleOut;
            point[at] = -x;
            point[at + 1] = x;
            weight[at] = weight[at + 1] = w;
        }
    }
}
