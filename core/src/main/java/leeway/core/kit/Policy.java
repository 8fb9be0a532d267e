package leeway.core.kit;

import java.util.Optional;

/**
 * What a service tolerates and when harm begins; every value editable in a sheet or inline.
 *
 * @param oxygenRisk       tolerated chance that oxygen runs out
 * @param powerRisk        tolerated chance that charge runs out
 * @param reserveMin       oxygen that must be left at the far end at the median, in minutes of the last draw
 * @param surviveOneLoss   whether the journey must hold without its largest store
 * @param uncoveredAllowed how many uncovered faults the verdict tolerates before it says "does not hold"; absent: they are remarks
 */
public record Policy(String name, double oxygenRisk, double powerRisk, double reserveMin, double powerReserveMin, boolean surviveOneLoss,
                     Optional<Integer> uncoveredAllowed, Harm harm, Targets targets, String source) {
    /**
     * When harm begins; the first that is crossed counts.
     *
     * @param saO2Fall  below the start, where the start lies under {@code saO2LowStart}
     * @param volumeMlPerKg inspired, of predicted weight; infinite where volume is not judged
     * @param volumeBreaths breaths in a row above it that count as harm
     */
    public record Harm(double saO2, double saO2LowStart, double saO2Fall, double paco2MmHg, double paco2RiseMmHg, double headPaco2LowMmHg,
                       double headPaco2HighMmHg, double phLow, double phHigh, double alveolarPressureCmH2O, double transpulmonaryCmH2O,
                       double outputShare, double noVentilationS, double searchMin, double volumeMlPerKg, int volumeBreaths) { }

    /** Where a plan's expected values become a remark: plateau, driving pressure, PaCO2, pH, saturation. */
    public record Targets(double plateauCmH2O, double drivingCmH2O, double phLow, double phHigh, double paco2LowMmHg, double paco2HighMmHg,
                          double saturationLow, double autoPeepCmH2O, double mechanicalPowerJPerMin) { }
}
