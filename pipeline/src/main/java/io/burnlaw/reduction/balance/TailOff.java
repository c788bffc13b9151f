package io.burnlaw.reduction.balance;

import io.burnlaw.reduction.events.UniformTrace;

/**
 * The end of a burn: the time at which the mean web was gone, and how uneven the web was.
 *
 * <p>The propellant left just before the first burn-through still leaves through the nozzle, at whatever times it burns
 * through. So the tail-off's integral gives the mean web that is left at t2, and no event that follows the first
 * burn-through is needed:
 *
 * <pre>
 *     r(t)       = r2 (P/P2)^n                             r2, P2 over a window before t2; n of this burn
 *     E          : integral from t2 to E of r dt = w - x(t2)                                        [s]
 *     A s^2 / 2  = integral from t2 to G of V_left r dt  -  integral from x(t2) to w of V dx        [m4]
 * </pre>
 *
 * <p>A web of one thickness is gone at one moment, and the chamber then empties at its own pace, which the mass balance
 * has taken off. What burns later and what burned earlier belongs to thicker and thinner places: s is the standard
 * deviation of the web over the surface A. A core off centre by e spreads the web as w + e cos(angle), s = e/sqrt(2).
 * The scale of the mass balance cancels from E, since x and r2 share it.
 *
 * <p><b>Source.</b> Derived; web left from the integral after a moment: Friedlander and Jordan, AIAA-84-1439 (1984).
 *
 * @param burnout E [s]
 * @param spread  s [m], at least zero
 */
public record TailOff(double burnout, double spread) {

    /** From this share of the web on a spread is reported [1]. */
    public static final double NOTICEABLE = 0.012;

    /** Over this share of the even burn the last rate is taken [1]. */
    private static final double WINDOW = 0.08;

    /**
     * Looks at the end of a burn.
     *
     * @param firstEven t1 [s]
     * @param lastEven  t2 [s]
     */
    static TailOff of(MassBalance balance, double firstEven, double lastEven) {
        WebTable grain = balance.inputs().grain();
        UniformTrace record = balance.inputs().record();
        int last = Math.min(record.size() - 2, record.cell(lastEven));
        int back = Math.max(0, Math.min(last - 1, record.cell(lastEven - WINDOW * (lastEven - firstEven))));
        double level = 0;
        for (int i = back; i <= last; i++) {
            level += record.pressure(i);
        }
        level /= last - back + 1;
        double web = balance.webAt(record.time(last));
        double rate = (web - balance.webAt(record.time(back))) / ((last - back) * record.step());
        double exponent = LocalExponent.of(balance, firstEven, lastEven);
        double depth = web;
        double burnout = Double.NaN;
        double moment = 0;
        double volume = grain.volume();
        for (int i = last; i < record.size(); i++) {
            double p = Math.max(balance.inputs().flow().ambient(), record.pressure(i));
            double advance = rate * StrictMath.pow(p / level, exponent) * record.step();
            moment += (volume - balance.volume(i)) * (i == last ? 0.5 * advance : advance);
            if (Double.isNaN(burnout) && depth + advance >= grain.web()) {
                burnout = record.time(i) + (grain.web() - depth) / advance * record.step();
            }
            depth += advance;
        }
        if (Double.isNaN(burnout)) {
            burnout = record.time(record.size() - 1);
        }
        double area = grain.surface(grain.web());
        double excess = moment - grain.volumeMoment(web);
        return new TailOff(burnout, area > 0 ? Math.sqrt(Math.max(0, 2 * excess / area)) : 0);
    }
}
