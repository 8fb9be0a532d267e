package leeway.files.keys;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;

/** Reads a tree by a table: every key, every value, all complaints in one run. */
public final class TableReader {
    private final Complaints complaints;
    private final Optional<Table> root;
    private final Map<String, String> sourceOfFile;
    private boolean sourced;

    public TableReader(Complaints complaints, Table root) { this(complaints, root, Map.of()); }

    /** @param sourceOfFile what a sheet says of all its values, by file: a sheet may continue another one */
    public TableReader(Complaints complaints, Table root, Map<String, String> sourceOfFile) {
        this.complaints = complaints;
        this.root = Optional.of(root);
        this.sourceOfFile = sourceOfFile;
    }

    public Complaints complaints() { return complaints; }

    /** The section, with what passed; what did not is in the complaints. */
    public Section read(Node.Mapping node, Table table) {
        boolean outer = sourced;
        sourced |= table.sourced();
        Map<String, Value> values = new LinkedHashMap<>();
        Set<String> meant = new HashSet<>();
        Optional<Node.Entry> before = Optional.empty();
        for (Node.Entry e : node.entries()) {
            Optional<Key> key = table.key(e.key().text());
            if (key.isEmpty()) {
                if (!comma(before, e)) unknown(e.key(), table);
                if (complaints.count() < Complaints.KEPT) meant.addAll(nearest(e.key().text(), table));
            } else {
                value(key.get(), e).ifPresent(v -> values.put(key.get().name(), v));
            }
            before = Optional.of(e);
        }
        for (Key k : table.keys()) {
            if (k.required() && node.entry(k.name()).isEmpty() && !meant.contains(k.name())) {
                complaints.add(node.at(), "%s has no \"%s\"".formatted(table.what(), k.name()), "It is %s.".formatted(k.form().words()));
            }
        }
        sourced = outer;
        return new Section(table, node, values, meant);
    }

    private Optional<Value> value(Key key, Node.Entry e) {
        Node node = e.value();
        Optional<String> source = Optional.empty();
        if (sourced) {
            source = Optional.ofNullable(sourceOfFile.get(node.at().file()));
            if (node instanceof Node.Mapping m && m.get("is").isPresent() && !(key.form() instanceof Forms.InSection)) {
                Optional<Node> own = m.get("source");
                if (own.isPresent()) {
                    source = new Forms.Words(400, "").read(own.get(), "source", this).map(String.class::cast);
                    if (source.isEmpty()) return Optional.empty();
                }
                if (!(key.form() instanceof BandForm)) {
                    boolean odd = false;
                    for (Node.Entry inner : m.entries()) {
                        if (inner.key().text().equals("is") || inner.key().text().equals("source")) continue;
                        odd = true;
                        complaints.add(inner.key().at(), "%s has only \"is\" and \"source\", not %s".formatted(key.name(), Complaints.echo(inner.key().text())), "",
                                () -> Nearest.of(inner.key().text(), List.of("is", "source")));
                    }
                    if (odd) return Optional.empty();
                    node = m.get("is").orElseThrow();
                }
            }
        }
        Node inner = node;
        Optional<String> from = source;
        return key.form().read(node, key.name(), this).map(v -> new Value(key, e.key(), inner, v, from));
    }

    /** Inside braces a comma ends a value: "2,5 L" became the value "2" and a key "5 L". */
    private boolean comma(Optional<Node.Entry> before, Node.Entry e) {
        if (!e.key().text().matches("\\d+(\\s.*)?") || !(e.value() instanceof Node.Scalar none) || !none.blank()) return false;
        if (before.isEmpty() || !(before.get().value() instanceof Node.Scalar number) || !number.text().matches("[+-]?\\d+")) return false;
        String point = number.text() + "." + e.key().text();
        boolean thousands = e.key().text().matches("\\d{3}(\\s.*)?");
        complaints.add(e.key().at(), "a comma inside a number ends it here",
                thousands ? "Write \"%s%s\"; with a point it would be \"%s\".".formatted(number.text(), e.key().text(), point) : "Write a point, \"%s\".".formatted(point));
        return true;
    }

    private void unknown(Node.Scalar key, Table table) {
        String name = key.text();
        if (complaints.count() >= Complaints.KEPT) {      // counted, not shown: nothing is looked up for it
            complaints.add(key.at(), "", "");
            return;
        }
        for (Table.Wrong w : table.wrong()) {
            if (!w.name().equals(name)) continue;
            complaints.add(key.at(), w.what(), w.right(), w::nearest);
            return;
        }
        String what = "%s has no key %s".formatted(table.what(), Complaints.echo(name));
        Optional<String> elsewhere = root.filter(r -> r != table).flatMap(r -> r.key(name).isPresent() ? Optional.of("at the top of the file") : Optional.<String>empty())
                .or(() -> table.elsewhere(name).or(() -> root.flatMap(r -> r.elsewhere(name))).map(p -> "in \"" + p + "\""));
        if (elsewhere.isPresent()) {
            complaints.add(key.at(), what, "It belongs %s.".formatted(elsewhere.get()));
        } else {
            complaints.add(key.at(), what, "Its keys are " + shortList(table.names()) + ".", () -> nearest(name, table));
        }
    }

    static List<String> nearest(String name, Table table) {
        for (Key k : table.keys()) if (k.also().stream().anyMatch(a -> a.equalsIgnoreCase(name))) return List.of(k.name());
        List<String> all = new ArrayList<>(table.names());
        return Nearest.of(name, all);
    }

    static String shortList(List<String> words) {
        return words.size() <= 14 ? String.join(", ", words) : String.join(", ", words.subList(0, 14)) + " and " + (words.size() - 14) + " more";
    }
}
