package leeway.files.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leeway.core.kit.AlarmRow.Priority;
import leeway.core.quantity.Kind;
import leeway.core.rehearsal.CrewTime;
import leeway.core.rehearsal.Effect;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Need;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/** Something that goes wrong: declared effects, what is seen first, what the crew does. */
public final class FaultKind implements SheetKind<Fault> {
    private static final List<String> NEEDS = Arrays.stream(Need.values()).map(Need::words).toList();
    private static final Table CREW = Table.of("crew time",
            Key.must("median", Form.of(Kind.TIME, 1, 7200, "15 s"), "From the alarm to the remedy, as often shorter as longer."),
            Key.must("at worst", Form.of(Kind.TIME, 1, 14_400, "40 s"), "The 95th percentile."),
            Key.must("source", Form.text(200, "common practice, no source"), "Where that comes from."));
    private static final Table TABLE = Table.sourced("fault",
            Key.must("group", Form.choice("group of faults", AirwayKind.words(Fault.Group.values())), "What it is about."),
            Key.must("priority", Form.choice("priority", AirwayKind.words(Priority.values())), "How urgent it is to act."),
            Key.must("first sign", Form.text(200, "A hiss; the chest is still."), "What a person notices first."),
            Key.may("needs", Form.list(Form.choice("need", NEEDS), 8), "What the kit must have so that it can happen.").otherwise("nothing"),
            Key.may("with", Form.name("fault", "disconnection at the patient"), "Another fault that strikes at the same time.").otherwise("none"),
            Key.must("effects", Form.list(Form.section(Effects.TABLE), 12), "What changes, for as long as it lasts."),
            Key.may("remedy", Form.list(Form.section(Effects.TABLE), 12), "What the remedy changes besides.").otherwise("nothing"),
            Key.may("remedy ends it", Form.yesNo(), "Whether the remedy ends the effects.").otherwise("yes"),
            Key.must("crew time", Form.section(CREW), "From the alarm to the remedy."),
            Key.must("do", Form.list(Form.text(240, "Reconnect at once."), 8), "What the crew does, what kills first at the top."));

    @Override public String word() { return "fault"; }

    @Override public String plural() { return "faults"; }

    @Override public Table table() { return TABLE; }

    @Override public Fault record(String name, Section s, Complaints complaints) {
        Section crew = s.section("crew time").orElseThrow();
        double median = crew.number("median").orElseThrow();
        double worst = crew.number("at worst").orElseThrow();
        if (worst < median) complaints.add(crew.at("at worst"), "\"at worst\" is shorter than the median", "It is the time that 19 of 20 crews keep.");
        List<Effect> effects = effects(s, "effects", complaints);
        List<Effect> remedy = effects(s, "remedy", complaints);
        return new Fault(name, Fault.Group.valueOf(s.text("group").orElseThrow().toUpperCase(Locale.ROOT)), s.text("first sign").orElseThrow(),
                Priority.valueOf(s.text("priority").orElseThrow().toUpperCase(Locale.ROOT)),
                s.texts("needs").stream().map(n -> Need.ofWords(n).orElseThrow()).toList(), effects, remedy, s.yes("remedy ends it", true), s.text("with"),
                new CrewTime(median, Math.max(median, worst), crew.text("source").orElseThrow()), s.texts("do"), SheetKind.source(s));
    }

    private static List<Effect> effects(Section s, String key, Complaints complaints) {
        return s.sections(key).stream().map(e -> Effects.of(e, complaints)).flatMap(Optional::stream).toList();
    }
}
