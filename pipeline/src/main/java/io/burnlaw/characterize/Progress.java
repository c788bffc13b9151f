package io.burnlaw.characterize;

/** Receives the progress of the work. */
@FunctionalInterface
public interface Progress {

    /**
     * A piece of work is done; may be called from several threads.
     *
     * @param what  is counted, such as {@code firings reduced}
     * @param count how many are done
     * @param total how many there are
     */
    void done(String what, int count, int total);

    /** {@return a progress that says nothing} */
    static Progress silent() {
        return (what, count, total) -> {};
    }
}
