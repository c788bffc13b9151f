package io.burnlaw.reduction.point;

import java.util.Optional;

/** A record reduced to as many samples as a picture can show, extremes kept; loaded on demand. */
public final class TraceHistory {

    private final KeptColumns columns;

    private TraceHistory(KeptColumns columns) {
        this.columns = columns;
    }

    /**
     * The numbers of a history.
     *
     * @param time     [s]
     * @param pressure [Pa, absolute], as many as times; zero offset taken off
     * @param thrust   [N], as many as times, where it was recorded
     */
    public record Samples(double[] time, double[] pressure, Optional<double[]> thrust) {}

    /**
     * Takes the numbers; the arrays are copied.
     *
     * @param samples at least one
     * @throws IllegalArgumentException if the lengths differ, or nothing is there
     */
    public static TraceHistory of(Samples samples) {
        if (samples.time().length == 0) {
            throw new IllegalArgumentException("a history without a sample");
        }
        return new TraceHistory(samples.thrust()
                .map(thrust -> KeptColumns.of(samples.time(), samples.pressure(), thrust))
                .orElseGet(() -> KeptColumns.of(samples.time(), samples.pressure())));
    }

    /** The same history, kept elsewhere. */
    public TraceHistory keptIn(NumberStore store) {
        return new TraceHistory(columns.keptIn(store));
    }

    /** {@return its numbers, in the order of time, as new arrays} */
    public Samples samples() {
        double[][] read = columns.read();
        return new Samples(read[0], read[1], read.length > 2 ? Optional.of(read[2]) : Optional.empty());
    }
}
