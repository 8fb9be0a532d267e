package leeway.app.web;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Proof that a form that is posted came from a page of ours: a cookie that only our pages get back, and in the form a
 * fresh number with its keyed digest over number and cookie. The number differs in every page, so that compression
 * tells nothing about it. The key is made at the start and lives as long as the server.
 */
final class Tokens {
    static final String COOKIE = "leeway";
    static final String FIELD = "token";
    private static final int BYTES = 18;
    private final SecureRandom random = new SecureRandom();
    private final SecretKeySpec key;

    Tokens() {
        byte[] secret = new byte[32];
        random.nextBytes(secret);
        key = new SecretKeySpec(secret, "HmacSHA256");
    }

    String newCookie() { return fresh(); }

    String tokenFor(String cookie) {
        String number = fresh();
        return number + "." + digest(number, cookie);
    }

    boolean fits(String token, String cookie) {
        if (token == null || cookie == null) return false;
        int dot = token.indexOf('.');
        if (dot <= 0) return false;
        byte[] expected = digest(token.substring(0, dot), cookie).getBytes(StandardCharsets.US_ASCII);
        return MessageDigest.isEqual(expected, token.substring(dot + 1).getBytes(StandardCharsets.UTF_8));
    }

    private String fresh() {
        byte[] bytes = new byte[BYTES];
        random.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private String digest(String number, String cookie) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(key);
            return Base64.getUrlEncoder().withoutPadding().encodeToString(mac.doFinal((number + "/" + cookie).getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has HmacSHA256", e);
        }
    }
}
