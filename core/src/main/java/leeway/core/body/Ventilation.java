package leeway.core.body;

/**
 * What reaches the lung, on average.
 *
 * @param tidalMl           inspired at the patient's airway, BTPS
 * @param meanAlveolarCmH2O mean alveolar pressure, which holds back the output of the heart; 0 leaves that out
 */
public record Ventilation(double tidalMl, double ratePerMin, double fio2, double barometerMmHg, double meanAlveolarCmH2O) {
    public Ventilation {
        if (!(tidalMl >= 0 && ratePerMin >= 0 && fio2 >= 0 && fio2 <= 1 && barometerMmHg > 100)) {
            throw new IllegalArgumentException("ventilation of %s mL at %s /min, FiO2 %s, %s mmHg".formatted(tidalMl, ratePerMin, fio2, barometerMmHg));
        }
    }
}
