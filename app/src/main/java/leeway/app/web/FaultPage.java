package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Stream;
import leeway.app.report.Figures;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Trace;

/**
 * One fault along its time, to be stepped through: with the truth, or as a lesson that hides it until the class has decided.
 * All that a lesson has come to stands in its address: the fault (packed, not to be read), the moment, the hands, the decision.
 */
public final class FaultPage {
    private static final double BEFORE_S = 30;
    private static final double LONGEST_S = 1_800;
    private static final List<Double> STEPS_S = List.of(0.0, 5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0, 180.0, 240.0, 300.0, 420.0, 600.0, 900.0, 1200.0, 1800.0);
    private static final int MOST_HANDS = 999;
    private final Site site;
    private final Answers answers;
    private final JourneyPage journey;

    FaultPage(Site site, Answers answers, JourneyPage journey) {
        this.site = site;
        this.answers = answers;
        this.journey = journey;
    }

    void routes(RoutesConfig routes) { routes.get("/rehearse/fault", this::show); }

    /**
     * What an address asks for.
     *
     * @param q       the fault, its moment and the crew's act packed; empty where they may be seen
     * @param tS      up to this time after the fault
     * @param show    whether a lesson's truth was revealed
     * @param hands   of the class, one number for each choice; empty before they were counted
     * @param decided when the class decided, after the fault
     */
    private record Asked(String fault, String at, String act, String q, OptionalDouble tS, boolean show, List<Integer> hands, OptionalDouble decided) {
        static Asked of(Context ctx, Words words) {
            String q = Optional.ofNullable(ctx.queryParam("q")).orElse("");
            String[] secret = Packed.open(q).orElse("").split("\n", -1);
            boolean hidden = secret.length == 3;
            List<String> decided = ctx.queryParams("d");
            return new Asked(hidden ? secret[0] : text(ctx, "fault"), hidden ? secret[1] : text(ctx, "at"), hidden ? secret[2] : text(ctx, "act"), hidden ? q : "", number(text(ctx, "t"), "t"), "1".equals(ctx.queryParam("show")),
                    ctx.queryParams("v").stream().limit(Choices.MOST).map(v -> v.matches("\\d{1,3}") ? Math.min(MOST_HANDS, Integer.parseInt(v)) : 0).toList(),
                    decided.isEmpty() ? OptionalDouble.empty() : number(decided.get(decided.size() - 1), words.say("lesson.decided")));
        }

        private static String text(Context ctx, String name) { return Optional.ofNullable(ctx.queryParam(name)).orElse("").strip(); }

        private static OptionalDouble number(String text, String what) {
            if (text.isEmpty()) return OptionalDouble.empty();
            if (!text.matches("[0-9]{1,5}(\\.[0-9]{1,6})?")) throw new Refused(422, "error.number2", what);
            return OptionalDouble.of(Double.parseDouble(text));
        }

        OptionalDouble atMin(Words words) { return number(at, words.say("rehearse.at")); }

        OptionalDouble actS(Words words) { return number(act, words.say("rehearse.act")); }

        boolean truth() { return q.isEmpty() || show; }
    }

    /** A fault that the class can hold for it. */
    public record Choice(String fault, int hands, int share, boolean right) { }

    /** A figure at this moment: what is true, and what each device shows; empty where it shows nothing. */
    public record Reading(String what, String unit, String truth, String ventilator, String monitor) { }

    /** The same fault with the remedy at another moment. */
    public record Instead(String when, String open) { }

    /**
     * @param row      how it is judged; absent where it cannot happen with this kit
     * @param hidden   a lesson
     * @param truth    whether what is true may be seen
     * @param said     alarms until now, a line each
     * @param heard    what is new since the step before, to be read out
     * @param keep     what the form of the class sends along
     * @param readings at this moment
     */
    public record View(String fault, String at, String act, boolean hidden, boolean truth, double tS, List<String> faults, Optional<Rehearsal> row, Plan plan, String leg, List<String> pictures, String back, String next, String end,
                       String hide, List<Alarms.Line> said, String heard, List<Choice> choices, boolean counted, OptionalDouble decidedS, Map<String, String> keep, List<Reading> readings, List<Instead> instead) {
        public String seconds(double s) { return Figures.seconds(s); }

        public String clock() { return TracePicture.clock(tS); }

        public String clock(double s) { return TracePicture.clock(s); }

        public String plain(double v) { return Figures.plain(v); }

        /** From the decision until the remedy has to be in place; absent without a decision, or where nothing has to be prevented. */
        public OptionalDouble leftS() { return decidedS.isPresent() && row.isPresent() && row.get().rescueByS().isPresent() ? OptionalDouble.of(row.get().rescueByS().getAsDouble() - decidedS.getAsDouble()) : OptionalDouble.empty(); }

        /** Setting and value, those that a class asks for. */
        public List<List<String>> settings() { return Figures.settings(plan).stream().filter(r -> List.of("mode", "tidal volume", "rate", "PEEP", "FiO2").contains(r.get(0))).map(r -> r.subList(0, 2)).toList(); }
    }

    private void show(Context ctx) {
        String text = journey.state(ctx);
        Words words = site.words(ctx);
        Asked asked = Asked.of(ctx, words);
        String fault = asked.fault();
        List<String> faults = answers.names("fault");
        if (!faults.contains(fault)) throw new Refused(404, "error.noFault", fault.length() > 60 ? fault.substring(0, 60) : fault);
        OptionalDouble atMin = asked.atMin(words);
        OptionalDouble actS = asked.actS(words);
        Plan plan = RehearsalPage.good(journey.plan(ctx, text));
        Answers.Traced traced = RehearsalPage.good(site.answer(ctx, "trace", fault + "\n" + atMin + "\n" + actS + "\n" + text, hands -> answers.trace(text, fault, atMin, actS, BEFORE_S, LONGEST_S, hands)));
        Trace trace = traced.trace();
        Optional<Rehearsal> row = traced.row();
        double endS = trace.rows().isEmpty() ? 0 : trace.rows().get(trace.rows().size() - 1).tS();
        double tS = Math.max(0, Math.min(endS, asked.tS().orElse(endS)));
        boolean truth = asked.truth();
        String packed = ctx.queryParam("s") == null ? "" : site.addresses().of(text);
        String state = packed.isEmpty() ? "" : "&s=" + packed;
        String shown = Figures.plain(trace.atS() / 60);
        String open = "/rehearse/fault?fault=" + RehearsalPage.encoded(fault) + "&at=" + shown + state;
        String q = Packed.of(fault + "\n" + shown + "\n" + asked.act());
        StringBuilder here = new StringBuilder(asked.q().isEmpty() ? open + (asked.act().isEmpty() ? "" : "&act=" + RehearsalPage.encoded(asked.act())) : "/rehearse/fault?q=" + q + state);
        if (!asked.q().isEmpty() && asked.show()) here.append("&show=1");
        asked.hands().forEach(h -> here.append("&v=").append(h));
        asked.decided().ifPresent(d -> here.append("&d=").append(Figures.plain(d)));
        TreeSet<Double> steps = new TreeSet<>(STEPS_S.stream().filter(s -> s < endS).toList());
        trace.said().stream().filter(s -> s.tS() >= 0 && s.tS() < endS).forEach(s -> steps.add(Math.ceil(s.tS())));
        row.flatMap(Rehearsal::harm).filter(h -> h.afterS() < endS).ifPresent(h -> steps.add(Math.ceil(h.afterS())));
        steps.add(endS);
        Double next = steps.higher(tS + 0.01);
        Double back = steps.lower(tS - 0.01);
        Map<String, String> keep = new LinkedHashMap<>();
        if (!packed.isEmpty()) keep.put("s", packed);
        keep.put("q", q);
        keep.put("t", plain(tS));
        List<Alarms.Line> said = Alarms.until(words, trace, tS);
        List<Reading> readings = readings(words, trace, tS, truth);
        View view = new View(fault, shown, asked.act(), !asked.q().isEmpty(), truth, tS, faults, row, plan, trace.leg(), Stream.of("wide", "narrow", "paper").map(look -> TracePicture.of(words, trace, tS, truth, row, look, AnswerView.width(look))).toList(),
                back == null ? "" : here + "&t=" + Figures.plain(back), next == null ? "" : here + "&t=" + plain(next), here.toString(), "/rehearse/fault?q=" + q + state + "&t=0",
                said, heard(words, said, readings, back == null ? Double.NEGATIVE_INFINITY : back, tS), Choices.of(plan, fault, asked.hands()), asked.hands().stream().anyMatch(h -> h > 0), asked.decided(), keep, readings,
                truth && asked.act().isEmpty() ? instead(words, row, asked.decided(), open) : List.of());
        Page page = site.page(ctx, "rehearse", truth ? words.name("fault", fault) : words.say("rehearse.what"), packed, here + "&t=" + plain(tS));
        site.render(ctx, 200, Site.partly(ctx) ? "part/fault.jte" : "fault.jte", Map.of("page", page, "v", view));
    }

    private static String plain(double s) { return Figures.plain(Math.rint(s * 10) / 10); }

    private static List<Instead> instead(Words words, Optional<Rehearsal> row, OptionalDouble decidedS, String open) {
        List<Instead> out = new ArrayList<>();
        decidedS.ifPresent(d -> out.add(new Instead(words.say("lesson.atDecision", TracePicture.clock(d)), open + "&act=" + plain(d))));
        row.ifPresent(r -> {
            r.alarm().ifPresent(a -> out.add(new Instead(words.say("lesson.afterAlarm", TracePicture.clock(a.afterS() + r.crewTimeS())), open + "&act=" + plain(a.afterS() + r.crewTimeS()))));
            r.rescueByS().ifPresent(by -> out.add(new Instead(words.say("lesson.atLatest", TracePicture.clock(by)), open + "&act=" + Figures.plain(Math.floor(by)))));
        });
        return out;
    }

    private static String heard(Words words, List<Alarms.Line> said, List<Reading> readings, double sinceS, double tS) {
        List<String> out = new ArrayList<>(List.of(words.say("rehearse.happened", TracePicture.clock(tS)) + "."));
        said.stream().filter(l -> l.changedS() > sinceS).forEach(l -> out.add(l.text() + "."));
        for (Reading r : readings) {
            if (!r.ventilator().isEmpty()) out.add(words.say("lesson.reads", words.say("trace.ventilator"), r.what(), r.ventilator(), r.unit()));
            if (!r.monitor().isEmpty()) out.add(words.say("lesson.reads", words.say("trace.monitor"), r.what(), r.monitor(), r.unit()));
        }
        return String.join(" ", out);
    }

    private static List<Reading> readings(Words words, Trace trace, double tS, boolean truth) {
        Optional<Trace.Row> found = trace.rows().stream().filter(r -> r.tS() <= tS).max(Comparator.comparingDouble(Trace.Row::tS));
        if (found.isEmpty()) return List.of();
        Trace.Row r = found.get();
        return Stream.of(reading(words.say("trace.saturation"), "%", truth, r.sao2() * 100, r.ventilator().spo2() * 100, r.monitor().spo2() * 100),
                        reading(words.say("trace.co2"), "mmHg", truth, r.paco2MmHg(), r.ventilator().etco2MmHg(), r.monitor().etco2MmHg()),
                        reading(words.say("trace.volume"), "mL", truth, r.expiredMl(), r.ventilator().expiredMl(), r.monitor().expiredMl()),
                        reading(words.say("trace.peak"), "cmH2O", truth, r.peakCmH2O(), r.ventilator().peakCmH2O(), r.monitor().peakCmH2O()))
                .filter(v -> !(v.truth() + v.ventilator() + v.monitor()).isEmpty()).toList();
    }

    private static Reading reading(String what, String unit, boolean truth, double real, double ventilator, double monitor) {
        return new Reading(what, unit, truth ? figure(real) : "", figure(ventilator), figure(monitor));
    }

    private static String figure(double v) { return Double.isFinite(v) ? Figures.n(v, 0) : ""; }
}
