package io.burnlaw.prediction;

import io.burnlaw.ballistics.Gas;
import io.burnlaw.ballistics.Motor;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.prediction.PredictionCheck.PredictedFiring;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.PiecewiseLaw;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.reduction.point.NumberStore;
import io.burnlaw.reduction.point.TraceHistory;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Predicts every firing from the others: law and c* without it, then the forward simulation of its motor.
 *
 * <p>The closure is good where the median error of peak and mean pressure is at most 7.5 % and that of the burn time at
 * most 5 %: a scatter of 3 % in rate at an exponent of a half leaves 4 % in pressure (own convention).
 */
public final class LeaveOneOut {

    private static final double PRESSURE_LIMIT = 0.075;
    private static final double TIME_LIMIT = 0.05;

    /** Points of a predicted record: enough for a line of a few hundred pixels. */
    private static final int DRAWN = 160;

    /** A median of a few firings scatters, and a law that one of them is left out of is less sure: own convention. */
    private static final double SCATTER_EXPLAINS = 2;

    /** Of the absolute value of a normal variable, its median in standard deviations. */
    private static final double MEDIAN_OF_NORMAL = 0.6745;

    private LeaveOneOut() {}

    /**
     * Predicts the firings of one formulation.
     *
     * @param points  that it was fitted to; those of a firing carry its id as their cluster
     * @param firings to be predicted, with their motors
     * @param outside clauses on firings that are outside of what the simulation can predict
     * @param store   where the predicted records are kept
     * @return the closure, or why no firing can be predicted
     */
    public static PredictionCheck of(
            PiecewiseLaw law,
            List<FitPoint> points,
            List<MeasuredFiring> firings,
            List<String> outside,
            NumberStore store) {
        LeaveOneOutLaw laws = new LeaveOneOutLaw(law, points);
        DoubleSummaryStatistics velocities = firings.stream()
                .flatMapToDouble(each -> each.characteristicVelocity().stream())
                .summaryStatistics();
        DoubleSummaryStatistics spikes = firings.stream()
                .flatMapToDouble(each -> each.ignitionSpike().stream())
                .summaryStatistics();
        List<Outcome> outcomes = firings.parallelStream()
                .map(each ->
                        outcome(each, withOthersVelocity(each, velocities), othersSpike(each, spikes), laws, store))
                .toList();
        List<PredictedFiring> predicted =
                outcomes.stream().flatMap(each -> each.predicted().stream()).toList();
        List<String> notPredicted = Stream.concat(
                        outside.stream(), outcomes.stream().flatMap(each -> each.whyNot().stream()))
                .toList();
        if (predicted.isEmpty()) {
            return new PredictionCheck.NotPredicted(
                    notPredicted.isEmpty()
                            ? "No firing was predicted: none of them has a complete motor."
                            : "No firing was predicted. " + String.join("; ", notPredicted) + ".");
        }
        return judged(law, predicted, notPredicted);
    }

    /**
     * A law as it would be without one firing.
     *
     * @param cluster id of the firing, or of a point by itself
     * @param piece   place of the law among those of the formulation, from 0
     * @param law     without it; its uncertainties are those with it
     */
    public record Without(String cluster, int piece, RateLaw law) {}

    /**
     * The laws of a formulation with one firing less, each in turn.
     *
     * @param points that it was fitted to
     * @return one for each firing and each law that it has points of, in the order of the points; none where too few
     *     firings are left
     */
    public static List<Without> laws(PiecewiseLaw law, List<FitPoint> points) {
        LeaveOneOutLaw laws = new LeaveOneOutLaw(law, points);
        return points.stream()
                .map(FitPoint::cluster)
                .distinct()
                .flatMap(cluster -> laws.without(cluster).stream()
                        .flatMap(left -> IntStream.range(0, law.laws().size())
                                .filter(piece -> !left.laws()
                                        .get(piece)
                                        .equals(law.laws().get(piece)))
                                .mapToObj(piece ->
                                        new Without(cluster, piece, left.laws().get(piece)))))
                .toList();
    }

    /** One firing predicted, or why not. */
    private record Outcome(Optional<PredictedFiring> predicted, Optional<String> whyNot) {

        static Outcome not(String why) {
            return new Outcome(Optional.empty(), Optional.of(why));
        }
    }

    private static Outcome outcome(
            MeasuredFiring each, Motor motor, double spike, LeaveOneOutLaw laws, NumberStore store) {
        Optional<PiecewiseLaw> rest = laws.without(each.id());
        if (rest.isEmpty()) {
            return Outcome.not(
                    "%s: without it, too few firings at different pressures are left for a law".formatted(each.id()));
        }
        PiecewiseLaw lit = rest.orElseThrow().ofMotorAt(each.meanPressure());
        return Prediction.of(motor, pressure -> each.rateFactor() * lit.rate(pressure), spike)
                .map(prediction -> new Outcome(Optional.of(beside(each, prediction, store)), Optional.empty()))
                .orElseGet(() ->
                        Outcome.not("%s: by the law of the others, this motor does not burn out within five minutes"
                                .formatted(each.id())));
    }

    /** The mean of the others, from the sum over all: with a sum for each firing the time would grow as their square. */
    private static double othersSpike(MeasuredFiring own, DoubleSummaryStatistics all) {
        long others = all.getCount() - (own.ignitionSpike().isPresent() ? 1 : 0);
        return others == 0 ? 0 : Math.max(0, (all.getSum() - own.ignitionSpike().orElse(0)) / others);
    }

    /** The mean of the others; the pooled one where they have none. */
    private static Motor withOthersVelocity(MeasuredFiring own, DoubleSummaryStatistics all) {
        Motor motor = own.motor();
        boolean counted = own.characteristicVelocity().isPresent();
        long others = all.getCount() - (counted ? 1 : 0);
        double sum = all.getSum() - own.characteristicVelocity().orElse(0);
        return others == 0
                ? motor
                : new Motor(
                        motor.grain(),
                        motor.density(),
                        new Gas(sum / others, motor.gas().specificHeatRatio()),
                        motor.nozzle(),
                        motor.freeVolume(),
                        motor.ambientPressure());
    }

    private static PredictedFiring beside(MeasuredFiring measured, Prediction prediction, NumberStore store) {
        double shift = measured.ignition() - prediction.ignition();
        int size = prediction.firing().size();
        int stride = Math.max(1, size / DRAWN);
        int[] drawn = IntStream.range(0, size)
                .filter(i -> i % stride == 0 || i == size - 1)
                .toArray();
        TraceHistory record = TraceHistory.of(new TraceHistory.Samples(
                Arrays.stream(drawn)
                        .mapToDouble(i -> prediction.firing().time(i) + shift)
                        .toArray(),
                Arrays.stream(drawn)
                        .mapToDouble(i -> prediction.firing().pressure(i))
                        .toArray(),
                Optional.empty()));
        return new PredictedFiring(
                measured,
                prediction.maxPressure(),
                prediction.meanPressure(),
                prediction.burnTime(),
                record.keptIn(store));
    }

    private static PredictionCheck.Predicted judged(
            PiecewiseLaw law, List<PredictedFiring> firings, List<String> notPredicted) {
        double peak = medianError(firings, PredictedFiring::maxPressureError);
        double mean = medianError(firings, PredictedFiring::meanPressureError);
        double time = medianError(firings, PredictedFiring::burnTimeError);
        double bias = median(firings.stream()
                .mapToDouble(PredictedFiring::maxPressureError)
                .sorted()
                .toArray());
        RateLaw middle = law.at(median(firings.stream()
                .mapToDouble(each -> each.measured().meanPressure())
                .sorted()
                .toArray()));
        double expected = MEDIAN_OF_NORMAL * middle.residualScatter() / Math.max(0.05, 1 - middle.exponent());
        boolean good = peak <= PRESSURE_LIMIT && mean <= PRESSURE_LIMIT && time <= TIME_LIMIT;
        String sentence = sentence(firings, peak, mean, time);
        Optional<Finding> finding = good
                ? Optional.empty()
                : Optional.of(Finding.of(FindingCode.POOR_CLOSURE, sentence + " " + cause(bias, peak, expected)));
        return new PredictionCheck.Predicted(firings, notPredicted, peak, mean, time, good, sentence, finding);
    }

    private static String sentence(List<PredictedFiring> firings, double peak, double mean, double time) {
        PredictedFiring worst = firings.stream()
                .max(Comparator.comparingDouble(each -> Math.abs(each.maxPressureError())))
                .orElseThrow();
        return "Each firing was predicted from the others. Typical errors in %s: peak pressure %s (median; worst %s in %s), mean pressure %s, burn time %s."
                .formatted(
                        firings.size() == 1 ? "1 firing" : firings.size() + " firings",
                        NumberFormat.percent(peak, 2),
                        NumberFormat.percent(Math.abs(worst.maxPressureError()), 2),
                        worst.measured().id(),
                        NumberFormat.percent(mean, 2),
                        NumberFormat.percent(time, 2));
    }

    private static String cause(double bias, double peak, double expected) {
        if (peak < SCATTER_EXPLAINS * expected) {
            return "The scatter of the firings explains this error: only more repeatable firings will reduce it.";
        }
        return Math.abs(bias) > peak / 2
                ? "Most predictions are too %s: check c*, the density, the throat and the grain's length."
                        .formatted(bias > 0 ? "high" : "low")
                : "The scatter of the firings explains only part of this error: check the form of the traces, the"
                        + " inhibited ends and the cores.";
    }

    private static double medianError(List<PredictedFiring> firings, ToDoubleFunction<PredictedFiring> error) {
        return median(firings.stream()
                .mapToDouble(each -> Math.abs(error.applyAsDouble(each)))
                .sorted()
                .toArray());
    }

    private static double median(double[] rising) {
        int middle = rising.length / 2;
        return rising.length % 2 == 1 ? rising[middle] : (rising[middle - 1] + rising[middle]) / 2;
    }

    /**
     * A firing as it was measured, and the motor that was fired.
     *
     * @param id                     of the firing; its points carry it as their cluster
     * @param motor                  as fired: its grain, throat before and after, chamber; density from its own mass
     *                               where that is known; c* pooled over all firings
     * @param rateFactor             rate at its own temperature over the rate at the law's [1]
     * @param characteristicVelocity its own c* [m/s], taken out of the pooled one when it is predicted; empty where it
     *                               has none
     * @param ignition               when its web began to burn [s, on the time axis of its trace]
     * @param maxPressure            [Pa, absolute]
     * @param meanPressure           over the burn time [Pa, absolute]
     * @param burnTime               [s]
     * @param ignitionSpike          of its ignition; see {@link IgnitionSpike} [N]
     */
    public record MeasuredFiring(
            String id,
            Motor motor,
            double rateFactor,
            OptionalDouble characteristicVelocity,
            double ignition,
            double maxPressure,
            double meanPressure,
            double burnTime,
            OptionalDouble ignitionSpike) {

        public MeasuredFiring {
            if (!(maxPressure > 0 && meanPressure > 0 && burnTime > 0 && rateFactor > 0)) {
                throw new IllegalArgumentException("firing " + id + ": " + maxPressure + " Pa at most, " + meanPressure
                        + " Pa on average, for " + burnTime + " s, rate by " + rateFactor);
            }
        }
    }
}
