package leeway.files.sheet;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;
import leeway.files.yaml.Tree;

/**
 * A user's folders of sheets: every {@code .yaml} or {@code .yml} file in them, three folders deep, {@value #MOST} at most.
 * A sheet says itself what it is; the file's name does not matter. Folders given later win.
 */
final class OwnSheets {
    static final int MOST = 2_000;

    /** Kind and name of a sheet. */
    record Id(String kind, String name) {
        /** One text for a map; no name of a kind has a slash in it. */
        String key() { return kind + "/" + name; }
    }

    private final Map<String, Node.Mapping> trees = new LinkedHashMap<>();
    private final Complaints complaints = new Complaints();

    OwnSheets(List<Path> folders) {
        for (Path folder : folders) read(folder);
    }

    Complaints complaints() { return complaints; }

    Optional<Node.Mapping> tree(String kind, String name) { return Optional.ofNullable(trees.get(new Id(kind, name).key())); }

    List<String> names(String kind) { return trees.keySet().stream().filter(k -> k.startsWith(kind + "/")).map(k -> k.substring(kind.length() + 1)).toList(); }

    private void read(Path folder) {
        Place at = Place.start(folder.toString());
        if (!Files.isDirectory(folder)) {
            complaints.add(at, Files.exists(folder) ? "this is not a folder" : "there is no such folder", "\"--sheets\" takes a folder of sheets.");
            return;
        }
        List<Path> files;
        try (Stream<Path> walk = Files.walk(folder, 3)) {
            files = walk.filter(f -> f.toString().endsWith(".yaml") || f.toString().endsWith(".yml")).filter(Files::isRegularFile).sorted().limit(MOST + 1L).toList();
        } catch (IOException | java.io.UncheckedIOException e) {
            complaints.add(at, "this folder could not be read", "");
            return;
        }
        if (files.size() > MOST) {
            complaints.add(at, "more than %d sheets".formatted(MOST), "Divide the folder.");
            return;
        }
        Map<String, Place> here = new LinkedHashMap<>();
        for (Path f : files) sheet(f, here);
    }

    private void sheet(Path f, Map<String, Place> here) {
        Read<Node> read = Text.of(f, f.toString()).then(text -> Tree.of(f.toString(), text));
        Optional<Node> node = complaints.take(read);
        if (node.isEmpty()) return;
        Optional<Id> id = id(node.get(), complaints);
        if (id.isEmpty()) return;
        Place before = here.putIfAbsent(id.get().key(), node.get().at());
        if (before == null) {
            trees.put(id.get().key(), (Node.Mapping) node.get());
        } else {
            complaints.add(node.get().at(), "the %s \"%s\" is described twice".formatted(id.get().kind(), id.get().name()), "Also in " + before.file() + ": keep one of them.");
        }
    }

    /** What a tree says it is; a transport file among the sheets is left alone. */
    static Optional<Id> id(Node node, Complaints complaints) {
        if (node instanceof Node.Mapping m) {
            if (m.get("transport").isPresent() || m.get("legs").isPresent()) return Optional.empty();
            for (SheetKind<?> k : Kinds.ALL) {
                Optional<Node> name = m.get(k.word());
                if (name.isPresent() && m.entries().get(0).key().text().equals(k.word())) {
                    if (name.get() instanceof Node.Scalar s && !s.text().isBlank()) return Optional.of(new Id(k.word(), s.text().strip()));
                    complaints.add(name.get().at(), "this sheet has no name", "Its first line reads \"%s: NAME\".".formatted(k.word()));
                    return Optional.empty();
                }
            }
            String first = m.entries().isEmpty() ? "" : m.entries().get(0).key().text();
            complaints.add(m.at(), "%s is no kind of sheet".formatted(Complaints.echo(first)), "The first line of a sheet reads \"KIND: NAME\"; kinds are " + String.join(", ", Kinds.words()) + ".",
                    () -> Nearest.of(first, Kinds.words()));
        } else {
            complaints.add(node.at(), "a sheet is a mapping, this is " + node.words(), "Its first line reads \"KIND: NAME\".");
        }
        return Optional.empty();
    }
}
