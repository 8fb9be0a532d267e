package leeway.core.calc;

import java.util.List;
import leeway.core.gas.Blend;
import leeway.core.quantity.Kind;

/** Oxygen in a flow of mixture. */
final class BlendCalc implements Calc {
    @Override public String name() { return "blend"; }

    @Override public String plain() { return "Flow of oxygen in a flow of mixture, and parts of air to oxygen"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("flow", Kind.FLOW, 0, 500, "of the mixture, free gas"), Key.must("fio2", Kind.FRACTION, 0.21, 1, "oxygen in the mixture"),
                Key.may("source", Kind.FRACTION, 0.22, 1, "100 %", "oxygen in the source; 93 % from a concentrator"));
    }

    @Override public String example() { return "--flow \"10 L/min\" --fio2 \"60 %\""; }

    @Override public CalcResult of(Given g) {
        double flow = g.number("flow"), f = g.number("fio2"), source = g.number("source");
        if (f > source) {
            g.wrong("fio2", "a mixture of %s cannot come from a source of %s".formatted(Show.percent(f), Show.percent(source)), "At most " + Show.percent(source) + ".");
            return null;
        }
        double oxygen = Blend.oxygenFlow(flow, f, source);
        Answer a = new Answer(this).step("Oxygen: %s L/min × (%s − 21 %%) ÷ (%s − 21 %%) = %s L/min.", Show.number(flow), Show.percent(f), Show.percent(source), Show.number(oxygen))
                .key("oxygenLPerMin", oxygen, "L/min");
        if (f > Blend.AIR + 1e-9) {
            double ratio = Blend.airToOxygen(f, source);
            a.step("Air to oxygen: (%s − %s) ÷ (%s − 21 %%) = %s.", Show.percent(source), Show.percent(f), Show.percent(f), Show.number(ratio)).key("airToOxygen", ratio, "");
        } else {
            a.step("Air alone: there is no ratio of air to oxygen.");
        }
        return a.from("mass balance; air counted as 21 %");
    }
}
