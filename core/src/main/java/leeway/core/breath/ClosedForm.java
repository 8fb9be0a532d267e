package leeway.core.breath;

import leeway.core.kit.Mode;

/**
 * The textbook's breath: one linear compartment, passive, in its cyclic steady state, in closed form. Leaves out leaks,
 * effort, pressure limits, the device's own limits and the circuit's compliance; a tube counts by its secant at the mean flow.
 * <p>It judges the engine in the tests and never leaves this room as a result where the engine can speak.
 * Sources: docs/physics/breath.md.
 */
public final class ClosedForm {
    private static final double J_PER_CMH2O_ML = 98.0665e-6;

    private ClosedForm() { }

    /** auto-PEEP after constant-volume breaths: (VT/C) / (e^(Te/tau) - 1); cmH2O. */
    public static double autoPeepCmH2O(double tidalVolumeMl, double complianceMlPerCmH2O, double timeConstantS, double expiratoryTimeS) {
        return tidalVolumeMl / complianceMlPerCmH2O / StrictMath.expm1(expiratoryTimeS / timeConstantS);
    }

    /** The cyclic steady state of a timed mode. */
    public static BreathNumbers steady(Mechanics m, BreathSettings s) {
        double c = m.complianceMlPerCmH2O(), ti = s.inspiratoryTimeS(), te = 60 / s.ratePerMin() - ti;
        double fixed = (m.resistanceCmH2OSPerL() + m.filterCmH2OSPerL()) / 1000;
        double vt = s.mode().mandatory() == Mode.Inflation.PRESSURE ? c * s.pressureAbovePeepCmH2O() : s.tidalVolumeMl();
        double ri = fixed, re = fixed;
        for (int i = 0; i < 60; i++) {      // the secant depends on the volume and the volume on the secant; linear mechanics settle at once
            double flowIn = vt / (ti - s.pauseS()) / 1000, tube = m.tube().k1CmH2OSPerL() + m.tube().k2CmH2OS2PerL2() * flowIn;
            ri = fixed + tube / 1000;
            double base = fixed + (m.expiratoryExtraCmH2OSPerL() + m.valveCmH2OSPerL() + m.tube().k1CmH2OSPerL()) / 1000;
            double flowOut = 0.632 * vt / Math.max(0.05, re * c) / 1000;
            re = 0.5 * re + 0.5 * (base + m.tube().k2CmH2OS2PerL2() * flowOut / 1000);
            if (m.tube().k2CmH2OS2PerL2() == 0) re = base;
            if (s.mode().mandatory() == Mode.Inflation.PRESSURE) vt = s.pressureAbovePeepCmH2O() * gain(c, ri, re, ti, te, s.riseS());
        }
        return s.mode().mandatory() == Mode.Inflation.VOLUME ? volume(s, m, c, ri, re, te)
                : pressure(s, m, c, ri, re, te, s.mode().mandatory() == Mode.Inflation.PRESSURE ? s.pressureAbovePeepCmH2O() : vt / gain(c, ri, re, ti, te, s.riseS()));
    }

    private static BreathNumbers volume(BreathSettings s, Mechanics m, double c, double ri, double re, double te) {
        double vt = s.tidalVolumeMl(), ti = s.inspiratoryTimeS(), tf = ti - s.pauseS(), tau = re * c, q = s.flowEndShare();
        double auto = autoPeepCmH2O(vt, c, tau, te), start = s.peepCmH2O() + auto, plateau = start + vt / c;
        double f0 = 2 * vt / tf / (1 + q);
        // elastic part of the flow phase: V(t) = f0 (t - (1 - q) t^2 / (2 tf))
        double elastic = f0 * (tf * tf / 2 - (1 - q) * tf * tf / 6) / c;
        double peak = start + ri * f0;
        for (int i = 1; i <= 1000 && q < 1; i++) {
            double x = i / 1000.0;
            peak = Math.max(peak, start + f0 * tf * (x - (1 - q) * x * x / 2) / c + ri * f0 * (1 - (1 - q) * x));
        }
        if (q == 1) peak = plateau + ri * f0;
        double valveShare = m.valveCmH2OSPerL() / 1000 / re, out = vt;
        double mean = (start * tf + elastic + ri * vt + plateau * s.pauseS() + s.peepCmH2O() * te + valveShare * re * out) / (ti + te);
        double resistive = ri * f0 * f0 * tf * (1 + q + q * q) / 3;
        double energy = (start * vt + vt * vt / (2 * c) + resistive) * J_PER_CMH2O_ML;
        return numbers(s, m, vt, te, peak, plateau, start, mean, f0, (plateau - s.peepCmH2O()) / re, energy, Double.NaN, c);
    }

    /** Tidal volume per cmH2O above PEEP: linear in the pressure. Linear ramp over the rise time, then constant. */
    private static double gain(double c, double ri, double re, double ti, double te, double rise) {
        double ee = StrictMath.exp(-te / (re * c));
        double end = rampedEnd(c, ri * c, ti, rise), a = StrictMath.exp(-ti / (ri * c));
        double v0 = end * ee / (1 - a * ee);     // V1 = end + a V0, V0 = ee V1
        return (end + a * v0) * (1 - ee);
    }

    /** Volume at the end of inspiration per cmH2O, from rest. */
    private static double rampedEnd(double c, double tau, double ti, double rise) {
        if (rise <= 0) return -c * StrictMath.expm1(-ti / tau);
        double r = Math.min(rise, ti);
        double atRise = c / rise * (r + tau * StrictMath.expm1(-r / tau));
        return ti <= rise ? atRise : c + (atRise - c) * StrictMath.exp(-(ti - rise) / tau);
    }

    private static BreathNumbers pressure(BreathSettings s, Mechanics m, double c, double ri, double re, double te, double above) {
        double ti = s.inspiratoryTimeS(), rise = s.riseS(), vt = above * gain(c, ri, re, ti, te, rise), ee = StrictMath.exp(-te / (re * c));
        double trapped = vt * ee / (1 - ee), start = s.peepCmH2O() + trapped / c, plateau = start + vt / c;
        double reached = rise <= ti ? above : above * ti / rise, r = Math.min(rise, ti);
        double valveShare = m.valveCmH2OSPerL() / 1000;
        double mean = s.peepCmH2O() + (reached * r / 2 + reached * (ti - r) + valveShare * vt) / (ti + te);
        double tau = ri * c, v0 = trapped;
        double ramp = rise > 0 ? above / rise : 0;
        // energy = integral of (PEEP + ramp t) dV over the rise, then (PEEP + above) times the rest; int t dV = r V(r) - int V dt
        double vr = v0, tDv = 0;
        if (rise > 0) {
            double e = StrictMath.exp(-r / tau);
            vr = c * ramp * (r - tau * (1 - e)) + v0 * e;
            double intV = c * ramp * (r * r / 2 - tau * r + tau * tau * (1 - e)) + v0 * tau * (1 - e);
            tDv = ramp * (r * vr - intV);
        }
        double energy = (s.peepCmH2O() * vt + tDv + reached * (v0 + vt - vr)) * J_PER_CMH2O_ML;
        double flow = rise > 0 ? Math.max(0, (ramp * r - (vr - 0) / c) / ri) : (above - v0 / c) / ri;
        if (rise > 0 && ti <= rise) flow = Math.max(flow, 0);
        return numbers(s, m, vt, te, s.peepCmH2O() + reached, plateau, start, mean, flow, (plateau - s.peepCmH2O()) / re, energy, above, c);
    }

    private static BreathNumbers numbers(BreathSettings s, Mechanics m, double vt, double te, double peak, double plateau, double peep, double mean,
            double flow, double flowOut, double energy, double above, double c) {
        return new BreathNumbers(vt, vt, vt, s.ratePerMin(), s.inspiratoryTimeS(), te, peak, plateau, plateau - peep, peep, peep - s.peepCmH2O(),
                (peep - s.peepCmH2O()) * c, mean, plateau - m.chestWallShare() * plateau, flow * 0.06, flowOut * 0.06, energy, energy * s.ratePerMin(), above, false, false);
    }
}
