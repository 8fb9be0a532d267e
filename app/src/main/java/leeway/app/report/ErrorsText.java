package leeway.app.report;

import java.io.PrintStream;
import java.util.Collection;
import leeway.files.transport.FileCheck;
import leeway.files.yaml.Complaint;

/** Complaints about files, as text and as the JSON of {@code leeway check}. */
public final class ErrorsText {
    private ErrorsText() { }

    /** One line each, {@code night.yaml:14:13: …}. */
    public static void lines(PrintStream to, Collection<Complaint> complaints) { complaints.forEach(c -> to.println(c.line())); }

    /** {@code files} of {@code leeway check}. */
    public static void json(Json json, Collection<FileCheck> files) {
        json.objects("files", files, f -> {
            json.text("file", f.file());
            json.flag("ok", f.ok());
            json.text("kind", f.what());
            json.objects("errors", f.complaints(), c -> {
                if (!c.at().file().equals(f.file())) json.text("file", c.at().file());
                json.count("line", c.at().line());
                json.count("column", c.at().column());
                json.text("message", c.message());
                if (!c.nearest().isEmpty()) json.text("nearest", c.nearest().get(0));
                if (c.nearest().size() > 1) json.texts("alsoNear", c.nearest().subList(1, c.nearest().size()));
            });
        });
    }
}
