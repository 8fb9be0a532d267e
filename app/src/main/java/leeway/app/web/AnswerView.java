package leeway.app.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import leeway.app.command.Version;
import leeway.app.report.Figures;
import leeway.app.report.PlanPictures;
import leeway.app.report.PlanText;
import leeway.core.plan.Plan;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.supply.SupplyResult;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.OxygenStore;
import leeway.core.supply.WallTable;

/** A plan as the journey page shows it: figures already as text, pictures already as SVG. */
public record AnswerView(Plan plan) {
    static final int WIDE = 1000;
    static final int NARROW = 340;
    /** Between the margins of an A4 page, at 96 pixels an inch. */
    static final int PAPER = 680;

    /** A figure of the answer: the figure, and the key and figures of the sentence that says what it is. */
    public record Big(String figure, String key, List<String> with) { }

    public boolean holds() { return plan.verdict().holds(); }

    /** The least margin that an alarm can change, and how much is uncovered; where no alarm comes before any harm, only how much; absent where nothing can harm. */
    public Optional<Margin> margin() {
        long harmful = plan.rehearsals().stream().filter(r -> r.harm().isPresent()).count();
        long uncovered = plan.rehearsals().stream().filter(r -> r.coverage().uncovered()).count();
        Optional<Rehearsal> least = Figures.least(plan.rehearsals());
        if (harmful == 0) return Optional.empty();
        return Optional.of(new Margin(least.map(r -> Figures.seconds(r.marginS().getAsDouble())).orElse(""), least.map(r -> r.fault().name()).orElse(""), uncovered, harmful));
    }

    /** @param figure empty where no alarm comes before any harm */
    public record Margin(String figure, String fault, long uncovered, long harmful) { }

    /** What the last leg's stores still hold where the journey ends, at medians; absent where they are endless. */
    public Optional<String> atTheEnd() { return oxygen().leftAtEndMin().isPresent() ? Optional.of(Figures.minutesAtLeast(oxygen().leftAtEndMin().getAsDouble())) : Optional.empty(); }

    /** Minutes left in the leg with the least; absent where the stores have no end. */
    public Optional<Big> left() {
        return oxygen().marginMin().map(m -> m.p05() >= 0 ? new Big(Figures.minutesAtLeast(m.p05()), "answer.left", List.of(Figures.minutesAtLeast(m.p50())))
                : new Big(Figures.minutes(-m.p05()), m.p50() >= 0 ? "answer.short" : "answer.shortBoth", List.of(m.p50() >= 0 ? Figures.minutesAtLeast(m.p50()) : Figures.minutes(-m.p50()))));
    }

    public String oxygenChance() { return Figures.chance(oxygen().emptyChance()); }

    public Optional<String> powerChance() { return plan.supply().power().map(p -> Figures.chance(p.emptyChance())); }

    public Optional<Big> take() { return oxygen().take().map(t -> new Big(Figures.items(t), "answer.take", List.of(Figures.n(t.massKg(), 1)))); }

    public Oxygen oxygen() { return plan.supply().oxygen(); }

    /** @param look wide, narrow, paper */
    public String journey(String look) { return PlanPictures.journey(plan, look, width(look)); }

    /** @param look wide, narrow */
    public String gases(String look) { return PlanPictures.gases(plan, look, width(look)); }

    /** Pixels of a picture, at which its letters have their own size. */
    static int width(String look) { return look.equals("wide") ? WIDE : look.equals("narrow") ? NARROW : PAPER; }

    /** Who speaks first. */
    public RehearsalPage.AllView speaks(String state) { return new RehearsalPage.AllView(plan.title(), plan.rehearsals(), List.of(), state); }

    public String breath() { return PlanPictures.breath(plan, 560); }

    public List<String> changeovers() { return oxygen().changeovers().stream().map(PlanText::changeover).toList(); }

    /** Setting, value, who wanted it so and why. */
    public List<List<String>> settings() {
        return Figures.settings(plan).stream().map(r -> List.of(r.get(0), r.get(1), r.get(3).startsWith(r.get(2)) ? r.get(3) : r.get(2) + ": " + r.get(3))).toList();
    }

    /** Name, value, remark. */
    public List<List<String>> expected() { return plan.expected().isPresent() ? Figures.expectedInShort(plan) : List.of(); }

    /** Condition, limits, after, priority, from. */
    public List<List<String>> alarms() { return Figures.alarms(plan.alarmLimits()); }

    public List<List<String>> draws() {
        return oxygen().byLeg().stream().map(l -> List.of(l.leg(), Figures.n(l.drawLPerMin(), l.drawLPerMin() < 10 ? 2 : 1), Figures.n(l.neededL(), 0), String.join(", ", l.from()))).toList();
    }

    /** Store, holds, gives, run down on the way; a store without end holds nothing. */
    public List<List<String>> stores() {
        return oxygen().stores().stream().map(s -> List.of((s.count() > 1 ? s.count() + " × " : "") + s.name(), figure(s.freeGasL(), s), figure(s.usableL(), s),
                s.emptyChance().isPresent() ? Figures.chance(s.emptyChance().getAsDouble()) : "")).toList();
    }

    private static String figure(OptionalDouble v, OxygenStore s) { return s.usableL().isEmpty() ? "" : Figures.or(v, 0, ""); }

    /** Name, minutes, remark. */
    public List<List<String>> losses() { return Figures.losses(oxygen(), plan.supply().power(), plan.legs().get(plan.legs().size() - 1).endMin()); }

    /** Leg, cylinder, gauge at the median, and what 19 of 20 journeys show at least. */
    public List<List<String>> handovers() { return Figures.handovers(oxygen()); }

    /** Kits that are enough, the smallest first: items, mass, chance. */
    public List<List<String>> kits() { return Figures.kits(oxygen()); }

    /** Change, litres, chance after it. */
    public List<List<String>> savings() { return Figures.savings(oxygen()); }

    /** Litres needed at the median, in 19 of 20 and in 99 of 100 journeys, and what the stores give. */
    public List<String> needed() {
        var n = oxygen().neededL();
        return List.of(Figures.n(n.p50(), 0), Figures.n(n.p95(), 0), Figures.n(n.p99(), 0), Figures.n(oxygen().usableL(), 0));
    }

    /** How sure the chance is, a sentence each. */
    public List<String> sure() { return Figures.sure(oxygen()); }

    /** Minutes by gauge and draw for each kind of cylinder. */
    public List<WallView> wall() { return oxygen().wall().stream().map(WallView::of).toList(); }

    /** One table for the wall: the cylinder, the gauge where it counts as empty, columns, rows. */
    public record WallView(String of, String downTo, List<String> draws, List<List<String>> rows) {
        static WallView of(WallTable t) {
            List<List<String>> rows = new ArrayList<>();
            for (int i = 0; i < t.gaugeBar().size(); i++) {
                List<String> row = new ArrayList<>(List.of(WallTable.plain(t.gaugeBar().get(i)), Figures.n(WallTable.psi(t.gaugeBar().get(i)), 0)));
                t.minutes().get(i).forEach(m -> row.add(Integer.toString(m)));
                rows.add(row);
            }
            return new WallView(t.of(), WallTable.plain(t.residualBar()), t.drawLPerMin().stream().map(WallTable::plain).toList(), rows);
        }

        /** A letter a column. */
        public String kinds() { return "t" + "n".repeat(draws.size() + 1); }

        /** Heads of the columns; what a draw is called is the page's to say. */
        public List<String> head(String bar, String psi, java.util.function.UnaryOperator<String> draw) {
            List<String> head = new ArrayList<>(List.of(bar, psi));
            draws.forEach(q -> head.add(draw.apply(q)));
            return head;
        }
    }

    /** Leg, load, need, from. */
    public List<List<String>> loads() {
        return plan.supply().power().map(p -> p.byLeg().stream().map(l -> List.of(l.leg(), Figures.n(l.loadW(), 1), Figures.n(l.neededWh(), 1), l.from())).toList()).orElse(List.of());
    }

    /** Pack, what it holds when full at its age, what it gives from the charge it shows. */
    public List<List<String>> packs() {
        return plan.supply().power().map(p -> p.stores().stream().map(s -> List.of(s.name(), Figures.n(s.capacityWh(), 0), Figures.n(s.usableWh(), 0))).toList()).orElse(List.of());
    }

    /** The smallest spare that is enough: the items, empty where none is needed, and its mass; absent where no kit names packs or none is enough. */
    public Optional<Big> spare() { return plan.supply().power().flatMap(SupplyResult.Power::take).map(t -> new Big(Figures.items(t), "power.spare", List.of(Figures.n(t.massKg(), 1)))); }

    /** Of which version, seed and file it is the answer. */
    public List<String> made() { return List.of(Version.TEXT, Long.toString(plan.seed()), plan.sourceHash().substring(0, 16)); }

    /** When the kit is home again, from departure. */
    public Optional<String> homeAt() { return plan.supply().home().map(h -> Figures.minutes(h.atMin())); }

    /** What is left then, a sentence a store. */
    public List<String> home() { return plan.supply().home().map(Figures::home).orElse(List.of()); }

    public List<List<String>> legEnds() {
        return plan.byLeg().stream().map(l -> {
            var e = l.expected();
            return List.of(l.leg(), Figures.or(e.plateauCmH2O(), 0, ""), Figures.or(e.paco2MmHg(), 0, ""), Figures.or(e.etco2MmHg(), 0, ""), Figures.or(e.ph(), 2, ""), Figures.or(e.pao2MmHg(), 0, ""),
                    e.spo2().isPresent() ? Figures.percent(e.spo2().getAsDouble()) : "");
        }).toList();
    }
}
