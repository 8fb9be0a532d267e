package leeway.files.keys;

import java.util.Optional;
import java.util.Set;

/**
 * A file to start from, made of a table: what is needed is written, everything else stands in comments with its meaning
 * and its default, so that taking out a "# " is all it takes.
 */
public final class Commented {
    private static final int MEANING_COLUMN = 46;
    /** Sections with more keys than this, which nobody needs, are shown as one line. */
    private static final int LONG = 28;

    private final StringBuilder out = new StringBuilder();
    private final Set<String> written;

    private Commented(Set<String> written) { this.written = written; }

    /** @param written paths of optional keys that are written too, {@code legs/oxygen} */
    public static String of(Table table, Set<String> written) {
        Commented c = new Commented(written);
        c.keys(table, "", "", "", "");
        return c.out.toString();
    }

    private void keys(Table table, String path, String first, String indent, String comment) {
        String lead = first;
        for (Key k : table.keys()) {
            String here = path.isEmpty() ? k.name() : path + "/" + k.name();
            boolean off = comment.isEmpty() && !k.required() && !written.contains(here);
            key(k, here, off ? indent : lead, indent, off ? "# " : comment);
            if (!off) lead = indent;
        }
    }

    private void key(Key k, String path, String lead, String indent, String comment) {
        Optional<Table> inner = k.form().inner().filter(t -> (t.keys().size() <= LONG || k.required()) && !(k.form() instanceof Forms.NameOrSection));
        String start = comment.isEmpty() ? lead : indent + comment + lead.substring(Math.min(indent.length(), lead.length()));
        if (inner.isEmpty() || !(k.form() instanceof Forms.InSection || k.form() instanceof Forms.Several)) {
            line(start + k.name() + ": " + example(k), k);
            return;
        }
        line(start + k.name() + ":", k);
        String deeper = comment.isEmpty() ? indent + "  " : "  ";
        if (comment.isEmpty()) {
            boolean list = k.form() instanceof Forms.Several;
            keys(inner.get(), path, list ? deeper + "- " : deeper, list ? deeper + "  " : deeper, "");
        } else {
            commented(inner.get(), indent, deeper, k.form() instanceof Forms.Several);
        }
    }

    /** All keys of a section that is itself a comment. */
    private void commented(Table table, String indent, String deeper, boolean list) {
        String lead = indent + "# " + deeper + (list ? "- " : "");
        for (Key k : table.keys()) {
            line(lead + k.name() + ": " + example(k), k);
            lead = indent + "# " + deeper + (list ? "  " : "");
        }
    }

    private static String example(Key k) {
        return k.form() instanceof Forms.InSection s && s.table().keys().size() > LONG ? "{" + s.table().keys().get(0).name() + ": " + s.table().keys().get(0).form().example() + "}" : k.form().example();
    }

    private void line(String text, Key k) {
        String meaning = k.meaning() + k.otherwise().map(o -> " Otherwise: " + o + ".").orElse("");
        out.append(text).append(" ".repeat(Math.max(2, MEANING_COLUMN - text.length()))).append("# ").append(meaning).append('\n');
    }

}
