package io.burnlaw.characterize;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * The one pool in which a campaign is worked out. What is forked inside of it, and a parallel stream too, runs on its
 * threads: so the number of workers governs all of it.
 */
final class Workers {

    private Workers() {}

    /**
     * Runs work that forks.
     *
     * @param workers threads, at least 1
     * @param work    may fork and map
     */
    static <T> T run(int workers, Supplier<T> work) {
        // First in, first out: firings are begun in the order of the log.
        ForkJoinPool pool =
                new ForkJoinPool(Math.max(1, workers), ForkJoinPool.defaultForkJoinWorkerThreadFactory, null, true);
        try {
            return pool.invoke(ForkJoinTask.adapt((Callable<T>) work::get));
        } finally {
            pool.shutdownNow();
        }
    }

    /**
     * Begins work beside that of the caller, who joins it.
     *
     * @param work pure, so that the order in time cannot show
     * @return the work under way
     */
    static <T> ForkJoinTask<T> fork(Callable<T> work) {
        return ForkJoinTask.adapt(work).fork();
    }

    /**
     * Applies a function to every item.
     *
     * @param items in the order of the results
     * @param work  what to do with one; pure, so that the order in time cannot show
     * @param what  is counted, for the progress
     * @return one result an item, in their order
     */
    static <A, B> List<B> map(List<A> items, Function<A, B> work, Progress progress, String what) {
        AtomicInteger done = new AtomicInteger();
        List<ForkJoinTask<B>> begun = new ArrayList<>(items.size());
        for (A item : items) {
            begun.add(fork(() -> {
                B result = work.apply(item);
                progress.done(what, done.incrementAndGet(), items.size());
                return result;
            }));
        }
        List<B> results = new ArrayList<>(items.size());
        begun.forEach(task -> results.add(task.join()));
        return results;
    }
}
