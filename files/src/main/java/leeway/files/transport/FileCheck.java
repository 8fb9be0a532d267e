package leeway.files.transport;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;
import leeway.files.yaml.Tree;

/**
 * Checks a file by itself, transport or sheet: the first key says which.
 *
 * @param what "transport", or the kind of sheet; empty where the file does not say
 */
public record FileCheck(String file, Optional<String> what, List<Complaint> complaints) {
    public FileCheck { complaints = List.copyOf(complaints); }

    public boolean ok() { return complaints.isEmpty(); }

    public static FileCheck of(Path file, Catalogue catalogue) {
        String name = file.toString();
        Read<String> text = Text.of(file, name);
        return text instanceof Read.Good<String> good ? of(name, good.value(), catalogue) : new FileCheck(name, Optional.empty(), text.problems());
    }

    public static FileCheck of(String name, String text, Catalogue catalogue) {
        Complaints c = new Complaints();
        Optional<Node> root = Tree.of(name, text, c);
        if (root.isEmpty()) return new FileCheck(name, Optional.empty(), c.all());
        if (!(root.get() instanceof Node.Mapping m)) {
            c.add(root.get().at(), "a transport file or a sheet is a mapping, this is " + root.get().words(), "It begins \"transport: A title\", or for example \"circuit: NAME\".");
            return new FileCheck(name, Optional.empty(), c.all());
        }
        Optional<SheetKind<?>> kind = m.entries().isEmpty() ? Optional.empty() : Kinds.ALL.stream().filter(k -> k.word().equals(m.entries().get(0).key().text())).findFirst();
        boolean journey = m.get("transport").isPresent() || m.get("legs").isPresent() || m.get("patient").isPresent();
        if (journey || kind.isEmpty() && m.entries().stream().anyMatch(e -> Nearest.of(e.key().text(), List.of("transport", "patient", "legs")).size() > 0)) {
            return new FileCheck(name, Optional.of("transport"), TransportReader.read(name, text, catalogue).problems());
        }
        if (kind.isPresent()) {
            c.addAll(catalogue.problems());
            c.addAll(catalogue.read(kind.get(), m).problems());
            return new FileCheck(name, Optional.of(kind.get().word()), c.all());
        }
        String first = m.entries().isEmpty() ? "" : m.entries().get(0).key().text();
        c.add(m.at(), "this is neither a transport file nor a sheet: it begins with " + Complaints.echo(first), "A transport file begins \"transport: A title\"; a sheet begins with its kind, " + String.join(", ", Kinds.words()) + ".",
                () -> Nearest.of(first, Kinds.words()));
        return new FileCheck(name, Optional.empty(), c.all());
    }
}
