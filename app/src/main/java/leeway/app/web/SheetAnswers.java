package leeway.app.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import leeway.app.command.SheetLibrary;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
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

    private <T> Read<T> read(String text, Function<Transport, T> then) {
        try {
            return TransportReader.read(JourneyPage.FILE, text, catalogue).then(t -> new Read.Good<>(then.apply(t)));
        } catch (SheetLibrary.Bad bad) {
            return new Read.Bad<>(bad.complaints());
        }
    }
}
