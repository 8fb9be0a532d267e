package leeway.app.command;

import java.io.BufferedInputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Where a command reads and writes.
 *
 * @param in      what a file named "-" stands for
 * @param out     the result, UTF-8
 * @param err     everything else
 * @param colour  whether escape codes may be written to {@code out}
 * @param watched whether a person watches {@code err}, so that progress may be shown
 */
public record Terminal(InputStream in, PrintStream out, PrintStream err, boolean colour, boolean watched) {
    /** Width that every text keeps to, in characters. */
    public static final int WIDTH = 80;

    /**
     * The process's own streams. The launcher says in {@code leeway.out} and {@code leeway.err} which of them are terminals,
     * for the JDKs differ in what they tell.
     */
    static Terminal ofProcess(Map<String, String> environment) {
        boolean outIsTerminal = "terminal".equals(System.getProperty("leeway.out"));
        return new Terminal(new BufferedInputStream(new FileInputStream(FileDescriptor.in)), stream(FileDescriptor.out), stream(FileDescriptor.err), colour(environment, outIsTerminal),
                "terminal".equals(System.getProperty("leeway.err")));
    }

    /** Colour is on for a terminal; off for a non-empty NO_COLOR and for TERM=dumb; an empty NO_COLOR says nothing. */
    static boolean colour(Map<String, String> environment, boolean outIsTerminal) {
        return outIsTerminal && environment.getOrDefault("NO_COLOR", "").isEmpty() && !"dumb".equals(environment.get("TERM"));
    }

    private static PrintStream stream(FileDescriptor to) {
        return new PrintStream(new java.io.BufferedOutputStream(new FileOutputStream(to), 1 << 16), false, StandardCharsets.UTF_8);
    }

    Terminal withoutColour() { return new Terminal(in, out, err, false, watched); }

    /** A writer onto {@code out} for libraries that want one. */
    PrintWriter writer() { return new PrintWriter(out, false, StandardCharsets.UTF_8); }
}
