package leeway.core.calc;

import java.util.List;
import leeway.core.gas.RealOxygen;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Units;
import leeway.core.supply.WallTable;

/** How long a cylinder lasts, by its water capacity or by the trade's factor, with a table for the wall. */
final class DurationCalc implements Calc {
    @Override public String name() { return "duration"; }

    @Override public String plain() { return "Minutes that a cylinder lasts at a flow, and a table of them"; }

    @Override public List<Key> keys() {
        return List.of(Key.may("water", Kind.STORE_VOLUME, 0.05, 200, "water capacity of the cylinder, or its size, \"US E\" or \"UK E\"; or a factor"),
                Key.may("factor", Kind.CYLINDER_FACTOR, 0.001, 100, "litres per unit of gauge pressure, as the trade's tables print it; or water"),
                CylinderCalc.pressure(), CylinderCalc.residual(), Key.must("flow", Kind.FLOW, 0, 500, "drawn, free gas"), CylinderCalc.temperature());
    }

    @Override public String example() { return "--factor \"0.28 L/psi\" --pressure \"2000 psi\" --residual \"200 psi\" --flow \"10 L/min\""; }

    @Override public CalcResult of(Given g) {
        double bar = g.number("pressure"), residual = g.number("residual"), flow = g.number("flow");
        if (g.has("water") == g.has("factor")) g.wrong(g.has("water") ? "factor" : "water", "a duration needs the cylinder's water capacity or its factor, one of them", "For example --water \"2 L\".");
        if (!(flow > 0)) g.wrong("flow", "a flow of 0 lasts for ever", "Give a flow, for example \"5 L/min\".");
        if (residual >= bar) g.wrong("residual", "%s bar are to stay in a cylinder that shows %s bar".formatted(Show.number(residual), Show.number(bar)), "Less than what the gauge shows.");
        if (!g.complaints().isEmpty()) return null;
        Answer a = new Answer(this);
        if (g.has("factor")) {
            if (g.said("temperature")) a.step("A factor knows no temperature: it is left out.");
            double perBar = Units.L_PER_BAR.from(g.number("factor"), Kind.CYLINDER_FACTOR.internal());
            double litres = perBar * (bar - residual);
            a.step("%s L/bar × (%s − %s) bar = %s L.", Show.number(perBar), Show.number(bar), Show.number(residual), Show.number(litres))
                    .step("%s L ÷ %s L/min = %s min.", Show.number(litres), Show.number(flow), Show.number(litres / flow));
            WallTable.ofFactor(perBar, residual, bar, flow).lines().forEach(line -> a.step("%s", line));
            return a.key("minutes", litres / flow, "min").key("usableL", litres, "L").from("duration formula of respiratory care texts: factor × (pressure − residual) ÷ flow");
        }
        CylinderCalc.size(g, a);
        double water = g.number("water"), cel = g.number("temperature");
        double litres = RealOxygen.usableL(water, bar, cel, residual);
        a.step("%s L of water at %s bar and %s °C give %s L down to %s bar.", Show.number(water), Show.number(bar), Show.number(cel), Show.digits(litres, 5), Show.number(residual))
                .step("%s L ÷ %s L/min = %s min.", Show.digits(litres, 5), Show.number(flow), Show.number(litres / flow));
        WallTable.of(water, cel, residual, bar, flow).lines().forEach(line -> a.step("%s", line));
        return a.key("minutes", litres / flow, "min").key("usableL", litres, "L").from(CylinderCalc.SOURCE);
    }
}
