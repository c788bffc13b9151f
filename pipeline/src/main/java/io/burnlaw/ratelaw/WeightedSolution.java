package io.burnlaw.ratelaw;

/**
 * A weighted fit as found, with what intervals and diagnostics need of it; its arrays stay inside the package. Variance
 * and covariance are those of the two parameters: the logarithm of the rate at the pressure unit, and the exponent.
 */
final class WeightedSolution implements WeightedFit.Outcome {

    final Curve curve;
    final double[] x;
    final double[] y;
    final double[] variance;
    final double[] share;
    final int clusters;
    final double[] parameters;
    final double lnPressureUnit;
    final double lnRateUnit;
    final double[] residual;
    final double[][] gradient;
    final double[] leverage;
    final double rateVariance;
    final double covariance;
    final double exponentVariance;

    WeightedSolution(
            Curve curve,
            double[] x,
            double[] y,
            double[] at,
            double[] variance,
            ScatterModel model,
            double[] parameters,
            double lnPressureUnit,
            double lnRateUnit) {
        this.curve = curve;
        this.x = x;
        this.y = y;
        this.variance = variance;
        this.clusters = model.clusters();
        this.parameters = parameters;
        this.lnPressureUnit = lnPressureUnit;
        this.lnRateUnit = lnRateUnit;
        int count = x.length;
        share = new double[count];
        residual = residuals(curve, x, y, at, parameters);
        gradient = new double[count][];
        leverage = new double[count];
        double s00 = 0;
        double s01 = 0;
        double s11 = 0;
        for (int i = 0; i < count; i++) {
            share[i] = model.share(i);
            gradient[i] = curve.gradient(at[i], parameters);
            double w = weight(i);
            s00 += w * gradient[i][0] * gradient[i][0];
            s01 += w * gradient[i][0] * gradient[i][1];
            s11 += w * gradient[i][1] * gradient[i][1];
        }
        double determinant = s00 * s11 - s01 * s01;
        rateVariance = s11 / determinant;
        covariance = -s01 / determinant;
        exponentVariance = s00 / determinant;
        for (int i = 0; i < count; i++) {
            double g0 = gradient[i][0];
            double g1 = gradient[i][1];
            leverage[i] = weight(i) * (g0 * g0 * rateVariance + 2 * g0 * g1 * covariance + g1 * g1 * exponentVariance);
        }
    }

    /** About the tangent of the curve at the adjusted x; where nothing is adjusted, about the curve. */
    static double[] residuals(Curve curve, double[] x, double[] y, double[] at, double[] parameters) {
        double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double shift = x[i] - at[i];
            residuals[i] =
                    y[i] - curve.value(at[i], parameters) - (shift == 0 ? 0 : curve.slope(at[i], parameters) * shift);
        }
        return residuals;
    }

    double weight(int i) {
        return 1 / (variance[i] * share[i]);
    }

    double sumOfSquares() {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weight(i) * residual[i] * residual[i];
        }
        return sum;
    }

    /** What a shift of each point's value, in the scale of the fit, does to the two parameters. */
    double[] response(double[] shift) {
        double b0 = 0;
        double b1 = 0;
        for (int i = 0; i < x.length; i++) {
            b0 += weight(i) * gradient[i][0] * shift[i];
            b1 += weight(i) * gradient[i][1] * shift[i];
        }
        return new double[] {rateVariance * b0 + covariance * b1, covariance * b0 + exponentVariance * b1};
    }
}
