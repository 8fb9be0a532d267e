package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import leeway.app.command.Version;
import leeway.app.report.BreatheJson;
import leeway.app.report.ErrorsText;
import leeway.app.report.MapJson;
import leeway.app.rehearse.Rehearsals;
import leeway.app.report.PlanJson;
import leeway.app.report.RehearsalJson;
import leeway.core.plan.Plan;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.files.transport.FileCheck;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Place;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;

/**
 * For other programs: a transport file as the body, the JSON of the command as the answer, or 422 with what {@code check}
 * says of the file. No cookie, no token, no session; described in {@code openapi.json}.
 */
final class Api {
    /** More draws than this belong on the command line. */
    private static final int MOST_DRAWS = 200;
    /** A week. */
    private static final double LONGEST_S = 7 * 86_400;
    /** Longest run of the virtual patient; longer ones belong on the command line. */
    private static final double LONGEST_RUN_S = 24 * 3600;
    private static final Complaint NO_MAP = new Complaint(new Place(JourneyPage.FILE, 1, 1), "nothing is set here that ventilates, so there is no operating map", "Plan and breathe show what the patient does.", List.of());
    private final Site site;
    private final Answers answers;
    private final String openApi;

    Api(Site site, Answers answers) {
        this.site = site;
        this.answers = answers;
        this.openApi = JourneyPage.resource("/leeway/docs/api/openapi.json");
    }

    void routes(RoutesConfig routes) {
        routes.get("/api", ctx -> site.render(ctx, 200, "api.jte", Map.of("page", site.page(ctx, "api", site.words(ctx).say("api.title"), "", "/api"))));
        routes.get("/api/openapi.json", ctx -> ctx.contentType("application/json; charset=utf-8").result(openApi));
        routes.post("/api/plan", this::plan);
        routes.post("/api/map", this::map);
        routes.post("/api/rehearse", this::rehearse);
        routes.post("/api/breathe", this::breathe);
    }

    private void breathe(Context ctx) {
        only(ctx, "for", "seed");
        OptionalDouble forS = time(ctx, "for");
        if (forS.isPresent() && (forS.getAsDouble() <= 0 || forS.getAsDouble() > LONGEST_RUN_S)) throw new Refused(422, "error.time", "for");
        long seed = whole(ctx, "seed", 0, Integer.MAX_VALUE, 1);
        Read<byte[]> rows = body(ctx).then(text -> site.answer(ctx, "breaths", "", hands -> answers.run(text, hands).then(run -> {
            ByteArrayOutputStream out = new ByteArrayOutputStream(256 * 1024);
            BreatheJson.write(run.breathing(), run.title(), Math.min(LONGEST_RUN_S, forS.orElse(run.breathing().journeyS())), Version.TEXT, seed, out);
            return new Read.Good<>(out.toByteArray());
        })));
        if (rows instanceof Read.Good<byte[]> good) ctx.status(200).contentType("application/json; charset=utf-8").result(good.value()); else complain(ctx, rows.problems());
    }

    /** What the address asks for; what it gets wrong is answered like a mistake on the command line. */
    private void rehearse(Context ctx) {
        only(ctx, "fault", "at", "draws", "seed", "pairs");
        List<String> faults = ctx.queryParams("fault");
        List<String> known = answers.names("fault");
        for (String f : faults) if (!known.contains(f)) throw new Refused(422, "error.noFault", f.length() > 60 ? f.substring(0, 60) : f);
        OptionalDouble atS = time(ctx, "at");
        int draws = (int) whole(ctx, "draws", 0, MOST_DRAWS, 0);
        long seed = whole(ctx, "seed", 0, Integer.MAX_VALUE, 1);
        String asked = Optional.ofNullable(ctx.queryParam("pairs")).orElse("no");
        if (!asked.equals("yes") && !asked.equals("no")) throw new Refused(422, "error.yesNo", "pairs");
        boolean pairs = asked.equals("yes");
        Read<Rehearsals> all = body(ctx).then(text -> site.answer(ctx, "rehearsals", "", hands -> answers.rehearse(text, faults, atS, draws, pairs, seed, hands)));
        if (all instanceof Read.Good<Rehearsals> good) write(ctx, 200, out -> RehearsalJson.write(good.value(), Version.TEXT, seed, out)); else complain(ctx, all.problems());
    }

    /** What this does not know, such as a slip of the pen, must not pass for granted. */
    private static void only(Context ctx, String... known) {
        for (String name : ctx.queryParamMap().keySet()) {
            if (!List.of(known).contains(name)) throw new Refused(422, "error.parameter", (name.length() > 40 ? name.substring(0, 40) : name) + (known.length == 0 ? "" : " (" + String.join(", ", known) + ")"));
        }
    }

    private static OptionalDouble time(Context ctx, String name) {
        String text = ctx.queryParam(name);
        if (text == null) return OptionalDouble.empty();
        Optional<Quantity> q = Quantity.parse(text.strip()).filter(v -> Kind.TIME.accepted().contains(v.unit()));
        return OptionalDouble.of(q.map(v -> v.in(Kind.TIME.internal())).filter(s -> s >= 0 && s <= LONGEST_S).orElseThrow(() -> new Refused(422, "error.time", name)));
    }

    private static long whole(Context ctx, String name, long least, long most, long otherwise) {
        String text = ctx.queryParam(name);
        if (text == null) return otherwise;
        if (!text.matches("\\d{1,10}") || Long.parseLong(text) < least || Long.parseLong(text) > most) throw new Refused(422, "error.whole", name + ": " + least + "–" + most);
        return Long.parseLong(text);
    }

    private void map(Context ctx) {
        only(ctx, "seed");
        whole(ctx, "seed", 0, Integer.MAX_VALUE, 1);     // a map leaves nothing to chance
        Read<Answers.Mapped> map = body(ctx).then(text -> site.answer(ctx, "map", text, hands -> answers.map(text, hands)));
        if (map instanceof Read.Good<Answers.Mapped> good && good.value().map().isPresent()) write(ctx, 200, out -> MapJson.write(good.value().map().orElseThrow(), good.value().start(), Version.TEXT, out));
        else complain(ctx, map instanceof Read.Good<Answers.Mapped> ? List.of(NO_MAP) : map.problems());
    }

    private void plan(Context ctx) {
        only(ctx, "seed");
        boolean own = ctx.queryParam("seed") != null;
        long seed = whole(ctx, "seed", 0, Integer.MAX_VALUE, 1);
        Read<Plan> plan = body(ctx).then(text -> site.answer(ctx, "plan", own ? "seed " + seed + "\n" + text : text, hands -> own ? answers.plan(text, seed, hands) : answers.plan(text, hands)));
        if (plan instanceof Read.Good<Plan> good) write(ctx, 200, out -> PlanJson.write(good.value(), Version.TEXT, out)); else complain(ctx, plan.problems());
    }

    private static Read<String> body(Context ctx) { return Text.of(ctx.bodyAsBytes(), JourneyPage.FILE); }

    private void complain(Context ctx, List<Complaint> complaints) {
        site.json(ctx, 422, j -> ErrorsText.json(j, List.of(new FileCheck(JourneyPage.FILE, Optional.of("transport"), complaints))));
    }

    private static void write(Context ctx, int status, Consumer<OutputStream> body) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(16 * 1024);
        body.accept(out);
        ctx.status(status).contentType("application/json; charset=utf-8").result(out.toByteArray());
    }
}
