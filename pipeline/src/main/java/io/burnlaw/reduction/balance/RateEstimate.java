package io.burnlaw.reduction.balance;

import java.util.OptionalDouble;

/**
 * Mean rates of one burn by both definitions, for given events; a pure function, so that the effect of each input on
 * the rate can be computed by changing it alone.
 *
 * <pre>
 * mass balance      r = (x(t2) - x(t1)) / (t2 - t1)    from fractions of the web: after the ignition transient,
 * before the first burn-through
 * thickness/time    r = (w - x(B)) / (E - B)           E where the mean web is gone, by the tail-off
 * </pre>
 *
 * <p>x(B) is what had burned before the main rise; it is next to nothing unless the motor smouldered.
 *
 * @param ignition      B [s]
 * @param burnout       E, referred to the mean web unless an event of the trace was asked for [s]
 * @param firstEven     t1, first moment that the mass balance rate rests on [s]
 * @param lastEven      t2, last moment before the first burn-through that it rests on [s]
 * @param settled       share of the web that burns after ignition which is gone at t1 [1]
 * @param even          share of the web up to which the burn is taken as even [1]
 * @param webAtIgnition x(B) [m]
 * @param massBalance   [m/s]
 * @param thicknessTime [m/s]
 * @param tail          the end of the burn
 */
public record RateEstimate(
        double ignition,
        double burnout,
        double firstEven,
        double lastEven,
        double settled,
        double even,
        double webAtIgnition,
        double massBalance,
        double thicknessTime,
        TailOff tail,
        MassBalance balance) {

    /** Of the web that burns after ignition, this share is gone before the flame is trusted to be everywhere [1]. */
    public static final double TRANSIENT = 0.05;

    /** Up to this share of the web a burn is taken as even, unless its tail-off shows otherwise [1]. */
    private static final double EVEN = 0.90;

    /** The even part of a burn is never shorter than this share of the web [1]. */
    private static final double DEEPEST = 0.5;

    /** With more of the web gone before the main rise, a part of it may be ahead of the rest [1]. */
    private static final double AHEAD = 0.004;

    /** The first half of the web ends the burn by so much earlier where a part had burned through [1]. */
    private static final double EARLIER = 0.01;

    /**
     * Works out the rates up to the usual share of the web, or to a smaller one where the web turns out so uneven that
     * it burns through earlier.
     *
     * @param ignition B [s]
     * @param burnout  E where an event of the trace is to be it [s]; empty for when the mean web was gone
     * @param settled  share of the web after ignition that the mass balance leaves out at the start [1]
     * @param waited   whether a part of the web may have burned unseen before the main rise
     */
    public static RateEstimate of(
            MassBalance balance, double ignition, OptionalDouble burnout, double settled, boolean waited) {
        double web = balance.inputs().grain().web();
        RateEstimate usual = of(balance, ignition, burnout, settled, EVEN);
        double early = 1 - 1.25 * Math.sqrt(2) * usual.tail().spread() / web;
        RateEstimate estimate =
                early < EVEN ? of(balance, ignition, burnout, settled, Math.max(DEEPEST, early)) : usual;
        if (estimate.webAtIgnition() < AHEAD * web && !waited || burnout.isPresent()) {
            return estimate;
        }
        // A part that burned before the rest may have burned through long before the end, and the rest then ends as
        // sharply
        // as ever: no tail-off shows it, but the surface was smaller from then on, and the mean web gone earlier.
        RateEstimate before = of(balance, ignition, burnout, settled, DEEPEST);
        return before.burnout() - ignition < (1 - EARLIER) * (estimate.burnout() - ignition) ? before : estimate;
    }

    /**
     * Works out the rates.
     *
     * @param ignition B [s]
     * @param burnout  E where an event of the trace is to be it [s]; empty for when the mean web was gone
     * @param settled  share of the web after ignition that the mass balance leaves out at the start [1]
     * @param even     share of the web up to which the burn is even [1]
     */
    public static RateEstimate of(
            MassBalance balance, double ignition, OptionalDouble burnout, double settled, double even) {
        double web = balance.inputs().grain().web();
        double webAtIgnition = balance.webAt(ignition);
        double lastEven = balance.timeOf(even * web);
        double first = webAtIgnition + settled * (web - webAtIgnition);
        double firstEven = Math.max(balance.timeOf(first), ignition);
        TailOff tail = TailOff.of(balance, firstEven, lastEven);
        double ended = burnout.orElse(tail.burnout());
        return new RateEstimate(
                ignition,
                ended,
                firstEven,
                lastEven,
                settled,
                even,
                webAtIgnition,
                (balance.webAt(lastEven) - balance.webAt(firstEven)) / (lastEven - firstEven),
                (web - webAtIgnition) / (ended - ignition),
                tail,
                balance);
    }
}
