package io.burnlaw.reduction.events;

/** Zero-phase smoothing of even series, for the finding of events; integrals never use it. */
public final class Smoothing {

    private Smoothing() {}

    /**
     * Two running means of the same width, one after the other: a triangular window, which moves no symmetric event.
     *
     * @param half half width in cells, at least 0; the window has 2 half + 1 cells, fewer at the ends
     * @return as long as the series
     */
    public static double[] twice(double[] values, int half) {
        return half <= 0 ? values.clone() : mean(mean(values, half), half);
    }

    /**
     * Running mean.
     *
     * @param half half width in cells, at least 0; the window has 2 half + 1 cells, fewer at the ends
     * @return as long as the series
     */
    public static double[] mean(double[] values, int half) {
        int n = values.length;
        if (half == 1 && n > 2) {
            return ofThree(values);
        }
        double[] sums = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sums[i + 1] = sums[i] + values[i];
        }
        double[] smooth = new double[n];
        int end = Math.min(half, (n + 1) / 2);
        for (int i = 0; i < end; i++) {
            // The window stays symmetric at the ends, so that a slope there isn't bent.
            smooth[i] = sums[2 * i + 1] / (2 * i + 1);
            smooth[n - 1 - i] = (sums[n] - sums[n - 1 - 2 * i]) / (2 * i + 1);
        }
        // Apart from the ends, so that the compiler can work on several cells at a time.
        double width = 2 * half + 1;
        for (int i = half; i < n - half; i++) {
            smooth[i] = (sums[i + half + 1] - sums[i - half]) / width;
        }
        return smooth;
    }

    /** The narrowest running mean, which needs no sums from the begin on. */
    private static double[] ofThree(double[] values) {
        double[] smooth = values.clone();
        for (int i = 1; i < values.length - 1; i++) {
            smooth[i] = (values[i - 1] + values[i] + values[i + 1]) / 3;
        }
        return smooth;
    }

    /**
     * Least-squares slope of a stretch of a series.
     *
     * @param from first cell
     * @param to   last cell, after the first
     * @return slope in units of value per cell, and the value at the middle
     */
    public static Line line(double[] values, int from, int to) {
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
     * @param slope  per cell
     */
    public record Line(double middle, double mean, double slope) {

        /**
         * Its value.
         *
         * @param cell where, in cells
         */
        double at(double cell) {
            return mean + slope * (cell - middle);
        }
    }
}
