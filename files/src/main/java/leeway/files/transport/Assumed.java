package leeway.files.transport;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every default taken, a sentence each; the same default taken in several places is one sentence with the places behind it. */
final class Assumed {
    private final Map<String, List<String>> sentences = new LinkedHashMap<>();

    void add(String sentence) { sentences.putIfAbsent(sentence, new ArrayList<>()); }

    /** @param where the leg or store in which it was taken */
    void add(String sentence, String where) {
        List<String> places = sentences.computeIfAbsent(sentence, k -> new ArrayList<>());
        if (!where.isEmpty() && !places.contains(where)) places.add(where);
    }

    List<String> all() {
        return sentences.entrySet().stream().map(e -> e.getValue().isEmpty() ? e.getKey() : e.getKey() + " (" + String.join(", ", e.getValue()) + ")").toList();
    }
}
