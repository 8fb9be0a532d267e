package leeway.core.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.body.PatientModel;
import leeway.core.gas.AcidBase;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Mode;
import leeway.core.kit.Policy;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.settings.Measure;
import leeway.core.settings.Solved;
import leeway.core.start.Start;

/**
 * The limits of a map: those of the strategy, where it is silent those of the policy, and what device and settings bound.
 * Of PaCO2 and pH, which say the same of one patient, the one that the strategy does not name is opened so far that it never
 * speaks first.
 */
final class Bounds {
    /** Distances from the edge of a band at which the room is full; common practice, no source. */
    private static final double FULL_SATURATION = 0.04, FULL_ML_PER_KG = 2, FULL_PH = 0.075, FULL_MMHG = 7.5;
    private static final double SATURATED = 0.95;
    /** Room for what saturation does to acid and base, so that the silent one of the two never speaks first. */
    private static final double SLACK_MMHG = 2, SLACK_PH = 0.02;
    private final Policy.Targets policy;
    private final List<Solved.Kept> strategy;
    private final List<Bound> all = new ArrayList<>();

    private Bounds(Policy.Targets policy, List<Solved.Kept> strategy) {
        this.policy = policy;
        this.strategy = strategy;
    }

    static List<Bound> of(Start start, Policy policy, Settings settings) {
        Bounds b = new Bounds(policy.targets(), start.solved().kept());
        b.most(Measure.PLATEAU, policy.targets().plateauCmH2O());
        b.most(Measure.DRIVING, policy.targets().drivingCmH2O());
        b.most(Measure.MECHANICAL_POWER, policy.targets().mechanicalPowerJPerMin());
        b.most(Measure.AUTO_PEEP, policy.targets().autoPeepCmH2O());
        b.peak(start.ventilated(), settings);
        b.volume();
        b.flow(start.ventilated(), settings);
        if (start.ventilated().patient().living()) {
            b.carbonDioxide(start.ventilated().patient());
            double least = b.from(Measure.SATURATION).orElse(policy.targets().saturationLow());
            b.all.add(Bound.edge("saturation low", "1", Bound.measure(Measure.SATURATION), false, least, FULL_SATURATION));
        }
        return b.all;
    }

    private Optional<Solved.Kept> target(Measure m) { return strategy.stream().filter(k -> k.measure() == m).findFirst(); }

    private OptionalDouble from(Measure m) { return target(m).map(Solved.Kept::from).orElse(OptionalDouble.empty()); }

    private OptionalDouble to(Measure m) { return target(m).map(Solved.Kept::to).orElse(OptionalDouble.empty()); }

    private void most(Measure m, double otherwise) { all.add(Bound.most(m.words(), m.unit().symbol(), Bound.measure(m), to(m).orElse(otherwise))); }

    /** The set pressure limit: there the breath is cut and the volume falls short. */
    private void peak(Ventilated v, Settings settings) {
        double limit = Math.min(settings.get(Setting.PRESSURE_LIMIT, Double.POSITIVE_INFINITY), to(Measure.PEAK).orElse(Double.POSITIVE_INFINITY));
        if (v.ventilator().maxPressureCmH2O() > 0) limit = Math.min(limit, v.ventilator().maxPressureCmH2O());
        if (Double.isFinite(limit)) all.add(Bound.most("peak pressure", "cmH2O", Bound.measure(Measure.PEAK), limit));
    }

    private void volume() {
        OptionalDouble from = from(Measure.VOLUME_PER_WEIGHT);
        OptionalDouble to = to(Measure.VOLUME_PER_WEIGHT);
        String name = Measure.VOLUME_PER_WEIGHT.words();
        from.ifPresent(f -> all.add(Bound.edge(name + " low", "mL/kg", Bound.measure(Measure.VOLUME_PER_WEIGHT), false, f, FULL_ML_PER_KG)));
        to.ifPresent(t -> all.add(Bound.edge(name + " high", "mL/kg", Bound.measure(Measure.VOLUME_PER_WEIGHT), true, t, FULL_ML_PER_KG)));
    }

    /** A set volume needs a flow; a set pressure only takes longer. */
    private void flow(Ventilated v, Settings settings) {
        boolean volume = settings.mode().map(m -> m.control() == Mode.Control.VOLUME).orElse(false);
        if (volume && v.ventilator().maxFlowLPerMin() > 0) all.add(Bound.most("inspiratory flow", "L/min", (s, kg) -> flow(s.settings()), v.ventilator().maxFlowLPerMin()));
    }

    private static double flow(Settings s) {
        return s.get(Setting.TIDAL_VOLUME, Double.NaN) / (s.get(Setting.INSPIRATORY_TIME, Double.NaN) - s.get(Setting.PAUSE, 0)) * 0.06;
    }

    private void carbonDioxide(PatientModel p) {
        boolean byPh = target(Measure.PH).isPresent();
        boolean byTension = target(Measure.PACO2).isPresent();
        double phLow = from(Measure.PH).orElse(policy.phLow());
        double phHigh = to(Measure.PH).orElse(policy.phHigh());
        double low = from(Measure.PACO2).orElse(policy.paco2LowMmHg());
        double high = to(Measure.PACO2).orElse(policy.paco2HighMmHg());
        if (byPh && !byTension) {
            high = Math.max(high, AcidBase.pco2MmHg(phLow, p.baseExcessMmolL(), p.haemoglobinGPerDl(), SATURATED) + SLACK_MMHG);
            low = Math.max(5, Math.min(low, AcidBase.pco2MmHg(phHigh, p.baseExcessMmolL(), p.haemoglobinGPerDl(), SATURATED) - SLACK_MMHG));
        } else if (byTension && !byPh) {
            phLow = Math.min(phLow, AcidBase.phOf(high, p.baseExcessMmolL(), p.haemoglobinGPerDl(), SATURATED) - SLACK_PH);
            phHigh = Math.max(phHigh, AcidBase.phOf(low, p.baseExcessMmolL(), p.haemoglobinGPerDl(), SATURATED) + SLACK_PH);
        }
        all.add(Bound.edge("pH low", "1", Bound.measure(Measure.PH), false, phLow, FULL_PH));
        all.add(Bound.edge("pH high", "1", Bound.measure(Measure.PH), true, phHigh, FULL_PH));
        all.add(Bound.edge("PaCO2 low", "mmHg", Bound.measure(Measure.PACO2), false, low, FULL_MMHG));
        all.add(Bound.edge("PaCO2 high", "mmHg", Bound.measure(Measure.PACO2), true, high, FULL_MMHG));
    }

}
