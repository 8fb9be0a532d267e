package leeway.app.web;

import java.time.Duration;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Where answers are worked out: as many at once as there are processors, a short queue before them, and a limit of time
 * for each, its waiting included.
 */
final class Desk implements AutoCloseable {
    private final ThreadPoolExecutor workers;
    private final Duration limit;

    Desk(int processors, int waiting, Duration limit) {
        this.limit = limit;
        this.workers = new ThreadPoolExecutor(processors, processors, 1, TimeUnit.MINUTES, new ArrayBlockingQueue<>(waiting), work -> {
            Thread thread = new Thread(work, "answers");
            thread.setDaemon(true);
            return thread;
        });
    }

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

    /** Done when there is room for it; what goes wrong there comes up again when somebody asks. */
    void later(Runnable work) { workers.execute(work); }

    <T> T answer(Callable<T> work) {
        Future<T> answer;
        try {
            answer = workers.submit(work);
        } catch (RejectedExecutionException e) {
            throw new TooMany();
        }
        try {
            return answer.get(limit.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            answer.cancel(true);
            throw new TooLong(limit.toSeconds());
        } catch (InterruptedException e) {
            answer.cancel(true);
            Thread.currentThread().interrupt();
            throw new TooLong(limit.toSeconds());
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException r) throw r;
            if (e.getCause() instanceof Error r) throw new IllegalStateException(r);
            throw new IllegalStateException(e.getCause());
        }
    }

    @Override public void close() { workers.shutdownNow(); }
}
