package leeway.app.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import leeway.app.rehearse.Shared;
import leeway.app.report.PlanJson;
import leeway.app.report.PlanText;
import leeway.app.report.ReportPage;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway plan FILE}: is it enough, what to expect, what to take. */
@CommandLine.Command(name = "plan", headerHeading = "Example:  ", header = {"leeway plan examples/night-transfer.yaml", ""},
        description = {"Works out the plan of a transport file: whether it holds and why, settings,", "what to expect, alarm limits, oxygen and charge, what to take.",
            "Exits with 0 where it holds, 1 where it does not."})
final class PlanCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "a transport file")
    Path file;

    @Option(names = "--report", paramLabel = "DIR", description = "write the plan as one HTML page, plan.html, into this folder")
    Path report;

    @Override public Integer call() throws IOException {
        Catalogue catalogue = Catalogue.of(sheets);
        Optional<Transport> transport = Inputs.transport(this, catalogue, file);
        if (transport.isEmpty()) return BAD_INPUT;
        Plan plan;
        try {
            plan = PlanMaker.plan(transport.get(), new SheetLibrary(catalogue), seed, Shared::begin);
        } catch (SheetLibrary.Bad e) {
            Inputs.complain(this, file.toString(), e.complaints());
            return BAD_INPUT;
        }
        if (report != null && !write(plan, map(transport.get(), catalogue))) return BAD_INPUT;
        if (json()) PlanJson.write(plan, Version.TEXT, terminal.out());
        else terminal.out().print(PlanText.of(plan, Terminal.WIDTH, terminal.colour()));
        return plan.verdict().holds() ? DONE : NO;
    }

    private static OperatingMap map(Transport t, Catalogue catalogue) {
        return MapMaker.of(Start.of(t, Ventilated.of(t), new SheetLibrary(catalogue)::strategy), t);
    }

    /** The page, whole or not at all. */
    private boolean write(Plan plan, OperatingMap map) throws IOException {
        if (Files.exists(report) && !Files.isDirectory(report)) {
            terminal.err().println("leeway: " + report + " is a file; --report wants a folder, which is made where it is missing.");
            return false;
        }
        Path page = report.resolve("plan.html");
        try {
            Files.createDirectories(report);
            Path part = Files.createTempFile(report, ".plan", ".part");
            try {
                Files.write(part, ReportPage.of(plan, Optional.of(map), Version.TEXT).getBytes(StandardCharsets.UTF_8));
                Files.move(part, page, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (java.nio.file.AccessDeniedException e) {
            terminal.err().println("leeway: nothing can be written into " + report + "; look at its permissions.");
            return false;
        }
        terminal.err().println("The report is " + page + ".");
        return true;
    }
}
