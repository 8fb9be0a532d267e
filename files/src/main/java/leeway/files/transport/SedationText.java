package leeway.files.transport;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.transport.Sedation;
import leeway.files.keys.Form;
import leeway.files.keys.Forms;
import leeway.files.keys.Section;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;

/**
 * How much of the own effort sedation takes: a word, or a share. A scale of wakefulness is refused: in 56 ventilated patients
 * it told nothing of the drive (P0.1 against RASS: rank correlation 0.02; Dzierba, Crit Care Med 2021;49:2090, abstract).
 */
final class SedationText {
    /**
     * Moderate: 1 ug/mL of propofol lowered ventilation at a held carbon dioxide by 44 % (Nieuwenhuijs, Anesthesiology
     * 2003;98:312, abstract); light and deep on either side of it: common practice, no source.
     */
    private static final Map<String, Double> WORDS = Map.of("none", 0.0, "light", 0.2, "moderate", 0.45, "deep", 0.75);
    private static final List<String> NAMES = List.of("none", "light", "moderate", "deep");
    static final Form FORM = Form.written("none, light, moderate or deep, or a share of the own effort", "45 %", "^\\s*(none|light|moderate|deep|\\d{1,3}(\\.\\d+)?\\s*%)\\s*$", SedationText::parse);
    static final Form HALF = Form.of(Kind.JOURNEY_TIME, 0.5, 2880, "15 min");
    static final String HALF_KEY = "sedation half-time";

    private SedationText() { }

    private static Forms.Parsed parse(String text) {
        String word = text.strip();
        if (WORDS.containsKey(word)) return Forms.Parsed.good(WORDS.get(word));
        if (word.toUpperCase(Locale.ROOT).startsWith("RASS") || word.matches("[+-]\\d")) {
            return Forms.Parsed.bad("a scale such as %s says how awake a patient is, not how much they breathe".formatted(Complaints.echo(word)), "Write none, light, moderate or deep, or a share of the own effort, \"45 %\".");
        }
        Optional<Quantity> q = Quantity.parse(word);
        if (q.isPresent() && Kind.FRACTION.accepted().contains(q.get().unit())) {
            double share = q.get().in(Kind.FRACTION.internal());
            if (share >= 0 && share <= 1) return Forms.Parsed.good(share);
            return Forms.Parsed.bad("%s of an effort is impossible".formatted(Complaints.echo(word)), "It takes between 0 % and 100 %.");
        }
        return Forms.Parsed.bad("there is no sedation %s".formatted(Complaints.echo(word)), "Write none, light, moderate or deep, or a share of the own effort, \"45 %\".",
                Nearest.of(word, NAMES).toArray(String[]::new));
    }

    /** What a section says; a half-time needs something that wears off. */
    static Optional<Sedation> of(Section s, Complaints c) {
        OptionalDouble half = s.number(HALF_KEY);
        if (s.written(HALF_KEY) && !s.written("sedation")) c.add(s.atKey(HALF_KEY), "a \"%s\" without a \"sedation\"".formatted(HALF_KEY), "Add for example \"sedation: deep\".");
        return s.as("sedation", Double.class).map(share -> new Sedation(share, half));
    }
}
