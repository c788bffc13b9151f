package io.burnlaw.reduction;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.screening.BurnTime;
import java.util.List;
import java.util.function.Function;

/**
 * Looks through a finished reduction: what its tail-off, the course of its rates and its numbers say of the motor and of
 * the log. What can only be seen beside other firings is in {@link CampaignPlausibility}.
 */
final class BurnReview {

    private static final List<Function<BurnReduction, List<Finding>>> REVIEWS = List.of(
            BurnedBefore::look,
            UnevenWeb::look,
            ThroatReview::look,
            BurnReview::hump,
            RecordAgainstGrain::look,
            BurnReview::chamber,
            BurnReview::rates,
            MassReview::look,
            VelocityReview::look);

    private BurnReview() {}

    /**
     * Reviews a burn.
     *
     * @param reduction of it
     * @return what was seen, in the order of the reviews
     */
    static List<Finding> of(BurnReduction reduction) {
        return REVIEWS.stream()
                .flatMap(review -> review.apply(reduction).stream())
                .toList();
    }

    private static List<Finding> hump(BurnReduction reduction) {
        return reduction.hump().map(hump -> hump.told(reduction)).stream().toList();
    }

    private static List<Finding> chamber(BurnReduction reduction) {
        Grain grain = reduction.burn().grain();
        return reduction
                .burn()
                .firing()
                .chamberVolume()
                .map(Measured::value)
                .filter(volume -> !Motor.fits(grain, volume))
                .map(volume -> Finding.of(
                        FindingCode.CHAMBER_VOLUME,
                        Sentence.of(
                                "A chamber of %.4g cm3 and a grain of %.4g cm3 do not belong together; a chamber of %.4g cm3"
                                        + " was taken.%s",
                                1e6 * volume,
                                1e6 * grain.volume(0),
                                1e6 * (Motor.freeVolume(grain, volume) + grain.volume(0)),
                                Motor.fits(grain, volume / 1000)
                                        ? Sentence.of(
                                                " With the column in [cm3] instead of [L] it would be %.4g cm3.",
                                                1e3 * volume)
                                        : Motor.fits(grain, volume * 1000)
                                                ? Sentence.of(
                                                        " With the column in [L] instead of [cm3] it would be %.4g cm3.",
                                                        1e9 * volume)
                                                : "")))
                .stream()
                .toList();
    }

    /** A rate that no solid propellant has is not published, by whichever definition. */
    private static List<Finding> rates(BurnReduction reduction) {
        double mass = reduction.estimate().massBalance();
        double time = reduction.estimate().thicknessTime();
        if (BurnTime.possible(mass) && BurnTime.possible(time)) {
            return List.of();
        }
        return List.of(Finding.at(
                        FindingCode.IMPLAUSIBLE_BURN_TIME,
                        Sentence.of(
                                "%.3g mm/s by thickness and time and %.3g mm/s by the mass balance: solid propellants burn at"
                                        + " %s. Check the units of lengths, volume, mass and time.",
                                1e3 * time, 1e3 * mass, BurnTime.BOUNDS),
                        reduction.events().ignition())
                .withSeverity(Severity.REJECTION));
    }
}
