package leeway.app.command;

import java.io.PrintStream;
import java.util.List;
import leeway.app.report.Json;

/** The answer in JSON where the command line itself is wrong: {@code errors} without a file. */
final class UsageJson {
    private UsageJson() { }

    static void write(PrintStream out, String message, List<String> nearest) {
        try (Json json = new Json(out)) {
            json.objects("errors", List.of(message), m -> {
                json.text("message", m);
                if (!nearest.isEmpty()) json.text("nearest", nearest.get(0));
            });
        }
    }
}
