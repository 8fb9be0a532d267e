package leeway.app.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.report.Comparison;
import leeway.core.plan.PlanMaker;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportKeys;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway compare FILE --with ventilator=NAME …}: the same journey with other kit, side by side. */
@picocli.CommandLine.Command(description = {"Plans the same journey with other kit and lays the plans side by side.", "Each --with is an alternative; several changes in one are separated by commas.", "",
        "Example:  leeway compare examples/night-transfer.yaml --with \"ventilator=example turbine\""}, customSynopsis = "leeway compare FILE --with KEY=NAME[,KEY=NAME] ... [--format text|json]")
final class CompareCommand extends Command {
    private static final List<String> KEYS = List.of("ventilator", "circuit", "filter", "monitor", "strategy", "policy");
    private static final int MOST = 4;

    @Parameters(paramLabel = "FILE", description = "a transport file")
    Path file;

    @Option(names = "--with", paramLabel = "KEY=NAME", required = true, description = "what else to carry: ventilator, circuit, filter, monitor, strategy or policy; at most 4 alternatives")
    List<String> with = new ArrayList<>();

    @Override public Integer call() {
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        if (with.size() > MOST) return refuse("at most " + MOST + " alternatives fit side by side; " + with.size() + " are given.");
        String text = Text.of(file, file.toString()).good().orElseThrow();
        SheetLibrary library = new SheetLibrary(catalogue);
        List<Comparison.Alternative> columns = new ArrayList<>();
        try {
            columns.add(new Comparison.Alternative(Map.of(), transport.get().ventilator(), PlanMaker.plan(transport.get(), library, seed)));
            for (String one : with) {
                Map<String, String> changes = new LinkedHashMap<>();
                String wrong = changes(one, changes);
                if (!wrong.isEmpty()) return refuse(wrong);
                Optional<String> changed = Optional.of(text);
                for (Map.Entry<String, String> c : changes.entrySet()) changed = changed.flatMap(t -> Edit.set(t, c.getKey(), c.getValue(), TransportKeys.TRANSPORT.names()));
                if (changed.isEmpty()) return refuse("the file cannot be changed to " + one + "; write that in a copy of it and plan both.");
                Read<Transport> read = TransportReader.read("with " + one, changed.get(), catalogue);
                if (read instanceof Read.Bad<Transport> bad) {
                    Inputs.complain(this, file.toString(), bad.complaints());
                    return BAD_INPUT;
                }
                Transport other = read.good().orElseThrow();
                columns.add(new Comparison.Alternative(changes, other.ventilator(), PlanMaker.plan(other, library, seed)));
            }
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, file.toString(), e.complaints());
            return BAD_INPUT;
        }
        Comparison comparison = new Comparison(columns);
        if (json()) comparison.json(Version.TEXT, terminal.out());
        else terminal.out().print(comparison.text(Terminal.WIDTH, terminal.colour()));
        return DONE;
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
