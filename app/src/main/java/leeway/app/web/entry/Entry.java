package leeway.app.web.entry;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.quantity.Unit;
import leeway.core.quantity.Units;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Node;
import leeway.files.yaml.Tree;

/**
 * The form of one text.
 *
 * @param stores   names of the stores, for the fields that name one
 * @param groups   in the order of the page
 * @param loose    complaints that belong to no field
 * @param readable false where the text is no YAML: then there are no fields, only the text
 */
public record Entry(List<String> stores, List<Group> groups, List<Complaint> loose, boolean readable) {
    /** Shown at once; the rest on demand, unless it is needed. A star stands for a position. */
    private static final Set<String> FIRST = Set.of("patient/sex", "patient/height", "patient/weight", "patient/age", "patient/illness", "patient/airway", "ventilator", "circuit",
            "filter", "strategy", "settings/mode", "settings/tidal volume", "settings/rate", "settings/peep", "settings/fio2", "oxygen/*/name", "oxygen/*/cylinder",
            "oxygen/*/pressure", "oxygen/*/count", "power/*/name", "power/*/battery", "power/*/charge", "power/*/mains", "legs/*/leg", "legs/*/takes", "legs/*/at worst",
            "legs/*/oxygen", "legs/*/power", "legs/*/cabin altitude", "events/*/at", "events/*/change over", "events/*/for", "what if/*/at", "what if/*/fault", "what if/*/for");
    /** Top keys without a section of their own, by the group that shows them. */
    private static final List<String> KIT = List.of("ventilator", "circuit", "filter", "monitor", "strategy", "policy", "kit", "device");
    /** Sections that are only shown where the text has them: seldom used, and long. */
    private static final Set<String> ONLY_WHERE_WRITTEN = Set.of("alarms", "delays", "policy");
    private static final Pattern POSITION = Pattern.compile("/\\d+/");
    private static final Pattern MISSING = Pattern.compile("has no \"([^\"]+)\"");

    public Entry {
        stores = List.copyOf(stores);
        groups = List.copyOf(groups);
        loose = List.copyOf(loose);
    }

    /** @param names the names of sheets of a kind */
    public static Entry of(Table table, String text, List<Complaint> complaints, Function<String, List<String>> names) {
        Optional<Node> root = Tree.of("text", text).good();
        if (root.isEmpty() || !(root.get() instanceof Node.Mapping top)) return new Entry(List.of(), List.of(), complaints, false);
        List<String> stores = Stream.of("oxygen", "power").flatMap(list -> stores(top, list).stream()).distinct().toList();
        Builder b = new Builder(kind -> kind.equals("store") ? stores : names.apply(kind), Complained.of(top, complaints));
        List<Group> groups = b.groups(table, top);
        return new Entry(stores, groups, b.complained.left(), true);
    }

    public Stream<Field> all() { return groups.stream().flatMap(Group::all); }

    /** Complaints by the path of the value that they are about. */
    private record Complained(Map<String, List<Complaint>> byPath, List<Complaint> elsewhere) {
        static Complained of(Node root, List<Complaint> complaints) {
            Map<String, String> places = new HashMap<>();
            places(root, "", places);
            Map<String, List<Complaint>> byPath = new HashMap<>();
            List<Complaint> left = new ArrayList<>();
            for (Complaint c : complaints) {
                String path = places.get(c.at().line() + ":" + c.at().column());
                Matcher missing = MISSING.matcher(c.what());
                if (path == null && c.at().line() == 1 && c.at().column() == 1) path = "";
                if (path != null && missing.find()) path = path.isEmpty() ? missing.group(1) : path + "/" + missing.group(1);
                if (path == null) left.add(c); else byPath.computeIfAbsent(path, p -> new ArrayList<>()).add(c);
            }
            return new Complained(byPath, left);
        }

        private static void places(Node node, String path, Map<String, String> out) {
            out.putIfAbsent(node.at().line() + ":" + node.at().column(), path);
            String head = path.isEmpty() ? "" : path + "/";
            if (node instanceof Node.Mapping m) {
                for (Node.Entry e : m.entries()) {
                    places(e.value(), head + e.key().text(), out);
                    out.putIfAbsent(e.key().at().line() + ":" + e.key().at().column(), head + e.key().text());
                }
            }
            if (node instanceof Node.Items l) for (int i = 0; i < l.items().size(); i++) places(l.items().get(i), head + i, out);
        }

        /** What is wrong there; each complaint is given out once. */
        List<String> take(String path) { return taken(path).stream().map(Complaint::message).toList(); }

        /** Of a value that is not there yet, only what it would be. */
        List<String> takeBlank(String path) { return taken(path).stream().map(c -> c.right().isEmpty() ? c.message() : c.right()).toList(); }

        private List<Complaint> taken(String path) {
            List<Complaint> here = byPath.remove(path);
            return here == null ? List.of() : here;
        }

        List<Complaint> left() {
            List<Complaint> all = new ArrayList<>(elsewhere);
            byPath.values().forEach(all::addAll);
            return all;
        }
    }

    private record Builder(Function<String, List<String>> names, Complained complained) {
        List<Group> groups(Table table, Node.Mapping top) {
            List<Field> title = new ArrayList<>();
            List<Field> kit = new ArrayList<>();
            List<Field> kitMore = new ArrayList<>();
            List<Group> sections = new ArrayList<>();
            for (Key key : table.keys()) {
                Form form = key.form();
                boolean section = form.inner().isPresent() && form.names().isEmpty();
                if (section || form.items().flatMap(Form::inner).isPresent() || form.names().isPresent() && top.get(key.name()).filter(n -> n instanceof Node.Mapping).isPresent()) {
                    if (ONLY_WHERE_WRITTEN.contains(key.name()) && top.get(key.name()).isEmpty()) continue;
                    sections.add(group(key, top.get(key.name()), key.name()));
                } else if (KIT.contains(key.name())) {
                    (FIRST.contains(key.name()) || key.required() ? kit : kitMore).add(field(key, top.get(key.name()), key.name()));
                } else {
                    title.add(field(key, top.get(key.name()), key.name()));
                }
            }
            List<Group> out = new ArrayList<>();
            out.add(new Group("", "journey", title, List.of(), List.of(), List.of(), false, List.of()));
            sections.stream().filter(g -> g.name().equals("patient")).forEach(out::add);
            out.add(new Group("", "kit", kit, kitMore, List.of(), List.of(), false, List.of()));
            sections.stream().filter(g -> !g.name().equals("patient")).forEach(out::add);
            return out;
        }

        private Group group(Key key, Optional<Node> node, String path) {
            Optional<Table> items = key.form().items().flatMap(Form::inner);
            if (items.isEmpty()) return section(key.name(), key.form().inner().orElseThrow(), node, path);
            List<Group> all = new ArrayList<>();
            if (node.isPresent() && node.get() instanceof Node.Items list) {
                for (int i = 0; i < list.items().size(); i++) all.add(section(key.name(), items.get(), Optional.of(list.items().get(i)), path + "/" + i));
            } else if (node.isPresent() && key.form().oneOrMany()) {
                all.add(section(key.name(), items.get(), node, path));
            }
            return new Group(path, key.name(), List.of(), List.of(), all, List.of(), true, complained.take(path));
        }

        private Group section(String name, Table table, Optional<Node> node, String path) {
            Optional<Node.Mapping> mapping = node.filter(n -> n instanceof Node.Mapping).map(n -> (Node.Mapping) n);
            List<Field> first = new ArrayList<>();
            List<Field> more = new ArrayList<>();
            List<Group> inner = new ArrayList<>();
            for (Key key : table.keys()) {
                String at = path + "/" + key.name();
                Optional<Node> value = mapping.flatMap(m -> m.get(key.name()));
                boolean nested = key.form().inner().isPresent() && (key.form().names().isEmpty() || value.filter(n -> n instanceof Node.Mapping).isPresent());
                if (nested || key.form().items().flatMap(Form::inner).isPresent()) {
                    if (value.isPresent() || !ONLY_WHERE_WRITTEN.contains(name)) inner.add(group(key, value, at));
                } else {
                    (key.required() || FIRST.contains(POSITION.matcher(at).replaceAll("/*/")) ? first : more).add(field(key, value, at));
                }
            }
            return new Group(path, name, first, more, List.of(), inner, false, complained.take(path));
        }

        private Field field(Key key, Optional<Node> node, String path) {
            Form form = key.form();
            String text = node.map(Builder::text).orElse("");
            List<String> wrong = text.isEmpty() ? complained.takeBlank(path) : complained.take(path);
            String hint = key.otherwise().orElse("");
            Optional<Kind> kind = form.quantity().filter(k -> k != Kind.NUMBER);
            if (kind.isPresent()) {
                Optional<Quantity.Parts> parts = Quantity.split(text);
                List<String> units = kind.get().accepted().stream().map(Unit::symbol).toList();
                Optional<Unit> unit = parts.flatMap(p -> Units.find(p.unit())).filter(kind.get().accepted()::contains);
                if (text.isEmpty()) return new Field(path, key.name(), Field.Look.QUANTITY, "", units.get(0), units, List.of(), hint, key.meaning(), wrong, key.required());
                if (unit.isEmpty()) return new Field(path, key.name(), Field.Look.QUANTITY, text, "", units, List.of(), hint, key.meaning(), wrong, key.required());
                String number = text.substring(0, text.length() - parts.get().unit().length()).strip();
                List<String> offered = units.contains(parts.get().unit()) ? units : Stream.concat(Stream.of(parts.get().unit()), units.stream()).toList();
                return new Field(path, key.name(), Field.Look.QUANTITY, number, parts.get().unit(), offered, List.of(), hint, key.meaning(), wrong, key.required());
            }
            Optional<String> named = form.names().or(() -> form.items().flatMap(Form::names));
            List<String> choices = named.map(names).orElse(form.choices());
            Field.Look look = form.items().isPresent() ? Field.Look.NAMES : choices.isEmpty() ? Field.Look.TEXT : Field.Look.CHOICE;
            return new Field(path, key.name(), look, text, "", List.of(), choices, hint, key.meaning(), wrong, key.required());
        }

        private static String text(Node node) {
            if (node instanceof Node.Scalar s) return s.blank() ? "" : s.text().strip();
            if (node instanceof Node.Items l) return String.join(", ", l.items().stream().map(Builder::text).toList());
            return "";
        }
    }

    /** Names of the stores under a key of the text. */
    static List<String> stores(String text, String list) { return Tree.of("text", text).good().map(root -> stores(root, list)).orElse(List.of()); }

    private static List<String> stores(Node root, String list) {
        Optional<Node> node = Edit.at(root, list);
        if (node.isEmpty() || !(node.get() instanceof Node.Items items)) return List.of();
        return items.items().stream().filter(n -> n instanceof Node.Mapping).flatMap(n -> ((Node.Mapping) n).get("name").stream())
                .filter(n -> n instanceof Node.Scalar).map(n -> ((Node.Scalar) n).text()).distinct().toList();
    }
}
