package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.web.entry.Posted;
import leeway.core.plan.Plan;
import leeway.files.yaml.Edit;
import leeway.files.yaml.Read;

/** What if: a pinned plan beside the plan as it is moved, with sliders and the differences. */
final class ComparePage {
    private final Site site;
    private final Answers answers;
    private final JourneyPage journey;

    ComparePage(Site site, Answers answers, JourneyPage journey) {
        this.site = site;
        this.answers = answers;
        this.journey = journey;
    }

    void routes(RoutesConfig routes) {
        routes.get("/compare", ctx -> show(ctx, journey.state(ctx), site.addresses().open(ctx.queryParam("pin")).orElse(journey.state(ctx))));
        routes.post("/compare", this::posted);
    }

    private void posted(Context ctx) {
        String now = Packed.open(ctx.formParam("was")).orElseThrow(() -> new Refused(400, "error.form", ""));
        String pinned = Packed.open(ctx.formParam("pinned")).orElse(now);
        String act = Optional.ofNullable(ctx.formParam("do")).orElse("");
        Read<Plan> plan = plan(ctx, now);
        if (plan instanceof Read.Good<Plan> good) {
            for (Slider s : Slider.of(now, good.value())) now = moved(now, s, ctx.formParam(s.path()));
        }
        site.replace(ctx, now);
        if (act.equals("back")) now = pinned;
        if (act.equals("pin")) pinned = now;
        show(ctx, now, pinned);
    }

    private String moved(String text, Slider s, String posted) {
        if (posted == null || !posted.matches("[0-9]{1,5}(\\.[0-9]{1,3})?")) return text;
        double v = Double.parseDouble(posted);
        if (!s.moved(v) || v < s.least() || v > s.most()) return text;
        String moved = Edit.set(text, s.path(), s.written(v), Posted.order(answers.table(), s.path())).orElse(text);
        return s.kind().equals("takes") ? worst(moved, s, v) : moved;
    }

    /** The worst case of a leg keeps its proportion to the median. */
    private static String worst(String text, Slider s, double v) {
        String path = s.path().replaceFirst("takes$", "at worst");
        return Slider.minutes(text, path).map(min -> min * v / s.value()).flatMap(min -> Edit.set(text, path, s.number(Math.rint(min * 10) / 10) + " min", List.of())).orElse(text);
    }

    private Read<Plan> plan(Context ctx, String text) { return journey.plan(ctx, text); }

    private void show(Context ctx, String now, String pinned) {
        Read<Plan> a = plan(ctx, pinned);
        Read<Plan> b = plan(ctx, now);
        String packedNow = Packed.of(now);
        String packedPin = Packed.of(pinned);
        String state = site.addresses().of(now);
        String self = "/compare?s=" + state + "&pin=" + site.addresses().of(pinned);
        Page page = site.page(ctx, "compare", site.words(ctx).say("compare.title"), state, self);
        CompareView view = new CompareView(packedNow, packedPin, a.good().map(AnswerView::new), b.good().map(AnswerView::new),
                b.good().map(p -> Slider.of(now, p)).orElse(List.of()), a.good().isPresent() && b.good().isPresent() ? Difference.between(a.good().get(), b.good().get()) : List.of(),
                b.problems().stream().map(c -> c.line()).toList());
        if (Site.partly(ctx)) {
            ctx.header("HX-Replace-Url", self);
            site.render(ctx, 200, "part/compare.jte", Map.of("page", page, "v", view));
        } else {
            site.render(ctx, 200, "compare.jte", Map.of("page", page, "v", view));
        }
    }
}
