package leeway.app.report;

import java.io.OutputStream;
import java.util.List;
import leeway.files.yaml.Complaint;

/** What is wrong in files, as JSON: {@code files} [{@code file}, {@code ok}, {@code errors} [{@code line}, {@code column}, {@code message}, {@code nearest}]]. */
public final class ComplaintsJson {
    private ComplaintsJson() { }

    /** A file with what is wrong in it; nothing: it is right. */
    public record Checked(String file, List<Complaint> complaints) { }

    /** One document for one bad file. */
    public static void write(String file, List<Complaint> complaints, OutputStream to) { write(List.of(new Checked(file, complaints)), to); }

    public static void write(List<Checked> files, OutputStream to) {
        try (Json json = new Json(to)) {
            json.objects("files", files, f -> {
                json.text("file", f.file());
                json.flag("ok", f.complaints().isEmpty());
                json.objects("errors", f.complaints(), c -> {
                    if (!c.at().file().equals(f.file())) json.text("file", c.at().file());
                    json.count("line", c.at().line());
                    json.count("column", c.at().column());
                    json.text("message", c.message());
                    if (!c.nearest().isEmpty()) json.text("nearest", c.nearest().get(0));
                });
            });
        }
    }
}
