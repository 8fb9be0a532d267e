package leeway.core.rehearsal;

import java.util.Optional;
import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * Where the energy of an inflation came from and where it went, J, each by its own integral over the volume that went in.
 * What ventilator and muscles put in together is what recoil, resistance and PEEP take. Leaves out what the muscles did
 * before the ventilator answered, which is the work of breathing's.
 *
 * @param ventilatorJ that the ventilator put in, PEEP's share included
 * @param musclesJ    that the inspiratory muscles put in meanwhile; negative where expiratory ones worked against it
 * @param elasticJ    into the recoil of lung and chest wall, above that at the start
 * @param resistiveJ  lost in tube, filter and airways
 * @param peepJ       lifting the volume from the pressure at the start
 */
public record EnergyShares(double ventilatorJ, double musclesJ, double elasticJ, double resistiveJ, double peepJ) {
    /** Absent where there was no breath. */
    static Optional<EnergyShares> of(Now n, boolean breath) {
        return !breath ? Optional.empty() : Optional.of(new EnergyShares(n.get(Column.ENERGY_J), n.get(Column.ENERGY_MUSCLE_J), n.get(Column.ENERGY_ELASTIC_J),
                n.get(Column.ENERGY_RESISTIVE_J), n.get(Column.ENERGY_PEEP_J)));
    }
}
