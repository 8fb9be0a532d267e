package leeway.app.web;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

/**
 * Where answers are worked out: as many at once as there are processors, users in turn, a limit of time for each answer,
 * its waiting included.
 * <p>The last answers are kept. Who asks what another is being answered waits for the same answer. An answer that nobody
 * waits for any more, because of the limit or because the same page asked anew, is stopped. A processor that nobody needs
 * helps with an answer that can be shared out. Programs never hold the last processor: however many of them ask, it answers
 * people at pages. Nobody may fill more than half of the queue.
 */
final class Desk implements AutoCloseable {
    /** Answers kept of each kind. */
    private static final int KEPT = 64;
    private final Object lock = new Object();
    private final Duration limit;
    private final int most;
    private final List<Thread> workers = new ArrayList<>();
    private final Map<String, Deque<Job>> queues = new LinkedHashMap<>();
    private final Deque<Runnable> shares = new ArrayDeque<>();
    private final Map<Question, Job> open = new HashMap<>();
    private final Map<String, Map<String, Object>> kept = new HashMap<>();
    private final Map<String, Set<Waiter>> byPage = new HashMap<>();
    private final Set<Job> jobs = new HashSet<>();
    private int queued;
    private volatile int people;
    private int programs;
    private int idle;
    private boolean closed;

    /** @param waiting questions that may queue before the next is refused */
    Desk(int processors, int waiting, Duration limit) {
        this.limit = limit;
        this.most = waiting;
        for (int i = 0; i < processors; i++) {
            Thread thread = new Thread(this::work, "answers " + i);
            thread.setDaemon(true);
            workers.add(thread);
            thread.start();
        }
    }

    /**
     * Who asks.
     *
     * @param user whose turn it is in the queue
     * @param page    an open page of that user; empty where it is not known
     * @param program nobody sits before a page and waits for it
     */
    record Asker(String user, String page, boolean program) {
        Asker(String user, String page) { this(user, page, false); }
    }

    /**
     * What is asked.
     *
     * @param key  the same for the same answer; empty where it is neither kept nor shared
     */
    record Question(String kind, String key) { }

    /** It took longer than it may and was stopped. */
    static final class TooLong extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final long limitS;

        TooLong(long limitS) {
            super("stopped after " + limitS + " s");
            this.limitS = limitS;
        }

        long limitS() { return limitS; }
    }

    /** More ask at once than can be answered in time. */
    static final class TooMany extends RuntimeException {
        private static final long serialVersionUID = 1L;

        TooMany() { super("the queue is full"); }
    }

    /** The server is being stopped. */
    static final class Closing extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Closing() { super("being stopped", null, false, false); }
    }

    /** The page asked something newer meanwhile. */
    static final class Replaced extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Replaced() { super("a newer question of the same page", null, false, false); }
    }

    /** Somebody who waits for a job. */
    private record Waiter(Asker asker, Job job, CompletableFuture<Object> answer) { }

    /** A question on its way. All fields but the last are guarded by the lock. */
    private static final class Job {
        private final Question question;
        private final Function<Hands, ?> work;
        private final String user;
        private final Set<Waiter> waiters = new HashSet<>();
        private boolean program;
        private boolean heldByProgram;
        private Thread worker;
        private volatile boolean unwanted;

        Job(String user, boolean program, Question question, Function<Hands, ?> work) {
            this.user = user;
            this.program = program;
            this.question = question;
            this.work = work;
        }
    }

    <T> T answer(Asker asker, Question question, Function<Hands, T> work) { return answer(asker, question, limit, work); }

    /** @param left of the limit: whoever asks several questions for one answer has one limit for all of them */
    @SuppressWarnings("unchecked")      // what is kept under a question was made by its work
    <T> T answer(Asker asker, Question question, Duration left, Function<Hands, T> work) {
        Waiter waiter;
        synchronized (lock) {
            Object there = question.key().isEmpty() ? null : keptOf(question.kind()).get(question.key());
            if (there != null) return (T) there;
            waiter = wait(asker, question, work);
        }
        try {
            return (T) waiter.answer().get(Math.max(0, left.toMillis()), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            throw given(waiter, new TooLong((left.compareTo(limit) > 0 ? left : limit).toSeconds()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw given(waiter, new TooLong(limit.toSeconds()));
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException r) throw r;
            throw new IllegalStateException(e.getCause());
        }
    }

    /** The longest time for an answer, its waiting included. */
    Duration limit() { return limit; }

    /** Whether nobody asks anything. */
    boolean resting() {
        synchronized (lock) {
            return !closed && queued == 0 && idle == workers.size();
        }
    }

    boolean closed() {
        synchronized (lock) {
            return closed;
        }
    }

    /** Works it out when there is room for it; nobody waits, and what goes wrong comes up again when somebody asks. */
    void later(Question question, Function<Hands, ?> work) {
        synchronized (lock) {
            enqueue(new Asker("", ""), question, work);
        }
    }

    /** What the page asked so far is no longer wanted, but for what follows from this key. */
    void replace(String page, String key) {
        synchronized (lock) {
            if (page.isEmpty()) return;
            for (Waiter w : List.copyOf(byPage.getOrDefault(page, Set.of()))) if (!w.job().question.key().equals(key)) leave(w, new Replaced());
        }
    }

    private RuntimeException given(Waiter waiter, RuntimeException up) {
        synchronized (lock) {
            leave(waiter, up);
        }
        return up;
    }

    private Waiter wait(Asker asker, Question question, Function<Hands, ?> work) {
        Job job = question.key().isEmpty() ? null : open.get(question);
        if (job == null || job.unwanted) {
            job = enqueue(asker, question, work);
        }
        if (job.program && !asker.program()) {
            job.program = false;
            if (job.worker == null) people++;
        }
        Waiter waiter = new Waiter(asker, job, new CompletableFuture<>());
        job.waiters.add(waiter);
        if (!asker.page().isEmpty()) byPage.computeIfAbsent(asker.page(), p -> new HashSet<>()).add(waiter);
        return waiter;
    }

    /** Whether at least so many wait for the answer. */
    boolean awaited(Question question, int by) {
        synchronized (lock) {
            Job job = open.get(question);
            return job != null && job.waiters.size() >= by;
        }
    }

    private Job enqueue(Asker asker, Question question, Function<Hands, ?> work) {
        if (closed) throw new Closing();
        int own = queues.containsKey(asker.user()) ? queues.get(asker.user()).size() : 0;
        if (queued >= most || own >= Math.max(1, most / 2)) throw new TooMany();
        Job job = new Job(asker.user(), asker.program(), question, work);
        if (!question.key().isEmpty()) open.put(question, job);
        jobs.add(job);
        queues.computeIfAbsent(asker.user(), u -> new ArrayDeque<>()).add(job);
        queued++;
        if (!job.program) people++;
        lock.notify();
        return job;
    }

    /** One waits no longer; the last one to leave stops the work. */
    private void leave(Waiter waiter, RuntimeException why) {
        forget(waiter);
        Job job = waiter.job();
        job.waiters.remove(waiter);
        waiter.answer().completeExceptionally(why);
        if (!job.waiters.isEmpty()) return;
        job.unwanted = true;
        open.remove(job.question, job);
        if (job.worker != null) {
            job.worker.interrupt();
            return;
        }
        Deque<Job> own = queues.get(job.user);
        if (own == null || !own.remove(job)) return;
        if (own.isEmpty()) queues.remove(job.user);
        jobs.remove(job);
        offQueue(job);
    }

    private void offQueue(Job job) {
        queued--;
        if (!job.program) people--;
    }

    private void forget(Waiter waiter) {
        byPage.computeIfPresent(waiter.asker().page(), (page, all) -> {
            all.remove(waiter);
            return all.isEmpty() ? null : all;
        });
    }

    private Map<String, Object> keptOf(String kind) {
        return kept.computeIfAbsent(kind, k -> new LinkedHashMap<>(KEPT * 2, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override protected boolean removeEldestEntry(Map.Entry<String, Object> eldest) { return size() > KEPT; }
        });
    }

    private void work() {
        while (true) {
            Job job;
            Runnable share;
            int spare;
            synchronized (lock) {
                Thread.interrupted();
                idle++;
                while ((job = next()) == null && shares.isEmpty() && !closed) {
                    try {
                        lock.wait();
                    } catch (InterruptedException e) {
                        if (closed) return;
                    }
                }
                idle--;
                if (closed) return;
                share = job == null ? shares.poll() : null;
                spare = people == 0 ? idle : 0;
                if (job != null) begin(job);
            }
            if (share != null) share.run();
            if (job != null) done(job, spare);
        }
    }

    /** The next question of the user whose turn it is; a program's only where a processor stays free for people. */
    private Job next() {
        for (Map.Entry<String, Deque<Job>> turn : queues.entrySet()) {
            Deque<Job> own = turn.getValue();
            Job job = own.peek();
            if (job.program && programs >= Math.max(1, workers.size() - 1)) continue;
            own.poll();
            queues.remove(turn.getKey());
            if (!own.isEmpty()) queues.put(job.user, own);
            offQueue(job);
            return job;
        }
        return null;
    }

    private void begin(Job job) {
        job.worker = Thread.currentThread();
        job.heldByProgram = job.program;
        if (job.heldByProgram) programs++;
    }

    private void done(Job job, int spare) {
        Object answer = null;
        Throwable failed = null;
        try {
            answer = job.work.apply(new Hands(() -> job.unwanted, spare, this::share, () -> people > 0));
        } catch (RuntimeException | Error e) {
            failed = e instanceof RuntimeException ? e : new IllegalStateException(e);
        }
        List<Waiter> waiters;
        synchronized (lock) {
            job.worker = null;
            if (job.heldByProgram) programs--;
            jobs.remove(job);
            open.remove(job.question, job);
            waiters = List.copyOf(job.waiters);
            waiters.forEach(this::forget);
            if (failed == null && !job.question.key().isEmpty()) keptOf(job.question.kind()).put(job.question.key(), answer);
        }
        for (Waiter w : waiters) {
            if (failed == null) w.answer().complete(answer); else w.answer().completeExceptionally(failed);
        }
    }

    private void share(Runnable share) {
        synchronized (lock) {
            if (idle == 0) return;
            shares.add(share);
            lock.notify();
        }
    }

    @Override public void close() {
        synchronized (lock) {
            closed = true;
            for (Job job : jobs) {
                job.unwanted = true;
                job.waiters.forEach(w -> w.answer().completeExceptionally(new Closing()));
            }
            lock.notifyAll();
        }
        workers.forEach(Thread::interrupt);
    }
}
