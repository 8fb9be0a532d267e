package leeway.core.calc;

import java.util.List;
import leeway.core.breath.ClosedForm;
import leeway.core.quantity.Kind;

/** Gas held back by an expiration cut short. */
final class TrappedCalc implements Calc {
    @Override public String name() { return "trapped"; }

    @Override public String plain() { return "auto-PEEP and trapped gas where expiration ends too early"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("tidal-volume", Kind.VOLUME, 1, 5000, "of each breath"), Key.must("compliance", Kind.COMPLIANCE, 0.05, 1000, "static, respiratory system"),
                Key.must("time-constant", Kind.TIME, 0.01, 30, "of expiration: resistance, tube and valve in it, times compliance"), Key.must("expiratory-time", Kind.TIME, 0.05, 60, "from the end of inspiration to the next"));
    }

    @Override public String example() { return "--tidal-volume \"500 mL\" --compliance \"50 mL/cmH2O\" --time-constant \"1 s\" --expiratory-time \"2 s\""; }

    @Override public CalcResult of(Given g) {
        double vt = g.number("tidal-volume"), c = g.number("compliance"), tau = g.number("time-constant"), te = g.number("expiratory-time");
        double auto = ClosedForm.autoPeepCmH2O(vt, c, tau, te), trapped = auto * c;
        return new Answer(this).step("Expiration lasts %s s ÷ %s s = %s time constants; %s of a breath above rest is out by then.", Show.number(te), Show.number(tau), Show.number(te / tau),
                        Show.percent(1 - StrictMath.exp(-te / tau)))
                .step("(%s mL ÷ %s mL/cmH2O) ÷ (e^%s − 1) = %s cmH2O above the set PEEP, breath after breath.", Show.number(vt), Show.number(c), Show.number(te / tau), Show.number(auto))
                .step("Held back: %s cmH2O × %s mL/cmH2O = %s mL. One time constant for the whole lung, no flow limitation: an obstructed lung traps more.", Show.number(auto), Show.number(c), Show.number(trapped))
                .key("autoPeepCmH2O", auto, "cmH2O").key("trappedMl", trapped, "mL")
                .from("steady state of one compartment that empties exponentially; closed form, docs/physics/breath.md");
    }
}
