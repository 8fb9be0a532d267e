package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.io.IOException;
import java.net.URI;
import java.util.Enumeration;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
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
    /** Names of this machine for itself, whatever it listens at. */
    private static final List<String> LOOPBACK = List.of("localhost", "127.0.0.1", "[::1]");
    private static final String COOKIE_OF_REQUEST = "cookie";
    /** Nobody plans faster than this; an address that does is a program, and programs wait. */
    private static final double REQUESTS_PER_MIN = 240;
    private static final double BURST = 120;
    private static final double WRONG_PASSWORDS_PER_MIN = 6;
    private static final double WRONG_PASSWORDS_AT_ONCE = 6;
    /** Of IPv6 with its zone. */
    private static final int LONGEST_ADDRESS = 64;

    private final boolean loopback;
    private final Set<String> names = new HashSet<>(LOOPBACK);
    private final Optional<Passwords> passwords;
    private final Set<String> proxies;
    private final Tokens tokens = new Tokens();
    private final Rates requests = new Rates(REQUESTS_PER_MIN, BURST, System::nanoTime);
    private final Rates wrong = new Rates(WRONG_PASSWORDS_PER_MIN, WRONG_PASSWORDS_AT_ONCE, System::nanoTime);

    /**
     * @param alone   the host it listens at where only this machine reaches it: one more name under which it answers
     * @param proxies addresses whose word on who asks is believed
     */
    Gate(Optional<String> alone, Optional<Passwords> passwords, Set<String> proxies) {
        this.loopback = alone.isPresent();
        alone.ifPresent(host -> names.add((host.contains(":") ? "[" + host + "]" : host).toLowerCase(Locale.ROOT)));
        this.passwords = passwords;
        this.proxies = proxies;
    }

    /** The address that asks; of what comes through a proxy the one that the proxy names last, for all before it anybody can write. */
    String from(Context ctx) {
        String near = ctx.ip();
        if (!proxies.contains(near)) return near;
        Enumeration<String> all = ctx.req().getHeaders("X-Forwarded-For");
        String last = "";
        while (all.hasMoreElements()) last = all.nextElement();
        String named = last.substring(last.lastIndexOf(',') + 1).strip();
        return named.isEmpty() || named.length() > LONGEST_ADDRESS ? near : named;
    }

    private boolean encrypted(Context ctx) { return proxies.contains(ctx.ip()) && "https".equals(ctx.header("X-Forwarded-Proto")); }

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
        if (loopback && !names.contains(name(ctx.header("Host")))) throw new Refused(421, "error.host", "");
        String coded = ctx.header("Content-Encoding");
        if (coded != null && !coded.equalsIgnoreCase("identity")) throw new Refused(415, "error.415", "");
        String from = from(ctx);
        if (passwords.isPresent() && !ctx.path().equals("/health")) known(ctx, from);
        if (planted(ctx)) throw new Refused(403, "error.foreign", "");
        if (!loopback && !ctx.path().startsWith("/assets/")) {
            long waitS = requests.waitS(from);
            if (waitS > 0) throw tooOften(ctx, waitS);
        }
        if (ctx.method() != HandlerType.POST) return;
        if (foreign(ctx)) throw new Refused(403, "error.foreign", "");
        if (!ctx.path().startsWith("/api/") && !tokens.fits(formToken(ctx), ctx.cookie(Tokens.COOKIE))) throw new Refused(403, "error.token", "");
    }

    /**
     * Lets pass who has given the right password. Proving one takes long by intent, so an address that was wrong too often
     * is sent away before; whoever was let pass already is not.
     */
    private void known(Context ctx, String from) {
        String header = ctx.header("Authorization");
        if (header != null) {
            if (passwords.get().known(header)) return;
            long waitS = wrong.waitS(from);
            if (waitS > 0) throw tooOften(ctx, waitS);
            if (passwords.get().fit(header)) {
                wrong.giveBack(from);
                return;
            }
        }
        ctx.header("WWW-Authenticate", "Basic realm=\"Leeway\", charset=\"UTF-8\"");
        throw new Refused(401, "error.password", "");
    }

    /** Something in a page of another site, such as a picture, that would have us work; a link from there is welcome. */
    private static boolean planted(Context ctx) {
        if (!"cross-site".equals(ctx.header("Sec-Fetch-Site"))) return false;
        String where = ctx.header("Sec-Fetch-Dest");
        return !"navigate".equals(ctx.header("Sec-Fetch-Mode")) || where != null && !where.equals("document");
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
            return host == null || !host.equalsIgnoreCase(ctx.header("Host"));
        } catch (IllegalArgumentException e) {
            return true;
        }
    }

    private static String name(String host) {
        if (host == null) return "";
        int port = host.lastIndexOf(':');
        return (port > host.lastIndexOf(']') ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
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
            ours.setSecure(encrypted(ctx));
            ctx.cookie(ours);
        }
        return tokens.tokenFor(cookie);
    }
}
