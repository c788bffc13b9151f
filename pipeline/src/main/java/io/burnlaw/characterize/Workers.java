package io.burnlaw.characterize;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/** Independent work on several workers, its results in the order of the work whichever was done first. */
final class InOrder {

    private InOrder() {}

    /**
     * Applies a function to every item.
     *
     * @param items    in the order of the results
     * @param work     what to do with one; pure, so that the order in time cannot show
     * @param workers  how many at the same time, at least 1; so many items are in memory
     * @param progress told after each
     * @param what     is counted, for the progress
     * @param <A>      of the items
     * @param <B>      of the results
     * @return one result an item, in their order
     */
    static <A, B> List<B> map(List<A> items, Function<A, B> work, int workers, Progress progress, String what) {
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, Math.min(workers, items.size())));
        try {
            AtomicInteger done = new AtomicInteger();
            List<Callable<B>> calls = new ArrayList<>(items.size());
            for (A item : items) {
                calls.add(() -> {
                    B result = work.apply(item);
                    progress.done(what, done.incrementAndGet(), items.size());
                    return result;
                });
            }
            List<B> results = new ArrayList<>(items.size());
            for (Future<B> future : pool.invokeAll(calls)) {
                results.add(future.get());
            }
            return results;
        } catch (ExecutionException fault) {
            if (fault.getCause() instanceof RuntimeException program) {
                throw program;
            }
            if (fault.getCause() instanceof Error fatal) {
                throw fatal;
            }
            throw new IllegalStateException("work failed", fault.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", stopped);
        } finally {
            pool.shutdownNow();
        }
    }
}
