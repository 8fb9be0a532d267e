package leeway.core.calc;

import java.util.List;
import leeway.core.body.LungVolume;
import leeway.core.quantity.Kind;
import leeway.core.transport.PatientEntry.Sex;

/** Functional residual capacity. */
final class LungVolumeCalc implements Calc {
    private static final String VENTILATED = "ventilated", SUPINE = "supine", UPRIGHT = "upright";

    @Override public String name() { return "lung-volume"; }

    @Override public String plain() { return "Gas in the lung at the end of expiration, without PEEP and without disease"; }

    @Override public List<Key> keys() {
        return List.of(Key.must("height", Kind.HEIGHT, 40, 250, "of the patient"), Key.may("age", Kind.AGE, 0, 120, "an adult of 50 years where not given and the height is 150 cm or more"),
                Key.mayWord("sex", List.of("female", "male"), "needed for adults"), Key.mayWord("state", List.of(VENTILATED, SUPINE, UPRIGHT), VENTILATED, "supine, sedated and ventilated; supine and awake; upright and awake"));
    }

    @Override public String example() { return "--height \"175 cm\" --age \"40 years\" --sex male"; }

    @Override public CalcResult of(Given g) {
        double h = g.number("height");
        String state = g.word("state").orElse(VENTILATED);
        Answer a = new Answer(this);
        boolean child = g.has("age") ? g.number("age") < 12 || h < 130 : h < 150;
        if (child) {
            if (state.equals(UPRIGHT)) {
                g.wrong("state", "there is no formula for upright children here", "It is ventilated or supine.");
                return null;
            }
            boolean ventilated = state.equals(VENTILATED);
            double ml = ventilated ? LungVolume.ventilatedChildMl(h) : LungVolume.supineChildMl(h);
            return a.step("%s × %s^%s = %s mL, child, %s.", ventilated ? "0.00175" : "0.0052", Show.number(h), ventilated ? "2.66" : "2.44", Show.number(ml), state)
                    .key("frcMl", ml, "mL").key("supineMl", LungVolume.supineChildMl(h), "mL")
                    .from(ventilated ? "Thorsteinsson, Anesthesiology 1990;73:876, 0.1 to 11.2 years" : "Bar-Yishay 1987, 1 month to 8 years");
        }
        if (g.word("sex").isEmpty()) {
            g.wrong("sex", "an adult's lung volume needs the sex", "It is one of: female, male.");
            return null;
        }
        Sex sex = g.word("sex").get().equals("male") ? Sex.MALE : Sex.FEMALE;
        double years = Math.max(18, g.has("age") ? g.number("age") : 50);
        double upright = LungVolume.uprightAdultMl(sex, h, years), supine = LungVolume.supineAdultMl(sex, h, years), ventilated = LungVolume.ventilatedAdultMl(sex, h, years, 22);
        if (upright <= 0) {
            g.wrong("height", "an adult of %s cm is below the formula's range".formatted(Show.number(h)), "From 130 cm.");
            return null;
        }
        a.step(sex == Sex.MALE ? "Upright: 2.34 × %s + 0.01 × %s − 1.09 = %s L." : "Upright: 2.24 × %s + 0.001 × %s − 1.00 = %s L.", Show.number(h / 100), Show.number(years), Show.number(upright / 1000));
        if (!state.equals(UPRIGHT)) a.step("Lying: × 0.72 = %s mL.", Show.number(supine));
        if (state.equals(VENTILATED)) a.step("Sedated and ventilated: × 0.82 = %s mL. Disease and weight change it further.", Show.number(ventilated));
        return a.key("frcMl", state.equals(UPRIGHT) ? upright : state.equals(SUPINE) ? supine : ventilated, "mL").key("uprightMl", upright, "mL").key("supineMl", supine, "mL")
                .from("Quanjer, Eur Respir J 1993;6 Suppl 16:5; lying 0.70 to 0.75, sedated 15 to 20 % less; from memory");
    }
}
