package io.burnlaw.cli;

import io.burnlaw.characterize.Progress;
import java.io.PrintWriter;

/** Says on standard error how far long work has come; silent where nobody looks. */
final class ProgressLines implements Progress {

    private static final long SILENT_NANOSECONDS = 1_000_000_000L;

    private final PrintWriter err;
    private long last;

    private ProgressLines(PrintWriter err) {
        this.err = err;
        this.last = System.nanoTime();
    }

    /**
     * Progress for a person at a terminal, none for a file or a pipe.
     *
     * @param err where to
     */
    static Progress to(PrintWriter err) {
        return Terminal.isSeen(Terminal.ERR) ? new ProgressLines(err) : Progress.silent();
    }

    @Override
    public synchronized void done(String what, int count, int total) {
        long now = System.nanoTime();
        if (now - last > SILENT_NANOSECONDS) {
            last = now;
            err.println(what + " " + count + " of " + total);
        }
    }
}
