package leeway.core.breath;

/**
 * One linear compartment, breath after breath, numbers only: for sweeps over many patients and settings. Leaves out tube,
 * leak, effort, limits and circuit; {@link Breath} has them. Volume control costs one exponential, pressure control two.
 * <p>Resistances in cmH2O.s/mL, compliance mL/cmH2O; the state is the lung volume above relaxation, mL.
 */
public final class OneCompartment {
    /** At the end of a breath: volume, mL. The rest are the numbers of the last breath. */
    public double volumeMl, tidalVolumeMl, peakCmH2O, plateauCmH2O, peepCmH2O, meanCmH2O, endFlowMlPerS;

    /** Constant flow, pause, passive expiration. */
    public void volumeControl(double inspiratory, double expiratory, double compliance, double tidalVolume, double flowS, double pauseS, double expiratoryS, double peep) {
        double start = volumeMl, flow = tidalVolume / flowS, full = start + tidalVolume, tau = expiratory * compliance, elastance = 1 / compliance;
        double rest = compliance * peep, above = full - rest, e = Decay.of(expiratoryS / tau), end = rest + above * e;
        plateauCmH2O = full * elastance;
        peakCmH2O = plateauCmH2O + inspiratory * flow;
        finish(full, end, above * e / tau, elastance, flowS * (0.5 * (start + full) * elastance + inspiratory * flow) + pauseS * plateauCmH2O + expiratoryS * peep, flowS + pauseS + expiratoryS);
    }

    /** Square pressure, passive expiration. */
    public void pressureControl(double inspiratory, double expiratory, double compliance, double above, double inspiratoryS, double expiratoryS, double peep) {
        double elastance = 1 / compliance, top = peep + above, rest = compliance * top, full = rest + (volumeMl - rest) * Decay.of(inspiratoryS / (inspiratory * compliance));
        double low = compliance * peep, tau = expiratory * compliance, e = Decay.of(expiratoryS / tau), end = low + (full - low) * e;
        plateauCmH2O = full * elastance;
        peakCmH2O = top;
        finish(full, end, (full - low) * e / tau, elastance, inspiratoryS * top + expiratoryS * peep, inspiratoryS + expiratoryS);
    }

    private void finish(double full, double end, double endFlow, double elastance, double area, double period) {
        tidalVolumeMl = full - end;
        peepCmH2O = end * elastance;
        endFlowMlPerS = -endFlow;
        meanCmH2O = area / period;
        volumeMl = end;
    }
}
