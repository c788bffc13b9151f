package io.burnlaw.batch;

import io.burnlaw.batch.BatchResult.BatchLaw;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Fits r = a·P^n to the points of several batches.
 *
 * <pre>
 *     ln r = L + b + (n + c) · ln(P / P_ref) + e      b ~ N(0, between²)   c ~ N(0, slope²)   e ~ N(0, within²)
 * </pre>
 *
 * c is in the model only where an F test shows at the level that exponents of batches differ. Errors of the pressure count
 * through the slope, and a point that is less certain than most brings its own variance ({@link #known}); shared errors move
 * all batches alike; several points of one firing count as one, at their mean in ln P and ln r.
 *
 * <p>The test of a difference and the interval of the between-batch deviation weigh each firing by its whole variance within a
 * batch. For equal variances they are exact whatever the numbers of firings (Wald 1947; Seely and El-Bassiouni 1983): with ψ the ratio of the variances,
 * ( RSS(ψ) − RSS(∞) ) / (m − 1) over RSS(∞) / (N − m − 1) is F. The scale of the interval is the within-batch deviation as
 * estimated. A variance at its bound needs no approximation for that.
 */
public final class BatchFit {

    private static final int MOST_BATCHES = 1000;

    private BatchFit() {}

    /**
     * Fits one law over batches.
     *
     * @param points in any order
     * @param level  of confidence [1]
     * @return the law, or the reason why there is none
     */
    public static BatchResult fit(List<BatchPoint> points, double level) {
        TreeMap<String, List<FitPoint>> batches = firings(points);
        int m = batches.size();
        int count = batches.values().stream().mapToInt(List::size).sum();
        if (m < 2) {
            return new BatchResult.NotFitted(
                    "All points are of one batch, so the next one cannot be predicted.",
                    "Cast and fire a second batch.");
        }
        if (count < m + 2) {
            return new BatchResult.NotFitted(
                    Sentence.of(
                            "%d batches have %d firings: the scatter between batches cannot be separated from that within a batch.",
                            m, count),
                    "Fire at least one batch twice or more.");
        }
        double mean = all(batches)
                .mapToDouble(p -> StrictMath.log(p.pressure()))
                .average()
                .orElseThrow();
        double spread = all(batches)
                .mapToDouble(p -> Math.pow(StrictMath.log(p.pressure()) - mean, 2))
                .max()
                .orElseThrow();
        double firstSlope = BatchLines.of(batches, point -> 0).slope();
        BatchLines lines = BatchLines.of(batches, known(all(batches).toList(), firstSlope));
        if (!(spread > 1e-4) || !(lines.spread() > 1e-6)) {
            return new BatchResult.NotFitted(
                    "Every batch was fired at one pressure only: the effects of batch and exponent cannot be separated.",
                    "Fire one batch at two pressures or more.");
        }
        double slope = lines.slope();
        double x0 = mean;
        boolean slopes = lines.slopesDiffer(level);
        MixedModel.Fit fit = null;
        List<MixedModel.Group> groups = List.of();
        for (int round = 0; round < 4; round++) {
            groups = groups(batches, x0, slope, slopes);
            double start = Math.max(lines.scatter(), 1e-12);
            fit = MixedModel.fit(groups, slopes ? new double[] {start, start, start} : new double[] {start, start});
            slope = fit.beta().getEntry(1);
            if (round == 1) {
                double at = x0 - fit.adjusted().getEntry(0, 1) / fit.adjusted().getEntry(1, 1);
                x0 = StrictMath.log(rounded(StrictMath.exp(at)));
            }
        }
        return law(batches, groups, fit, x0, lines, level);
    }

    private static BatchLaw law(
            TreeMap<String, List<FitPoint>> batches,
            List<MixedModel.Group> groups,
            MixedModel.Fit fit,
            double x0,
            BatchLines lines,
            double level) {
        int m = batches.size();
        int count = all(batches).mapToInt(p -> 1).sum();
        int freedom = count - m - 1;
        double within = fit.theta()[0];
        double typical = count
                / groups.stream()
                        .flatMapToDouble(g -> Arrays.stream(g.v()))
                        .map(v -> 1 / (within + v))
                        .sum();
        VarianceRatio ratio = VarianceRatio.of(groups, within, typical, freedom);
        RealVector at = new ArrayRealVector(new double[] {1, 0});
        double[] common = shared(batches, groups, fit, FitPoint::systematic);
        double[] gauge = shared(batches, groups, fit, p -> fit.beta().getEntry(1) * p.pressureShared());
        RateLaw law = new RateLaw(
                fit.beta().getEntry(0),
                fit.beta().getEntry(1),
                rounded(StrictMath.exp(x0)),
                fit.adjusted().getEntry(0, 0),
                fit.adjusted().getEntry(0, 1),
                fit.adjusted().getEntry(1, 1),
                Math.max(1, fit.freedom(at, new double[fit.theta().length])),
                Math.sqrt(within + fit.theta()[1]),
                all(batches).mapToDouble(FitPoint::pressure).min().orElseThrow(),
                all(batches).mapToDouble(FitPoint::pressure).max().orElseThrow(),
                count,
                Weighting.PROPORTIONAL,
                SystematicError.at(0, List.of(common, gauge)));
        double slope = fit.theta().length > 2 ? fit.theta()[2] : 0;
        RealVector exponent = new ArrayRealVector(new double[] {0, 1});
        double half = BatchLaw.t(fit.freedom(exponent, new double[fit.theta().length]), level)
                * Math.sqrt(law.exponentVariance() + law.commonError().exponentVariance());
        return new BatchLaw(
                law,
                next(
                        law,
                        fit.freedom(at, fit.theta().length > 2 ? new double[] {1, 1, 0} : new double[] {1, 1}),
                        slope),
                new Interval.Estimated(
                        law.exponent() - half, law.exponent() + half, level, Interval.Method.KENWARD_ROGER),
                Math.sqrt(within),
                Math.sqrt(fit.theta()[1]),
                Math.sqrt(typical * ratio.at(0.5 + level / 2)),
                Math.sqrt(typical * ratio.at(0.5 - level / 2)),
                level,
                ratio.pValue(),
                Math.sqrt(slope),
                more(fit.theta()[1], within, (double) count / m, m, level),
                lines.members(law, level));
    }

    /** One firing of a batch not yet cast; exponents that differ between batches count as uncertainty of the exponent. */
    private static RateLaw next(RateLaw law, double freedom, double slopeVariance) {
        return new RateLaw(
                law.lnRateAtReference(),
                law.exponent(),
                law.referencePressure(),
                law.rateVariance(),
                law.covariance(),
                law.exponentVariance() + slopeVariance,
                Math.max(1, freedom),
                law.residualScatter(),
                law.pressureLow(),
                law.pressureHigh(),
                law.points(),
                law.weighting(),
                law.commonError());
    }

    /** One point for each firing, by batch. */
    static TreeMap<String, List<FitPoint>> firings(List<BatchPoint> points) {
        TreeMap<String, Map<String, List<FitPoint>>> clusters = new TreeMap<>();
        for (BatchPoint each : points) {
            clusters.computeIfAbsent(each.batch(), id -> new LinkedHashMap<>())
                    .computeIfAbsent(each.point().cluster(), id -> new ArrayList<>())
                    .add(each.point());
        }
        TreeMap<String, List<FitPoint>> batches = new TreeMap<>();
        clusters.forEach((id, firings) ->
                batches.put(id, firings.values().stream().map(BatchFit::mean).toList()));
        return batches;
    }

    private static FitPoint mean(List<FitPoint> cluster) {
        return cluster.get(0)
                .moved(
                        StrictMath.exp(cluster.stream()
                                .mapToDouble(p -> StrictMath.log(p.pressure()))
                                .average()
                                .orElseThrow()),
                        StrictMath.exp(cluster.stream()
                                .mapToDouble(p -> StrictMath.log(p.rate()))
                                .average()
                                .orElseThrow()));
    }

    private static Stream<FitPoint> all(TreeMap<String, List<FitPoint>> batches) {
        return batches.values().stream().flatMap(List::stream);
    }

    /**
     * What a firing adds of its own to the scatter within a batch. Half of the firings are no more uncertain than the median,
     * and their errors are in the scatter that is estimated; one that is beyond it adds the difference of the squares, and one
     * that says so itself all of its own.
     *
     * @return relative variance of a point [1]
     */
    static ToDoubleFunction<FitPoint> known(List<FitPoint> points, double slope) {
        double[] own =
                points.stream().mapToDouble(p -> p.acrossStd(slope)).sorted().toArray();
        double usual = own[(own.length - 1) / 2];
        return p -> {
            double carried = slope * p.pressureStd() / p.pressure();
            double across = p.acrossStd(slope);
            double beyond = across * across - (p.lessCertain() ? 0 : usual * usual);
            return Math.max(0, beyond) + carried * carried;
        };
    }

    private static List<MixedModel.Group> groups(
            TreeMap<String, List<FitPoint>> batches, double x0, double slope, boolean slopes) {
        List<MixedModel.Group> groups = new ArrayList<>();
        ToDoubleFunction<FitPoint> known = known(all(batches).toList(), slope);
        for (List<FitPoint> points : batches.values()) {
            int n = points.size();
            double[] ones = new double[n];
            Arrays.fill(ones, 1);
            double[] x = new double[n];
            double[] y = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = StrictMath.log(points.get(i).pressure()) - x0;
                y[i] = StrictMath.log(points.get(i).rate());
            }
            double[] variance = points.stream().mapToDouble(known).toArray();
            RealMatrix fixed = new Array2DRowRealMatrix(n, 2);
            fixed.setColumn(0, ones);
            fixed.setColumn(1, x);
            groups.add(new MixedModel.Group(
                    fixed, slopes ? new double[][] {ones, x} : new double[][] {ones}, y, ones, variance));
        }
        return groups;
    }

    /** Batches until the interval of the deviation, by the mean squares of a balanced layout, lies within half and double of it. */
    private static OptionalInt more(double between, double within, double each, int m, double level) {
        if (!(between > 0)) {
            return OptionalInt.empty();
        }
        double square = between + within / each;
        for (int batches = Math.max(m, 2); batches <= MOST_BATCHES; batches++) {
            ChiSquaredDistribution chi = ChiSquaredDistribution.of(batches - 1);
            double low = square * (batches - 1) / chi.inverseCumulativeProbability(0.5 + level / 2) - within / each;
            double high = square * (batches - 1) / chi.inverseCumulativeProbability(0.5 - level / 2) - within / each;
            if (low >= between / 4 && high <= between * 4) {
                return OptionalInt.of(batches - m);
            }
        }
        return OptionalInt.empty();
    }

    /** What one standard deviation of an error that all firings share does to the mean law at the reference pressure. */
    private static double[] shared(
            TreeMap<String, List<FitPoint>> batches,
            List<MixedModel.Group> groups,
            MixedModel.Fit fit,
            ToDoubleFunction<FitPoint> relative) {
        List<MixedModel.Group> moved = new ArrayList<>();
        int g = 0;
        for (List<FitPoint> points : batches.values()) {
            MixedModel.Group group = groups.get(g++);
            double[] shift = points.stream().mapToDouble(relative).toArray();
            moved.add(new MixedModel.Group(group.x(), group.z(), shift, group.k(), group.v()));
        }
        return MixedModel.fixedEffects(moved, fit.theta()).toArray();
    }

    private static double rounded(double pressure) {
        return new BigDecimal(pressure)
                .round(new MathContext(2, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
