package leeway.core.calc;

import java.util.List;
import leeway.core.body.Weight;
import leeway.core.quantity.Kind;
import leeway.core.transport.PatientEntry.Sex;

/** Predicted body weight. */
final class WeightCalc implements Calc {
    private static final String ADULT = "adult by height", CHILD_HEIGHT = "child by height", CHILD_AGE = "child by age";

    @Override public String name() { return "weight"; }

    @Override public String plain() { return "Predicted body weight, from sex and height, or of a child from height or age"; }

    @Override public List<Key> keys() {
        return List.of(Key.mayWord("sex", List.of("female", "male"), "of the patient; needed for adults"),
                Key.may("height", Kind.HEIGHT, 30, 250, "measured or estimated"),
                Key.may("age", Kind.AGE, 0, 120, "where the height is not known, or to tell child from adult"),
                Key.mayWord("formula", List.of(ADULT, CHILD_HEIGHT, CHILD_AGE), "which formula; by height and age where not given"));
    }

    @Override public String example() { return "--sex female --height \"170 cm\""; }

    @Override public CalcResult of(Given g) {
        boolean height = g.has("height"), age = g.has("age");
        if (!height && !age) {
            g.wrong("height", "\"weight\" needs a height, or the age of a child", "For example --sex female --height \"170 cm\", or --age \"4 years\".");
            return null;
        }
        double h = height ? g.number("height") : 0, years = age ? g.number("age") : Double.NaN;
        String formula = g.word("formula").orElse(!height ? CHILD_AGE
                : age && years < 18 && years >= 1 && h < Weight.GROWN_CM ? CHILD_HEIGHT : age && years < 1 ? CHILD_AGE : ADULT);
        Answer a = new Answer(this);
        switch (formula) {
            case ADULT -> {
                if (!height || g.word("sex").isEmpty()) {
                    g.wrong(height ? "sex" : "height", "the formula for adults needs sex and height", "For example --sex female --height \"170 cm\".");
                    return null;
                }
                if (h < Weight.LEAST_ADULT_CM) {
                    g.wrong("height", "an adult of " + Show.number(h) + " cm is below the formula's range", "From 130 cm; for a child give the age as well, or --formula \"child by height\".");
                    return null;
                }
                boolean male = g.word("sex").get().equals("male");
                double kg = Weight.predictedAdultKg(male ? Sex.MALE : Sex.FEMALE, h);
                return a.step("%s kg + 0.91 kg/cm × (%s − 152.4) cm = %s kg.", male ? "50.0" : "45.5", Show.number(h), Show.number(kg)).key("predictedBodyWeightKg", kg, "kg")
                        .from("ARDS Network, N Engl J Med 2000;342:1301, after Devine 1974");
            }
            case CHILD_HEIGHT -> {
                if (!height || h >= Weight.GROWN_CM || h < 70) {
                    g.wrong("height", "the formula for children by height needs a height of 70 to 152 cm", "Below one year give the age; from 152 cm use the formula for adults.");
                    return null;
                }
                double kg = Weight.childByHeightKg(h);
                return a.step("2.396 kg × e^(0.01863 × %s) = %s kg.", Show.number(h), Show.number(kg)).key("predictedBodyWeightKg", kg, "kg")
                        .from("Traub & Johnson, Am J Hosp Pharm 1980;37:195, children of 1 to 17 years under 152 cm; from memory");
            }
            default -> {
                if (!age) {
                    g.wrong("age", "the formula for children by age needs an age", "For example --age \"4 years\".");
                    return null;
                }
                double kg = Weight.childByAgeKg(years);
                if (Double.isNaN(kg)) {
                    g.wrong("age", "from 13 years there is no formula by age", "Give sex and height.");
                    return null;
                }
                if (years < 1.0 / 12) a.step("Under one month: a term newborn of 3.5 kg.");
                else if (years < 1) a.step("0.5 kg × %s months + 4 kg = %s kg.", Show.number(12 * years), Show.number(kg));
                else if (years <= 5) a.step("2 kg × %s years + 8 kg = %s kg.", Show.number(years), Show.number(kg));
                else if (years < 6) a.step("Between 18 kg at 5 years and 25 kg at 6 years, in a straight line: %s kg.", Show.number(kg));
                else a.step("3 kg × %s years + 7 kg = %s kg.", Show.number(years), Show.number(kg));
                return a.key("predictedBodyWeightKg", kg, "kg").from(years < 1.0 / 12 ? "common practice, no source" : "APLS 2011 edition, after Marikar, BMJ Innov 2015");
            }
        }
    }
}
