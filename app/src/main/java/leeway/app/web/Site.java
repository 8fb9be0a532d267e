package leeway.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.io.ByteArrayOutputStream;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import leeway.app.report.Json;

/** What all routes share: language, templates, errors as page, part of a page or JSON, assets. */
final class Site {
    static final String ANSWERED = "answered";
    private static final String TEMPLATES = "leeway.app.web.pages";
    private static final int A_YEAR_S = 31_536_000;
    private final TemplateEngine templates = TemplateEngine.createPrecompiled(null, ContentType.Html, Site.class.getClassLoader(), TEMPLATES);
    private final Assets assets = new Assets();
    private final Gate gate;
    private final Desk desk;

    Site(Gate gate, Desk desk) {
        this.gate = gate;
        this.desk = desk;
    }

    Gate gate() { return gate; }

    Desk desk() { return desk; }

    Assets assets() { return assets; }

    void routes(RoutesConfig routes) {
        routes.get("/health", ctx -> json(ctx, 200, j -> j.text("status", "ok")));
        routes.get("/assets/{digest}/{name}", this::asset);
        routes.get("/favicon.ico", ctx -> ctx.redirect(assets.at("icon.svg")));
    }

    private void asset(Context ctx) {
        Assets.Asset asset = assets.get(ctx.path()).orElseThrow(() -> new Refused(404, "error.404", ""));
        ctx.header("Cache-Control", "public, max-age=" + A_YEAR_S + ", immutable");
        String accepted = ctx.header("Accept-Encoding");
        boolean zip = asset.zipped() != asset.plain() && accepted != null && accepted.contains("gzip");
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
        return new Page(words(ctx), here, title, gate.token(ctx), state, self, assets);
    }

    void render(Context ctx, int status, String template, Map<String, Object> with) {
        StringOutput out = new StringOutput(32 * 1024);
        templates.render(template, with, out);
        ctx.status(status).contentType("text/html; charset=utf-8").result(out.toString());
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
