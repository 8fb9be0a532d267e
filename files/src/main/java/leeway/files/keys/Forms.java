package leeway.files.keys;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Nearest;
import leeway.files.yaml.Node;

/** The forms that are not quantities. */
public final class Forms {
    private Forms() { }

    /** The text of a single value, or empty after a complaint. */
    private static Optional<String> single(Node node, String name, Form form, TableReader reader) {
        if (node instanceof Node.Scalar s && (s.quoted() || !s.blank()) && !s.text().isBlank()) return Optional.of(s.text().strip());
        reader.complaints().add(node.at(), "\"%s\" has %s".formatted(name, node.words()), "It is %s.".formatted(form.words()));
        return Optional.empty();
    }

    /** Yes or no; its value is a {@code Boolean}. */
    record YesNo() implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Optional<String> text = single(node, name, this, reader);
            if (text.isEmpty()) return Optional.empty();
            switch (text.get()) {
                case "yes", "true" -> { return Optional.of(true); }
                case "no", "false" -> { return Optional.of(false); }
                default -> {
                    reader.complaints().add(node.at(), "%s is neither yes nor no".formatted(Complaints.echo(text.get())), "Write \"%s: yes\" or \"%s: no\".".formatted(name, name));
                    return Optional.empty();
                }
            }
        }

        @Override public String words() { return "yes or no"; }

        @Override public String example() { return "yes"; }

        @Override public Map<String, Object> schema() { return Map.of("enum", List.of("yes", "no", true, false)); }

        @Override public List<String> choices() { return List.of("yes", "no"); }
    }

    /** A whole number; its value is an {@code Integer}. */
    record Whole(int least, int most, String example) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Optional<String> text = single(node, name, this, reader);
            if (text.isEmpty()) return Optional.empty();
            if (text.get().matches("[+-]?\\d{1,9}")) {
                int n = Integer.parseInt(text.get());
                if (n >= least && n <= most) return Optional.of(n);
                reader.complaints().add(node.at(), "%s is impossible: %s lies between %d and %d".formatted(Complaints.echo(text.get()), name, least, most), "");
            } else {
                reader.complaints().add(node.at(), "%s is not a whole number".formatted(Complaints.echo(text.get())), "\"%s\" lies between %d and %d.".formatted(name, least, most));
            }
            return Optional.empty();
        }

        @Override public String words() { return "a whole number from %d to %d".formatted(least, most); }

        @Override public Map<String, Object> schema() {
            Map<String, Object> out = new LinkedHashMap<>();
            out.put("type", "integer");
            out.put("minimum", least);
            out.put("maximum", most);
            return out;
        }
    }

    /** One of a closed list; its value is the {@code String} as in the list. */
    record Choice(String what, List<String> of, Map<String, List<String>> also) implements Form {
        Choice { of = List.copyOf(of); }

        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Optional<String> text = single(node, name, this, reader);
            if (text.isEmpty()) return Optional.empty();
            if (of.contains(text.get())) return Optional.of(text.get());
            reader.complaints().add(node.at(), "there is no %s %s".formatted(what, Complaints.echo(text.get())), "It is %s.".formatted(words()), () -> nearest(text.get()));
            return Optional.empty();
        }

        private List<String> nearest(String text) {
            List<String> near = Nearest.of(text, of);
            return near.isEmpty() ? Nearest.of(text, also.keySet()).stream().findFirst().map(also::get).orElse(List.of()) : near;
        }

        @Override public String words() { return of.size() == 1 ? of.get(0) : TableReader.shortList(of.subList(0, of.size() - 1)) + " or " + of.get(of.size() - 1); }

        @Override public String example() { return of.get(0); }

        @Override public Map<String, Object> schema() { return Map.of("enum", of); }

        @Override public List<String> choices() { return of; }
    }

    /** Any text on one line; its value is a {@code String}. */
    record Words(int most, String example) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Optional<String> text = single(node, name, this, reader);
            if (text.isEmpty()) return Optional.empty();
            String line = text.get().replaceAll("\\s*\\R\\s*", " ");
            if (line.codePointCount(0, line.length()) <= most) return Optional.of(line);
            reader.complaints().add(node.at(), "\"%s\" is longer than %d characters: %s".formatted(name, most, Complaints.echo(line)), "");
            return Optional.empty();
        }

        @Override public String words() { return "a text of at most %d characters".formatted(most); }

        @Override public Map<String, Object> schema() {
            Map<String, Object> out = new LinkedHashMap<>();
            out.put("type", List.of("string", "number", "boolean")); // an editor takes a text such as 0.5 for a number
            out.put("minLength", 1);
            out.put("maxLength", most);
            return out;
        }
    }

    /** The name of a sheet or a store; its value is a {@code String}. */
    record Name(String of, String example) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            return single(node, name, this, reader).isPresent() ? new Words(80, example).read(node, name, reader) : Optional.empty();
        }

        @Override public String words() { return "the name of %s %s, for example \"%s\"".formatted("aeiou".indexOf(of.charAt(0)) >= 0 ? "an" : "a", of, example); }

        @Override public Map<String, Object> schema() { return new Words(80, example).schema(); }

        @Override public Optional<String> names() { return Optional.of(of); }
    }

    /** A mapping; its value is a {@code Section}. Its table is made when it is needed: most files use few of them. */
    static final class InSection implements Form {
        private final Supplier<Table> maker;
        private Table made;

        InSection(Supplier<Table> maker) { this.maker = maker; }

        synchronized Table table() {
            if (made == null) made = maker.get();
            return made;
        }

        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            if (node instanceof Node.Mapping m) return Optional.of(reader.read(m, table()));
            reader.complaints().add(node.at(), "\"%s\" has %s where a mapping belongs".formatted(name, node.words()), "Write %s.".formatted(example()));
            return Optional.empty();
        }

        @Override public String words() { return "a mapping such as " + example(); }

        @Override public String example() {
            List<Key> all = table().keys();
            List<Key> shown = all.stream().filter(Key::required).toList();
            if (shown.isEmpty()) shown = all.subList(0, Math.min(1, all.size()));
            List<String> pairs = shown.stream().limit(3).map(k -> k.name() + ": " + k.form().example()).toList();
            return "{" + String.join(", ", pairs) + "}";
        }

        @Override public Map<String, Object> schema() { return Schemas.section(table(), false); }

        @Override public Map<String, Object> schema(boolean sourced) { return Schemas.section(table(), sourced); }

        @Override public Form loosened() { return new InSection(() -> table().loosened()); }

        @Override public Optional<Table> inner() { return Optional.of(table()); }
    }

    /** A list; its value is a {@code List}. */
    record Several(Form of, int most, boolean orOne) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Complaints c = reader.complaints();
            if (!(node instanceof Node.Items list)) {
                if (orOne) return of.read(node, name, reader).map(List::of);
                c.add(node.at(), "\"%s\" has %s where a list belongs".formatted(name, node.words()), "Write each on a line of its own, beginning with \"- \".");
                return Optional.empty();
            }
            if (list.items().isEmpty()) {
                c.add(list.at(), "\"%s\" is an empty list".formatted(name), "Each item is %s.".formatted(of.words()));
                return Optional.empty();
            }
            boolean tooMany = list.items().size() > most;
            if (tooMany) c.add(list.items().get(most).at(), "\"%s\" has %d items; the most is %d".formatted(name, list.items().size(), most), "This is the first one too many.");
            List<Object> out = new ArrayList<>();
            boolean all = !tooMany;
            for (Node n : list.items().subList(0, Math.min(most, list.items().size()))) {
                Optional<Object> v = of.read(n, name, reader);
                v.ifPresent(out::add);
                all &= v.isPresent();
            }
            return all || of instanceof InSection ? Optional.of(List.copyOf(out)) : Optional.empty();
        }

        @Override public String words() { return orOne ? of.words() + ", or a list" : "a list, each item " + of.words(); }

        @Override public Optional<Form> items() { return Optional.of(of); }

        @Override public boolean oneOrMany() { return orOne; }

        @Override public String example() { return orOne ? of.example() : "[" + of.example() + "]"; }

        @Override public Map<String, Object> schema() { return schema(false); }

        @Override public Map<String, Object> schema(boolean sourced) {
            Map<String, Object> list = new LinkedHashMap<>();
            list.put("type", "array");
            list.put("items", of.schema(sourced));
            list.put("minItems", 1);
            list.put("maxItems", most);
            return orOne ? Map.of("anyOf", List.of(of.schema(), list)) : list;
        }

        @Override public Optional<Table> inner() { return of.inner(); }
    }

    /** A name or a mapping; its value is a {@code String} or a {@code Section}. */
    record NameOrSection(Name ofName, Table table) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            return node instanceof Node.Mapping m ? Optional.of(reader.read(m, table)) : ofName.read(node, name, reader);
        }

        @Override public String words() { return ofName.words() + ", or a mapping that begins with \"like: %s\"".formatted(ofName.example()); }

        @Override public Optional<String> names() { return ofName.names(); }

        @Override public String example() { return ofName.example(); }

        @Override public Map<String, Object> schema() { return Map.of("anyOf", List.of(ofName.schema(), Schemas.section(table, false))); }

        @Override public Optional<Table> inner() { return Optional.of(table); }
    }

    /** What a grammar of its own made of a text: a value, or what is wrong and what would be right. */
    public record Parsed(Optional<Object> value, String wrong, String right, List<String> nearest) {
        public static Parsed good(Object value) { return new Parsed(Optional.of(value), "", "", List.of()); }

        public static Parsed bad(String wrong, String right, String... nearest) { return new Parsed(Optional.empty(), wrong, right, List.of(nearest)); }
    }

    /** A text of its own grammar. */
    record Written(String words, String example, String pattern, Function<String, Parsed> parse) implements Form {
        @Override public Optional<Object> read(Node node, String name, TableReader reader) {
            Optional<String> text = single(node, name, this, reader);
            if (text.isEmpty()) return Optional.empty();
            Parsed p = parse.apply(text.get());
            if (p.value().isEmpty()) reader.complaints().add(node.at(), p.wrong(), p.right(), p::nearest);
            return p.value();
        }

        @Override public Map<String, Object> schema() {
            Map<String, Object> out = new LinkedHashMap<>();
            out.put("type", "0".matches(pattern) ? List.of("string", "number") : "string");
            out.put("pattern", pattern);
            out.put("examples", List.of(example));
            return out;
        }
    }
}
