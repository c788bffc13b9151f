package io.burnlaw.comparison;

import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.RateLaw;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A straight line fitted by least squares, as its sufficient statistics: all that a comparison of slopes needs, whether
 * they come from points or from a published law with its covariance.
 *
 * @param meanX   weighted mean of the abscissae
 * @param meanY   weighted mean of the ordinates
 * @param weight  sum of the weights
 * @param spread  weighted sum of the squares of x about its mean, above zero
 * @param squares weighted sum of the squared residuals
 * @param degrees of freedom of the residuals, at least zero
 */
record LogLine(double meanX, double meanY, double slope, double weight, double spread, double squares, int degrees) {

    /** Less than this share of itself apart, pressures are one pressure: exponents cannot be had from them. */
    private static final double LEAST_LN_SPAN = 0.02;

    /**
     * Fits y over x.
     *
     * @param weights     above zero
     * @param independent how many of the values are independent of each other
     */
    static LogLine of(double[] x, double[] y, double[] weights, int independent) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i];
            sumX += weights[i] * x[i];
            sumY += weights[i] * y[i];
        }
        double meanX = sumX / sum;
        double meanY = sumY / sum;
        double spread = 0;
        double product = 0;
        for (int i = 0; i < x.length; i++) {
            spread += weights[i] * (x[i] - meanX) * (x[i] - meanX);
            product += weights[i] * (x[i] - meanX) * (y[i] - meanY);
        }
        double slope = product / spread;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double residual = y[i] - meanY - slope * (x[i] - meanX);
            squares += weights[i] * residual * residual;
        }
        return new LogLine(meanX, meanY, slope, sum, spread, squares, independent - 2);
    }

    /**
     * The line of ln rate over ln pressure. Points of one firing share its errors: together they weigh as much as one
     * point, and count as one in the degrees of freedom. Where they agree with each other this is exact, otherwise it is
     * on the safe side.
     *
     * @return the line; empty where there are fewer than two firings or they stand at one pressure
     */
    static Optional<LogLine> of(List<FitPoint> points) {
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        double[] weights = new double[points.size()];
        Map<String, Integer> clusters = new HashMap<>();
        points.forEach(each -> clusters.merge(each.cluster(), 1, Integer::sum));
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            FitPoint point = points.get(i);
            x[i] = StrictMath.log(point.pressure());
            y[i] = StrictMath.log(point.rate());
            weights[i] = 1.0 / clusters.get(point.cluster());
            low = Math.min(low, x[i]);
            high = Math.max(high, x[i]);
        }
        return clusters.size() < 2 || high - low < LEAST_LN_SPAN
                ? Optional.empty()
                : Optional.of(of(x, y, weights, clusters.size()));
    }

    /**
     * The line that a published law stands for.
     *
     * @param law with covariance, scatter and degrees of freedom
     * @return the line; empty where the law's scatter is not known
     */
    static Optional<LogLine> of(RateLaw law) {
        double variance = law.residualScatter() * law.residualScatter();
        if (!(variance > 0 && law.exponentVariance() > 0) || law.degreesOfFreedom() < 1) {
            return Optional.empty();
        }
        double shift = -law.covariance() / law.exponentVariance();
        double atMean = law.rateVariance() - law.covariance() * law.covariance() / law.exponentVariance();
        return Optional.of(new LogLine(
                StrictMath.log(law.referencePressure()) + shift,
                law.lnRateAtReference() + law.exponent() * shift,
                law.exponent(),
                variance / atMean,
                variance / law.exponentVariance(),
                variance * law.degreesOfFreedom(),
                (int) law.degreesOfFreedom()));
    }

    double at(double x) {
        return meanY + slope * (x - meanX);
    }

    /** Variance of the line's height at x, for a residual variance of one. */
    double varianceAt(double x) {
        return 1 / weight + (x - meanX) * (x - meanX) / spread;
    }
}
