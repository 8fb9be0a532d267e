package leeway.core.calc;

import java.util.List;
import leeway.core.gas.Barometer;
import leeway.core.gas.GasVolume;
import leeway.core.quantity.Kind;

/** A volume of gas under other conditions. */
final class VolumeCalc implements Calc {
    private static final List<String> CONDITIONS = List.of("ATPD", "ATPS", "BTPS", "STPD");

    @Override public String name() { return "volume"; }

    @Override public String plain() { return "A volume of gas from one set of conditions to another"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("value", Kind.VOLUME, 0, 1e9, "the volume"), Key.mustWord("from", CONDITIONS, "as it was measured: ambient dry, ambient saturated, body saturated, standard (0 Cel, 760 mmHg) dry"),
                Key.mustWord("to", CONDITIONS, "as it is wanted"), Key.may("temperature", Kind.TEMPERATURE, -40, 60, "20 Cel", "around the device, for ATPD and ATPS"),
                Key.may("pressure", Kind.AMBIENT_PRESSURE, 200, 1200, "1013.25 hPa", "barometric, for all but STPD"),
                Key.may("humidity", Kind.FRACTION, 0, 1, "relative, for the ambient side; by the condition where not given"));
    }

    @Override public String example() { return "--value \"500 mL\" --from ATPD --to BTPS --temperature \"20 Cel\""; }

    @Override public CalcResult of(Given g) {
        double ml = g.number("value"), t = g.number("temperature"), mmHg = Barometer.mmHg(g.number("pressure"));
        Answer a = new Answer(this);
        String fromWord = g.word("from").orElseThrow(), toWord = g.word("to").orElseThrow();
        GasVolume.State from = state(g, fromWord, t, mmHg), to = state(g, toWord, t, mmHg);
        double factor = GasVolume.factor(from, to);
        return a.step("%s: %s.", fromWord, shown(from)).step("%s: %s.", toWord, shown(to))
                .step("(%s − %s) ÷ (%s − %s) × (%s + 273.15) ÷ (%s + 273.15) = %s.", Show.number(from.pressureMmHg()), Show.number(from.waterMmHg()), Show.number(to.pressureMmHg()), Show.number(to.waterMmHg()),
                        Show.number(to.temperatureCel()), Show.number(from.temperatureCel()), Show.number(factor))
                .step("%s mL × %s = %s mL.", Show.number(ml), Show.number(factor), Show.number(ml * factor)).key("volumeMl", ml * factor, "mL").key("factor", factor, "")
                .from("gas law; water vapour Buck 1981, 47 mmHg at 37 Cel; from memory");
    }

    private static GasVolume.State state(Given g, String word, double t, double mmHg) {
        GasVolume.State plain = GasVolume.state(GasVolume.Condition.valueOf(word), t, mmHg);
        boolean ambient = word.startsWith("ATP");
        return ambient && g.has("humidity") ? new GasVolume.State(t, mmHg, g.number("humidity") * GasVolume.waterMmHg(t)) : plain;
    }

    private static String shown(GasVolume.State s) {
        return "%s Cel, %s mmHg, of which %s mmHg water vapour".formatted(Show.number(s.temperatureCel()), Show.number(s.pressureMmHg()), Show.number(s.waterMmHg()));
    }
}
