package io.burnlaw.regime;

import java.util.SplittableRandom;

/** Samples about a line of slope 0.3 with one bend, for what must hold of any sample. */
final class BentLine {

    private BentLine() {}

    /**
     * Draws one.
     *
     * @param n      points, about one to each unit of x from 0 on
     * @param seed   of its scatter
     * @param loss   of slope at the bend
     * @param bendAt x of the bend
     */
    static Sample sample(int n, long seed, double loss, double bendAt) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = i + 0.6 * random.nextDouble();
            y[i] = 0.3 * x[i] - loss * Math.max(0, x[i] - bendAt) + 0.3 * random.nextGaussian();
        }
        return Sample.of(x, y);
    }
}
