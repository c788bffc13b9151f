package io.burnlaw.regime;

/**
 * A weighted straight line, about the weighted middle of its points.
 *
 * @param middle weighted mean of x
 * @param level  of the line there
 * @param slope  of the line; zero where all x are the same
 * @param rss    weighted sum of squares of the residuals
 * @param spread weighted sum of squares of x about the middle
 */
record Line(double middle, double level, double slope, double rss, double weight, double spread) {

    /** Through the points from..to (exclusive). */
    static Line through(double[] x, double[] y, double[] w, int from, int to) {
        double sw = 0;
        double mx = 0;
        double my = 0;
        for (int i = from; i < to; i++) {
            sw += w[i];
            mx += w[i] * x[i];
            my += w[i] * y[i];
        }
        mx /= sw;
        my /= sw;
        double sxx = 0;
        double sxy = 0;
        for (int i = from; i < to; i++) {
            sxx += w[i] * (x[i] - mx) * (x[i] - mx);
            sxy += w[i] * (x[i] - mx) * (y[i] - my);
        }
        double slope = sxx > 1e-12 * sw ? sxy / sxx : 0;
        double rss = 0;
        for (int i = from; i < to; i++) {
            double residual = y[i] - my - slope * (x[i] - mx);
            rss += w[i] * residual * residual;
        }
        return new Line(mx, my, slope, rss, sw, sxx);
    }

    double at(double x) {
        return level + slope * (x - middle);
    }
}
