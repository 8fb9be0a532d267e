package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import leeway.app.report.Examples;
import leeway.app.web.entry.Entry;
import leeway.app.web.entry.Posted;
import leeway.app.web.entry.Stayed;
import leeway.core.plan.Plan;
import leeway.files.yaml.Read;
import leeway.files.yaml.Text;

/** The journey page: a transport described in a form or as text, and what follows from it. */
final class JourneyPage {
    /** The name under which complaints speak of the text. */
    static final String FILE = "transport";
    private static final int UNDO = 20;
    private static final int UNDO_CHARS = 60_000;
    /** What a new journey asks for; nothing is filled in. */
    static final String BLANK = """
            transport: New journey
            patient:
              sex:
              height:
            ventilator:
            oxygen:
              - {name: portable, cylinder: , pressure: }
            legs:
              - {leg: first leg, takes: , oxygen: portable}
            """;

    private final Site site;
    private final Answers answers;
    private final String first;

    /** @param first the journey that the page opens with */
    JourneyPage(Site site, Answers answers, String first) {
        this.site = site;
        this.answers = answers;
        this.first = first;
    }

    void routes(RoutesConfig routes) {
        routes.get("/", this::open);
        routes.post("/", this::posted);
        routes.post("/open", this::upload);
        routes.post("/download", this::download);
        routes.get("/new", ctx -> { if (!site.kept(ctx)) show(ctx, BLANK, List.of(), "", Map.of()); });
    }

    /** Works out the first journey in the background, so that the first visitor does not wait for a cold machine. */
    void warm() { site.later("plan", first, hands -> answers.plan(first, hands)); }

    private void open(Context ctx) {
        if (!site.kept(ctx)) show(ctx, state(ctx), List.of(), site.addresses().open(ctx.queryParam("pin")).map(Packed::of).orElse(""), Map.of());
    }

    /** The journey that an address carries; the one that comes along where it carries none. */
    String state(Context ctx) {
        String packed = ctx.queryParam("s");
        String example = ctx.queryParam("example");
        if (packed == null && example != null) return Examples.text(example).orElseThrow(() -> new Refused(404, "error.404", ""));
        if (packed == null) return first;
        return site.addresses().open(packed).orElseThrow(() -> Addresses.lasts(packed) ? new Refused(400, "error.link", "") : new Refused(410, "error.forgotten", ""));
    }

    private static String pinned(String packed) { return packed != null && Packed.open(packed).isPresent() ? packed : ""; }

    private void posted(Context ctx) {
        String was = Packed.open(ctx.formParam("was")).orElseThrow(() -> new Refused(400, "error.form", ""));
        String typed = ctx.formParam("text");
        String text = typed == null ? was : lines(typed);
        if (text.length() > Packed.MAX_TEXT_BYTES / 2) throw new Refused(413, "error.long", "");
        List<String> undo = new ArrayList<>(split(ctx.formParam("undo")));
        String pinned = pinned(ctx.formParam("pinned"));
        String act = Optional.ofNullable(ctx.formParam("do")).orElse("work");
        Map<String, Stayed> stayed = Map.of();
        if (act.equals("undo")) {
            if (!undo.isEmpty()) text = Packed.open(undo.remove(undo.size() - 1)).orElse(was);
            site.replace(ctx, text);
            show(ctx, text, undo, pinned, Map.of());
            return;
        }
        if (act.equals("new")) {
            text = BLANK;
        } else {
            Entry form = entry(was, List.of());
            stayed = Stayed.of(form, ctx::formParam);
            text = Posted.changed(answers.table(), form, text, ctx::formParam);
            text = Posted.act(answers.table(), text, act);
        }
        if (act.equals("pin")) pinned = Packed.of(text);
        if (act.equals("unpin")) pinned = "";
        if (!text.equals(was)) undo = Posted.before(undo, Packed.of(was), UNDO, UNDO_CHARS);
        site.replace(ctx, text);
        show(ctx, text, undo, pinned, stayed);
    }

    private void upload(Context ctx) throws IOException {
        UploadedFile file = ctx.uploadedFile("file");
        if (file == null || file.size() == 0) throw new Refused(422, "error.noFile", "");
        try (InputStream in = file.content()) {
            Read<String> read = Text.of(in.readNBytes(Server.MAX_BODY_BYTES), FILE);
            if (read instanceof Read.Bad<String> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
            String text = lines(read.good().orElseThrow());
            if (text.length() > Packed.MAX_TEXT_BYTES / 2) throw new Refused(413, "error.long", "");
            show(ctx, text, List.of(), "", Map.of());
        }
    }

    private void download(Context ctx) {
        String text = lines(Optional.ofNullable(ctx.formParam("text")).orElse(""));
        ctx.header("Content-Disposition", "attachment; filename=\"transport.yaml\"");
        ctx.contentType("text/yaml; charset=utf-8").result(text);
    }

    /** What follows from a text. */
    Read<Plan> plan(Context ctx, String text) { return site.answer(ctx, "plan", text, hands -> answers.plan(text, hands)); }

    private Entry entry(String text, List<leeway.files.yaml.Complaint> complaints) {
        return Entry.of(answers.table(), text, complaints, answers::names);
    }

    private void show(Context ctx, String text, List<String> undo, String pinned, Map<String, Stayed> stayed) {
        Read<Plan> plan = plan(ctx, text);
        Entry entry = entry(text, plan.problems());
        String packed = Packed.of(text);
        String state = site.addresses().of(text);
        String self = "/?s=" + state;
        Page page = site.page(ctx, "journey", title(plan, site.words(ctx)), state, self);
        Optional<AnswerView> answer = plan.good().map(AnswerView::new);
        Optional<String> beside = pinned.isEmpty() ? Optional.empty() : Packed.open(pinned);
        Optional<AnswerView> other = beside.flatMap(t -> plan(ctx, t).good()).map(AnswerView::new);
        String pin = other.isPresent() ? site.addresses().of(beside.orElseThrow()) : "";
        JourneyView view = new JourneyView(text, packed, state, String.join(" ", undo), other.isPresent() ? pinned : "", pin, entry, answer, other, "", stayed);
        view = view.spoken(spoken(page.words(), view));
        if (Site.partly(ctx)) {
            ctx.header("HX-Replace-Url", self + (pin.isEmpty() ? "" : "&pin=" + pin));
            site.render(ctx, 200, "part/bench.jte", Map.of("page", page, "v", view));
        } else {
            Map<String, Object> with = Map.of("page", page, "v", view);
            if (ctx.method() == HandlerType.GET) site.renderAndKeep(ctx, "journey.jte", with); else site.render(ctx, plan.problems().isEmpty() ? 200 : 422, "journey.jte", with);
        }
    }

    private static String title(Read<Plan> plan, Words words) { return plan.good().map(Plan::title).orElse(words.say("nav.journey")); }

    private static String spoken(Words w, JourneyView v) {
        String stayed = v.stayed().values().stream().map(s -> w.stayed(s) + " ").collect(Collectors.joining());
        return stayed + verdict(w, v);
    }

    private static String verdict(Words w, JourneyView v) {
        if (v.answer().isEmpty()) return w.say("spoken.wrong", Long.toString(v.wrong()));
        AnswerView a = v.answer().orElseThrow();
        return w.say(a.holds() ? "spoken.holds" : "spoken.holdsNot", a.left().map(l -> l.figure() + " " + w.say(l.key(), l.with().toArray())).orElse(""));
    }

    private static List<String> split(String undo) { return undo == null || undo.isBlank() ? List.of() : List.of(undo.strip().split(" ")); }

    /** A form sends lines as CR LF; an editor's byte order mark would shift every place in the text by one. */
    static String lines(String text) { return (text.startsWith("\uFEFF") ? text.substring(1) : text).replace("\r\n", "\n").replace('\r', '\n'); }

    /** A file that comes with the program. */
    static String resource(String name) {
        try (InputStream in = JourneyPage.class.getResourceAsStream(name)) {
            if (in == null) throw new IllegalStateException("the program lacks its own part " + name);
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
