package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.UniformTrace;

/**
 * Exponent within one burn, shrunk toward the usual one where the burn does not show it. It extends the rate over the
 * short stretches at both ends of a burn where no rate can be measured.
 *
 * <pre>
 *     n = ( n0/s0^2 + sum (ln P - mean)(ln r - mean)/s^2 ) / ( 1/s0^2 + sum (ln P - mean)^2/s^2 )
 * </pre>
 *
 * <p>with n0 = 0.4 and s0 = 0.25, what most propellants have, so that a level burn gives that; and s = 1 % for the rate
 * of one of 24 stretches between 30 % of the even burn and its end.
 *
 * <p><b>Source.</b> Usual exponents 0.2 to 0.6: Sutton and Biblarz (2001), chapter 11. Weighted mean of a prior and a
 * slope: derived.
 */
public final class LocalExponent {

    /** n0 [1]. */
    public static final double USUAL = 0.4;

    private static final double USUAL_STD = 0.25;
    private static final double STRETCH_STD = 0.01;
    private static final int STRETCHES = 24;
    private static final double FROM = 0.3;

    private LocalExponent() {}

    /**
     * Weighs it.
     *
     * @param firstEven t1 [s]
     * @param lastEven  t2 [s]
     * @return n [1]
     */
    public static double of(MassBalance balance, double firstEven, double lastEven) {
        UniformTrace record = balance.inputs().record();
        double from = firstEven + FROM * (lastEven - firstEven);
        double step = (lastEven - from) / STRETCHES;
        int count = 0;
        double sumX = 0;
        double sumY = 0;
        double sumXx = 0;
        double sumXy = 0;
        for (int k = 0; k < STRETCHES; k++) {
            double begin = from + k * step;
            double web = balance.webAt(begin + step) - balance.webAt(begin);
            double pressure = record.mean(begin, begin + step);
            if (web > 0 && pressure > 0) {
                double x = StrictMath.log(pressure);
                double y = StrictMath.log(web / step);
                count++;
                sumX += x;
                sumY += y;
                sumXx += x * x;
                sumXy += x * y;
            }
        }
        if (count < 3) {
            return USUAL;
        }
        double spread = sumXx - sumX * sumX / count;
        double together = sumXy - sumX * sumY / count;
        double prior = (STRETCH_STD / USUAL_STD) * (STRETCH_STD / USUAL_STD);
        return Math.max(-1, Math.min(1.5, (USUAL * prior + together) / (prior + spread)));
    }
}
