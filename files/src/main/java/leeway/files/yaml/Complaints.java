package leeway.files.yaml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Gathers what is wrong in one run over a file; keeps the first {@value #KEPT} and counts the rest. */
public final class Complaints {
    /** More than this nobody reads. */
    public static final int KEPT = 50;
    /** No more of the input than this is echoed. */
    public static final int ECHO = 40;

    private final List<Complaint> kept = new ArrayList<>();
    private int more;
    private Place firstOfMore;

    public void add(Place at, String what, String right) { add(at, what, right, List::of); }

    /** With nearest names, which are looked for only when the complaint is kept. */
    public void add(Place at, String what, String right, Supplier<List<String>> nearest) {
        if (kept.size() < KEPT) {
            kept.add(new Complaint(at, what, right, nearest.get()));
        } else if (more++ == 0) {
            firstOfMore = at;
        }
    }

    public void addAll(List<Complaint> others) { others.forEach(c -> add(c.at(), c.what(), c.right(), c::nearest)); }

    public boolean any() { return !kept.isEmpty(); }

    public int count() { return kept.size() + more; }

    /** In order of place; the last one says how many are not shown. */
    public List<Complaint> all() {
        List<Complaint> sorted = new ArrayList<>(kept);
        sorted.sort(Comparator.comparing(Complaint::at));
        if (more > 0) sorted.add(new Complaint(firstOfMore, more + " more errors are not shown", "Right the first ones, then check again.", List.of()));
        return sorted;
    }

    public <T> Read<T> orElse(Supplier<T> value) { return any() ? new Read.Bad<>(all()) : new Read.Good<>(value.get()); }

    public <T> Optional<T> take(Read<T> read) {
        addAll(read.problems());
        return read.good();
    }

    /** The text in quotation marks on one line, shortened to {@value #ECHO} characters. */
    public static String echo(String text) {
        StringBuilder out = new StringBuilder("\"");
        int n = 0;
        int i = 0;
        while (i < text.length() && n < ECHO) {
            int c = text.codePointAt(i);
            out.appendCodePoint(Character.isISOControl(c) || Character.getType(c) == Character.FORMAT || c == 0x2028 || c == 0x2029 ? ' ' : c);
            i += Character.charCount(c);
            n++;
        }
        if (i < text.length()) out.setLength(out.length() - Character.charCount(out.codePointBefore(out.length()))); // room for the dots
        return out.append(i < text.length() ? "…\"" : "\"").toString();
    }
}
