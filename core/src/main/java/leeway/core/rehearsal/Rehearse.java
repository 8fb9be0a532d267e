package leeway.core.rehearsal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntSupplier;
import leeway.core.rehearsal.Rehearsal.ByLeg;
import leeway.core.rehearsal.Rehearsal.Coverage;
import leeway.core.rehearsal.Rehearsal.Margins;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.run.Draw;

/**
 * All faults of a journey: once at medians on every leg, then, where asked, over many draws on the worst leg of each.
 * <p>A draw is a function of its number; who has threads hands out numbers to {@link #draw} and puts the answers in order.
 */
public final class Rehearse {
    private final Voyage voyage;
    private final List<Fault> faults;
    private final Map<String, Fault> byName = new HashMap<>();
    private final double fixedS;
    private final boolean thorough;
    /** The journey at medians without a fault; null until somebody needs it. */
    private final Nominal medians;

    private Rehearse(Voyage voyage, List<Fault> faults, List<Fault> known, double fixedS, boolean thorough, Nominal medians) {
        this.thorough = thorough;
        this.medians = medians;
        this.voyage = voyage;
        this.faults = List.copyOf(faults);
        known.forEach(f -> byName.put(f.name(), f));
        faults.forEach(f -> byName.put(f.name(), f));
        this.fixedS = fixedS;
    }

    /** Each fault once, with all medians, at its worst moment; sorted as results are. */
    public static List<Rehearsal> all(Voyage voyage, List<Fault> faults) {
        return of(voyage, faults, faults, OptionalDouble.empty()).central();
    }

    /**
     * @param faults to rehearse
     * @param known  all faults that the sheets know, for those that are rehearsed with another
     * @param atS    the moment of the fault; absent for the worst moment of each leg
     */
    public static Rehearse of(Voyage voyage, List<Fault> faults, List<Fault> known, OptionalDouble atS) {
        return new Rehearse(voyage, faults, known, atS.orElse(Double.NaN), atS.isPresent(), null);
    }

    /** All faults, each at its worst moment; {@code medians} is the voyage at medians without any, which is then not run again. */
    public static Rehearse of(Voyage voyage, Nominal medians, List<Fault> faults) { return new Rehearse(voyage, faults, faults, Double.NaN, false, medians); }

    /** Every fault that is rehearsed. */
    public int size() { return faults.size(); }

    /** The same, every branch to the end of its search, as where a moment is given: what comes on the next leg counts then too. */
    public Rehearse thoroughly() { return new Rehearse(voyage, faults, List.copyOf(byName.values()), fixedS, true, medians); }

    /** When gas or power ends at medians without any fault, s from departure; absent where it lasts. */
    public OptionalDouble suppliesEndS() {
        Nominal nominal = medians != null ? medians : new Nominal(voyage.stage(new Draw(0, 0)), fixedS);
        double endS = nominal.suppliesEndS(0);
        return endS >= nominal.journeyS() ? OptionalDouble.empty() : OptionalDouble.of(endS);
    }

    /** The rows at medians, sorted: uncovered (silent first), in time, no harm, not in this kit. */
    public List<Rehearsal> central() {
        int[] next = {0};
        return inOrder(some(() -> next[0]++));
    }

    /**
     * Rows at medians of some of the faults, not sorted: for who shares them out. Each share makes a stage of its own, and a row is the
     * same whoever makes it.
     *
     * @param next the index of the next fault to rehearse; {@link #size} or more for no more
     */
    public List<Rehearsal> some(IntSupplier next) {
        List<Rehearsal> rows = new ArrayList<>();
        Run run = null;
        for (int i = next.getAsInt(); i < faults.size(); i = next.getAsInt()) {
            if (run == null) run = new Run(new Draw(0, 0), medians);
            rows.add(row(run, faults.get(i)));
        }
        return rows;
    }

    private Rehearsal row(Run run, Fault fault) {
        List<Trial> trials = new ArrayList<>();
        for (int leg = 0; leg < run.stage.legs(); leg++) run.trial(fault, leg).ifPresent(trials::add);
        if (trials.isEmpty()) return notHere(run, fault);
        List<Trial> worst = new ArrayList<>(trials);
        worst.sort(Trial::worseFirst);
        Trial t = worst.get(0);
        List<ByLeg> byLeg = trials.stream().map(x -> new ByLeg(x.moment(), x.coverage(), x.alarm(), x.harm(), x.rescueByS(), x.marginS())).toList();
        return new Rehearsal(fault, Optional.of(t.moment()), t.coverage(), t.alarm(), t.lateAlarm(), t.harm(), t.rescueByS(), t.crewTimeS(), t.marginS(),
                Optional.empty(), Why.of(fault, t, run.stage), byLeg, t.near());
    }

    private Rehearsal notHere(Run run, Fault fault) {
        String lacking = run.lacking(fault);
        return new Rehearsal(fault, Optional.empty(), Coverage.NOT_IN_THIS_KIT, Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(),
                Math.rint(fault.crew().medianS() * 10) / 10, OptionalDouble.empty(), Optional.empty(), lacking.isEmpty() ? "Gas or power ends by itself before this could be rehearsed." : "It cannot happen here: " + lacking + ".", List.of(), Optional.empty());
    }

    /**
     * One draw: the margins, one a row of {@code central}, on that row's worst leg (below any number where silent, above any where
     * harmless, {@code NaN} where not in this kit), and how often each limit is heard an hour without any fault.
     */
    public record Drawn(double[] margins, double[] heardPerHour) { }

    /** The rows of {@code central} in another draw. */
    public Drawn draw(Draw draw, List<Rehearsal> central) {
        Run run = new Run(draw);
        double[] margins = new double[central.size()];
        for (int i = 0; i < margins.length; i++) {
            Rehearsal row = central.get(i);
            margins[i] = row.leg().isEmpty() ? Double.NaN : run.trial(row.fault(), row.leg().get().index()).map(Trial::sortable).orElse(Double.NaN);
        }
        int[] heard = run.nominal.heardOnJourney();
        double[] perHour = new double[heard.length];
        for (int i = 0; i < heard.length; i++) perHour[i] = heard[i] / (run.nominal.journeyS() / 3600);
        return new Drawn(margins, perHour);
    }

    /** The same rows with the margins over these draws, given in the order of their numbers. */
    public static List<Rehearsal> withDraws(List<Rehearsal> central, List<Drawn> draws) {
        List<Rehearsal> rows = new ArrayList<>();
        for (int i = 0; i < central.size(); i++) {
            Rehearsal r = central.get(i);
            int row = i;
            double[] sorted = draws.stream().mapToDouble(d -> d.margins()[row]).filter(d -> !Double.isNaN(d)).sorted().toArray();
            if (sorted.length == 0) {
                rows.add(r);
                continue;
            }
            int uncovered = 0;
            int noHarm = 0;
            for (double m : sorted) {
                if (m < 0) uncovered++;
                if (m == Double.POSITIVE_INFINITY) noHarm++;
            }
            Margins margins = new Margins(sorted.length, quantile(sorted, 0.5), quantile(sorted, 0.05), (double) uncovered / sorted.length, (double) noHarm / sorted.length);
            rows.add(new Rehearsal(r.fault(), r.leg(), r.coverage(), r.alarm(), r.lateAlarm(), r.harm(), r.rescueByS(), r.crewTimeS(), r.marginS(),
                    Optional.of(margins), r.why(), r.byLeg(), r.near()));
        }
        return List.copyOf(rows);
    }

    /** The order statistic at or below the quantile, the cautious side; absent where it is no number. */
    private static OptionalDouble quantile(double[] sorted, double p) {
        double q = sorted[(int) Math.floor(p * (sorted.length - 1))];
        return Double.isInfinite(q) ? OptionalDouble.empty() : OptionalDouble.of(q);
    }

    /**
     * Pairs of faults that are each covered (or harmless) alone and uncovered together, at the first one's worst moment; worst first.
     * With a harmless second one, the remedy ends the first and the second stays: it hides the alarm. With a harmful one the crew
     * has to end both, one after the other.
     */
    public List<Pair> pairs(List<Rehearsal> central) {
        Run run = new Run(new Draw(0, 0));
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < central.size(); i++) {
            Rehearsal first = central.get(i);
            if (first.coverage() != Coverage.IN_TIME || first.fault().with().isPresent()) continue;
            for (int j = 0; j < central.size(); j++) {
                Rehearsal second = central.get(j);
                boolean harmless = second.coverage() == Coverage.NO_HARM;
                if (!harmless && (second.coverage() != Coverage.IN_TIME || j <= i) || second.fault().with().isPresent()) continue;
                run.pair(first, second, harmless).filter(t -> t.coverage().uncovered())
                        .ifPresent(t -> pairs.add(new Pair(first.fault().name(), second.fault().name(), t.coverage(), t.marginS(), Why.of(first.fault(), t, run.stage))));
            }
        }
        pairs.sort(Comparator.comparing(Pair::coverage).thenComparingDouble(p -> p.marginS().orElse(0)).thenComparing(Pair::first).thenComparing(Pair::second));
        return List.copyOf(pairs);
    }

    /** Rows that were rehearsed apart, in the order of results. */
    public static List<Rehearsal> inOrder(List<Rehearsal> rows) { return rows.stream().sorted(ORDER).toList(); }

    static final Comparator<Rehearsal> ORDER = (a, b) -> {
        int group = Integer.compare(group(a.coverage()), group(b.coverage()));
        if (group != 0) return group;
        int silent = Boolean.compare(b.coverage() == Coverage.SILENT, a.coverage() == Coverage.SILENT);
        if (silent != 0) return silent;
        int by = a.coverage() == Coverage.SILENT ? Double.compare(a.harm().orElseThrow().afterS(), b.harm().orElseThrow().afterS())
                : Double.compare(a.marginS().orElse(0), b.marginS().orElse(0));
        return by != 0 ? by : a.fault().name().compareTo(b.fault().name());
    };

    private static int group(Coverage c) {
        return switch (c) {
            case SILENT, TOO_LATE -> 0;
            case IN_TIME -> 1;
            case NO_HARM -> 2;
            case NOT_IN_THIS_KIT -> 3;
        };
    }

    /** One draw: its stage, its nominal run, its moments. */
    final class Run {
        final Stage stage;
        final Nominal nominal;
        private final Rehearsing[] legs;
        private final Rehearsing[] drained;

        Run(Draw draw) { this(draw, null); }

        /** @param known the nominal run of this draw, where somebody has made it; null where not */
        Run(Draw draw, Nominal known) {
            stage = voyage.stage(draw);
            nominal = known == null ? new Nominal(stage, fixedS) : known;
            legs = new Rehearsing[stage.legs()];
            drained = new Rehearsing[stage.legs()];
            for (int leg = 0; leg < legs.length; leg++) {
                Checkpoint at = nominal.moment(leg, false);
                if (at == null) continue;
                legs[leg] = new Rehearsing(stage, nominal, leg, at, thorough);
                Checkpoint begins = nominal.moment(leg, true);
                drained[leg] = begins == at ? legs[leg] : new Rehearsing(stage, nominal, leg, begins, thorough);
            }
        }

        Optional<Trial> trial(Fault fault, int leg) {
            if (legs[leg] == null || !possible(fault, leg)) return Optional.empty();
            return Optional.of((fault.drains() ? drained : legs)[leg].trial(fault, together(fault)));
        }

        Optional<Trial> pair(Rehearsal first, Rehearsal second, boolean harmless) {
            int leg = first.leg().orElseThrow().index();
            if (legs[leg] == null || !possible(second.fault(), leg)) return Optional.empty();
            double crewS = first.fault().crew().drawnS(stage.draw(), first.fault().name());
            if (!harmless) crewS += second.fault().crew().drawnS(stage.draw(), second.fault().name());
            return Optional.of(legs[leg].trial(first.fault(), second.fault().effects(), !harmless, crewS));
        }

        private boolean possible(Fault fault, int leg) {
            KitFacts kit = stage.facts(leg);
            return fault.needs().stream().allMatch(n -> n.met(kit));
        }

        private List<Effect> together(Fault fault) {
            return fault.with().map(name -> Optional.ofNullable(byName.get(name)).orElseThrow(() -> new IllegalArgumentException(
                    "fault \"%s\" is rehearsed with \"%s\", which is not among the faults".formatted(fault.name(), name)))).map(Fault::effects).orElse(List.of());
        }

        /** What the kit lacks on the leg that comes closest. */
        String lacking(Fault fault) {
            String best = "";
            int fewest = Integer.MAX_VALUE;
            for (int leg = 0; leg < legs.length; leg++) {
                if (legs[leg] == null) continue;
                KitFacts kit = stage.facts(leg);
                List<Need> missing = fault.needs().stream().filter(n -> !n.met(kit)).toList();
                if (missing.size() < fewest && !missing.isEmpty()) {
                    fewest = missing.size();
                    best = missing.get(0).lacking();
                }
            }
            return best;
        }
    }
}
