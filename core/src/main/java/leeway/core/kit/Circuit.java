package leeway.core.kit;

/**
 * A breathing circuit.
 *
 * @param limbs              1 with a valve at the patient, 2 with the expiratory valve at the ventilator
 * @param complianceMlPerCmH2O how much gas it takes up
 * @param deadSpaceMl        between the valve or Y-piece and the filter, rebreathed
 * @param inspiratoryResistanceCmH2OSPerL one way in
 * @param expiratoryResistanceCmH2OSPerL one way out, valve included
 * @param volumeMl           gas inside
 */
public record Circuit(String name, int limbs, double complianceMlPerCmH2O, double inspiratoryResistanceCmH2OSPerL,
                      double expiratoryResistanceCmH2OSPerL, double deadSpaceMl, double volumeMl, double leakMlPerSPerSqrtCmH2O, String source) { }
