package io.burnlaw.report.document;

import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which throat to drill next.
 *
 * @param formulation id
 * @param grain that it was worked out for, in words
 * @param allowedPressure what the upper prediction of a peak must stay below, absolute
 * @param allowedBecause what sets it, such as the case limit over a safety factor
 * @param next the firing that tells most
 * @param ladder throats that span the range
 * @param smallestThroat that keeps the upper prediction of the peak within what is allowed, mm
 * @param slowRegimeThroat above which the motor falls into the slow regime, mm
 * @param firingsToExponent further firings until the exponent is known to 0.02
 * @param motor that it was worked out for, as numbers, so that another throat can be asked for
 * @param sentence the advice, or why there is none
 * @param cautions to be read before drilling
 * @param answers to what was asked of this plan beside the ladder
 * @param throatTable what every throat that may be named would do
 * @param grainTable what other grains would do; absent where one table cannot hold them
 */
@JsonNaming(PropertyNamingStrategies.SnakeCaseStrategy.class)
public record Plan(
        String formulation,
        String grain,
        @Nullable Quantity allowedPressure,
        @Nullable String allowedBecause,
        @Nullable PlannedThroat next,
        List<PlannedThroat> ladder,
        @Nullable Quantity smallestThroat,
        @Nullable Quantity slowRegimeThroat,
        @Nullable Integer firingsToExponent,
        @Nullable PlannedMotor motor,
        String sentence,
        List<String> cautions,
        @Nullable List<PlannedAnswer> answers,
        @Nullable ThroatTable throatTable,
        @Nullable GrainTable grainTable) {

    public Plan {
        ladder = List.copyOf(ladder);
        cautions = List.copyOf(cautions);
        answers = answers == null ? null : List.copyOf(answers);
    }

    /**
     * The same with answers.
     *
     * @param others to what was asked
     * @return the plan
     */
    public Plan with(List<PlannedAnswer> others) {
        return new Plan(
                formulation,
                grain,
                allowedPressure,
                allowedBecause,
                next,
                ladder,
                smallestThroat,
                slowRegimeThroat,
                firingsToExponent,
                motor,
                sentence,
                cautions,
                others,
                throatTable,
                grainTable);
    }
}
