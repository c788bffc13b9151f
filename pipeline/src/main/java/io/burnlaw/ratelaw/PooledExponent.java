package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Pools the rates along several burns, with a random effect for the firing:
 *
 * <pre>
 *     ln r_kj = L + n·ln P_kj + b_k + e_kj                   firing k, sample j
 *     within:  n_W = sum V_k·n_k / sum V_k                   n_k slope along burn k, V_k variance of its ln P
 *     between: n_B = slope of the firings' means of ln r over their means of ln P
 * </pre>
 *
 * The samples of a burn are correlated, so each burn gives one slope and one mean, and uncertainty comes from how firings
 * differ, never from how many samples they have: var(n_W) is that of the jackknife over firings, right whether slopes
 * scatter alike or as 1/V_k. With normal effects the two are independent, and their mean weighted by variance is the
 * estimate of the mixed model (Maddala 1971). What bends every burn alike cannot be seen in how they differ: a smooth
 * error of 0.1 % root mean square is added to both in the test and in the mean. If they disagree by Welch's test, usually
 * geometry or c* is wrong: both act along a burn and cancel between firings, or the other way round.
 *
 * <p><b>Source.</b> Maddala (1971); Welch (1947); for curves as one observation a firing: Diggle, Heagerty, Liang and
 * Zeger (2002), section 6.2.
 */
public final class PooledExponent {

    /** A burn at more even pressure than this standard deviation of ln P has no usable slope. */
    private static final double LEAST_SPREAD = 0.02;

    private static final int FEWEST_SAMPLES = 5;

    /**
     * Smooth relative error of the rates that all burns share, root mean square along ln P [1]: simulated burns without
     * any other error come out with exponents off by up to a thousandth.
     */
    private static final double SMOOTH = 0.001;

    private PooledExponent() {}

    /** Mean and slope of one burn. */
    private record Line(double meanX, double meanY, double slope, double variance, double low, double high) {}

    /**
     * Pools the burns.
     *
     * @param curves one for each firing
     * @param level  of the intervals [1], between 0.5 and 0.999
     * @return both exponents and the law of both, or why there is none
     */
    public static Pooling of(List<BurnCurve> curves, double level) {
        return of(curves.stream(), level);
    }

    /**
     * Pools the burns, one in the memory at a time.
     *
     * @param curves one for each firing
     * @param level  of the intervals [1], between 0.5 and 0.999
     * @return both exponents and the law of both, or why there is none
     */
    public static Pooling of(Stream<BurnCurve> curves, double level) {
        List<Line> lines = curves.filter(curve -> curve.along().size() >= FEWEST_SAMPLES)
                .map(PooledExponent::line)
                .toList();
        List<Line> sloped = lines.stream()
                .filter(line -> line.variance() > LEAST_SPREAD * LEAST_SPREAD)
                .toList();
        if (lines.size() < 3) {
            return new Pooling.NotPooled(
                    say(
                            "%d firings have a rate along their burn: three are needed to see how firings differ.",
                            lines.size()),
                    "Fire once more, at another pressure.");
        }
        if (sloped.size() < 2) {
            return new Pooling.NotPooled(
                    "The burns ran at even pressure: no exponent follows from within a burn.",
                    "Fire a grain whose surface changes over the burn, such as a core that burns outward with inhibited ends.");
        }
        double spread = spread(lines);
        if (!(spread > LEAST_SPREAD)) {
            return new Pooling.NotPooled(
                    "All firings ran at one mean pressure: no exponent follows from between them.",
                    "Fire with a larger throat, or with a smaller one if the case is known to stand it.");
        }
        return pool(lines, sloped, level);
    }

    private static Pooling pool(List<Line> lines, List<Line> sloped, double level) {
        Pooling.Exponent within = within(sloped, level);
        int count = lines.size();
        double meanX = lines.stream().mapToDouble(Line::meanX).average().orElseThrow();
        double meanY = lines.stream().mapToDouble(Line::meanY).average().orElseThrow();
        double sxx = 0;
        double sxy = 0;
        for (Line line : lines) {
            sxx += (line.meanX() - meanX) * (line.meanX() - meanX);
            sxy += (line.meanX() - meanX) * (line.meanY() - meanY);
        }
        double slope = sxy / sxx;
        double square = 0;
        for (Line line : lines) {
            double miss = line.meanY() - meanY - slope * (line.meanX() - meanX);
            square += miss * miss;
        }
        double scatter = Math.sqrt(square / (count - 2));
        Pooling.Exponent between = exponent(slope, scatter / Math.sqrt(sxx), count - 2, level);
        double withinSmooth = SMOOTH
                / Math.sqrt(
                        sloped.stream().mapToDouble(Line::variance).average().orElseThrow());
        double betweenSmooth = SMOOTH / spread(lines);
        double smooth = Math.hypot(withinSmooth, betweenSmooth);
        double differenceStd = Math.hypot(Math.hypot(within.std(), between.std()), smooth);
        double freedom = welch(within, between, smooth);
        Pooling.Exponent difference = exponent(within.value() - between.value(), differenceStd, freedom, level);
        double pValue = differenceStd > 0
                ? 2 * TDistribution.of(freedom).survivalProbability(Math.abs(difference.value()) / differenceStd)
                : 1;
        RateLaw law = law(
                lines,
                within.value(),
                Math.hypot(within.std(), withinSmooth),
                between.value(),
                Math.hypot(between.std(), betweenSmooth),
                meanX,
                meanY,
                scatter);
        boolean disagree = pValue < 0.05;
        String sentence = say(
                "Along the burns the exponent is %.3f, between firings %.3f: they %s (%s, a smooth error of %.1f %% along the burns allowed for).",
                within.value(),
                between.value(),
                disagree ? "disagree" : "agree",
                NumberFormat.probability(pValue),
                100 * SMOOTH);
        return new Pooling.Pooled(
                within,
                between,
                difference,
                pValue,
                scatter,
                law,
                count,
                sentence,
                disagree ? List.of(Finding.of(FindingCode.WITHIN_BETWEEN_DISAGREE, sentence)) : List.of());
    }

    private static Pooling.Exponent within(List<Line> sloped, double level) {
        double sum = 0;
        double weighted = 0;
        for (Line line : sloped) {
            sum += line.variance();
            weighted += line.variance() * line.slope();
        }
        int freedom = sloped.size() - 1;
        double square = 0;
        for (Line line : sloped) {
            double without = (weighted - line.variance() * line.slope()) / (sum - line.variance());
            square += (without - weighted / sum) * (without - weighted / sum);
        }
        double std = Math.sqrt(square * freedom / sloped.size());
        return exponent(weighted / sum, std, freedom, level);
    }

    /** The exponent of both, and the rate at the firings' mean pressure, where the two are uncorrelated. */
    private static RateLaw law(
            List<Line> lines,
            double within,
            double withinStd,
            double between,
            double betweenStd,
            double meanX,
            double meanY,
            double scatter) {
        double w = 1 / (withinStd * withinStd);
        double b = 1 / (betweenStd * betweenStd);
        double exponent = (w * within + b * between) / (w + b);
        double exponentVariance = 1 / (w + b);
        double meanVariance = scatter * scatter / lines.size();
        double reference = Laws.rounded(StrictMath.exp(meanX));
        double x = StrictMath.log(reference) - meanX;
        return new RateLaw(
                meanY + exponent * x,
                exponent,
                reference,
                meanVariance + x * x * exponentVariance,
                x * exponentVariance,
                exponentVariance,
                lines.size() - 2,
                scatter,
                StrictMath.exp(lines.stream().mapToDouble(Line::low).min().orElseThrow()),
                StrictMath.exp(lines.stream().mapToDouble(Line::high).max().orElseThrow()),
                lines.size(),
                Weighting.PROPORTIONAL,
                SystematicError.NONE);
    }

    private static Line line(BurnCurve curve) {
        int count = curve.along().size();
        double[] x = new double[count];
        double[] y = new double[count];
        double meanX = 0;
        double meanY = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int j = 0; j < count; j++) {
            InstantaneousRate each = curve.along().get(j);
            x[j] = StrictMath.log(each.pressure());
            y[j] = StrictMath.log(each.rate());
            meanX += x[j] / count;
            meanY += y[j] / count;
            low = Math.min(low, x[j]);
            high = Math.max(high, x[j]);
        }
        double sxx = 0;
        double sxy = 0;
        for (int j = 0; j < count; j++) {
            sxx += (x[j] - meanX) * (x[j] - meanX);
            sxy += (x[j] - meanX) * (y[j] - meanY);
        }
        return new Line(meanX, meanY, sxx > 0 ? sxy / sxx : 0, sxx / count, low, high);
    }

    private static double spread(List<Line> lines) {
        double mean = lines.stream().mapToDouble(Line::meanX).average().orElseThrow();
        return Math.sqrt(lines.stream()
                .mapToDouble(line -> (line.meanX() - mean) * (line.meanX() - mean))
                .average()
                .orElseThrow());
    }

    /** Welch and Satterthwaite; the smooth error is taken as known. */
    private static double welch(Pooling.Exponent a, Pooling.Exponent b, double smooth) {
        double va = a.std() * a.std();
        double vb = b.std() * b.std();
        double sum = va + vb + smooth * smooth;
        return sum > 0
                ? sum * sum / (va * va / a.degreesOfFreedom() + vb * vb / b.degreesOfFreedom())
                : Math.min(a.degreesOfFreedom(), b.degreesOfFreedom());
    }

    private static Pooling.Exponent exponent(double value, double std, double freedom, double level) {
        double half = TDistribution.of(freedom).inverseCumulativeProbability(0.5 + level / 2) * std;
        return new Pooling.Exponent(
                value,
                std,
                freedom,
                new Interval.Estimated(value - half, value + half, level, Interval.Method.STUDENT_T));
    }

    /**
     * Rate and pressure along one burn. Its samples are not independent: it counts as one firing.
     *
     * @param along the samples that can be used; pressure and rate above zero
     */
    public record BurnCurve(String firing, List<InstantaneousRate> along) {

        public BurnCurve {
            along = List.copyOf(along);
            for (InstantaneousRate each : along) {
                if (!(each.pressure() > 0 && each.rate() > 0)) {
                    throw new IllegalArgumentException(
                            "firing " + firing + ": " + each.rate() + " m/s at " + each.pressure() + " Pa");
                }
            }
        }

        /**
         * The part of the burn at some pressures.
         *
         * @param low  [Pa, absolute]
         * @param high [Pa, absolute]
         * @return the samples from low to high
         */
        public BurnCurve within(double low, double high) {
            return new BurnCurve(
                    firing,
                    along.stream()
                            .filter(each -> each.pressure() >= low && each.pressure() <= high)
                            .toList());
        }
    }
}
