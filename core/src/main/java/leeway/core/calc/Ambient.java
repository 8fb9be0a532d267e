package leeway.core.calc;

import leeway.core.gas.Barometer;

/** The barometric pressure that a calc is worked out at: from `pressure`, from `altitude`, or at sea level. */
final class Ambient {
    private Ambient() { }

    /** In mmHg; {@code NaN}, with a complaint, where both are given. */
    static double mmHg(Given g, Answer a) {
        if (g.said("altitude") && g.said("pressure")) {
            g.wrong("pressure", "altitude and pressure are both given", "Give one of them.");
            return Double.NaN;
        }
        if (g.said("pressure")) return Barometer.mmHg(g.number("pressure"));
        if (!g.has("altitude")) {
            a.step("At sea level: 760 mmHg.");
            return 760;
        }
        double m = g.number("altitude"), mmHg = Barometer.pressureMmHg(m);
        a.step("Barometric pressure at %s m: %s mmHg.", Show.number(m), Show.number(mmHg));
        return mmHg;
    }
}
