package leeway.app.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import leeway.app.report.PlanText;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** The entry: finds the command, runs it, turns what happens into an exit code. */
public final class Main {
    private Main() { }

    public static void main(String[] args) {
        Terminal terminal = Terminal.ofProcess(System.getenv());
        int exit = run(terminal, Commands.ALL, args);
        terminal.out().flush();
        terminal.err().flush();
        System.exit(exit);
    }

    /** Runs one command line; the exit code. Never throws, never exits. */
    static int run(Terminal terminal, List<Commands.Row> table, String... args) {
        if (args.length == 0 || args[0].equals("--help") || args[0].equals("-h")) {
            terminal.out().print(help(table));
            return Command.DONE;
        }
        if (args[0].equals("--version")) {
            terminal.out().println("leeway " + Version.TEXT);
            return Command.DONE;
        }
        boolean wantsHelp = args[0].equals("help");
        if (wantsHelp && args.length == 1) {
            terminal.out().print(help(table));
            return Command.DONE;
        }
        String name = wantsHelp ? args[1] : args[0];
        Optional<Commands.Row> row = Commands.find(table, name);
        if (row.isEmpty()) return unknown(terminal, table, name, args);
        String[] rest = wantsHelp ? new String[] {"--help"} : Arrays.copyOfRange(args, 1, args.length);
        return run(terminal, row.get(), rest);
    }

    private static int run(Terminal terminal, Commands.Row row, String[] args) {
        try {
            Command command = row.make();
            CommandLine line = new CommandLine(command);
            line.setCommandName("leeway " + row.name());
            line.setCaseInsensitiveEnumValuesAllowed(true);
            line.setUsageHelpWidth(Terminal.WIDTH);
            line.setUsageHelpAutoWidth(false);
            line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
            command.prepare(line);
            exampleFirst(line.getCommandSpec().usageMessage());
            List<String> typed = List.of(args);
            Optional<String> own = typed.contains("--help") || typed.contains("-h") ? command.helpFor(typed) : Optional.empty();
            if (own.isPresent()) {
                terminal.out().print(own.get());
                return Command.DONE;
            }
            PrintWriter out = terminal.writer();
            line.setOut(out);
            line.setParameterExceptionHandler((e, given) -> usage(terminal, row, e, given));
            line.setExecutionExceptionHandler((e, l, parsed) -> fault(terminal, e));
            line.setExecutionStrategy(parsed -> {
                command.terminal = command.noColour ? terminal.withoutColour() : terminal;
                return new CommandLine.RunLast().execute(parsed);
            });
            int exit = line.execute(args);
            out.flush();
            return exit;
        } catch (Exception | StackOverflowError | OutOfMemoryError e) {
            return fault(terminal, e);
        }
    }

    /** Help starts with the example, wherever a command has put it. */
    private static void exampleFirst(CommandLine.Model.UsageMessageSpec usage) {
        List<String> description = new ArrayList<>(List.of(usage.description()));
        for (int i = 0; i < description.size(); i++) {
            if (!description.get(i).startsWith("Example:")) continue;
            usage.header(description.remove(i), "");
            while (!description.isEmpty() && description.get(description.size() - 1).isBlank()) description.remove(description.size() - 1);
            usage.description(description.toArray(String[]::new));
            return;
        }
    }

    private static int unknown(Terminal terminal, List<Commands.Row> table, String name, String[] args) {
        List<String> near = Nearest.of(name, Commands.names(table), 3);
        String what = name.startsWith("-") ? "there is no option \"" + Nearest.shortened(name) + "\" before a command"
                : "there is no command \"" + Nearest.shortened(name) + "\"";
        String way = near.isEmpty() ? "\"leeway --help\" lists the commands." : "Did you mean " + Nearest.inWords(near) + "?";
        complain(terminal, wantsJson(args), what + ". " + way, near);
        return Command.BAD_INPUT;
    }

    private static int usage(Terminal terminal, Commands.Row row, CommandLine.ParameterException e, String[] args) {
        List<String> near = List.of();
        String what = e.getMessage();
        if (e instanceof CommandLine.UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
            String given = unmatched.getUnmatched().get(0);
            if (given.startsWith("-")) {
                given = given.replaceFirst("=.*", "");
                near = Nearest.of(given, e.getCommandLine().getCommandSpec().optionsMap().keySet().stream().sorted().toList(), 3);
                what = "\"leeway %s\" has no option \"%s\"".formatted(row.name(), Nearest.shortened(given));
            } else {
                what = "\"leeway %s\" does not know what to do with \"%s\"".formatted(row.name(), Nearest.shortened(given));
            }
        }
        what = what.strip().replaceAll("\\s*\\R\\s*", " ").replaceFirst("is not an? (?:int|long)$", "is no whole number")
                .replaceFirst("^Invalid value for option '([^']*)': '(.*)' is", "$1 \"$2\" is")
                .replaceFirst("^Invalid value for option '([^']*)': expected one of \\[(.*), (.*)] \\(case-insensitive\\) but was '(.*)'$", "$1 \"$4\" is not known; it is $2 or $3")
                .replaceFirst("^Missing required (?:parameter|option): '([-\\w]+)(?:=[^']*)?'$", "$1 is missing");
        if (what.endsWith(".")) what = what.substring(0, what.length() - 1);
        String way = near.isEmpty() ? "\"leeway %s --help\" says how it is used.".formatted(row.name()) : "Did you mean " + Nearest.inWords(near) + "?";
        complain(terminal, wantsJson(args), what + ". " + way, near);
        return Command.BAD_INPUT;
    }

    private static void complain(Terminal terminal, boolean json, String message, List<String> nearest) {
        terminal.err().println("leeway: " + message);
        if (json) UsageJson.write(terminal.out(), message, nearest);
    }

    private static boolean wantsJson(String[] args) {
        for (int i = 0; i < args.length; i++) {
            if (args[i].equals("--format=json") || args[i].equals("--format") && i + 1 < args.length && args[i + 1].equalsIgnoreCase("json")) return true;
        }
        return false;
    }

    /** One line for the person, the trace into a file for whoever repairs it. */
    static int fault(Terminal terminal, Throwable e) {
        String where;
        try {
            Path kept = Files.createTempFile("leeway-fault-", ".txt");
            try (PrintWriter trace = new PrintWriter(Files.newBufferedWriter(kept))) {
                trace.println("leeway " + Version.TEXT + ", Java " + Runtime.version());
                e.printStackTrace(trace);
            }
            where = "; details are in " + kept;
        } catch (IOException notKept) {
            where = "";
        }
        String what = String.valueOf(e.getMessage()).replaceAll("\\s*\\R\\s*", " ");
        terminal.err().println("leeway: a fault of ours, not of your file: " + e.getClass().getSimpleName() + " " + what + where);
        return Command.FAULT;
    }

    private static String help(List<Commands.Row> table) {
        StringBuilder s = new StringBuilder();
        s.append("Example:  leeway plan examples/night-transfer.yaml\n\n");
        s.append("What follows from a ventilator, a kit, a patient and a journey.\n").append(PlanText.CAUTION).append("\n\nCommands:\n");
        int widest = Commands.names(table).stream().mapToInt(String::length).max().orElse(0);
        for (Commands.Row row : table) s.append("  ").append(row.name()).append(" ".repeat(widest - row.name().length() + 2)).append(row.does()).append('\n');
        s.append("\n\"leeway COMMAND --help\" says more. Every command takes --format text|json,\n"
                + "--seed N and --sheets DIR, and exits with 0 (done), 1 (done, and the answer\nis no), 2 (bad input) or 3 (a fault of ours).\n");
        return s.toString();
    }
}
