package leeway.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import leeway.app.paper.CrewCard;
import leeway.app.report.Json;
import leeway.app.report.Language;
import leeway.core.plan.Plan;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway card FILE}: the crew's card as PDF. */
@CommandLine.Command(name = "card", headerHeading = "Example:  ", header = {"leeway card examples/night-transfer.yaml", ""},
        description = {"Writes the crew's card of a transport file as PDF: settings in the device's", "words, what to expect, gauges and changeovers, limits, what goes wrong first.",
            "Exits with 0 where the plan holds, 1 where it does not; the card says so."})
final class CardCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--out", paramLabel = "F.pdf", description = "write here; beside you, named after the file, unless you say")
    Path out;

    @Mixin
    Spoken spoken = new Spoken();

    @Override public Integer call() throws IOException {
        Optional<Language> language = spoken.of(this);
        if (language.isEmpty()) return BAD_INPUT;
        if (out != null && !out.toString().toLowerCase(Locale.ROOT).endsWith(".pdf")) {
            terminal.err().println("leeway: --out \"" + out + "\" does not end in .pdf.");
            return BAD_INPUT;
        }
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        Optional<Plan> planned = Inputs.plan(this, transport.get(), catalogue, file);
        if (planned.isEmpty()) return BAD_INPUT;
        Plan plan = planned.get();
        Path card = out != null ? out : Path.of((Inputs.piped(file) ? "transport" : file.getFileName().toString().replaceFirst("\\.ya?ml$", "")) + "-card.pdf");
        Path folder = card.toAbsolutePath().getParent();
        if (!Output.write(this, folder, card.getFileName().toString(), to -> CrewCard.write(plan, transport.get().ventilator().called(), Version.TEXT, language.get(), to))) return BAD_INPUT;
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.text("transport", plan.title());
                json.text("card", card.toString());
                json.flag("holds", plan.verdict().holds());
            }
        } else {
            terminal.out().print("The card is " + card + "; the plan " + plan.verdict().word() + ".\n");
        }
        return plan.verdict().holds() ? DONE : NO;
    }
}
