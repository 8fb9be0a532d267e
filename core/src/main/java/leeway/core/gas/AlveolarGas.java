package leeway.core.gas;

/**
 * The alveolar gas equation and the carbon dioxide that ventilation leaves.
 * <p>Leaves out nitrogen in exchange: steady states only. Sources: Fenn, Rahn & Otis, Am J Physiol 1946;146:637 (abstract read); Nunn, Applied Respiratory Physiology (from memory).
 */
public final class AlveolarGas {
    private AlveolarGas() {
    }

    /** Oxygen tension of moist inspired gas, mmHg: F·(PB−47). */
    public static double inspiredMmHg(double fio2, double barometricMmHg) {
        return fio2 * (barometricMmHg - GasVolume.BODY_WATER_MMHG);
    }

    /** Full form, mmHg: PIO2 − PaCO2·(F + (1−F)/R); exact at F = 1. */
    public static double oxygenMmHg(double fio2, double barometricMmHg, double paco2MmHg, double respiratoryQuotient) {
        return inspiredMmHg(fio2, barometricMmHg) - paco2MmHg * (fio2 + (1 - fio2) / respiratoryQuotient);
    }

    /** Short form, mmHg: PIO2 − PaCO2/R; up to 10 mmHg lower on pure oxygen. */
    public static double oxygenShortMmHg(double fio2, double barometricMmHg, double paco2MmHg, double respiratoryQuotient) {
        return inspiredMmHg(fio2, barometricMmHg) - paco2MmHg / respiratoryQuotient;
    }

    /** The ventilation hyperbola, mmHg: 863·VCO2/VA with VCO2 in mL/min STPD, expired alveolar ventilation in mL/min BTPS. */
    public static double carbonDioxideMmHg(double vco2MlPerMin, double alveolarVentilationMlPerMin) {
        return GasVolume.STPD_DIVISOR * vco2MlPerMin / alveolarVentilationMlPerMin;
    }

    /** The rate that brings PaCO2 to a target once the stores have settled, per min: rate·PaCO2·(VT−VD)/(target·(VT'−VD)). */
    public static double rateForTarget(double ratePerMin, double paco2MmHg, double tidalMl, double deadSpaceMl, double targetMmHg, double newTidalMl) {
        return ratePerMin * paco2MmHg * (tidalMl - deadSpaceMl) / (targetMmHg * (newTidalMl - deadSpaceMl));
    }

    /** Physiological dead space's share of a tidal volume: (PaCO2 − PE)/PaCO2, PE the mixed expired tension. Bohr 1891, Enghoff 1938. */
    public static double deadSpaceShare(double paco2MmHg, double mixedExpiredMmHg) {
        return (paco2MmHg - mixedExpiredMmHg) / paco2MmHg;
    }

    /** Share of blood that passes unventilated lung: (Cc−Ca)/(Cc−Cv), contents of oxygen in end-capillary, arterial and mixed venous blood. */
    public static double shuntShare(double capillary, double arterial, double venous) {
        return (capillary - arterial) / (capillary - venous);
    }
}
