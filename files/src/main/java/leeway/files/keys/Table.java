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

    /** A plausible key that is wrong: what is wrong with it, what would be right, the keys it may be meant to be. */
    public record Wrong(String name, String what, String right, List<String> nearest) {
        public Wrong { nearest = List.copyOf(nearest); }
    }

    public static Table of(String what, Key... keys) { return new Table(what, false, List.of(keys), List.of()); }

    /** A table whose values may name their source. */
    public static Table sourced(String what, Key... keys) { return new Table(what, true, List.of(keys), List.of()); }

    public Table wrong(String name, String what, String right) {
        List<Wrong> more = new ArrayList<>(wrong);
        more.add(new Wrong(name, what, right, List.of()));
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

    /** The section of this table that has a key of that name: its own sections first, then deeper ones; empty where several have it. */
    Optional<String> elsewhere(String name) {
        List<String> direct = keys.stream().filter(k -> inside(k).flatMap(t -> t.key(name)).isPresent()).map(Key::name).toList();
        if (direct.size() == 1) return Optional.of(direct.get(0));
        if (!direct.isEmpty()) return Optional.empty();
        List<String> deeper = new ArrayList<>();
        for (Key k : keys) inside(k).flatMap(t -> t.elsewhere(name)).ifPresent(d -> deeper.add(d));
        return deeper.stream().distinct().count() == 1 ? Optional.of(deeper.get(0)) : Optional.empty();
    }

    /** Sections that are long lists of the same, one for each alarm, are no place where a key would be looked for. */
    private static Optional<Table> inside(Key k) { return k.form().inner().filter(t -> t.keys().size() <= 24); }
}
