package leeway.app.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.rehearse.Rehearsals;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;
import leeway.core.start.Start;
import leeway.files.keys.Table;
import leeway.files.yaml.Read;

/** What the pages ask for: the keys of a transport, the names of sheets, and what follows from a text. May be asked by many at once. */
interface Answers {
    Table table();

    /** Names of the sheets of a kind. */
    List<String> names(String kind);

    /** The room to every limit of a text, with the settings it starts from. */
    Read<Mapped> map(String text);

    /** A map and where it starts. */
    record Mapped(OperatingMap map, Start start) { }

    /** Every fault, rehearsed once at its worst moments. */
    Read<Rehearsals> rehearse(String text);

    /**
     * Rehearsals as a program asks for them.
     *
     * @param faults names; empty for all
     * @param draws  beyond the central one
     */
    Read<Rehearsals> rehearse(String text, List<String> faults, OptionalDouble atS, int draws, boolean pairs, long seed);

    /** The virtual patient ready to run along the journey of a text. */
    Read<Run> run(String text);

    /** A run and its title. */
    record Run(String title, Breathing breathing) { }

    /** One fault along its time. */
    Read<Traced> trace(String text, String fault, OptionalDouble atMin, OptionalDouble remedyS, double beforeS, double longestS);

    /** A fault's course and, where it can happen with this kit, how it is judged. */
    record Traced(Trace trace, Optional<Rehearsal> row) { }

    /** The plan of a text, or everything that is wrong with it. */
    Read<Plan> plan(String text);
}
