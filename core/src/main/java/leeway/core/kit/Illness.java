package leeway.core.kit;

import java.util.Optional;
import leeway.core.lung.Lungs;

/**
 * How an illness changes lungs, metabolism and circulation; factors multiply the value of a healthy ventilated patient of that age and size.
 *
 * @param complianceTimes      of the respiratory system
 * @param resistanceTimes      of lungs and airways, without tube and filter
 * @param expiratoryResistanceTimes expiratory over inspiratory resistance
 * @param shunt                share of the output that passes no ventilated lung
 * @param lowVentilationShare  share of perfusion to poorly ventilated lung
 * @param alveolarDeadSpace    share of alveolar ventilation that meets no blood
 * @param lungVolumeTimes      of functional residual capacity
 * @param chestWallShare       chest wall's share of elastance
 * @param oxygenUptakeTimes    of resting uptake under ventilation
 * @param respiratoryQuotient  carbon dioxide made over oxygen taken up
 * @param cardiacOutputTimes   of normal
 * @param haemoglobinTimes     of normal for the age
 * @param baseExcessMmolL      metabolic state
 * @param temperatureCel       usual body temperature
 * @param spread               of ventilation over perfusion, standard deviation of the natural logarithm; 0: none
 * @param group                which strategy it belongs to: adult, obstructive, head injury, child …
 * @param testLung             no metabolism, no blood
 * @param lungs                what the lungs have beyond one linear compartment
 */
public record Illness(String name, Band complianceTimes, Band resistanceTimes, Band expiratoryResistanceTimes, Band shunt, Band lowVentilationShare,
                      Band alveolarDeadSpace, Band lungVolumeTimes, Band chestWallShare, Band oxygenUptakeTimes, Band respiratoryQuotient,
                      Band cardiacOutputTimes, Band haemoglobinTimes, Band baseExcessMmolL, double temperatureCel, Optional<String> strategy,
                      String group, boolean testLung, String plain, String source, Band spread, Lungs lungs) {
    /** A linear lung without a spread of ventilation over perfusion. */
    public Illness(String name, Band complianceTimes, Band resistanceTimes, Band expiratoryResistanceTimes, Band shunt, Band lowVentilationShare,
                   Band alveolarDeadSpace, Band lungVolumeTimes, Band chestWallShare, Band oxygenUptakeTimes, Band respiratoryQuotient,
                   Band cardiacOutputTimes, Band haemoglobinTimes, Band baseExcessMmolL, double temperatureCel, Optional<String> strategy,
                   String group, boolean testLung, String plain, String source) {
        this(name, complianceTimes, resistanceTimes, expiratoryResistanceTimes, shunt, lowVentilationShare, alveolarDeadSpace, lungVolumeTimes, chestWallShare, oxygenUptakeTimes,
                respiratoryQuotient, cardiacOutputTimes, haemoglobinTimes, baseExcessMmolL, temperatureCel, strategy, group, testLung, plain, source, Band.of(0), Lungs.LINEAR);
    }
}
