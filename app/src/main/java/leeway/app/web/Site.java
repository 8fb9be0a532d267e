package leeway.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import leeway.app.report.Json;

/** What all routes share: language, templates, errors as page, part of a page or JSON, assets. */
final class Site {
    static final String ANSWERED = "answered";
    private static final String ASKED_AT = "asked at";
    /** The script of a page names the open page with each request. */
    private static final String PAGE = "Leeway-Page";
    private static final String TEMPLATES = "leeway.app.web.pages";
    private static final int A_YEAR_S = 31_536_000;
    private final TemplateEngine templates = TemplateEngine.createPrecompiled(null, ContentType.Html, Site.class.getClassLoader(), TEMPLATES);
    private final Assets assets = new Assets();
    private final Addresses addresses = new Addresses(Addresses.MOST_CHARS);
    private final Gate gate;
    private final Desk desk;

    /** Pages kept, some 200 kB each. */
    private static final int KEPT = 48;
    /** Stands in a rendered page for the reader's own token; no text that a reader sends can contain it. */
    private final String gap = "~" + new Tokens().newCookie() + "~";
    private final Map<String, KeptPage> kept = new LinkedHashMap<>(KEPT * 2, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override protected boolean removeEldestEntry(Map.Entry<String, KeptPage> eldest) { return size() > KEPT; }
    };

    Site(Gate gate, Desk desk) {
        this.gate = gate;
        this.desk = desk;
    }

    Gate gate() { return gate; }

    /** How addresses carry a journey. */
    Addresses addresses() { return addresses; }

    /**
     * What follows, from the desk where answers are worked out. All that one request asks has one limit of time.
     *
     * @param key the same for the same answer, which is then kept and shared; empty for one that is not
     */
    <T> T answer(Context ctx, String kind, String key, Function<Hands, T> work) {
        Long began = ctx.attribute(ASKED_AT);
        long now = System.nanoTime();
        if (began == null) ctx.attribute(ASKED_AT, now);
        Duration left = began == null ? desk.limit() : desk.limit().minusNanos(now - began);
        return desk.answer(program(ctx) ? new Desk.Asker("program at " + gate.from(ctx), "", true) : new Desk.Asker(user(ctx), page(ctx)), new Desk.Question(kind, key), left, work);
    }

    /** What this request asks from now on is paper, which takes longer: it has a limit of its own, three times the usual. */
    void paper(Context ctx) { ctx.attribute(ASKED_AT, System.nanoTime() + 2 * desk.limit().toNanos()); }

    /** Works it out in the background, so that the first who asks does not wait for a cold machine. */
    void later(String kind, String key, Function<Hands, ?> work) { desk.later(new Desk.Question(kind, key), work); }

    /** What the same open page asked of another text is no longer wanted. */
    void replace(Context ctx, String text) { desk.replace(page(ctx), text); }

    private static boolean program(Context ctx) { return ctx.path().startsWith("/api/"); }

    private String user(Context ctx) {
        String cookie = ctx.cookie(Tokens.COOKIE);
        return cookie != null && cookie.length() == 24 ? cookie : gate.from(ctx);
    }

    private String page(Context ctx) {
        String page = ctx.header(PAGE);
        return page == null || page.isEmpty() || page.length() > 40 ? "" : user(ctx) + " " + page;
    }

    Assets assets() { return assets; }

    void routes(RoutesConfig routes) {
        routes.get("/health", ctx -> json(ctx, 200, j -> j.text("status", "ok")));
        routes.get("/assets/{digest}/{name}", this::asset);
        routes.get("/favicon.ico", ctx -> ctx.redirect(assets.at("icon.svg")));
    }

    private void asset(Context ctx) {
        Assets.Asset asset = assets.get(ctx.path()).orElseThrow(() -> new Refused(404, "error.404", ""));
        ctx.header("Cache-Control", "public, max-age=" + A_YEAR_S + ", immutable");
        boolean zip = asset.zipped() != asset.plain() && accepted(ctx);
        ctx.disableCompression();
        if (asset.zipped() != asset.plain()) ctx.header("Vary", "Accept-Encoding");
        if (zip) ctx.header("Content-Encoding", "gzip");
        ctx.contentType(asset.type()).result(zip ? asset.zipped() : asset.plain());
    }

    /** The language of a request: asked for in the address, kept in a cookie, wished for by the browser. */
    Words words(Context ctx) {
        String asked = ctx.queryParam("lang");
        if (asked != null && Words.LANGUAGES.contains(asked)) {
            Cookie kept = new Cookie("lang", asked);
            kept.setPath("/");
            kept.setHttpOnly(true);
            kept.setSameSite(SameSite.LAX);
            kept.setMaxAge(A_YEAR_S);
            ctx.cookie(kept);
            return Words.in(asked);
        }
        String kept = ctx.cookie("lang");
        return kept != null && Words.LANGUAGES.contains(kept) ? Words.in(kept) : Words.wished(ctx.header("Accept-Language"));
    }

    /**
     * The frame of a page.
     *
     * @param self its address with all that it needs but the language
     */
    Page page(Context ctx, String here, String title, String state, String self) {
        return new Page(words(ctx), here, title, gap, state, self, assets);
    }

    void render(Context ctx, int status, String template, Map<String, Object> with) {
        ctx.status(status).contentType("text/html; charset=utf-8").result(rendered(template, with).replace(gap, gate.token(ctx)));
    }

    /** Answers with a page that depends on nothing but its address and the language, and keeps it for the next reader. */
    void renderAndKeep(Context ctx, String template, Map<String, Object> with) {
        KeptPage page = new KeptPage(rendered(template, with), gap);
        synchronized (kept) {
            kept.put(address(ctx), page);
        }
        send(ctx, page);
    }

    /** Answers with the kept page of this address, where there is one. */
    boolean kept(Context ctx) {
        KeptPage page;
        synchronized (kept) {
            page = kept.get(address(ctx));
        }
        if (page == null) return false;
        send(ctx, page);
        return true;
    }

    private String address(Context ctx) { return words(ctx).language() + (partly(ctx) ? " part of " : " ") + ctx.path() + "?" + ctx.queryString(); }

    private void send(Context ctx, KeptPage page) {
        String token = gate.token(ctx);
        boolean zip = accepted(ctx);
        ctx.disableCompression();
        ctx.header("Vary", "Accept-Encoding");
        if (zip) ctx.header("Content-Encoding", "gzip");
        ctx.status(200).contentType("text/html; charset=utf-8").result(zip ? page.zipped(token) : page.plain(token));
    }

    private static boolean accepted(Context ctx) {
        String accepted = ctx.header("Accept-Encoding");
        return accepted != null && accepted.contains("gzip") && !accepted.contains("gzip;q=0");
    }

    private String rendered(String template, Map<String, Object> with) {
        StringOutput out = new StringOutput(64 * 1024);
        templates.render(template, with, out);
        return out.toString();
    }

    /** Whether the script of a page of ours asks for a part of it. */
    static boolean partly(Context ctx) { return "true".equals(ctx.header("HX-Request")) && !"true".equals(ctx.header("HX-History-Restore-Request")); }

    void json(Context ctx, int status, Consumer<Json> body) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(8 * 1024);
        try (Json json = new Json(out)) {
            body.accept(json);
        }
        ctx.status(status).contentType("application/json; charset=utf-8").result(out.toByteArray());
    }

    void error(Context ctx, int status, Function<Words, String> text) {
        ctx.attribute(ANSWERED, true);
        if (ctx.path().startsWith("/api/") || ctx.path().equals("/health")) {
            json(ctx, status, j -> {
                j.count("status", status);
                j.text("message", text.apply(Words.in("en")));
            });
            return;
        }
        Words words = words(ctx);
        String said = text.apply(words);
        if (partly(ctx)) {
            render(ctx, status, "part/message.jte", Map.of("text", said));
            return;
        }
        Page page = new Page(words, "", words.say("error.title"), "", "", "/", assets);
        render(ctx, status, "error.jte", Map.of("page", page, "status", status, "text", said));
    }
}
