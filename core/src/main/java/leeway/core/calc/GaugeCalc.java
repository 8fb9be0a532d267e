package leeway.core.calc;

import java.util.List;
import leeway.core.gas.RealOxygen;
import leeway.core.quantity.Kind;

/** What the gauge of the same closed cylinder shows at another temperature. */
final class GaugeCalc implements Calc {
    @Override public String name() { return "gauge"; }

    @Override public String plain() { return "Gauge of a closed cylinder carried from one temperature to another"; }

    @Override public List<Key> keys() {
        return List.of(CylinderCalc.pressure(), CylinderCalc.temperature(), Key.must("to", Kind.TEMPERATURE, -60, RealOxygen.HOTTEST_CEL, "temperature of the same cylinder afterwards"));
    }

    @Override public String example() { return "--pressure \"200 bar\" --temperature \"15 Cel\" --to \"-20 Cel\""; }

    @Override public CalcResult of(Given g) {
        double bar = g.number("pressure"), cel = g.number("temperature"), to = g.number("to");
        double shown = RealOxygen.gaugeAtBar(bar, cel, to);
        return new Answer(this)
                .step("The same gas in the same volume: density at %s bar and %s °C = %s L of free gas per L of water.", Show.number(bar), Show.number(cel), Show.number(RealOxygen.freeGasPerLitre(bar, cel)))
                .step("At %s °C this density has %s bar on the gauge.", Show.number(to), Show.number(shown))
                .step(Math.abs(to - cel) < 0.05 ? "Nothing changes." : "%s bar per °C: a gauge that %s with the temperature is not gas %s.", Show.digits((shown - bar) / (to - cel), 3), to < cel ? "falls" : "rises", to < cel ? "used" : "gained")
                .key("pressureBar", shown, "bar").from(CylinderCalc.SOURCE);
    }
}
