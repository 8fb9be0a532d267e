package leeway.app.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import leeway.app.report.MapJson;
import leeway.app.report.MapPicture;
import leeway.app.report.MapText;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway map FILE}: the operating map, tidal volume or inspiratory pressure × rate, with every limit. */
@picocli.CommandLine.Command(description = {"Works out how far tidal volume (or inspiratory pressure) and rate may be turned", "before a limit is reached: plateau, driving pressure, power, auto-PEEP, CO2, the", "device's flow.", "",
        "Example:  leeway map examples/night-transfer.yaml --out map.svg"}, customSynopsis = "leeway map FILE [--points N] [--out FILE.svg] [--format text|json]")
final class MapCommand extends Command {
    private static final int WIDTH = 720;
    private static final int LEAST = 5;
    private static final int MOST = 200;

    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--points", paramLabel = "N", description = "points along each side, 5 to 200; 60 unless you say (20 for a patient who breathes)")
    Integer points;

    @Option(names = "--out", paramLabel = "FILE.svg", description = "also draws the map into this file")
    Path out;

    @Override public Integer call() throws IOException {
        if (points != null && (points < LEAST || points > MOST)) {
            terminal.err().println("leeway: --points " + points + " is out of range; it lies between " + LEAST + " and " + MOST + ".");
            return BAD_INPUT;
        }
        if (out != null && !out.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            terminal.err().println("leeway: --out \"" + out + "\" does not end in .svg.");
            return BAD_INPUT;
        }
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        if (transport.get().ventilator().alone()) {
            String none = "nothing is set on the " + transport.get().ventilator().name() + " that ventilates, so there is no operating map; plan and breathe show what the patient does.";
            terminal.err().println("leeway: " + none);
            if (json()) UsageJson.write(terminal.out(), none, java.util.List.of());
            return NO;
        }
        Start start;
        try {
            start = Start.of(transport.get(), Ventilated.of(transport.get()), new SheetLibrary(catalogue)::strategy);
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, Inputs.called(file), e.complaints());
            return BAD_INPUT;
        }
        OperatingMap map;
        try (Progress working = Progress.of(terminal, "working out the map")) {
            map = points == null ? MapMaker.of(start, transport.get()) : MapMaker.of(start, transport.get(), points);
        }
        if (out != null && !write(map)) return BAD_INPUT;
        if (json()) MapJson.write(map, start, Version.TEXT, terminal.out());
        else terminal.out().print(MapText.of(map, start, Terminal.WIDTH, terminal.colour()));
        return DONE;
    }

    /** The picture, whole or not at all. */
    private boolean write(OperatingMap map) throws IOException {
        Path folder = out.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder) || Files.isDirectory(out)) {
            terminal.err().println("leeway: " + (Files.isDirectory(out) ? out + " is a folder; --out wants a file." : "there is no folder " + out.getParent() + ". Make it first."));
            return false;
        }
        try {
            Path part = Files.createTempFile(folder, ".map", ".part");
            try {
                Files.writeString(part, MapPicture.standalone(map, WIDTH));
                Files.move(part, out, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (java.nio.file.AccessDeniedException e) {
            terminal.err().println("leeway: nothing can be written into " + folder + "; look at its permissions.");
            return false;
        }
        terminal.err().println("The map is " + out + ".");
        return true;
    }
}
