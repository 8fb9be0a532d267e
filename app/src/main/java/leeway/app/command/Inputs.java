package leeway.app.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leeway.app.rehearse.Shared;
import leeway.app.report.ErrorsText;
import leeway.app.report.Json;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.FileCheck;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;

/** Reads what a command works on; what is wrong in it goes to the terminal, a line each, and as JSON where JSON is asked for. */
final class Inputs {
    /** A file of this name is what is piped into the command. */
    private static final Path PIPED = Path.of("-");

    private Inputs() { }

    /** Whether a file is what is piped into the command. */
    static boolean piped(Path file) { return file.equals(PIPED); }

    /** How messages call a file. */
    static String called(Path file) { return piped(file) ? "standard input" : file.toString(); }

    /** The text of a file, or of what is piped into the command; never more than the limit of a file. */
    static Read<String> text(Command command, Path file) {
        if (!piped(file)) return Text.of(file, called(file));
        try {
            return Text.of(command.terminal.in().readNBytes(Text.LIMIT + 1), called(file));
        } catch (IOException e) {
            return new Read.Bad<>(List.of(new Complaint(Place.start(called(file)), "this could not be read", "", List.of())));
        }
    }

    /** The transport of a file; empty after complaints, and the command ends with {@link Command#BAD_INPUT}. */
    static Optional<Transport> transport(Command command, Catalogue catalogue, Path file) {
        return transport(command, catalogue, file, text(command, file));
    }

    /** The same where the text has been read already. */
    static Optional<Transport> transport(Command command, Catalogue catalogue, Path file, Read<String> written) {
        Read<Transport> read = written.then(text -> TransportReader.read(called(file), text, catalogue));
        if (read instanceof Read.Bad<Transport> bad) complain(command, called(file), piped(file) ? bad.complaints() : near(file, bad.complaints()));
        return read.good();
    }

    /** The plan of a transport; empty after complaints about a sheet that it leads to. */
    static Optional<Plan> plan(Command command, Transport transport, Catalogue catalogue, Path file) {
        try {
            try (Progress working = Progress.of(command.terminal, "working out the plan")) {
                return Optional.of(PlanMaker.plan(transport, new SheetLibrary(catalogue), command.seed, Shared::begin));
            }
        } catch (SheetLibrary.Bad e) {
            complain(command, called(file), e.complaints());
            return Optional.empty();
        }
    }

    /** Prints complaints about one file. */
    static void complain(Command command, String file, List<Complaint> complaints) {
        ErrorsText.lines(command.terminal.err(), complaints);
        if (!command.json()) return;
        try (Json json = new Json(command.terminal.out())) {
            ErrorsText.json(json, List.of(new FileCheck(file, Optional.of("transport"), complaints)));
        }
    }

    /** A file that is not there: the nearest name in its folder, if one is near. */
    private static List<Complaint> near(Path file, List<Complaint> complaints) {
        if (Files.exists(file) || complaints.size() != 1) return complaints;
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) return complaints;
        try (Stream<Path> beside = Files.list(folder)) {
            List<String> names = Nearest.of(file.getFileName().toString(), beside.map(p -> p.getFileName().toString()).filter(n -> n.matches(".*\\.ya?ml")).sorted().toList());
            Complaint c = complaints.get(0);
            List<String> paths = names.stream().map(n -> file.getParent() == null ? n : file.getParent().resolve(n).toString()).toList();
            return List.of(new Complaint(c.at(), c.what(), c.right(), paths));
        } catch (IOException | java.io.UncheckedIOException e) {
            return complaints;
        }
    }
}
