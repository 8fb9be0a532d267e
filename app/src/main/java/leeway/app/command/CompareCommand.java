package leeway.app.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.rehearse.Shared;
import leeway.app.report.Comparison;
import leeway.core.plan.PlanMaker;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportKeys;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Read;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway compare FILE --with ventilator=NAME …}: the same journey with other kit, side by side. */
@picocli.CommandLine.Command(description = {"Plans the same journey with other kit and lays the plans side by side.", "Each --with is an alternative; several changes in one are separated by commas.", "",
        "Example:  leeway compare examples/night-transfer.yaml --with \"ventilator=example turbine\""}, customSynopsis = "leeway compare FILE --with KEY=NAME[,KEY=NAME] ... [--format text|json]")
final class CompareCommand extends Command {
    private static final List<String> KEYS = List.of("ventilator", "circuit", "filter", "monitor", "strategy", "policy");
    private static final int MOST = 4;

    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--with", paramLabel = "KEY=NAME", required = true, description = "what else to carry: ventilator, circuit, filter, monitor, strategy or policy; at most 4 alternatives")
    List<String> with = new ArrayList<>();

    @Override public Integer call() {
        Catalogue catalogue = Catalogue.of(sheets);
        Read<String> text = Inputs.text(this, file);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file, text);
        if (transport.isEmpty()) return BAD_INPUT;
        if (with.size() > MOST) return refuse("at most " + MOST + " alternatives fit side by side; " + with.size() + " are given.");
        List<Map<String, String>> asked = new ArrayList<>(List.of(Map.of()));
        List<Transport> transports = new ArrayList<>(List.of(transport.get()));
        for (String one : with) {
            Map<String, String> changes = new LinkedHashMap<>();
            String wrong = changes(one, changes);
            if (!wrong.isEmpty()) return refuse(wrong);
            Optional<String> changed = text.good();
            for (Map.Entry<String, String> c : changes.entrySet()) changed = changed.flatMap(t -> Edit.set(t, c.getKey(), c.getValue(), TransportKeys.TRANSPORT.names()));
            if (changed.isEmpty()) return refuse("the file cannot be changed to " + one + "; write that in a copy of it and plan both.");
            Read<Transport> read = TransportReader.read("with " + one, changed.get(), catalogue);
            if (read instanceof Read.Bad<Transport> bad) {
                Inputs.complain(this, Inputs.called(file), bad.complaints());
                return BAD_INPUT;
            }
            asked.add(changes);
            transports.add(read.good().orElseThrow());
        }
        List<Comparison.Alternative> columns = new ArrayList<>();
        try {
            plan(asked, transports, new SheetLibrary(catalogue), columns);
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, Inputs.called(file), e.complaints());
            return BAD_INPUT;
        }
        Comparison comparison = new Comparison(columns);
        if (json()) comparison.json(Version.TEXT, terminal.out());
        else terminal.out().print(comparison.text(Terminal.WIDTH, terminal.colour()));
        return DONE;
    }

    private void plan(List<Map<String, String>> asked, List<Transport> transports, SheetLibrary library, List<Comparison.Alternative> columns) {
        try (Progress working = Progress.of(terminal, "working out plans")) {
            for (int i = 0; i < transports.size(); i++) {
                working.at(i, transports.size());
                Transport t = transports.get(i);
                columns.add(new Comparison.Alternative(asked.get(i), t.ventilator(), PlanMaker.plan(t, library, seed, Shared::begin)));
            }
        }
    }

    /** Reads KEY=NAME pairs; what is wrong, or nothing. */
    private static String changes(String text, Map<String, String> into) {
        for (String pair : text.split(",")) {
            int equals = pair.indexOf('=');
            String key = equals < 0 ? pair.strip() : pair.substring(0, equals).strip();
            if (!KEYS.contains(key)) {
                List<String> near = leeway.files.yaml.Nearest.of(key, KEYS);
                return "\"" + Nearest.shortened(key) + "\" cannot be compared. " + (near.isEmpty() ? "One can change " + String.join(", ", KEYS) + "." : "Did you mean \"" + near.get(0) + "\"?");
            }
            if (equals < 0 || pair.substring(equals + 1).isBlank()) return "\"" + key + "\" has no name. Write --with \"" + key + "=NAME\".";
            into.put(key, pair.substring(equals + 1).strip());
        }
        return "";
    }

    private int refuse(String sentence) {
        terminal.err().println("leeway: " + sentence);
        return BAD_INPUT;
    }
}
