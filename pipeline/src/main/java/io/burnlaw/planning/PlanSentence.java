package io.burnlaw.planning;

import static io.burnlaw.quantity.NumberFormat.megapascal;

import io.burnlaw.quantity.NumberFormat;
import java.util.Optional;
import java.util.OptionalInt;

/** The advice of a plan in words. */
final class PlanSentence {

    private PlanSentence() {}

    static String of(
            PlanBasis basis,
            PlanOptions options,
            PressureCeiling ceiling,
            Optional<PlannedThroat> next,
            String why,
            double smallest,
            OptionalInt firings) {
        StringBuilder text = new StringBuilder();
        next.ifPresentOrElse(
                each -> text.append(
                        "Next firing of %s: a throat of %s%s for a mean of %s MPa, its peak at most %s MPa (upper end of the %s %% prediction). %s."
                                .formatted(
                                        basis.formulation(),
                                        diameter(each.diameter()),
                                        stamped(each),
                                        megapascal(each.meanPressure().value()),
                                        megapascal(each.maxPressure().high()),
                                        NumberFormat.plain(100 * options.level(), 4),
                                        why)),
                () -> text.append("No next firing of %s is named. %s.".formatted(basis.formulation(), why)));
        text.append(" No throat below %s: its peak could be above %s MPa, %s."
                .formatted(diameter(smallest), megapascal(ceiling.limit()), ceiling.reason()));
        text.append(
                firings.isEmpty()
                        ? " The exponent cannot be had to ±%s by more firings of this sort."
                                .formatted(NumberFormat.significant(options.exponentHalfWidth(), 1))
                        : firings.getAsInt() == 0
                                ? " The exponent is known to ±%s already."
                                        .formatted(NumberFormat.significant(options.exponentHalfWidth(), 1))
                                : " About %d more, at the ends of the range, until the exponent is known to ±%s."
                                        .formatted(
                                                firings.getAsInt(),
                                                NumberFormat.significant(options.exponentHalfWidth(), 1)));
        return text.toString();
    }

    private static String diameter(double diameter) {
        return "%s mm".formatted(NumberFormat.significant(diameter * 1000, 3));
    }

    private static String stamped(PlannedThroat throat) {
        return throat.drills().stream()
                .filter(each -> each.diameter() == throat.diameter() && each.series() != Drill.Series.METRIC)
                .findFirst()
                .map(each -> " (drill %s)".formatted(each.name()))
                .orElse("");
    }
}
