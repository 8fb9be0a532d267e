package leeway.files.transport;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Sedation;
import leeway.files.keys.Section;
import leeway.files.sheet.LungKeys;
import leeway.files.yaml.Complaints;

/** The patient: what belongs together, and what no patient is. */
final class PatientReader {
    private static final double USUAL_AFTER_MIN = 30;
    private static final double MOST_INACTIVE = 0.7;

    private PatientReader() { }

    /** Called whether or not all values passed; used only when there is no complaint. */
    static PatientEntry read(Section p, Complaints c, List<String> assumed) {
        OptionalDouble height = p.number("height");
        OptionalDouble weight = p.number("weight");
        OptionalDouble age = p.number("age");
        boolean broken = p.written("height") && height.isEmpty() || p.written("weight") && weight.isEmpty() || p.written("age") && age.isEmpty();
        if (!broken) size(p, height, weight, age, c);
        Ages who = Ages.of(age, height, weight);
        if (p.number("age").isEmpty() && !p.written("age") && !broken) assumed.add("age: not given; " + who.words() + " is taken");
        PatientEntry.Sex sex = PatientEntry.Sex.FEMALE;
        if (p.has("sex")) {
            sex = PatientEntry.Sex.valueOf(p.text("sex").orElseThrow().toUpperCase(Locale.ROOT));
        } else if (!p.written("sex") && who == Ages.ADULT && !broken && (grown(age) || height.isPresent())) {
            c.add(p.at(), "%s has no \"sex\" here, on which predicted body weight depends".formatted(grown(age) ? "an adult" : "a patient of 13 years and more with a height"), "Write \"sex: female\" or \"sex: male\".");
        } else if (!p.written("sex")) {
            assumed.add("sex: not given; female is taken");
        }
        if (p.written("height estimated") && p.yes("height estimated", false) && !p.written("height")) {
            c.add(p.atKey("height estimated"), "\"height estimated\" without a height", "Add \"height: 170 cm\", or take it out.");
        }
        Optional<Section> gas = p.section("blood gas");
        PatientEntry.Lungs lungs = lungs(p, c);
        return new PatientEntry(sex, height, p.yes("height estimated", false), weight, age, p.number("airway depth"),
                p.text("cuff").map(t -> PatientEntry.Cuff.valueOf(t.toUpperCase(Locale.ROOT))), lungs, p.number("temperature"), p.number("haemoglobin"),
                p.text("position"), p.yes("paralysed", false), p.yes("chest drain", false), p.number("cardiac output"), gas.flatMap(g -> bloodGas(g, c, assumed)),
                inactive(p, c), p.number("methaemoglobin", 0), p.yes("pressure lowers output", true), breathing(p, c));
    }

    private static boolean grown(OptionalDouble age) { return age.orElse(Ages.GROWN_UP_YEARS) >= Ages.GROWN_UP_YEARS; }

    /** Carboxyhaemoglobin; together with methaemoglobin it must leave some that works. */
    private static double inactive(Section p, Complaints c) {
        double carboxy = p.number("carboxyhaemoglobin", 0), met = p.number("methaemoglobin", 0);
        if (carboxy + met > MOST_INACTIVE) {
            c.add(p.atKey(p.written("methaemoglobin") ? "methaemoglobin" : "carboxyhaemoglobin"), "carboxyhaemoglobin and methaemoglobin make %.0f %% together".formatted(100 * (carboxy + met)),
                    "Together they are at most %.0f %%: with more nobody lives to be moved.".formatted(100 * MOST_INACTIVE));
        }
        return carboxy;
    }

    private static PatientEntry.Breathing breathing(Section p, Complaints c) {
        boolean still = p.yes("paralysed", false);
        for (String key : List.of("coughs", "hiccups")) {
            if (still && p.number(key, 0) > 0) c.add(p.atKey(key), "a paralysed patient has no %s".formatted(key), "Take \"%s\" or \"paralysed\" out.".formatted(key));
        }
        return new PatientEntry.Breathing(SedationText.of(p, c).orElse(Sedation.NONE), !p.text("drive").orElse("").equals("fixed"), p.number("coughs", 0), p.number("hiccups", 0),
                p.number("heart rate"), p.number("heart swing", 0));
    }

    private static void size(Section p, OptionalDouble height, OptionalDouble weight, OptionalDouble age, Complaints c) {
        boolean child = Ages.of(age, height, weight) != Ages.ADULT;
        if (age.isPresent() && age.getAsDouble() < Ages.GROWN_UP_YEARS && age.getAsDouble() >= Ages.ADULT_FROM_YEARS && height.isEmpty() && weight.isEmpty()) {
            c.add(p.at(), "from 13 to 17 years a patient needs a \"height\" or a \"weight\"", "Add \"height: 160 cm\".");
        } else if (!child && height.isEmpty() && !(age.isPresent() && age.getAsDouble() < Ages.GROWN_UP_YEARS)) {
            c.add(p.at(), "an adult has no \"height\" here, on which predicted body weight depends",
                    age.isPresent() ? "Add \"height: 170 cm\"; with \"height estimated: yes\" where nobody measured." : "Add \"height: 170 cm\", or the age if it is a child.");
        }
        if (!child && height.isPresent()) {
            double least = age.isPresent() && age.getAsDouble() < Ages.GROWN_UP_YEARS ? Ages.LEAST_YOUTH_CM : Ages.LEAST_ADULT_CM;
            if (height.getAsDouble() < least) {
                c.add(p.at("height"), "an adult of %.0f cm: predicted body weight says nothing below %.0f cm".formatted(height.getAsDouble(), least), "Give the age if it is a child, or right the height.");
            }
        }
        if (age.isPresent() && weight.isPresent()) {
            double[] kg = Ages.possibleKg(age.getAsDouble());
            if (weight.getAsDouble() < kg[0] || weight.getAsDouble() > kg[1]) {
                c.add(p.at("weight"), "%s kg is impossible at an age of %s".formatted(trim(weight.getAsDouble()), Ages.age(age.getAsDouble())),
                        "At that age a weight lies between %s and %s kg.".formatted(trim(kg[0]), trim(kg[1])));
            }
        }
        if (age.isPresent() && height.isPresent() && child) {
            double[] cm = Ages.possibleCm(age.getAsDouble());
            if (height.getAsDouble() < cm[0] || height.getAsDouble() > cm[1]) {
                c.add(p.at("height"), "%s cm is impossible at an age of %s".formatted(trim(height.getAsDouble()), Ages.age(age.getAsDouble())),
                        "At that age a height lies between %s and %s cm.".formatted(trim(cm[0]), trim(cm[1])));
            }
        }
        if (height.isPresent() && weight.isPresent()) {
            double index = weight.getAsDouble() / Math.pow(height.getAsDouble() / 100, 2);
            if (index < 6 || index > 150) {
                c.add(p.at("weight"), "%s kg at %s cm is impossible".formatted(trim(weight.getAsDouble()), trim(height.getAsDouble())), "Look at both numbers and their units.");
            }
        }
    }

    private static PatientEntry.Lungs lungs(Section p, Complaints c) {
        Optional<Section> s = p.section("lungs");
        for (String key : List.of("shunt", "dead space")) {
            if (s.isPresent() && s.get().written(key) && p.written(key)) c.add(p.atKey(key), "\"%s\" stands under \"patient\" and under \"lungs\"".formatted(key), "Keep one of them.");
        }
        if (s.isPresent() && s.get().written("resistance") && s.get().written("resistance with tube")) {
            c.add(s.get().atKey("resistance with tube"), "\"resistance\" and \"resistance with tube\" say the same thing twice", "Keep one of them.");
        }
        return new PatientEntry.Lungs(number(s, "compliance"), number(s, "resistance"), number(s, "resistance with tube"),
                s.flatMap(l -> l.text("effort")).map(t -> PatientEntry.Effort.valueOf(t.toUpperCase(Locale.ROOT))),
                p.number("shunt").isPresent() ? p.number("shunt") : number(s, "shunt"), p.number("dead space").isPresent() ? p.number("dead space") : number(s, "dead space"),
                number(s, "spread"), s.map(l -> LungKeys.lungs(l, c)).orElse(leeway.core.lung.Lungs.LINEAR));
    }

    private static OptionalDouble number(Optional<Section> s, String key) { return s.isPresent() ? s.get().number(key) : OptionalDouble.empty(); }

    private static Optional<PatientEntry.BloodGas> bloodGas(Section g, Complaints c, List<String> assumed) {
        boolean volumeAndRate = g.written("tidal volume") && g.written("rate");
        if (!volumeAndRate && !g.written("minute volume")) {
            c.add(g.at(), "the blood gas has neither \"tidal volume\" and \"rate\" nor \"minute volume\"", "Add what was given when it was taken.");
        } else if (g.written("minute volume") && (g.written("tidal volume") || g.written("rate")) && volumeAndRate) {
            c.add(g.atKey("minute volume"), "\"minute volume\" says what \"tidal volume\" and \"rate\" say", "Keep one of them.");
        }
        if (g.number("ph").isEmpty() || g.number("paco2").isEmpty() || g.number("fio2").isEmpty()) return Optional.empty();
        if (!g.written("after")) assumed.add("blood gas: taken 30 min after its settings");
        if (!g.written("peep")) assumed.add("blood gas: taken without PEEP");
        return Optional.of(new PatientEntry.BloodGas(g.number("ph").getAsDouble(), g.number("paco2").getAsDouble(), g.number("pao2"), g.number("fio2").getAsDouble(),
                g.number("tidal volume"), g.number("rate"), g.number("minute volume"), g.number("peep"), g.number("after", USUAL_AFTER_MIN)));
    }

    static String trim(double v) { return v == Math.rint(v) ? Long.toString((long) v) : Double.toString(Math.rint(v * 100) / 100); }
}
