package leeway.core.breath;

import leeway.core.kit.Mode;

/**
 * A passive lung of a fast and a slow compartment in parallel behind a common tube, with the circuit's compressible volume
 * and the expiratory valve: three pressures, linear, exact by modes. Leaves out leaks, effort and the pressure limit; the
 * tube's quadratic part counts by its secant at one flow a phase, with the error stated ({@link #tubeErrorCmH2O}).
 * <p>The settings fix the lengths of the phases, so each phase is one matrix, kept: a breath costs three small products and
 * no exponential. For the engine of a journey see {@link Breath}; this one judges what uneven lungs add.
 */
public final class TwoCompartments {
    /** Least resistances and circuit, so that every time constant exists; cmH2O.s/mL and mL/cmH2O. */
    private static final double LEAST_RESISTANCE = 1e-5, LEAST_GIVE = 0.02;
    private static final int MOST_BREATHS = 3000;

    private final Mechanics mechanics;
    private final BreathSettings settings;
    private final double c1, c2, r1, r2, give, flow, expiratoryS;
    private final boolean volume;
    private double r0In, r0Out, secantIn, secantOut;
    private Modes.Step inhale, rise, pause, exhale;
    /** Circuit, fast and slow compartment, cmH2O. */
    final double[] x = new double[3];
    /** Of the last breath. */
    double peak, plateau, area, fastestIn, fastestOut, startFast, startSlow;

    public TwoCompartments(Mechanics m, BreathSettings s) {
        Mode.Inflation kind = s.mode().mandatory();
        if (kind != Mode.Inflation.VOLUME && kind != Mode.Inflation.PRESSURE) throw new IllegalArgumentException("two compartments take volume or pressure control, not " + s.mode().code());
        mechanics = m;
        settings = s;
        volume = kind == Mode.Inflation.VOLUME;
        double c = m.complianceMlPerCmH2O(), share = Math.max(m.slowShare(), 1e-3), f = m.slowFactor(), r = Math.max(LEAST_RESISTANCE, m.resistanceCmH2OSPerL() / 1000);
        c2 = share * c;
        c1 = c - c2;
        double fast = r * (c1 + c2 / f);            // the two in parallel resist like one of this resistance
        r1 = fast / c1;
        r2 = fast * f / c2;
        give = Math.max(LEAST_GIVE, m.circuitComplianceMlPerCmH2O());
        flow = volume ? s.tidalVolumeMl() / (s.inspiratoryTimeS() - s.pauseS()) : 0;
        expiratoryS = 60 / s.ratePerMin() - s.inspiratoryTimeS();
        x[0] = x[1] = x[2] = s.peepCmH2O();
        secantIn = flow;
        secantOut = flow;
        build();
    }

    private double tube(double flowMlPerS) {
        return (mechanics.filterCmH2OSPerL() + mechanics.tube().k1CmH2OSPerL()) / 1000 + mechanics.tube().k2CmH2OS2PerL2() * flowMlPerS / 1e6;
    }

    private void build() {
        r0In = Math.max(LEAST_RESISTANCE, tube(secantIn));
        r0Out = Math.max(LEAST_RESISTANCE, tube(secantOut) + mechanics.expiratoryExtraCmH2OSPerL() / 1000);
        double valve = 1 / Math.max(LEAST_RESISTANCE, mechanics.valveCmH2OSPerL() / 1000), peep = settings.peepCmH2O(), ti = settings.inspiratoryTimeS(), tp = settings.pauseS();
        double[] none = new double[3];
        exhale = star(r0Out, valve).over(expiratoryS, new double[] {valve * peep, 0, 0}, none);
        if (volume) {
            Modes closed = star(r0In, 0);
            inhale = closed.over(ti - tp, new double[] {flow, 0, 0}, none);
            pause = closed.over(tp, none, none);
            return;
        }
        double above = settings.pressureAbovePeepCmH2O(), tr = Math.min(settings.riseS(), ti), g0 = 1 / r0In, g1 = 1 / r1, g2 = 1 / r2, all = g0 + g1 + g2;
        Modes held = new Modes(new double[] {g1 - g1 * g1 / all, -g1 * g2 / all, -g1 * g2 / all, g2 - g2 * g2 / all}, new double[] {c1, c2});
        double in1 = g1 * g0 / all, in2 = g2 * g0 / all, slope = tr > 0 ? above / settings.riseS() : 0;
        rise = held.over(tr, new double[] {in1 * peep, in2 * peep}, new double[] {in1 * slope, in2 * slope});
        double top = peep + above;
        inhale = held.over(ti - tr, new double[] {in1 * top, in2 * top}, new double[2]);
    }

    /** Circuit and two compartments meet in one node; the valve, where open, leads from the circuit to PEEP. */
    private Modes star(double r0, double valve) {
        double g0 = 1 / r0, g1 = 1 / r1, g2 = 1 / r2, all = g0 + g1 + g2;
        return new Modes(new double[] {
            g0 - g0 * g0 / all + valve, -g0 * g1 / all, -g0 * g2 / all,
            -g0 * g1 / all, g1 - g1 * g1 / all, -g1 * g2 / all,
            -g0 * g2 / all, -g1 * g2 / all, g2 - g2 * g2 / all}, new double[] {give, c1, c2});
    }

    private double node(double r0) {
        double g0 = 1 / r0, g1 = 1 / r1, g2 = 1 / r2;
        return (g0 * x[0] + g1 * x[1] + g2 * x[2]) / (g0 + g1 + g2);
    }

    /** One breath; allocates nothing. */
    public void breathe() {
        startFast = x[1];
        startSlow = x[2];
        double peep = settings.peepCmH2O();
        if (volume) {
            area = inhale.take3(x);
            peak = x[0];
            fastestIn = flow;
            area += pause.take3(x);
        } else {
            double top = peep + settings.pressureAbovePeepCmH2O(), tr = Math.min(settings.riseS(), settings.inspiratoryTimeS());
            rise.take2(x);
            x[0] = top;
            fastestIn = (top - node(r0In)) / r0In;
            inhale.take2(x);
            peak = top;
            area = peep * tr + 0.5 * (top - peep) * tr + top * (settings.inspiratoryTimeS() - tr);
        }
        plateau = (c1 * x[1] + c2 * x[2]) / (c1 + c2);
        fastestOut = (node(r0Out) - peep) / (r0Out + mechanics.valveCmH2OSPerL() / 1000);
        area += exhale.take3(x);
    }

    /** The breath that repeats itself; where there is a tube, the secant flows are settled with it. */
    public BreathNumbers steady() {
        for (int round = 0; round < (mechanics.tube().k2CmH2OS2PerL2() > 0 ? 12 : 1); round++) {
            if (round > 0) {
                secantIn = volume ? flow : (c1 * (plateau - startFast) + c2 * (plateau - startSlow)) / settings.inspiratoryTimeS();
                secantOut = 0.5 * (secantOut + 0.632 * fastestOut);
                build();
            }
            for (int i = 0; i < MOST_BREATHS; i++) {
                breathe();
                if (Math.abs(x[1] - startFast) < 1e-11 && Math.abs(x[2] - startSlow) < 1e-11) break;
            }
        }
        double end = (c1 * x[1] + c2 * x[2]) / (c1 + c2), vt = (plateau - end) * (c1 + c2), period = 60 / settings.ratePerMin(), peep = settings.peepCmH2O();
        return new BreathNumbers(vt, vt, vt + give * (peak - peep), settings.ratePerMin(), settings.inspiratoryTimeS(), expiratoryS, peak, plateau, plateau - end, end, end - peep,
                (end - peep) * (c1 + c2), area / period, plateau * (1 - mechanics.chestWallShare()), fastestIn * 0.06, fastestOut * 0.06, Double.NaN, Double.NaN,
                volume ? Double.NaN : settings.pressureAbovePeepCmH2O(), false, false);
    }

    /** How far the secant is from the tube's quadratic at the fastest flows of the last breath, cmH2O: the error of taking a tube as linear. */
    public double tubeErrorCmH2O() {
        double k2 = mechanics.tube().k2CmH2OS2PerL2() / 1e6;
        return Math.max(k2 * fastestIn * Math.abs(fastestIn - secantIn), k2 * fastestOut * Math.abs(fastestOut - secantOut));
    }
}
