package leeway.core.calc;

import java.util.List;
import leeway.core.kit.Airway;
import leeway.core.lung.Tube;
import leeway.core.quantity.Kind;

/** What an airway tube costs in pressure. */
final class TubeCalc implements Calc {
    /** Length where only a diameter is given: 24 to 32 cm by size, the least lengths of ISO 5361, from memory; the catalogue has each. */
    private static final double LENGTH_CM = 30, CHILD_LENGTH_CM = 20, CHILD_BELOW_MM = 6;

    @Override public String name() { return "tube"; }

    @Override public String plain() { return "Pressure that an airway tube costs at a flow"; }

    @Override public List<Key> keys() {
        return List.of(Key.mustSheetOr("tube", "airway", Kind.DIAMETER, 2, 12, "an airway of the catalogue, or an inner diameter"), Key.must("flow", Kind.FLOW, 0, 300, "through the tube"));
    }

    @Override public String example() { return "--tube \"tracheal tube 7.5 mm\" --flow \"30 L/min\""; }

    @Override public CalcResult of(Given g) {
        double flow = g.number("flow") / 60, diameter, length, times;
        Airway airway = g.sheet("tube", Airway.class);
        if (airway != null) {
            if (airway.type() == Airway.Type.FACE_MASK) {
                g.wrong("tube", "a face mask is no tube", "For example --tube \"tracheal tube 7.5 mm\".");
                return null;
            }
            diameter = airway.innerDiameterMm();
            length = airway.lengthCm();
            times = airway.frictionTimes();
        } else {
            diameter = g.number("tube");
            length = diameter < CHILD_BELOW_MM ? CHILD_LENGTH_CM : LENGTH_CM;
            times = Tube.FITTED;
        }
        Tube tube = new Tube(diameter, length);
        double straight = tube.straightTurbulentCmH2O(flow, Tube.DENSITY_KG_PER_M3), drop = tube.dropCmH2O(flow) * times / Tube.FITTED;
        return new Answer(this).step("Inner diameter %s mm, length %s cm, air at 37 °C.", Show.number(diameter), Show.number(length))
                .step("Straight smooth pipe, turbulent (Blasius), at %s L/min: %s cmH2O.", Show.number(flow * 60), Show.number(straight))
                .step("Times %s for bend, entry and connector (or laminar flow in the bend, where that costs more): %s cmH2O. Trust it to ±25 %%; secretions and kinks add.", Show.number(times), Show.number(drop))
                .key("dropCmH2O", drop, "cmH2O").from("Blasius as used by Jarreau, J Appl Physiol 1999;87:36; the factor after Futagawa, BMC Anesthesiol 2017");
    }
}
