package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import leeway.app.command.Version;
import leeway.app.report.ErrorsText;
import leeway.app.report.MapJson;
import leeway.app.report.PlanJson;
import leeway.core.plan.Plan;
import leeway.files.transport.FileCheck;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;

/**
 * For other programs: a transport file as the body, the JSON of the command as the answer, or 422 with what {@code check}
 * says of the file. No cookie, no token, no session; described in {@code openapi.json}.
 */
final class Api {
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
    }

    private void map(Context ctx) {
        Read<Answers.Mapped> map = body(ctx).then(text -> site.desk().answer(() -> answers.map(text)));
        if (map instanceof Read.Good<Answers.Mapped> good) write(ctx, 200, out -> MapJson.write(good.value().map(), good.value().start(), Version.TEXT, out)); else complain(ctx, map.problems());
    }

    private void plan(Context ctx) {
        Read<Plan> plan = body(ctx).then(text -> site.desk().answer(() -> answers.plan(text)));
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
