package leeway.core.calc;

import java.util.List;
import leeway.core.gas.AlveolarGas;
import leeway.core.quantity.Kind;

/** The rate that brings carbon dioxide to a target. */
final class RateForCo2Calc implements Calc {
    @Override public String name() { return "rate-for-co2"; }

    @Override public String plain() { return "The rate at which PaCO2 settles at a target"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("paco2", Kind.GAS_TENSION, 5, 250, "as it is now, settled"), Key.must("rate", Kind.RATE, 1, 150, "as it is now"), Key.may("tidal-volume", Kind.VOLUME, 2, 3000, "as it is now; not needed where it stays"),
                Key.may("dead-space", Kind.VOLUME, 0, 2000, "all of it; not needed where the volume stays"), Key.must("target", Kind.GAS_TENSION, 10, 150, "the PaCO2 that is wanted"),
                Key.may("new-tidal-volume", Kind.VOLUME, 2, 3000, "where the volume changes too"));
    }

    @Override public String example() { return "--paco2 \"60 mmHg\" --rate \"12 /min\" --tidal-volume \"500 mL\" --dead-space \"150 mL\" --target \"40 mmHg\""; }

    @Override public CalcResult of(Given g) {
        double co2 = g.number("paco2"), rate = g.number("rate"), target = g.number("target");
        if (g.has("tidal-volume") != g.has("dead-space") || g.has("new-tidal-volume") && !g.has("tidal-volume")) {
            g.wrong(g.has("tidal-volume") ? "dead-space" : "tidal-volume", "tidal volume and dead space are needed together, and for a new tidal volume", "Give both, for example --tidal-volume \"500 mL\" --dead-space \"150 mL\".");
            return null;
        }
        if (!g.has("tidal-volume")) {
            double answer = rate * co2 / target;
            return settled(new Answer(this).step("%s /min × %s mmHg ÷ %s mmHg = %s /min, at the same tidal volume and dead space.", Show.number(rate), Show.number(co2), Show.number(target), Show.number(answer)), answer);
        }
        double vt = g.number("tidal-volume"), vd = g.number("dead-space");
        double next = g.has("new-tidal-volume") ? g.number("new-tidal-volume") : vt;
        if (vd >= vt || vd >= next) {
            g.wrong("dead-space", "a dead space of %s mL takes the whole breath".formatted(Show.number(vd)), "It is smaller than the tidal volume.");
            return null;
        }
        double answer = AlveolarGas.rateForTarget(rate, co2, vt, vd, target, next);
        return settled(new Answer(this).step("%s /min × %s mmHg × (%s − %s) mL ÷ (%s mmHg × (%s − %s) mL) = %s /min.", Show.number(rate), Show.number(co2), Show.number(vt), Show.number(vd), Show.number(target),
                        Show.number(next), Show.number(vd), Show.number(answer)), answer);
    }

    private static CalcResult settled(Answer a, double answer) {
        return a.step("It holds once the stores of the body have settled, after half an hour to an hour; in a short transfer PaCO2 goes only part of the way. Whether there is time to breathe out at this rate is another question.")
                .key("ratePerMin", answer, "/min").from("ventilation hyperbola: alveolar ventilation × PaCO2 stays the same; textbook, from memory");
    }
}
