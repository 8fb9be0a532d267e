package leeway.core.breath;

import leeway.core.lung.Lungs;
import leeway.core.lung.Rohrer;

/**
 * The patient's mechanics and what stands between them and the ventilator, as numbers. Leaves out inertia, and the
 * circuit's own resistance in inspiration (the ventilator regulates at the Y-piece).
 *
 * @param resistanceCmH2OSPerL           airways and lungs, both directions, without tube and filter
 * @param expiratoryExtraCmH2OSPerL      what the airways add in expiration
 * @param complianceMlPerCmH2O           static, respiratory system
 * @param chestWallShare                 share of the chest wall in the elastance, 0 to 0.95
 * @param tube                           the airway tube
 * @param filterCmH2OSPerL               filter at the patient, both directions
 * @param valveCmH2OSPerL                expiratory valve and limb
 * @param circuitComplianceMlPerCmH2O    compressible volume and give of the circuit
 * @param cuffLeakLPerMin                past the cuff, stated at 20 cmH2O
 * @param circuitLeakLPerMin             at the Y-piece, stated at 20 cmH2O
 * @param slowShare                      share of the compliance in a slow compartment; 0: one compartment
 * @param slowFactor                     time constant of the slow over that of the fast compartment
 * @param lungs                          what the lungs have beyond one linear compartment
 */
public record Mechanics(double resistanceCmH2OSPerL, double expiratoryExtraCmH2OSPerL, double complianceMlPerCmH2O, double chestWallShare,
        Rohrer tube, double filterCmH2OSPerL, double valveCmH2OSPerL, double circuitComplianceMlPerCmH2O,
        double cuffLeakLPerMin, double circuitLeakLPerMin, double slowShare, double slowFactor, Lungs lungs) {
    public Mechanics {
        if (lungs == null) throw new IllegalArgumentException("lungs are missing");
        within("resistance", resistanceCmH2OSPerL, 0, 2000);
        within("extra expiratory resistance", expiratoryExtraCmH2OSPerL, 0, 2000);
        within("compliance", complianceMlPerCmH2O, 0.05, 1000);
        within("chest wall share", chestWallShare, 0, 0.95);
        within("filter resistance", filterCmH2OSPerL, 0, 2000);
        within("valve resistance", valveCmH2OSPerL, 0, 2000);
        within("circuit compliance", circuitComplianceMlPerCmH2O, 0, 10);
        within("cuff leak", cuffLeakLPerMin, 0, 500);
        within("circuit leak", circuitLeakLPerMin, 0, 500);
        within("slow share", slowShare, 0, 0.95);
        within("slow factor", slowFactor, 1, 100);
    }

    /** With a linear lung. */
    public Mechanics(double resistanceCmH2OSPerL, double expiratoryExtraCmH2OSPerL, double complianceMlPerCmH2O, double chestWallShare,
            Rohrer tube, double filterCmH2OSPerL, double valveCmH2OSPerL, double circuitComplianceMlPerCmH2O,
            double cuffLeakLPerMin, double circuitLeakLPerMin, double slowShare, double slowFactor) {
        this(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, Lungs.LINEAR);
    }

    /** Refuses a number outside its bounds, with its name. */
    static void within(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) throw new IllegalArgumentException("%s (%s) lies outside %s to %s".formatted(what, value, low, high));
    }

    /** One linear compartment, nothing else. */
    public static Mechanics linear(double resistanceCmH2OSPerL, double complianceMlPerCmH2O) {
        return new Mechanics(resistanceCmH2OSPerL, 0, complianceMlPerCmH2O, 0.35, Rohrer.NONE, 0, 0, 0, 0, 0, 0, 1);
    }

    public Mechanics withTube(Rohrer other) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, other, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, lungs);
    }

    public Mechanics withLungs(double resistance, double expiratoryExtra, double compliance) {
        return new Mechanics(resistance, expiratoryExtra, compliance, chestWallShare, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, lungs);
    }

    public Mechanics withFilterAndCircuit(double filter, double valve, double circuitCompliance) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, tube, filter, valve,
                circuitCompliance, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, lungs);
    }

    public Mechanics withLeaks(double cuff, double circuit) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuff, circuit, slowShare, slowFactor, lungs);
    }

    public Mechanics withSlow(double share, double factor) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, share, factor, lungs);
    }

    public Mechanics withLungs(Lungs other) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, chestWallShare, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, other);
    }

    public Mechanics withChestWall(double share) {
        return new Mechanics(resistanceCmH2OSPerL, expiratoryExtraCmH2OSPerL, complianceMlPerCmH2O, share, tube, filterCmH2OSPerL, valveCmH2OSPerL,
                circuitComplianceMlPerCmH2O, cuffLeakLPerMin, circuitLeakLPerMin, slowShare, slowFactor, lungs);
    }
}
