package leeway.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import leeway.app.report.Language;
import leeway.app.web.entry.Stayed;
import leeway.core.plan.Plan;

/**
 * The words of the pages in one language. Names of sheets, faults and keys stand in the transport file in English and are
 * shown as they stand there, with the language's own word beside them where the bundle has one.
 */
public final class Words {
    private static final Map<String, Words> ALL = Map.of("en", new Words("en"), "de", new Words("de"));
    /** In the order in which a page offers them. */
    public static final List<String> LANGUAGES = List.of("en", "de");
    /** Signs that a field of figures shows beside its unit. */
    private static final int MOST_BRIEF = 11;
    private final String language;
    /** Kinds of names that core's sentences hold. */
    private static final List<String> NAMED = List.of("fault", "alarm", "coverage", "priority", "row", "value", "key", "hint");
    private final Map<String, String> texts = new TreeMap<>();
    private final Sentences sentences;

    private Words(String language) {
        this.language = language;
        Properties read = new Properties();
        try (InputStream in = Words.class.getResourceAsStream("/leeway/web/words_" + language + ".properties")) {
            if (in == null) throw new IllegalStateException("the program lacks its words in " + language);
            read.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        read.stringPropertyNames().forEach(k -> texts.put(k, read.getProperty(k)));
        sentences = new Sentences(language, name -> NAMED.stream().map(kind -> texts.get(kind + "." + name)).filter(java.util.Objects::nonNull).findFirst().orElse(name));
    }

    /** A sentence of core's in this language; as it stands where the bundle lacks it. */
    public String tell(String english) { return language.equals("en") ? english : sentences.in(english).orElse(english); }

    /** For pages that are written in English and handed out in this language. */
    public Language spoken() { return language.equals("en") ? Language.ENGLISH : new Language(language, sentences::in); }

    /** The language of {@link #tell}, where it is not the page's; null where it is. */
    public String tongue(String english) { return language.equals("en") || sentences.in(english).isPresent() ? null : "en"; }

    /** A picture with its labels in this language. */
    public String picture(String svg) { return language.equals("en") ? svg : sentences.picture(svg, Set.of()); }

    /** The same of a plan, whose file's names stay as they are written. */
    public String picture(String svg, Plan plan) { return language.equals("en") ? svg : sentences.picture(svg, Language.names(plan)); }

    /** Rows with every cell but figures in this language. */
    public List<List<String>> rows(List<List<String>> rows) { return rows.stream().map(r -> r.stream().map(this::tell).toList()).toList(); }

    /** That only the unit was changed: what stood there, and what stands there now. */
    public String stayed(Stayed s) { return say("entry.stayed", amount(s.number(), s.before()), amount(s.number(), s.now())); }

    public String amount(String number, String unit) { return number + " " + name("unit", unit); }

    /** Rows whose first cells are names of the file, which stay as they stand, and the others in this language. */
    public List<List<String>> rowsFrom(int first, List<List<String>> rows) {
        return rows.stream().map(r -> java.util.stream.IntStream.range(0, r.size()).mapToObj(i -> i < first ? r.get(i) : tell(r.get(i))).toList()).toList();
    }

    /** The words of a language; English where we have none. */
    public static Words in(String language) { return ALL.getOrDefault(language, ALL.get("en")); }

    /** The first of a browser's wishes that we have. */
    static Words wished(String acceptLanguage) {
        if (acceptLanguage == null || acceptLanguage.length() > 500) return in("en");
        try {
            for (Locale.LanguageRange range : Locale.LanguageRange.parse(acceptLanguage)) {
                String wish = range.getRange().split("-")[0];
                if (ALL.containsKey(wish)) return in(wish);
            }
        } catch (IllegalArgumentException notALanguage) {
            return in("en");
        }
        return in("en");
    }

    public String language() { return language; }

    /** A text of ours; numbers are handed in as text, already with the digits they shall have. */
    public String say(String key, Object... with) {
        String text = texts.get(key);
        if (text == null) throw new IllegalArgumentException("no words for " + key);
        return with.length == 0 ? text : new MessageFormat(text.replace("'", "''"), Locale.ROOT).format(with);
    }

    /** The language's word for a name of the transport file, such as a fault or a key; the name itself where there is none. */
    public String name(String kind, String name) {
        String own = texts.get(kind + "." + name);
        if (own != null) return own;
        if (kind.equals("value")) return tell(name);
        if (kind.equals("hint")) return name.replaceFirst(" Cel$", " °C");
        // a section of the file may be called by a key or by an alarm condition
        return kind.equals("group") ? texts.getOrDefault("key." + name, texts.getOrDefault("alarm." + name, name)) : name;
    }

    /** A hint short enough for a field of figures; empty where it has none so short: then it stands below the field. */
    public String brief(String hint) {
        String whole = texts.getOrDefault("brief." + hint, name("hint", hint));
        return whole.length() <= MOST_BRIEF ? whole : "";
    }

    /** Rows whose first cell is a name, in this language. */
    public List<List<String>> first(String kind, List<List<String>> rows) {
        return rows.stream().map(r -> {
            List<String> row = new java.util.ArrayList<>(r);
            row.set(0, name(kind, r.get(0)));
            return List.copyOf(row);
        }).toList();
    }

    public boolean has(String key) { return texts.containsKey(key); }

    Map<String, String> all() { return texts; }
}
