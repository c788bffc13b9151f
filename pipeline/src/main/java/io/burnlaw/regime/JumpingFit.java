package io.burnlaw.regime;

/** Fits pieces that may jump, given the first point of each. */
final class JumpingFit {

    private JumpingFit() {}

    /**
     * Each piece through its own points; a break lies in the middle of the gap between its neighbours, in x.
     *
     * @param sample with its weights
     * @param y      the values
     * @param starts first point of each piece
     */
    static PiecewiseFit of(Sample sample, double[] y, int[] starts) {
        double[] x = sample.xs();
        double[] w = sample.ws();
        int k = starts.length;
        double[] breaks = new double[k - 1];
        double[] slopes = new double[k];
        double[] levels = new double[k];
        double[] fitted = new double[x.length];
        double rss = 0;
        for (int j = 0; j < k; j++) {
            int end = j + 1 < k ? starts[j + 1] : x.length;
            Line line = Line.through(x, y, w, starts[j], end);
            slopes[j] = line.slope();
            levels[j] = line.at(0);
            rss += line.rss();
            for (int i = starts[j]; i < end; i++) {
                fitted[i] = line.at(x[i]);
            }
            if (j > 0) {
                breaks[j - 1] = (x[starts[j] - 1] + x[starts[j]]) / 2;
            }
        }
        return new PiecewiseFit(Shape.JUMPING, breaks, starts.clone(), slopes, levels, fitted, rss);
    }
}
