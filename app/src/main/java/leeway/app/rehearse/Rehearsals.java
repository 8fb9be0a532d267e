package leeway.app.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import leeway.core.alarm.Noise;
import leeway.core.journey.JourneyRun;
import leeway.core.kit.Settings;
import leeway.core.rehearsal.Harm;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Nuisance;
import leeway.core.rehearsal.Pair;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Rehearse.Drawn;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.rehearsal.Trace;
import leeway.core.rehearsal.WhatIfs;
import leeway.core.run.Draw;
import leeway.core.transport.Transport;

/**
 * Everything that {@code rehearse} answers.
 *
 * @param trace        what is true and what is shown, of a fault that was asked for alone and can happen
 * @param suppliesEndS when gas or power ends at medians without any fault, s from departure; absent where it lasts
 */
public record Rehearsals(String title, List<Rehearsal> rows, List<Nuisance> nuisance, Optional<List<Pair>> pairs, List<Rehearsal> whatIf, OptionalDouble suppliesEndS, Optional<Trace> trace) {
    public Rehearsals {
        rows = List.copyOf(rows);
        nuisance = List.copyOf(nuisance);
        whatIf = List.copyOf(whatIf);
    }

    /**
     * What is asked.
     *
     * @param faults  to rehearse, of {@code known}
     * @param known   every fault that the sheets describe
     * @param atS     the moment; absent for the worst of each leg
     * @param draws   beyond the central one; 0 for none
     * @param threads at least 1
     */
    public record Ask(List<Fault> faults, List<Fault> known, Map<String, Noise> noises, OptionalDouble atS, int draws, boolean pairs, int threads, long seed) {
        public Ask {
            if (draws < 0 || threads < 1) throw new IllegalArgumentException("%d draws on %d threads".formatted(draws, threads));
        }

        /** All faults, once, at their worst moments. */
        public static Ask all(List<Fault> known, Map<String, Noise> noises) { return new Ask(known, known, noises, OptionalDouble.empty(), 0, false, 1, 1); }
    }

    /** @param done is told the number of draws that are done, from any thread */
    public static Rehearsals of(Transport t, Settings settings, Ask ask, IntConsumer done) { return of(t, settings, ask, done, () -> false); }

    /** @param unwanted is asked now and then; once it says so, {@link leeway.core.run.Stopped} is thrown */
    public static Rehearsals of(Transport t, Settings settings, Ask ask, IntConsumer done, BooleanSupplier unwanted) {
        Voyage voyage = Journeys.of(t, settings, ask.noises(), draw -> JourneyRun.of(t, settings, draw)).until(unwanted);
        Rehearse rehearse = Rehearse.of(voyage, ask.faults(), ask.known(), ask.atS());
        List<Rehearsal> rows = rehearse.central();
        List<Nuisance> nuisance = List.of();
        if (ask.draws() > 0) {
            List<Drawn> drawn = drawn(rehearse, rows, ask, done);
            rows = Rehearse.withDraws(rows, drawn);
            nuisance = Nuisance.of(voyage.stage(new Draw(ask.seed(), 0)).speaking().limits(), drawn);
        }
        List<Rehearsal> whatIf = ask.faults().size() == ask.known().size() && ask.atS().isEmpty() ? WhatIfs.of(voyage, t, ask.known()) : List.of();
        return new Rehearsals(t.title(), rows, nuisance, ask.pairs() ? Optional.of(rehearse.pairs(rows)) : Optional.empty(), whatIf, rehearse.suppliesEndS(), trace(voyage, rows, ask));
    }

    /** Of the only row, from half a minute before to some time after harm. */
    private static Optional<Trace> trace(Voyage voyage, List<Rehearsal> rows, Ask ask) {
        if (rows.size() != 1 || ask.known().size() == 1 || rows.get(0).leg().isEmpty()) return Optional.empty();
        Rehearsal r = rows.get(0);
        double forS = Math.min(MOST_TRACED_S, r.harm().map(h -> 1.25 * h.afterS() + AFTER_HARM_S).orElse(LEAST_TRACED_S));
        return Optional.of(Trace.of(voyage.stage(new Draw(0, 0)), r.fault(), ask.known(), r.leg().get().atS(), OptionalDouble.empty(), BEFORE_S, forS));
    }

    private static final double BEFORE_S = 15, LEAST_TRACED_S = 180, AFTER_HARM_S = 30, MOST_TRACED_S = 3600;

    private static List<Drawn> drawn(Rehearse rehearse, List<Rehearsal> rows, Ask ask, IntConsumer done) {
        ExecutorService pool = Executors.newFixedThreadPool(ask.threads(), task -> {
            Thread thread = new Thread(task, "rehearsal");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Drawn>> futures = new ArrayList<>();
            for (int d = 1; d <= ask.draws(); d++) {
                Draw draw = new Draw(ask.seed(), d);
                futures.add(pool.submit(() -> rehearse.draw(draw, rows)));
            }
            List<Drawn> drawn = new ArrayList<>();
            for (Future<Drawn> f : futures) {
                drawn.add(f.get());
                done.accept(drawn.size());
            }
            return drawn;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) throw cause;
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

}
