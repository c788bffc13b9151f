package io.burnlaw.report.html;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/** Runs independent tasks on several threads and returns the results in the order of the tasks. */
public final class ReportWorkers implements AutoCloseable {

    private final ExecutorService pool;

    /**
     * Starts them.
     *
     * @param workers threads, at least 1
     */
    public ReportWorkers(int workers) {
        pool = Executors.newFixedThreadPool(workers);
    }

    /**
     * Starts a piece of work.
     *
     * @return for {@link #result}
     */
    public <T> Future<T> start(Callable<T> work) {
        return pool.submit(work);
    }

    /** Starts a piece of work for each number from 0. */
    <T> List<Future<T>> start(int pieces, IntFunction<Callable<T>> work) {
        return IntStream.range(0, pieces).mapToObj(i -> start(work.apply(i))).toList();
    }

    /**
     * Waits for a piece of work.
     *
     * @param work as it was started
     * @throws IOException as the work threw it
     */
    public static <T> T result(Future<T> work) throws IOException {
        try {
            return work.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof IOException notWritten) {
                throw notWritten;
            }
            if (failed.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            if (failed.getCause() instanceof Error fatal) {
                throw fatal;
            }
            throw new IllegalStateException("work failed", failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", stopped);
        }
    }

    static <T> List<T> results(List<Future<T>> works) throws IOException {
        List<T> results = new ArrayList<>(works.size());
        for (Future<T> work : works) {
            results.add(result(work));
        }
        return results;
    }

    /** Drops what was not begun, and waits for what was: whoever clears up after it finds nobody still at work. */
    @Override
    public void close() {
        pool.shutdownNow();
        try {
            pool.awaitTermination(1, TimeUnit.HOURS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
