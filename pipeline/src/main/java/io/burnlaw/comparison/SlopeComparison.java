package io.burnlaw.comparison;

import io.burnlaw.comparison.Comparison.FTest;

/**
 * Two lines fitted together: analysis of covariance with one covariate and two groups.
 *
 * <pre>
 *     s^2        = (Q1 + Q2) / (f1 + f2)                       scatter about separate lines
 *     parallel   : F(1, f) = (b2 - b1)^2 / (1/S1 + 1/S2) / s^2
 *     shift      = difference of the levels about the common slope b = (S1 b1 + S2 b2) / (S1 + S2)
 *     coincident : F(2, f) = ( parallel squares + shift^2 / v ) / 2 / s^2
 *                  v       = 1/W1 + 1/W2 + (X2 - X1)^2 / (S1 + S2)
 * </pre>
 * with Q the residual squares, f their degrees of freedom, S the spread of x, W the weight, X the mean of x.
 *
 * <p><b>Source.</b> Draper and Smith, Applied Regression Analysis (1998), chapter 14; the split of the squares: derived.
 */
final class SlopeComparison implements TwoLaws {

    /** A scatter below a billionth is no measurement; it keeps noiseless made-up data from dividing by zero. */
    private static final double LEAST_VARIANCE = 1e-18;

    private final LogLine first;
    private final LogLine second;

    SlopeComparison(LogLine first, LogLine second) {
        this.first = first;
        this.second = second;
        if (degrees() < 1) {
            throw new IllegalArgumentException("no degrees of freedom: " + first + ", " + second);
        }
    }

    @Override
    public double degrees() {
        return first.degrees() + second.degrees();
    }

    @Override
    public double scatter() {
        return Math.sqrt(variance());
    }

    @Override
    public double levelStd() {
        return Math.sqrt(variance() * shiftVariance());
    }

    double variance() {
        return Math.max(LEAST_VARIANCE, (first.squares() + second.squares()) / degrees());
    }

    @Override
    public double slopeDifference() {
        return second.slope() - first.slope();
    }

    @Override
    public double slopeDifferenceStd() {
        return Math.sqrt(variance() * slopeVariance());
    }

    @Override
    public FTest parallel() {
        return FTest.of(parallelSquares(), 1, variance(), degrees());
    }

    @Override
    public FTest coincident() {
        double shift = shift();
        return FTest.of(parallelSquares() + shift * shift / shiftVariance(), 2, variance(), degrees());
    }

    double commonSlope() {
        return (first.spread() * first.slope() + second.spread() * second.slope()) / (first.spread() + second.spread());
    }

    /** Of the model with one slope. */
    double commonSlopeStd() {
        return Math.sqrt(parallelVariance() / (first.spread() + second.spread()));
    }

    /** Second less first, about the common slope. */
    double shift() {
        return second.meanY() - first.meanY() - commonSlope() * (second.meanX() - first.meanX());
    }

    /** Of the model with one slope. */
    double shiftStd() {
        return Math.sqrt(parallelVariance() * shiftVariance());
    }

    /** Scatter about lines with one slope, on one degree of freedom more. */
    double parallelVariance() {
        return Math.max(LEAST_VARIANCE, (first.squares() + second.squares() + parallelSquares()) / (degrees() + 1));
    }

    /** Variance of the shift for a residual variance of one. */
    double shiftVariance() {
        double apart = second.meanX() - first.meanX();
        return 1 / first.weight() + 1 / second.weight() + apart * apart / (first.spread() + second.spread());
    }

    /** Each by its own line. */
    @Override
    public double differenceAt(double x) {
        return second.at(x) - first.at(x);
    }

    @Override
    public double differenceStdAt(double x) {
        return Math.sqrt(variance() * (first.varianceAt(x) + second.varianceAt(x)));
    }

    private double parallelSquares() {
        return slopeDifference() * slopeDifference() / slopeVariance();
    }

    private double slopeVariance() {
        return 1 / first.spread() + 1 / second.spread();
    }
}
