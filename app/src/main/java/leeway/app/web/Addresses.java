package leeway.app.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What an address carries of a journey: the whole text, packed. A text too long for that is remembered by the server, and
 * its address names it by its digest; such an address lasts as long as the server runs and enough others do not push it out.
 */
final class Addresses {
    private static final char BY_NAME = '2';
    /** Of all texts that are remembered together: some two hundred of the longest. */
    static final int MOST_CHARS = 8_000_000;
    private final Map<String, String> texts = new LinkedHashMap<>(64, 0.75f, true);
    private final int most;
    private long held;

    Addresses(int most) { this.most = most; }

    /** The text as part of an address. */
    String of(String text) {
        String packed = Packed.of(text);
        return packed.length() <= Packed.MAX_ADDRESS ? packed : remembered(text);
    }

    /** Whether the address holds the text itself, so that it opens anywhere and at any time. */
    static boolean lasts(String state) { return state.isEmpty() || state.charAt(0) != BY_NAME; }

    /** The text; empty where the address is damaged or names a text that is no longer remembered. */
    Optional<String> open(String state) {
        if (state == null || lasts(state)) return Packed.open(state);
        synchronized (texts) {
            return Optional.ofNullable(texts.get(state));
        }
    }

    private String remembered(String text) {
        String name = BY_NAME + digest(text);
        synchronized (texts) {
            if (texts.put(name, text) == null) held += text.length();
            for (Iterator<String> oldest = texts.values().iterator(); held > most && texts.size() > 1; ) {
                held -= oldest.next().length();
                oldest.remove();
            }
        }
        return name;
    }

    private static String digest(String text) {
        try {
            return Base64.getUrlEncoder().withoutPadding().encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
