package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import leeway.app.report.Figures;
import leeway.app.report.SpeaksFirst;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;
import leeway.files.yaml.Read;

/** Rehearsals: all faults and who speaks first; one fault along its time, to be stepped through with or without the truth. */
public final class RehearsalPage {
    private static final double BEFORE_S = 30;
    private static final double LONGEST_S = 1_800;
    private static final List<Double> STEPS_S = List.of(0.0, 5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0, 180.0, 240.0, 300.0, 420.0, 600.0, 900.0, 1200.0, 1800.0);
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
        routes.get("/rehearse/fault", this::one);
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

    private static String encoded(String text) { return java.net.URLEncoder.encode(text, java.nio.charset.StandardCharsets.UTF_8); }

    private void all(Context ctx) {
        if (site.kept(ctx)) return;
        String text = journey.state(ctx);
        Plan plan = good(journey.plan(ctx, text));
        List<Rehearsal> whatIf = good(site.answer(ctx, "what if", text, hands -> answers.whatIf(text, hands)));
        String packed = ctx.queryParam("s") == null ? "" : site.addresses().of(text);
        Page page = site.page(ctx, "rehearse", site.words(ctx).say("rehearse.title"), packed, packed.isEmpty() ? "/rehearse" : "/rehearse?s=" + packed);
        site.renderAndKeep(ctx, "rehearse.jte", Map.of("page", page, "v", new AllView(plan.title(), plan.rehearsals(), whatIf, packed)));
    }

    private static <T> T good(Read<T> read) {
        if (read instanceof Read.Bad<T> bad) throw new Refused(422, "error.wrongFile", bad.complaints().get(0).line());
        return read.good().orElseThrow();
    }

    /** What one fault shows. */
    public record OneView(String fault, String at, String act, String hidden, double tS, boolean truth, List<String> faults, Optional<Rehearsal> row, Trace trace, List<String> pictures,
                          String back, String next, String end, String reveal, String hide, List<String> said) {
        public String seconds(double s) { return Figures.seconds(s); }

        public String clock() { return TracePicture.clock(tS); }

        /** Whether the class may see what it is about. */
        public boolean open() { return hidden.isEmpty(); }
    }

    private void one(Context ctx) {
        String text = journey.state(ctx);
        Words words = site.words(ctx);
        String hidden = Optional.ofNullable(ctx.queryParam("q")).flatMap(Packed::open).orElse("");
        String[] secret = hidden.split("\n", -1);
        String fault = secret.length == 3 ? secret[0] : Optional.ofNullable(ctx.queryParam("fault")).orElse("");
        String at = (secret.length == 3 ? secret[1] : Optional.ofNullable(ctx.queryParam("at")).orElse("")).strip();
        String act = (secret.length == 3 ? secret[2] : Optional.ofNullable(ctx.queryParam("act")).orElse("")).strip();
        List<String> faults = answers.names("fault");
        if (!faults.contains(fault)) throw new Refused(404, "error.noFault", fault.length() > 60 ? fault.substring(0, 60) : fault);
        OptionalDouble atMin = number(at, words.say("rehearse.at"));
        OptionalDouble actS = number(act, words.say("rehearse.act"));
        Answers.Traced traced = good(site.answer(ctx, "trace", fault + "\n" + atMin + "\n" + actS + "\n" + text, hands -> answers.trace(text, fault, atMin, actS, BEFORE_S, LONGEST_S, hands)));
        Trace trace = traced.trace();
        Optional<Rehearsal> row = traced.row();
        double endS = trace.rows().isEmpty() ? 0 : trace.rows().get(trace.rows().size() - 1).tS();
        double tS = Math.max(0, Math.min(endS, number(Optional.ofNullable(ctx.queryParam("t")).orElse(""), "t").orElse(endS)));
        boolean truth = hidden.isEmpty() || "1".equals(ctx.queryParam("show"));
        String packed = ctx.queryParam("s") == null ? "" : site.addresses().of(text);
        String state = packed.isEmpty() ? "" : "&s=" + packed;
        String shown = Figures.plain(trace.atS() / 60);
        String open = "/rehearse/fault?fault=" + encoded(fault) + "&at=" + shown + (act.isEmpty() ? "" : "&act=" + encoded(act)) + state;
        String closed = "/rehearse/fault?q=" + Packed.of(fault + "\n" + shown + "\n" + act) + state;
        String here = hidden.isEmpty() ? open : closed;
        TreeSet<Double> steps = new TreeSet<>(STEPS_S.stream().filter(s -> s < endS).toList());
        trace.said().stream().filter(s -> s.tS() >= 0 && s.tS() < endS).forEach(s -> steps.add(Math.ceil(s.tS())));
        row.flatMap(Rehearsal::harm).filter(h -> h.afterS() < endS).ifPresent(h -> steps.add(Math.ceil(h.afterS())));
        steps.add(endS);
        Double next = steps.higher(tS + 0.01);
        Double back = steps.lower(tS - 0.01);
        String keep = truth && !hidden.isEmpty() ? "&show=1" : "";
        OneView view = new OneView(fault, shown, act, hidden, tS, truth, faults, row, trace, java.util.stream.Stream.of("wide", "narrow", "paper").map(look -> TracePicture.of(words, trace, tS, truth, look, AnswerView.width(look))).toList(),
                back == null ? "" : here + keep + "&t=" + Figures.plain(back), next == null ? "" : here + keep + "&t=" + Figures.plain(Math.rint(next * 10) / 10), here + keep, closed + "&show=1&t=" + Figures.plain(Math.rint(tS * 10) / 10),
                closed + "&t=0", said(words, trace, tS));
        Page page = site.page(ctx, "rehearse", truth ? words.name("fault", fault) : words.say("rehearse.what"), packed, here + keep + "&t=" + Figures.plain(Math.rint(tS * 10) / 10));
        Map<String, Object> with = new LinkedHashMap<>();
        with.put("page", page);
        with.put("v", view);
        site.render(ctx, 200, Site.partly(ctx) ? "part/fault.jte" : "fault.jte", with);
    }

    private static OptionalDouble number(String text, String what) {
        if (text.isEmpty()) return OptionalDouble.empty();
        if (!text.matches("[0-9]{1,5}(\\.[0-9]{1,6})?")) throw new Refused(422, "error.number2", what);
        return OptionalDouble.of(Double.parseDouble(text));
    }

    private static List<String> said(Words words, Trace trace, double untilS) {
        List<String> out = new ArrayList<>();
        for (Trace.Said s : trace.said()) {
            if (s.tS() < 0 || s.tS() > untilS) continue;
            out.add(words.say("trace.said." + s.what().name().toLowerCase(java.util.Locale.ROOT), TracePicture.clock(s.tS()), words.name("alarm", s.limit().condition().words()),
                    words.say(s.limit().from().words().equals("monitor") ? "trace.monitor" : "trace.ventilator"), words.name("priority", s.limit().priority().name().toLowerCase(java.util.Locale.ROOT))));
        }
        return out;
    }
}
