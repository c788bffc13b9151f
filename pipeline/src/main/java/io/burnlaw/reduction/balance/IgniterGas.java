package io.burnlaw.reduction.balance;

import io.burnlaw.quantity.Measured;
import io.burnlaw.reduction.events.UniformTrace;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.Optional;

/**
 * The gas that an igniter of unstated mass may have given, as limited by the start of the burn.
 *
 * <pre>
 *     f(t) = production of gas over that of the whole surface, S(x) r1 (P/P1)^n rho                [1]
 *     t1   : from there on f stays within 0.1 of 1                                                 [s]
 *     U    = gas made until t1                                                                     [share of the propellant]
 *     m    = 1.4 % where t1 - A is 0.12 s or more, none up to 0.06 s, straight between; never above U
 * </pre>
 *
 * <p>r1, P1 hold over the first part of the even burn. Until t1 the igniter's gas looks like a flame that spreads
 * slowly: the igniter is taken to have given anything from none to 2.8 % of the propellant, each as likely, so that the mean is
 * 1.4 % and the standard deviation the 0.8 % of the budget. A flame that is everywhere at once leaves room for no igniter that
 * matters. The time decides, and not U, since one igniter lights slow motors and fast ones: a correction that went with the
 * pressure would tilt the law.
 *
 * <p><b>Source.</b> Conservation of mass: derived. That a charge gives up to 2.8 % of the propellant: common practice, no source.
 */
public final class IgniterGas {

    /** Half of what a usual igniter gives at most, as a share of the propellant [1]. */
    private static final double MEAN = 0.014;

    /** The most that a usual igniter gives, over the standard deviation of what it gives: a rectangular distribution [1]. */
    public static final double MOST_OVER_STD = 2 * Math.sqrt(3);

    /** A flame that is everywhere as soon as this hides no igniter [s]; common practice, no source. */
    private static final double QUICK = 0.06;

    /** Production this close to that of the whole surface is all of it [1]. */
    private static final double SETTLED = 0.1;

    /** A start that takes a larger share of the burn is no ignition but a smoulder [1]. */
    private static final double LONGEST = 0.2;

    /** With fewer samples in it the start was not recorded. */
    private static final double SAMPLES = 10;

    /** Half window of the production, and length of the stretch whose rate is used, as shares of the even burn [1]. */
    private static final double WINDOW = 0.01;

    private static final double REFERENCE = 0.15;

    private IgniterGas() {}

    /**
     * The gas to be expected.
     *
     * @param estimate of the firing without an igniter
     * @param start    of operation, A [s]
     * @return [kg], at least zero; empty where the start does not show it
     */
    public static Optional<Measured> expected(RateEstimate estimate, double start) {
        MassBalance balance = estimate.balance();
        WebTable grain = balance.inputs().grain();
        UniformTrace record = balance.inputs().record();
        double even = estimate.lastEven() - estimate.firstEven();
        double until = estimate.firstEven() + REFERENCE * even;
        double rate = (balance.webAt(until) - balance.webAt(estimate.firstEven())) / (until - estimate.firstEven());
        double level = record.mean(estimate.firstEven(), until);
        double exponent = LocalExponent.of(balance, estimate.firstEven(), estimate.lastEven());
        double[] web = balance.webs();
        int half = (int) Math.max(1, Math.round(Math.min(QUICK / 3, WINDOW * even) / record.step()));
        int from = Math.max(half, record.cell(start));
        int settled = Math.max(from, Math.min(record.cell(estimate.firstEven()), record.size() - 1 - half));
        double[] source = new double[settled + half];
        int known = source.length;
        while (settled > from) {
            // each sample is in many windows, and its power costs more than all the rest
            while (known > settled - half) {
                known--;
                source[known] =
                        grain.surface(web[known]) * rate * StrictMath.pow(record.pressure(known) / level, exponent);
            }
            double whole = 0;
            for (int i = settled - half; i < settled + half; i++) {
                whole += source[i];
            }
            double made = balance.volume(settled + half) - balance.volume(settled - half);
            if (!(Math.abs(made / (whole * record.step()) - 1) < SETTLED)) {
                break;
            }
            settled--;
        }
        double lasted = record.time(settled) - record.time(from);
        if (lasted > LONGEST * even || lasted / record.step() * record.samplesPerCell() < SAMPLES) {
            return Optional.empty();
        }
        double upTo = Math.max(0, balance.volume(settled) / grain.volume());
        double share = Math.max(0, Math.min(1, lasted / QUICK - 1));
        double mass = balance.inputs().mass();
        return Optional.of(Measured.of(mass * Math.min(upTo, MEAN * share), mass * UsualUncertainty.IGNITER));
    }
}
