package io.burnlaw.ratelaw;

import io.burnlaw.campaign.PressureErrors;
import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.ratelaw.FitResult.LackOfFit;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.FitResult.Residual;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Fits r = a·P^n to rate-pressure points by weighted nonlinear least squares.
 *
 * <pre>
 *     r(P) = exp( L + n · ln(P / P_ref) )         L = ln r(P_ref)
 * </pre>
 *
 * P_ref is the pressure at which L and n are uncorrelated under the weighting used, rounded to two digits. Weighting,
 * scatter and errors of the pressure: {@link Weighting}, {@link PressureErrors}, docs/methods.md, section 'The law'.
 *
 * <p><b>Source.</b> Levenberg-Marquardt: Marquardt (1963); intervals: Bates and Watts (1988); Efron (1987).
 */
public final class RateLawFit {

    private static final double LN_SPAN_LEAST = StrictMath.log(1.02);

    private RateLawFit() {}

    /**
     * Fits one law to all points.
     *
     * @return a law with its intervals, or the reason why there is none and which firing would help
     */
    public static FitResult fit(List<FitPoint> points, FitOptions options) {
        Optional<FitResult.NotFitted> obstacle = Obstacles.of(points, options);
        if (obstacle.isPresent()) {
            return obstacle.get();
        }
        PressureErrors treated = treated(points, options);
        WeightedFit.Outcome outcome = WeightedFit.fit(points, options.weighting(), treated);
        if (outcome instanceof WeightedFit.Failed failed) {
            return new FitResult.NotFitted(
                    "The fit failed: " + failed.reason() + ".",
                    "Look at the points with the largest and the smallest rate: one of them may be in another unit.");
        }
        WeightedSolution solution = (WeightedSolution) outcome;
        RateLaw law = Laws.of(solution, points, options.weighting());
        List<MethodIntervals> intervals = IntervalMethods.of(solution, law, points, options);
        List<Residual> residuals = Residuals.of(solution, points, options.weighting());
        Optional<LackOfFit> lackOfFit = PureError.of(solution);
        return new FitResult.Fitted(
                law,
                treated,
                intervals,
                Interval.Method.STUDENT_T,
                residuals,
                lackOfFit,
                OtherFits.of(solution, law, points, options),
                findings(law, residuals, lackOfFit, options.level()));
    }

    /**
     * Fits the law alone, as {@link #fit} does, without intervals by other methods, and other fits.
     *
     * @return the law; empty where {@link #fit} gives a reason instead
     */
    public static Optional<RateLaw> law(List<FitPoint> points, FitOptions options) {
        if (Obstacles.of(points, options).isPresent()) {
            return Optional.empty();
        }
        return WeightedFit.fit(points, options.weighting(), treated(points, options))
                        instanceof WeightedSolution solution
                ? Optional.of(Laws.of(solution, points, options.weighting()))
                : Optional.empty();
    }

    private static PressureErrors treated(List<FitPoint> points, FitOptions options) {
        return points.stream().anyMatch(p -> p.pressureStd() > 0) ? options.pressureErrors() : PressureErrors.NONE;
    }

    private static List<Finding> findings(
            RateLaw law, List<Residual> residuals, Optional<LackOfFit> lackOfFit, double level) {
        List<Finding> findings = new ArrayList<>();
        if (law.points() < 5) {
            findings.add(Finding.of(
                    FindingCode.FEW_POINTS,
                    say("%d points: too few for a reliable interval of the exponent.", law.points())));
        }
        double span = law.pressureHigh() / law.pressureLow();
        if (span < 3) {
            findings.add(
                    Finding.of(FindingCode.NARROW_RANGE, say("The highest pressure is %.2f times the lowest.", span)));
        }
        for (Residual each : residuals) {
            if (each.pValue() < 0.05) {
                findings.add(Finding.of(
                        FindingCode.OUTLIER,
                        say(
                                "Point %s is %+.1f %% off the law: %.1f standard deviations of the others' scatter.",
                                each.id(), 100 * StrictMath.expm1(each.lnResidual()), each.externallyStudentized())));
            }
        }
        lackOfFit
                .filter(test -> test.pValue() < 0.05)
                .ifPresent(test -> findings.add(Finding.of(
                        FindingCode.LACK_OF_FIT,
                        say(
                                "Repeated firings scatter by %.2f %%; their means are further from the law than that explains (%s).",
                                100 * test.pureScatter(), NumberFormat.probability(test.pValue())))));
        law.exponentInterval(level)
                .estimated()
                .filter(e -> e.high() >= 1)
                .ifPresent(e -> findings.add(Finding.of(
                        FindingCode.UNSTABLE_EXPONENT,
                        say("The exponent is %.2f and its interval reaches %.2f.", law.exponent(), e.high()))));
        return findings;
    }

    static String say(String format, Object... values) {
        return Sentence.of(format, values);
    }

    static double leastLnSpan() {
        return LN_SPAN_LEAST;
    }

    /**
     * How each point lies about the law: studentized residuals and Cook's distance.
     *
     * <p><b>Source.</b> Cook and Weisberg (1982), ch. 2.
     */
    private static final class Residuals {

        private Residuals() {}

        static List<Residual> of(WeightedSolution s, List<FitPoint> points, Weighting weighting) {
            int freedom = s.clusters - 2;
            List<Residual> residuals = new ArrayList<>();
            for (int i = 0; i < points.size(); i++) {
                FitPoint p = points.get(i);
                double ln = StrictMath.log(p.rate());
                double lnFitted = s.lnRateUnit + s.parameters[0] + s.parameters[1] * s.x[i];
                double h = Math.min(s.leverage[i], 1);
                double room = Math.sqrt(s.variance[i] * (1 - h));
                double internal = room > 0 ? s.residual[i] / room : 0;
                double external = external(internal, freedom, weighting.estimatesScale());
                residuals.add(new Residual(
                        p.id(),
                        p.pressure(),
                        p.rate(),
                        StrictMath.exp(lnFitted),
                        ln - lnFitted,
                        h,
                        internal,
                        external,
                        Math.min(1, points.size() * chance(external, freedom - 1, weighting.estimatesScale())),
                        h < 1 ? internal * internal * h / (2 * (1 - h)) : Double.POSITIVE_INFINITY));
            }
            return residuals;
        }

        private static double external(double internal, int freedom, boolean estimatesScale) {
            double rest = freedom - internal * internal;
            return estimatesScale && freedom > 1 && rest > 0 ? internal * Math.sqrt((freedom - 1) / rest) : internal;
        }

        /** Two-sided probability of so large a residual at one point; one where nothing is left to judge it by. */
        private static double chance(double external, int freedom, boolean estimatesScale) {
            double size = Math.abs(external);
            if (!estimatesScale) {
                return 2 * NormalDistribution.of(0, 1).survivalProbability(size);
            }
            return freedom < 1 ? 1 : 2 * TDistribution.of(freedom).survivalProbability(size);
        }
    }

    /**
     * The lack-of-fit test: the scatter of firings repeated at one pressure against that of their means about the law.
     *
     * <pre>
     *     F = [ (S - S_pure) / (groups - 2) ] / [ S_pure / (points - groups) ]
     * </pre>
     *
     * with S the weighted sum of squares about the law and S_pure that about the groups' means. Firings count as
     * repeated where their pressures lie within {@value #SAME_PRESSURE_PERCENT} % of each other; each rate is brought
     * to the group's mean pressure along the law first, so that the spread left does not count as scatter.
     *
     * <p><b>Source.</b> Draper and Smith (1998), section 2.1.
     */
    private static final class PureError {

        static final int SAME_PRESSURE_PERCENT = 2;

        private PureError() {}

        /** Empty where no pressure was repeated, where too few differ, or where points share a firing. */
        static Optional<LackOfFit> of(WeightedSolution s) {
            int count = s.x.length;
            List<List<Integer>> groups = groups(s);
            int lack = groups.size() - 2;
            int pure = count - groups.size();
            if (lack < 1 || pure < 1 || s.clusters < count) {
                return Optional.empty();
            }
            double about = 0;
            double within = 0;
            double relative = 0;
            for (List<Integer> group : groups) {
                double sum = 0;
                double mean = 0;
                for (int i : group) {
                    sum += s.weight(i);
                    mean += s.weight(i) * s.residual[i];
                }
                mean /= sum;
                for (int i : group) {
                    double d = s.residual[i] - mean;
                    about += s.weight(i) * s.residual[i] * s.residual[i];
                    within += s.weight(i) * d * d;
                    double scale = s.curve == Curve.POWER ? s.curve.value(s.x[i], s.parameters) : 1;
                    relative += d * d / (scale * scale);
                }
            }
            if (!(within > 0)) {
                return Optional.empty();
            }
            double statistic = Math.max(0, about - within) / lack / (within / pure);
            return Optional.of(new LackOfFit(
                    statistic,
                    lack,
                    pure,
                    FDistribution.of(lack, pure).survivalProbability(statistic),
                    Math.sqrt(relative / pure)));
        }

        private static List<List<Integer>> groups(WeightedSolution s) {
            double width = StrictMath.log1p(SAME_PRESSURE_PERCENT / 100.0);
            List<Integer> order = IntStream.range(0, s.x.length)
                    .boxed()
                    .sorted(Comparator.comparingDouble(i -> s.x[i]))
                    .toList();
            List<List<Integer>> groups = new ArrayList<>();
            double first = Double.NEGATIVE_INFINITY;
            for (int i : order) {
                if (s.x[i] - first > width) {
                    groups.add(new ArrayList<>());
                    first = s.x[i];
                }
                groups.get(groups.size() - 1).add(i);
            }
            return groups;
        }
    }
}
