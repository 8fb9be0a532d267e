package leeway.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.web.entry.Entry;
import leeway.app.web.entry.Stayed;

/**
 * What the journey page shows.
 *
 * @param text   the transport file
 * @param packed the same, for the form to come back with
 * @param state  what an address says of it
 * @param undo   the texts before it, packed, with a space between them
 * @param pinned a text to compare with, packed; empty for none
 * @param pin    what an address says of it
 * @param answer what follows; absent where the text has mistakes
 * @param other  what follows from the pinned text
 * @param spoken one sentence for those who hear the page
 * @param stayed numbers that stayed when their unit was changed, by path
 */
public record JourneyView(String text, String packed, String state, String undo, String pinned, String pin, Entry entry, Optional<AnswerView> answer,
                          Optional<AnswerView> other, String spoken, Map<String, Stayed> stayed) {
    private static final int LEAST_ROWS = 12;
    private static final int MOST_ROWS = 44;

    JourneyView spoken(String sentence) { return new JourneyView(text, packed, state, undo, pinned, pin, entry, answer, other, sentence, stayed); }

    /** What the journey is called; the page's own name where the text has mistakes. */
    public String title(Words words) { return answer.map(a -> a.plan().title()).orElse(words.say("nav.journey")); }

    /** Between the pinned plan and this one. */
    public List<Difference> differences() { return other.isPresent() && answer.isPresent() ? Difference.between(other.get().plan(), answer.get().plan()) : List.of(); }

    /** Tells one text from another, for parts of the page that are fetched after it. */
    public String mark() { return Integer.toHexString(text.hashCode()); }

    /** Whether the address holds the text itself and so opens anywhere and at any time. */
    public boolean lasts() { return Addresses.lasts(state); }

    /** Lines of the text field. */
    public int rows() { return (int) Math.max(LEAST_ROWS, Math.min(MOST_ROWS, text.lines().count() + 1)); }

    /** Sections and items that are wrong as a whole, in the order of the page. */
    public List<leeway.app.web.entry.Group> wrongGroups() {
        List<leeway.app.web.entry.Group> out = new java.util.ArrayList<>();
        entry.groups().forEach(g -> wrongGroups(g, out));
        return out;
    }

    private static void wrongGroups(leeway.app.web.entry.Group g, List<leeway.app.web.entry.Group> out) {
        if (!g.wrong().isEmpty()) out.add(g);
        g.items().forEach(i -> wrongGroups(i, out));
        g.inner().forEach(i -> wrongGroups(i, out));
    }

    /** How many things are wrong. */
    public long wrong() {
        return entry.all().mapToLong(f -> f.wrong().size()).sum() + entry.loose().size() + entry.groups().stream().mapToLong(JourneyView::wrong).sum();
    }

    private static long wrong(leeway.app.web.entry.Group g) {
        return g.wrong().size() + g.items().stream().mapToLong(JourneyView::wrong).sum() + g.inner().stream().mapToLong(JourneyView::wrong).sum();
    }
}
