package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.events.Events;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.RatesAlong;
import io.burnlaw.reduction.point.TraceHistory;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** Result of the reduction of one firing: its rate points, or the reasons why there is none. */
public sealed interface Reduction {

    /** {@return id of the firing} */
    String firing();

    /** {@return what was seen} */
    List<Finding> findings();

    /** {@return the record thinned for drawing, where one could be read} */
    Optional<TraceHistory> history();

    /** The same reduction, with the courses of the firing kept elsewhere. */
    Reduction keptIn(NumberStore store);

    /**
     * The firing gave at least one rate point.
     *
     * @param points                 the firing's point, and further ones such as a dwell at low pressure
     * @param events                 when things happened
     * @param web                    [m]
     * @param meanPressure           plain mean over the burn time [Pa, absolute]
     * @param maxPressure            [Pa, absolute]
     * @param pressureIntegral       over the operation, of the gauge pressure [Pa s]
     * @param thicknessTimeRate      [m/s]
     * @param massBalanceRate        [m/s]; empty where there is no closed integral
     * @param characteristicVelocity from the pressure integral and the mass [m/s]; empty where the mass is unknown
     * @param throatBefore           [m]
     * @param throatAfter            [m], stated or inferred; empty where nothing is known
     * @param totalImpulse           [N s], where thrust was recorded
     * @param specificImpulse        total impulse over weight of propellant [s]
     * @param thrustCoefficient      mean over the operation [1], where thrust and pressure were recorded
     * @param along                  rate and pressure along the burn; none where they could not be had
     * @param igniterGas             what an igniter is expected to have given where none is stated [kg]; empty where it is
     *                               stated, or does not show
     */
    record Reduced(
            String firing,
            List<RatePoint> points,
            Events events,
            Measured web,
            double meanPressure,
            double maxPressure,
            double pressureIntegral,
            double thicknessTimeRate,
            OptionalDouble massBalanceRate,
            Optional<Measured> characteristicVelocity,
            double throatBefore,
            OptionalDouble throatAfter,
            OptionalDouble totalImpulse,
            OptionalDouble specificImpulse,
            OptionalDouble thrustCoefficient,
            RatesAlong along,
            Optional<Measured> igniterGas,
            List<Finding> findings,
            Optional<TraceHistory> history)
            implements Reduction {
        public Reduced {
            points = List.copyOf(points);
            findings = List.copyOf(findings);
            if (points.isEmpty()) {
                throw new IllegalArgumentException("a reduced firing has at least one point: " + firing);
            }
        }

        /** {@return whether it has no record: its burn was timed, its pressures were worked out} */
        public boolean timed() {
            return points.get(0).source() == RatePoint.Source.TIMED;
        }

        @Override
        public Reduced keptIn(NumberStore store) {
            return with(
                    points.stream().map(point -> point.keptIn(store)).toList(),
                    along.keptIn(store),
                    findings,
                    history.map(found -> found.keptIn(store)));
        }

        /**
         * The same firing with more findings.
         *
         * @param more come after those that are there
         */
        public Reduced withFindings(List<Finding> more) {
            return with(
                    points,
                    along,
                    Stream.concat(findings.stream(), more.stream()).toList(),
                    history);
        }

        private Reduced with(
                List<RatePoint> otherPoints,
                RatesAlong otherAlong,
                List<Finding> otherFindings,
                Optional<TraceHistory> otherHistory) {
            return new Reduced(
                    firing,
                    otherPoints,
                    events,
                    web,
                    meanPressure,
                    maxPressure,
                    pressureIntegral,
                    thicknessTimeRate,
                    massBalanceRate,
                    characteristicVelocity,
                    throatBefore,
                    throatAfter,
                    totalImpulse,
                    specificImpulse,
                    thrustCoefficient,
                    otherAlong,
                    igniterGas,
                    otherFindings,
                    otherHistory);
        }
    }

    /**
     * The firing gave no rate.
     *
     * @param findings what was seen, at least one rejection among it
     * @param history  the record thinned for drawing, where one could be read
     */
    record Rejected(String firing, List<Finding> findings, Optional<TraceHistory> history) implements Reduction {
        public Rejected {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) {
                throw new IllegalArgumentException("a rejection names at least one finding: " + firing);
            }
        }

        @Override
        public Rejected keptIn(NumberStore store) {
            return new Rejected(firing, findings, history.map(found -> found.keptIn(store)));
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
