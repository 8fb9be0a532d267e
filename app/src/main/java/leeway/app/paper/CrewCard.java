package leeway.app.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import leeway.app.report.Figures;
import leeway.app.report.Html;
import leeway.app.report.Language;
import leeway.app.report.PlanText;
import leeway.core.alarm.AlarmLimit.From;
import leeway.core.kit.Setting;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.settings.Suggested.Because;
import leeway.core.supply.SupplyResult.Handover;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.OxygenLeg;

/**
 * The crew's card: what to set in the device's own words, what to expect, what each gauge should show and when to turn to
 * another cylinder, the limits, and what to do about what an alarm does not cover. One page, a second where the kit is large.
 * <p>Leaves out reasons, sources and everything that the report explains.
 */
public final class CrewCard {
    /** So many faults fit beside the rest: all uncovered ones first, then those with the least margin. */
    private static final int FAULTS = 8;
    private static final List<String> EXPECTED = List.of("expired tidal volume", "minute volume", "peak pressure", "plateau", "auto-PEEP", "end-tidal CO2", "SpO2");

    private final Plan plan;
    private final Map<String, String> called;
    private final Html html = new Html();

    private CrewCard(Plan plan, Map<String, String> called) {
        this.plan = plan;
        this.called = called;
    }

    /**
     * Writes the card as PDF.
     *
     * @param called what the device calls its settings, as its sheet says
     */
    public static void write(Plan plan, Map<String, String> called, String version, Language language, OutputStream out) throws IOException { write(plan, called, version, language, out, () -> false); }

    /** The same; stops with {@link leeway.core.run.Stopped} soon after it is told to be unwanted. */
    public static void write(Plan plan, Map<String, String> called, String version, Language language, OutputStream out, BooleanSupplier unwanted) throws IOException {
        Paper.write(of(plan, called, version), "", language.keepingNamesOf(plan), out, unwanted);
    }

    /** The card before it is laid out. */
    static String of(Plan plan, Map<String, String> called, String version) { return new CrewCard(plan, called).page(version); }

    private String page(String version) {
        html.raw("<!doctype html><html lang=\"en\"><head><title>").text("Crew's card: " + plan.title()).raw("</title><meta name=\"description\" content=\"").text(PlanText.CAUTION)
                .raw("\"></head><body class=\"card\"><header><h1>").text(plan.title()).raw("</h1><p>").text(plan.patient().summary()).raw("</p><p>").text(plan.patient().kit())
                .raw("</p><p class=\"caution\">").text("The maker's instructions, local protocols and licensed clinicians come first.").raw("</p></header>");
        answer();
        html.raw("<table class=\"columns\"><tbody><tr><td>");
        settings();
        html.raw("</td><td class=\"right\">");
        expected();
        html.raw("</td></tr></tbody></table>");
        oxygen();
        html.raw("<h2>Before leaving</h2><p>Function check done, cylinders open and read, hand bag with mask and its oxygen within reach, suction works, tube depth ______ cm, cuff ______ cmH2O.</p>"
                + "<p>Checked by ____________________ at ______ on ______________</p>");
        faults();
        limits();
        html.raw("<footer><p>").text("Leeway " + version + ", seed " + plan.seed() + ", file " + plan.sourceHash().substring(0, 16)
                + ". Figures of a model at its medians; bands: 9 of 10 such patients.").raw("</p></footer></body></html>");
        return html.toString();
    }

    private void answer() {
        html.raw("<div class=\"answer\"><div><strong class=\"" + (plan.verdict().holds() ? "go" : "no") + "\">").text(plan.verdict().holds() ? "Holds" : "Does not hold").raw("</strong><small>")
                .text(plan.verdict().holds() ? count(plan.verdict().remarks().size()) : String.join(" ", plan.verdict().reasons())).raw("</small></div>");
        Figures.leastMargin(plan).ifPresent(m -> figure(m[0], m[1]));
        Oxygen o = plan.supply().oxygen();
        Figures.left(o).ifPresent(l -> figure(l[0], l[1]));
        o.take().ifPresent(t -> figure(Figures.items(t), "the smallest kit that is enough, " + Figures.n(t.massKg(), 1) + " kg"));
        html.raw("</div>");
        if (!plan.verdict().remarks().isEmpty()) html.list("", plan.verdict().remarks());
    }

    private static String count(int remarks) { return remarks == 0 ? "without remarks" : remarks == 1 ? "with a remark" : "with " + remarks + " remarks"; }

    private void figure(String figure, String words) { html.raw("<div><strong>").text(figure).raw("</strong><small>").text(words).raw("</small></div>"); }

    private void settings() {
        List<List<String>> rows = new ArrayList<>();
        for (List<String> r : Figures.settings(plan)) rows.add(List.of(r.get(0) + named(r.get(0), r.get(1)), r.get(1)));
        if (rows.isEmpty()) return;
        html.heading("set", "Set", "strategy: " + plan.suggested().strategy()).raw("<div class=\"set\">").table("", List.of(), "tk", rows).raw("</div>");
    }

    /** What the device calls a setting, where that is another word. */
    private String named(String setting, String value) {
        Optional<Because> because = plan.suggested().because().stream().filter(b -> b.setting().equalsIgnoreCase(setting)).findFirst();
        String key = setting.equals("mode") ? value : because.flatMap(b -> Setting.ofWords(b.setting())).map(Setting::words).orElse(setting);
        return called.containsKey(key) ? " (\"" + called.get(key) + "\")" : "";
    }

    private void expected() {
        if (plan.expected().isEmpty()) return;
        html.heading("expect", "Expect", "first leg").table("", List.of(), "tkw", Figures.expectedInShort(plan).stream().filter(r -> EXPECTED.contains(r.get(0))).toList());
        List<List<String>> rows = new ArrayList<>();
        plan.byLeg().stream().skip(1).forEach(l -> rows.add(List.of(l.leg(), Figures.or(l.expected().plateauCmH2O(), 0, ""), Figures.or(l.expected().etco2MmHg(), 0, ""),
                l.expected().spo2().isPresent() ? Figures.percent(l.expected().spo2().getAsDouble()) : "")));
        if (!rows.isEmpty()) html.table("At the end of", List.of("leg", "plateau, cmH2O", "etCO2, mmHg", "SpO2"), "tnnn", rows);
    }

    private void oxygen() {
        Oxygen o = plan.supply().oxygen();
        html.heading("oxygen", "Oxygen on the way", "bar: at the median, and at least in 19 of 20 journeys");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < o.byLeg().size(); i++) {
            OxygenLeg l = o.byLeg().get(i);
            List<Handover> ends = o.handovers().stream().filter(h -> h.leg().equals(l.leg())).toList();
            rows.add(List.of(l.leg(), Figures.minutes(plan.legs().get(i).endMin() - plan.legs().get(i).startMin()) + ", at worst " + Figures.minutes(plan.legs().get(i).worstMin()),
                    String.join(", then ", l.from()), Figures.n(l.drawLPerMin(), 1), String.join("; ", ends.stream().map(h -> h.store() + " " + Figures.n(h.gaugeBar(), 0) + ", at least " + Figures.n(h.gaugeLowBar(), 0)).toList())));
        }
        html.table("", List.of("leg", "takes", "from", "L/min", "gauge at its end, bar"), "twtnt", rows);
        List<String> words = new ArrayList<>(o.changeovers().stream().map(PlanText::changeover).toList());
        o.turnBackByMin().ifPresent(m -> words.add("Turn back no later than " + Figures.minutesAtLeast(m) + " from departure: after that the way back is not supplied."));
        List<String> lost = Figures.losses(o, plan.supply().power(), plan.legs().get(plan.legs().size() - 1).endMin()).stream()
                .filter(r -> !r.get(0).startsWith("turn back")).map(r -> r.get(0) + " " + r.get(1)).toList();
        if (!lost.isEmpty()) words.add("Lasts from departure: " + String.join("; ", lost) + ".");
        html.list("", words);
    }

    private void faults() {
        List<Rehearsal> rows = plan.rehearsals().stream().filter(r -> r.harm().isPresent()).limit(FAULTS).toList();
        if (rows.isEmpty()) return;
        html.raw("<div class=\"whole first\">").heading("faults", "What goes wrong first", Figures.uncovered(plan.rehearsals())).table("Local protocol comes first; times from the fault", List.of("fault", "first sign", "alarm", "act by", "do"), "twwkt",
                rows.stream().map(r -> List.of(r.fault().name(), r.fault().firstSign(), r.alarm().map(a -> Figures.seconds(a.afterS()) + ": " + a.condition().words()).orElse("none"),
                        Figures.seconds(r.rescueByS().orElse(0)), String.join(" ", r.fault().steps().stream().limit(3).toList()))).toList()).raw("</div>");
    }

    private void limits() {
        List<List<String>> rows = Figures.alarms(plan.alarmLimits()).stream().filter(r -> r.get(1).matches(".*(high|low|after).*")).toList();
        if (rows.isEmpty()) return;
        int half = (rows.size() + 1) / 2;
        html.heading("limits", "Alarm limits", plan.alarmLimits().stream().allMatch(l -> l.from() == From.MONITOR) ? "the monitor's" : "").raw("<table class=\"columns\"><tbody><tr><td>").table("", List.of(), "tkw", rows.subList(0, half).stream().map(r -> List.of(r.get(0), r.get(1), r.get(4))).toList())
                .raw("</td><td class=\"right\">").table("", List.of(), "tkw", rows.subList(half, rows.size()).stream().map(r -> List.of(r.get(0), r.get(1), r.get(4))).toList()).raw("</td></tr></tbody></table>");
    }
}
