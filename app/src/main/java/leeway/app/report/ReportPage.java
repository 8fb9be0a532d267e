package leeway.app.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import leeway.app.report.JourneyPicture.Run;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.OxygenStore;
import leeway.core.supply.SupplyResult.Take;
import leeway.core.supply.WallTable;

/** A plan as one HTML file that needs nothing beside it: styles, font and pictures are inside; light, dark, paper. */
public final class ReportPage {
    private static final int WIDE = 1000;
    private static final int NARROW = 340;
    /** Between the margins of an A4 page at 96 pixels an inch, so that letters keep their size in print. */
    static final int PAPER = 680;

    private final Plan plan;
    private final Html html = new Html();

    private final Optional<OperatingMap> map;

    private ReportPage(Plan plan, Optional<OperatingMap> map) {
        this.plan = plan;
        this.map = map;
    }

    /** The whole file; without a map it says that nothing is set that ventilates. */
    public static String of(Plan plan, Optional<OperatingMap> map, String version) { return new ReportPage(plan, map).page(version); }

    /** The styles that pictures need, wherever they stand. */
    public static String pictureRules() { return new String(resource("report.css"), StandardCharsets.UTF_8) + MapPicture.rules() + TornadoPicture.rules(); }

    private String page(String version) {
        html.raw("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>").text(plan.title())
                .raw("</title><style>\n").raw(font("text.woff2", 400)).raw(font("text-bold.woff2", 700)).raw(new String(resource("report.css"), StandardCharsets.UTF_8))
                .raw(MapPicture.rules()).raw(TornadoPicture.rules()).raw("</style></head><body><a class=\"skip\" href=\"#answer\">To the answer</a>\n<header><div><h1>").text(plan.title()).raw("</h1><p>").text(plan.patient().summary()).raw("</p><p>")
                .text(plan.patient().kit()).raw("</p><p class=\"caution\">").text(PlanText.CAUTION).raw("</p></div></header>\n<main>");
        answer();
        journey();
        speaks();
        settings();
        map.ifPresentOrElse(m -> MapSection.write(m, html), () -> MapSection.none(html));
        supply();
        alarms();
        gases();
        breath();
        after();
        wall();
        html.raw("</main>\n<footer><p>A planning and teaching aid, not a medical device; nothing here is an order. The maker's instructions, local protocols and licensed clinicians come first.</p><p>")
                .text("Leeway " + version + ", seed " + plan.seed() + ", file " + plan.sourceHash()).raw("</p></footer></body></html>\n");
        return html.toString();
    }

    private static String font(String file, int weight) {
        return "@font-face{font-family:\"Atkinson Hyperlegible\";font-weight:" + weight + ";font-display:swap;src:url(data:font/woff2;base64," + Base64.getEncoder().encodeToString(resource(file)) + ") format(\"woff2\")}\n";
    }

    private static byte[] resource(String name) {
        try (InputStream in = ReportPage.class.getResourceAsStream(name)) {
            if (in == null) throw new IllegalStateException("the program lacks its file " + name);
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void answer() {
        String word = plan.verdict().word();
        int remarks = plan.verdict().remarks().size();
        html.raw("<section id=\"answer\" aria-label=\"The answer\"><div class=\"answer\"><div><strong class=\"" + (plan.verdict().holds() ? "go" : "no") + "\">")
                .text(plan.verdict().holds() ? "Holds" : "Does not hold").raw("</strong>");
        if (!plan.verdict().holds()) html.text(plan.verdict().reasons().size() == 1 ? plan.verdict().reasons().get(0) : "for " + plan.verdict().reasons().size() + " reasons, below");
        else html.text(remarks == 0 ? "without remarks" : remarks == 1 ? "with a remark: " + plan.verdict().remarks().get(0) : "with " + remarks + " remarks, below");
        html.raw("</div>");
        Oxygen o = plan.supply().oxygen();
        Figures.leastMargin(plan).ifPresent(m -> figure(m[0], m[1]));
        String chances = "; chance that it ends before a leg does: " + Figures.chance(o.emptyChance()) + plan.supply().power().map(p -> "; the charge: " + Figures.chance(p.emptyChance())).orElse("");
        Figures.left(o).ifPresentOrElse(l -> figure(l[0], l[1] + chances), () -> figure(Figures.chance(o.emptyChance()), "chance that oxygen ends before a leg does"));
        o.take().ifPresent(this::take);
        html.raw("</div></section>\n");
        if (!plan.verdict().reasons().isEmpty()) html.heading("why", "Why it does not hold", "").list("reasons", plan.verdict().reasons());
        if (remarks > 0) html.heading("remarks", "Remarks", "").list("", plan.verdict().remarks());
        if (word.isEmpty()) throw new AssertionError("a plan without a word");
    }

    private void take(Take t) { figure(Figures.items(t), "the smallest kit that is enough, " + Figures.n(t.massKg(), 1) + " kg"); }

    private void figure(String figure, String words) { html.raw("<div><strong>").text(figure).raw("</strong><small>").text(words).raw("</small></div>"); }

    private void journey() {
        List<Run> runs = PlanPictures.runs(plan);
        Oxygen o = plan.supply().oxygen();
        if (runs.isEmpty()) return;
        html.heading("journey", "The journey", "bands: 19 of 20 journeys; dashed: the reserve").raw("<figure>")
                .raw(PlanPictures.journey(plan, "wide", WIDE)).raw(PlanPictures.journey(plan, "narrow", NARROW)).raw(PlanPictures.journey(plan, "paper", PAPER)).raw("</figure>");
        html.list("", o.changeovers().stream().map(PlanText::changeover).toList());
        html.table("Gauge to expect where a leg ends, at the median, and in 19 of 20 journeys at least", List.of("leg", "cylinder", "bar", "at least"), "ttnn", Figures.handovers(o));
        html.folded("The legs and the stores in numbers", () -> {
            html.table("Legs; minutes from departure, at the medians", List.of("leg", "from", "to", "at worst takes"), "tnnn", plan.legs().stream()
                    .map(l -> List.of(l.leg(), JourneyPicture.clock(l.startMin()), JourneyPicture.clock(l.endMin()), Figures.minutes(l.worstMin()))).toList());
            List<List<String>> rows = new ArrayList<>();
            for (Run r : runs) {
                int end = r.mid().length - 1;
                rows.add(List.of(r.name(), Figures.n(r.mid()[0], 0), Figures.n(r.mid()[end], 0), Figures.n(r.low()[end], 0), r.unit()));
            }
            html.table("What each holds", List.of("store", "at departure", "at the end", "19 of 20 at least", "unit"), "tnnnt", rows);
        });
    }

    private void speaks() {
        String wide = SpeaksFirst.svg("wide", WIDE, plan.rehearsals());
        if (wide.isEmpty()) return;
        html.heading("speaks", "Who speaks first", Figures.uncovered(plan.rehearsals())).raw("<figure>").raw(wide).raw(SpeaksFirst.svg("narrow", NARROW, plan.rehearsals())).raw(SpeaksFirst.svg("paper", PAPER, plan.rehearsals())).raw("</figure>")
                .element("p", "Triangle: the alarm. Dotted: the crew at work. Blue bar: room left. Red bar: what is missing. Open diamond: harm. Fine red dots: no alarm speaks.");
        plan.suppliesEndMin().ifPresent(m -> html.element("p", RehearsalText.endsByItself(m * 60)));
        html.raw("<div class=\"faults\">").folded("Every fault in words", () -> html.table("Faults at their worst moments; local protocol comes first", List.of("fault", "coverage", "margin", "why", "do"), "tkkww", plan.rehearsals().stream()
                .map(r -> List.of(r.fault().name(), r.coverage().words(), r.marginS().isPresent() ? Figures.seconds(r.marginS().getAsDouble()) : "", r.why(), String.join(" ", r.fault().steps()))).toList())).raw("</div>\n");
    }

    private void settings() {
        List<List<String>> set = Figures.settings(plan).stream().map(r -> List.of(r.get(0), r.get(1), r.get(2) + ": " + r.get(3))).toList();
        html.raw("<div class=\"two\"><section>");
        if (!set.isEmpty()) html.heading("settings", "Settings", "strategy: " + plan.suggested().strategy()).table("What to set, and why", List.of(), "tkw", set);
        html.raw("</section><section>");
        plan.expected().ifPresent(e -> html.heading("expect", "What to expect", "first leg").table("The steady state, and within what 9 of 10 such patients lie", List.of(), "tkww", Figures.expected(plan)));
        html.raw("</section></div>\n");
    }

    private void supply() {
        Oxygen o = plan.supply().oxygen();
        html.raw("<div class=\"two\"><section>").heading("oxygen", "Oxygen", "litres of free gas: 15 °C, 1013 hPa, dry");
        html.table("What each leg draws", List.of("leg", "L/min", "L", "from"), "tnnw", o.byLeg().stream()
                .map(l -> List.of(l.leg(), Figures.n(l.drawLPerMin(), l.drawLPerMin() < 10 ? 2 : 1), Figures.n(l.neededL(), 0), String.join(", then ", l.from()))).toList());
        List<List<String>> stores = new ArrayList<>();
        for (OxygenStore s : o.stores()) {
            stores.add(List.of((s.count() > 1 ? s.count() + " × " : "") + s.name(), s.usableL().isEmpty() ? "without end" : Figures.or(s.freeGasL(), 0, ""), Figures.or(s.usableL(), 0, ""),
                    s.emptyChance().isPresent() ? Figures.chance(s.emptyChance().getAsDouble()) : ""));
        }
        html.table("What the stores hold", List.of("store", "holds, L", "gives, L", "run down on the way"), "tnnw", stores);
        html.element("p", "Needed: " + Figures.n(o.neededL().p50(), 0) + " L at the median, " + Figures.n(o.neededL().p95(), 0) + " L in 19 of 20 journeys, " + Figures.n(o.neededL().p99(), 0) + " L in 99 of 100; the stores give " + Figures.n(o.usableL(), 0) + " L.");
        Figures.sure(o).forEach(text -> html.element("p", text));
        html.table("Kits that are enough, smallest first", List.of("items", "kg", "chance that it ends"), "tnw", Figures.kits(o));
        html.raw("</section><section>");
        html.heading("losses", "If something is lost", "");
        html.table("Time from departure until a leg is without", List.of(), "tkw", Figures.losses(o, plan.supply().power(), plan.legs().get(plan.legs().size() - 1).endMin()));
        plan.supply().power().ifPresent(p -> html.table("Charge", List.of("leg", "W", "Wh", "from"), "tnnw", p.byLeg().stream()
                .map(l -> List.of(l.leg(), Figures.n(l.loadW(), 1), Figures.n(l.neededWh(), 1), l.from())).toList()));
        if (!o.savings().isEmpty()) {
            html.table("What one change would save; whether the patient allows it is another question", List.of("change", "L at the median", "then ends before a leg does"), "tnw", Figures.savings(o));
        }
        plan.supply().power().flatMap(p -> p.take()).ifPresent(t -> html.element("p", t.items().isEmpty() ? "No spare pack is needed." : "Smallest spare: " + Figures.items(t) + ", " + Figures.n(t.massKg(), 1) + " kg."));
        html.raw("</section></div>\n");
        plan.supply().home().ifPresent(h -> html.heading("home", "Home again", Figures.minutes(h.atMin()) + " from departure, at medians").list("", Figures.home(h)));
    }

    /** Tables for the wall: on paper a page of their own. */
    private void wall() {
        List<WallTable> tables = plan.supply().oxygen().wall();
        if (tables.isEmpty()) return;
        html.raw("<section class=\"wall\">").heading("wall", "For the wall", "minutes by gauge and draw, rounded down");
        for (WallTable t : tables) {
            List<String> head = new ArrayList<>(List.of("bar (psi)"));
            t.drawLPerMin().forEach(q -> head.add(WallTable.plain(q) + " L/min"));
            List<List<String>> rows = new ArrayList<>();
            for (int i = 0; i < t.gaugeBar().size(); i++) {
                List<String> row = new ArrayList<>(List.of(WallTable.plain(t.gaugeBar().get(i)) + " (" + Figures.n(WallTable.psi(t.gaugeBar().get(i)), 0) + ")"));
                t.minutes().get(i).forEach(m -> row.add(String.valueOf(m)));
                rows.add(row);
            }
            html.table(t.of() + ", down to " + WallTable.plain(t.residualBar()) + " bar", head, "t" + "n".repeat(t.drawLPerMin().size()), rows);
        }
        html.raw("</section>\n");
    }

    private void alarms() {
        if (plan.alarmLimits().isEmpty()) return;
        html.heading("alarms", "Alarm limits", Figures.whoseLimits(plan));
        html.table("Limits and whose they are", List.of("condition", "limits", "after", "priority", "from", "rule"), "tkttww", withRules());
    }

    private List<List<String>> withRules() {
        List<List<String>> rows = new ArrayList<>();
        List<List<String>> plain = Figures.alarms(plan.alarmLimits());
        for (int i = 0; i < plain.size(); i++) {
            List<String> row = new ArrayList<>(plain.get(i));
            row.add(plan.alarmLimits().get(i).rule());
            rows.add(row);
        }
        return rows;
    }

    private void gases() {
        if (plan.course().isEmpty()) return;
        html.heading("gases", "The gases along the journey", "the line is the median patient; 9 of 10 lie in the band").raw("<figure class=\"on-paper\">").raw(PlanPictures.gases(plan, "wide", WIDE)).raw(PlanPictures.gases(plan, "narrow", NARROW)).raw(PlanPictures.gases(plan, "paper", PAPER)).raw("</figure>");
        html.folded("At each leg's end in numbers", () -> html.table("State at each leg's end", List.of("leg", "plateau, cmH2O", "PaCO2, mmHg", "etCO2, mmHg", "pH", "PaO2, mmHg", "SpO2"), "tnnnnnn", plan.byLeg().stream().map(l -> {
            var e = l.expected();
            return List.of(l.leg(), Figures.or(e.plateauCmH2O(), 0, ""), Figures.or(e.paco2MmHg(), 0, ""), Figures.or(e.etco2MmHg(), 0, ""), Figures.or(e.ph(), 2, ""), Figures.or(e.pao2MmHg(), 0, ""),
                    e.spo2().isPresent() ? Figures.percent(e.spo2().getAsDouble()) : "");
        }).toList()));
    }

    private void breath() {
        if (plan.breath().isEmpty()) return;
        html.heading("breath", "One breath", "first leg, at the Y-piece").raw("<figure class=\"on-paper breath-figure\">").raw(PlanPictures.breath(plan, "wide", 600)).raw(PlanPictures.breath(plan, "narrow", NARROW)).raw(PlanPictures.breath(plan, "paper", 560)).raw("</figure>\n");
    }

    private void after() {
        html.raw("<div class=\"two\"><section>").heading("turnaround", "Turnaround", "common practice, no source").list("", plan.turnaround());
        html.raw("</section><section>").heading("cautions", "Cautions", "").list("", plan.cautions()).raw("</section></div>\n");
        html.heading("assumed", "Assumed", "what the file does not say").list("", plan.assumed());
    }
}
