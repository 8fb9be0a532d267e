package leeway.app.rehearse;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;

/** All faults once, shared among the processors: whoever is free takes the next fault. The answer is that of one. */
public final class Shared {
    /** A share must be worth the stage that each makes for itself. */
    private static final int LEAST = 6;

    private Shared() { }

    /** Begins at once on the other processors; the caller joins in when the answer is asked for. */
    public static Supplier<List<Rehearsal>> begin(Rehearse faults) { return begin(faults, Runtime.getRuntime().availableProcessors(), Shared::onItsOwn, () -> false); }

    /**
     * @param most  who share it at most: as many as there are processors to spare, and the caller
     * @param other where the shares of others are handed to; nobody waits for one that has not been begun
     * @param needed once the others are needed elsewhere they take no further fault, and the caller does the rest
     */
    public static Supplier<List<Rehearsal>> begin(Rehearse faults, int most, Executor other, BooleanSupplier needed) {
        return shares(faults, Math.min(most, 1 + faults.size() / LEAST), other, needed);
    }

    static Supplier<List<Rehearsal>> shares(Rehearse faults, int shares, Executor other) { return shares(faults, shares, other, () -> false); }

    private static Supplier<List<Rehearsal>> shares(Rehearse faults, int shares, Executor other, BooleanSupplier needed) {
        AtomicInteger next = new AtomicInteger();
        List<FutureTask<List<Rehearsal>>> tasks = new ArrayList<>();
        tasks.add(new FutureTask<>(() -> faults.some(next::getAndIncrement)));
        for (int share = 1; share < shares; share++) tasks.add(new FutureTask<>(() -> faults.some(() -> needed.getAsBoolean() ? faults.size() : next.getAndIncrement())));
        for (int share = 1; share < shares; share++) other.execute(tasks.get(share));
        return () -> {
            List<Rehearsal> rows = new ArrayList<>();
            for (FutureTask<List<Rehearsal>> task : tasks) task.run();      // where another has begun, nothing; where nobody has, no fault is left
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
