package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import leeway.app.report.Language;
import leeway.core.plan.Plan;
import leeway.files.yaml.Read;

/** What is printed: the report of a plan and the crew's card, as PDF, in the language of the page. */
final class PaperPages {
    private final Site site;
    private final Answers answers;
    private final JourneyPage journey;

    PaperPages(Site site, Answers answers, JourneyPage journey) {
        this.site = site;
        this.answers = answers;
        this.journey = journey;
    }

    void routes(RoutesConfig routes) {
        routes.get("/card.pdf", ctx -> {
            String text = journey.state(ctx);
            Plan plan = good(journey.plan(ctx, text));
            Language language = site.words(ctx).spoken();
            site.paper(ctx);
            send(ctx, "crew-card.pdf", good(site.answer(ctx, "card", key(ctx, text), hands -> answers.card(text, plan, language, hands))));
        });
        routes.get("/report.pdf", ctx -> {
            String text = journey.state(ctx);
            Plan plan = good(journey.plan(ctx, text));
            Answers.Mapped map = good(site.answer(ctx, "map", text, hands -> answers.map(text, hands)));
            Language language = site.words(ctx).spoken();
            site.paper(ctx);
            send(ctx, "plan.pdf", good(site.answer(ctx, "report", key(ctx, text), hands -> answers.report(plan, map.map(), language, hands))));
        });
    }

    private String key(Context ctx, String text) { return site.words(ctx).language() + "\n" + text; }

    private static <T> T good(Read<T> read) {
        if (read instanceof Read.Bad<T> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
        return read.good().orElseThrow();
    }

    private static void send(Context ctx, String name, byte[] pdf) {
        ctx.disableCompression();
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        ctx.status(200).contentType("application/pdf").result(pdf);
    }
}
