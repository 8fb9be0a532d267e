package leeway.app.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import leeway.app.command.SheetLibrary;
import leeway.app.command.Version;
import leeway.app.paper.CrewCard;
import leeway.app.paper.Report;
import leeway.app.rehearse.Rehearsals;
import leeway.app.rehearse.Rehearsals.Ask;
import leeway.app.rehearse.Shared;
import leeway.app.report.Language;
import leeway.app.report.ReportPage;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.plan.Plan;
import leeway.core.plan.PlanMaker;
import leeway.core.rehearsal.Breathing;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.WhatIfs;
import leeway.core.run.Draw;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.keys.Table;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportKeys;
import leeway.files.transport.TransportReader;
import leeway.files.yaml.Read;

/** Answers from the catalogue's sheets, each worked out anew. */
final class SheetAnswers implements Answers {
    /** So long before a fault an alarm may have begun and is still told as sounding; a bound on memory. */
    private static final double ALARMS_BEFORE_S = 24 * 3_600;
    private final Catalogue catalogue;
    private final SheetLibrary library;
    private final long seed;
    private final Map<String, List<String>> names = new ConcurrentHashMap<>();

    SheetAnswers(Catalogue catalogue, long seed) {
        this.catalogue = catalogue;
        this.library = new SheetLibrary(catalogue);
        this.seed = seed;
    }

    @Override public Table table() { return TransportKeys.TRANSPORT; }

    @Override public List<String> names(String kind) { return names.computeIfAbsent(kind, catalogue::names); }

    @Override public Read<Plan> plan(String text, Hands hands) { return plan(text, seed, hands); }

    @Override public Read<Plan> plan(String text, long seed, Hands hands) {
        return read(text, t -> PlanMaker.plan(t, library, seed, faults -> Shared.begin(faults, 1 + hands.idle(), hands.others(), hands.needed()), hands.unwanted()));
    }

    @Override public Read<Mapped> map(String text, Hands hands) {
        return read(text, t -> {
            Start start = Start.of(t, Ventilated.of(t), library::strategy, hands.unwanted());
            return new Mapped(t.ventilator().alone() ? Optional.empty() : Optional.of(MapMaker.of(start, t, hands.unwanted())), start);
        });
    }

    @Override public Read<List<Rehearsal>> whatIf(String text, Hands hands) {
        return read(text, t -> {
            if (t.whatIf().isEmpty()) return List.of();
            Settings settings = settings(t, hands);
            return WhatIfs.of(Journeys.of(t, settings, library.noises(), draw -> JourneyRun.of(t, settings, draw)).until(hands.unwanted()), t, library.faults());
        });
    }

    @Override public Read<Rehearsals> rehearse(String text, List<String> names, OptionalDouble atS, int draws, boolean pairs, long seed, Hands hands) {
        return read(text, t -> {
            List<Fault> known = library.faults();
            List<Fault> faults = names.isEmpty() ? known : known.stream().filter(f -> names.contains(f.name())).toList();
            return Rehearsals.of(t, settings(t, hands), new Ask(faults, known, library.noises(), atS, draws, pairs, 1 + hands.idle(), seed), done -> { }, hands.unwanted());
        });
    }

    @Override public Read<Run> run(String text, Hands hands) {
        return read(text, t -> new Run(t.title(), Breathing.of(t, settings(t, hands), library.noises(), library.faults()).until(hands.unwanted())));
    }

    @Override public Read<Traced> trace(String text, String name, OptionalDouble atMin, OptionalDouble remedyS, double beforeS, double longestS, Hands hands) {
        return read(text, t -> {
            List<Fault> known = library.faults();
            Fault fault = known.stream().filter(f -> f.name().equals(name)).findFirst().orElseThrow();
            Settings settings = settings(t, hands);
            double journeyS = t.legs().stream().mapToDouble(l -> l.takesMin() * 60).sum();
            OptionalDouble at = atMin.isPresent() ? OptionalDouble.of(Math.min(atMin.getAsDouble() * 60, Math.max(0, journeyS - 1))) : OptionalDouble.empty();
            Voyage voyage = Journeys.of(t, settings, library.noises(), draw -> JourneyRun.of(t, settings, draw)).until(hands.unwanted());
            Rehearsal row = Rehearse.of(voyage, List.of(fault), known, at).central().get(0);
            double atS = at.orElse(row.leg().map(Rehearsal.Moment::atS).orElse(0.0));
            double untilS = Math.min(longestS, 60 * Math.ceil((Math.max(240, 1.25 * row.harm().map(h -> h.afterS()).orElse(240.0)) + remedyS.orElse(0)) / 60));
            Trace whole = Trace.of(voyage.stage(new Draw(seed, 0)), fault, known, atS, remedyS, ALARMS_BEFORE_S, untilS);
            List<Trace.Row> drawn = whole.rows().stream().filter(r -> r.tS() >= -beforeS).toList();
            return new Traced(new Trace(fault, whole.leg(), atS, remedyS, drawn, whole.said()), row.leg().isPresent() ? Optional.of(row) : Optional.empty());
        });
    }

    @Override public Read<byte[]> card(String text, Plan plan, Language language, Hands hands) {
        return read(text, t -> written(out -> CrewCard.write(plan, t.ventilator().called(), Version.TEXT, language, out, hands.unwanted())));
    }

    @Override public Read<byte[]> report(Plan plan, Optional<OperatingMap> map, Language language, Hands hands) {
        return new Read.Good<>(written(out -> Report.write(ReportPage.of(plan, map, Version.TEXT), language.keepingNamesOf(plan), out, hands.unwanted())));
    }

    /** Writes somewhere. */
    private interface Writer {
        void to(OutputStream out) throws IOException;
    }

    private static byte[] written(Writer writer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(256 * 1024);
        try {
            writer.to(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private Settings settings(Transport t, Hands hands) { return Start.of(t, Ventilated.of(t), library::strategy, hands.unwanted()).settings(); }

    private <T> Read<T> read(String text, Function<Transport, T> then) {
        try {
            return TransportReader.read(JourneyPage.FILE, text, catalogue).then(t -> new Read.Good<>(then.apply(t)));
        } catch (SheetLibrary.Bad bad) {
            return new Read.Bad<>(bad.complaints());
        }
    }
}
