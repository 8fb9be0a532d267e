package leeway.app.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.app.report.Language;

/**
 * What core says in English sentences, in another language: a bundle whose keys are the English sentences themselves, with
 * gaps where figures and names stand.
 * <p>{@code {1}} is kept as it stands, {@code {1#}} is a whole number, {@code {1~}} a figure with or without its unit, {@code {1*}} is itself said in the language by the
 * bundle or the names.
 * A sentence that the bundle lacks stays English, and the page says so with {@code lang}.
 */
final class Sentences {
    private static final Pattern GAP = Pattern.compile("\\{(\\d)([*#~]?)}");
    private static final Pattern SENTENCE_ENDS = Pattern.compile("\\p{Ll}[.!?] \\p{Lu}");
    private static final Pattern IN_PICTURE = Pattern.compile("(<text[^>]*>)([^<]+)(</text>)");
    private static final Pattern OF_PICTURE = Pattern.compile(" aria-label=\"([^\"]*)\"");
    private static final int KEPT = 4_000;
    private static final int DEEPEST = 4;
    private final Map<String, String> whole = new HashMap<>();
    /** By their first word; those that begin with a gap under the empty one. */
    private final Map<String, List<Line>> byWord = new HashMap<>();
    private final UnaryOperator<String> names;
    private final Map<String, Optional<String>> kept = Collections.synchronizedMap(new LinkedHashMap<>(256, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override protected boolean removeEldestEntry(Map.Entry<String, Optional<String>> eldest) { return size() > KEPT; }
    });

    /** A sentence with gaps. */
    private record Line(Pattern pattern, List<Integer> gaps, List<Boolean> said, String other, boolean opens) {
        /** What begins with a gap would fit any text: the gap of such a line ends where a sentence does. */
        boolean tooFar(String part) { return opens && SENTENCE_ENDS.matcher(part).find(); }
    }

    /** @param names the language's word for a name of ours; the name itself where there is none */
    Sentences(String language, UnaryOperator<String> names) {
        this.names = names;
        try (InputStream in = Sentences.class.getResourceAsStream("/leeway/web/sentences_" + language + ".txt")) {
            if (in == null) return;     // English needs none
            String english = null;
            BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            for (String line; (line = lines.readLine()) != null; ) {
                if (line.isBlank() || line.startsWith("#")) continue;
                if (!line.startsWith("  ")) {
                    english = line;
                } else {
                    if (english == null) throw new IllegalStateException("sentences in " + language + ": \"" + line.strip() + "\" has no English above it");
                    add(english, line.strip());
                    english = null;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void add(String english, String other) {
        Matcher m = GAP.matcher(english);
        StringBuilder pattern = new StringBuilder();
        List<Integer> gaps = new ArrayList<>();
        List<Boolean> said = new ArrayList<>();
        int from = 0;
        while (m.find()) {
            pattern.append(Pattern.quote(english.substring(from, m.start()))).append(m.group(2).equals("#") ? "(\\d+)" : m.group(2).equals("~") ? "([\u2212-]?\\d\\S*(?: \\S+)?)" : "(.+?)");
            gaps.add(Integer.parseInt(m.group(1)));
            said.add(m.group(2).equals("*"));
            from = m.end();
        }
        if (gaps.isEmpty()) {
            whole.put(english, other);
            return;
        }
        pattern.append(Pattern.quote(english.substring(from)));
        byWord.computeIfAbsent(firstWord(english), w -> new ArrayList<>()).add(new Line(Pattern.compile(pattern.toString()), gaps, said, other, firstWord(english).isEmpty()));
    }

    private static String firstWord(String text) {
        int space = text.indexOf(' ');
        String word = space < 0 ? text : text.substring(0, space);
        return word.indexOf('{') >= 0 ? "" : word;
    }

    /** The sentence in the language; empty where the bundle lacks it. */
    Optional<String> in(String sentence) {
        Optional<String> there = kept.get(sentence);
        if (there == null) {
            there = say(sentence, 0);
            kept.put(sentence, there);
        }
        return there;
    }

    private Optional<String> say(String text, int depth) {
        String plain = whole.get(text);
        if (plain != null) return Optional.of(plain);
        String name = names.apply(text);
        if (!name.equals(text)) return Optional.of(name);
        if (depth > DEEPEST) return Optional.empty();
        String word = firstWord(text);
        Optional<String> said = by(byWord.getOrDefault(word, List.of()), text, depth);
        return said.isPresent() ? said : by(byWord.getOrDefault("", List.of()), text, depth);
    }

    private Optional<String> by(List<Line> lines, String text, int depth) {
        for (Line line : lines) {
            Matcher m = line.pattern.matcher(text);
            if (!m.matches()) continue;
            String[] parts = new String[10];
            boolean all = true;
            for (int i = 0; i < line.gaps.size(); i++) {
                String part = m.group(i + 1);
                if (line.tooFar(part)) all = false;
                if (line.said.get(i)) {
                    Optional<String> said = say(part, depth + 1);
                    if (said.isEmpty() && part.chars().anyMatch(Character::isLetter)) all = false;
                    part = said.orElse(part);
                }
                parts[line.gaps.get(i)] = part;
            }
            if (!all) continue;
            StringBuilder out = new StringBuilder();
            Matcher gap = GAP.matcher(line.other);
            while (gap.find()) gap.appendReplacement(out, Matcher.quoteReplacement(parts[Integer.parseInt(gap.group(1))]));
            return Optional.of(gap.appendTail(out).toString());
        }
        return Optional.empty();
    }

    /**
     * A picture with every label that the bundle has in the language.
     *
     * @param names of the file, which stay as they stand
     */
    String picture(String svg, Set<String> names) {
        if (whole.isEmpty()) return svg;
        String labels = IN_PICTURE.matcher(svg).replaceAll(m -> Matcher.quoteReplacement(m.group(1) + label(m.group(2), names) + m.group(3)));
        return OF_PICTURE.matcher(labels).replaceAll(m -> Matcher.quoteReplacement(" aria-label=\"" + label(m.group(1), names) + "\""));
    }

    private String label(String escaped, Set<String> names) {
        String text = escaped.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
        if (names.contains(text)) return escaped;
        String said = Language.tell(text, this::in);
        return said.equals(text) ? escaped : said.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
