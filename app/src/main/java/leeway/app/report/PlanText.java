package leeway.app.report;

import java.util.ArrayList;
import java.util.List;
import leeway.app.report.TextPage.Tone;
import leeway.core.plan.Plan;
import leeway.core.supply.SupplyResult.Changeover;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.OxygenLeg;
import leeway.core.supply.SupplyResult.OxygenStore;
import leeway.core.supply.SupplyResult.Power;

/** A plan for a terminal of 80 columns: the answer, then why, then what to do and to expect. */
public final class PlanText {
    /** Stands at the top of every plan, on every medium, and in every text with figures that one might act on. */
    public static final String CAUTION = "A planning and teaching aid, not a medical device; nothing here is an order.";

    private PlanText() { }

    public static String of(Plan plan, int width, boolean colour) {
        TextPage page = new TextPage(width, colour);
        answer(page, plan);
        settings(page, plan);
        speaks(page, plan, width);
        alarms(page, plan);
        oxygen(page, plan);
        plan.supply().power().ifPresent(p -> power(page, p));
        plan.supply().home().ifPresent(h -> page.heading("Home again", Figures.minutes(h.atMin()) + " from departure, at medians").items(Figures.home(h)));
        page.heading("Turnaround", "common practice, no source").items(plan.turnaround());
        page.heading("Cautions", "").items(plan.cautions());
        page.heading("Assumed", "what the file does not say").items(plan.assumed());
        return page.toString();
    }

    private static void answer(TextPage page, Plan plan) {
        page.strong(Tone.STRONG, plan.title()).paragraph(plan.patient().summary()).paragraph(plan.patient().kit()).paragraph(CAUTION).blank();
        String word = plan.verdict().word();
        page.strong(plan.verdict().holds() ? Tone.GOOD : Tone.BAD, Character.toUpperCase(word.charAt(0)) + word.substring(1) + ".");
        List<List<String>> rows = new ArrayList<>();
        Oxygen o = plan.supply().oxygen();
        Figures.leastMargin(plan).ifPresent(m -> rows.add(List.of("margin", m[0], m[1])));
        Figures.left(o).ifPresent(l -> rows.add(List.of("left", l[0], l[1])));
        rows.add(List.of("chance", Figures.chance(o.emptyChance()), "that oxygen ends before a leg does"));
        plan.supply().power().ifPresent(p -> rows.add(List.of("", Figures.chance(p.emptyChance()), "that charge ends before a leg does")));
        o.take().ifPresent(t -> rows.add(List.of("take", Figures.n(t.massKg(), 1) + " kg", "smallest kit that is enough: " + Figures.items(t))));
        page.table(List.of(), rows);
        if (!plan.verdict().reasons().isEmpty()) page.heading("Why not", "").items(plan.verdict().reasons());
        if (!plan.verdict().remarks().isEmpty()) page.heading("Remarks", "").items(plan.verdict().remarks());
    }

    private static void settings(TextPage page, Plan plan) {
        List<List<String>> rows = Figures.settings(plan).stream().map(r -> List.of(r.get(0), r.get(1), r.get(2) + ": " + r.get(3))).toList();
        if (!rows.isEmpty()) page.heading("Settings", "strategy: " + plan.suggested().strategy()).table(List.of(), rows);
        plan.expected().ifPresent(e -> page.heading("What to expect", "first leg; 9 of 10 such patients").table(List.of(), Figures.expected(plan)));
        if (plan.byLeg().isEmpty()) return;
        page.heading("At each leg's end", "pressures cmH2O, gases mmHg");
        List<List<String>> legs = new ArrayList<>();
        for (Plan.AtLeg leg : plan.byLeg()) {
            var e = leg.expected();
            legs.add(List.of(leg.leg(), Figures.or(e.plateauCmH2O(), 0, ""), Figures.or(e.paco2MmHg(), 0, ""), Figures.or(e.etco2MmHg(), 0, ""), Figures.or(e.ph(), 2, ""),
                    Figures.or(e.pao2MmHg(), 0, ""), e.spo2().isPresent() ? Figures.percent(e.spo2().getAsDouble()) : ""));
        }
        page.table(List.of("leg", "plateau", "PaCO2", "etCO2", "pH", "PaO2", "SpO2"), legs);
    }

    private static void speaks(TextPage page, Plan plan, int width) {
        String picture = SpeaksFirst.text(plan.rehearsals(), width);
        if (picture.isEmpty()) return;
        page.heading("Who speaks first", Figures.uncovered(plan.rehearsals())).asItStands(picture + SpeaksFirst.LEGEND + "\n");
        plan.suppliesEndMin().ifPresent(m -> page.blank().paragraph(RehearsalText.endsByItself(m * 60)));
    }

    private static void alarms(TextPage page, Plan plan) {
        if (plan.alarmLimits().isEmpty()) return;
        page.heading("Alarm limits", Figures.whoseLimits(plan));
        page.table(List.of("condition", "limits", "after", "priority", "from"), Figures.alarms(plan.alarmLimits()));
    }

    private static void oxygen(TextPage page, Plan plan) {
        Oxygen o = plan.supply().oxygen();
        page.heading("Oxygen", "litres of free gas, 15 °C, 1013 hPa, dry");
        List<List<String>> legs = new ArrayList<>();
        for (OxygenLeg leg : o.byLeg()) legs.add(List.of(leg.leg(), Figures.n(leg.drawLPerMin(), leg.drawLPerMin() < 10 ? 2 : 1), Figures.n(leg.neededL(), 0), String.join(", then ", leg.from())));
        page.table(List.of("leg", "L/min", "L", "from"), legs).blank();
        List<List<String>> stores = new ArrayList<>();
        for (OxygenStore s : o.stores()) {
            stores.add(List.of((s.count() > 1 ? s.count() + " × " : "") + s.name(), Figures.or(s.freeGasL(), 0, ""), Figures.or(s.usableL(), 0, ""), s.emptyChance().isPresent() ? Figures.chance(s.emptyChance().getAsDouble()) : "", s.usableL().isEmpty() ? "without end" : ""));
        }
        page.table(List.of("store", "holds", "gives", "run down", ""), stores).blank();
        page.paragraph("Needed: " + Figures.n(o.neededL().p50(), 0) + " L at the median, " + Figures.n(o.neededL().p95(), 0) + " L in 19 of 20 journeys, " + Figures.n(o.neededL().p99(), 0) + " L in 99 of 100.");
        Figures.sure(o).forEach(page::paragraph);
        for (Changeover c : o.changeovers()) page.paragraph(changeover(c));
        if (!o.handovers().isEmpty()) page.heading("Gauge to expect", "where a leg ends, of the cylinder in use").table(List.of("leg", "cylinder", "bar", "19 of 20 at least"), Figures.handovers(o));
        List<List<String>> losses = Figures.losses(o, plan.supply().power(), plan.legs().get(plan.legs().size() - 1).endMin());
        if (!losses.isEmpty()) page.heading("If something is lost", "from departure until a leg is without").table(List.of(), losses);
        if (!o.savings().isEmpty()) page.heading("What one change would save", "each alone; whether the patient allows it is another question").table(List.of("change", "L", "then ends before a leg does"), Figures.savings(o));
        if (!o.nextBest().isEmpty()) page.heading("Kits that are enough", "smallest first").table(List.of("items", "kg", "chance that it ends"), Figures.kits(o));
    }

    /** "Change over from portable to its next cylinder at about 12 min, at a gauge of 62 bar." */
    public static String changeover(Changeover c) {
        return "Change over from " + c.store() + (c.to().equals(c.store()) ? " to its next cylinder" : " to " + c.to()) + " about " + Figures.minutes(c.aboutMin()) + " from departure"
                + (c.atGaugeBar().isPresent() ? ", at a gauge of " + Figures.n(c.atGaugeBar().getAsDouble(), 0) + " bar" : "") + (c.handBag() ? "; ventilate by hand meanwhile" : "") + ".";
    }

    private static void power(TextPage page, Power p) {
        page.heading("Charge", "");
        List<List<String>> legs = new ArrayList<>();
        for (var leg : p.byLeg()) legs.add(List.of(leg.leg(), Figures.n(leg.loadW(), 1), Figures.n(leg.neededWh(), 1), leg.from()));
        page.table(List.of("leg", "W", "Wh", "from"), legs).blank();
        for (var s : p.stores()) page.paragraph(s.name() + ": " + Figures.n(s.capacityWh(), 0) + " Wh when full at its age, " + Figures.n(s.usableWh(), 0) + " Wh from what it shows, in the coldest leg on it.");
        p.take().ifPresent(t -> page.paragraph(t.items().isEmpty() ? "No spare pack is needed." : "Smallest spare: " + Figures.items(t) + ", " + Figures.n(t.massKg(), 1) + " kg."));
    }
}
