package io.burnlaw.reduction;

import io.burnlaw.ballistics.Motor;
import io.burnlaw.campaign.Firing;
import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.finding.Severity;
import io.burnlaw.grain.Grain;
import io.burnlaw.quantity.Measured;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.point.UsualUncertainty;
import io.burnlaw.reduction.screening.BurnTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Checks a finished reduction: its tail-off, the rates along the burn and its figures may show faults of the motor or
 * of the log. Comparisons with other firings are in {@link CampaignPlausibility}.
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

    /** {@return what was seen in a burn, in the order of the reviews} */
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
                                "A chamber of %.4g cm3 and a grain of %.4g cm3 do not fit together; a chamber of %.4g cm3 was"
                                        + " assumed.%s",
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

    /** Whether the throat kept its size: by the log, measured before and after, and by the course of the rates. */
    private static final class ThroatReview {

        /** Significance of two readings' difference, in standard uncertainties. */
        private static final double STDS = 3;

        private ThroatReview() {}

        static List<Finding> look(BurnReduction reduction) {
            Firing row = reduction.burn().firing();
            List<Finding> findings = new ArrayList<>();
            row.throatDiameterAfter().ifPresent(after -> measured(row.throatDiameter(), after, findings));
            reduction
                    .throatChange()
                    .ifPresent(change -> findings.add(Finding.at(
                                    FindingCode.THROAT_EROSION,
                                    row.throatDiameterAfter().isPresent()
                                            ? otherThanMeasured(change)
                                            : unmeasured(
                                                    change, row.throatDiameter().value()),
                                    reduction.events().ignition())
                            .withSeverity(Severity.CAUTION)));
            return findings;
        }

        private static void measured(Measured before, Measured after, List<Finding> findings) {
            double change = after.value() - before.value();
            double std = Math.hypot(before.stdOr(UsualUncertainty.THROAT), after.stdOr(UsualUncertainty.THROAT));
            if (!(Math.abs(change) > STDS * std)) {
                return;
            }
            double ratio = after.value() / before.value();
            findings.add(Finding.of(
                    FindingCode.THROAT_EROSION,
                    Sentence.of(
                            "The throat measured %.4g mm before and %.4g mm after the firing: its area %s by %.2g %%; the"
                                    + " reduction assumes that it changed evenly over the burn.",
                            1e3 * before.value(),
                            1e3 * after.value(),
                            word(change),
                            100 * Math.abs(ratio * ratio - 1))));
        }

        private static String unmeasured(ThroatChange change, double before) {
            return Sentence.of(
                    "Over the burn the rate drifts from its own law as if the throat area %s by %.2g %% (± %.2g %%),"
                            + " to a diameter of %.4g mm. The throat was not measured after the firing, so the rates assume a"
                            + " constant throat, and their uncertainty includes the change.",
                    word(change.area()),
                    100 * Math.abs(change.area()),
                    100 * change.std(),
                    1e3 * before * Math.sqrt(1 + change.area()));
        }

        private static String otherThanMeasured(ThroatChange change) {
            return Sentence.of(
                    "Over the burn the rate drifts from its own law as if the throat area %s by another %.2g %% (± %.2g %%)"
                            + " beyond what was measured: check both diameters, and the core and the length of the grain.",
                    word(change.area()), 100 * Math.abs(change.area()), 100 * change.std());
        }

        private static String word(double change) {
            return change > 0 ? "grew" : "shrank";
        }
    }
}
