package leeway.files.keys;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The keys that one mapping may have.
 *
 * @param what     whose keys they are, "patient", for sentences
 * @param sourced  whether its values may name their source: {@code {is: 54 mL/cmH2O, source: "…"}}
 * @param wrong    keys that are plausible and wrong, with what to say about them
 */
public record Table(String what, boolean sourced, List<Key> keys, List<Wrong> wrong) {
    public Table {
        keys = List.copyOf(keys);
        wrong = List.copyOf(wrong);
        if (keys.stream().map(Key::name).distinct().count() != keys.size()) throw new IllegalArgumentException("table %s has a key twice".formatted(what));
    }

    /** A plausible key that is wrong: what is wrong with it, what would be right. */
    public record Wrong(String name, String what, String right) { }

    public static Table of(String what, Key... keys) { return new Table(what, false, List.of(keys), List.of()); }

    /** A table whose values may name their source. */
    public static Table sourced(String what, Key... keys) { return new Table(what, true, List.of(keys), List.of()); }

    public Table wrong(String name, String what, String right) {
        List<Wrong> more = new ArrayList<>(wrong);
        more.add(new Wrong(name, what, right));
        return new Table(this.what, sourced, keys, more);
    }

    public Table with(Key... more) {
        List<Key> all = new ArrayList<>(keys);
        all.addAll(List.of(more));
        return new Table(what, sourced, all, wrong);
    }

    /** The same keys, none of them required, at any depth. */
    public Table loosened() {
        List<Key> loose = keys.stream().map(k -> new Key(k.name(), k.form().loosened(), false, k.otherwise(), k.meaning(), k.also(), k.later())).toList();
        return new Table(what, sourced, loose, wrong);
    }

    public Optional<Key> key(String name) { return keys.stream().filter(k -> k.name().equals(name)).findFirst(); }

    public List<String> names() { return keys.stream().map(Key::name).toList(); }

    /** Where else in this table's sections a key of that name stands, as a path in words: {@code settings}. */
    Optional<String> elsewhere(String name) {
        for (Key k : keys) {
            Optional<Table> inner = k.form().inner();
            if (inner.isEmpty()) continue;
            if (inner.get().key(name).isPresent()) return Optional.of(k.name());
            Optional<String> deeper = inner.get().elsewhere(name);
            if (deeper.isPresent()) return Optional.of(k.name() + "\" in \"" + deeper.get());
        }
        return Optional.empty();
    }
}
