package io.burnlaw.batch;

import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.RateLaw;
import java.util.List;
import java.util.OptionalInt;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The law of a formulation over its batches. Three answers, kept apart: the mean law, the law of a batch that was fired,
 * and one firing of a batch not yet cast.
 *
 * @param law          the mean over batches at its reference pressure; its variances include the batches, its degrees of
 *                     freedom are those of the rate there, rounded down
 * @param withinStd    of a firing about the law of its batch, relative [1]
 * @param betweenStd   of the batches' rates about the mean law at the reference pressure, relative [1]
 * @param betweenLow   lower end of its interval [1]
 * @param betweenHigh  upper end [1]
 * @param level        of that interval and of the test [1]
 * @param pValue       of no difference between batches [1]
 * @param slopeStd     of the batches' exponents [1]; zero where the points do not show that they differ
 * @param moreBatches  how many more batches make the between-batch deviation known to a factor of two either way; empty where
 *                     no number of batches like these does
 * @param members      the batches, in the order of their ids
 * @param spread       of the estimates, for the intervals
 */
public record BatchLaw(
        RateLaw law,
        double withinStd,
        double betweenStd,
        double betweenLow,
        double betweenHigh,
        double level,
        double pValue,
        double slopeStd,
        OptionalInt moreBatches,
        List<Member> members,
        Spread spread)
        implements BatchResult {

    /**
     * One batch.
     *
     * @param id     of the batch
     * @param points how many firings it has
     * @param lnRate natural logarithm of its rate at the reference pressure [ln(m/s)]
     * @param lnRateVariance its variance [1], from the batch's own firings and the exponent of all
     * @param ratio  of its rate to the mean of the batches measured [1]
     * @param low    lower end of the ratio's interval [1]
     * @param high   upper end [1]
     */
    public record Member(
            String id, int points, double lnRate, double lnRateVariance, double ratio, double low, double high) {}

    /** What the intervals need of the fit. */
    static final class Spread {
        private final MixedModel.Fit fit;

        Spread(MixedModel.Fit fit) {
            this.fit = fit;
        }
    }

    public BatchLaw {
        members = List.copyOf(members);
    }

    /** {@return whether batches differ, with the false alarm that the level leaves} */
    public boolean differ() {
        return pValue < 1 - level;
    }

    /**
     * The rate of the mean law.
     *
     * @param pressure [Pa, absolute]
     * @param atLevel  of confidence [1]
     * @return [m/s]
     */
    public Interval.Estimated rate(double pressure, double atLevel) {
        RealVector contrast = at(pressure);
        return interval(pressure, contrast, new double[spread.fit.theta().length], 0, atLevel);
    }

    /**
     * The rate of one firing of a batch not yet cast.
     *
     * @param pressure [Pa, absolute]
     * @param atLevel  of confidence [1]
     * @return [m/s]
     */
    public Interval.Estimated nextBatch(double pressure, double atLevel) {
        RealVector contrast = at(pressure);
        double[] theta = spread.fit.theta();
        double[] extra = new double[theta.length];
        double variance = 0;
        for (int a = 0; a < theta.length; a++) {
            extra[a] = a < 2 ? 1 : contrast.getEntry(1) * contrast.getEntry(1);
            variance += extra[a] * theta[a];
        }
        return interval(pressure, contrast, extra, variance, atLevel);
    }

    /**
     * The exponent.
     *
     * @param atLevel of confidence [1]
     * @return [1]
     */
    public Interval.Estimated exponent(double atLevel) {
        RealVector contrast = new ArrayRealVector(new double[] {0, 1});
        double std = Math.sqrt(law.exponentVariance() + law.commonError().exponentVariance());
        double half = t(spread.fit.freedom(contrast, new double[spread.fit.theta().length]), atLevel) * std;
        return new Interval.Estimated(law.exponent() - half, law.exponent() + half, atLevel, Interval.Method.STUDENT_T);
    }

    private Interval.Estimated interval(
            double pressure, RealVector contrast, double[] extra, double beside, double atLevel) {
        double x = contrast.getEntry(1);
        double common = law.commonError().rateVariance()
                + 2 * x * law.commonError().covariance()
                + x * x * law.commonError().exponentVariance();
        double variance = spread.fit.adjusted().operate(contrast).dotProduct(contrast) + beside + common;
        double half = t(spread.fit.freedom(contrast, extra), atLevel) * Math.sqrt(variance);
        double ln = law.lnRateAtReference() + law.exponent() * x;
        return new Interval.Estimated(
                StrictMath.exp(ln - half), StrictMath.exp(ln + half), atLevel, Interval.Method.STUDENT_T);
    }

    private RealVector at(double pressure) {
        return new ArrayRealVector(new double[] {1, StrictMath.log(pressure / law.referencePressure())});
    }

    static double t(double freedom, double level) {
        return TDistribution.of(Math.max(1, freedom)).inverseCumulativeProbability(0.5 + level / 2);
    }
}
