package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.reduction.balance.BurnInputs;
import io.burnlaw.reduction.balance.MassBalance;
import io.burnlaw.reduction.balance.RateEstimate;
import io.burnlaw.reduction.events.EventFinder;
import io.burnlaw.reduction.point.RatePoint;
import io.burnlaw.reduction.point.UsualUncertainty;
import java.util.List;
import java.util.Optional;

/**
 * Web that was gone before the main rise, by the pressure integral. If the whole surface had burned, the rest would be as
 * even as ever; if a part of it had, that part is deeper, burns through early, and the rate of the rest comes out low by up
 * to the share of the web that was gone. Which of the two it was, one record does not show.
 *
 * <p>Measured with simulated motors of which 2 to 57 % of the surface burned for 1 to 6 s before the rest: errors of the
 * rate lie between minus and plus that share.
 */
final class BurnedBefore {

    /** Less is the ignition itself [1]. */
    private static final double LITTLE = 0.01;

    /** More than this share of the web, and the firing gives no rate by itself [1]: common practice, no source. */
    private static final double FEW = 0.05;

    /** With more gone than this, hardly anything of the even part of a burn is left [1]: common practice, no source. */
    private static final double NEARLY_ALL = 0.85;

    /** A wait between the first sign of burning and the main rise is one from here on [s] ... common practice, no source. */
    private static final double LONG = 0.2;

    /** ... and if it is also longer than this share of the main burn [1]. */
    private static final double LONG_SHARE = 0.04;

    /** A smoulder that raises the pressure by less than this share of its peak cannot be distinguished from the zero [1]. */
    private static final double UNSEEN = 0.001;

    private BurnedBefore() {}

    /** {@return whether something was alight for a while before the main rise} */
    static boolean waited(EventFinder.Found found) {
        double wait = found.crossing() - found.start();
        return wait > LONG && wait > LONG_SHARE * (found.curvature() - found.crossing());
    }

    /**
     * Web that may have burned in a wait without being seen: in unchoked flow a few kilopascals over the ambient pressure pass
     * a fifth of the gas of choked flow, and so much of the zero is not known, since the wait itself looks like one.
     *
     * @param zeroStd standard uncertainty of the zero [Pa]
     * @return share of the web at most [1]; 0 where it is no more than the ignition itself
     */
    static double unseen(EventFinder.Found found, BurnInputs inputs, RateEstimate estimate, double zeroStd) {
        if (!waited(found)) {
            return 0;
        }
        double over = Math.max(UNSEEN * found.highest(), 2 * zeroStd);
        double gas = inputs.flow().drivingPressure(inputs.flow().ambient() + over)
                * inputs.throatBefore()
                * (found.crossing() - found.start())
                / estimate.balance().characteristicVelocity();
        double share = gas / inputs.mass();
        return share > LITTLE ? share : 0;
    }

    /** {@return share of the web that was gone before the main rise [1], where it is more than the ignition itself} */
    static double share(BurnReduction reduction) {
        double share = reduction.estimate().webAtIgnition()
                / reduction.inputs().grain().web();
        // Gas of an igniter looks like web as far as its mass is not known; that is in the budget already, for all
        // firings.
        double ofIgniter = reduction
                .burn()
                .firing()
                .igniterGas()
                .map(gas -> gas.stdOr(0) / reduction.inputs().mass())
                .orElse(UsualUncertainty.IGNITER);
        return share > LITTLE + 2 * ofIgniter ? share : 0;
    }

    /** {@return its part in the uncertainty of the rate, relative [1]: a rectangular distribution} */
    static double std(BurnReduction reduction) {
        return Math.hypot(share(reduction), reduction.unseen()) / BurnReduction.RECTANGULAR;
    }

    /** {@return why the firing gives no point of its own; empty where it does} */
    static Optional<String> tooMuch(BurnReduction reduction) {
        double share = share(reduction);
        return share > FEW
                ? Optional.of(RatePoint.BURNED_BEFORE + NumberFormat.percent(share, 2)
                        + " of it, and perhaps from a part of the surface only")
                : Optional.empty();
    }

    /**
     * Where so much was gone that no even part of the burn is left to take a rate from.
     *
     * @return the rejection; empty where there is enough left
     */
    static Optional<Finding> nearlyAll(MassBalance balance, EventFinder.Found found) {
        double share =
                balance.webAt(found.crossing()) / balance.inputs().grain().web();
        return share > NEARLY_ALL
                ? Optional.of(Finding.at(
                                FindingCode.BURNED_BEFORE_RISE,
                                NumberFormat.percent(share, 2)
                                        + " of the web had burned before the last rise, by the pressure integral: too little was left for"
                                        + " a rate.",
                                found.crossing())
                        .withSeverity(Severity.REJECTION))
                : Optional.empty();
    }

    /** Tells of it. */
    static List<Finding> look(BurnReduction reduction) {
        double share = share(reduction);
        return share == 0
                ? List.of()
                : List.of(Finding.at(
                        FindingCode.BURNED_BEFORE_RISE,
                        NumberFormat.percent(share, 2)
                                + " of the web had burned before the main rise, by the pressure integral."
                                + (share > FEW
                                        ? " Unless other firings confirm the rate before the rise, this one gives no rate."
                                        : " This makes the rate less certain."),
                        reduction.events().ignition()));
    }
}
