package leeway.core.lung;

/**
 * The largest flow that airways let out, whatever drives it: recoil of the lung over the resistance upstream of the place
 * where they collapse. Leaves out what the wave speed adds, and that this place moves.
 * <p>Mead, J Appl Physiol 1967;22:95 and Pride, J Appl Physiol 1967;23:646: flow = (Pel - Ptm) / Rs, with the lung's elastic
 * recoil Pel, the pressure Ptm across the airway at which it closes, and the upstream resistance Rs (from memory). As over a
 * waterfall, the pressure downstream counts for nothing as long as the flow is limited.
 *
 * @param upstreamTimes  Rs over the airways' resistance in inspiration; 0: no limit
 * @param recoilCmH2O    Pel - Ptm at the relaxation volume
 */
public record FlowLimit(double upstreamTimes, double recoilCmH2O) {
    public static final FlowLimit NONE = new FlowLimit(0, 0);

    public FlowLimit {
        if (!(upstreamTimes >= 0 && upstreamTimes <= 100 && recoilCmH2O >= -10 && recoilCmH2O <= 30)) {
            throw new IllegalArgumentException("flow limit: upstream %s times the airways' resistance, recoil %s cmH2O".formatted(upstreamTimes, recoilCmH2O));
        }
    }

    public boolean none() {
        return upstreamTimes == 0;
    }

    /** Flow per recoil of the lung, mL/s per cmH2O. */
    public double perRecoil(double airwaysCmH2OSPerMl) {
        return 1 / (upstreamTimes * airwaysCmH2OSPerMl);
    }

    /** Largest expiratory flow, mL/s. */
    public double mostMlPerS(double recoilAboveRestCmH2O, double airwaysCmH2OSPerMl) {
        return Math.max(0, recoilAboveRestCmH2O + recoilCmH2O) / (upstreamTimes * airwaysCmH2OSPerMl);
    }
}
