package leeway.app.command;

import java.io.PrintStream;

/**
 * A line on a terminal that says what long work is at; nothing where nobody watches, and nothing of work that is soon done.
 * Gone once the work is: nothing else may be written to the terminal meanwhile.
 */
final class Progress implements AutoCloseable {
    private static final long SILENT_MS = 500, EVERY_MS = 250;
    private static final int BAR = 20;
    private final PrintStream to;
    private final String what;
    private final Thread thread;
    private int done;
    private int of;
    private int shown;
    private boolean over;

    private Progress(PrintStream to, String what, long silentMs) {
        this.to = to;
        this.what = what;
        thread = new Thread(() -> watch(silentMs), "progress");
        thread.setDaemon(true);
    }

    static Progress of(Terminal terminal, String what) { return of(terminal, what, SILENT_MS); }

    static Progress of(Terminal terminal, String what, long silentMs) {
        Progress progress = new Progress(terminal.err(), what, silentMs);
        if (terminal.watched()) progress.thread.start();
        return progress;
    }

    /** How much of the work is done; from any thread. */
    synchronized void at(int done, int of) {
        this.done = done;
        this.of = of;
    }

    private synchronized void watch(long silentMs) {
        long began = System.nanoTime();
        try {
            for (long waitMs = silentMs; !over; waitMs = EVERY_MS) {
                if (waitMs > 0) wait(waitMs);
                if (!over) show(line(what, done, of, (System.nanoTime() - began) / 1_000_000_000));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    static String line(String what, int done, int of, long seconds) {
        if (of <= 0) return what + ", " + seconds + " s";
        int full = (int) ((long) BAR * Math.min(done, of) / of);
        return what + " [" + "#".repeat(full) + ".".repeat(BAR - full) + "] " + done + " of " + of + ", " + seconds + " s";
    }

    private void show(String line) {
        to.print("\r" + line + " ".repeat(Math.max(0, shown - line.length())) + (line.isEmpty() ? "\r" : ""));
        to.flush();
        shown = line.length();
    }

    @Override public synchronized void close() {
        over = true;
        if (shown > 0) show("");
        notifyAll();
    }
}
