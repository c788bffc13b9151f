package io.burnlaw.ratelaw;

/**
 * What one standard deviation of the error that all firings share does to a law. More firings do not shrink it.
 *
 * @param rate     shift of the logarithm of the rate at the reference pressure [1]
 * @param exponent shift of the exponent [1]; zero where the shared error is the same at every pressure
 */
public record CommonError(double rate, double exponent) {

    /** No shared error. */
    public static final CommonError NONE = new CommonError(0, 0);

    /**
     * The shift of the logarithm of the rate.
     *
     * @param x natural logarithm of pressure over reference pressure [1]
     * @return [1], at least zero
     */
    double at(double x) {
        return Math.abs(rate + x * exponent);
    }
}
