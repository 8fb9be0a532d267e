package leeway.app.command;

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
import leeway.files.yaml.Read;

/** Reads what a command works on; what is wrong in it goes to the terminal, a line each, and as JSON where JSON is asked for. */
final class Inputs {
    private Inputs() { }

    /** The transport of a file; empty after complaints, and the command ends with {@link Command#BAD_INPUT}. */
    static Optional<Transport> transport(Command command, Catalogue catalogue, Path file) {
        Read<Transport> read = TransportReader.read(file, catalogue);
        if (read instanceof Read.Bad<Transport> bad) complain(command, file.toString(), near(file, bad.complaints()));
        return read.good();
    }

    /** The plan of a transport; empty after complaints about a sheet that it leads to. */
    static Optional<Plan> plan(Command command, Transport transport, Catalogue catalogue, Path file) {
        try {
            return Optional.of(PlanMaker.plan(transport, new SheetLibrary(catalogue), command.seed, Shared::begin));
        } catch (SheetLibrary.Bad e) {
            complain(command, file.toString(), e.complaints());
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
        } catch (java.io.IOException | java.io.UncheckedIOException e) {
            return complaints;
        }
    }
}
