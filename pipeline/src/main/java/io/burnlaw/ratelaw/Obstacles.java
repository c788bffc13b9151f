package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import io.burnlaw.campaign.PressureLimit;
import java.util.List;
import java.util.Optional;

/** What prevents a law, each with the firing that would help. */
final class Obstacles {

    /** No motor burns below the pressure of the air around it [Pa]: the standard atmosphere. */
    private static final double LOWEST_OF_A_MOTOR = 101_325;

    private Obstacles() {}

    static Optional<FitResult.NotFitted> of(List<FitPoint> points, FitOptions options) {
        if (points.isEmpty()) {
            return not("There is no point to fit.", "Fire at three pressures or more, spread over a factor of three.");
        }
        double low = points.stream().mapToDouble(FitPoint::pressure).min().orElseThrow();
        double high = points.stream().mapToDouble(FitPoint::pressure).max().orElseThrow();
        long clusters = points.stream().map(FitPoint::cluster).distinct().count();
        if (StrictMath.log(high / low) < RateLawFit.leastLnSpan()) {
            return not(
                    clusters == 1
                            ? say("There is one firing only, at %s: no exponent follows from it.", megapascal(low))
                            : say(
                                    "All %d points lie at one pressure, %s: they give a rate there, but no exponent.",
                                    points.size(),
                                    megapascal(low).equals(megapascal(high))
                                            ? megapascal(low)
                                            : megapascal(low) + " to " + megapascal(high)),
                    fireApart(low, high, options.limit()));
        }
        double spread = spread(points);
        double doubt = Math.sqrt(points.stream()
                .mapToDouble(p -> p.pressureStd() / p.pressure())
                .map(u -> u * u)
                .average()
                .orElseThrow());
        if (clusters >= 3 && spread < 2 * doubt) {
            return not(
                    say(
                            "The pressures, %s to %s, are known only to %.0f %%: about as much as they differ.",
                            megapascal(low), megapascal(high), 100 * doubt),
                    "Check the unit of the records. " + fireApart(low, high, options.limit()));
        }
        if (clusters < 3) {
            return not(
                    say(
                            "%d independent firings, from %s to %s: a law fits any two points exactly, so the scatter"
                                    + " is unknown.",
                            clusters, megapascal(low), megapascal(high)),
                    third(low, high, options.limit()));
        }
        if (!options.weighting().estimatesScale()) {
            List<String> silent = points.stream()
                    .filter(p -> !(p.ownRelativeStd() > 0))
                    .map(FitPoint::id)
                    .toList();
            if (!silent.isEmpty()) {
                return not(
                        "Weighting by measurement needs an uncertainty of each rate, and these points have none: "
                                + String.join(", ", silent) + ".",
                        "State the uncertainty of those rates, or weight proportionally.");
            }
        }
        return Optional.empty();
    }

    /** Standard deviation of ln P. */
    private static double spread(List<FitPoint> points) {
        double mean = points.stream()
                .mapToDouble(p -> StrictMath.log(p.pressure()))
                .average()
                .orElseThrow();
        return Math.sqrt(points.stream()
                .mapToDouble(p -> StrictMath.log(p.pressure()) - mean)
                .map(d -> d * d)
                .average()
                .orElseThrow());
    }

    /** A pressure further out: below, above, or both, as far as a motor and its case allow. */
    private static String fireApart(double low, double high, PressureLimit limit) {
        boolean lower = low / 3 >= LOWEST_OF_A_MOTOR && limit.allowsMean(low / 3, high);
        if (limit.allowsMean(high * 3, high)) {
            return (lower
                            ? say(
                                    "Fire at %s or at %s: a larger throat for the lower, a smaller one for the higher.",
                                    megapascal(low / 3), megapascal(high * 3))
                            : say("Fire at %s: a smaller throat.", megapascal(high * 3)))
                    + " Stay below " + limit.inWords() + ".";
        }
        String up = limit.allowed().isPresent()
                ? " A pressure three times as high would pass " + limit.inWords() + "."
                : " Before you fire at a higher pressure, find out what pressure the case can stand, and state it as"
                        + " case_pressure_limit.";
        return lower
                ? say("Fire at %s: a larger throat.", megapascal(low / 3)) + up
                : "Fire with a larger throat, at a lower pressure." + up;
    }

    /** In the middle where the two lie far apart, else further out where it narrows the exponent more. */
    private static String third(double low, double high, PressureLimit limit) {
        if (high / low < 3) {
            return fireApart(low, high, limit);
        }
        double middle = Math.sqrt(low * high);
        return limit.allowsMean(middle, high)
                ? say("Fire a third at about %s, between the two.", megapascal(middle))
                : "Fire a third at a lower pressure: " + "the middle of the two would pass " + limit.inWords() + ".";
    }

    private static String megapascal(double pressure) {
        return say("%.3g MPa", pressure / RateLaw.COEFFICIENT_PRESSURE);
    }

    private static Optional<FitResult.NotFitted> not(String reason, String mend) {
        return Optional.of(new FitResult.NotFitted(reason, mend));
    }
}
