package leeway.app.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
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
        return begin(voyage, faults, Runtime.getRuntime().availableProcessors(), Shared::onItsOwn);
    }

    /**
     * @param most  shares at most; as many as there are processors to spare, and the caller's own
     * @param other where the shares of others are handed to; one that nobody has begun when the caller is done, the caller does
     */
    public static Supplier<List<Rehearsal>> begin(Voyage voyage, List<Fault> faults, int most, Executor other) {
        return shares(voyage, faults, Math.min(most, 1 + faults.size() / LEAST), other);
    }

    static Supplier<List<Rehearsal>> shares(Voyage voyage, List<Fault> faults, int shares, Executor other) {
        List<FutureTask<List<Rehearsal>>> tasks = new ArrayList<>();
        int slots = 2 * shares - 1;     // one for the caller, who has the rest of a plan to work out meanwhile, two for each of the others
        for (int share = 0; share < shares; share++) {
            List<Fault> mine = new ArrayList<>();
            for (int i = 0; i < faults.size(); i++) if ((i % slots + 1) / 2 == share) mine.add(faults.get(i));
            tasks.add(new FutureTask<>(() -> Rehearse.of(voyage, mine, faults, OptionalDouble.empty()).central()));
        }
        for (int share = 1; share < shares; share++) other.execute(tasks.get(share));
        return () -> {
            List<Rehearsal> rows = new ArrayList<>();
            for (FutureTask<List<Rehearsal>> task : tasks) task.run();      // does nothing where another has begun
            for (FutureTask<List<Rehearsal>> task : tasks) rows.addAll(result(task));
            return Rehearse.inOrder(rows);
        };
    }

    private static void onItsOwn(Runnable share) {
        Thread thread = new Thread(share, "rehearsal");
        thread.setDaemon(true);
        thread.start();
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
