package leeway.core.journey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.core.gas.Barometer;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.supply.LegNeed;
import leeway.core.supply.OxygenDraw;
import leeway.core.transport.Leg;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;

/**
 * One leg at its medians: where on the clock, under which pressure, and the steady state that its settings lead to.
 *
 * @param draw from the leg's first store
 */
public record LegState(Leg leg, double fromMin, double toMin, double barometerHPa, Steady steady, LegNeed need, OxygenDraw draw) {
    /** All legs of a transport under these settings. */
    public static List<LegState> of(Transport t, Ventilated v, Settings settings) {
        List<LegState> states = new ArrayList<>();
        double atMin = 0;
        for (Leg leg : t.legs()) {
            double hPa = Barometer.pressureHPa(leg.altitudeM());
            if (v.ventilator().alone()) {
                states.add(unaided(t, leg, v, settings, hPa, atMin, states));
                atMin += leg.takesMin();
                continue;
            }
            Steady wished = states.isEmpty() ? Steady.of(v, settings, hPa) : states.get(states.size() - 1).steady;
            if (wished.barometerHPa() != hPa) wished = Steady.later(v, settings, hPa, wished.fio2(), states.get(0).steady);
            OxygenDraw draw = draw(t, leg, need(v, wished));
            Steady steady = draw.fio2() == wished.fio2() ? wished : !states.isEmpty() && Steady.answers(v, settings) ? Steady.later(v, settings, hPa, draw.fio2(), states.get(0).steady)
                    : new Steady(wished.settings(), wished.breathSettings(), wished.breath(), Steady.gases(v, wished.breath(), hPa, draw.fio2()), hPa, draw.fio2());
            states.add(new LegState(leg, atMin, atMin + leg.takesMin(), hPa, steady, need(v, steady), draw));
            atMin += leg.takesMin();
        }
        return List.copyOf(states);
    }

    /** Free flow: the oxygen that flows is the store's flowmeter's or what is set, and what is breathed of it follows. */
    private static LegState unaided(Transport t, Leg leg, Ventilated v, Settings settings, double hPa, double atMin, List<LegState> before) {
        double flow = OxygenDraw.freeFlowLPerMin(t.ventilator(), settings.get(Setting.BIAS_FLOW, 0), leg.oxygen().isEmpty() ? Optional.empty() : Optional.of(t.store(leg.oxygen().get(0))));
        Settings of = settings.with(Setting.BIAS_FLOW, flow);
        Steady steady = before.isEmpty() ? Steady.of(v, of, hPa) : Steady.later(v, of, hPa, 0, before.get(0).steady);
        return new LegState(leg, atMin, atMin + leg.takesMin(), hPa, steady, steady.need(), draw(t, leg, steady.need()));
    }

    /**
     * What the supply has to bring. A ventilator that makes up for leaks gives the missing volume on top, so that as much again
     * leaks and as much again reaches the patient; reckoned to the set volume, which is the cautious side.
     */
    private static LegNeed need(Ventilated v, Steady steady) {
        LegNeed need = steady.need();
        boolean volume = steady.settings().mode().map(m -> m.control() == Mode.Control.VOLUME).orElse(false);
        if (!v.ventilator().compensatesLeak() || !volume || need.leakLPerMin() <= 0) return need;
        double setLPerMin = steady.settings().get(Setting.TIDAL_VOLUME, 0) * need.ratePerMin() / 1000;
        double missing = Math.max(0, Math.min(need.leakLPerMin(), setLPerMin - need.minuteVolumeLPerMin()));
        return need.withLeakLPerMin(need.leakLPerMin() + missing);
    }

    private static OxygenDraw draw(Transport t, Leg leg, LegNeed need) {
        if (leg.oxygen().isEmpty()) return OxygenDraw.of(t.ventilator(), need);
        Store store = t.store(leg.oxygen().get(0));
        return OxygenDraw.of(t.ventilator(), need, store);
    }
}
