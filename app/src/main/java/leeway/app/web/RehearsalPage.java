package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.report.Figures;
import leeway.app.report.SpeaksFirst;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.files.yaml.Read;

/** Rehearsals of all faults, and who speaks first. */
public final class RehearsalPage {
    private final Site site;
    private final Answers answers;
    private final JourneyPage journey;

    RehearsalPage(Site site, Answers answers, JourneyPage journey) {
        this.site = site;
        this.answers = answers;
        this.journey = journey;
    }

    void routes(RoutesConfig routes) {
        routes.get("/rehearse", this::all);
    }

    /**
     * All faults.
     *
     * @param whatIf what the file asks beyond them, each at its own moment
     * @param state  the journey for an address; empty for the one that comes along
     */
    public record AllView(String title, List<Rehearsal> rows, List<Rehearsal> whatIf, String state) {
        /** @param look wide, narrow, paper */
        public String speaks(String look) { return SpeaksFirst.svg(look, AnswerView.width(look), rows); }

        public long uncovered() { return rows.stream().filter(r -> r.coverage().uncovered()).count(); }

        public long harmful() { return rows.stream().filter(r -> r.harm().isPresent()).count(); }

        /** The least margin that an alarm can change; absent where no alarm speaks in any. */
        public Optional<Rehearsal> least() { return Figures.least(rows); }

        public String minutes(double min) { return Figures.minutes(min); }

        public String seconds(OptionalDouble s) { return s.isPresent() ? Figures.seconds(s.getAsDouble()) : ""; }

        public String seconds(double s) { return Figures.seconds(s); }

        public String open(Rehearsal r) { return "/rehearse/fault?fault=" + encoded(r.fault().name()) + r.leg().map(l -> "&at=" + Figures.plain(Math.rint(l.atMin() * 100) / 100)).orElse("") + (state.isEmpty() ? "" : "&s=" + state); }
    }

    static String encoded(String text) { return java.net.URLEncoder.encode(text, java.nio.charset.StandardCharsets.UTF_8); }

    private void all(Context ctx) {
        if (site.kept(ctx)) return;
        String text = journey.state(ctx);
        Plan plan = good(journey.plan(ctx, text));
        List<Rehearsal> whatIf = good(site.answer(ctx, "what if", text, hands -> answers.whatIf(text, hands)));
        String packed = ctx.queryParam("s") == null ? "" : site.addresses().of(text);
        Page page = site.page(ctx, "rehearse", site.words(ctx).say("rehearse.title"), packed, packed.isEmpty() ? "/rehearse" : "/rehearse?s=" + packed);
        site.renderAndKeep(ctx, "rehearse.jte", Map.of("page", page, "v", new AllView(plan.title(), plan.rehearsals(), whatIf, packed)));
    }

    static <T> T good(Read<T> read) {
        if (read instanceof Read.Bad<T> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
        return read.good().orElseThrow();
    }
}
