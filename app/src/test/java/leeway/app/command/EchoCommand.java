package leeway.app.command;

import leeway.app.report.Json;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A command for tests of the shell: says back what it was given. */
@CommandLine.Command(name = "echo", headerHeading = "Example:  ", header = "leeway echo holm", description = "says back what it was given")
final class EchoCommand extends Command {
    @Parameters(paramLabel = "WORD", description = "what to say")
    String word;

    @Option(names = "--to", paramLabel = "QUANTITY", description = "a value that may be negative")
    String to = "";

    @Override public Integer call() {
        if (word.equals("fall")) throw new IllegalStateException("fell over 3 stones");
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.text("word", word);
                json.count("seed", seed);
            }
        } else {
            terminal.out().println(word + to);
        }
        return word.equals("no") ? NO : DONE;
    }
}
