package leeway.app.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leeway.app.report.ErrorsText;
import leeway.app.report.Json;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.FileCheck;
import leeway.files.yaml.Read;
import picocli.CommandLine.Parameters;

/** {@code leeway check FILE…}: checks transport files and sheets. */
@picocli.CommandLine.Command(headerHeading = "Example:  ", header = {"leeway check night.yaml my-sheets/*.yaml", ""}, description = {"Checks transport files and sheets, all errors at once."},
        customSynopsis = "leeway check FILE... [--sheets DIR] [--format text|json]")
final class CheckCommand extends Command {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "transport files or sheets; - reads one from standard input")
    List<Path> files;

    @Override public Integer call() {
        Catalogue catalogue = Catalogue.of(sheets);
        List<FileCheck> checks = files.stream().map(f -> check(f, catalogue)).toList();
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

    private FileCheck check(Path file, Catalogue catalogue) {
        Read<String> text = Inputs.text(this, file);
        return text instanceof Read.Good<String> good ? FileCheck.of(Inputs.called(file), good.value(), catalogue) : new FileCheck(Inputs.called(file), Optional.empty(), text.problems());
    }
}
