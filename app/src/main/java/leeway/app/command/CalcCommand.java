package leeway.app.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.report.CalcText;
import leeway.app.report.Json;
import leeway.core.calc.Calc;
import leeway.core.calc.CalcComplaint;
import leeway.core.calc.CalcResult;
import leeway.core.calc.Calcs;
import leeway.core.calc.Outcome;
import leeway.core.calc.Sheets;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Place;
import picocli.CommandLine;
import picocli.CommandLine.Parameters;

/** {@code leeway calc NAME --KEY "VALUE UNIT" …}: one calculation with its working and its source. */
@CommandLine.Command(name = "calc", headerHeading = "Example:  ", header = {"leeway calc gauge --pressure \"200 bar\" --temperature \"15 Cel\" --to \"-15 Cel\"", ""},
        description = {"One calculation, shown with its working and its source. \"leeway calc\" lists", "them, \"leeway calc NAME --help\" shows what one needs."},
        customSynopsis = "leeway calc [NAME --KEY \"VALUE UNIT\" ...] [--format text|json]")
final class CalcCommand extends Command {
    @Parameters(paramLabel = "NAME --KEY VALUE", arity = "0..*", hideParamSyntax = true, description = "the calculation and what it is given, each value with its unit")
    List<String> words = new ArrayList<>();

    /** Keys of calcs are no options of the command: they, and values that begin with a minus sign, arrive as words. */
    @Override void prepare(CommandLine line) { line.setUnmatchedOptionsArePositionalParams(true).setOverwrittenOptionsAllowed(true); }

    @Override Optional<String> helpFor(List<String> args) {
        return args.stream().filter(a -> !a.startsWith("-")).findFirst().flatMap(Calcs::find).map(CalcText::help);
    }

    @Override public Integer call() {
        if (words.isEmpty()) {
            list();
            return DONE;
        }
        Catalogue catalogue = Catalogue.of(sheets);
        Map<String, String> given = new LinkedHashMap<>();
        List<CalcComplaint> wrong = given(words.subList(1, words.size()), given);
        Outcome outcome = wrong.isEmpty() ? Calcs.run(words.get(0), given, sheets(catalogue)) : new Outcome.Wrong(wrong);
        if (outcome instanceof Outcome.Wrong w) {
            w.complaints().forEach(c -> terminal.err().println("leeway: " + c.line().strip()));
            if (json()) {
                try (Json json = new Json(terminal.out())) {
                    json.objects("errors", w.complaints(), c -> {
                        if (!c.key().isEmpty()) json.text("key", c.key());
                        json.text("message", c.line().strip());
                        json.text("nearest", c.nearest());
                    });
                }
            }
            return BAD_INPUT;
        }
        CalcResult result = ((Outcome.Done) outcome).result();
        if (json()) json(result);
        else terminal.out().print(CalcText.of(result, Terminal.WIDTH, terminal.colour()));
        return DONE;
    }

    /** {@code --key value} and {@code --key=value}. */
    private static List<CalcComplaint> given(List<String> args, Map<String, String> into) {
        List<CalcComplaint> wrong = new ArrayList<>();
        for (int i = 0; i < args.size(); i++) {
            String a = args.get(i);
            if (!a.startsWith("--") || a.length() < 3) {
                wrong.add(new CalcComplaint("", "\"" + Nearest.shortened(a) + "\" stands alone", "A value follows its key: --pressure \"200 bar\".", Optional.empty()));
                continue;
            }
            int equals = a.indexOf('=');
            String key = a.substring(2, equals < 0 ? a.length() : equals);
            if (equals < 0 && i + 1 >= args.size()) {
                wrong.add(new CalcComplaint(key, "\"--" + Nearest.shortened(key) + "\" has no value", "Write the value with its unit behind it.", Optional.empty()));
                continue;
            }
            String value = equals < 0 ? args.get(++i) : a.substring(equals + 1);
            if (into.put(key, value) != null) wrong.add(new CalcComplaint(key, "\"--" + Nearest.shortened(key) + "\" is given twice", "Keep one of them.", Optional.empty()));
        }
        return wrong;
    }

    private static Sheets sheets(Catalogue catalogue) {
        return new Sheets() {
            @Override public Optional<Object> find(String kind, String name) {
                return Kinds.find(kind).flatMap(k -> catalogue.find(k, name, Place.start("calc"), new Complaints())).map(Object.class::cast);
            }

            @Override public List<String> names(String kind) { return catalogue.names(kind); }
        };
    }

    private void list() {
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.objects("calcs", Calcs.all(), c -> {
                    json.text("calc", c.name());
                    json.text("plain", c.plain());
                    json.texts("keys", c.keys().stream().map(k -> k.name()).toList());
                    json.text("example", c.example());
                });
            }
        } else {
            terminal.out().print(CalcText.list(Calcs.all(), Terminal.WIDTH, terminal.colour()));
        }
    }

    private void json(CalcResult r) {
        try (Json json = new Json(terminal.out())) {
            json.text("calc", r.calc());
            json.exact("value", r.value());
            json.text("unit", r.unit());
            r.keys().forEach(json::exact);
            json.texts("working", r.working());
            json.text("source", r.source());
        }
    }
}
