package leeway.files.yaml;

import java.util.List;

/**
 * One thing wrong in what the user wrote: where, what, and what would be right.
 *
 * @param what    in the user's words, no full stop at the end
 * @param right   a sentence, or empty
 * @param nearest known names close to what was written, the closest first, at most three
 */
public record Complaint(Place at, String what, String right, List<String> nearest) {
    public Complaint {
        nearest = List.copyOf(nearest.subList(0, Math.min(3, nearest.size())));
    }

    /** {@code there is no ventilator "exmple pneumatic". Did you mean "example pneumatic"?} */
    public String message() {
        StringBuilder text = new StringBuilder(what).append('.');
        if (!nearest.isEmpty()) {
            List<String> names = nearest.stream().map(n -> "\"" + n + "\"").toList();
            String last = names.get(names.size() - 1);
            text.append(" Did you mean ").append(names.size() == 1 ? last : String.join(", ", names.subList(0, names.size() - 1)) + " or " + last).append('?');
        } else if (!right.isEmpty()) {
            text.append(' ').append(right);
        }
        return text.toString();
    }

    /** One line with its place: {@code night.yaml:14:13: there is no …}. */
    public String line() { return at + ": " + message(); }

    @Override public String toString() { return line(); }
}
