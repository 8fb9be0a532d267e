package leeway.core.calc;

import java.util.List;
import java.util.Locale;
import leeway.core.gas.Barometer;
import leeway.core.kit.Ventilator;
import leeway.core.quantity.Kind;
import leeway.core.supply.LegNeed;
import leeway.core.supply.OxygenDraw;

/** What a ventilator takes from its oxygen. */
final class DrawCalc implements Calc {
    @Override public String name() { return "draw"; }

    @Override public String plain() { return "Oxygen that a ventilator draws, free gas"; }

    @Override public List<Key> keys() {
        return List.of(Key.mustSheet("ventilator", "ventilator", "a sheet"), Key.must("minute-volume", Kind.FLOW, 0, 200, "as the ventilator shows it: BTPS unless its sheet says otherwise"),
                Key.may("rate", Kind.RATE, 0, 200, "12 /min", "breaths; no example draws by the breath"), Key.may("fio2", Kind.FRACTION, 0.21, 1, "100 %", "set"),
                Key.may("altitude", Kind.ALTITUDE, Barometer.LOWEST_M, Barometer.HIGHEST_M, "0 m", "of cabin or ground"),
                Key.may("leak", Kind.FLOW, 0, 200, "0 L/min", "at cuff and circuit; a ventilator that makes up for it draws it on top"), Key.may("bias-flow", Kind.FLOW, 0, 100, "0 L/min", "beside the breaths, free gas"));
    }

    @Override public String example() { return "--ventilator \"example turbine\" --minute-volume \"8 L/min\" --fio2 \"60 %\" --altitude \"6500 ft\""; }

    @Override public CalcResult of(Given g) {
        Ventilator v = g.sheet("ventilator", Ventilator.class);
        double hPa = Barometer.pressureHPa(g.number("altitude"));
        // with a fixed mass flow more reaches the patient where the air is thin; the volume given is the one set
        double thin = v.gas().altitude() == Ventilator.Altitude.FIXED_MASS_FLOW ? Barometer.SEA_LEVEL_HPA / hPa : 1;
        double leak = v.compensatesLeak() ? g.number("leak") : 0;
        LegNeed need = new LegNeed(g.number("minute-volume") * thin, leak, g.number("bias-flow"), g.number("rate"), g.number("fio2"), 0, 0, hPa);
        OxygenDraw draw = OxygenDraw.of(v, need);
        Answer a = new Answer(this);
        if (thin > 1) a.step("Its mass flow is fixed: %s L/min reach the patient at %s hPa.", Show.number(need.minuteVolumeLPerMin()), Show.number(hPa));
        if (g.number("leak") > leak) a.step("It does not make up for leaks: %s L/min are lost out of the minute volume, not drawn on top.", Show.number(g.number("leak")));
        draw.working().forEach(line -> a.step("%s%s.", line.substring(0, 1).toUpperCase(Locale.ROOT), line.substring(1)));
        double rule = OxygenDraw.byRuleLPerMin(need.minuteVolumeLPerMin(), draw.fio2(), draw.driveLPerMin());
        if (v.machine()) a.step("The rule minute volume × FiO2 would say %s L/min: it counts the oxygen of the air as drawn.", Show.number(rule));
        double high = draw.highLPerMin(v);
        if (high > draw.oxygenLPerMin()) a.step("At the high side of its FiO2 error, %s points more oxygen than set, it takes %s L/min.", Show.number(v.gas().fio2Error() * 100), Show.number(high));
        a.step("Once, its start-up check takes %s L; in standby it takes %s L/min.", Show.number(v.gas().checkL()), Show.number(v.gas().standbyLPerMin()));
        return a.key("drawLPerMin", draw.oxygenLPerMin(), "L/min").key("highLPerMin", high, "L/min").key("fio2", draw.fio2(), "").key("mixedLPerMin", draw.mixedLPerMin(), "L/min")
                .from("mass balance of the mixture, air 21 %; drive gas by the ventilator's sheet (" + v.source() + ")");
    }
}
