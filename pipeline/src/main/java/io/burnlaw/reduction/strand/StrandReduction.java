package io.burnlaw.reduction.strand;

import io.burnlaw.finding.Finding;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.TraceHistory;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Result of the reduction of one strand: a rate point, or the reasons why there is none. */
public sealed interface StrandReduction {

    /** {@return id of the strand} */
    String strand();

    /** {@return what was seen} */
    List<Finding> findings();

    /** {@return the record thinned for drawing, where one could be read} */
    Optional<TraceHistory> history();

    /** The same reduction, with the courses of the strand kept elsewhere. */
    StrandReduction keptIn(NumberStore store);

    /**
     * The strand gave a rate.
     *
     * @param point        rate and pressure
     * @param from         begin of the timed burn [s]
     * @param to           its end [s]
     * @param timeStd      standard uncertainty of the time between [s]
     * @param meanPressure [Pa, absolute]
     */
    record Reduced(
            String strand,
            RatePoint point,
            double from,
            double to,
            double timeStd,
            double meanPressure,
            List<Finding> findings,
            Optional<TraceHistory> history)
            implements StrandReduction {
        public Reduced {
            findings = List.copyOf(findings);
        }

        @Override
        public Reduced keptIn(NumberStore store) {
            return new Reduced(
                    strand,
                    point.keptIn(store),
                    from,
                    to,
                    timeStd,
                    meanPressure,
                    findings,
                    history.map(found -> found.keptIn(store)));
        }

        /**
         * The same strand with one finding more.
         *
         * @param more comes after those that are there
         */
        public Reduced withFinding(Finding more) {
            return new Reduced(
                    strand,
                    point,
                    from,
                    to,
                    timeStd,
                    meanPressure,
                    Stream.concat(findings.stream(), Stream.of(more)).toList(),
                    history);
        }
    }

    /**
     * The strand gave no rate.
     *
     * @param findings what was seen, at least one rejection among it
     * @param history  the record thinned for drawing, where one could be read
     */
    record Rejected(String strand, List<Finding> findings, Optional<TraceHistory> history) implements StrandReduction {
        public Rejected {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) {
                throw new IllegalArgumentException("a rejection names at least one finding: " + strand);
            }
        }

        @Override
        public Rejected keptIn(NumberStore store) {
            return new Rejected(strand, findings, history.map(found -> found.keptIn(store)));
        }
    }

    /**
     * Answers for both cases.
     *
     * @param reduced  the answer where there is a rate
     * @param rejected the answer where there is none
     */
    default <T> T match(Function<Reduced, T> reduced, Function<Rejected, T> rejected) {
        return this instanceof Reduced r ? reduced.apply(r) : rejected.apply((Rejected) this);
    }
}
