package leeway.core.journey;

import java.util.ArrayList;
import java.util.List;
import leeway.core.gas.Barometer;
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
            Steady wished = states.isEmpty() || states.get(states.size() - 1).barometerHPa != hPa ? Steady.of(v, settings, hPa)
                    : states.get(states.size() - 1).steady;
            OxygenDraw draw = draw(t, leg, wished.need());
            Steady steady = draw.fio2() == wished.fio2() ? wished
                    : new Steady(wished.settings(), wished.breathSettings(), wished.breath(), Steady.gases(v, wished.breath(), hPa, draw.fio2()), hPa, draw.fio2());
            states.add(new LegState(leg, atMin, atMin + leg.takesMin(), hPa, steady, steady.need(), draw));
            atMin += leg.takesMin();
        }
        return List.copyOf(states);
    }

    private static OxygenDraw draw(Transport t, Leg leg, LegNeed need) {
        if (leg.oxygen().isEmpty()) return OxygenDraw.of(t.ventilator(), need);
        Store store = t.store(leg.oxygen().get(0));
        return OxygenDraw.of(t.ventilator(), need, store);
    }
}
