package leeway.files.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Changes one value of a YAML text in place: everything else, comments and spacing included, stays as it was written.
 * <p>A path names keys and positions from the top, as in {@code oxygen/0/pressure}. Every change is read again; where the
 * text cannot be read, or does not say what was asked for afterwards, there is no result.
 */
public final class Edit {
    private static final String NAME = "text";

    private Edit() { }

    /** Where a path leads. */
    public static Optional<Node> at(Node root, String path) {
        Node node = root;
        if (path.isEmpty()) return Optional.of(root);
        for (String step : path.split("/")) {
            Optional<Node> next = Optional.empty();
            if (node instanceof Node.Mapping m) next = m.get(step);
            if (node instanceof Node.Items list && step.matches("\\d{1,4}") && Integer.parseInt(step) < list.items().size()) next = Optional.of(list.items().get(Integer.parseInt(step)));
            if (next.isEmpty()) return next;
            node = next.get();
        }
        return Optional.of(node);
    }

    /**
     * Writes a single value; a key that is not there yet is put where its table has it.
     *
     * @param order the keys of its mapping in the order in which one writes them
     */
    public static Optional<String> set(String text, String path, String value, List<String> order) {
        return root(text).flatMap(r -> put(text, r, path, scalar(value, inFlow(r, path), wasQuoted(r, path)), order))
                .filter(c -> at(c.root(), path).filter(n -> n instanceof Node.Scalar s && s.text().equals(value.strip())).isPresent()).map(Changed::text);
    }

    /** Writes YAML on one line, such as {@code [vehicle, portable]}. */
    public static Optional<String> put(String text, String path, String yaml, List<String> order) { return root(text).flatMap(r -> put(text, r, path, yaml, order)).map(Changed::text); }

    /** A changed text, read again. */
    private record Changed(String text, Node root) { }

    private static Optional<Changed> put(String text, Node root, String path, String yaml, List<String> order) {
        Optional<Node> old = at(root, path);
        String changed;
        if (old.isPresent()) {
            Node.Span span = old.get().span();
            boolean nothing = old.get() instanceof Node.Scalar s && s.blank();
            int end = contentEnd(old.get(), text);
            int start = span.start();
            if (!flowOrScalar(old.get())) start = afterColon(text, root, path).orElse(start);
            boolean gap = start == 0 || !Character.isWhitespace(text.charAt(start - 1));
            changed = text.substring(0, start) + (nothing && gap || !flowOrScalar(old.get()) ? " " : "") + yaml + text.substring(Math.max(start, nothing ? start : end));
        } else {
            Optional<String> added = add(text, root, path, yaml, order);
            if (added.isEmpty()) return Optional.empty();
            changed = added.get();
        }
        return root(changed).filter(r -> at(r, path).isPresent()).map(r -> new Changed(changed, r));
    }

    /** Takes out a key with its value; a mapping that holds nothing then goes too. */
    public static Optional<String> remove(String text, String path) {
        Optional<Node> root = root(text);
        if (root.isEmpty() || at(root.get(), path).isEmpty() || path.isEmpty()) return Optional.empty();
        int slash = path.lastIndexOf('/');
        String parentPath = slash < 0 ? "" : path.substring(0, slash);
        String last = path.substring(slash + 1);
        Node parent = at(root.get(), parentPath).orElseThrow();
        if (parent instanceof Node.Items list) return removeItem(text, list, Integer.parseInt(last), parentPath);
        Node.Mapping mapping = (Node.Mapping) parent;
        List<Node.Entry> entries = mapping.entries();
        if (entries.size() == 1) return parentPath.isEmpty() ? Optional.empty() : remove(text, parentPath);
        int i = 0;
        while (!entries.get(i).key().text().equals(last)) i++;
        Node.Entry entry = entries.get(i);
        int from = entry.key().span().start();
        int to = contentEnd(entry.value(), text);
        if (mapping.flow()) {
            if (i > 0) from = contentEnd(entries.get(i - 1).value(), text);
            else to = entries.get(1).key().span().start();
        } else if (i == 0 && !text.substring(lineStart(text, from), from).isBlank()) {
            to = entries.get(1).key().span().start();
        } else {
            from = lineStart(text, from);
            to = lineEnd(text, Math.max(to, entry.key().span().end()));
        }
        return read(text.substring(0, from) + text.substring(to));
    }

    /** Adds an item, YAML on one line, at the end of a list; the list is made where there is none. */
    public static Optional<String> append(String text, String listPath, String yaml, List<String> order) {
        Optional<Node> root = root(text);
        if (root.isEmpty()) return Optional.empty();
        Optional<Node> list = at(root.get(), listPath);
        if (list.isEmpty() || list.get() instanceof Node.Scalar s && s.blank()) {
            return put(text, listPath, "\n  - " + yaml, order);
        }
        if (!(list.get() instanceof Node.Items items)) return Optional.empty();
        if (items.items().isEmpty()) return read(text.substring(0, items.span().start()) + "[" + yaml + "]" + text.substring(items.span().end()));
        Node last = items.items().get(items.items().size() - 1);
        int end = contentEnd(last, text);
        if (items.flow()) return read(text.substring(0, end) + ", " + yaml + text.substring(end));
        int dash = dash(text, last.span().start());
        int at = lineEnd(text, end);
        String indent = " ".repeat(dash - lineStart(text, dash));
        return read(text.substring(0, at) + (at > 0 && text.charAt(at - 1) != '\n' ? "\n" : "") + indent + "- " + yaml + "\n" + text.substring(at));
    }

    /** Exchanges an item with the one before it ({@code by} −1) or after it (1); comments above an item go with it. */
    public static Optional<String> move(String text, String listPath, int index, int by) {
        Optional<Node> node = root(text).flatMap(r -> at(r, listPath));
        if (node.isEmpty() || !(node.get() instanceof Node.Items list)) return Optional.empty();
        int a = Math.min(index, index + by);
        int b = Math.max(index, index + by);
        if (a < 0 || b >= list.items().size() || b - a != 1) return Optional.empty();
        int[] first = reach(text, list, a);
        int[] second = reach(text, list, b);
        if (first[1] > second[0]) return Optional.empty();
        String one = text.substring(first[0], first[1]);
        String two = text.substring(second[0], second[1]);
        if (!list.flow() && !two.endsWith("\n")) {
            two += "\n";
            if (one.endsWith("\n")) one = one.substring(0, one.length() - 1);
        }
        return read(text.substring(0, first[0]) + two + text.substring(first[1], second[0]) + one + text.substring(second[1]));
    }

    /** A single value as YAML on one line, quoted where it would otherwise say something else. */
    public static String scalar(String value, boolean flow, boolean quoted) {
        String v = value.strip();
        boolean plain = !quoted && !v.isEmpty() && !v.matches("(?s)[,\\[\\]{}#&*!|>'\"%@`].*|[-?:](\\s.*)?|---.*|\\.\\.\\..*") && !v.contains(": ") && !v.contains(" #") && !v.endsWith(":")
                && v.chars().noneMatch(c -> c < 0x20 || c == 0x7F || c == 0x85 || c == 0x2028 || c == 0x2029 || c == 0xFEFF)
                && !(flow && v.matches("(?s).*[,\\[\\]{}].*")) && !v.equals("~") && !v.equals("null");
        if (plain) return v;
        StringBuilder out = new StringBuilder("\"");
        v.codePoints().forEach(c -> {
            if (c == '"' || c == '\\') out.append('\\').appendCodePoint(c);
            else if (c == '\n') out.append("\\n");
            else if (c == '\t') out.append("\\t");
            else if (c < 0x20 || c == 0x7F || c == 0x85 || c == 0x2028 || c == 0x2029 || c == 0xFEFF) out.append("\\u%04X".formatted(c));
            else out.appendCodePoint(c);
        });
        return out.append('"').toString();
    }

    private static Optional<String> add(String text, Node root, String path, String yaml, List<String> order) {
        int slash = path.lastIndexOf('/');
        String parentPath = slash < 0 ? "" : path.substring(0, slash);
        String key = path.substring(slash + 1);
        Optional<Node> parent = at(root, parentPath);
        boolean hollow = parent.isPresent() && parent.get() instanceof Node.Scalar s && s.blank();
        if (!parentPath.isEmpty() && (parent.isEmpty() || hollow)) return put(text, parentPath, "{" + key + ": " + yaml + "}", List.of());
        if (parent.isEmpty() || !(parent.get() instanceof Node.Mapping mapping)) return Optional.empty();
        int before = before(mapping, key, order);
        if (mapping.flow()) {
            if (mapping.entries().isEmpty()) return Optional.of(text.substring(0, mapping.span().start()) + "{" + key + ": " + yaml + "}" + text.substring(mapping.span().end()));
            if (before < 0) {
                int at = mapping.entries().get(0).key().span().start();
                return Optional.of(text.substring(0, at) + key + ": " + yaml + ", " + text.substring(at));
            }
            int at = contentEnd(mapping.entries().get(before).value(), text);
            return Optional.of(text.substring(0, at) + ", " + key + ": " + yaml + text.substring(at));
        }
        Node.Entry first = mapping.entries().get(0);
        int firstKey = first.key().span().start();
        String indent = " ".repeat(firstKey - lineStart(text, firstKey));
        boolean sharesLine = !text.substring(lineStart(text, firstKey), firstKey).isBlank();
        if (before < 0 && sharesLine) return Optional.of(text.substring(0, firstKey) + key + ": " + yaml + "\n" + indent + text.substring(firstKey));
        Node.Entry after = before < 0 ? null : mapping.entries().get(before);
        int at = after == null ? lineStart(text, firstKey) : lineEnd(text, Math.max(after.key().span().end(), contentEnd(after.value(), text)));
        String head = text.substring(0, at);
        if (!head.isEmpty() && !head.endsWith("\n")) head += "\n";
        String written = yaml.startsWith("\n") ? yaml.replace("\n", "\n" + indent) : " " + yaml;
        return Optional.of(head + indent + key + ":" + written + "\n" + text.substring(at));
    }

    /** The entry after which a key stands in the order of its table; −1: before the first. */
    private static int before(Node.Mapping mapping, String key, List<String> order) {
        int rank = order.indexOf(key);
        int best = -1;
        for (int i = 0; i < mapping.entries().size(); i++) {
            int other = order.indexOf(mapping.entries().get(i).key().text());
            if (rank < 0 || other >= 0 && other < rank) best = i;
        }
        return best;
    }

    private static Optional<String> removeItem(String text, Node.Items list, int i, String listPath) {
        if (list.items().size() == 1) return listPath.isEmpty() ? Optional.empty() : remove(text, listPath);
        if (list.flow()) {
            int from = i > 0 ? contentEnd(list.items().get(i - 1), text) : list.items().get(0).span().start();
            int to = i > 0 ? contentEnd(list.items().get(i), text) : list.items().get(1).span().start();
            return read(text.substring(0, from) + text.substring(to));
        }
        int[] reach = reach(text, list, i);
        return read(text.substring(0, reach[0]) + text.substring(reach[1]));
    }

    /** From the comments above an item to the end of its last line. */
    private static int[] reach(String text, Node.Items list, int i) {
        Node item = list.items().get(i);
        int end = contentEnd(item, text);
        if (list.flow()) return new int[] {item.span().start(), end};
        int from = lineStart(text, dash(text, item.span().start()));
        while (from > 0) {
            int above = lineStart(text, from - 1);
            if (!text.substring(above, from).strip().startsWith("#")) break;
            from = above;
        }
        return new int[] {from, lineEnd(text, end)};
    }

    /** End of what a value says; the reader's end of a block includes what follows it. */
    private static int contentEnd(Node node, String text) {
        if (node instanceof Node.Mapping m && !m.flow() && !m.entries().isEmpty()) {
            Node.Entry last = m.entries().get(m.entries().size() - 1);
            return Math.max(last.key().span().end() + 1, contentEnd(last.value(), text));
        }
        if (node instanceof Node.Items l && !l.flow() && !l.items().isEmpty()) return contentEnd(l.items().get(l.items().size() - 1), text);
        if (node instanceof Node.Scalar s && s.block()) {
            int end = s.span().end();
            while (end > s.span().start() && Character.isWhitespace(text.charAt(end - 1))) end--;
            return end;
        }
        return node.span().end();
    }

    private static boolean flowOrScalar(Node node) {
        return node instanceof Node.Scalar s && !s.block() || node instanceof Node.Mapping m && m.flow() || node instanceof Node.Items l && l.flow();
    }

    private static Optional<Integer> afterColon(String text, Node root, String path) {
        int slash = path.lastIndexOf('/');
        Optional<Node> parent = at(root, slash < 0 ? "" : path.substring(0, slash));
        if (parent.isEmpty() || !(parent.get() instanceof Node.Mapping m)) return Optional.empty();
        return m.entry(path.substring(slash + 1)).map(e -> text.indexOf(':', e.key().span().end()) + 1);
    }

    private static boolean wasQuoted(Node root, String path) {
        return at(root, path).filter(n -> n instanceof Node.Scalar s && s.quoted()).isPresent();
    }

    private static boolean inFlow(Node root, String path) {
        String at = path;
        while (at.contains("/")) {
            at = at.substring(0, at.lastIndexOf('/'));
            Optional<Node> outer = at(root, at);
            if (outer.isEmpty() || outer.get() instanceof Node.Mapping m && m.flow() || outer.get() instanceof Node.Items l && l.flow()) return true;
        }
        return false;
    }

    private static int dash(String text, int itemStart) { return text.lastIndexOf('-', itemStart - 1); }

    private static int lineStart(String text, int at) { return text.lastIndexOf('\n', at - 1) + 1; }

    private static int lineEnd(String text, int at) {
        int end = text.indexOf('\n', at);
        return end < 0 ? text.length() : end + 1;
    }

    private static Optional<Node> root(String text) { return Tree.of(NAME, text).good(); }

    private static Optional<String> read(String text) { return root(text).map(r -> text); }

    /** Every path to a single value, in the order of the text. */
    public static List<String> leaves(Node root) {
        List<String> out = new ArrayList<>();
        leaves(root, "", out);
        return out;
    }

    private static void leaves(Node node, String path, List<String> out) {
        if (node instanceof Node.Scalar) out.add(path);
        String head = path.isEmpty() ? "" : path + "/";
        if (node instanceof Node.Mapping m) m.entries().forEach(e -> leaves(e.value(), head + e.key().text(), out));
        if (node instanceof Node.Items l) for (int i = 0; i < l.items().size(); i++) leaves(l.items().get(i), head + i, out);
    }
}
