package leeway.core.gas;

/**
 * How full haemoglobin is at an oxygen tension, and back.
 * <p>Severinghaus, J Appl Physiol 1979;46:599: saturation, Bohr effect and temperature. Leaves out 2,3-diphosphoglycerate
 * except as a half-saturation tension handed in, and any effect of carbon dioxide or base excess apart from pH.
 * The coefficients of Bohr and temperature are taken at the standard tension (pH 7.40, 37 °C), so that the inverse is exact.
 */
public final class OxygenDissociation {
    /** Half-saturation tension of adult blood at pH 7.40 and 37 °C in this equation, mmHg. Severinghaus 1979. */
    public static final double ADULT_P50_MMHG = 26.86;

    private OxygenDissociation() {
    }

    /** Saturation at a standard tension, 0 to 1: 1/(23400/(P³+150·P)+1). Equation 1, ±0.55 % of its table. */
    public static double standardSaturation(double standardMmHg) {
        double x = standardMmHg * (standardMmHg * standardMmHg + 150);
        return x / (x + 23_400);
    }

    /** The standard tension of a saturation above 0 and below 1, mmHg; the real root of P³+150·P = 23400·S/(1−S), closed form with one Newton step. */
    public static double standardTensionMmHg(double saturation) {
        if (!(saturation >= 0 && saturation < 1)) throw new IllegalArgumentException("saturation (" + saturation + ") must lie from 0 to below 1");
        double x = 23_400 * saturation / (1 - saturation);
        // depressed cubic t³ + 150 t − x = 0: t = 2·√50·sinh(asinh(x/(2·50^1.5))/3)
        double z = x / (2 * 50 * StrictMath.sqrt(50));
        double t = 2 * StrictMath.sqrt(50) * StrictMath.sinh(StrictMath.log(z + StrictMath.sqrt(z * z + 1)) / 3);
        return t - (t * (t * t + 150) - x) / (3 * t * t + 150);
    }

    /** d ln P / d pH at a standard tension: (P/26.6)^0.184 − 2.2. Equation 4. */
    public static double bohr(double standardMmHg) {
        return StrictMath.pow(standardMmHg / 26.6, 0.184) - 2.2;
    }

    /** d ln P / d T at a standard tension, per °C: 0.058/((0.243·P/100)^3.88+1)+0.013. Equation 3. */
    public static double perDegree(double standardMmHg) {
        return 0.058 / (StrictMath.pow(0.243 * standardMmHg / 100, 3.88) + 1) + 0.013;
    }

    /** The tension at this pH and temperature at which blood is as full as at the standard tension, mmHg. */
    public static double tensionMmHg(double standardMmHg, double ph, double temperatureCel, double p50MmHg) {
        return standardMmHg * p50MmHg / ADULT_P50_MMHG * StrictMath.exp(bohr(standardMmHg) * (ph - 7.4) + perDegree(standardMmHg) * (temperatureCel - 37));
    }

    /** The standard tension of a tension at this pH and temperature, mmHg: the inverse of {@link #tensionMmHg} by Newton in ln P, guarded by bisection. */
    public static double standardOf(double po2MmHg, double ph, double temperatureCel, double p50MmHg) {
        if (!(po2MmHg > 0)) return 0;
        double low = StrictMath.log(po2MmHg) - 8, high = low + 16, target = StrictMath.log(po2MmHg), u = target;
        for (int i = 0; i < 100; i++) {
            double over = StrictMath.log(tensionMmHg(StrictMath.exp(u), ph, temperatureCel, p50MmHg)) - target;
            if (over > 0) high = u; else low = u;
            double p = StrictMath.exp(u);
            double slope = 1 + 0.184 * (bohr(p) + 2.2) * (ph - 7.4);
            double next = u - over / slope;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.abs(next - u) < 1e-14) return StrictMath.exp(next);
            u = next;
        }
        return StrictMath.exp(u);
    }

    /** Saturation at a tension, pH and temperature. */
    public static double saturation(double po2MmHg, double ph, double temperatureCel, double p50MmHg) {
        return standardSaturation(standardOf(po2MmHg, ph, temperatureCel, p50MmHg));
    }

    /** The tension at which blood of this pH and temperature has this saturation, mmHg. */
    public static double po2MmHg(double saturation, double ph, double temperatureCel, double p50MmHg) {
        return saturation == 0 ? 0 : tensionMmHg(standardTensionMmHg(saturation), ph, temperatureCel, p50MmHg);
    }
}
