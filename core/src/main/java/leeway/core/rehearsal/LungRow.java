package leeway.core.rehearsal;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.lung.Lungs;
import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * What a lung of several parts did in a row; absent for a linear one.
 *
 * @param openShare    of what can open and close
 * @param shuntAdded   by lung that closed since the pressures of the sheet; negative where more is open
 * @param parts        each of two lungs or parts; absent where there is one
 * @param pleuralGasMl in the pleura of the first lung
 */
public record LungRow(OptionalDouble openShare, OptionalDouble shuntAdded, Optional<Parts> parts, OptionalDouble pleuralGasMl) {
    /** Gas that moved in a row by less is none, mL. */
    private static final double NONE_ML = 1;

    /** What the two parts of these lungs are called; absent where there is one. */
    public static Optional<Names> names(Lungs lungs) {
        return lungs.second() == 0 ? Optional.empty() : Optional.of(lungs.apart() ? new Names("right", "left") : new Names("fast", "slow"));
    }

    /** What two parts are called, the first first. */
    public record Names(String first, String second) { }

    /** Two lungs, or a fast and a slow part of one. */
    public record Parts(Part first, Part second) {
        /** Share of the tidal volume that goes to the first; absent where hardly any moved. */
        public OptionalDouble firstShare() {
            double all = first.tidalMl + second.tidalMl;
            return all < NONE_ML ? OptionalDouble.empty() : OptionalDouble.of(first.tidalMl / all);
        }
    }

    /**
     * One of two lungs or parts.
     *
     * @param tidalMl       that it gained in the inflation
     * @param endMl         what it holds above relaxation at the end of the row
     * @param plateauCmH2O  alveolar pressure at the end of the inflation, muscles left out
     * @param peepCmH2O     the same at the end of the row
     */
    public record Part(String name, double tidalMl, double endMl, double plateauCmH2O, double peepCmH2O) { }

    static Optional<LungRow> of(Now n, Optional<Names> names) {
        Optional<Parts> parts = names.filter(x -> !Double.isNaN(n.get(Column.FIRST_END_ML))).map(x -> new Parts(
                new Part(x.first(), n.get(Column.FIRST_TIDAL_ML), n.get(Column.FIRST_END_ML), n.get(Column.FIRST_PLATEAU_CMH2O), n.get(Column.FIRST_PEEP_CMH2O)),
                new Part(x.second(), n.get(Column.SECOND_TIDAL_ML), n.get(Column.SECOND_END_ML), n.get(Column.SECOND_PLATEAU_CMH2O), n.get(Column.SECOND_PEEP_CMH2O))));
        LungRow row = new LungRow(known(n, Column.OPEN_SHARE), known(n, Column.SHUNT_ADDED), parts, known(n, Column.PLEURAL_GAS_ML));
        return row.openShare.isPresent() || parts.isPresent() || row.pleuralGasMl.isPresent() ? Optional.of(row) : Optional.empty();
    }

    private static OptionalDouble known(Now n, Column c) {
        double v = n.get(c);
        return Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v);
    }
}
