package leeway.app.command;

import java.util.List;
import java.util.Optional;

/** The table of commands, in the order in which help lists them. */
final class Commands {
    private Commands() { }

    /**
     * A command.
     *
     * @param name as typed
     * @param does a line of help
     * @param type simple name of its class in this package; a name, so that the table loads none of them
     */
    record Row(String name, String does, String type) {
        /** A new command object of this row; loads its class. */
        Command make() {
            try {
                return Class.forName(Commands.class.getPackageName() + "." + type).asSubclass(Command.class).getDeclaredConstructor().newInstance();
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("the command %s has no usable class %s".formatted(name, type), e);
            }
        }
    }

    /** One line adds a command. */
    static final List<Row> ALL = List.of(
            new Row("plan", "works out the plan: is it enough, what to expect, what to take", "PlanCommand"),
            new Row("card", "writes the crew's card as PDF", "CardCommand"),
            new Row("rehearse", "rehearses faults: when harm begins, who speaks first, what margin is left", "RehearseCommand"),
            new Row("breathe", "runs the virtual patient along the journey: a row a breath, or waves", "BreatheCommand"),
            new Row("map", "draws the room to every limit over volume or pressure and rate", "MapCommand"),
            new Row("calc", "one calculation with its working and source", "CalcCommand"),
            new Row("compare", "plans the same journey with other kit, side by side", "CompareCommand"),
            new Row("check", "checks transport files and sheets, all errors at once", "CheckCommand"),
            new Row("catalogue", "lists and shows sheets", "CatalogueCommand"),
            new Row("new", "writes a commented transport file to start from", "NewCommand"),
            new Row("schema", "prints JSON Schemas of files", "SchemaCommand"),
            new Row("serve", "opens the workbench for a browser", "ServeCommand")
    );

    static Optional<Row> find(List<Row> table, String name) { return table.stream().filter(r -> r.name.equals(name)).findFirst(); }

    static List<String> names(List<Row> table) { return table.stream().map(Row::name).toList(); }
}
