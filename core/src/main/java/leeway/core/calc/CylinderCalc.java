package leeway.core.calc;

import java.util.List;
import leeway.core.gas.RealOxygen;
import leeway.core.quantity.Kind;

/** What a cylinder holds and gives. */
final class CylinderCalc implements Calc {
    static final String SOURCE = "equation of state of oxygen: Span and Wagner, Int. J. Thermophys. 24 (2003) 41; within 0.3 % of the reference equation";

    static Key water() { return Key.must("water", Kind.STORE_VOLUME, 0.05, 200, "water capacity of the cylinder, or its size, \"US E\" or \"UK E\""); }

    static Key pressure() { return Key.must("pressure", Kind.STORE_PRESSURE, 0, 350, "as the gauge shows it"); }

    static Key temperature() { return Key.may("temperature", Kind.TEMPERATURE, -60, RealOxygen.HOTTEST_CEL, "20 Cel", "of the gas when the gauge was read"); }

    static Key residual() { return Key.may("residual", Kind.STORE_PRESSURE, 0, 350, "0 bar", "gauge pressure that stays inside"); }

    /** What a size stands for, where one was given. */
    static void size(Given g, Answer a) {
        g.word("water").ifPresent(size -> a.step("%s: %s L of water, from memory and on the small side; the stamp on the cylinder comes first.", size, Show.number(g.number("water"))));
    }

    @Override public String name() { return "cylinder"; }

    @Override public String plain() { return "Oxygen in a cylinder, as a real gas: all, and what flows out"; }

    @Override public List<Key> keys() { return List.of(water(), pressure(), temperature(), residual()); }

    @Override public String example() { return "--water \"10 L\" --pressure \"200 bar\" --temperature \"15 Cel\" --residual \"10 bar\""; }

    @Override public CalcResult of(Given g) {
        double water = g.number("water"), bar = g.number("pressure"), cel = g.number("temperature"), residual = g.number("residual");
        double z = RealOxygen.zAtGauge(bar, cel), free = RealOxygen.freeGasL(water, bar, cel);
        double usable = RealOxygen.usableL(water, bar, cel, residual), ideal = RealOxygen.idealGasL(water, bar, cel);
        Answer a = new Answer(this);
        size(g, a);
        return a.step("Compressibility at %s bar absolute and %s °C: Z = %s.", Show.number(bar + RealOxygen.STANDARD_BAR), Show.number(cel), Show.number(z))
                .step("Content: %s L × density at the gauge over density at 15 °C and 1013.25 hPa = %s L, the last atmosphere included.", Show.number(water), Show.digits(free, 5))
                .step("Down to %s bar on the gauge %s L flow out.", Show.number(residual), Show.digits(usable, 5))
                .step("As an ideal gas it would be %s L: %s %% %s.", Show.digits(ideal, 5), Show.digits(Math.abs(100 * (ideal / free - 1)), 2), ideal < free ? "less" : "more")
                .key("freeGasL", free, "L").key("usableL", usable, "L").key("idealGasL", ideal, "L").key("z", z, "").from(SOURCE);
    }
}
