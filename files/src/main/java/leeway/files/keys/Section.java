package leeway.files.keys;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;

/** A mapping as read by its table: values that passed, by key. Asking for a key that the table does not have is a fault of ours. */
public final class Section {
    private final Table table;
    private final Node.Mapping node;
    private final Map<String, Value> values;
    private final Set<String> meant;

    /** @param meant keys that unknown keys were probably meant to be */
    Section(Table table, Node.Mapping node, Map<String, Value> values, Set<String> meant) {
        this.table = table;
        this.node = node;
        this.values = new LinkedHashMap<>(values);
        this.meant = Set.copyOf(meant);
    }

    public Table table() { return table; }

    public Node.Mapping node() { return node; }

    /** Every value that passed, in the order of the file. */
    public Collection<Value> values() { return values.values(); }

    public Optional<Value> value(String key) {
        if (table.key(key).isEmpty()) throw new AssertionError("table %s has no key \"%s\"".formatted(table.what(), key));
        return Optional.ofNullable(values.get(key));
    }

    /** True when it was written and passed. */
    public boolean has(String key) { return value(key).isPresent(); }

    /** True when it was written, rightly or wrongly, also misspelt: one complaint about it is enough. */
    public boolean written(String key) { return node.entry(key).isPresent() || meant.contains(key); }

    /** Place of the mapping. */
    public Place at() { return node.at(); }

    /** Place of the key's value, or of the mapping where it is absent. */
    public Place at(String key) { return node.get(key).map(Node::at).orElse(at()); }

    /** Place of the key itself, or of the mapping where it is absent. */
    public Place atKey(String key) { return node.entry(key).map(e -> e.key().at()).orElse(at()); }

    /** The value's text in the file; a list or a mapping has none. */
    public Optional<String> asWritten(String key) {
        return value(key).map(Value::node).filter(Node.Scalar.class::isInstance).map(n -> ((Node.Scalar) n).text());
    }

    /** In the unit of its kind. */
    public OptionalDouble number(String key) {
        Optional<Value> v = value(key);
        return v.isPresent() ? OptionalDouble.of((Double) v.get().value()) : OptionalDouble.empty();
    }

    public double number(String key, double otherwise) { return number(key).orElse(otherwise); }

    public OptionalInt whole(String key) {
        Optional<Value> v = value(key);
        return v.isPresent() ? OptionalInt.of((Integer) v.get().value()) : OptionalInt.empty();
    }

    public int whole(String key, int otherwise) { return whole(key).orElse(otherwise); }

    public boolean yes(String key, boolean otherwise) { return value(key).map(v -> (Boolean) v.value()).orElse(otherwise); }

    public Optional<String> text(String key) { return value(key).map(v -> (String) v.value()); }

    public String text(String key, String otherwise) { return text(key).orElse(otherwise); }

    public Optional<Section> section(String key) { return value(key).map(Value::value).filter(Section.class::isInstance).map(Section.class::cast); }

    /** A list of mappings; empty when absent. */
    public List<Section> sections(String key) { return items(key, Section.class); }

    /** A list of texts or names; empty when absent. */
    public List<String> texts(String key) { return items(key, String.class); }

    /** What a form of its own grammar made of the text. */
    public <T> Optional<T> as(String key, Class<T> type) { return value(key).map(v -> type.cast(v.value())); }

    public <T> List<T> items(String key, Class<T> type) {
        return value(key).map(v -> ((List<?>) v.value()).stream().<T>map(type::cast).toList()).orElse(List.of());
    }

    /** Place of an item of a list, or of the single value that stands for a list of one. */
    public Place atItem(String key, int index) {
        Node n = node.get(key).orElse(node);
        return n instanceof Node.Items list && index < list.items().size() ? list.items().get(index).at() : n.at();
    }
}
