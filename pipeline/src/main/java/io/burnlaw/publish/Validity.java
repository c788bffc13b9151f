package io.burnlaw.publish;

import static io.burnlaw.publish.PublishedQuantities.published;
import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.characterize.FormulationResult;
import io.burnlaw.quantity.NumberFormat;
import io.burnlaw.quantity.Unit;
import io.burnlaw.ratelaw.FitPoint;
import io.burnlaw.ratelaw.FitResult.MethodIntervals;
import io.burnlaw.ratelaw.Interval;
import io.burnlaw.ratelaw.Pooling;
import io.burnlaw.ratelaw.TemperatureFit.TemperatureResult;
import io.burnlaw.regime.PressureForRate.FasterAnswer;
import io.burnlaw.report.document.Formulation.NotEstimated;
import io.burnlaw.report.document.Formulation.ValidRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How far the laws of a formulation can be relied on: where they were measured, and what they cannot say. */
final class Validity {

    private Validity() {}

    /**
     * The pressures of the points that the laws rest on, and the warning for all others.
     *
     * @return empty where there is no law
     */
    static Optional<ValidRange> range(FormulationResult result) {
        if (result.fit().fitted().isEmpty()) {
            return Optional.empty();
        }
        List<FitPoint> points = result.lawPoints();
        double low = points.stream().mapToDouble(FitPoint::pressure).min().orElseThrow();
        double high = points.stream().mapToDouble(FitPoint::pressure).max().orElseThrow();
        return Optional.of(new ValidRange(
                published(low, Unit.MEGAPASCAL),
                published(high, Unit.MEGAPASCAL),
                "Measured from " + megapascal(low) + " to " + megapascal(high)
                        + " MPa absolute. Outside these pressures the law is an extrapolation: there may be another regime, or an exponent"
                        + " of 1 or more.",
                result.faster().stream()
                        .filter(answer -> answer.reach() == FasterAnswer.Reach.EXTRAPOLATED)
                        .map(answer -> "the pressure for " + NumberFormat.plain(answer.factor(), 3) + " times the rate")
                        .toList()));
    }

    /** {@return what these firings cannot give, each with its reason} */
    static List<NotEstimated> notEstimated(FormulationResult result) {
        List<NotEstimated> missing = new ArrayList<>();
        result.fit().fitted().ifPresent(fitted -> fitted.intervals().forEach(each -> intervals(each, missing)));
        result.temperature().ifPresent(found -> {
            if (found instanceof TemperatureResult.NotEstimated none) {
                missing.add(new NotEstimated("temperature sensitivity", none.reason(), none.mend()));
            }
            found.estimated()
                    .ifPresent(estimated ->
                            reason("temperature sensitivity of the pressure", estimated.piKInterval(), missing));
        });
        result.pooling().ifPresent(found -> {
            if (found instanceof Pooling.NotPooled none) {
                missing.add(new NotEstimated("exponent along the burns", none.reason(), none.mend()));
            }
        });
        result.threshold().ifPresent(found -> reason("interval of the threshold", found.interval(), missing));
        return missing;
    }

    private static void intervals(MethodIntervals intervals, List<NotEstimated> missing) {
        String method = switch (intervals.method()) {
            case STUDENT_T, KENWARD_ROGER -> " by Student's t";
            case PROFILE -> " by the profile";
            case BOOTSTRAP_BCA -> " by the bootstrap";
        };
        if (intervals.exponent() instanceof Interval.NotEstimable none && none.equals(intervals.coefficient())) {
            reason("intervals" + method, intervals.exponent(), missing);
        } else {
            reason("interval of the coefficient" + method, intervals.coefficient(), missing);
            reason("interval of the exponent" + method, intervals.exponent(), missing);
        }
    }

    private static void reason(String what, Interval interval, List<NotEstimated> missing) {
        if (interval instanceof Interval.NotEstimable none) {
            missing.add(new NotEstimated(what, sentence(none.reason()), null));
        }
    }

    private static String sentence(String clause) {
        return Character.toUpperCase(clause.charAt(0)) + clause.substring(1) + (clause.endsWith(".") ? "" : ".");
    }
}
