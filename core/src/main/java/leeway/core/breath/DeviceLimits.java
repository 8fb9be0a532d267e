package leeway.core.breath;

/**
 * What a ventilator can do at the most, and how fast. A weak device shows as weak through these.
 *
 * @param largestFlowLPerMin      at the patient
 * @param largestPressureCmH2O    at the Y-piece
 * @param fastestRiseS            the valve or blower takes this long to a pressure step, linearly
 * @param compensatesCircuit      true: adds what the circuit's compliance takes
 * @param triggerDelayS           from the trigger's threshold to the first gas
 * @param targetStepCmH2O         largest change of a volume target's pressure from breath to breath
 * @param longestSupportS         support ends at the latest after this
 */
public record DeviceLimits(double largestFlowLPerMin, double largestPressureCmH2O, double fastestRiseS, boolean compensatesCircuit,
        double triggerDelayS, double targetStepCmH2O, double longestSupportS) {
    public DeviceLimits {
        Mechanics.within("largest flow", largestFlowLPerMin, 1, 1000);
        Mechanics.within("largest pressure", largestPressureCmH2O, 5, 200);
        Mechanics.within("fastest rise", fastestRiseS, 0, 2);
        Mechanics.within("trigger delay", triggerDelayS, 0, 1);
        Mechanics.within("step of the volume target", targetStepCmH2O, 0.5, 20);
        Mechanics.within("longest support", longestSupportS, 0.2, 10);
    }

    /** Strong enough for every adult, with the trigger delay and target step of common practice (physiology: 50 to 100 ms; 3 cmH2O; no source). */
    public static DeviceLimits strong() {
        return new DeviceLimits(240, 100, 0, true, 0.08, 3, 2);
    }
}
