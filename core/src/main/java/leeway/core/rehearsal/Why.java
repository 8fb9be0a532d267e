package leeway.core.rehearsal;

import java.util.Locale;
import java.util.OptionalDouble;
import leeway.core.kit.AlarmCondition;
import leeway.core.rehearsal.Rehearsal.Spoken;
import leeway.core.run.Change;
import leeway.core.run.Knob;

/** The sentence that explains a row. */
final class Why {
    private Why() { }

    /** Sounds of which fewer are heard than this share are named with it; a matter of wording, no source. */
    private static final double LOUD = 0.5;

    static String of(Fault fault, Trial t, Stage stage) {
        String main = main(fault, t, stage);
        if (t.alarm().isEmpty()) return main;
        Spoken alarm = t.alarm().get();
        double chance = heard(stage, alarm, t.moment().atS() + alarm.afterS());
        return chance < LOUD ? main + " Of its sounds %s %% are heard over the noise of this leg.".formatted(number(100 * chance, 0)) : main;
    }

    /** The chance that one sound of this priority is heard at a time. */
    private static double heard(Stage stage, Spoken alarm, double tS) {
        double chance = 1;
        for (Change c : stage.script().layers()) {
            if (c.knob() == Knob.HEARD && c.copy() == alarm.priority().ordinal() && c.atS() <= tS && tS < c.untilS()) chance = c.value();
        }
        return chance;
    }

    /** Why nothing speaks: what would see the heart fail is not in the kit. */
    private static String unseen(Trial t, Stage stage) {
        if (t.harm().orElseThrow().measure() != Harm.Measure.CIRCULATION) return "";
        OptionalDouble low = stage.speaking().limits().stream().filter(l -> l.condition() == AlarmCondition.END_TIDAL_CO2_LOW && l.low().isPresent()).mapToDouble(l -> l.low().getAsDouble()).max();
        return low.isPresent() ? ": nothing here measures blood pressure, pulse or ECG, and end-tidal CO2, the first to fall, is not under its low limit of %s mmHg for long enough".formatted(number(low.getAsDouble(), 0))
                : ": nothing here measures blood pressure, pulse or ECG, and end-tidal CO2, the first to fall, has no low limit here";
    }

    private static String main(Fault fault, Trial t, Stage stage) {
        return switch (t.coverage()) {
            case IN_TIME -> "%s after %s; %s after %s and can be prevented until %s, so with %s for the crew %s are left.".formatted(
                    spoken(t.alarm().orElseThrow()), span(t.alarm().orElseThrow().afterS()), harm(t, stage), span(t.harm().orElseThrow().afterS()),
                    span(t.rescueByS().orElseThrow()), span(t.crewTimeS()), span(t.marginS().orElseThrow()));
            case TOO_LATE -> t.rescueByS().orElseThrow() <= 0
                    ? "%s after %s, but not even the remedy at once keeps it from happening that %s after %s%s.".formatted(spoken(t.alarm().orElseThrow()),
                            span(t.alarm().orElseThrow().afterS()), harm(t, stage), span(t.harm().orElseThrow().afterS()), slow(fault, t))
                    : "%s after %s and the crew needs %s, but the remedy helps only until %s; %s after %s.".formatted(spoken(t.alarm().orElseThrow()),
                            span(t.alarm().orElseThrow().afterS()), span(t.crewTimeS()), span(t.rescueByS().orElseThrow()), harm(t, stage),
                            span(t.harm().orElseThrow().afterS()));
            case SILENT -> t.lateAlarm().map(late -> "Nothing is heard before harm: %s after %s, %s only after %s%s.".formatted(harm(t, stage),
                    span(t.harm().orElseThrow().afterS()), lower(spoken(late)), span(late.afterS()), unseen(t, stage)))
                    .orElseGet(() -> "Nothing is heard before harm: %s after %s, and no limit of this kit is crossed by then%s.".formatted(harm(t, stage),
                            span(t.harm().orElseThrow().afterS()), unseen(t, stage)));
            case NO_HARM -> "No harm threshold is crossed within %s%s%s%s.".formatted(span(stage.transport().policy().harm().searchMin() * 60),
                    t.toTheEnd() ? ", and gas and charge last to the end of the journey" : "", t.near().map(n -> ", though " + near(n)).orElse(""),
                    t.alarm().map(a -> "; " + lower(spoken(a)) + " after " + span(a.afterS())).orElse(", and no alarm is heard"));
            case NOT_IN_THIS_KIT -> throw new AssertionError("a trial was made of " + fault.name());
        };
    }

    /** A remedy that acts more slowly than harm comes. */
    private static String slow(Fault fault, Trial t) {
        double actsS = Strike.settledS(fault.remedy());
        return actsS > t.harm().orElseThrow().afterS() ? ": it takes %s to act in full".formatted(span(actsS)) : "";
    }

    private static String spoken(Spoken s) {
        return "The %s says \"%s\"".formatted(s.from().words(), s.condition().words());
    }

    private static String lower(String sentence) { return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1); }

    /** Gas or charge may end on a later leg than that of the fault. */
    private static String harm(Trial t, Stage stage) {
        Harm h = t.harm().orElseThrow();
        int of = t.moment().index(), at = of;
        while (h.measure() == Harm.Measure.SUPPLY && at + 1 < stage.legs() && t.moment().atS() + h.afterS() > stage.legEndS(at)) at++;
        return at == of ? harm(h) : "what the leg %s draws on ends (%s before that leg does)".formatted(stage.transport().legs().get(at).name(), span(h.threshold() * 60));
    }

    private static String harm(Harm h) {
        double v = h.threshold();
        return switch (h.measure()) {
            case SATURATION -> "saturation falls below %s".formatted(number(v * 100, 1)) + " %";
            case PACO2 -> "PaCO2 passes %s mmHg".formatted(number(v, 0));
            case PH -> "pH passes %s".formatted(number(v, 2));
            case AIRWAY_PRESSURE -> "alveolar pressure passes %s cmH2O".formatted(number(v, 0));
            case TRANSPULMONARY_PRESSURE -> "transpulmonary pressure passes %s cmH2O".formatted(number(v, 0));
            case VOLUME -> "breath after breath is larger than %s mL".formatted(number(v, 0));
            case CIRCULATION -> "cardiac output falls below %s L/min".formatted(number(v, 1));
            case NO_VENTILATION -> "nothing has reached the lungs for %s".formatted(span(v));
            case SUPPLY -> "what this leg draws on ends (%s before the leg does)".formatted(span(v * 60));
        };
    }

    private static String near(Harm.Near n) {
        double v = n.value();
        return switch (n.measure()) {
            case SATURATION -> "saturation goes to %s".formatted(number(v * 100, 1)) + " %";
            case PACO2 -> "PaCO2 goes to %s mmHg".formatted(number(v, 0));
            case PH -> "pH goes to %s".formatted(number(v, 2));
            case AIRWAY_PRESSURE -> "alveolar pressure goes to %s cmH2O".formatted(number(v, 0));
            case TRANSPULMONARY_PRESSURE -> "transpulmonary pressure goes to %s cmH2O".formatted(number(v, 0));
            case CIRCULATION -> "cardiac output goes to %s L/min".formatted(number(v, 1));
            case VOLUME, NO_VENTILATION, SUPPLY -> throw new AssertionError(n.measure() + " is not followed as near");
        };
    }

    private static String number(double v, int digits) { return String.format(Locale.ROOT, "%." + digits + "f", v); }

    /** "3.2 s", "95 s", "4.3 min", "21 min": fine enough that the parts of a sentence still add up. */
    static String span(double seconds) {
        double s = Math.max(0, seconds);
        if (s < 10 && s != Math.rint(s)) return number(s, 1) + " s";
        if (s < 179.5) return number(s, 0) + " s";
        boolean whole = s >= 600 || Math.abs(s / 60 - Math.rint(s / 60)) < 0.05;
        return number(s / 60, whole ? 0 : 1) + " min";
    }
}
