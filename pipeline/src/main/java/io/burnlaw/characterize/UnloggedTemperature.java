package io.burnlaw.characterize;

import io.burnlaw.campaign.Campaign;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.ratelaw.FitOptions;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.TemperatureFit;
import io.burnlaw.ratelaw.TemperatureFit.PointAtTemperature;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.reduction.point.RatePoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What grains of unknown temperature can do to a law.
 *
 * <pre>
 *     a : off by s T                                              where all were off by T                     [1]
 *     n : off by s 2 T / ln( P_high / P_low )                     where they got warmer or colder with the pressure   [1]
 *         off by 2 s T/sqrt(3) / sqrt( sum (ln P - mean)^2 )      where temperature and pressure have nothing to do with each other
 * </pre>
 *
 * <p>with s = 0.2 % a kelvin and T = 15 K. The order of the log stands for the season: where it goes with the pressure, so may
 * the temperature, and the scatter about the law does not show it.
 *
 * <p><b>Source.</b> Sensitivity of 0.1 to 0.3 % a kelvin, grains within 15 K: common practice, no source. The rest: derived.
 */
final class UnloggedTemperature {

    private static final double SENSITIVITY = 0.002;

    private static final double RANGE = 15;

    /** Rank correlation from which the order of the log goes with the pressure, and the fewest firings that show it. */
    private static final double ORDERED = 0.7;

    private static final int FEWEST = 4;

    private UnloggedTemperature() {}

    /**
     * Looks for it.
     *
     * @param points that are fitted, in the order of the log
     * @param fitted the same as the fit sees them
     * @return what it may have done; empty where each firing has its temperature
     */
    static Optional<Finding> look(List<RatePoint> points, List<FitPoint> fitted) {
        Map<String, FitPoint> byId =
                fitted.stream().collect(Collectors.toMap(FitPoint::id, Function.identity(), (a, b) -> a));
        List<RatePoint> firings = points.stream()
                .filter(point -> point.firing().isPresent() && byId.containsKey(point.id()))
                .toList();
        long unknown = firings.stream()
                .filter(point -> point.temperature().isEmpty())
                .map(RatePoint::cluster)
                .distinct()
                .count();
        long all = firings.stream().map(RatePoint::cluster).distinct().count();
        double[] x = firings.stream()
                .mapToDouble(point -> StrictMath.log(byId.get(point.id()).pressure()))
                .toArray();
        double span = IntStream.range(0, x.length).mapToDouble(i -> x[i]).max().orElse(0)
                - IntStream.range(0, x.length).mapToDouble(i -> x[i]).min().orElse(0);
        if (unknown == 0 || !(span > 0)) {
            return Optional.empty();
        }
        boolean ordered = x.length >= FEWEST && Math.abs(rankCorrelation(x)) >= ORDERED;
        double mean =
                IntStream.range(0, x.length).mapToDouble(i -> x[i]).average().orElseThrow();
        double squares = IntStream.range(0, x.length)
                .mapToDouble(i -> (x[i] - mean) * (x[i] - mean))
                .sum();
        double exponent =
                ordered ? SENSITIVITY * 2 * RANGE / span : 2 * SENSITIVITY * RANGE / Math.sqrt(3) / Math.sqrt(squares);
        return Optional.of(Finding.of(
                FindingCode.TEMPERATURE_NOT_LOGGED,
                Sentence.of(
                        "%d of %d firings have no grain_temperature. The rate changes by about %.1f %% per kelvin: grains %.0f K"
                                + " warmer or colder change a by %.0f %%. %s",
                        unknown,
                        all,
                        100 * SENSITIVITY,
                        RANGE,
                        100 * SENSITIVITY * RANGE,
                        ordered
                                ? Sentence.of(
                                        "The pressures follow the order of the log: if the days got warmer or colder by %.0f K in that"
                                                + " time, n is wrong by %.2g, and the scatter of the points does not show it.",
                                        2 * RANGE, exponent)
                                : Sentence.of(
                                        "The pressures do not follow the order of the log, so n is wrong by at most %.2g, and the scatter"
                                                + " of the points includes that.",
                                        exponent))));
    }

    /** Spearman's rank correlation of the values with their order. */
    private static double rankCorrelation(double[] values) {
        int count = values.length;
        List<Integer> byValue =
                new ArrayList<>(IntStream.range(0, count).boxed().toList());
        byValue.sort(Comparator.comparingDouble(i -> values[i]));
        double squares = 0;
        for (int rank = 0; rank < count; rank++) {
            double off = byValue.get(rank) - rank;
            squares += off * off;
        }
        return 1 - 6 * squares / (count * ((double) count * count - 1));
    }

    /** Rates brought to one temperature, where firings at several temperatures tell how. */
    record ReferredRates(List<FitPoint> points, Optional<TemperatureResult> sensitivity) {

        ReferredRates {
            points = List.copyOf(points);
        }

        /**
         * Brings the rates to the reference temperature. Where a temperature is missing, or all are alike, or nothing
         * can be told from them, the rates stay as they are.
         *
         * @param campaign with the reference temperature; where it states none, the median of the firings' is taken
         * @param used     points that are fitted
         * @param points   the same as the fit sees them
         * @return the points to fit
         */
        static ReferredRates of(Campaign campaign, List<RatePoint> used, List<FitPoint> points, FitOptions options) {
            if (used.isEmpty()
                    || used.stream().anyMatch(point -> point.temperature().isEmpty())) {
                return new ReferredRates(points, Optional.empty());
            }
            double[] temperatures = used.stream()
                    .mapToDouble(point -> point.temperature().getAsDouble())
                    .sorted()
                    .toArray();
            double reference = campaign.referenceTemperature().orElse(temperatures[temperatures.length / 2]);
            List<PointAtTemperature> at = new ArrayList<>();
            for (int i = 0; i < used.size(); i++) {
                at.add(new PointAtTemperature(
                        points.get(i), used.get(i).temperature().getAsDouble()));
            }
            TemperatureResult sensitivity = TemperatureFit.fit(at, reference, options.weighting(), options.level());
            return new ReferredRates(
                    sensitivity
                            .estimated()
                            .map(TemperatureResult.Estimated::referred)
                            .orElse(points),
                    Optional.of(sensitivity));
        }
    }
}
