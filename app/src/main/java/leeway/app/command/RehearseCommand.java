package leeway.app.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.rehearse.Rehearsals;
import leeway.app.rehearse.Rehearsals.Ask;
import leeway.app.report.RehearsalJson;
import leeway.app.report.RehearsalText;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.rehearsal.Fault;
import leeway.core.start.Start;
import leeway.core.transport.Leg;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway rehearse FILE}: each fault, when harm begins, who speaks first, what margin is left. */
@picocli.CommandLine.Command(sortOptions = false,
        description = {"Rehearses faults on the journey of a transport file: when harm begins, until when", "it can still be prevented, when an alarm is heard, what margin is left for the", "crew.", "",
            "Example:  leeway rehearse examples/night-transfer.yaml --fault \"tube kinked\""},
        customSynopsis = "leeway rehearse FILE [--fault NAME]... [--at TIME] [--draws N] [--pairs] [--threads N] [--format text|json]")
final class RehearseCommand extends Command {
    private static final int MOST_DRAWS = 10_000;
    private static final int MOST_THREADS = 64;

    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--fault", paramLabel = "NAME", description = "only this fault; may be repeated; all unless you say")
    List<String> names = new ArrayList<>();

    @Option(names = "--at", paramLabel = "TIME", description = "when it strikes, from the start of the journey, \"30 min\"; the worst moment of each leg unless you say")
    String at;

    @Option(names = "--draws", paramLabel = "N", description = "also in N draws of the uncertain world, up to 10000; none unless you say")
    int draws;

    @Option(names = "--pairs", description = "also which two faults are covered alone and uncovered together")
    boolean pairs;

    @Option(names = "--threads", paramLabel = "N", description = "threads for the draws, 1 to 64; as many as processors unless you say; the answer is the same")
    int threads = Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());

    @Override public Integer call() {
        if (draws < 0 || draws > MOST_DRAWS) return refuse("--draws %d is out of range; it lies between 0 and %d.".formatted(draws, MOST_DRAWS), List.of());
        if (threads < 1 || threads > MOST_THREADS) return refuse("--threads %d is out of range; it lies between 1 and %d.".formatted(threads, MOST_THREADS), List.of());
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        Transport t = transport.get();
        OptionalDouble atS = OptionalDouble.empty();
        if (at != null) {
            atS = seconds(at);
            double endS = t.legs().stream().mapToDouble(Leg::takesMin).sum() * 60;
            if (atS.isEmpty()) return refuse("--at \"%s\" is not a time. Write for example --at \"30 min\".".formatted(Nearest.shortened(at)), List.of());
            if (atS.getAsDouble() < 0 || atS.getAsDouble() >= endS) return refuse("--at \"%s\" lies outside the journey, which takes %.0f min at its medians.".formatted(Nearest.shortened(at), endS / 60), List.of());
        }
        try {
            SheetLibrary library = new SheetLibrary(catalogue);
            List<Fault> known = library.faults();
            List<Fault> faults = new ArrayList<>();
            for (String name : names) {
                Optional<Fault> fault = known.stream().filter(f -> f.name().equals(name)).findFirst();
                if (fault.isEmpty()) {
                    List<String> near = Nearest.of(name, known.stream().map(Fault::name).toList(), 3);
                    return refuse("there is no fault \"%s\". %s".formatted(Nearest.shortened(name), near.isEmpty() ? "\"leeway catalogue fault\" lists them." : "Did you mean " + Nearest.inWords(near) + "?"), near);
                }
                if (!faults.contains(fault.get())) faults.add(fault.get());
            }
            Settings settings = Start.of(t, Ventilated.of(t), library::strategy).settings();
            Ask ask = new Ask(faults.isEmpty() ? known : faults, known, library.noises(), atS, draws, pairs, threads, seed);
            Rehearsals all;
            try (Progress working = Progress.of(terminal, "rehearsing")) {
                all = Rehearsals.of(t, settings, ask, done -> working.at(done, draws));
            }
            if (json()) RehearsalJson.write(all, Version.TEXT, seed, terminal.out());
            else terminal.out().print(RehearsalText.of(all, Terminal.WIDTH, terminal.colour()));
            long uncovered = all.rows().stream().filter(r -> r.coverage().uncovered()).count();
            return t.policy().uncoveredAllowed().map(most -> uncovered > most).orElse(false) ? NO : DONE;
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, Inputs.called(file), e.complaints());
            return BAD_INPUT;
        }
    }

    private int refuse(String message, List<String> nearest) {
        terminal.err().println("leeway: " + message);
        if (json()) UsageJson.write(terminal.out(), message, nearest);
        return BAD_INPUT;
    }

    private static OptionalDouble seconds(String text) {
        Optional<Quantity> q = Quantity.parse(text.strip());
        if (q.isEmpty() || !Kind.TIME.accepted().contains(q.get().unit())) return OptionalDouble.empty();
        return OptionalDouble.of(q.get().in(Kind.TIME.internal()));
    }
}
