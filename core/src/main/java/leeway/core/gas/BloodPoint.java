package leeway.core.gas;

/**
 * One state of blood: tensions, pH, saturation and both contents, found from whichever two of them are known.
 * <p>Inside it moves along u = ln of the standard oxygen tension and h = pH − 7.4, in which everything else is explicit; a
 * search is Newton's in these two from wherever the point stood last, with analytic slopes, and nested bisection where that
 * does not settle. One instance holds no memory and is reused: a hot loop allocates nothing.
 */
public final class BloodPoint {
    private static final double U_LOW = -9, U_HIGH = 9, H_LOW = -2.0;
    private static final double LN_BOHR = StrictMath.log(26.6);
    private static final int BOUND = 40;
    private static final double SETTLED = 1e-6;
    /** Below this u there is next to no oxygen. */
    private static final double BARELY = U_LOW + 0.1;
    /** A step in pH that changes no digit that anybody sees. */
    private static final double FINEST = 1e-10;
    /** A last step shorter than this goes along the slopes: what that leaves out is of its square, 1e-9 of each value at most. */
    private static final double FOLLOWED = 3e-6;

    /** Where the point stands: ln of the standard oxygen tension, and pH − 7.4. */
    public double u = 4.5, h;
    public double po2MmHg, pco2MmHg, saturation, oxygenMlPerDl, carbonDioxideMlPerDl;
    /** Bicarbonate of plasma, mmol/L. */
    public double bicarbonateMmolL;
    /** How many times the curves were evaluated, ever. */
    public long evaluations;
    /** How many searches needed bisection, ever. */
    public long fallbacks;

    private double po2U, po2H, pco2U, pco2H, o2U, o2H, co2U, co2H, saturationU, bicarbonateU, bicarbonateH, hMax;
    // the search under way
    private int search;
    private double first, second, total, bloodDl, venousO2, venousCo2, dry, r1, r2, j11, j12, j21, j22;
    private static final int CONTENTS = 0, TENSIONS = 1, EXCHANGE = 2, TISSUE = 3;

    public double ph() {
        return 7.4 + h;
    }

    /** Puts the point at these tensions, mmHg, both above 0. */
    public void ofTensions(Blood blood, double po2MmHg, double pco2MmHg) {
        search = TENSIONS;
        first = StrictMath.log(Math.max(po2MmHg, 1e-3));
        second = StrictMath.log(Math.max(pco2MmHg, 1e-3));
        u = Math.max(U_LOW, Math.min(U_HIGH, first - blood.lnP50Shift));
        find(blood);
    }

    /** Puts the point at these contents, mL/dL: the joint inversion. */
    public void ofContents(Blood blood, double oxygenMlPerDl, double carbonDioxideMlPerDl) {
        search = CONTENTS;
        first = oxygenMlPerDl;
        second = carbonDioxideMlPerDl;
        find(blood);
    }

    /**
     * Puts the point where gas and blood have come into equilibrium, the gas with what the blood then gives and takes.
     * Gas amounts mL STPD before the exchange; the tension of a gas is its share of what is left times {@code dryMmHg}.
     *
     * @param bloodDl   blood that passes meanwhile, dL
     * @param venousO2  contents with which it comes, mL/dL
     * @param dryMmHg   barometric pressure less water vapour
     */
    public void ofExchange(Blood blood, double oxygenMl, double carbonDioxideMl, double totalMl, double bloodDl, double venousO2, double venousCo2, double dryMmHg) {
        search = EXCHANGE;
        first = oxygenMl;
        second = carbonDioxideMl;
        total = totalMl;
        this.bloodDl = bloodDl;
        this.venousO2 = venousO2;
        this.venousCo2 = venousCo2;
        dry = dryMmHg;
        find(blood);
    }

    /**
     * Puts the point where a tissue and the blood that leaves it have come into equilibrium: oxygen content is known, and
     * {@code storeMlPerMmHg}·PCO2 + {@code bloodDl}·content equals {@code carbonDioxideMl}.
     */
    public void ofTissue(Blood blood, double oxygenMlPerDl, double storeMlPerMmHg, double bloodDl, double carbonDioxideMl) {
        search = TISSUE;
        first = oxygenMlPerDl;
        second = carbonDioxideMl;
        this.bloodDl = bloodDl;
        total = storeMlPerMmHg;
        find(blood);
    }

    /** The same search by nested bisection alone: slow and obvious, the fallback and the tests' oracle. */
    public void again(Blood blood) {
        bisect(blood);
    }

    private void find(Blood blood) {
        boolean barely = false;
        for (int i = 0; i < BOUND; i++) {
            at(blood, u, h);
            if (h >= hMax) at(blood, u, hMax - 0.1);
            residual();
            if (!barely && u < BARELY && r1 > 0) {
                if (withoutOxygen(blood)) return;
                barely = true;
            }
            double det = j11 * j22 - j12 * j21;
            double du = -(r1 * j22 - r2 * j12) / det;
            double dh = -(j11 * r2 - j21 * r1) / det;
            if (!(Math.abs(du) < 1e6 && Math.abs(dh) < 1e6)) break;
            double largest = Math.max(Math.abs(du), Math.abs(dh));
            if (largest < FOLLOWED && h + dh < hMax) {
                follow(du, dh);
                return;
            }
            boolean settled = largest < SETTLED;
            if (du > 1.2) du = 1.2; else if (du < -1.2) du = -1.2;
            if (dh > 0.3) dh = 0.3; else if (dh < -0.3) dh = -0.3;
            double nu = u + du, nh = h + dh;
            if (nh >= hMax) nh = 0.5 * (h + hMax);   // where no carbon dioxide is left
            if (nh < H_LOW) nh = 0.5 * (h + H_LOW);
            if (nu > U_HIGH) nu = 0.5 * (u + U_HIGH);
            if (nu < U_LOW) nu = 0.5 * (u + U_LOW);
            u = nu;
            h = nh;
            if (settled) {
                at(blood, u, h);
                return;
            }
        }
        fallbacks++;
        bisect(blood);
    }

    private void follow(double du, double dh) {
        u += du;
        h += dh;
        po2MmHg += po2U * du + po2H * dh;
        pco2MmHg += pco2U * du + pco2H * dh;
        saturation += saturationU * du;
        oxygenMlPerDl += o2U * du + o2H * dh;
        carbonDioxideMlPerDl += co2U * du + co2H * dh;
        bicarbonateMmolL += bicarbonateU * du + bicarbonateH * dh;
    }

    /**
     * Where there is less oxygen than the lowest u holds, u stands there and the other equation is left, in h alone. Gives up, with
     * the point where it was, where that does not settle or carbon dioxide does not fall with h as it should.
     */
    private boolean withoutOxygen(Blood blood) {
        double fromU = u, fromH = h;
        for (int i = 0; i < BOUND; i++) {
            at(blood, U_LOW, h);
            residual();
            if (!(r1 > 0 && j22 < 0) || h >= hMax) break;
            double dh = -r2 / j22, nh = h + Math.max(-0.3, Math.min(0.3, dh));
            if (!(nh > H_LOW && nh < hMax)) break;
            h = nh;
            if (Math.abs(dh) < FINEST) {
                at(blood, U_LOW, h);
                return true;
            }
        }
        at(blood, fromU, fromH);
        residual();
        return false;
    }

    /** For each h the u that settles the oxygen equation, and h by the sign of the other. */
    private void bisect(Blood blood) {
        double hLow = H_LOW, hHigh = (blood.freeBicarbonate) / blood.buffer;
        for (int i = 0; i < 55; i++) {
            double hm = 0.5 * (hLow + hHigh), low = U_LOW, high = U_HIGH;
            at(blood, U_LOW, hm);
            residual();
            if (r1 > 0) high = U_LOW;       // no oxygen left: nothing to halve
            for (int k = 0; k < 55 && high > low; k++) {
                double um = 0.5 * (low + high);
                at(blood, um, hm);
                residual();
                if (r1 > 0) high = um; else low = um;
            }
            u = 0.5 * (low + high);
            if (r2 > 0) hLow = hm; else hHigh = hm;
        }
        h = 0.5 * (hLow + hHigh);
        at(blood, u, h);
    }

    private void residual() {
        if (search == EXCHANGE) {
            double upO2 = bloodDl * (oxygenMlPerDl - venousO2), upCo2 = bloodDl * (carbonDioxideMlPerDl - venousCo2);
            double share = (total - upO2 - upCo2) / dry, per = bloodDl / dry;
            r1 = po2MmHg * share - first + upO2;
            r2 = pco2MmHg * share - second + upCo2;
            double u1 = (o2U + co2U) * per, h1 = (o2H + co2H) * per;
            j11 = po2U * share - po2MmHg * u1 + bloodDl * o2U;
            j12 = po2H * share - po2MmHg * h1 + bloodDl * o2H;
            j21 = pco2U * share - pco2MmHg * u1 + bloodDl * co2U;
            j22 = pco2H * share - pco2MmHg * h1 + bloodDl * co2H;
        } else if (search == TISSUE) {
            r1 = oxygenMlPerDl - first;
            r2 = total * pco2MmHg + bloodDl * carbonDioxideMlPerDl - second;
            j11 = o2U;
            j12 = o2H;
            j21 = total * pco2U + bloodDl * co2U;
            j22 = total * pco2H + bloodDl * co2H;
        } else if (search == CONTENTS) {
            r1 = oxygenMlPerDl - first;
            r2 = carbonDioxideMlPerDl - second;
            j11 = o2U;
            j12 = o2H;
            j21 = co2U;
            j22 = co2H;
        } else {
            r1 = StrictMath.log(po2MmHg) - first;
            r2 = pco2MmHg > 0 ? StrictMath.log(pco2MmHg) - second : -700;
            j11 = po2U / po2MmHg;
            j12 = po2H / po2MmHg;
            j21 = pco2U / pco2MmHg;
            j22 = pco2H / pco2MmHg;
        }
    }

    /** Evaluates everything, with its slopes, at ln standard tension {@code u} and pH 7.4 + {@code h}. */
    void at(Blood b, double u, double h) {
        evaluations++;
        this.u = u;
        this.h = h;
        // oxygen
        double p = Exp.exp(u), p2 = p * p, x = p * (p2 + 150), full = 1 / (x + 23_400);
        double s = x * full, su = 23_400 * p * (3 * p2 + 150) * full * full;
        double w = Exp.exp(0.184 * (u - LN_BOHR)), bohr = w - 2.2;
        double ln = u + bohr * h + b.lnP50Shift, lnU = 1 + 0.184 * w * h;
        if (b.degrees != 0) {
            double q = Exp.exp(3.88 * (u + LN_TEMPERATURE)), over = 1 / (q + 1);
            ln += (0.058 * over + 0.013) * b.degrees;
            lnU -= 0.058 * 3.88 * q * over * over * b.degrees;
        }
        double po2 = Exp.exp(ln), dissolved = OxygenContent.DISSOLVED_ML_PER_DL_MMHG;
        po2U = po2 * lnU;
        po2H = po2 * bohr;
        o2U = b.capacity * su + dissolved * po2U;
        o2H = dissolved * po2H;
        po2MmHg = po2;
        saturation = s;
        oxygenMlPerDl = b.capacity * s + dissolved * po2;
        // acid and base
        double free = b.freeBicarbonate - b.perSaturation * s, bicarbonate = free - b.buffer * h;
        saturationU = su;
        bicarbonateU = -b.perSaturation * su;
        bicarbonateH = -b.buffer;
        hMax = free / b.buffer;
        double per = 1 / (AcidBase.SOLUBILITY * Exp.exp(Blood.LN10 * (h + 7.4 - AcidBase.PK)));
        double pco2 = bicarbonate * per;
        pco2U = bicarbonateU * per;
        pco2H = -b.buffer * per - Blood.LN10 * pco2;
        pco2MmHg = pco2;
        bicarbonateMmolL = bicarbonate;
        // carbon dioxide
        double ratio = Exp.exp(Blood.LN10 * (b.pkAt + b.pkSlope * h)), ratioH = Blood.LN10 * b.pkSlope * ratio;
        boolean held = h > CarbonDioxideContent.HELD_ABOVE_PH - 7.4;
        double d1 = 1 / (3.352 - 0.456 * s), d2 = held ? 1 / (8.142 - CarbonDioxideContent.HELD_ABOVE_PH) : 1 / (8.142 - 7.4 - h);
        double y = b.cells * d1 * d2, whole = 1 - y, wholeU = -y * 0.456 * su * d1, wholeH = held ? 0 : -y * d2;
        double k = b.plasma * (1 + ratio), plasma = k * pco2;
        co2U = k * pco2U * whole + plasma * wholeU;
        co2H = (k * pco2H + b.plasma * pco2 * ratioH) * whole + plasma * wholeH;
        carbonDioxideMlPerDl = plasma * whole;
    }

    /** ln of 0.243/100, the temperature term's scale. Severinghaus 1979, equation 3. */
    private static final double LN_TEMPERATURE = StrictMath.log(0.243 / 100);
}
