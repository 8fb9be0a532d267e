package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leeway.files.yaml.Node;

/** One tree continued by another: mappings are laid over each other key by key, everything else is replaced. */
final class Merge {
    private Merge() { }

    static Node.Mapping over(Node.Mapping base, Node.Mapping own) {
        List<Node.Entry> entries = new ArrayList<>();
        for (Node.Entry e : own.entries()) entries.add(new Node.Entry(e.key(), base.get(e.key().text()).map(b -> both(b, e.value())).orElse(e.value())));
        for (Node.Entry e : base.entries()) if (own.entry(e.key().text()).isEmpty()) entries.add(e);
        return new Node.Mapping(entries, own.flow(), own.span());
    }

    static Node.Mapping without(Node.Mapping m, String key) {
        return new Node.Mapping(m.entries().stream().filter(e -> !e.key().text().equals(key)).toList(), m.flow(), m.span());
    }

    private static Node both(Node base, Node own) {
        Optional<Node.Mapping> b = deep(base);
        Optional<Node.Mapping> o = deep(own);
        return b.isPresent() && o.isPresent() ? over(b.get(), o.get()) : own;
    }

    /** A value with its source is one value, not a mapping to be mixed. */
    private static Optional<Node.Mapping> deep(Node n) {
        return n instanceof Node.Mapping m && m.get("is").isEmpty() ? Optional.of(m) : Optional.empty();
    }
}
