package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import java.util.Set;

/**
 * What stands before every route: headers that tell the browser to trust nothing but us, names under which we answer,
 * passwords and rates where the network can reach us, and proof that a form comes from a page of ours.
 */
final class Gate {
    /** Everything from us, nothing inline, nobody may frame us. */
    static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
            + "manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
    /** A body too large is read away up to here. */
    private static final long MOST_POURED_BYTES = 4L * Server.MAX_BODY_BYTES;
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final String COOKIE_OF_REQUEST = "cookie";
    /** Nobody plans faster than this; an address that does is a program, and programs wait. */
    private static final double REQUESTS_PER_MIN = 240;
    private static final double BURST = 120;
    private static final double WRONG_PASSWORDS_PER_MIN = 6;
    private static final double WRONG_PASSWORDS_AT_ONCE = 6;

    private final boolean loopback;
    private final Optional<Passwords> passwords;
    private final Tokens tokens = new Tokens();
    private final Rates requests = new Rates(REQUESTS_PER_MIN, BURST, System::nanoTime);
    private final Rates wrong = new Rates(WRONG_PASSWORDS_PER_MIN, WRONG_PASSWORDS_AT_ONCE, System::nanoTime);

    Gate(boolean loopback, Optional<Passwords> passwords) {
        this.loopback = loopback;
        this.passwords = passwords;
    }

    void stand(RoutesConfig routes) {
        routes.before(this::headers);
        routes.before(this::pass);
    }

    private void headers(Context ctx) {
        ctx.header("Content-Security-Policy", POLICY);
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("X-Frame-Options", "DENY");
        // not "no-referrer": a browser would then call the origin of our own forms "null"
        ctx.header("Referrer-Policy", "same-origin");
        ctx.header("Cross-Origin-Opener-Policy", "same-origin");
        ctx.header("Cross-Origin-Resource-Policy", "same-origin");
        ctx.header("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
        ctx.header("Cache-Control", "no-store");
    }

    /** Reads away what somewhat too large a body sends, for who still sends does not hear the answer; what is larger is cut off. */
    private static void pour(Context ctx) {
        if (ctx.req().getContentLengthLong() > MOST_POURED_BYTES) return;
        try {
            ctx.req().getInputStream().skipNBytes(ctx.req().getContentLengthLong());
        } catch (IOException e) {
            // whoever sent it is gone
        }
    }

    private void pass(Context ctx) {
        if (ctx.req().getContentLengthLong() > Server.MAX_BODY_BYTES) {
            pour(ctx);
            throw new Refused(413, "error.413", "");
        }
        if (loopback && !LOOPBACK.contains(name(ctx.header("Host")))) throw new Refused(421, "error.host", "");
        String from = ctx.ip();
        if (passwords.isPresent() && !ctx.path().equals("/health")) {
            if (!passwords.get().fit(ctx.header("Authorization"))) {
                if (ctx.header("Authorization") != null) {
                    long waitS = wrong.waitS(from);
                    if (waitS > 0) throw tooOften(ctx, waitS);
                }
                ctx.header("WWW-Authenticate", "Basic realm=\"Leeway\", charset=\"UTF-8\"");
                throw new Refused(401, "error.password", "");
            }
        }
        if (!loopback && !ctx.path().startsWith("/assets/")) {
            long waitS = requests.waitS(from);
            if (waitS > 0) throw tooOften(ctx, waitS);
        }
        if (ctx.method() != HandlerType.POST) return;
        if (foreign(ctx)) throw new Refused(403, "error.foreign", "");
        if (!ctx.path().startsWith("/api/") && !tokens.fits(formToken(ctx), ctx.cookie(Tokens.COOKIE))) throw new Refused(403, "error.token", "");
    }

    private static Refused tooOften(Context ctx, long waitS) {
        ctx.header("Retry-After", Long.toString(waitS));
        return new Refused(429, "error.often", Long.toString(waitS));
    }

    private static String formToken(Context ctx) {
        try {
            return ctx.formParam(Tokens.FIELD);
        } catch (IllegalArgumentException notAForm) {
            throw new Refused(400, "error.form", "");
        }
    }

    /** A page of another site that posts to us; a program sends no origin. */
    private static boolean foreign(Context ctx) {
        if ("cross-site".equals(ctx.header("Sec-Fetch-Site"))) return true;
        String origin = ctx.header("Origin");
        if (origin == null) return false;
        try {
            String host = URI.create(origin).getAuthority();
            return host == null || !host.equals(ctx.header("Host"));
        } catch (IllegalArgumentException e) {
            return true;
        }
    }

    private static String name(String host) {
        if (host == null) return "";
        int port = host.lastIndexOf(':');
        return port > host.lastIndexOf(']') ? host.substring(0, port) : host;
    }

    /** A fresh token for a page that holds forms; gives the browser our cookie where it has none. */
    String token(Context ctx) {
        String cookie = ctx.cookie(Tokens.COOKIE);
        if (cookie == null || cookie.length() != 24) cookie = ctx.attribute(COOKIE_OF_REQUEST);
        if (cookie == null) {
            cookie = tokens.newCookie();
            ctx.attribute(COOKIE_OF_REQUEST, cookie);
            Cookie ours = new Cookie(Tokens.COOKIE, cookie);
            ours.setPath("/");
            ours.setHttpOnly(true);
            ours.setSameSite(SameSite.LAX);
            ctx.cookie(ours);
        }
        return tokens.tokenFor(cookie);
    }
}
