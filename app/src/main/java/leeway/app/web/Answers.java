package leeway.app.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.rehearse.Rehearsals;
import leeway.app.report.Language;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;
import leeway.core.start.Start;
import leeway.files.keys.Table;
import leeway.files.yaml.Read;

/**
 * What the pages ask for: the keys of a transport, the names of sheets, and what follows from a text. May be asked by many
 * at once. Whatever takes time is given {@link Hands} and stops with {@link leeway.core.run.Stopped} once it is unwanted.
 */
interface Answers {
    Table table();

    /** Names of the sheets of a kind. */
    List<String> names(String kind);

    /** The room to every limit of a text, with the settings it starts from; no map where nothing is set that ventilates. */
    Read<Mapped> map(String text, Hands hands);

    /** A map and where it starts. */
    record Mapped(Optional<OperatingMap> map, Start start) { }

    /** What the file asks beyond its plan: each fault and thought experiment at its own moment. */
    Read<List<Rehearsal>> whatIf(String text, Hands hands);

    /**
     * Rehearsals as a program asks for them.
     *
     * @param faults names; empty for all
     * @param draws  beyond the central one
     */
    Read<Rehearsals> rehearse(String text, List<String> faults, OptionalDouble atS, int draws, boolean pairs, long seed, Hands hands);

    /** The virtual patient ready to run along the journey of a text. */
    Read<Run> run(String text, Hands hands);

    /** A run and its title. */
    record Run(String title, Breathing breathing) { }

    /** One fault along its time. */
    Read<Traced> trace(String text, String fault, OptionalDouble atMin, OptionalDouble remedyS, double beforeS, double longestS, Hands hands);

    /** A fault's course and, where it can happen with this kit, how it is judged. */
    record Traced(Trace trace, Optional<Rehearsal> row) { }

    /** The crew's card of a plan, as PDF. */
    Read<byte[]> card(String text, Plan plan, Language language, Hands hands);

    /** The report of a plan, as PDF. */
    Read<byte[]> report(Plan plan, Optional<OperatingMap> map, Language language, Hands hands);

    /** The plan of a text, or everything that is wrong with it. */
    Read<Plan> plan(String text, Hands hands);

    /** The same with a seed of its own. */
    Read<Plan> plan(String text, long seed, Hands hands);
}
