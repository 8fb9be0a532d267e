package leeway.app.command;

import java.util.List;
import java.util.Optional;
import leeway.app.report.Language;
import leeway.app.web.Words;
import picocli.CommandLine.Option;

/** The option for the language of what is printed. */
final class Spoken {
    @Option(names = "--language", paramLabel = "en|de", description = "language of report and card: en or de; names of the file stay as they are written")
    String language = "en";

    /** The language; empty, and said in one line, where it is not known. */
    Optional<Language> of(Command command) {
        if (language.equals(Language.ENGLISH.code())) return Optional.of(Language.ENGLISH);
        List<String> known = Words.LANGUAGES;
        if (known.contains(language)) return Optional.of(Words.in(language).spoken());
        command.terminal.err().println("leeway: --language \"" + (language.length() > 40 ? language.substring(0, 40) : language) + "\" is not known; it is " + String.join(" or ", known) + ".");
        return Optional.empty();
    }
}
