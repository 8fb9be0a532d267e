package leeway.files.yaml;

import java.util.List;
import java.util.Optional;

/** A value of the tree: a scalar, a mapping or a list, with its place and the stretch of text it takes. */
public sealed interface Node {
    Span span();

    default Place at() { return span().at(); }

    /** "a text", "a list", "a mapping", for sentences. */
    String words();

    /**
     * The stretch of text of a value.
     *
     * @param start offset of its first char in the text
     * @param end   offset after its last char
     */
    record Span(Place at, int start, int end) { }

    /**
     * A single value as written, without its quotation marks.
     *
     * @param quoted whether it stood in quotation marks
     * @param block  whether it is a block of lines after {@code |} or {@code >}
     */
    record Scalar(String text, boolean quoted, boolean block, Span span) implements Node {
        /** True for {@code key:} with nothing behind it. */
        public boolean blank() { return !quoted && (text.isBlank() || text.equals("~") || text.equals("null")); }

        @Override public String words() { return blank() ? "nothing" : "a single value"; }
    }

    /** Keys and values in the order of the file; a key stands once. */
    record Mapping(List<Entry> entries, boolean flow, Span span) implements Node {
        public Mapping { entries = List.copyOf(entries); }

        public Optional<Entry> entry(String key) { return entries.stream().filter(e -> e.key().text().equals(key)).findFirst(); }

        public Optional<Node> get(String key) { return entry(key).map(Entry::value); }

        @Override public String words() { return "a mapping"; }
    }

    /** A key with its value. */
    record Entry(Scalar key, Node value) { }

    /** Items in order. */
    record Items(List<Node> items, boolean flow, Span span) implements Node {
        public Items { items = List.copyOf(items); }

        @Override public String words() { return "a list"; }
    }
}
