package io.burnlaw.reduction;

import io.burnlaw.reduction.balance.LocalExponent;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What changes along a burn that its pressure does not explain.
 *
 * <pre>
 *     ln r = c + n ln P + b f          f: the share of the web burned, a start that dies away, (ln P)^2, …  [1]
 * </pre>
 * fitted to the rates along the burn by least squares, n held near what most propellants have (0.4 ± 0.25) where the
 * burn itself does not show it. The standard uncertainty of b comes from the residuals; since rates are taken over
 * windows that overlap, a burn counts for no more than {@value #INDEPENDENT} of them.
 *
 * <p><b>Source.</b> Least squares with a prior on one coefficient: derived; usual exponents: see {@link LocalExponent}.
 *
 * @param shift    b [1]
 * @param shiftStd its standard uncertainty [1]
 * @param exponent n of this burn [1]
 * @param residual standard deviation of ln r about the fit [1]
 */
record BurnTrend(double shift, double shiftStd, double exponent, double residual) {

    private static final double USUAL_STD = 0.25;

    /** Windows of 5 % of a burn time that fit beside each other. */
    static final int INDEPENDENT = 18;

    /** Rates closer than this cannot be distinguished, whatever the noise [1]. */
    private static final double LEAST_RESIDUAL = 0.001;

    private static final int FEWEST = 12;

    /**
     * Fits a trend.
     *
     * @param shape f [1]
     * @return the trend; one of infinite uncertainty where there are too few rates
     */
    static BurnTrend of(List<InstantaneousRate> along, ToDoubleFunction<InstantaneousRate> shape) {
        int count = along.size();
        if (count < FEWEST) {
            return new BurnTrend(0, Double.POSITIVE_INFINITY, LocalExponent.USUAL, 0);
        }
        double[] y = along.stream().mapToDouble(at -> StrictMath.log(at.rate())).toArray();
        double[] p =
                along.stream().mapToDouble(at -> StrictMath.log(at.pressure())).toArray();
        double[] f = along.stream().mapToDouble(shape).toArray();
        centre(y);
        centre(p);
        centre(f);
        double residual = Math.max(LEAST_RESIDUAL, 0.01);
        BurnTrend trend = null;
        // The weight of the prior against the data follows from the residuals, which follow from the fit.
        for (int pass = 0; pass < 3; pass++) {
            trend = solved(y, p, f, residual);
            residual = Math.max(LEAST_RESIDUAL, trend.residual());
        }
        return trend;
    }

    private static BurnTrend solved(double[] y, double[] p, double[] f, double residual) {
        double worth = Math.min(1, INDEPENDENT / (double) y.length) / (residual * residual);
        double prior = 1 / (USUAL_STD * USUAL_STD);
        double pp = worth * product(p, p) + prior;
        double ff = worth * product(f, f);
        double pf = worth * product(p, f);
        double py = worth * product(p, y) + prior * LocalExponent.USUAL;
        double fy = worth * product(f, y);
        double determinant = pp * ff - pf * pf;
        if (!(determinant > 1e-12 * pp * ff)) {
            return new BurnTrend(0, Double.POSITIVE_INFINITY, LocalExponent.USUAL, residual);
        }
        double exponent = (py * ff - fy * pf) / determinant;
        double shift = (fy * pp - py * pf) / determinant;
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            double off = y[i] - exponent * p[i] - shift * f[i];
            sum += off * off;
        }
        return new BurnTrend(shift, Math.sqrt(pp / determinant), exponent, Math.sqrt(sum / (y.length - 3)));
    }

    private static void centre(double[] values) {
        double mean = 0;
        for (double value : values) {
            mean += value / values.length;
        }
        for (int i = 0; i < values.length; i++) {
            values[i] -= mean;
        }
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
