package leeway.files.yaml;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Our own sentences around what the YAML library found. */
final class NotYaml {
    private NotYaml() { }

    /** A bracket that was opened, and what closes it. */
    record Bracket(Place opened, String closing) { }

    /** Adds one complaint; always false, for the reader's return. */
    static boolean complain(MarkedYamlEngineException e, String text, String file, Optional<Bracket> bracket, Complaints complaints) {
        Place at = e.getProblemMark().or(e::getContextMark).map(m -> place(m, file)).orElse(Place.start(file));
        String problem = Optional.ofNullable(e.getProblem()).orElse("");
        String context = Optional.ofNullable(e.getContext()).orElse("");
        Optional<Place> tab = tabIndent(text, at.line(), file);
        if (tab.isPresent()) {
            complaints.add(tab.get(), "a tab at the beginning of a line", "YAML is indented with spaces.");
        } else if (context.contains("quoted scalar")) {
            Place opened = e.getContextMark().map(m -> place(m, file)).orElse(at);
            boolean open = problem.contains("end of stream") || problem.contains("document");
            complaints.add(open ? opened : at, open ? "a quotation mark opens here and is never closed" : "this cannot stand between quotation marks",
                    open ? "Close it, or take it out." : "Single quotation marks take everything as it is.");
        } else if (problem.contains("mapping values are not allowed")) {
            complaints.add(at, "a \":\" where none can stand", "Is this line indented too far, is a line break missing, or does a text with \": \" in it need quotation marks?");
        } else if (problem.contains("could not find expected ':'")) {
            Place key = e.getContextMark().map(m -> place(m, file)).orElse(at);
            complaints.add(key, "a key without a \":\"", "A line reads \"key: value\".");
        } else if (bracket.isPresent()) {
            Place opened = bracket.get().opened();
            complaints.add(at, "a \"" + bracket.get().closing() + "\" or a comma is missing", "The bracket was opened at " + opened.line() + ":" + opened.column() + ".");
        } else if (problem.contains("block end") || problem.contains("block sequence entries") || problem.contains("block entry")) {
            complaints.add(at, "the indentation does not fit what stands above", "Keys of one mapping begin in the same column; items of a list begin with \"- \".");
        } else if (problem.contains("cannot start any token") || problem.contains("while scanning for the next token")) {
            complaints.add(at, "a value cannot begin like this", "Put quotation marks around it.");
        } else if (problem.contains("undefined alias")) {
            complaints.add(at, "an alias", "Write the value out: aliases are not taken.");
        } else {
            complaints.add(at, "this is not YAML", "A line reads \"key: value\", or \"- item\" in a list.");
        }
        return false;
    }

    private static Place place(Mark m, String file) { return new Place(file, m.getLine() + 1, m.getColumn() + 1); }

    /** The first line up to {@code last} whose indentation has a tab in it. */
    private static Optional<Place> tabIndent(String text, int last, String file) {
        int line = 1;
        int column = 1;
        boolean indent = true;
        for (int i = 0; i < text.length() && line <= last; i++) {
            char c = text.charAt(i);
            if (indent && c == '\t') return Optional.of(new Place(file, line, column));
            column++;
            if (c == '\n') {
                line++;
                column = 1;
                indent = true;
            } else if (c != ' ') {
                indent = false;
            }
        }
        return Optional.empty();
    }
}
