package leeway.app.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.app.report.ErrorsText;
import leeway.app.report.Json;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Place;
import leeway.files.transport.FileCheck;
import picocli.CommandLine.Parameters;

/** {@code leeway catalogue [KIND [NAME]]}: lists and shows sheets. */
@picocli.CommandLine.Command(headerHeading = "Example:  ", header = {"leeway catalogue ventilator \"example turbine\"", ""}, description = "Lists the sheets, and shows one with the source of every value.",
        customSynopsis = "leeway catalogue [KIND [NAME]] [--sheets DIR] [--format text|json]")
final class CatalogueCommand extends Command {
    @Parameters(index = "0", arity = "0..1", paramLabel = "KIND", description = "ventilator, circuit, filter, airway, illness …")
    String kind;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "NAME", description = "the name of a sheet; quotation marks may be left out")
    List<String> name = new ArrayList<>();

    @Override public Integer call() {
        Catalogue catalogue = Catalogue.of(sheets);
        if (!catalogue.problems().isEmpty()) return complain(catalogue.problems());
        if (kind == null) return kinds(catalogue);
        Optional<SheetKind<?>> found = Kinds.find(kind);
        if (found.isEmpty()) {
            Complaints c = new Complaints();
            c.add(Place.start("catalogue"), "there is no kind of sheet " + Complaints.echo(kind), "Kinds are " + String.join(", ", Kinds.words()) + ".", () -> Nearest.of(kind, Kinds.words()));
            return complain(c.all());
        }
        return name.isEmpty() ? names(catalogue, found.get()) : one(catalogue, found.get(), String.join(" ", name));
    }

    private int complain(List<Complaint> complaints) {
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                ErrorsText.json(json, List.of(new FileCheck("catalogue", Optional.empty(), complaints)));
            }
        } else {
            for (Complaint c : complaints) terminal.err().println(c.at().file().equals("catalogue") ? "leeway: " + c.message() : c.line()); // no file, no place
        }
        return BAD_INPUT;
    }

    private int kinds(Catalogue catalogue) {
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.objects("kinds", Kinds.ALL, k -> {
                    json.text("kind", k.word());
                    json.texts("sheets", catalogue.names(k.word()));
                });
            }
            return DONE;
        }
        for (SheetKind<?> k : Kinds.ALL) {
            List<String> names = catalogue.names(k.word());
            terminal.out().println(k.plural());
            terminal.out().println(wrapped("  ", String.join(", ", names)));
        }
        terminal.out().println("\nleeway catalogue KIND NAME shows one.");
        return DONE;
    }

    private int names(Catalogue catalogue, SheetKind<?> k) {
        List<String> names = catalogue.names(k.word());
        List<String> plain = new ArrayList<>();
        Complaints c = new Complaints();
        for (String n : names) plain.add(catalogue.sheet(k, n, Place.start("catalogue"), c).flatMap(s -> s.section().text("plain")).orElse(""));
        if (c.any()) return complain(c.all());
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.text("kind", k.word());
                json.objects("sheets", names, n -> {
                    json.text("name", n);
                    json.flag("own", catalogue.isOwn(k.word(), n));
                    String p = plain.get(names.indexOf(n));
                    if (!p.isEmpty()) json.text("plain", p);
                });
            }
            return DONE;
        }
        for (int i = 0; i < names.size(); i++) {
            terminal.out().println(names.get(i) + (catalogue.isOwn(k.word(), names.get(i)) ? "  (your own)" : ""));
            if (!plain.get(i).isEmpty()) terminal.out().println(wrapped("    ", plain.get(i)));
        }
        terminal.out().println("\nleeway catalogue " + k.word() + " NAME shows one with the source of every value.");
        return DONE;
    }

    private int one(Catalogue catalogue, SheetKind<?> k, String wanted) {
        Complaints c = new Complaints();
        Optional<? extends Catalogue.Sheet<?>> sheet = catalogue.sheet(k, wanted, Place.start("catalogue"), c);
        if (sheet.isEmpty()) return complain(c.all());
        List<Catalogue.Row> rows = Catalogue.rows(sheet.get());
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.text("kind", k.word());
                json.text("name", wanted);
                json.flag("own", catalogue.isOwn(k.word(), wanted));
                json.objects("values", rows, r -> {
                    json.text("key", r.key());
                    json.text("value", r.value());
                    json.text("source", r.source());
                    json.text("meaning", r.meaning());
                });
            }
            return DONE;
        }
        for (Catalogue.Row r : rows) {
            if (r.key().equals("source")) {
                terminal.out().println(wrapped("  ", "source of what names none: " + r.value()));
                continue;
            }
            terminal.out().println(wrapped("  ", (r.key() + ": " + r.value()).strip()).substring(r.key().equals(k.word()) ? 2 : 0));
            boolean own = !r.source().equals(sheet.get().section().text("source").orElse(""));
            if (own) terminal.out().println(wrapped("      ", "source: " + r.source()));
        }
        return DONE;
    }

    /** Text broken at spaces so that it fits the terminal; lines after the first are indented two more. */
    private static String wrapped(String indent, String text) {
        StringBuilder out = new StringBuilder();
        String lead = indent;
        String rest = text;
        while (rest.length() > Terminal.WIDTH - lead.length()) {
            int cut = rest.lastIndexOf(' ', Terminal.WIDTH - lead.length());
            if (cut <= 0) cut = Math.min(rest.length(), Terminal.WIDTH - lead.length());
            out.append(lead).append(rest, 0, cut).append('\n');
            rest = rest.substring(cut).stripLeading();
            lead = indent + "  ";
        }
        return out.append(lead).append(rest).toString();
    }
}
