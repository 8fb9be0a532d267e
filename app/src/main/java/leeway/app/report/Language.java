package leeway.app.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import leeway.core.plan.Plan;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;

/**
 * The language in which a page that was written in English is handed out.
 * <p>Every text of the page, labels of pictures included, is said as a whole, or else sentence by sentence. What the
 * language lacks stays English and is marked so; names of the file (title, legs, stores) and sources stay as they are written.
 *
 * @param code     as in {@code lang}
 * @param sentence an English sentence in this language; empty where the language lacks it
 */
public record Language(String code, Function<String, Optional<String>> sentence) {
    public static final Language ENGLISH = new Language("en", Optional::of);
    private static final Pattern BETWEEN_SENTENCES = Pattern.compile("(?<=[.!?]) (?=[\\p{L}\\d\"])");
    private static final List<String> ATTRIBUTES = List.of("aria-label", "alt", "content");
    /** So many words and no translation: an English sentence, and no name. */
    private static final int SENTENCE = 4;

    /** The same, but for the names that the file gives: title, legs, stores. One that is also a word of ours stays as it is written. */
    public Language keepingNamesOf(Plan plan) {
        if (code.equals(ENGLISH.code)) return this;
        Set<String> names = names(plan);
        return new Language(code, text -> names.contains(text) ? Optional.of(text) : sentence.apply(text));
    }

    /** Names that a file gives. */
    public static Set<String> names(Plan plan) {
        Set<String> names = new HashSet<>(Set.of(plan.title()));
        plan.legs().forEach(l -> names.add(l.leg()));
        plan.supply().oxygen().stores().forEach(s -> names.add(s.name()));
        plan.supply().power().ifPresent(p -> p.stores().forEach(s -> names.add(s.name())));
        return names;
    }

    /** The text in this language, as far as it has it. */
    public String tell(String text) { return tell(text, sentence); }

    /** As a whole, or else sentence by sentence. */
    public static String tell(String text, Function<String, Optional<String>> sentence) {
        Optional<String> whole = sentence.apply(text);
        if (whole.isPresent()) return whole.get();
        List<String> out = new ArrayList<>();
        for (String part : BETWEEN_SENTENCES.split(text)) out.add(sentence.apply(part).orElse(part));
        return String.join(" ", out);
    }

    private boolean has(String text) {
        return sentence.apply(text).isPresent() || BETWEEN_SENTENCES.splitAsStream(text).anyMatch(part -> sentence.apply(part).isPresent());
    }

    /** The whole page in this language. */
    public String page(String html) {
        if (code.equals(ENGLISH.code)) return html;
        Document page = Jsoup.parse(html);
        page.outputSettings().prettyPrint(false);
        into(page);
        return page.outerHtml() + "\n";
    }

    /** Says every text of the page in this language. */
    public void into(Document page) {
        if (code.equals(ENGLISH.code)) return;
        page.select("html").attr("lang", code);
        page.title(tell(page.title()));
        for (Element e : page.getAllElements()) {
            if (e.normalName().equals("style") || e.normalName().equals("script") || e.normalName().equals("title")) continue;
            for (String name : ATTRIBUTES) if (e.hasAttr(name) && !e.attr(name).isBlank() && !name(e)) e.attr(name, tell(e.attr(name)));
            for (TextNode t : e.textNodes()) said(e, t);
        }
    }

    private static boolean name(Element e) { return e.hasAttr("charset") || e.attr("name").equals("viewport"); }

    private void said(Element parent, TextNode node) {
        String text = node.getWholeText().strip();
        if (text.isEmpty() || parent.normalName().equals("h1")) return;
        String spaceBefore = Character.isWhitespace(node.getWholeText().charAt(0)) ? " " : "";
        String spaceAfter = Character.isWhitespace(node.getWholeText().charAt(node.getWholeText().length() - 1)) ? " " : "";
        if (has(text)) node.text(spaceBefore + tell(text) + spaceAfter);
        else if (text.split(" ").length >= SENTENCE && parent.childNodeSize() == 1) parent.attr("lang", ENGLISH.code);
    }
}
