package io.burnlaw.ratelaw;

import java.util.List;

/**
 * The effect on a law of errors that all firings share. More firings do not reduce it.
 *
 * <p>Each cause (the calipers and the reduction; the gauge; c*) moves rate and exponent together by one standard deviation
 * of its own; independent causes add as variances.
 *
 * @param rateVariance     of the logarithm of the rate at the reference pressure [1]
 * @param covariance       of the two [1]
 * @param exponentVariance of the exponent [1]; zero where the shared errors are the same at every pressure
 */
public record SystematicError(double rateVariance, double covariance, double exponentVariance) {

    /** No shared error. */
    public static final SystematicError NONE = new SystematicError(0, 0, 0);

    /**
     * Adds independent causes.
     *
     * @param shifts for each cause the shifts of the logarithm of the rate at the reference pressure and of the exponent that
     *               one standard deviation of it makes [1]
     */
    static SystematicError of(List<double[]> shifts) {
        double rate = 0;
        double both = 0;
        double exponent = 0;
        for (double[] shift : shifts) {
            rate += shift[0] * shift[0];
            both += shift[0] * shift[1];
            exponent += shift[1] * shift[1];
        }
        return new SystematicError(rate, both, exponent);
    }

    /**
     * Adds independent causes whose shifts are known where x is zero.
     *
     * @param shifts for each cause the shifts there
     * @param x      natural logarithm of the reference pressure over the pressure there [1]
     * @return the error at the reference pressure
     */
    public static SystematicError at(double x, List<double[]> shifts) {
        return of(shifts.stream()
                .map(shift -> new double[] {shift[0] + x * shift[1], shift[1]})
                .toList());
    }

    /** {@return standard deviation of the exponent [1]} */
    public double exponent() {
        return Math.sqrt(exponentVariance);
    }

    /**
     * Standard deviation of the logarithm of the rate.
     *
     * @param x natural logarithm of pressure over reference pressure [1]
     * @return [1], at least zero
     */
    double at(double x) {
        return Math.sqrt(Math.max(0, rateVariance + 2 * x * covariance + x * x * exponentVariance));
    }
}
