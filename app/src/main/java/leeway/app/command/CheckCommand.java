package leeway.app.command;

import java.nio.file.Path;
import java.util.List;
import leeway.app.report.ErrorsText;
import leeway.app.report.Json;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.FileCheck;
import picocli.CommandLine.Parameters;

/** {@code leeway check FILE…}: checks transport files and sheets. */
@picocli.CommandLine.Command(headerHeading = "Example:  ", header = {"leeway check night.yaml my-sheets/*.yaml", ""}, description = {"Checks transport files and sheets, all errors at once."},
        customSynopsis = "leeway check FILE... [--sheets DIR] [--format text|json]")
final class CheckCommand extends Command {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "transport files or sheets")
    List<Path> files;

    @Override public Integer call() {
        Catalogue catalogue = Catalogue.of(sheets);
        List<FileCheck> checks = files.stream().map(f -> FileCheck.of(f, catalogue)).toList();
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                ErrorsText.json(json, checks);
            }
        } else {
            for (FileCheck c : checks) {
                if (c.ok()) terminal.out().println(c.file() + ": nothing wrong with this " + c.what().map(w -> w.equals("transport") ? w : w + " sheet").orElse("file"));
                ErrorsText.lines(terminal.out(), c.complaints());
            }
        }
        return checks.stream().allMatch(FileCheck::ok) ? DONE : BAD_INPUT;
    }
}
