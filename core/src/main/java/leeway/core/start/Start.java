package leeway.core.start;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import leeway.core.body.PatientModel;
import leeway.core.breath.Mechanics;
import leeway.core.gas.Barometer;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.run.Stopped;
import leeway.core.settings.ByIllness;
import leeway.core.settings.PatientFacts;
import leeway.core.settings.Solved;
import leeway.core.settings.Solver;
import leeway.core.settings.Strategy;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Transport;

/**
 * What a transport starts with: patient, strategy, and settings that keep its targets or name the conflict.
 *
 * @param picked why this strategy, where the file leaves it to the illness
 */
public record Start(Ventilated ventilated, PatientFacts facts, Strategy strategy, Optional<String> picked, Solved solved, double barometerHPa) {
    /** The volume at which the dead space of the lung is reckoned, mL/kg: common practice, no source. */
    private static final double USUAL_ML_PER_KG = 7;
    /** The flow at which a tube's resistance is reckoned: a usual breath in one second. */
    private static final double USUAL_S = 1;

    /** @param strategies the sheet of a name */
    public static Start of(Transport t, Ventilated v, Function<String, Strategy> strategies) { return of(t, v, strategies, () -> false); }

    /** The same; the search stops with {@link Stopped} soon after it is told to be unwanted. */
    public static Start of(Transport t, Ventilated v, Function<String, Strategy> strategies, BooleanSupplier unwanted) {
        double hPa = Barometer.pressureHPa(t.legs().get(0).altitudeM());
        PatientFacts facts = facts(v, hPa);
        Optional<ByIllness.Pick> pick = t.strategy().equals(ByIllness.NAME) ? Optional.of(ByIllness.pick(facts, t.illness())) : Optional.empty();
        Strategy strategy = strategies.apply(pick.map(ByIllness.Pick::strategy).orElse(t.strategy()));
        SteadyModel model = new SteadyModel(v, hPa);
        Solved solved = Solver.solve(facts, t.illness(), t.ventilator(), t.prescribed(), strategy, settings -> {
            if (unwanted.getAsBoolean()) throw new Stopped(0);
            return model.at(settings);
        });
        return new Start(v, facts, strategy, pick.map(ByIllness.Pick::why), solved, hPa);
    }

    public Settings settings() { return solved.suggested().settings(); }

    /** What a strategy may know of this patient. */
    public static PatientFacts facts(Ventilated v, double barometerHPa) {
        PatientModel p = v.patient();
        Mechanics m = v.mechanics();
        double usualMl = USUAL_ML_PER_KG * p.predictedKg();
        double alveolarMl = Math.max(0, usualMl - p.seriesDeadSpaceMl()) * p.alveolarDeadSpaceAt(usualMl);
        double tube = m.tube().k1CmH2OSPerL() + m.tube().k2CmH2OS2PerL2() * usualMl / 1000 / USUAL_S;
        double resistance = m.resistanceCmH2OSPerL() + m.expiratoryExtraCmH2OSPerL() + tube + m.filterCmH2OSPerL() + m.valveCmH2OSPerL();
        return new PatientFacts(p.sex(), p.ageYears(), p.heightCm(), p.weightKg(), p.predictedKg(), v.effort().orElse(PatientEntry.Effort.NONE),
                m.complianceMlPerCmH2O(), Math.max(0.1, resistance), p.seriesDeadSpaceMl() + alveolarMl, p.vco2MlPerMin(), p.shunt(), Barometer.mmHg(barometerHPa));
    }
}
