package leeway.app.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Option;

/** What every command has: format, seed, folders of sheets, help. */
abstract class Command implements Callable<Integer> {
    static final int DONE = 0;
    /** Done, and the answer is no. */
    static final int NO = 1;
    static final int BAD_INPUT = 2;
    /** A fault of ours. */
    static final int FAULT = 3;

    /** How the result is written. */
    enum Format { text, json }

    @Option(names = "--format", paramLabel = "text|json", description = "how the result is written; text unless you say")
    Format format = Format.text;

    @Option(names = "--seed", paramLabel = "N", description = "the seed of all chance; ${DEFAULT-VALUE} unless you say")
    long seed = 1;

    @Option(names = "--sheets", paramLabel = "DIR", description = "a folder of your own sheets beside those that come along; may be repeated")
    List<Path> sheets = new ArrayList<>();

    @Option(names = "--no-color", description = "no colour, also on a terminal")
    boolean noColour;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "show this help")
    boolean help;

    /** Set before the command runs. */
    Terminal terminal;

    /** Sets up the command line before it is parsed. */
    void prepare(picocli.CommandLine line) { }

    /** Help of its own for these arguments; empty: the usual. */
    java.util.Optional<String> helpFor(List<String> args) { return java.util.Optional.empty(); }

    boolean json() { return format == Format.json; }

    /** Does the work; exit code. */
    @Override public abstract Integer call() throws Exception;
}
