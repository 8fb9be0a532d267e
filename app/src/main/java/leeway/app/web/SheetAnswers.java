package leeway.app.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import leeway.app.command.SheetLibrary;
import leeway.app.rehearse.Rehearsals;
import leeway.app.rehearse.Rehearsals.Ask;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.map.MapMaker;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Stage;
import leeway.core.rehearsal.Trace;
import leeway.core.run.Draw;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.keys.Table;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportKeys;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Read;

/** Answers from the catalogue's sheets. The last answers are kept: going back, or a second reader of a link, costs nothing. */
final class SheetAnswers implements Answers {
    private static final int KEPT = 64;
    private final Catalogue catalogue;
    private final SheetLibrary library;
    private final long seed;
    private final Map<String, Read<Plan>> plans = kept();
    private final Map<String, Read<Mapped>> maps = kept();
    private final Map<String, Read<Rehearsals>> rehearsals = kept();
    private final Map<String, Read<Traced>> traces = kept();

    SheetAnswers(Catalogue catalogue, long seed) {
        this.catalogue = catalogue;
        this.library = new SheetLibrary(catalogue);
        this.seed = seed;
    }

    private static <V> Map<String, V> kept() {
        return new LinkedHashMap<>(KEPT * 2, 0.75f, true) {
            private static final long serialVersionUID = 1L;
            @Override protected boolean removeEldestEntry(Map.Entry<String, V> eldest) { return size() > KEPT; }
        };
    }

    private static <V> V kept(Map<String, V> map, String key, Supplier<V> make) {
        synchronized (map) {
            V there = map.get(key);
            if (there != null) return there;
        }
        V made = make.get();
        synchronized (map) {
            map.put(key, made);
        }
        return made;
    }

    @Override public Table table() { return TransportKeys.TRANSPORT; }

    @Override public List<String> names(String kind) { return catalogue.names(kind); }

    @Override public Read<Plan> plan(String text) { return kept(plans, text, () -> read(text, t -> PlanMaker.plan(t, library, seed))); }

    @Override public Read<Mapped> map(String text) {
        return kept(maps, text, () -> read(text, t -> {
            Start start = Start.of(t, Ventilated.of(t), library::strategy);
            return new Mapped(MapMaker.of(start, t), start);
        }));
    }

    @Override public Read<Rehearsals> rehearse(String text) {
        return kept(rehearsals, text, () -> read(text, t -> Rehearsals.of(t, settings(t), Ask.all(library.faults(), library.noises()), done -> { })));
    }

    @Override public Read<Rehearsals> rehearse(String text, List<String> names, OptionalDouble atS, int draws, boolean pairs, long seed) {
        return read(text, t -> {
            List<Fault> known = library.faults();
            List<Fault> faults = names.isEmpty() ? known : known.stream().filter(f -> names.contains(f.name())).toList();
            return Rehearsals.of(t, settings(t), new Ask(faults, known, library.noises(), atS, draws, pairs, 1, seed), done -> { });
        });
    }

    @Override public Read<Run> run(String text) {
        return read(text, t -> new Run(t.title(), Breathing.of(t, settings(t), library.noises(), library.faults())));
    }

    @Override public Read<Traced> trace(String text, String name, OptionalDouble atMin, OptionalDouble remedyS, double beforeS, double longestS) {
        return kept(traces, name + "\n" + atMin + "\n" + remedyS + "\n" + text, () -> read(text, t -> {
            List<Fault> known = library.faults();
            Fault fault = known.stream().filter(f -> f.name().equals(name)).findFirst().orElseThrow();
            Settings settings = settings(t);
            double journeyS = t.legs().stream().mapToDouble(l -> l.takesMin() * 60).sum();
            OptionalDouble at = atMin.isPresent() ? OptionalDouble.of(Math.min(atMin.getAsDouble() * 60, Math.max(0, journeyS - 1))) : OptionalDouble.empty();
            Rehearsal row = Rehearsals.of(t, settings, new Ask(List.of(fault), known, library.noises(), at, 0, false, 1, seed), done -> { }).rows().get(0);
            double atS = at.orElse(row.leg().map(Rehearsal.Moment::atS).orElse(0.0));
            double untilS = Math.min(longestS, 60 * Math.ceil((Math.max(240, 1.25 * row.harm().map(h -> h.afterS()).orElse(240.0)) + remedyS.orElse(0)) / 60));
            Stage stage = Journeys.of(t, settings, library.noises()).stage(new Draw(seed, 0));
            return new Traced(Trace.of(stage, fault, known, atS, remedyS, beforeS, untilS), row.leg().isPresent() ? Optional.of(row) : Optional.empty());
        }));
    }

    private Settings settings(Transport t) { return Start.of(t, Ventilated.of(t), library::strategy).settings(); }

    private <T> Read<T> read(String text, Function<Transport, T> then) {
        try {
            return TransportReader.read(JourneyPage.FILE, text, catalogue).then(t -> new Read.Good<>(then.apply(t)));
        } catch (SheetLibrary.Bad bad) {
            return new Read.Bad<>(bad.complaints());
        }
    }
}
