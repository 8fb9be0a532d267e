package leeway.core.rehearsal;

import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.run.Column;
import leeway.core.run.Now;

/**
 * What a lung of several parts did in a row; absent for a linear one.
 *
 * @param openShare    of what can open and close
 * @param shuntAdded   by lung that closed since the pressures of the sheet; negative where more is open
 * @param firstTidalMl into the right lung (or the fast part), and what it holds above relaxation at the end
 * @param pleuralGasMl in the pleura of the first lung
 */
public record LungRow(OptionalDouble openShare, OptionalDouble shuntAdded, OptionalDouble firstTidalMl, OptionalDouble secondTidalMl, OptionalDouble firstEndMl,
                      OptionalDouble secondEndMl, OptionalDouble pleuralGasMl) {
    static Optional<LungRow> of(Now n) {
        LungRow row = new LungRow(known(n, Column.OPEN_SHARE), known(n, Column.SHUNT_ADDED), known(n, Column.FIRST_TIDAL_ML), known(n, Column.SECOND_TIDAL_ML),
                known(n, Column.FIRST_END_ML), known(n, Column.SECOND_END_ML), known(n, Column.PLEURAL_GAS_ML));
        return row.openShare.isPresent() || row.firstEndMl.isPresent() || row.pleuralGasMl.isPresent() ? Optional.of(row) : Optional.empty();
    }

    private static OptionalDouble known(Now n, Column c) {
        double v = n.get(c);
        return Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v);
    }
}
