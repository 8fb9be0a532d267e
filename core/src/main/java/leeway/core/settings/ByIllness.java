package leeway.core.settings;

import java.util.Set;
import leeway.core.kit.Illness;

/** Which strategy belongs to a patient when the file says {@code by illness}. */
public final class ByIllness {
    /** The name in a file. */
    public static final String NAME = "by illness";
    /** Illness strategies whose rules know children: their rates go by age. */
    private static final Set<String> FOR_CHILDREN_TOO = Set.of("obstructive", "head injury", "after cardiac arrest", "blood loss");
    /** Obesity class I begins here (WHO Technical Report Series 894, 2000, as reprinted in WHO/FAO, Diet, Nutrition and the Prevention of Chronic Diseases, table 8: 30.0 to 34.9). */
    private static final double OBESE_KG_PER_M2 = 30;

    private ByIllness() { }

    /** The strategy's name and the sentence that says why it was picked. */
    public record Pick(String strategy, String why) { }

    public static Pick pick(PatientFacts patient, Illness illness) {
        String wanted = illness.strategy().orElse("");
        switch (patient.group()) {
            case INFANT -> { return new Pick("infant", "strategy \"infant\" by age, under one year"); }
            case CHILD -> {
                if (!FOR_CHILDREN_TOO.contains(wanted)) return new Pick("child", "strategy \"child\" by age, under 16 years");
            }
            case ADULT -> { }
        }
        boolean general = wanted.isEmpty() || wanted.equals("lung protective") || wanted.equals("child") || wanted.equals("infant");
        if (general && patient.group() == PatientFacts.Group.ADULT && patient.bodyMassIndex() >= OBESE_KG_PER_M2) {
            return new Pick("obese", "strategy \"obese\" by body mass index, 30 kg/m2 or more");
        }
        if (general) return new Pick("lung protective", "strategy \"lung protective\" by illness \"" + illness.name() + "\"");
        return new Pick(wanted, "strategy \"" + wanted + "\" by illness \"" + illness.name() + "\"");
    }
}
