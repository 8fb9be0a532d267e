package leeway.app.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Stage.Voyage;

/** All faults once, shared among the processors; each makes its own stage, and the answer is that of one. */
public final class Shared {
    /** A share must be worth the nominal run that each makes for itself. */
    private static final int LEAST = 12;

    private Shared() { }

    /** Begins at once on the other processors; the caller's own, smaller share is done when the answer is asked for. */
    public static Supplier<List<Rehearsal>> begin(Voyage voyage, List<Fault> faults) {
        return begin(voyage, faults, Math.min(Runtime.getRuntime().availableProcessors(), 1 + faults.size() / LEAST));
    }

    static Supplier<List<Rehearsal>> begin(Voyage voyage, List<Fault> faults, int shares) {
        List<FutureTask<List<Rehearsal>>> tasks = new ArrayList<>();
        int slots = 2 * shares - 1;     // one for the caller, who has the rest of a plan to work out meanwhile, two for each of the others
        for (int share = 0; share < shares; share++) {
            List<Fault> mine = new ArrayList<>();
            for (int i = 0; i < faults.size(); i++) if ((i % slots + 1) / 2 == share) mine.add(faults.get(i));
            tasks.add(new FutureTask<>(() -> Rehearse.of(voyage, mine, faults, OptionalDouble.empty()).central()));
        }
        for (int share = 1; share < shares; share++) {
            Thread thread = new Thread(tasks.get(share), "rehearsal");
            thread.setDaemon(true);
            thread.start();
        }
        return () -> {
            tasks.get(0).run();
            List<Rehearsal> rows = new ArrayList<>();
            for (FutureTask<List<Rehearsal>> task : tasks) rows.addAll(result(task));
            return Rehearse.inOrder(rows);
        };
    }

    private static List<Rehearsal> result(FutureTask<List<Rehearsal>> task) {
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while rehearsing", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException r) throw r;
            throw new IllegalStateException(e.getCause());
        }
    }
}
