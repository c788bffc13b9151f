package io.burnlaw.reduction.screening;

import io.burnlaw.campaign.Plausible;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.events.Burn;
import java.util.List;

/** Checks whether a solid propellant can burn the web in the time of the main burn. */
public final class BurnTime {

    private static final double SLOWEST = Plausible.MOTOR_RATE.low();

    private static final double FASTEST = Plausible.MOTOR_RATE.high();

    /** In words. */
    public static final String BOUNDS = "0.1 mm/s to 100 mm/s";

    private BurnTime() {}

    /**
     * Whether any solid propellant burns at a rate.
     *
     * @param rate [m/s]
     * @return whether one does
     */
    public static boolean possible(double rate) {
        return Plausible.MOTOR_RATE.holds(rate);
    }

    static List<Finding> look(Burn burn, BurnShape shape) {
        double duration = shape.mainDuration();
        double web = burn.grain().web().value();
        double rate = web / duration;
        if (!(duration > 0) || possible(rate)) {
            return List.of();
        }
        boolean fast = rate > FASTEST;
        double milli = fast ? rate / 1000 : rate * 1000;
        boolean unit = possible(milli);
        return List.of(Finding.at(
                        FindingCode.IMPLAUSIBLE_BURN_TIME,
                        Sentence.of(
                                "A web of %.3g mm in a main burn of %.3g s gives %.3g mm/s; solid propellants burn at %.1f mm/s"
                                        + " to %.0f mm/s.%s",
                                1e3 * web,
                                duration,
                                1e3 * rate,
                                1e3 * SLOWEST,
                                1e3 * FASTEST,
                                unit
                                        ? Sentence.of(
                                                " With the time column in %s it would be %.3g mm/s.",
                                                fast ? "s instead of ms" : "ms instead of s", 1e3 * milli)
                                        : ""),
                        shape.time()[shape.mainRise()])
                .withSeverity(Severity.REJECTION));
    }
}
