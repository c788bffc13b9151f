package io.burnlaw.ratelaw;

import static io.burnlaw.ratelaw.RateLawFit.say;

import java.util.List;
import java.util.Optional;

/** What stands between a set of points and a law, each with the firing that would mend it. */
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
                                    "All %d points lie at one pressure, %s: they give a rate there and no exponent.",
                                    points.size(),
                                    megapascal(low).equals(megapascal(high))
                                            ? megapascal(low)
                                            : megapascal(low) + " to " + megapascal(high)),
                    low / 3 < LOWEST_OF_A_MOTOR
                            ? say("Fire at %s, inside the case limit: a smaller throat.", megapascal(high * 3))
                            : say(
                                    "Fire at %s or at %s, inside the case limit: a smaller throat for the higher, a larger one for the lower.",
                                    megapascal(low / 3), megapascal(high * 3)));
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
                    low / 3 < LOWEST_OF_A_MOTOR
                            ? say(
                                    "Check the unit of the records. If it is right, fire at %s, inside the case limit.",
                                    megapascal(high * 3))
                            : say(
                                    "Fire at %s or at %s, inside the case limit.",
                                    megapascal(low / 3), megapascal(high * 3)));
        }
        if (clusters < 3) {
            return not(
                    say(
                            "%d independent firings, from %s to %s: a law goes through two whatever they are, and nothing is left to judge the scatter by.",
                            clusters, megapascal(low), megapascal(high)),
                    say("Fire a third at about %s, inside the case limit.", megapascal(between(low, high))));
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

    /** In the middle where the two lie far apart, else further out where it tells more about the exponent. */
    private static double between(double low, double high) {
        return high / low >= 3 ? Math.sqrt(low * high) : low / 3 < LOWEST_OF_A_MOTOR ? 3 * high : low / 3;
    }

    private static String megapascal(double pressure) {
        return say("%.3g MPa", pressure / RateLaw.COEFFICIENT_PRESSURE);
    }

    private static Optional<FitResult.NotFitted> not(String reason, String mend) {
        return Optional.of(new FitResult.NotFitted(reason, mend));
    }
}
