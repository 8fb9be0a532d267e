package leeway.app.web;

import com.password4j.BcryptFunction;
import com.password4j.Password;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.regex.Pattern;

/**
 * Who may use a server that others on the network can reach: a file with a line {@code name:hash} for each person, the
 * hash by bcrypt, as the usual {@code htpasswd -B} writes it.
 */
public final class Passwords {
    /**
     * bcrypt, any of its prefixes, cost 10 or more (OWASP Password Storage Cheat Sheet: "a work factor of 10 or more"); at most 15,
     * some two seconds each (from memory), for whoever guesses keeps a processor busy so long.
     */
    private static final Pattern HASH = Pattern.compile("\\$2[abxy]\\$(1[0-5])\\$[./A-Za-z0-9]{53}");
    /** Proofs at once: more would leave nothing for those who were let in. */
    private static final int AT_ONCE = 2;
    private static final int REMEMBERED = 200;
    private final Map<String, String> hashes;
    /** Against a name that does not exist, as dear as the dearest, so that the time of an answer does not tell which names do. */
    private final String nobody;
    private final Semaphore proofs = new Semaphore(AT_ONCE, true);
    /** Digests of what was right already: bcrypt is slow by intent, and a browser sends the password with every request. */
    private final Map<String, Boolean> known = new LinkedHashMap<>() {
        @Override protected boolean removeEldestEntry(Map.Entry<String, Boolean> eldest) { return size() > REMEMBERED; }
    };

    private Passwords(Map<String, String> hashes) {
        this.hashes = Map.copyOf(hashes);
        int cost = hashes.values().stream().mapToInt(h -> Integer.parseInt(h.substring(4, 6))).max().orElseThrow();
        nobody = Password.hash("nobody").with(BcryptFunction.getInstance(com.password4j.types.Bcrypt.Y, cost)).getResult();
    }

    /** A file that cannot be used as it stands; the message is for the person at the terminal. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;
        Unusable(String message) { super(message); }
    }

    public static Passwords read(Path file) throws Unusable {
        String text;
        try {
            if (Files.size(file) > 1_000_000) throw new Unusable(file + ": a password file has a line for each person and is far shorter than 1 MB.");
            text = Files.readString(file);
        } catch (IOException e) {
            throw new Unusable(file + ": this password file cannot be read. Make one with: htpasswd -nB NAME > FILE");
        }
        Map<String, String> hashes = new LinkedHashMap<>();
        int line = 0;
        for (String row : text.split("\\R")) {
            line++;
            if (row.isBlank() || row.startsWith("#")) continue;
            int colon = row.indexOf(':');
            if (colon <= 0 || !HASH.matcher(row.substring(colon + 1).strip()).matches()) {
                throw new Unusable("%s:%d: this line is not NAME:HASH with a bcrypt hash of cost 10 to 15. Make one with: htpasswd -nB -C 12 NAME".formatted(file, line));
            }
            if (hashes.put(row.substring(0, colon), row.substring(colon + 1).strip()) != null) throw new Unusable("%s:%d: this name stands twice. Keep one line for each person.".formatted(file, line));
        }
        if (hashes.isEmpty()) throw new Unusable(file + ": this password file names nobody. Make a line with: htpasswd -nB -C 12 NAME");
        return new Passwords(hashes);
    }

    /** Whether an {@code Authorization: Basic} header names a person of the file with the right password. */
    boolean fit(String header) {
        if (header == null || !header.regionMatches(true, 0, "Basic ", 0, 6) || header.length() > 1_000) return false;
        if (known(header)) return true;
        String pair;
        try {
            pair = new String(Base64.getDecoder().decode(header.substring(6).strip()), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return false;
        }
        int colon = pair.indexOf(':');
        if (colon <= 0) return false;
        String hash = hashes.get(pair.substring(0, colon));
        proofs.acquireUninterruptibly();
        try {
            boolean right = Password.check(pair.substring(colon + 1), hash == null ? nobody : hash).withBcrypt() && hash != null;
            if (right) synchronized (known) { known.put(digest(header), true); }
            return right;
        } finally {
            proofs.release();
        }
    }

    /** Whether this header was proved right before. */
    boolean known(String header) {
        if (header.length() > 1_000) return false;
        synchronized (known) {
            return known.containsKey(digest(header));
        }
    }

    private static String digest(String header) {
        try {
            return Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(header.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
