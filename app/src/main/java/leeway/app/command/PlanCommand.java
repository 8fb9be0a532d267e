package leeway.app.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import leeway.app.paper.CrewCard;
import leeway.app.paper.Report;
import leeway.app.report.Language;
import leeway.app.report.PlanJson;
import leeway.app.report.PlanText;
import leeway.app.report.ReportPage;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway plan FILE}: is it enough, what to expect, what to take. */
@CommandLine.Command(name = "plan", headerHeading = "Example:  ", header = {"leeway plan examples/night-transfer.yaml", ""},
        description = {"Works out the plan of a transport file: whether it holds and why, settings,", "what to expect, alarm limits, oxygen and charge, what to take.",
            "Exits with 0 where it holds, 1 where it does not."})
final class PlanCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "a transport file; - reads one from standard input")
    Path file;

    @Option(names = "--report", paramLabel = "DIR", description = "write the report into this folder: plan.html, plan.pdf, and the crew's card.pdf")
    Path report;

    @Mixin
    Spoken spoken = new Spoken();

    @Override public Integer call() throws IOException {
        Optional<Language> language = spoken.of(this);
        if (language.isEmpty()) return BAD_INPUT;
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        Optional<Plan> planned = Inputs.plan(this, transport.get(), catalogue, file);
        if (planned.isEmpty()) return BAD_INPUT;
        Plan plan = planned.get();
        if (report != null && !write(transport.get(), plan, map(transport.get(), catalogue), language.get())) return BAD_INPUT;
        if (json()) PlanJson.write(plan, Version.TEXT, terminal.out());
        else terminal.out().print(PlanText.of(plan, Terminal.WIDTH, terminal.colour()));
        return plan.verdict().holds() ? DONE : NO;
    }

    /** None where nothing is set that ventilates. */
    private static Optional<OperatingMap> map(Transport t, Catalogue catalogue) {
        return t.ventilator().alone() ? Optional.empty() : Optional.of(MapMaker.of(Start.of(t, Ventilated.of(t), new SheetLibrary(catalogue)::strategy), t));
    }

    /** The page, the same on paper, and the card. */
    private boolean write(Transport t, Plan plan, Optional<OperatingMap> map, Language language) throws IOException {
        Language said = language.keepingNamesOf(plan);
        String page = ReportPage.of(plan, map, Version.TEXT);
        boolean all = Output.write(this, report, "plan.html", out -> out.write(said.page(page).getBytes(StandardCharsets.UTF_8)))
                && Output.write(this, report, "plan.pdf", out -> Report.write(page, said, out))
                && Output.write(this, report, "card.pdf", out -> CrewCard.write(plan, t.ventilator().called(), Version.TEXT, language, out));
        if (all) terminal.err().println("The report is " + report.resolve("plan.html") + ", on paper plan.pdf, the crew's card card.pdf.");
        return all;
    }
}
