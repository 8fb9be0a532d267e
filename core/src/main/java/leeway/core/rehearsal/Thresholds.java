package leeway.core.rehearsal;

import leeway.core.kit.Policy;
import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * Where harm begins for this patient at this moment, from the policy and from where the patient stands.
 * <p>Where a patient stands beyond a limit before anything happens, the fault has harmed once it is worse than the start by
 * {@value #WORSE_MMHG} mmHg or {@value #WORSE_PH} (common practice, no source): the policy's sentence would be true at once.
 *
 * @param volumeMl      inspired, of so many breaths in a row; infinite where not judged
 * @param outputLPerMin cardiac output below this; {@code NaN} in a run without one
 */
record Thresholds(double saturation, double paco2LowMmHg, double paco2HighMmHg, double phLow, double phHigh, double alveolarCmH2O,
                  double transpulmonaryCmH2O, double outputLPerMin, double noVentilationS, double volumeMl, int volumeBreaths) {
    private static final double WORSE_MMHG = 5;
    private static final double WORSE_PH = 0.05;

    static Thresholds at(Policy.Harm harm, boolean headInjury, double active, double predictedKg, Now start) {
        // judged of all haemoglobin, for what carries carbon monoxide carries no oxygen; said of the rest, as a saturation is
        double sao2 = start.get(Column.SAO2) * active;
        double saturation = (sao2 < harm.saO2LowStart() ? sao2 - harm.saO2Fall() : harm.saO2()) / active;
        double paco2 = start.get(Column.PACO2_MMHG);
        double high = headInjury ? harm.headPaco2HighMmHg() : Math.max(harm.paco2MmHg(), paco2 + harm.paco2RiseMmHg());
        double low = headInjury ? harm.headPaco2LowMmHg() : Double.NEGATIVE_INFINITY;
        if (paco2 >= high) high = paco2 + WORSE_MMHG;
        if (paco2 <= low) low = paco2 - WORSE_MMHG;
        double ph = start.get(Column.PH);
        double phLow = ph <= harm.phLow() ? ph - WORSE_PH : harm.phLow();
        double phHigh = ph >= harm.phHigh() ? ph + WORSE_PH : harm.phHigh();
        double plateau = start.get(Column.PLATEAU_CMH2O);
        double alveolar = plateau >= harm.alveolarPressureCmH2O() ? plateau + WORSE_MMHG : harm.alveolarPressureCmH2O();
        double across = start.get(Column.TRANSPULMONARY_CMH2O);
        double transpulmonary = across >= harm.transpulmonaryCmH2O() ? across + WORSE_MMHG : harm.transpulmonaryCmH2O();
        return new Thresholds(saturation, low, high, phLow, phHigh, alveolar, transpulmonary, harm.outputShare() * start.get(Column.CARDIAC_OUTPUT_L_MIN), harm.noVentilationS(),
                harm.volumeMlPerKg() * predictedKg, harm.volumeBreaths());
    }
}
