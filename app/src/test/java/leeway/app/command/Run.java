package leeway.app.command;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** One run of a command line within the test: exit code, standard output, standard error. */
public record Run(int exit, String out, String err) {
    public static Run of(List<Commands.Row> table, boolean colour, String... args) { return of("", table, colour, args); }

    /** With something piped into it. */
    static Run piped(String in, String... args) { return of(in, Commands.ALL, false, args); }

    private static Run of(String in, List<Commands.Row> table, boolean colour, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)), new PrintStream(out, false, StandardCharsets.UTF_8), new PrintStream(err, false, StandardCharsets.UTF_8), colour, false);
        int exit = Main.run(terminal, table, args);
        terminal.out().flush();
        terminal.err().flush();
        return new Run(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** With the real table of commands. */
    public static Run of(String... args) { return of(Commands.ALL, false, args); }
}
