package io.burnlaw.reduction;

import io.burnlaw.finding.Finding;
import io.burnlaw.finding.FindingCode;
import io.burnlaw.quantity.Sentence;
import io.burnlaw.reduction.point.InstantaneousRate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A start that burned faster than its pressure explains, and dies away as the port grows.
 *
 * <pre>
 *     ln r = c + n ln P + b exp(-x / (d w))          d = 0.06, 0.12 or 0.2, whichever describes the burn best    [1]
 * </pre>
 * Told only where it describes the burn better than an even drift, as a growing throat gives, and than a curved law.
 *
 * <p><b>Source.</b> Erosive burning fades as the port opens: Sutton and Biblarz (2001), chapter 11; the form: derived.
 *
 * @param excess by which share the rate was too high where the flame had just reached the whole surface [1]
 * @param std    standard uncertainty of it [1]
 * @param fading share of the web after which the excess has fallen by e [1]
 * @param residual standard deviation that it leaves of ln r [1]
 */
record ErosiveHump(double excess, double std, double fading, double residual) {

    /** This share of the web is left out of the rates where a hump was seen [1]. */
    static final double SETTLED = 0.3;

    /** Less is within what ignition does [1]. */
    private static final double LEAST = 0.04;

    /** Significance, in standard uncertainties. */
    private static final double STDS = 4;

    private record Tried(double fading, BurnTrend trend) {}

    static Optional<ErosiveHump> of(List<InstantaneousRate> along, double web) {
        Tried tried = best(along, web);
        BurnTrend trend = tried.trend();
        if (!(trend.shift() > LEAST) || !(trend.shift() > STDS * trend.shiftStd())) {
            return Optional.empty();
        }
        double even = BurnTrend.of(along, at -> at.web() / web).residual();
        double curved = BurnTrend.of(along, at -> square(StrictMath.log(at.pressure() / 1e6)))
                .residual();
        return trend.residual() < even && trend.residual() < curved
                ? Optional.of(
                        new ErosiveHump(Math.expm1(trend.shift()), trend.shiftStd(), tried.fading(), trend.residual()))
                : Optional.empty();
    }

    /** Standard deviation that a fading start leaves of ln r [1]. */
    static double residual(List<InstantaneousRate> along, double web) {
        return best(along, web).trend().residual();
    }

    /** The finding. */
    Finding told(BurnReduction reduction) {
        return Finding.at(
                FindingCode.EROSIVE_BURNING,
                Sentence.of(
                        "At the start the rate was %.2g %% (± %.2g %%) above what its pressure explains, fading with"
                                + " %.2g mm of the web; the first %.0f %% of the web were left out of the rates.",
                        100 * excess,
                        100 * std,
                        1e3 * fading * reduction.inputs().grain().web(),
                        100 * SETTLED),
                reduction.events().ignition());
    }

    private static Tried best(List<InstantaneousRate> along, double web) {
        return Stream.of(0.06, 0.12, 0.2)
                .map(fading -> new Tried(fading, BurnTrend.of(along, at -> StrictMath.exp(-at.web() / (fading * web)))))
                .min(Comparator.comparingDouble(tried -> tried.trend().residual()))
                .orElseThrow();
    }

    private static double square(double x) {
        return x * x;
    }
}
