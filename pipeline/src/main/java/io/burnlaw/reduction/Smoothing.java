package io.burnlaw.reduction;

/** Zero-phase smoothing of even series, for the finding of events; integrals never use it. */
final class Smoothing {

    private Smoothing() {}

    /**
     * Two running means of the same width, one after the other: a triangular window, which moves no symmetric event.
     *
     * @param values series
     * @param half   half width in cells, at least 0; the window has 2 half + 1 cells, fewer at the ends
     * @return as long as the series
     */
    static double[] twice(double[] values, int half) {
        return half <= 0 ? values.clone() : once(once(values, half), half);
    }

    private static double[] once(double[] values, int half) {
        int n = values.length;
        double[] sums = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sums[i + 1] = sums[i] + values[i];
        }
        double[] smooth = new double[n];
        for (int i = 0; i < n; i++) {
            // The window stays symmetric at the ends, so that a slope there isn't bent.
            int reach = Math.min(half, Math.min(i, n - 1 - i));
            smooth[i] = (sums[i + reach + 1] - sums[i - reach]) / (2 * reach + 1);
        }
        return smooth;
    }

    /**
     * Least-squares slope of a stretch of a series.
     *
     * @param values series
     * @param from   first cell
     * @param to     last cell, after the first
     * @return slope in units of value per cell, and the value at the middle
     */
    static Line line(double[] values, int from, int to) {
        int n = to - from + 1;
        double middle = 0.5 * (from + to);
        double sum = 0;
        double moment = 0;
        for (int i = from; i <= to; i++) {
            sum += values[i];
            moment += (i - middle) * values[i];
        }
        double spread = n * ((double) n * n - 1) / 12;
        return new Line(middle, sum / n, n > 1 ? moment / spread : 0);
    }

    /**
     * A straight line over cells.
     *
     * @param middle cell at which the mean holds
     * @param mean   value there
     * @param slope  per cell
     */
    record Line(double middle, double mean, double slope) {

        /**
         * Its value.
         *
         * @param cell where, in cells
         * @return the value
         */
        double at(double cell) {
            return mean + slope * (cell - middle);
        }
    }
}
