package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import leeway.app.report.Figures;
import leeway.app.report.MapPicture;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.files.yaml.Read;

/** The slower pictures, each as a page, and as a part that the journey page fetches after its answer: the room to every limit, the gases with their bands. */
public final class MapPage {
    private static final int WIDTH = 720;
    private static final int NARROW = 340;
    private final Site site;
    private final Answers answers;
    private final JourneyPage journey;

    MapPage(Site site, Answers answers, JourneyPage journey) {
        this.site = site;
        this.answers = answers;
        this.journey = journey;
    }

    void routes(RoutesConfig routes) {
        routes.get("/map", this::show);
        routes.get("/gases", this::gases);
    }

    /** The gases along the journey, for a wide and for a narrow page. */
    public record GasView(String wide, String narrow, Plan plan) { }

    private void gases(Context ctx) {
        if (site.kept(ctx)) return;
        String text = journey.state(ctx);
        Read<Plan> plan = journey.plan(ctx, text);
        if (plan instanceof Read.Bad<Plan> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
        AnswerView answer = new AnswerView(plan.good().orElseThrow());
        GasView view = site.answer(ctx, "gases", text, hands -> new GasView(answer.gases("wide"), answer.gases("narrow"), answer.plan()));
        String packed = site.addresses().of(text);
        Page page = site.page(ctx, "journey", site.words(ctx).say("gases.title"), packed, "/gases?s=" + packed);
        site.renderAndKeep(ctx, Site.partly(ctx) ? "part/gases.jte" : "gases.jte", Map.of("page", page, "v", view));
    }

    /** One knob as a slider. */
    public record Turn(String axis, String key, String least, String most, String step, String value, String unit) { }

    /** What the map shows, drawn for a wide and for a narrow page. */
    public record View(OperatingMap map, String svg, String narrow) {
        public String from(OperatingMap.Axis axis) { return Double.toString(axis.values()[0]); }

        public String to(OperatingMap.Axis axis) { return Double.toString(axis.values()[axis.values().length - 1]); }

        /** What a form writes for one unit of the axis. */
        public String times(OperatingMap.Axis axis) { return axis.setting().kind() == leeway.core.quantity.Kind.FRACTION ? "100" : "1"; }

        /** The two knobs of the map, for those who turn them by keyboard. */
        public List<Turn> turns() { return List.of(turn("x", map.x(), map.chosen().x()), turn("y", map.y(), map.chosen().y())); }

        private static Turn turn(String axis, OperatingMap.Axis a, double at) {
            double times = a.setting().kind() == leeway.core.quantity.Kind.FRACTION ? 100 : 1;
            double least = Math.ceil(a.values()[0] * times);
            double most = Math.floor(a.values()[a.values().length - 1] * times);
            String unit = a.setting().kind() == leeway.core.quantity.Kind.FRACTION ? "%" : a.unit();
            return new Turn(axis, a.setting().words(), Figures.plain(least), Figures.plain(most), most - least > 20 ? "1" : "0.5", Figures.plain(Math.rint(at * times * 2) / 2), unit);
        }

        public String says() { return MapPicture.says(map); }
    }

    private void show(Context ctx) {
        if (site.kept(ctx)) return;
        String text = journey.state(ctx);
        Read<Answers.Mapped> map = site.answer(ctx, "map", text, hands -> answers.map(text, hands));
        String packed = site.addresses().of(text);
        Page page = site.page(ctx, "journey", site.words(ctx).say("map.title"), packed, "/map?s=" + packed);
        if (map instanceof Read.Bad<Answers.Mapped> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
        if (map.good().orElseThrow().map().isEmpty()) {
            site.renderAndKeep(ctx, Site.partly(ctx) ? "part/nomap.jte" : "nomap.jte", Map.of("page", page));
            return;
        }
        OperatingMap made = map.good().orElseThrow().map().orElseThrow();
        View view = new View(made, MapPicture.of(made, "wide", WIDTH), MapPicture.of(made, "narrow", NARROW));
        site.renderAndKeep(ctx, Site.partly(ctx) ? "part/map.jte" : "map.jte", Map.of("page", page, "v", view));
    }
}
