package leeway.app.web;

import java.util.List;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
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

    /** The plan of a text, or everything that is wrong with it. */
    Read<Plan> plan(String text);
}
