package io.burnlaw.regime;

import io.burnlaw.campaign.Weighting;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import io.burnlaw.ratelaw.SystematicError;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Makes a law of each piece, with its covariance. The scatter is that of all points about all pieces; the place of a
 * break counts as a parameter. A piece that joins another has the covariance of a piece by itself: leaving the place of
 * the break open takes from the piece just what the joint gives it (the columns of ∂/∂c and of a jump are the same;
 * Feder 1975, Muggeo 2003, section 3).
 */
final class SegmentLaws {

    private SegmentLaws() {}

    static List<RateLaw> of(Sample sample, PiecewiseFit fit, NoiseModel noise, Weighting weighting) {
        List<RateLaw> laws = new ArrayList<>();
        for (int piece = 0; piece < fit.count(); piece++) {
            laws.add(law(sample, fit, piece, noise, weighting));
        }
        return laws;
    }

    private static RateLaw law(Sample sample, PiecewiseFit fit, int piece, NoiseModel noise, Weighting weighting) {
        int from = fit.starts()[piece];
        int to = fit.end(piece);
        double[] x = sample.xs();
        double[] w = sample.ws();
        double[] ofRate = new double[x.length];
        double[] ofPressure = new double[x.length];
        for (int i = from; i < to; i++) {
            ofRate[i] = sample.point(i).systematic();
            ofPressure[i] = fit.slopes()[piece] * sample.point(i).pressureShared();
        }
        Line line = Line.through(x, sample.ys(), w, from, to);
        double[][] influence = new double[to - from][2];
        for (int i = from; i < to; i++) {
            influence[i - from][0] = w[i] / line.weight();
            influence[i - from][1] = w[i] * (x[i] - line.middle()) / line.spread();
        }
        double[] variance = new double[3];
        for (int[] group : noise.groups()) {
            int[] here = Arrays.stream(group).filter(i -> from <= i && i < to).toArray();
            for (int i : here) {
                for (int j : here) {
                    double v = noise.covariance(i, j);
                    variance[0] += influence[i - from][0] * v * influence[j - from][0];
                    variance[1] += influence[i - from][0] * v * influence[j - from][1];
                    variance[2] += influence[i - from][1] * v * influence[j - from][1];
                }
            }
        }
        OptionalDouble known = weighting.estimatesScale() ? OptionalDouble.empty() : sample.knownScatter();
        double scale = known.isPresent() ? Math.pow(known.getAsDouble() / noise.scatter(), 2) : 1;
        for (int i = 0; i < 3; i++) {
            variance[i] *= scale;
        }
        double reference = rounded(sample.pressure(line.middle() - variance[1] / variance[2]));
        double at = sample.position(reference);
        double away = at - line.middle();
        List<double[]> common = Stream.of(ofRate, ofPressure)
                .map(shift -> Line.through(x, shift, w, from, to))
                .map(shared -> new double[] {shared.at(at), shared.slope()})
                .toList();
        double free = Math.floor(noise.effectivePoints() + 1e-6) - fit.parameters();
        double scatter = noise.scatter() * Math.sqrt(scale);
        return new RateLaw(
                fit.levels()[piece] + fit.slopes()[piece] * at,
                fit.slopes()[piece],
                reference,
                variance[0] + 2 * away * variance[1] + away * away * variance[2],
                variance[1] + away * variance[2],
                variance[2],
                (int) Math.max(0, free),
                weighting == Weighting.CONSTANT
                        ? scatter / Math.sqrt(weightAt(w, x, from, to, at))
                        : scatter * Math.sqrt(meanVariance(w, from, to)),
                sample.point(from).pressure(),
                sample.point(to - 1).pressure(),
                to - from,
                weighting,
                SystematicError.at(0, common));
    }

    /** Of the points of a piece, over that of a point of weight 1; as for a single law, it is that of the next firing. */
    private static double meanVariance(double[] w, int from, int to) {
        return Arrays.stream(w, from, to).map(each -> 1 / each).average().orElseThrow();
    }

    /** The weight of a point at a place, along the line through the logarithms of the weights about it. */
    private static double weightAt(double[] w, double[] x, int from, int to, double at) {
        double[] ln = new double[w.length];
        double[] ones = new double[w.length];
        for (int i = from; i < to; i++) {
            ln[i] = Math.log(w[i]);
            ones[i] = 1;
        }
        return Math.exp(Line.through(x, ln, ones, from, to).at(at));
    }

    /** To two digits, as for a single law. */
    private static double rounded(double pressure) {
        return new BigDecimal(pressure)
                .round(new MathContext(2, RoundingMode.HALF_EVEN))
                .doubleValue();
    }

    /** The ratio of two laws that rest on different points of the same instruments. */
    static final class RateRatio {

        private RateRatio() {}

        /** Upper over lower law at a pressure; what both share cancels. */
        static Interval interval(RateLaw below, RateLaw above, double pressure, double level) {
            double free = Math.min(below.degreesOfFreedom(), above.degreesOfFreedom());
            if (free < 1) {
                return new Interval.NotEstimable(
                        "with as many parameters as points, the scatter is unknown; one more firing on either side"
                                + " is needed");
            }
            double ln = StrictMath.log(above.rate(pressure) / below.rate(pressure));
            double half = Math.sqrt(variance(below, pressure) + variance(above, pressure))
                    * TDistribution.of(free).inverseCumulativeProbability(0.5 + level / 2);
            return new Interval.Estimated(
                    StrictMath.exp(ln - half), StrictMath.exp(ln + half), level, Interval.Method.STUDENT_T);
        }

        private static double variance(RateLaw law, double pressure) {
            double x = StrictMath.log(pressure / law.referencePressure());
            return law.rateVariance() + 2 * x * law.covariance() + x * x * law.exponentVariance();
        }
    }
}
