package io.burnlaw.comparison;

import io.burnlaw.batch.BatchContrast;
import io.burnlaw.batch.BatchPoint;
import io.burnlaw.comparison.Comparison.FTest;
import io.burnlaw.ratelaw.FitPoint;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Two laws fitted together, the second against the first, in ln r over ln P. */
interface TwoLaws {

    /** {@return degrees of freedom of the scatter} */
    double degrees();

    /** {@return relative standard deviation of a firing about its law [1]} */
    double scatter();

    /** {@return second exponent less the first [1]} */
    double slopeDifference();

    /** {@return its standard uncertainty [1]} */
    double slopeDifferenceStd();

    /** {@return the test of one exponent} */
    FTest parallel();

    /** {@return the test of one law} */
    FTest coincident();

    /**
     * Second less first.
     *
     * @param x natural logarithm of the pressure in Pa
     * @return difference in ln r [1]
     */
    double differenceAt(double x);

    /**
     * Its standard uncertainty.
     *
     * @param x natural logarithm of the pressure in Pa
     * @return [1]
     */
    double differenceStdAt(double x);

    /** {@return standard uncertainty of a shift between two laws of one exponent [1]} */
    double levelStd();

    /** Two propellants whose batches are known: a difference counts against the scatter between batches. */
    static final class BatchComparison implements TwoLaws {

        private final BatchContrast contrast;
        private final double middle;

        private BatchComparison(BatchContrast contrast, double middle) {
            this.contrast = contrast;
            this.middle = middle;
        }

        /**
         * Both in one mixed model.
         *
         * @param pressure in the middle of those that both share [Pa, absolute]
         * @return empty where batches are not known, or too few to tell batches from propellants
         */
        static Optional<TwoLaws> of(Propellant baseline, Propellant candidate, double pressure) {
            List<BatchPoint> first = points(baseline, pressure);
            List<BatchPoint> second = points(candidate, pressure);
            return first.isEmpty() || second.isEmpty() || !BatchContrast.possible(first, second)
                    ? Optional.empty()
                    : Optional.of(new BatchComparison(BatchContrast.of(first, second), StrictMath.log(pressure)));
        }

        /** None where a batch is missing. */
        private static List<BatchPoint> points(Propellant propellant, double pressure) {
            List<FitPoint> points = propellant.around(pressure);
            Map<String, String> batches = propellant.batches();
            return points.stream().allMatch(point -> batches.containsKey(point.cluster()))
                    ? points.stream()
                            .map(point -> new BatchPoint(point, batches.get(point.cluster())))
                            .toList()
                    : List.of();
        }

        @Override
        public double degrees() {
            return Math.max(1, contrast.freedom(middle));
        }

        @Override
        public double scatter() {
            return contrast.withinStd();
        }

        @Override
        public double slopeDifference() {
            return contrast.exponentDifference();
        }

        @Override
        public double slopeDifferenceStd() {
            return contrast.exponentStd();
        }

        @Override
        public FTest parallel() {
            double t = contrast.exponentDifference() / contrast.exponentStd();
            return FTest.of(t * t, 1, 1, Math.max(1, contrast.exponentFreedom()));
        }

        @Override
        public FTest coincident() {
            return FTest.of(2 * contrast.oneLaw(), 2, 1, degrees());
        }

        @Override
        public double differenceAt(double x) {
            return contrast.difference(x);
        }

        @Override
        public double differenceStdAt(double x) {
            return contrast.std(x);
        }

        @Override
        public double levelStd() {
            return contrast.std(middle);
        }
    }

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
     * <p><b>Source.</b> Draper and Smith, Applied Regression Analysis (1998), chapter 14; the split of the squares:
     * derived.
     */
    static final class SlopeComparison implements TwoLaws {

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
            return (first.spread() * first.slope() + second.spread() * second.slope())
                    / (first.spread() + second.spread());
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
}
