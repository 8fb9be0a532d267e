package leeway.files.sheet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.keys.TableReader;
import leeway.files.keys.Value;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import leeway.files.yaml.Tree;

/**
 * All sheets: those that come along, and a user's, which win where they have the same name. A sheet is read when it is
 * asked for. May be used by many threads.
 */
public final class Catalogue {
    private final OwnSheets own;
    private final Map<String, Read<Sheet<?>>> read = new ConcurrentHashMap<>();
    private final Map<String, List<String>> names = new ConcurrentHashMap<>();

    private Catalogue(OwnSheets own) { this.own = own; }

    /** A sheet as read: the record, and what stood in the file. */
    public record Sheet<T>(T value, Section section) { }

    /**
     * A value of a sheet as the catalogue shows it.
     *
     * @param key    path of keys, in words
     * @param value  as written
     * @param source where it comes from
     */
    public record Row(String key, String value, String meaning, String source) { }

    /** With a user's folders; what is wrong in them is in {@link #problems}. */
    public static Catalogue of(List<Path> folders) { return new Catalogue(new OwnSheets(folders)); }

    /** Only what comes along. */
    public static Catalogue builtIn() { return of(List.of()); }

    /** What is wrong with the user's folders as such: unreadable files, a sheet described twice. */
    public List<Complaint> problems() { return own.complaints().all(); }

    /** Names of all sheets of a kind, without reading them. */
    public List<String> names(String kind) { return names.computeIfAbsent(kind, this::listed); }

    private List<String> listed(String kind) {
        Set<String> all = new TreeSet<>(String.CASE_INSENSITIVE_ORDER.thenComparing(String::compareTo));
        all.addAll(BuiltIn.names(kind));
        all.addAll(own.names(kind));
        return List.copyOf(all);
    }

    public boolean has(String kind, String name) { return own.tree(kind, name).isPresent() || BuiltIn.has(kind, name); }

    /** True for a sheet of the user's own. */
    public boolean isOwn(String kind, String name) { return own.tree(kind, name).isPresent(); }

    /** The record of a sheet; a name that is not there is a complaint at the place where it was asked for. */
    public <T> Optional<T> find(SheetKind<T> kind, String name, Place askedAt, Complaints complaints) {
        return sheet(kind, name, askedAt, complaints).map(Sheet::value);
    }

    /** The record of a sheet of which we know that it is there, or that somebody asked for by name alone. */
    public <T> Read<T> read(SheetKind<T> kind, String name) {
        Complaints c = new Complaints();
        Optional<T> found = find(kind, name, Place.start("catalogue"), c);
        return c.orElse(found::orElseThrow);
    }

    /** As {@link #find}, with what stood in the file. */
    public <T> Optional<Sheet<T>> sheet(SheetKind<T> kind, String name, Place askedAt, Complaints complaints) {
        if (!has(kind.word(), name)) {
            missing(kind.word(), name, askedAt, complaints);
            return Optional.empty();
        }
        String id = new OwnSheets.Id(kind.word(), name).key();
        Read<Sheet<?>> sheet = read.get(id);
        if (sheet == null) {
            sheet = make(kind, name);
            read.put(id, sheet);
        }
        @SuppressWarnings("unchecked") // under this id lie only sheets of this kind
        Read<Sheet<T>> typed = (Read<Sheet<T>>) (Read<?>) sheet;
        return complaints.take(typed);
    }

    /** Complains that a name is not there, with the nearest. */
    public void missing(String kind, String name, Place at, Complaints complaints) {
        complaints.add(at, "there is no %s %s".formatted(kind, Complaints.echo(name)), "\"leeway catalogue %s\" lists what there is.".formatted(kind), () -> Nearest.of(name, names(kind)));
    }

    /** A tree that is not in the catalogue, read as a sheet of its kind: for {@code leeway check}. */
    public <T> Read<Sheet<T>> read(SheetKind<T> kind, Node.Mapping tree) { return make(kind, tree, true); }

    /**
     * A sheet continued inline in another file: {@code policy: {like: default, reserve: 30 min}}.
     *
     * @param body as read by {@link #inlineTable}, without a complaint
     */
    public <T> Optional<T> inline(SheetKind<T> kind, Node.Mapping body, String like, Place likeAt, Complaints complaints) {
        if (!has(kind.word(), like)) {
            missing(kind.word(), like, likeAt, complaints);
            return Optional.empty();
        }
        Optional<Node.Mapping> base = complaints.take(tree(kind, like));
        if (base.isEmpty()) return Optional.empty();
        Complaints c = new Complaints();
        Map<String, String> sources = new HashMap<>();
        sources.put(body.at().file(), "the file itself");
        Optional<Node.Mapping> whole = whole(kind, base.get(), new LinkedHashSet<>(), sources, c).map(b -> Merge.over(b, Merge.without(body, SheetHead.LIKE)));
        if (whole.isPresent()) {
            Table table = SheetHead.table(kind);
            Section section = new TableReader(c, table, sources).read(whole.get(), table);
            if (!c.any()) {
                Optional<T> value = record(kind, like, section, c);
                if (!c.any()) return value;
            }
        }
        complaints.addAll(c.all());
        return Optional.empty();
    }

    /** The keys of a sheet that is continued inline: {@code like}, and any of its own. */
    public static Table inlineTable(SheetKind<?> kind, String example) {
        Table loose = kind.table().loosened();
        List<Key> keys = new ArrayList<>();
        keys.add(Key.must(SheetHead.LIKE, Form.name(kind.word(), example), "The " + kind.word() + " that is continued: what is not written here is as there."));
        keys.addAll(loose.keys());
        return new Table("the " + kind.word(), true, keys, loose.wrong());
    }

    private Read<Node.Mapping> tree(SheetKind<?> kind, String name) {
        return own.tree(kind.word(), name).<Read<Node.Mapping>>map(Read.Good::new).orElseGet(() -> BuiltIn.text(kind.word(), name).orElseThrow()
                .then(text -> Tree.of(BuiltIn.fileName(kind.word(), name), text)).then(node -> {
                    if (node instanceof Node.Mapping m) return new Read.Good<>(m);
                    Complaints c = new Complaints();
                    OwnSheets.id(node, c);
                    return new Read.Bad<>(c.all());
                }));
    }

    private Read<Sheet<?>> make(SheetKind<?> kind, String name) {
        Read<Node.Mapping> tree = tree(kind, name);
        if (tree instanceof Read.Bad<Node.Mapping> bad) return new Read.Bad<>(bad.complaints());
        @SuppressWarnings({"unchecked", "rawtypes"})
        Read<Sheet<?>> made = (Read) make(kind, tree.good().orElseThrow(), isOwn(kind.word(), name));
        return made;
    }

    private <T> Read<Sheet<T>> make(SheetKind<T> kind, Node.Mapping tree, boolean proved) {
        Complaints c = new Complaints();
        Map<String, String> sources = new HashMap<>();
        Optional<Node.Mapping> whole = whole(kind, tree, new LinkedHashSet<>(), sources, c);
        if (whole.isEmpty()) return new Read.Bad<>(c.all());
        Table table = SheetHead.table(kind);
        Section section = new TableReader(c, table, sources).read(whole.get(), table);
        if (c.any()) return new Read.Bad<>(c.all());
        String name = section.text(kind.word()).orElseThrow();
        Optional<T> value = record(kind, name, section, c);
        if (proved && !c.any()) {
            references(section, c);
            kind.prove(value.orElseThrow(), section, c);
        }
        return c.orElse(() -> new Sheet<>(value.orElseThrow(), section));
    }

    /** The record; what it refuses itself is a complaint about the sheet as a whole. */
    private static <T> Optional<T> record(SheetKind<T> kind, String name, Section section, Complaints c) {
        try {
            return Optional.of(kind.record(name, section, c));
        } catch (IllegalArgumentException e) {
            c.add(section.at(), "the values of this sheet do not fit together: " + e.getMessage(), "");
            return Optional.empty();
        }
    }

    /** Every sheet that another one names is there. */
    private void references(Section s, Complaints c) {
        for (Value v : s.values()) {
            boolean head = s.table().keys().get(0) == v.key(); // the sheet's own name
            Optional<String> of = head ? Optional.empty() : v.key().form().names().filter(k -> Kinds.words().contains(k));
            if (of.isPresent() && v.value() instanceof String name && !has(of.get(), name)) missing(of.get(), name, v.at(), c);
            if (v.value() instanceof Section inner) references(inner, c);
        }
    }

    /** The tree with everything that it continues below it. */
    private Optional<Node.Mapping> whole(SheetKind<?> kind, Node.Mapping tree, Set<String> chain, Map<String, String> sources, Complaints c) {
        tree.get(SheetHead.SOURCE).ifPresent(n -> {
            if (n instanceof Node.Scalar s) sources.put(n.at().file(), s.text());
        });
        String name = tree.get(kind.word()).map(n -> n instanceof Node.Scalar s ? s.text().strip() : "").orElse("");
        chain.add(name);
        Optional<Node> like = tree.get(SheetHead.LIKE);
        if (like.isEmpty()) return Optional.of(tree);
        if (!(like.get() instanceof Node.Scalar base) || base.text().isBlank()) {
            c.add(like.get().at(), "\"like\" has " + like.get().words(), "It is the name of another %s.".formatted(kind.word()));
            return Optional.empty();
        }
        String baseName = base.text().strip();
        if (chain.contains(baseName)) {
            List<String> circle = new ArrayList<>(chain);
            circle.add(baseName);
            c.add(base.at(), "this sheet refers to itself: " + shown(circle), "Name a sheet that stands on its own.");
            return Optional.empty();
        }
        if (chain.size() > 16) {
            c.add(base.at(), "more than 16 sheets continue each other", "Write the values out.");
            return Optional.empty();
        }
        if (!has(kind.word(), baseName)) {
            missing(kind.word(), baseName, base.at(), c);
            return Optional.empty();
        }
        Optional<Node.Mapping> below = c.take(tree(kind, baseName));
        if (below.isEmpty()) return Optional.empty();
        return whole(kind, below.get(), chain, sources, c).map(b -> Merge.over(b, tree));
    }

    private static String shown(List<String> circle) {
        return String.join(" is like ", circle.stream().map(n -> Complaints.echo(n)).toList());
    }

    /** Every value of a sheet with its source, in order. */
    public static List<Row> rows(Sheet<?> sheet) {
        List<Row> out = new ArrayList<>();
        rows("", sheet.section(), out);
        return out;
    }

    private static void rows(String path, Section s, List<Row> out) {
        for (Value v : s.values()) {
            String key = path.isEmpty() ? v.key().name() : path + ", " + v.key().name();
            if (v.value() instanceof Section inner) {
                rows(key, inner, out);
            } else if (v.value() instanceof List<?> list && !list.isEmpty() && list.get(0) instanceof Section) {
                for (int i = 0; i < list.size(); i++) rows(key + " " + (i + 1), (Section) list.get(i), out);
            } else {
                out.add(new Row(key, shown(v.node()), v.key().meaning(), v.source().orElse("")));
            }
        }
    }

    private static String shown(Node n) {
        if (n instanceof Node.Scalar s) return s.text();
        if (n instanceof Node.Items list) return String.join(", ", list.items().stream().map(Catalogue::shown).toList());
        List<String> parts = new ArrayList<>();
        for (Node.Entry e : ((Node.Mapping) n).entries()) {
            if (e.key().text().equals("source")) continue;
            parts.add(e.key().text().equals("is") ? shown(e.value()) : e.key().text() + " " + shown(e.value()));
        }
        return String.join(", ", parts);
    }
}
