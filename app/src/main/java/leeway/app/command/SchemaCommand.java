package leeway.app.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.app.report.JsonTree;
import leeway.files.sheet.FileSchemas;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportKeys;
import picocli.CommandLine.Parameters;

/** {@code leeway schema [KIND]}: JSON Schema of the transport file, or of a kind of sheet. */
@picocli.CommandLine.Command(headerHeading = "Example:  ", header = {"leeway schema > transport.schema.json", ""}, description = {"Prints the JSON Schema (2020-12) of the transport file, or of a kind of sheet."},
        customSynopsis = "leeway schema [transport|KIND]")
final class SchemaCommand extends Command {
    @Parameters(arity = "0..1", defaultValue = "transport", paramLabel = "KIND", description = "transport, ventilator, circuit …; transport unless you say")
    String kind;

    @Override public Integer call() {
        if (kind.equals("transport")) {
            JsonTree.write(terminal.out(), FileSchemas.document(TransportKeys.TRANSPORT, "A transport: one journey of one patient", "transport"));
            return DONE;
        }
        Optional<Object> sheet = Kinds.find(kind).map(FileSchemas::sheet);
        if (sheet.isPresent()) {
            JsonTree.write(terminal.out(), sheet.get());
            return DONE;
        }
        List<String> known = new ArrayList<>(List.of("transport"));
        known.addAll(Kinds.words());
        List<String> near = Nearest.of(kind, known, 3);
        String message = "there is no schema of \"%s\". %s".formatted(Nearest.shortened(kind), near.isEmpty() ? "There is " + Nearest.inWords(known) + "." : "Did you mean " + Nearest.inWords(near) + "?");
        terminal.err().println("leeway schema: " + message);
        if (json()) UsageJson.write(terminal.out(), message, near);
        return BAD_INPUT;
    }
}
