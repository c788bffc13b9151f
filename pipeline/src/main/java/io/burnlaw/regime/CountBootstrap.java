package io.burnlaw.regime;

import io.burnlaw.regime.Evidence.CountTest;
import io.burnlaw.regime.SequentialMonteCarlo.Ranks;
import io.burnlaw.regime.SequentialMonteCarlo.SimulatedP;
import java.util.Arrays;
import java.util.function.IntConsumer;
import java.util.random.RandomGenerator;

/**
 * Seeded parametric bootstrap of the gain by a further break. The place of a break does not exist under the hypothesis
 * of fewer, so that F has no table there (Davies 1987; Andrews 1993); campaigns simulated from the fit with fewer laws
 * give its distribution for these very pressures. For one law against two and normal scatter the ratio does not depend
 * on any unknown, and the test is exact (Dufour 2006, Monte-Carlo tests).
 *
 * <p>Joined and jumping alternatives are tried together: whether there is a change of slope at all by the likelihood
 * averaged over its places, a further one, and a jump, which is sharp, by the largest F. Each has its share of the level and so its critical value; the larger lead over
 * these is compared with the same figure of every simulated campaign.
 */
final class CountBootstrap {

    /** Most of the level goes to a change of slope: it is the usual and the fainter one. */
    private static final double JOINED_WEIGHT = 0.92;

    /**
     * Share of the level at which a jump is distinguished from a change of slope. Small, since a jump that is none pretends to
     * know the break to a gap between two points; a real one of the size of a threshold is far beyond doubt.
     */
    private static final double JUMP_SHARE = 0.2;

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
     * @param fewer  the fit under the hypothesis
     * @param random the stream for this test
     */
    CountTest test(double[] y, PiecewiseFit fewer, NoiseModel noise, RandomGenerator random) {
        int k = fewer.count();
        double[] joinedGain = new double[replicates + 1];
        double[] jumpingGain = new double[replicates + 1];
        double[] straight = fewer.fitted();
        IntConsumer gains = b -> {
            double[] values = campaign(b, y, straight, noise, random);
            joinedGain[b] = k == 1
                    ? joined.meanLikelihoodRatio(values, 2, joined.rss(values, 1))
                    : gain(joined.rss(values, k), joined.rss(values, k + 1));
            double[] pair = jumping.pair(values, k + 1);
            jumpingGain[b] = gain(pair[0], pair[1]);
        };
        gains.accept(0);
        boolean jumps = !Double.isInfinite(jumpingGain[0]);
        SimulatedP p = SequentialMonteCarlo.run(replicates, error, gains, b -> {
            double[] meeting = Arrays.copyOf(joinedGain, b + 1);
            return jumps
                    ? Ranks.combined(meeting, Arrays.copyOf(jumpingGain, b + 1), JOINED_WEIGHT, error)
                    : Ranks.upperTail(meeting)[0];
        });
        int n = sample.size();
        double[] data = campaign(0, y, straight, noise, random);
        double joinedF = Math.expm1(2.0 / n * gain(joined.rss(data, k), joined.rss(data, k + 1))) * (n - (k + 2));
        double jumpingF = jumps ? Math.expm1(2.0 / n * jumpingGain[0]) * (n - 2 * (k + 1)) / 2 : 0;
        return new CountTest(k, joinedF, Math.max(0, jumpingF), p.value(), p.campaigns());
    }

    /**
     * Tests whether laws that jump explain more than laws that meet, of the same count.
     *
     * @return the p value, 1 where there are too few points for a jump
     */
    SimulatedP jumpTest(double[] y, PiecewiseFit meeting, NoiseModel noise, RandomGenerator random) {
        int count = meeting.count();
        double[] gain = new double[replicates + 1];
        IntConsumer gains = b -> {
            double[] values = campaign(b, y, meeting.fitted(), noise, random);
            gain[b] = gain(jumping.pair(values, count)[1], joined.rss(values, count)) * -1;
        };
        gains.accept(0);
        return Double.isFinite(gain[0])
                ? SequentialMonteCarlo.run(
                        replicates, jumpError(), gains, b -> Ranks.upperTail(Arrays.copyOf(gain, b + 1))[0])
                : new SimulatedP(1, 0);
    }

    /** {@return at which a jump is preferred [1]} */
    double jumpError() {
        return JUMP_SHARE * error;
    }

    /** The data as number zero, else one simulated campaign; without its line. */
    private double[] campaign(int number, double[] y, double[] truth, NoiseModel noise, RandomGenerator random) {
        double[] values = number == 0 ? y.clone() : truth.clone();
        if (number > 0) {
            noise.addTo(values, random);
        }
        takeLineOff(values);
        return values;
    }

    /** The logarithm of the likelihood ratio. */
    private double gain(double fewer, double more) {
        return fewer < Double.POSITIVE_INFINITY && more < Double.POSITIVE_INFINITY
                ? 0.5 * sample.size() * Math.log(fewer / Math.max(more, Double.MIN_NORMAL))
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
