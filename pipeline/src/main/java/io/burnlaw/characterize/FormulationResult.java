package io.burnlaw.characterize;

import io.burnlaw.batch.BatchResult;
import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.finding.Finding;
import io.burnlaw.quantity.Measured;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import io.burnlaw.regime.Regimes;
import io.burnlaw.regime.Regimes.Break;
import io.burnlaw.regime.Thresholds.Threshold;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * All results for one formulation.
 *
 * @param characteristicVelocity pooled from its firings [m/s]
 * @param exponent               with which the rate-averaged pressures were formed [1]
 * @param points                 all of its rate-pressure points, in the order of the log
 * @param fitPoints              those that were fitted, as the fit saw them
 * @param fit                    one law over the whole range, or why there is none
 * @param temperature            how the rate follows the temperature, where that could be told
 * @param pooling                the exponent along the burns and between the firings, where both are known
 * @param batches                the law over its castings, where the tables name them
 * @param regimes                piecewise laws, where there are points at two pressures or more
 * @param threshold              of the slow regime, where one was found
 * @param faster                 the pressures needed to burn faster
 */
public record FormulationResult(
        Formulation formulation,
        Optional<Measured> characteristicVelocity,
        double exponent,
        List<PointResult> points,
        List<FitPoint> fitPoints,
        FitResult fit,
        Optional<TemperatureResult> temperature,
        Optional<Pooling> pooling,
        Optional<BatchResult> batches,
        Optional<Regimes> regimes,
        Optional<Threshold> threshold,
        List<FasterAnswer> faster,
        List<Finding> findings) {

    public FormulationResult {
        points = List.copyOf(points);
        fitPoints = List.copyOf(fitPoints);
        faster = List.copyOf(faster);
        findings = List.copyOf(findings);
    }

    /** {@return the law over the batches, where one was fitted and there is one regime} */
    public Optional<BatchLaw> batchLaw() {
        return batches.filter(found -> regimes.map(Regimes::selected).orElse(1) == 1)
                .filter(BatchLaw.class::isInstance)
                .map(BatchLaw.class::cast);
    }

    /**
     * The law or laws that hold.
     *
     * @return of the regimes where there are several; else the single one, if there is one, for the next batch where batches
     *     are known
     */
    public Optional<PiecewiseLaw> laws() {
        return regimes.filter(found -> found.selected() > 1)
                .map(found -> new PiecewiseLaw(
                        found.laws(),
                        found.breaks().stream().map(Break::pressure).toList()))
                .or(() -> batchLaw()
                        .map(BatchLaw::next)
                        .or(() -> fit.fitted().map(FitResult.Fitted::law))
                        .map(PiecewiseLaw::of));
    }

    /** {@return the points that these laws rest on: not those that lie off them, too few for a law of their own} */
    public List<FitPoint> lawPoints() {
        List<String> apart = regimes.map(Regimes::apart).orElse(List.of());
        return fitPoints.stream().filter(point -> !apart.contains(point.id())).toList();
    }

    /**
     * A rate-pressure point, and whether and why it was used.
     *
     * @param batch    the casting that it came from
     * @param pressure rate-averaged [Pa, absolute]
     * @param rate     as fitted: referred to the reference temperature where two temperatures were fired [m/s]
     * @param residual studentized [1], about the law of its regime where there are several, else about the single law;
     *                 empty where it was not fitted
     * @param segment  number of its regime from 1, where there are several
     */
    public record PointResult(
            RatePoint point,
            Optional<String> batch,
            double pressure,
            double rate,
            OptionalDouble residual,
            OptionalInt segment) {

        /** {@return whether it was fitted} */
        public boolean used() {
            return point.setAside().isEmpty();
        }
    }
}
