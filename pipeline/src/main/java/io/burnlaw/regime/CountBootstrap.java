package io.burnlaw.regime;

import java.util.random.RandomGenerator;

/**
 * Seeded parametric bootstrap of the largest F over the places of a further break. The place of a break does not exist
 * under the hypothesis of fewer, so that F has no table there (Davies 1987; Andrews 1993); campaigns simulated from the
 * fit with fewer laws give its distribution for these very pressures. For one law against two and normal scatter the
 * ratio does not depend on any unknown, and the test is exact (Dufour 2006, Monte-Carlo tests).
 *
 * <p>Joined and jumping alternatives are tried together: each has its share of the level and so its critical value; the
 * larger lead over these is compared with the same figure of every simulated campaign.
 */
final class CountBootstrap {

    /** Most of the level goes to a change of slope: it is the usual and the fainter one. */
    private static final double JOINED_WEIGHT = 0.85;

    private final Sample sample;
    private final JoinedSearch joined;
    private final JumpingSearch jumping;
    private final int replicates;
    private final double error;

    CountBootstrap(Sample sample, JoinedSearch joined, JumpingSearch jumping, int replicates, double error) {
        this.sample = sample;
        this.joined = joined;
        this.jumping = jumping;
        this.replicates = replicates;
        this.error = error;
    }

    /**
     * Tests so many laws against one more.
     *
     * @param y      the values
     * @param fewer  the fit under the hypothesis
     * @param noise  of the points
     * @param random the stream for this test
     */
    CountTest test(double[] y, PiecewiseFit fewer, NoiseModel noise, RandomGenerator random) {
        int k = fewer.count();
        double[] joinedGain = new double[replicates + 1];
        double[] jumpingGain = new double[replicates + 1];
        double[] straight = fewer.fitted();
        for (int b = 0; b <= replicates; b++) {
            double[] values = b == 0 ? y.clone() : straight.clone();
            if (b > 0) {
                noise.addTo(values, random);
            }
            takeLineOff(values);
            joinedGain[b] = gain(joined.rss(values, k), joined.rss(values, k + 1));
            double[] pair = jumping.pair(values, k + 1);
            jumpingGain[b] = gain(pair[0], pair[1]);
        }
        int n = sample.size();
        double joinedF = Math.expm1(joinedGain[0]) * (n - (k + 2));
        double jumpingF = Double.isInfinite(jumpingGain[0]) ? 0 : Math.expm1(jumpingGain[0]) * (n - 2 * (k + 1)) / 2;
        double p = Double.isInfinite(jumpingGain[0])
                ? Ranks.upperTail(joinedGain)[0]
                : Ranks.combined(joinedGain, jumpingGain, JOINED_WEIGHT, error);
        return new CountTest(k, joinedF, Math.max(0, jumpingF), p, replicates);
    }

    /**
     * Tests whether laws that jump explain more than laws that meet, of the same count.
     *
     * @return the p value, 1 where there are too few points for a jump
     */
    double jumpTest(double[] y, PiecewiseFit meeting, NoiseModel noise, RandomGenerator random) {
        int count = meeting.count();
        double[] gain = new double[replicates + 1];
        for (int b = 0; b <= replicates; b++) {
            double[] values = b == 0 ? y.clone() : meeting.fitted().clone();
            if (b > 0) {
                noise.addTo(values, random);
            }
            takeLineOff(values);
            gain[b] = gain(jumping.pair(values, count)[1], joined.rss(values, count)) * -1;
        }
        return Double.isFinite(gain[0]) ? Ranks.upperTail(gain)[0] : 1;
    }

    private static double gain(double fewer, double more) {
        return fewer < Double.POSITIVE_INFINITY && more < Double.POSITIVE_INFINITY
                ? Math.log(fewer / Math.max(more, Double.MIN_NORMAL))
                : Double.NEGATIVE_INFINITY;
    }

    /** Running sums lose digits when the line is large against the scatter; the line does not matter to a break. */
    private void takeLineOff(double[] values) {
        double[] x = sample.xs();
        Line line = Line.through(x, values, sample.ws(), 0, values.length);
        for (int i = 0; i < values.length; i++) {
            values[i] -= line.at(x[i]);
        }
    }
}
