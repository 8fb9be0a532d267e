package leeway.core.calc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import leeway.core.breath.MechanicalPower;
import leeway.core.kit.Mode;
import leeway.core.quantity.Kind;

/** Mechanical power of ventilation. */
final class PowerCalc implements Calc {
    @Override public String name() { return "power"; }

    @Override public String plain() { return "Mechanical power of ventilation, by the published bedside formulas"; }

    @Override public List<Key> keys() {
        List<String> modes = new ArrayList<>(List.of("volume", "pressure"));
        Arrays.stream(Mode.values()).filter(Mode::hasRate).map(Mode::code).forEach(modes::add);
        return List.of(Key.mustWord("mode", modes, "of the inflations"), Key.must("rate", Kind.RATE, 1, 200, "breaths a minute"), Key.must("tidal-volume", Kind.VOLUME, 1, 5000, "of each breath"),
                Key.may("peak", Kind.AIRWAY_PRESSURE, 0, 150, "volume control: peak airway pressure"), Key.may("plateau", Kind.AIRWAY_PRESSURE, 0, 150, "volume control: after an end-inspiratory pause"),
                Key.may("peep", Kind.AIRWAY_PRESSURE, 0, 50, "0 cmH2O", "total PEEP"), Key.may("inspiratory-pressure", Kind.AIRWAY_PRESSURE, 0, 100, "pressure control: above PEEP"));
    }

    @Override public String example() { return "--mode A/C-VC --rate \"15 /min\" --tidal-volume \"500 mL\" --peak \"25 cmH2O\" --plateau \"20 cmH2O\" --peep \"5 cmH2O\""; }

    @Override public CalcResult of(Given g) {
        String mode = g.word("mode").orElseThrow();
        boolean volume = Mode.ofCode(mode).map(m -> m.mandatory() == Mode.Inflation.VOLUME).orElse(mode.equals("volume"));
        return volume ? volume(g) : pressure(g);
    }

    private CalcResult volume(Given g) {
        if (!missing(g, "peak").isEmpty() | !missing(g, "plateau").isEmpty()) return null;
        double rate = g.number("rate"), vt = g.number("tidal-volume"), peak = g.number("peak"), plateau = g.number("plateau"), peep = g.number("peep");
        if (plateau > peak) g.wrong("plateau", "a plateau of %s cmH2O lies above the peak of %s cmH2O".formatted(Show.number(plateau), Show.number(peak)), "It is at most the peak.");
        if (peep > plateau) g.wrong("peep", "a PEEP of %s cmH2O lies above the plateau of %s cmH2O".formatted(Show.number(peep), Show.number(plateau)), "It is lower than the plateau.");
        double power = MechanicalPower.volumeJPerMin(rate, vt, peak, plateau, peep);
        return new Answer(this).step("Driving pressure: %s − %s = %s cmH2O.", Show.number(plateau), Show.number(peep), Show.number(plateau - peep))
                .step("0.098 × %s /min × %s L × (%s − %s ÷ 2) cmH2O = %s J/min. PEEP's share is inside by definition; constant flow is assumed.", Show.number(rate), Show.number(vt / 1000), Show.number(peak),
                        Show.number(plateau - peep), Show.number(power))
                .key("jPerMin", power, "J/min").from("Gattinoni, Intensive Care Med 2016;42:1567");
    }

    private CalcResult pressure(Given g) {
        if (!missing(g, "inspiratory-pressure").isEmpty()) return null;
        double rate = g.number("rate"), vt = g.number("tidal-volume"), above = g.number("inspiratory-pressure"), peep = g.number("peep"), power = MechanicalPower.pressureJPerMin(rate, vt, above, peep);
        return new Answer(this).step("0.098 × %s /min × %s L × (%s above PEEP + %s PEEP) cmH2O = %s J/min. A square pressure is assumed: with a slow rise it is less.", Show.number(rate), Show.number(vt / 1000),
                        Show.number(above), Show.number(peep), Show.number(power))
                .key("jPerMin", power, "J/min").from("Becher, Intensive Care Med 2019;45:1321, simple form");
    }

    private static Optional<String> missing(Given g, String key) {
        if (g.has(key)) return Optional.empty();
        g.wrong(key, "this mode needs \"%s\"".formatted(key), "For example --%s \"22 cmH2O\".".formatted(key));
        return Optional.of(key);
    }
}
